use super::rules;
use crate::job::{BrakeKind, GearCut, InputShaft, Job, RaceShape, RearThrust, ValveBodyKind};
use crate::quantity::{One, Quantity};
use crate::rules::parts::{SPRAG_34, SPRAG_LARGE_HUB};
use crate::rules::{Known, Truth};

/// Does a stock input shaft have to carry what a trans brake puts on it?
fn stock_shaft_on_brake(j: &Job) -> Truth {
    j.gears.input_shaft.is(InputShaft::Stock) & j.valve_body.brake.is_not(BrakeKind::None)
}

/// How many times faster the input turns in first than in second, at one road speed.
fn step_to_second(j: &Job) -> Known<Quantity<One>> {
    j.gears.first_ratio.known().and(j.gears.second_ratio.known()).map(|(first, second)| Quantity::new(first / second))
}

/// An engine of this torque with a converter rated for it.
fn strong(j: &mut Job, lbft: f64) {
    j.engine.torque_lbft.set(Quantity::new(lbft));
    j.converter.rated_torque_lbft.set(Quantity::new(lbft));
}

/// A trans brake outside the case, with the manual valve body it belongs to.
fn outside_brake(j: &mut Job) {
    j.valve_body.brake.set(BrakeKind::External);
    j.valve_body.kind.set(ValveBodyKind::Manual);
}

/// A unit with a trans brake and this torque, its one-way clutch and its direct clutch both up to it.
fn built_for_the_brake(j: &mut Job, lbft: f64, piston: f64, line: f64) {
    outside_brake(j);
    strong(j, lbft);
    j.one_way.elements.set(SPRAG_LARGE_HUB);
    j.one_way.race_shape.set(RaceShape::RoundLarge);
    j.direct.piston_area_in2.set(Quantity::new(piston));
    j.bench.line_stall_psi.set(Quantity::new(line));
}

