//! What turning does to a pack, what its springs push, what every element of a build must hold, a one-way's wedge.

use super::shared::{
    ENGINE_TORQUE, FIRST, FRICTION, PISTON, PLATES, PRESSURE, RADIUS, REVERSE, SECOND, SPRINGS, pack, ratio,
};
use crate::calc::holding::{Demand, Need, holding, need, three_speed_duties};
use crate::calc::piston::{FLUID, RotatingPiston, capacity_turning, head_force, self_apply_speed, spring_force};
use crate::calc::power_flow::three_speed::{Fitted, Trains, name};
use crate::calc::wedge::{Race, contact_pressure, friction_to_wedge, torque};
use crate::job::{UseKind, Word};
use crate::quantity::{Degree, Inch, One, PoundFoot, PoundForce, Quantity, Rpm};
use crate::rules::LimitId;
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

const OUTER: Input = Input::number::<Inch>("outer", "Piston outer seal, diameter", (1.0, 20.0), "6.0");
const INNER: Input = Input::number::<Inch>("inner", "Piston inner seal, diameter", (0.0, 19.0), "4.0");
const SURFACE: Input = Input::number::<Inch>("surface", "Where the fluid stands, diameter", (0.0, 19.0), "3.0")
    .hint("Where it is fed or runs off; no more than the inner seal for a full ring.");
const RELEASED: Input = Input::number::<PoundForce>("springs", "Release spring force, released", (0.0, 3000.0), "200");

const DRUM: &str = "A drum turned beyond what its maker allows bursts, and a pack that drags there burns. The drum maker's \
                    speed comes before any sum.";

const HEAD: &str = "pressure in a liquid that turns as one, any text on fluid mechanics; fluid density memory, medium";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "drum-head",
        title: "Fluid that turns with a drum",
        what: "The force of the turning fluid on a clutch piston, and the speed from which it holds a released clutch on \
               by itself.",
        inputs: &[OUTER, INNER, SURFACE, Input::number::<Rpm>("rpm", "Drum speed", (0.0, 20000.0), "6000"), RELEASED],
        work: head,
        care: DRUM,
    },
    Sum {
        name: "pack-turning",
        title: "What a pack holds while its drum turns",
        what: "The torque a pack holds with the head of the turning fluid added to line pressure.",
        inputs: &[
            FRICTION,
            PLATES,
            PRESSURE,
            PISTON,
            SPRINGS,
            RADIUS,
            OUTER,
            INNER,
            SURFACE,
            Input::number::<Rpm>("rpm", "Drum speed", (0.0, 20000.0), "6000"),
        ],
        work: turning,
        care: DRUM,
    },
    Sum {
        name: "spring-force",
        title: "Release springs: force at a height",
        what: "What a set of coil springs pushes at a height, from one of them weighed at another.",
        inputs: &[
            Input::count("count", "Springs", (1, 40), "14").fact("direct.springs"),
            Input::number::<Inch>("free", "Free height", (0.1, 6.0), "1.50"),
            Input::number::<Inch>("tested_at", "Height it was weighed at", (0.05, 6.0), "1.00"),
            Input::number::<PoundForce>("tested", "Weighed", (0.1, 500.0), "20"),
            Input::number::<Inch>("height", "Height in the drum", (0.05, 6.0), "1.10"),
        ],
        work: springs,
        care: "Release springs are pressed together with a compressor made for it, and let out with it: eyes covered.",
    },
    Sum {
        name: "need-by-range",
        title: "What every element must hold",
        what: "The most that each clutch, band and one-way clutch of a build must hold over all forward ranges and the trans \
               brake, converter and shock included.",
        inputs: &[
            FIRST,
            SECOND,
            REVERSE,
            ENGINE_TORQUE,
            Input::choice_of::<UseKind>("use", "Use", "street_strip").fact("use.kind"),
            Input::yes_no("brake", "Trans brake", "yes"),
            Input::yes_no("front_band", "Front band fitted", "yes"),
            Input::yes_no("one_way", "Intermediate one-way clutch fitted", "yes"),
            Input::ratio("stall_ratio", "Converter torque ratio at stall", (1.0, 4.0), "2.0")
                .hint("The maker's figure; blank leaves what it decides open.")
                .fact("converter.stall_ratio")
                .optional(),
        ],
        work: needs,
        care: "What the sum asks, parts have to hold: none of it says that they do.",
    },
    Sum {
        name: "one-way-wedge",
        title: "Rollers of a one-way clutch",
        what: "The friction that rollers need to wedge, what they carry by a force each, and how hard they press on the race.",
        inputs: &[
            Input::count("rollers", "Rollers", (1, 60), "16"),
            Input::number::<Degree>("angle", "Wedge angle, race to ramp", (0.5, 30.0), "7"),
            Input::number::<PoundForce>("force", "Force of each on the race", (1.0, 50_000.0), "2000"),
            Input::number::<Inch>("race", "Race diameter", (0.5, 15.0), "4.0"),
            Input::number::<Inch>("roller", "Roller diameter", (0.05, 2.0), "0.25"),
            Input::number::<Inch>("length", "Roller length", (0.05, 3.0), "0.6"),
            Input::choice("side", "Round race", side_words, "inner"),
        ],
        work: wedge,
        care: "A one-way clutch that lets go turns a drum over at once. Which way it goes on, and that it holds, is tried by \
               hand on the bench.",
    },
];

