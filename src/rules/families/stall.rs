use super::rules;
use crate::calc::converter::off_the_label;
use crate::job::{BrakeKind, Cooler, Job, UseKind, ValveBodyKind};
use crate::quantity::Quantity;
use crate::rules::Together;
use crate::rules::parts::SPRAG_34;

rules! {
    /// Compares the stall behind this engine with the engine speed at cruise.
    ///
    /// A converter that stalls above cruise slips all day on the road, and slip is heat and fuel. A lower stall
    /// cures it; a bigger cooler bears it. Source: the formula is exact; the margin is a shop setting.
    "CNV-08" Caution Spec {
        accepts: true,
        title: "Converter would still slip at cruising speed",
        shop: "At cruise this converter still slips, which costs fuel and makes heat all day. Choose a lower stall, \
               or plan a bigger cooler and let the customer accept it.",
        customer: Some("At cruise the converter (the fluid drive behind your engine) will still slip (lose some of its \
                        drive). That makes heat and burns more fuel. You can choose one that slips less, or a bigger \
                        cooler."),
        fix: "Choose a lower stall, or fit a bigger cooler.",
        basis: "The formula is exact; the margin is a shop setting.",
        numbers: [stall_here, cruise_rpm],
        limits: [stall_under_cruise],
        when: |j, d, l| {
            j.usage.road_driven.yes() & d.stall_here.more_than(&d.cruise_rpm.map(|cruise| cruise - l.stall_under_cruise))
        },
        fires: |j| j.converter.stall_rpm.set(Quantity::new(3600.0)),
        clears: |j| j.converter.stall_rpm.set(Quantity::new(1900.0)),
    }

    /// Looks for a high stall behind a vehicle that tows.
    ///
    /// Under a trailer the converter works near its stall on every grade, and the higher that lies, the more
    /// heat it makes. A lower stall is the cure. Source: common practice.
    "CNV-09" Caution Spec {
        accepts: true,
        title: "Stall is high for towing",
        shop: "With a trailer behind it this stall makes heat on every grade. Advise a converter with a lower stall \
               for this torque.",
        customer: Some("Your converter (the fluid drive behind your engine) makes much heat on hills with a trailer. \
                        For towing we advise one that takes hold at a lower engine speed."),
        fix: "Choose a lower stall.",
        basis: "Common practice.",
        numbers: [stall_here],
        limits: [tow_stall],
        when: |j, d, l| j.usage.kind.is(UseKind::Tow) & d.stall_here.above(l.tow_stall),
        fires: |j| {
            tow_vehicle(j);
            j.converter.stall_rpm.set(Quantity::new(2800.0));
            j.vehicle.axle_ratio.set(Quantity::new(4.1));
            j.speedometer.driven_teeth.set(25);
        },
        clears: |j| {
            tow_vehicle(j);
            j.converter.stall_rpm.set(Quantity::new(1800.0));
        },
    }

    /// Compares the stall behind this engine with the speed of its peak torque, for a drag car on the brake.
    ///
    /// Released well below its peak torque, the engine leaves softly. The converter's builder can set the stall
    /// for the real torque. Source: common practice.
    "CNV-10" Note Spec {
        accepts: true,
        title: "At this stall the engine is far from its best pull",
        shop: "The car will leave the line softly, because the engine is held well below its peak torque. Talk to \
               the builder of the converter with the real torque figure.",
        customer: Some("On the brake your converter (the fluid drive behind your engine) holds the engine below its \
                        best pull. The car will leave softly. Its builder can change that."),
        fix: "Have the converter set to a higher stall.",
        basis: "Common practice.",
        numbers: [stall_here],
        limits: [soft_launch],
        when: |j, d, l| {
            j.valve_body.brake.is_not(BrakeKind::None)
                & j.usage.kind.is(UseKind::Drag)
                & d.stall_here.less_than(&j.engine.torque_peak_rpm.known().map(|peak| peak - l.soft_launch))
        },
        fires: |j| {
            drag_car(j, 4600.0);
            j.converter.stall_rpm.set(Quantity::new(3000.0));
        },
        clears: |j| {
            drag_car(j, 4600.0);
            j.converter.stall_rpm.set(Quantity::new(4600.0));
        },
    }

    /// Compares the stall behind this engine with the figure on the label.
    ///
    /// Four times the torque makes twice the stall, so a label is right only behind the engine it was tried on. Who
    /// knows the estimate is not surprised. Source: the formula with a constant capacity factor; common practice.
    "CNV-11" Note Spec {
        accepts: true,
        title: "Expect another stall speed than the label promises",
        shop: "Four times the torque makes twice the stall, and this engine's torque is far from the one on the label. \
               Write the estimate on the build summary, so that nobody expects the label figure.",
        customer: Some("Your converter (the fluid drive behind your engine) will take hold at another engine speed \
                        than its label says. Please go by our estimate, not by the label."),
        fix: "Nothing, or have the converter set again for this torque.",
        basis: "The formula holds the capacity factor constant; common practice.",
        numbers: [stall_here],
        limits: [stall_off_label],
        when: |j, d, l| {
            let off = (d.stall_here, j.converter.stall_rpm.known()).together();
            off.map(|(here, label)| off_the_label(here, label)).size().above(l.stall_off_label)
        },
        fires: |j| {
            j.engine.torque_lbft.set(Quantity::new(600.0));
            j.converter.rated_torque_lbft.set(Quantity::new(380.0));
            j.one_way.elements.set(SPRAG_34);
        },
        clears: |j| {
            j.engine.torque_lbft.set(Quantity::new(400.0));
            j.converter.rated_torque_lbft.set(Quantity::new(380.0));
        },
    }

    /// Looks for a converter with a plain cover on a trans brake.
    ///
    /// Pressure on the brake can swell the cover and push the crank forward. A heavy cover stands it. Source:
    /// memory, medium.
    "CNV-12" Caution Spec {
        accepts: true,
        title: "Converter cover may bulge under the trans brake",
        shop: "On the brake a plain cover can swell and push on the crank. At this torque advise a converter with a \
               heavy cover, and write down what the customer chooses.",
        customer: Some("On a trans brake the shell of a plain converter (the fluid drive behind your engine) can \
                        swell. We advise one with a stronger shell."),
        fix: "Fit a converter with a heavy cover.",
        basis: "Memory, medium.",
        limits: [plain_cover_torque],
        when: |j, _, l| {
            j.valve_body.brake.is_not(BrakeKind::None)
                & j.converter.anti_balloon.no()
                & j.engine.torque_lbft.at_most(l.plain_cover_torque)
        },
        fires: |j| brake_car(j, 450.0, false),
        clears: |j| brake_car(j, 450.0, true),
    }

    /// Looks for a plain cover on a trans brake behind a strong engine.
    ///
    /// With this much torque the cover balloons, and the crank's thrust bearing goes with it. Only a heavy cover
    /// may go in. Source: memory, medium.
    "CNV-13" Stop Spec {
        accepts: true,
        title: "Converter cover is too soft for this power and brake",
        shop: "Do not fit this converter. With this torque on the brake a plain cover balloons and takes the thrust \
               bearing of the crank with it. Use a heavy cover.",
        customer: Some("With your power on the brake, a plain converter (the fluid drive behind your engine) can \
                        swell and harm the engine. You need one with a stronger shell."),
        fix: "Fit a converter with a heavy cover.",
        basis: "Memory, medium.",
        limits: [plain_cover_torque],
        when: |j, _, l| {
            j.valve_body.brake.is_not(BrakeKind::None)
                & j.converter.anti_balloon.no()
                & j.engine.torque_lbft.above(l.plain_cover_torque)
        },
        fires: |j| brake_car(j, 650.0, false),
        clears: |j| brake_car(j, 650.0, true),
    }
}

/// A vehicle that tows, with both coolers.
fn tow_vehicle(j: &mut Job) {
    j.usage.kind.set(UseKind::Tow);
    j.cooling.cooler.set(Cooler::Both);
}

/// A drag car on the brake whose engine pulls hardest at this speed.
fn drag_car(j: &mut Job, peak: f64) {
    j.valve_body.brake.set(BrakeKind::External);
    j.valve_body.kind.set(ValveBodyKind::Manual);
    j.usage.kind.set(UseKind::Drag);
    j.usage.road_driven.set(false);
    j.engine.torque_peak_rpm.set(Quantity::new(peak));
    j.one_way.elements.set(SPRAG_34);
}

/// A car on the brake, its converter rated at its own torque, with a heavy cover or without.
fn brake_car(j: &mut Job, torque: f64, heavy_cover: bool) {
    j.valve_body.brake.set(BrakeKind::External);
    j.converter.anti_balloon.set(heavy_cover);
    j.engine.torque_lbft.set(Quantity::new(torque));
    j.converter.rated_torque_lbft.set(Quantity::new(torque));
    j.one_way.elements.set(SPRAG_34);
}
