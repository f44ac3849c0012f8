//! The driveshaft: the speed at which it whips, the longest tube, the angles of its joints.

use crate::calc::driveshaft::{
    critical_share, critical_speed, critical_speed_mass_at_midspan, longest_tube, tube_constant,
};
use crate::calc::joint::{angle_limit, peak_acceleration, speed_range, unevenness};
use crate::job::TubeMaterial;
use crate::quantity::{Degree, Inch, PoundPerCubicInch, Psi, Quantity, RadianPerSecondSquared, Rpm};
use crate::rules::{LimitId, Limits};
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

const MATERIAL: Input = Input::choice_of::<TubeMaterial>("material", "Tube", "steel").fact("driveshaft.material");
const OUTSIDE: Input =
    Input::number::<Inch>("outside", "Tube outside diameter", (1.0, 12.0), "3.0").fact("driveshaft.od_in");
const WALL: Input = Input::number::<Inch>("wall", "Tube wall", (0.02, 2.0), "0.083").fact("driveshaft.wall_in");
const HIGHEST: Input = Input::number::<Rpm>("highest", "Highest driveshaft speed", (100.0, 15000.0), "6500")
    .hint("In direct drive the shaft turns with the engine; behind an overdrive faster.")
    .fact("engine.max_rpm");

const WHIPS: &str = "A driveshaft that whips comes through the floor. Use the share the shop allows and no more, fit a \
                     loop, and have the shaft balanced by those who do it.";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "driveshaft-critical",
        title: "Driveshaft critical speed",
        what: "The speed at which a plain tube whips, and how near the highest speed comes to it.",
        inputs: &[
            MATERIAL,
            OUTSIDE,
            WALL,
            Input::number::<Inch>("length", "Joint center to joint center", (5.0, 150.0), "60")
                .fact("driveshaft.length_in"),
            HIGHEST.optional(),
        ],
        work: critical,
        care: WHIPS,
    },
    Sum {
        name: "driveshaft-longest",
        title: "Longest driveshaft tube",
        what: "The longest a tube may be for a speed, at the share of its critical speed that the shop allows.",
        inputs: &[MATERIAL, OUTSIDE, WALL, HIGHEST],
        work: longest,
        care: WHIPS,
    },
    Sum {
        name: "tube-metal",
        title: "Driveshaft: constant of another metal",
        what: "The constant that goes into a tube's critical speed, from the stiffness and the weight of its metal.",
        inputs: &[
            Input::number::<Psi>("stiffness", "Young's modulus", (1e6, 1e8), "30,000,000")
                .hint("Steel about 30,000,000, aluminum about 10,000,000 psi."),
            Input::number::<PoundPerCubicInch>("weight", "Weight of a cubic inch", (0.02, 0.5), "0.283")
                .hint("Steel 0.283, aluminum 0.098 lb."),
        ],
        work: metal_constant,
        care: WHIPS,
    },
    Sum {
        name: "joint-angles",
        title: "Driveshaft joint angles",
        what: "How unevenly a cross joint turns at its angle, and the largest angle for a speed.",
        inputs: &[
            Input::number::<Degree>("front", "Front joint angle", (0.0, 45.0), "2.0")
                .fact("driveshaft.front_angle_deg"),
            Input::number::<Degree>("rear", "Rear joint angle", (0.0, 45.0), "2.5").fact("driveshaft.rear_angle_deg"),
            HIGHEST,
        ],
        work: angles,
        care: "Angles are measured with the vehicle standing on its wheels, or on stands that hold it by the axles: never \
               under a vehicle on a jack.",
    },
];

/// The tube's metal, diameter and wall, which has to leave a bore.
fn tube(given: &Given<'_>) -> Result<(TubeMaterial, Quantity<Inch>, Quantity<Inch>), Amiss> {
    let (outside, wall) = (given.number::<Inch>("outside")?, given.number::<Inch>("wall")?);
    if wall.value() * 2.0 > outside.value() {
        let message =
            format!("Tube wall cannot be {}: it is at most half the diameter, {}.", short(wall), short(outside * 0.5));
        return Amiss::clash("wall", message);
    }
    Ok((given.chosen("material")?, outside, wall))
}

fn metal(material: TubeMaterial, limits: &Limits) -> String {
    format!("The tube's metal goes in by its {}.", limits.used(LimitId::of_tube(material)))
}