pub(super) fn side_words() -> Vec<Word> {
    vec![Word { code: "inner", label: "Inner race" }, Word { code: "outer", label: "Outer race" }]
}

/// The piston's ring; its outside has to be the largest.
fn ring(given: &Given<'_>) -> Result<RotatingPiston, Amiss> {
    let (outer, inner) = (given.number::<Inch>("outer")?, given.number::<Inch>("inner")?);
    let surface = given.number::<Inch>("surface")?;
    for (name, label, size) in
        [("inner", "Piston inner seal, diameter", inner), ("surface", "Where the fluid stands, diameter", surface)]
    {
        if size >= outer {
            let message =
                format!("{label} cannot be {}: it has to be less than the outer seal, {}.", short(size), short(outer));
            return Amiss::clash(name, message);
        }
    }
    Ok(RotatingPiston { outer: outer * 0.5, inner: inner * 0.5, surface: surface * 0.5 })
}

fn head_line(piston: &RotatingPiston, speed: Quantity<Rpm>) -> Line {
    let lower = if piston.inner > piston.surface { piston.inner } else { piston.surface };
    Line::new(
        "Force of the turning fluid",
        head_force(piston, FLUID, speed).to_whole(),
        "π/2 × density / 386.09 × ω² × ((outer⁴ - lower⁴) / 2 - surface² × (outer² - lower²)), radii",
        format!(
            "π/2 × {} / 386.09 × ω² × (({1}⁴ - {2}⁴) / 2 - {3}² × ({1}² - {2}²)) at {4}",
            short(FLUID),
            short(piston.outer),
            short(lower),
            short(piston.surface),
            short(speed)
        ),
        HEAD,
    )
}

fn head(given: &Given<'_>) -> Worked {
    let (piston, speed) = (ring(given)?, given.number::<Rpm>("rpm")?);
    let springs = given.number::<PoundForce>("springs")?;
    let by_itself = self_apply_speed(&piston, FLUID, springs);
    Ok(Outcome::default()
        .line(head_line(&piston, speed))
        .line(Line::new(
            "Holds a released clutch on from",
            by_itself.to_whole(),
            "speed at which the head is as strong as the release springs",
            format!("head of {} on that ring", short(springs)),
            HEAD,
        ))
        .remark("A ball or a bleed that lets the ring drain puts that speed off; a stuck one does not."))
}

fn turning(given: &Given<'_>) -> Worked {
    let pack = pack(given)?;
    let (piston, speed) = (ring(given)?, given.number::<Rpm>("rpm")?);
    let head = head_force(&piston, FLUID, speed);
    let holds = capacity_turning(&pack, head);
    let outcome = Outcome::default()
        .line(Line::new(
            "The pack holds",
            holds.to_whole(),
            "friction × 2 × plates × (pressure × area - springs + head) × mean radius / 12",
            format!(
                "{} × 2 × {} × ({} × {} - {} + {}) × {} / 12",
                ratio(pack.friction),
                pack.plates,
                short(pack.pressure),
                short(pack.piston),
                short(pack.springs),
                head.to_whole(),
                short(pack.mean_radius)
            ),
            "exact for the numbers given; areas measured by the shop",
        ))
        .line(head_line(&piston, speed));
    let open = (holds.value() <= 0.0).then(|| "The springs are stronger: the pack does not apply at all.".to_owned());
    Ok(outcome.remarks(open))
}

fn springs(given: &Given<'_>) -> Worked {
    let (free, tested_at) = (given.number::<Inch>("free")?, given.number::<Inch>("tested_at")?);
    let (tested, height) = (given.number::<PoundForce>("tested")?, given.number::<Inch>("height")?);
    if tested_at >= free {
        let message = format!(
            "Height it was weighed at cannot be {}: a spring pushes only below its free height, {}.",
            short(tested_at),
            short(free)
        );
        return Amiss::clash("tested_at", message);
    }
    let count = given.count("count")?;
    Ok(Outcome::default()
        .line(Line::new(
            "They push",
            spring_force(count, free, tested_at, tested, height).to_whole(),
            "springs × weighed × (free - height) / (free - height weighed at)",
            format!(
                "{} × {} × ({2} - {3}) / ({2} - {4})",
                count,
                short(tested),
                short(free),
                short(height),
                short(tested_at)
            ),
            "Hooke: coil springs are straight from free to solid",
        ))
        .remark("Weigh more than one: springs of a set differ, and old ones have set."))
}

