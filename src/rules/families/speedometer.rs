use super::rules;
use crate::job::{Job, SpeedometerDrive, SpeedometerHole, SpeedometerKind};
use crate::quantity::Quantity;

rules! {
    /// Works out the reading error where the drive gear is the pressed steel one.
    ///
    /// There are but two or three of these gears, and none survives being pressed off. First the best driven gear,
    /// then a ratio box, then a speedometer that needs no cable. Source: common practice; the formula is exact.
    "SPD-01" Caution Spec {
        accepts: true,
        title: "Steel drive gear leaves the speedometer off",
        shop: "With the steel drive gear the speedometer is off by more than the limit. Try the best driven gear \
               first, then a ratio box, then a speedometer that works by satellite.",
        customer: Some("Your speedometer will show the wrong speed, by the amount on this page. A small gear box in \
                        the cable, or another kind of speedometer, can put it right."),
        fix: "Fit the best driven gear, a ratio box, or another pressed gear.",
        basis: "Common practice; the formula is exact.",
        numbers: [speedometer_error],
        limits: [speedometer_error],
        when: |j, d, l| {
            j.speedometer.kind.is(SpeedometerKind::Cable)
                & j.speedometer.drive.is(SpeedometerDrive::Steel)
                & d.speedometer_error.size().above(l.speedometer_error)
        },
        fires: |j| {
            j.speedometer.drive.set(SpeedometerDrive::Steel);
            j.vehicle.tire_diameter_in.set(Quantity::new(33.0));
            j.vehicle.axle_ratio.set(Quantity::new(3.73));
        },
        clears: |j| j.speedometer.drive.set(SpeedometerDrive::Steel),
    }

    /// Works out the reading error where the drive gear is the plastic one.
    ///
    /// Plastic drive and driven gears come in almost any pair, so this can simply be put right. Source: common
    /// practice; the formula is exact.
    "SPD-02" Caution Spec {
        accepts: false,
        title: "Speedometer gears do not suit tire and axle",
        shop: "With these gears the speedometer is off by more than the limit. Choose another pair of plastic drive \
               and driven gears from the sum.",
        customer: Some("Your speedometer would show the wrong speed with your tires and axle. We will fit small \
                        gears that suit them."),
        fix: "Fit another pair of gears.",
        basis: "Common practice; the formula is exact.",
        numbers: [speedometer_error],
        limits: [speedometer_error],
        when: |j, d, l| {
            j.speedometer.kind.is(SpeedometerKind::Cable)
                & j.speedometer.drive.is(SpeedometerDrive::Plastic)
                & d.speedometer_error.size().above(l.speedometer_error)
        },
        fires: |j| {
            j.vehicle.axle_ratio.set(Quantity::new(3.73));
            j.vehicle.tire_diameter_in.set(Quantity::new(28.5));
            j.speedometer.driven_teeth.set(19);
        },
        clears: |j| j.speedometer.driven_teeth.set(20),
    }

    /// Looks for an electronic speedometer without anything to read.
    ///
    /// It counts the teeth of a ring on the output shaft through a sensor in the rear housing. Both have to be
    /// there. Source: common practice.
    "SPD-03" Stop Spec {
        accepts: true,
        title: "Electronic speedometer has nothing to count or read",
        shop: "An electronic speedometer needs a toothed ring on the output shaft and a rear housing with a place \
               for the sensor. One of them is missing. Fit them, or an add-on sender.",
        customer: Some("Your speedometer is electronic, and the parts it reads from are not in this unit. Without \
                        them it will not work. We can fit them, or add a separate sender."),
        fix: "Fit a ring shaft and a sensor housing, or an add-on sender.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.speedometer.kind.is(SpeedometerKind::Electronic)
                & (j.speedometer.drive.is_not(SpeedometerDrive::ToneRing) | j.speedometer.pickup_tail.no())
        },
        fires: |j| j.speedometer.kind.set(SpeedometerKind::Electronic),
        clears: |j| {
            j.speedometer.kind.set(SpeedometerKind::Electronic);
            j.speedometer.drive.set(SpeedometerDrive::ToneRing);
            j.speedometer.pickup_tail.set(true);
        },
    }

    /// Looks for the speedometer hole left open.
    ///
    /// The hole leads into the rear housing; the first drive empties the unit through it. Source: common
    /// practice.
    "SPD-04" Stop Assembly {
        accepts: false,
        title: "Speedometer opening was left without a plug",
        shop: "The hole for the speedometer drive is open and the fluid will run out of it, hot. Fit the gear and \
               its holder, or a plug, before the unit is filled.",
        customer: None,
        fix: "Fit a plug, or the gear with its holder.",
        basis: "Common practice.",
        when: |j, _, _| j.speedometer.hole.is(SpeedometerHole::Open),
        fires: |j| j.speedometer.hole.set(SpeedometerHole::Open),
        clears: |j| {
            plugged(j);
            j.speedometer.other_fitted.set(true);
        },
    }

    /// Looks for a road vehicle that would be left without a speedometer.
    ///
    /// Most places want one that works on the road, and the local law decides. Source: common practice; local
    /// law.
    "SPD-05" Caution Spec {
        accepts: true,
        title: "Road vehicle left without a speedometer",
        shop: "The speedometer drive is plugged and nothing else shows the speed. Local law decides, and it rarely \
               allows that on the road. Note it on the tag and offer a satellite speedometer.",
        customer: Some("With this plan your car has no speedometer. In most places you may not drive on the road \
                        without one. Please have another kind fitted, and check your local law."),
        fix: "Fit another speedometer that needs no cable.",
        basis: "Common practice; local law decides.",
        when: |j, _, _| {
            j.usage.road_driven.yes()
                & j.speedometer.hole.is(SpeedometerHole::Plugged)
                & j.speedometer.other_fitted.no()
        },
        fires: plugged,
        clears: |j| {
            plugged(j);
            j.speedometer.other_fitted.set(true);
        },
    }

    /// Looks for an engine computer or cruise control that loses its speed signal.
    ///
    /// Some take the signal from the speedometer drive. With the drive plugged they idle badly, cut out or do
    /// nothing. Source: memory, medium.
    "SPD-06" Caution Spec {
        accepts: true,
        title: "A speed signal that something needs goes missing",
        shop: "Something in this vehicle needs the speed signal, and the drive it comes from is plugged. Ask whoever \
               tunes the engine, and provide a wheel or shaft sensor.",
        customer: Some("Your engine computer or cruise control needs to know the speed of the car. This plan takes \
                        that signal away. A sensor at a wheel can bring it back."),
        fix: "Fit a wheel or shaft sensor.",
        basis: "Memory, medium.",
        when: |j, _, _| {
            j.speedometer.signal_needed.yes()
                & j.speedometer.hole.is(SpeedometerHole::Plugged)
                & j.speedometer.kind.is_not(SpeedometerKind::Electronic)
        },
        fires: |j| {
            plugged(j);
            j.speedometer.other_fitted.set(true);
            j.speedometer.signal_needed.set(true);
        },
        clears: |j| {
            plugged(j);
            j.speedometer.other_fitted.set(true);
            j.speedometer.signal_needed.set(false);
        },
    }

    /// Checks whether the driven gear belongs in its holder.
    ///
    /// A holder sets the gear off to the side, by an amount made for a few tooth counts. In the wrong one the gears
    /// mesh too deep or too shallow and strip. Source: memory, medium.
    "SPD-07" Stop Assembly {
        accepts: false,
        title: "Driven gear does not belong in this holder",
        shop: "A holder sets its gear at the right depth only for some tooth counts, and this gear is not one of \
               them. The two gears would mesh badly and strip. Fit the holder that goes with the gear.",
        customer: None,
        fix: "Fit the holder for this number of teeth.",
        basis: "Memory, medium.",
        when: |j, _, _| j.speedometer.kind.is(SpeedometerKind::Cable) & j.speedometer.driven_fits_housing.no(),
        fires: |j| j.speedometer.driven_fits_housing.set(false),
        clears: |j| j.speedometer.driven_fits_housing.set(true),
    }
}

/// A satellite speedometer is planned and the old drive is plugged.
fn plugged(j: &mut Job) {
    j.speedometer.hole.set(SpeedometerHole::Plugged);
    j.speedometer.kind.set(SpeedometerKind::Gps);
}
