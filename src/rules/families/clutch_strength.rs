use super::rules;
use crate::job::{AirChecks, BrakeKind, CenterSeal, Job, ValveBodyKind};
use crate::quantity::Quantity;
use crate::rules::parts::SPRAG_34;

rules! {
    /// Looks for an air check that failed.
    ///
    /// A hiss now is a slipping clutch later, and behind the valve body nobody hears it any more. Find it while
    /// it can be reached. Source: common practice.
    "CLT-07" Stop Assembly {
        accepts: false,
        title: "One of the clutches failed its test with air",
        shop: "One of the feeds hisses instead of thumping. Leave the valve body off, find the seal, the ring or the \
               feed that leaks, put it right and check again.",
        customer: None,
        fix: "Find and replace the leaking seal or ring.",
        basis: "Common practice.",
        when: |j, _, _| j.bench.air_checks.is(AirChecks::Fail),
        fires: |j| j.bench.air_checks.set(AirChecks::Fail),
        clears: |j| j.bench.air_checks.set(AirChecks::Pass),
    }

    /// Looks for air checks that nobody has done yet.
    ///
    /// They are the last chance to hear a leak before the unit is closed, and cost minutes. Source: common
    /// practice; the ceiling of 50 psi is from TM 9-2320-280-34.
    "CLT-08" Stop Assembly {
        accepts: false,
        title: "Nobody has tried the clutches with air",
        shop: "No valve body goes on until every feed has been tried with air. Use regulated air of 50 psi or less, \
               wear glasses, and keep it away from skin.",
        customer: None,
        fix: "Check every feed with regulated air.",
        basis: "Common practice; the 50 psi ceiling is from TM 9-2320-280-34.",
        when: |j, _, _| j.bench.air_checks.is(AirChecks::NotDone),
        fires: |j| j.bench.air_checks.set(AirChecks::NotDone),
        clears: |j| j.bench.air_checks.set(AirChecks::Pass),
    }

    /// Compares the time the frictions soaked with the shop's least time.
    ///
    /// A dry friction burns the first time it takes hold. Half an hour in the right fluid prevents it. Source:
    /// common practice.
    "CLT-09" Caution Assembly {
        accepts: false,
        title: "Frictions would go in dry",
        shop: "Dry frictions burn at the first start. Before they are stacked, let them lie for half an hour, or as \
               long as the shop has set, in the same fluid the unit is filled with.",
        customer: None,
        fix: "Let the frictions lie in the unit's own fluid first.",
        basis: "Common practice.",
        limits: [friction_soak],
        when: |j, _, l| j.bench.friction_soak_min.below(l.friction_soak),
        fires: |j| j.bench.friction_soak_min.set(Quantity::new(5.0)),
        clears: |j| j.bench.friction_soak_min.set(Quantity::new(45.0)),
    }

    /// Compares what the direct clutch can hold with what third gear and the trans brake ask of it.
    ///
    /// The need has the shop's margin in it. A clutch that falls short slips; more piston area, plates
    /// or pressure lifts it. Source: the sums are exact, their inputs measured by the shop.
    "CLT-10" Caution Spec {
        accepts: true,
        title: "Direct clutch may slip under the torque put on it",
        shop: "By the sum the direct clutch holds less than third gear or the trans brake asks of it, margin \
               included. Feed both piston areas, add plates, or raise the pressure, and work it out again.",
        customer: Some("One clutch in your unit must hold in top gear and on a trans brake. By our sums it is small \
                        for your engine. We propose to make it stronger."),
        fix: "Let both areas of the piston work, stack more plates, or raise the line pressure.",
        basis: "The formula is exact; its inputs are measured by the shop.",
        numbers: [direct_need, direct_capacity],
        when: |_, d, _| d.direct_capacity.less_than(&d.direct_need),
        fires: |j| {
            brake_car(j, 650.0);
            j.direct.piston_area_in2.set(Quantity::new(13.5));
        },
        clears: |j| {
            brake_car(j, 650.0);
            j.direct.piston_area_in2.set(Quantity::new(24.0));
            j.direct.spring_lb.set(Quantity::new(250.0));
        },
    }

    /// Looks for the wavy plate in a direct drum that a trans brake uses.
    ///
    /// The wave softens the clutch, and that makes it let go of the brake slowly. A flat steel goes in its
    /// place. Source: memory, medium.
    "CLT-11" Caution Spec {
        accepts: false,
        title: "Wavy plate makes the trans brake let go slowly",
        shop: "The wavy plate cushions the direct clutch, so it lets go of the trans brake slowly. Put a flat steel \
               in its place and set the clearance again.",
        customer: None,
        fix: "Fit a flat steel and set the clearance.",
        basis: "Memory, medium.",
        when: |j, _, _| j.direct.wave.yes() & j.valve_body.brake.is_not(BrakeKind::None),
        fires: |j| {
            j.direct.wave.set(true);
            j.valve_body.brake.set(BrakeKind::External);
        },
        clears: |j| {
            j.direct.wave.set(true);
            j.valve_body.brake.set(BrakeKind::None);
        },
    }

    /// Counts the release springs of a direct drum that will be turned fast.
    ///
    /// Oil spun in the drum pushes on the piston. With springs missing the clutch can apply by itself; the full
    /// count or a bleed prevents it. Source: the count of 14 is from TM 9-2320-280-34; the speed line is memory,
    /// low.
    "CLT-12" Caution Assembly {
        accepts: false,
        title: "Direct springs are too weak for this engine speed",
        shop: "Oil is flung outward in a drum that spins, and at this engine speed it can push the piston on with no \
               pressure at all. Springs that should hold it back are missing. Put the full count back, or give the \
               drum a bleed.",
        customer: None,
        fix: "Fit the full count of release springs, or bleed the drum.",
        basis: "The count is from TM 9-2320-280-34; the speed line is memory, low.",
        limits: [direct_springs, direct_springs_speed],
        when: |j, _, l| {
            j.direct.springs.below(l.direct_springs) & j.engine.max_rpm.above(l.direct_springs_speed)
        },
        fires: |j| {
            fast_engine(j, 6800.0, 44.0, 3.5);
            j.direct.springs.set(10);
        },
        clears: |j| {
            fast_engine(j, 6800.0, 44.0, 3.5);
            j.direct.springs.set(14);
        },
    }

    /// Counts the sealing rings on the center support of a split feed.
    ///
    /// With the middle seal in, each piston area has its own oil, and a missing ring lets the two run together.
    /// Fewer rings belong only to a joined feed whose builder sheet says so. Source: TM 9-2320-289-34 for the
    /// four rings; memory, medium.
    "CLT-13" Stop Assembly {
        accepts: false,
        title: "Wrong number of support rings for a split feed",
        shop: "With the middle seal in, each feed needs rings of its own, four on the center support in all. Leave one \
               off only where the feeds are joined and the builder sheet says so.",
        customer: None,
        fix: "Fit all four sealing rings on the center support.",
        basis: "TM 9-2320-289-34 for the four rings; memory, medium.",
        limits: [support_rings],
        when: |j, _, l| j.direct.center_seal.is(CenterSeal::In) & j.direct.support_rings.is_not(l.support_rings),
        fires: |j| j.direct.support_rings.set(3),
        clears: |j| j.direct.support_rings.set(4),
    }
}

/// An engine of this torque on a trans brake, with the one-way clutch that goes with it.
fn brake_car(j: &mut Job, torque: f64) {
    j.engine.torque_lbft.set(Quantity::new(torque));
    j.converter.rated_torque_lbft.set(Quantity::new(torque));
    j.valve_body.brake.set(BrakeKind::External);
    j.valve_body.kind.set(ValveBodyKind::Manual);
    j.one_way.elements.set(SPRAG_34);
}

/// An engine that turns so fast, with a driveshaft of this length and width that can follow.
fn fast_engine(j: &mut Job, rpm: f64, length: f64, width: f64) {
    j.engine.max_rpm.set(Quantity::new(rpm));
    j.driveshaft.length_in.set(Quantity::new(length));
    j.driveshaft.od_in.set(Quantity::new(width));
}
