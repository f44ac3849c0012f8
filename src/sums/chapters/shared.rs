//! Inputs that several sums ask for, and how numbers are said.

use crate::calc::clutch::Pack;
use crate::calc::converter::brake_power;
use crate::calc::tire::Trust;
use crate::quantity::{Inch, Kilogram, One, PoundFoot, PoundForce, Psi, Quantity, Rpm, SquareInch};
use crate::sums::declaration::{Amiss, Input};
use crate::sums::given::{Given, Tire};
use crate::sums::outcome::{Line, plain, short};

pub(super) const TIRE: Input = Input::tire("tire", "Tire", "28.5")
    .hint("The diameter, measured loaded, or the size on the sidewall, such as 275/60R15.")
    .fact("vehicle.tire_diameter_in");

pub(super) const AXLE: Input = Input::ratio("axle", "Axle ratio", (1.0, 12.0), "3.73")
    .hint("As stamped, such as 3.73.")
    .fact("vehicle.axle_ratio");

pub(super) const FIRST: Input =
    Input::ratio("first", "First gear ratio", (1.05, 6.0), "2.48").fact("gears.first_ratio");

pub(super) const SECOND: Input =
    Input::ratio("second", "Second gear ratio", (1.02, 5.0), "1.48").fact("gears.second_ratio");

pub(super) const REVERSE: Input = Input::ratio("reverse", "Reverse gear ratio", (0.5, 6.0), "2.08")
    .hint("As a plain size.")
    .fact("gears.reverse_ratio");

pub(super) const ENGINE_TORQUE: Input = Input::number::<PoundFoot>("torque", "Engine torque", (1.0, 5000.0), "560")
    .hint("The peak at the crank, from a dyno sheet where there is one.")
    .fact("engine.torque_lbft");

pub(super) const STALL_RATIO: Input = Input::ratio("stall_ratio", "Converter torque ratio at stall", (1.0, 4.0), "2.0")
    .hint("The maker's figure; 1.8 to 2.4 is usual.")
    .fact("converter.stall_ratio");

pub(super) const ENGINE_SPEED: Input = Input::number::<Rpm>("rpm", "Engine speed", (100.0, 15000.0), "6500");

/// What is said wherever a part is chosen.
pub(super) const PROVEN: &str = "A part is chosen by arithmetic and proven by measuring: build it with the new part and read the gauge \
                     again before it is closed.";

pub(super) const FRICTION: Input = Input::ratio("friction", "Friction of the lining", (0.03, 0.4), "0.13")
    .hint("In fluid; 0.10 to 0.17 for paper (memory, high).")
    .fact("direct.friction_mu");

pub(super) const PLATES: Input = Input::count("plates", "Lined plates", (1, 12), "6").fact("direct.frictions");

pub(super) const PRESSURE: Input =
    Input::number::<Psi>("pressure", "Line pressure at the pack", (5.0, 500.0), "150").fact("bench.line_stall_psi");

pub(super) const PISTON: Input =
    Input::number::<SquareInch>("piston", "Piston area in use", (1.0, 60.0), "13.5").fact("direct.piston_area_in2");

pub(super) const SPRINGS: Input =
    Input::number::<PoundForce>("springs", "Release spring force, applied", (0.0, 3000.0), "250")
        .fact("direct.spring_lb");

pub(super) const RADIUS: Input =
    Input::number::<Inch>("radius", "Mean radius of the lining", (0.5, 10.0), "2.5").fact("direct.mean_radius_in");

/// The pack that [`FRICTION`] to [`RADIUS`] describe.
pub(super) fn pack(given: &Given<'_>) -> Result<Pack, Amiss> {
    Ok(Pack {
        friction: given.number("friction")?,
        plates: given.count("plates")?,
        pressure: given.number("pressure")?,
        piston: given.number("piston")?,
        springs: given.number("springs")?,
        mean_radius: given.number("radius")?,
    })
}

pub(super) const STALL: Input = Input::number::<Rpm>("stall", "Stall on the label", (500.0, 9000.0), "3200")
    .hint("The maker's figure.")
    .fact("converter.stall_rpm");

pub(super) const RATED: Input = Input::number::<PoundFoot>("rated", "Torque it was given at", (20.0, 3000.0), "500")
    .hint("The engine torque the maker's figure was measured behind.")
    .fact("converter.rated_torque_lbft");

pub(super) const CONVERTER_FLUID: Input =
    Input::number::<Kilogram>("fluid", "Fluid in the converter", (0.5, 30.0), "5").fact("converter.fluid_kg");

pub(super) const CONVERTER_METAL: Input =
    Input::number::<Kilogram>("metal", "Steel of the converter", (1.0, 60.0), "12").fact("converter.metal_kg");

/// All that goes into a converter that is held.
pub(super) fn brake_power_line(torque: Quantity<PoundFoot>, held: Quantity<Rpm>) -> Line {
    Line::new(
        "Power turned to heat",
        brake_power(torque, held).to_places(0),
        "torque × rpm / 7,043",
        format!("{} × {} / 7,043", short(torque), short(held)),
        "energy balance: all of it, since nothing moves",
    )
}

/// Sizes one behind the other, to the thousandth or, where it counts, the ten-thousandth: `0.077, 0.0905`.
pub(super) fn listed(sizes: &[Quantity<Inch>]) -> String {
    let said = |size: &Quantity<Inch>| {
        let fine = format!("{:.4}", size.value());
        fine.strip_suffix('0').unwrap_or(&fine).to_owned()
    };
    sizes.iter().map(said).collect::<Vec<_>>().join(", ")
}

/// A share in per cent, with its sign: `+11.0 %` reads high.
pub(super) fn signed_percent(share: Quantity<One>) -> String {
    let percent = share.to_percent(1);
    if share.value() > 0.0 { format!("+{percent}") } else { percent }
}

/// A tire as it stands in a sum.
pub(super) fn tire_said(tire: Tire) -> String {
    short(tire.diameter)
}

/// What has to be said of a tire whose diameter was not measured.
pub(super) fn tire_remark(tire: Tire) -> Option<String> {
    let from_size = format!("The size gives {} unloaded.", tire.diameter.to_places(2));
    match tire.trust? {
        Trust::Nominal => Some(format!(
            "{from_size} A real tire of that size may differ by half an inch and stands lower under load: measure it."
        )),
        Trust::Guess => Some(format!(
            "{from_size} The size does not say how tall the sidewall is, so this is a guess (memory, low): measure it."
        )),
    }
}

/// A ratio as people write it, `2.48`.
pub(super) fn ratio(ratio: Quantity<One>) -> String {
    plain(ratio.value())
}