fn needs(given: &Given<'_>) -> Worked {
    let (first, second, reverse) =
        (given.number::<One>("first")?, given.number::<One>("second")?, given.number::<One>("reverse")?);
    let engine_torque = given.number::<PoundFoot>("torque")?;
    let usage = given.chosen::<UseKind>("use")?;
    let fitted = Fitted { front_band: given.yes("front_band")?, intermediate_one_way: given.yes("one_way")? };
    let limits = given.limits();
    let demand = Demand {
        engine_torque,
        input_speed: Quantity::new(0.0),
        coupling: limits.coupling,
        shock: limits.shock(usage),
        stall_ratio: given.maybe("stall_ratio"),
    };
    let Some(trains) = Trains::from_ratios(first, second, reverse, fitted) else {
        let message = format!(
            "First gear ratio cannot be {} beside {} and {}: two sets on one sun do not make these three.",
            ratio(first),
            ratio(second),
            ratio(reverse)
        );
        return Amiss::clash("first", message);
    };
    let duties = three_speed_duties(fitted, given.yes("brake")?);
    let held = match holding(&trains, &demand, &duties) {
        Ok(held) => held,
        Err(fault) => return Amiss::clash("first", format!("First gear ratio cannot be {}: {fault}.", ratio(first))),
    };
    let line = |element: &&'static str| {
        let (value, range) = match need(&held, element) {
            Need::Nothing => return None,
            Need::Torque { range, load } => (load.to_whole(), range),
            Need::Unknown { range } => ("not known without the torque ratio at stall".to_owned(), range),
        };
        let found = held.iter().filter(|holding| holding.flow.range == range).flat_map(|holding| &holding.loads);
        let known = |part: Option<Quantity<One>>| part.map_or_else(|| "?".to_owned(), ratio);
        let mut parts = found.filter(|load| load.element == *element).map(|load| {
            format!(
                "{range}: {} × {} × {} × {}",
                short(engine_torque),
                known(load.share),
                known(load.multiplied),
                ratio(load.jolt)
            )
        });
        let first = parts.next();
        Some(Line::new(
            format!("The {element}"),
            value,
            "engine torque × share in the range that asks most × converter × shock on a one-way clutch",
            first.unwrap_or_default(),
            "share derived from the power flow; coupling and shock are the shop's",
        ))
    };
    Ok(Outcome::default().lines(name::ALL.iter().filter_map(line)).remark(format!(
        "The shop's own numbers in it: {}; {}. No margin is in it, and reverse is left out: its pressure is raised.",
        limits.used(LimitId::coupling),
        limits.used(LimitId::of_use(usage))
    )))
}

/// The most friction that oiled steel is known to have (memory, medium).
const OILED_STEEL_AT_MOST: f64 = 0.10;

pub(super) fn wedge(given: &Given<'_>) -> Worked {
    let (rollers, angle) = (given.count("rollers")?, given.number::<Degree>("angle")?);
    let (force, race) = (given.number::<PoundForce>("force")?, given.number::<Inch>("race")?);
    let (roller, length) = (given.number::<Inch>("roller")?, given.number::<Inch>("length")?);
    if roller >= race {
        let message = format!("Roller diameter cannot be {}: the race is only {}.", short(roller), short(race));
        return Amiss::clash("roller", message);
    }
    let side = if given.word("side")? == "outer" { Race::Outer } else { Race::Inner };
    let sign = if side == Race::Outer { "-" } else { "+" };
    let (race, roller) = (race * 0.5, roller * 0.5);
    let friction = friction_to_wedge(angle);
    let carries = torque(rollers, force, race, angle);
    let slips = friction.value() > OILED_STEEL_AT_MOST;
    let told = slips.then(|| {
        "So steep they do not wedge: oiled steel does not have that friction. They slip before they carry this, so it is \
         no capacity."
            .to_owned()
    });
    let outcome = Outcome::default()
        .remarks(told)
        .line(Line::new(
            "Friction they need to wedge",
            friction.to_places(3),
            "tan (angle / 2)",
            format!("tan ({} / 2)", short(angle)),
            "derived: balance of forces on the roller; oiled steel has about 0.06 to 0.10 (memory, medium)",
        ))
        .line(Line::new(
            "They carry",
            carries.to_whole(),
            "rollers × force × race radius × tan (angle / 2) / 12",
            format!("{rollers} × {} × {} × {} / 12", short(force), short(race), plain(friction.value())),
            "derived: balance of forces on the roller",
        ));
    let outcome = if slips { outcome } else { outcome.holding(carries) };
    Ok(outcome.line(Line::new(
        "Highest pressure on the race",
        contact_pressure(force, length, roller, race, side).to_whole(),
        "√(force × E / (2π (1 - 0.3²) × length × radius)), 1/radius = 1/roller ± 1/race",
        format!(
            "√({} × 30,020,000 / (2π × 0.91 × {}) × (1/{} {sign} 1/{}))",
            short(force),
            short(length),
            short(roller),
            short(race)
        ),
        "Hertz, line contact of steel on steel",
    )))
}
