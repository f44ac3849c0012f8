use super::rules;
use crate::job::ValveBodyKind;
use crate::quantity::Quantity;

rules! {
    /// Reads the front end play and holds it against the least and the most that is allowed.
    ///
    /// Too little binds when the unit is hot; too much lets the drums walk into each other. The washer behind the pump
    /// sets it. Source: memory, high (0.003 to 0.024 in); a close relative's manual, TM 9-2320-387-24, has 0.004 to
    /// 0.022.
    "MEA-01" Stop Assembly {
        accepts: false,
        title: "Front end play has to be set again",
        shop: "The front end play lies outside its limits. The washer behind the pump sets it: take the old thickness, \
               add what you read and take off 0.012 in. Fit the nearest one there is, torque the pump and read once \
               more.",
        customer: None,
        fix: "Fit another selective washer at the pump and read again.",
        basis: "Memory, high (0.003 to 0.024 in); TM 9-2320-387-24, a close relative, has 0.004 to 0.022.",
        limits: [front_play_least, front_play_most],
        when: |j, _, l| {
            j.bench.front_end_play_in.below(l.front_play_least) | j.bench.front_end_play_in.above(l.front_play_most)
        },
        fires: |j| j.bench.front_end_play_in.set(Quantity::new(0.035)),
        clears: |j| j.bench.front_end_play_in.set(Quantity::new(0.015)),
    }

    /// Reads the rear end play and holds it against the least and the most that is allowed.
    ///
    /// It shows whether the rear gear set is home; outside these limits it binds, or hammers. The rear selective
    /// washer sets it. Source: TM 9-2320-280-34, a close relative, 0.005 to 0.025 in.
    "MEA-02" Stop Assembly {
        accepts: false,
        title: "Rear end play has to be set again",
        shop: "The rear end play lies outside its limits. The washer at the back of the case sets it: take the old \
               thickness, add what you read and take off 0.010 in. Fit the nearest one there is, torque the center \
               support and read once more.",
        customer: None,
        fix: "Fit another rear selective washer and read again.",
        basis: "TM 9-2320-280-34, a close relative: 0.005 to 0.025 in.",
        limits: [rear_play_least, rear_play_most],
        when: |j, _, l| {
            j.bench.rear_end_play_in.below(l.rear_play_least) | j.bench.rear_end_play_in.above(l.rear_play_most)
        },
        fires: |j| j.bench.rear_end_play_in.set(Quantity::new(0.031)),
        clears: |j| j.bench.rear_end_play_in.set(Quantity::new(0.010)),
    }

    /// Finds a rear end play within the wide limits and above what this unit is built to.
    ///
    /// Loose is worst behind helical gears, which push back under load. A thicker washer costs minutes now and a
    /// teardown later. Source: memory, medium (0.007 to 0.019 in).
    "MEA-03" Caution Assembly {
        accepts: false,
        title: "Rear end play is within limits and near the loose end",
        shop: "The rear end play is inside the wide limits but looser than this unit is built to. Tighten it with the \
               next rear washer, above all with helical gears, which push back under load.",
        customer: None,
        fix: "Fit the next thicker rear selective washer.",
        basis: "Memory, medium (0.007 to 0.019 in).",
        limits: [rear_play_loose, rear_play_most],
        when: |j, _, l| {
            j.bench.rear_end_play_in.above(l.rear_play_loose) & j.bench.rear_end_play_in.at_most(l.rear_play_most)
        },
        fires: |j| j.bench.rear_end_play_in.set(Quantity::new(0.022)),
        clears: |j| j.bench.rear_end_play_in.set(Quantity::new(0.012)),
    }

    /// Finds a rear end play within the wide limits and below what this unit is built to.
    ///
    /// A center support that is not drawn home reads tight, and so does a shaft that was not pushed fully in. Make
    /// sure of the reading before a washer is changed. Source: memory, medium (0.007 to 0.019 in).
    "MEA-04" Caution Assembly {
        accepts: false,
        title: "Rear end play is within limits and near the tight end",
        shop: "The rear end play is inside the wide limits but tighter than this unit is built to. Torque the \
               center-support bolt, push the shaft fully in, and read again before any washer is changed.",
        customer: None,
        fix: "Torque the center-support bolt and read again.",
        basis: "Memory, medium (0.007 to 0.019 in).",
        limits: [rear_play_least, rear_play_tight],
        when: |j, _, l| {
            j.bench.rear_end_play_in.at_least(l.rear_play_least) & j.bench.rear_end_play_in.below(l.rear_play_tight)
        },
        fires: |j| j.bench.rear_end_play_in.set(Quantity::new(0.006)),
        clears: |j| j.bench.rear_end_play_in.set(Quantity::new(0.008)),
    }

    /// Asks whether the input shaft turns by hand once the pump is bolted down.
    ///
    /// If it does not, a hub sits on the edge of a plate, and the next turn of the wrench breaks it. Take the stack
    /// apart and set it again. Source: common practice.
    "MEA-05" Stop Assembly {
        accepts: false,
        title: "Closed unit cannot be turned over by hand",
        shop: "Turn no bolt any further: somewhere a hub has not slid through all of its plates, and the pump would \
               crush them. Lift the pump out, stack again, and keep the input turning by hand while the bolts come up \
               evenly.",
        customer: None,
        fix: "Restack until the input turns by hand.",
        basis: "Common practice.",
        when: |j, _, _| j.bench.input_turns_free.no(),
        fires: |j| j.bench.input_turns_free.set(false),
        clears: |j| j.bench.input_turns_free.set(true),
    }

    /// Reads line pressure in drive at hot idle, behind a valve body that shifts by itself.
    ///
    /// Low means slipping clutches, high means hard shifts and a strained pump; either has a cause that can be found.
    /// The valve body's own sheet goes before these limits. Source: memory, low.
    "MEA-06" Caution Test {
        accepts: false,
        title: "Pressure does not suit a body that shifts by itself",
        shop: "Line pressure at hot idle in drive lies outside the limits. Too low: look at the pump, the filter and \
               its O-ring, and the regulator. Too high: look at the modulator and its vacuum hose.",
        customer: None,
        fix: "Find the cause, then read the pressure again hot.",
        basis: "Memory, low; the valve body's own sheet decides.",
        limits: [auto_line_least, auto_line_most],
        when: |j, _, l| {
            j.valve_body.kind.is(ValveBodyKind::Auto)
                & (j.bench.line_drive_idle_psi.below(l.auto_line_least)
                    | j.bench.line_drive_idle_psi.above(l.auto_line_most))
        },
        fires: |j| j.bench.line_drive_idle_psi.set(Quantity::new(120.0)),
        clears: |j| j.bench.line_drive_idle_psi.set(Quantity::new(70.0)),
    }

    /// Reads line pressure in drive at hot idle, behind a valve body that is shifted by hand.
    ///
    /// Such a body runs at high pressure all the time. Too little lets the clutches slip; too much strains pump and
    /// cooler. The builder's sheet goes before these limits. Source: memory, low.
    "MEA-07" Caution Test {
        accepts: false,
        title: "Pressure does not suit a body shifted by hand",
        shop: "Line pressure at hot idle lies outside the limits for a manual valve body. Compare it with the builder's \
               sheet. Too high strains the pump and the cooler; the regulator spring sets it.",
        customer: None,
        fix: "Change the regulator spring, then read the pressure again hot.",
        basis: "Memory, low; the builder's sheet decides.",
        limits: [manual_line_least, manual_line_most],
        when: |j, _, l| {
            j.valve_body.kind.is(ValveBodyKind::Manual)
                & (j.bench.line_drive_idle_psi.below(l.manual_line_least)
                    | j.bench.line_drive_idle_psi.above(l.manual_line_most))
        },
        fires: |j| {
            j.valve_body.kind.set(ValveBodyKind::Manual);
            j.bench.line_drive_idle_psi.set(Quantity::new(110.0));
        },
        clears: |j| {
            j.valve_body.kind.set(ValveBodyKind::Manual);
            j.bench.line_drive_idle_psi.set(Quantity::new(180.0));
        },
    }

    /// Compares the pressure in reverse with that in drive, behind a valve body that shifts by itself.
    ///
    /// Reverse works its clutch and its band harder and needs the boost. Without it reverse slips and burns. Look for
    /// the leak before the unit leaves the stand. Source: memory, high.
    "MEA-08" Stop Test {
        accepts: false,
        title: "Reverse makes no more line pressure than drive",
        shop: "Pressure in reverse does not rise above drive, so the boost circuit leaks or the wrong plate is fitted. \
               Reverse would slip and burn. Find the leak before the unit leaves the stand.",
        customer: None,
        fix: "Find the leak in the boost circuit, or the wrong plate.",
        basis: "Memory, high.",
        when: |j, _, _| {
            j.valve_body.kind.is(ValveBodyKind::Auto)
                & j.bench.line_reverse_idle_psi.not_more_than(&j.bench.line_drive_idle_psi)
        },
        fires: |j| {
            j.bench.line_reverse_idle_psi.set(Quantity::new(65.0));
            j.bench.line_drive_idle_psi.set(Quantity::new(70.0));
        },
        clears: |j| {
            j.bench.line_reverse_idle_psi.set(Quantity::new(110.0));
            j.bench.line_drive_idle_psi.set(Quantity::new(70.0));
        },
    }

    /// Asks for the date on the pressure gauge's calibration sticker.
    ///
    /// A gauge that reads wrong passes a bad unit and sends a good one back to the bench. Read again with one that is
    /// in date. Source: common practice.
    "MEA-09" Caution Test {
        accepts: false,
        title: "Nobody can vouch for the gauge that was read",
        shop: "The gauge has no calibration sticker in date, so nobody should sign for the pressures it showed. Have it \
               calibrated, or read them again with a gauge that is in date.",
        customer: None,
        fix: "Calibrate the gauge and read the pressures again.",
        basis: "Common practice.",
        when: |j, _, _| j.bench.gauge_cal_ok.no(),
        fires: |j| j.bench.gauge_cal_ok.set(false),
        clears: |j| j.bench.gauge_cal_ok.set(true),
    }
}
