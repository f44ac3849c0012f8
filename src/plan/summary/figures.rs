//! Worked-out figures in the units a driver thinks in: percent, mph, engine speed.

use super::say::Say;
use crate::calc::{converter, speedometer, tire};
use crate::job::SpeedometerKind;
use crate::quantity::{MilePerHour, Quantity, short};

/// The figure that a finding of this code speaks of, when it can be worked out.
pub(super) fn behind(code: &str, say: &Say<'_>) -> Option<String> {
    match code {
        "SPD-01" | "SPD-02" => reading(say),
        "CNV-11" => stall(say),
        "GER-08" => cruise(say),
        "GER-07" => drop_to_second(say),
        _ => None,
    }
}

/// How the speedometer will read, or what there will be in its place.
pub(super) fn speedometer(say: &Say<'_>) -> Option<String> {
    match say.job.speedometer.kind.value()? {
        SpeedometerKind::Cable => reading(say),
        SpeedometerKind::Electronic => Some("Your speedometer gets its signal from a sensor.".into()),
        SpeedometerKind::Gps => Some("Your speedometer reads from satellites. The unit does not drive it.".into()),
        SpeedometerKind::None => Some("There is no speedometer.".into()),
    }
}

const TRUE_SPEED: Quantity<MilePerHour> = Quantity::new(60.0);

fn reading(say: &Say<'_>) -> Option<String> {
    let (gears, vehicle) = (&say.job.speedometer, &say.job.vehicle);
    let exact = speedometer::exact_driven_teeth(
        *gears.drive_teeth.value()?,
        *vehicle.axle_ratio.value()?,
        *vehicle.tire_diameter_in.value()?,
    );
    let error = speedometer::error(exact, *gears.driven_teeth.value()?);
    let shown = speedometer::shown(TRUE_SPEED, error);
    if !shown.value().is_finite() {
        return None;
    }
    let percent = short(error.value().abs() * 100.0, 1);
    let mph = short(shown.value(), 1);
    let text = if percent == "0" {
        "Your speedometer will read true".to_owned()
    } else if error.value() > 0.0 {
        format!("Your speedometer will read {percent} percent too high. It shows {mph} mph when you really go 60 mph")
    } else {
        format!(
            "Your speedometer will read {percent} percent too low. It shows {mph} mph when you really go 60 mph, so \
             you go faster than it says"
        )
    };
    Some(say.resting_on(
        &text,
        &[
            ("tire", vehicle.tire_diameter_in.id()),
            ("axle", vehicle.axle_ratio.id()),
            ("speedometer gears", gears.driven_teeth.id()),
        ],
    ))
}

/// The stall speed to expect with this engine.
pub(super) fn stall(say: &Say<'_>) -> Option<String> {
    let (fitted, engine) = (&say.job.converter, &say.job.engine);
    let stall = converter::stall_at(
        *fitted.stall_rpm.value()?,
        *engine.torque_lbft.value()?,
        *fitted.rated_torque_lbft.value()?,
    );
    // To the nearest fifty: the estimate is no better than that.
    let rounded: Quantity<crate::quantity::Rpm> = Quantity::new((stall.value() / 50.0).round() * 50.0);
    if !rounded.value().is_finite() {
        return None;
    }
    let text = format!(
        "The stall speed is how fast the engine runs at full gas while the car stands still. We estimate about {} with \
         your engine",
        rounded.to_whole()
    );
    Some(
        say.resting_on(
            &text,
            &[("engine torque", engine.torque_lbft.id()), ("converter label", fitted.stall_rpm.id())],
        ),
    )
}

/// Engine speed on a long drive.
pub(super) fn cruise(say: &Say<'_>) -> Option<String> {
    let (usage, vehicle) = (&say.job.usage, &say.job.vehicle);
    let road = *usage.cruise_mph.value()?;
    let engine = tire::cruise_speed(road, *vehicle.axle_ratio.value()?, *vehicle.tire_diameter_in.value()?);
    if !engine.value().is_finite() || engine.value() == 0.0 {
        return None;
    }
    let text = format!("At {} in top gear the engine turns about {}", road.to_whole(), engine.to_whole());
    Some(say.resting_on(
        &text,
        &[("tire", vehicle.tire_diameter_in.id()), ("axle", vehicle.axle_ratio.id()), ("speed", usage.cruise_mph.id())],
    ))
}

/// How far the engine falls back at the first shift.
pub(super) fn drop_to_second(say: &Say<'_>) -> Option<String> {
    let gears = &say.job.gears;
    let drop = 1.0 - *gears.second_ratio.value()? / *gears.first_ratio.value()?;
    (drop.is_finite() && drop > 0.0).then(|| {
        let percent = short(drop * 100.0, 0);
        format!("When you shift from first to second, the engine slows down by {percent} percent.")
    })
}