fn critical(given: &Given<'_>) -> Worked {
    let (material, outside, wall) = tube(given)?;
    let length = given.number::<Inch>("length")?;
    let limits = given.limits();
    let constant = limits.tube(material);
    let inside = outside - wall * 2.0;
    let speed = critical_speed(constant, outside, wall, length);
    let put_in = format!("{} × √({}² + {}²) / {}²", plain(constant.0), short(outside), short(inside), short(length));
    let mut outcome = Outcome::default().line(Line::new(
        "Critical speed",
        speed.to_whole(),
        "constant × √(outside² + inside²) / length²",
        &put_in,
        "Euler-Bernoulli beam: plain tube, pinned ends, mass spread along it; yokes bring it down",
    ));
    if let Some(highest) = given.maybe::<Rpm>("highest") {
        let share = critical_share(highest, speed);
        outcome = outcome
            .line(Line::new(
                "Share of it in use",
                share.to_percent(0),
                "highest speed / critical speed",
                format!("{} / {}", short(highest), speed.to_whole()),
                "exact",
            ))
            .at_most("The share in use", share.value(), LimitId::critical_near, limits);
    }
    let low = critical_speed_mass_at_midspan(constant, outside, wall, length);
    Ok(outcome
        .line(Line::new(
            "With all the mass at mid-span",
            low.to_whole(),
            "critical speed × √48 / π²",
            format!("{} × 0.702", speed.to_whole()),
            "a textbook simplification, 30 % low: only to recognize a printed answer made this way",
        ))
        .remark(metal(material, limits)))
}

fn longest(given: &Given<'_>) -> Worked {
    let (material, outside, wall) = tube(given)?;
    let highest = given.number::<Rpm>("highest")?;
    let limits = given.limits();
    let (constant, share) = (limits.tube(material), limits.critical_near);
    let inside = outside - wall * 2.0;
    let length = longest_tube(constant, outside, wall, highest, share);
    Ok(Outcome::default()
        .line(Line::new(
            "Longest, joint center to joint center",
            length.to_places(1),
            "√(constant × √(outside² + inside²) × share / speed)",
            format!(
                "√({} × √({}² + {}²) × {} / {})",
                plain(constant.0),
                short(outside),
                short(inside),
                plain(share.value()),
                short(highest)
            ),
            "Euler-Bernoulli beam: plain tube, pinned ends, mass spread along it",
        ))
        .remark(format!("The share goes in by the {}.", limits.used(LimitId::critical_near)))
        .remark(metal(material, limits)))
}

fn metal_constant(given: &Given<'_>) -> Worked {
    let (stiffness, weight) = (given.number::<Psi>("stiffness")?, given.number::<PoundPerCubicInch>("weight")?);
    Ok(Outcome::default()
        .line(Line::new(
            "Constant",
            plain((tube_constant(stiffness, weight).0 / 1e3).round() * 1e3),
            "30π / 4 × √(modulus × 386.09 / weight), inches and rpm",
            format!("30π / 4 × √({} × 386.09 / {})", short(stiffness), short(weight)),
            "Euler-Bernoulli beam, pinned ends, mass spread along the tube",
        ))
        .remark("Only for a metal: a wound tube is not as stiff one way as the other, and its maker gives its speed."))
}

/// With the sign close behind the number, as people write it.
fn degrees(angle: Quantity<Degree>, places: usize) -> String {
    format!("{:.places$}°", angle.value())
}

fn angles(given: &Given<'_>) -> Worked {
    let (front, rear) = (given.number::<Degree>("front")?, given.number::<Degree>("rear")?);
    let highest = given.number::<Rpm>("highest")?;
    let limits = given.limits();
    let larger = if front > rear { front } else { rear };
    let apart = (front - rear).abs();
    let peak = peak_acceleration(highest, larger);
    let (slowest, fastest) = speed_range(larger);
    let quiet = Quantity::<RadianPerSecondSquared>::new(400.0);
    let used = Quantity::<RadianPerSecondSquared>::new(1000.0);
    let at_most = |label: &str, limit, source: &'static str| match angle_limit(limit, highest) {
        Some(angle) => Line::new(
            label,
            degrees(angle, 1),
            "asin(√limit / ω), ω = 2π rpm / 60",
            format!("asin(√{} / ω) at {}", short(limit), short(highest)),
            source,
        ),
        None => Line::new(label, "any", "asin(√limit / ω)", format!("√{} is never reached", short(limit)), source),
    };
    Ok(Outcome::default()
        .line(Line::new(
            "Unevenness of the larger angle",
            unevenness(larger).to_percent(2),
            "tan angle × sin angle; the driven side goes from cos angle to 1 / cos angle",
            format!("tan {0} × sin {0}, from {1} to {2}", short(larger), slowest.to_places(4), fastest.to_places(4)),
            "geometry of one cross joint",
        ))
        .line(Line::new(
            "Peak acceleration of the driven side",
            peak.to_whole(),
            "ω² × sin² angle, ω = 2π rpm / 60",
            format!("ω² × sin² {} at {}", short(larger), short(highest)),
            "geometry, at most 2.3 % low up to 12°",
        ))
        .line(at_most("Largest angle for quiet running", quiet, "400 rad/s² reproduces a joint maker's quiet table"))
        .line(at_most("Largest angle in general use", used, "1,000 rad/s² reproduces the usual table (memory, high)"))
        .line(Line::new(
            "Front and rear apart",
            degrees(apart, 2),
            "front angle less rear angle, without its sign",
            format!("{} - {}", short(front), short(rear)),
            "exact; equal angles cancel each other",
        ))
        .at_most("The larger angle", larger.value(), LimitId::joint_angle, limits)
        .at_most("The difference", (apart.value() * 1e9).round() / 1e9, LimitId::joint_difference, limits))
}
