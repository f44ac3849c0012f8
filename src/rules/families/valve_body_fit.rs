use super::rules;
use crate::job::{BrakeKind, Fitted, Gasket, Job, RearPin, UseKind, ValveBodyKind};
use crate::quantity::Quantity;

rules! {
    /// Asks for the instruction sheet of the valve body.
    ///
    /// Plugs and balls are for good, and without a sheet each one is a guess. Ask the builder for one, or keep notes
    /// of what worked; some sheets leave much open. Source: common practice.
    "VLV-28" Caution Teardown {
        accepts: false,
        title: "Valve body has no instruction sheet",
        shop: "A plug driven on a guess stays where it is. Ask the builder for the sheet; where there is none, or it \
               leaves questions open, write and photograph what this shop found to work.",
        customer: None,
        fix: "Get the sheet, or write one.",
        basis: "Common practice.",
        when: |j, _, _| j.valve_body.sheet.no(),
        fires: |j| j.valve_body.sheet.set(false),
        clears: |j| j.valve_body.sheet.set(true),
    }

    /// Finds the front band left out of a vehicle that needs the engine's braking.
    ///
    /// Without the band held second runs free on overrun, and nothing but the wheel brakes holds the vehicle on a
    /// hill. Put it back for loads and hills. Source: memory, high.
    "VLV-29" Caution Spec {
        accepts: true,
        title: "In second nothing holds the vehicle back",
        shop: "The front band is out, so in second the wheels run ahead of the engine as soon as the driver lifts. Put \
               the band back in for loads and hills.",
        customer: Some("In second gear the engine will not hold you back on the way downhill, because a part is left \
                        out. For loads and hills, let us put it back."),
        fix: "Put the front band back in.",
        basis: "Memory, high.",
        when: |j, _, _| {
            j.bands.front.is(Fitted::Removed)
                & j.usage.kind.one_of(&[UseKind::Tow, UseKind::Street, UseKind::Offroad])
        },
        fires: |j| j.bands.front.set(Fitted::Removed),
        clears: |j| j.bands.front.set(Fitted::Fitted),
    }

    /// Measures the case face where the valve body goes on metal to metal.
    ///
    /// With no gasket between them nothing takes up a hollow, and one passage leaks into the next. Old gasket glue
    /// counts as much as a warp. Source: memory, low.
    "VLV-30" Stop Assembly {
        accepts: false,
        title: "No gasket called for, and the sealing face is not true",
        shop: "Metal on metal only seals on a flat face, and this one is too far out. Scrape off every trace of old \
               gasket glue, stone the face, and lay the straightedge on it again.",
        customer: None,
        fix: "Stone or machine the face flat.",
        basis: "Memory, low.",
        limits: [face_flat],
        when: |j, _, l| j.valve_body.gasket.is(Gasket::None) & j.case.face_flat_in.above(l.face_flat),
        fires: |j| {
            metal_on_metal(j);
            j.case.face_flat_in.set(Quantity::new(0.006));
        },
        clears: |j| {
            metal_on_metal(j);
            j.case.face_flat_in.set(Quantity::new(0.002));
        },
    }

    /// Compares the check balls put in with those the sheet asks for.
    ///
    /// A ball too few, or one too many, makes a shift fault that only shows on the road. A ball left over on the
    /// bench is a reason to open it again. Source: common practice.
    "VLV-31" Stop Assembly {
        accepts: false,
        title: "Check balls are not as many as the sheet says",
        shop: "The count of check balls is not that of the sheet. Count again, compare each place with the sheet and \
               take a photograph. Do not go on with a ball left over or missing.",
        customer: None,
        fix: "Put in as many balls as the sheet shows, each in its place.",
        basis: "Common practice.",
        when: |j, _, _| j.valve_body.check_balls_fitted.differs_from(&j.valve_body.check_balls_required),
        fires: |j| j.valve_body.check_balls_fitted.set(6),
        clears: |j| j.valve_body.check_balls_fitted.set(7),
    }

    /// Finds a trans brake named together with automatic shifts.
    ///
    /// A valve body with a brake is always shifted by hand, so one of the two entries is wrong. Parts ordered by it
    /// would be wrong, too. Source: common practice.
    "VLV-32" Stop Spec {
        accepts: false,
        title: "A trans brake is ordered, yet the unit shifts by itself",
        shop: "No valve body has both: one with a brake is always shifted by hand. Ask which of the two the customer \
               wants, and put the spec right before anything is ordered.",
        customer: Some("You asked for a trans brake and for a unit that shifts by itself. No unit does both, so please \
                        tell us which you want."),
        fix: "Put the spec right.",
        basis: "Common practice.",
        when: |j, _, _| {
            j.valve_body.brake.is_not(BrakeKind::None) & j.valve_body.kind.is(ValveBodyKind::Auto)
        },
        fires: |j| {
            j.valve_body.brake.set(BrakeKind::External);
            j.valve_body.kind.set(ValveBodyKind::Auto);
        },
        clears: |j| {
            j.valve_body.brake.set(BrakeKind::External);
            j.valve_body.kind.set(ValveBodyKind::Manual);
        },
    }

    /// Asks for the gauging of the rear band's apply pin where the band takes the load of a brake or of low.
    ///
    /// While the brake is on, this band holds against all the turbine gives. Reverse and low hang on it too. Gauge the
    /// pin and choose the right one. Source: derived from the ratios; the pin gauge is memory, high.
    "VLV-33" Stop Assembly {
        accepts: false,
        title: "Rear band pin was not gauged where the band works hardest",
        shop: "With the brake on, all that the turbine gives ends in the rear band, and low held by hand loads it too. \
               Gauge the apply pin, choose the right one and initial it.",
        customer: None,
        fix: "Gauge the apply pin and choose the right one.",
        basis: "Derived from the ratios; the pin gauge is memory, high.",
        when: |j, _, _| {
            (j.valve_body.brake.is_not(BrakeKind::None) | j.valve_body.low_band_first.yes())
                & j.bands.rear_pin.is_not(RearPin::Gauged)
        },
        fires: |j| {
            j.valve_body.brake.set(BrakeKind::External);
            j.bands.rear_pin.set(RearPin::NotGauged);
        },
        clears: |j| {
            j.valve_body.brake.set(BrakeKind::External);
            j.bands.rear_pin.set(RearPin::Gauged);
        },
    }
}

/// A valve body that goes on without a gasket, as its sheet says.
fn metal_on_metal(j: &mut Job) {
    j.valve_body.gasket.set(Gasket::None);
    j.valve_body.gasket_plan.set(Gasket::None);
}