rules! {
    /// Finds straight-cut gears in a vehicle that is driven on the road.
    ///
    /// They are strong, and they whine in every gear but third, where the set turns as one. A customer who was
    /// not told takes the noise for a fault. Source: common practice; the silence in third is derived.
    "GER-01" Caution Spec {
        accepts: true,
        title: "Straight gears will whine every day on the road",
        shop: "This set can be heard in every gear but direct third. A customer who was not told takes that for a \
               fault. Tell them before you build, and have it signed.",
        customer: Some("The gears you chose are loud. You will hear them sing in all gears but third. That belongs to \
                        them, and nothing is broken."),
        fix: "Have the noise accepted in writing, or fit a helical set.",
        basis: "Common practice; that third is silent is derived, as the set turns locked.",
        when: |j, _, _| j.gears.cut.is(GearCut::Straight) & j.usage.road_driven.yes(),
        fires: |j| j.gears.cut.set(GearCut::Straight),
        clears: |j| j.gears.cut.set(GearCut::Helical),
    }

    /// Asks whether all gears on the bench belong to one set.
    ///
    /// Gears of different cut, count or maker do not mesh, or are worn out after a weekend. Source: memory,
    /// high.
    "GER-02" Stop Assembly {
        accepts: false,
        title: "Gears do not all belong to one set",
        shop: "Cut, tooth count and maker must agree right through the set, and here they do not. Do not assemble it; \
               find the parts of one set.",
        customer: None,
        fix: "Fit a matched set.",
        basis: "Memory, high.",
        when: |j, _, _| j.gears.parts_matched.no(),
        fires: |j| j.gears.parts_matched.set(false),
        clears: |j| j.gears.parts_matched.set(true),
    }

    /// Reads the end play of the worst planet pinion.
    ///
    /// Too much means a worn carrier; too little binds when hot. Source: TM 9-2320-387-24, 0.009 to 0.024 in,
    /// for a close relative; confidence medium for this unit.
    "GER-03" Stop Teardown {
        accepts: false,
        title: "Planet pinions have too little or too much room",
        shop: "The worst pinion has too much end play or too little: one is a worn carrier, the other binds when hot. \
               Replace the carrier or its thrust washers and feel every pinion again.",
        customer: None,
        fix: "Fit new thrust washers, or another carrier.",
        basis: "TM 9-2320-387-24, 0.009 to 0.024 in, for a close relative; confidence medium for this unit.",
        limits: [pinion_play_least, pinion_play_most],
        when: |j, _, l| {
            j.gears.pinion_play_in.below(l.pinion_play_least) | j.gears.pinion_play_in.above(l.pinion_play_most)
        },
        fires: |j| j.gears.pinion_play_in.set(Quantity::new(0.035)),
        clears: |j| j.gears.pinion_play_in.set(Quantity::new(0.015)),
    }

    /// Finds a stock input shaft behind a strong engine that is held on a trans brake.
    ///
    /// At stall the converter about doubles the engine's torque, and with the brake on the shaft has to take it.
    /// Source: shop setting; the figure is from memory, low.
    "GER-04" Caution Spec {
        accepts: true,
        title: "Plain input shaft where brake and power meet",
        shop: "On the brake the converter about doubles the engine's torque, and a stock input shaft has to take it. \
               At this torque an alloy shaft is the better choice.",
        customer: Some("At your power, the shaft into your unit works harder than we like while the trans brake \
                        holds. We advise a stronger shaft."),
        fix: "Fit an alloy input shaft.",
        basis: "Shop setting; the figure is from memory, low.",
        limits: [input_shaft_torque, input_shaft_torque_most],
        when: |j, _, l| {
            stock_shaft_on_brake(j)
                & j.engine.torque_lbft.above(l.input_shaft_torque)
                & j.engine.torque_lbft.at_most(l.input_shaft_torque_most)
        },
        fires: |j| {
            outside_brake(j);
            strong(j, 600.0);
            j.one_way.elements.set(SPRAG_34);
            j.direct.piston_area_in2.set(Quantity::new(24.0));
        },
        clears: |j| {
            strong(j, 600.0);
            j.one_way.elements.set(SPRAG_34);
        },
    }

    /// Finds a stock input shaft where engine and trans brake will twist it off.
    ///
    /// This is not a matter of luck any more, so the shop does not build it. Source: shop setting; the figure
    /// is from memory, low.
    "GER-05" Stop Spec {
        accepts: true,
        title: "Engine far beyond what this shop trusts a stock input to",
        shop: "Do not build it like this: at such a torque the stock input shaft twists as soon as the brake holds. \
               An alloy shaft is required.",
        customer: Some("The stock shaft into your unit is too weak for your power and a trans brake. It would break, \
                        so we do not build it like this. You can choose a stronger shaft."),
        fix: "Fit an alloy input shaft.",
        basis: "Shop setting; the figure is from memory, low.",
        limits: [input_shaft_torque_most],
        when: |j, _, l| stock_shaft_on_brake(j) & j.engine.torque_lbft.above(l.input_shaft_torque_most),
        fires: |j| built_for_the_brake(j, 900.0, 24.0, 220.0),
        clears: |j| {
            built_for_the_brake(j, 900.0, 24.0, 220.0);
            j.gears.input_shaft.set(InputShaft::Alloy);
        },
    }

    /// Asks for both measurements where a needle-bearing kit takes the place of the rear washers.
    ///
    /// The kit replaces a bronze washer and a selective one, together about 0.150 in. A stack of another height
    /// moves the gear set and spoils the end play. Source: looked up.
    "GER-06" Stop Assembly {
        accepts: false,
        title: "Rear bearings were renewed and nothing was measured",
        shop: "The bearing kit replaces the bronze and the selective washer, about 0.150 in together. Measure the old \
               stack and the new one, and make up the difference before you set the end play.",
        customer: None,
        fix: "Measure both stacks.",
        basis: "Looked up, about 0.150 in for the pair.",
        when: |j, _, _| j.gears.rear_thrust.is(RearThrust::Bearing) & j.gears.rear_stack_measured.no(),
        fires: |j| {
            j.gears.rear_thrust.set(RearThrust::Bearing);
            j.gears.rear_stack_measured.set(false);
        },
        clears: |j| {
            j.gears.rear_thrust.set(RearThrust::Bearing);
            j.gears.rear_stack_measured.set(true);
        },
    }

    /// Divides the first ratio by the second.
    ///
    /// The engine loses that much of its speed on the shift. A big step can drop it below where it pulls.
    /// Source: common practice.
    "GER-07" Note Spec {
        accepts: true,
        title: "Big step from first to second gear",
        shop: "The engine drops far in speed on the shift from first to second. Hold its torque curve and the stall \
               speed against that, or look at another gear set.",
        customer: Some("When the unit shifts from first to second, your engine speed drops a lot. Other gears would \
                        make that step smaller."),
        fix: "Choose another gear set.",
        basis: "Common practice.",
        limits: [first_step],
        when: |j, _, l| step_to_second(j).above(l.first_step),
        fires: |j| {
            j.gears.first_ratio.set(Quantity::new(2.97));
            j.gears.second_ratio.set(Quantity::new(1.56));
        },
        clears: |j| {
            j.gears.first_ratio.set(Quantity::new(2.48));
            j.gears.second_ratio.set(Quantity::new(1.48));
        },
    }

    /// Works out how fast the engine turns at the customer's cruising speed.
    ///
    /// The unit has three speeds and a direct top gear; only axle and tires can bring that number down. Whoever
    /// learns of it on the first long drive feels cheated. Source: the formula is exact.
    "GER-08" Note Spec {
        accepts: true,
        title: "Engine turns fast at cruising speed",
        shop: "The top gear of a three-speed is direct, with no overdrive, so this axle and tire keep the engine fast \
               at cruise. Tell the customer the number before you build.",
        customer: Some("Your engine turns fast at the speed you cruise, as this unit has no overdrive. Ask us for the \
                        number. Other tires or another axle can bring it down."),
        fix: "Change the axle ratio or the tires.",
        basis: "The formula is exact; the limit is a shop setting.",
        numbers: [cruise_rpm],
        limits: [cruise_rpm_most],
        when: |j, d, l| j.usage.road_driven.yes() & d.cruise_rpm.above(l.cruise_rpm_most),
        fires: |j| {
            j.vehicle.axle_ratio.set(Quantity::new(4.1));
            j.vehicle.tire_diameter_in.set(Quantity::new(26.0));
            j.speedometer.driven_teeth.set(25);
        },
        clears: |j| {
            j.vehicle.axle_ratio.set(Quantity::new(3.42));
            j.vehicle.tire_diameter_in.set(Quantity::new(27.0));
        },
    }

    /// Finds a heavy vehicle that leaves the line on a trans brake through a stock input shaft.
    ///
    /// When the brake lets go, the weight of the vehicle decides how hard the shaft is hit. Source: shop setting;
    /// the figure is from memory, low.
    "GER-09" Caution Spec {
        accepts: true,
        title: "Weight, brake and a plain input shaft come together",
        shop: "The heavier the vehicle, the harder the release of the brake hits the input shaft, and this one is \
               stock. Advise an alloy shaft.",
        customer: Some("Your vehicle is heavy, so the shaft into your unit is hit hard when the trans brake lets go. \
                        We advise a stronger one."),
        fix: "Use an alloy input shaft.",
        basis: "Shop setting; the figure is from memory, low.",
        limits: [heavy_on_brake],
        when: |j, _, l| stock_shaft_on_brake(j) & j.vehicle.weight_lb.above(l.heavy_on_brake),
        fires: |j| {
            outside_brake(j);
            j.vehicle.weight_lb.set(Quantity::new(5200.0));
        },
        clears: |j| {
            outside_brake(j);
            j.vehicle.weight_lb.set(Quantity::new(3300.0));
        },
    }
}
