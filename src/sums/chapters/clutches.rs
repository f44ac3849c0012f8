//! Clutch packs: where a lining works, what a pack holds, what it must hold, the steel that brings its clearance.

use super::shared::{
    ENGINE_TORQUE, FIRST, FRICTION, PISTON, PLATES, PRESSURE, RADIUS, REVERSE, SECOND, SPRINGS, STALL_RATIO, pack,
    ratio,
};
use crate::calc::clutch::{
    capacity, direct_load_on_brake, direct_need, force_new, force_worn, mean_radius_new, mean_radius_worn,
};
use crate::calc::fit::each_steel;
use crate::calc::gear_set::direct_share_on_brake;
use crate::calc::holding::margin;
use crate::plan::sheet::AIR;
use crate::quantity::{Inch, One, PoundFoot, Psi, Quantity};
use crate::rules::LimitId;
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

pub(super) const TEARS: &str = "A pack that slips burns within seconds, and what it loses can lock the unit at speed. Areas and spring \
                     forces have to be measured on the parts that are fitted.";

const OUTSIDE: Input = Input::number::<Inch>("outside", "Lining outside diameter", (1.0, 20.0), "5.5");
const INSIDE: Input = Input::number::<Inch>("inside", "Lining inside diameter", (0.5, 19.0), "4.5");

pub(super) const NEED: Input = Input::number::<PoundFoot>("need", "Torque it has to hold", (1.0, 10000.0), "450")
    .hint("Before any margin. Leave it blank to see only what the pack holds.")
    .optional();

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "lining-radius",
        title: "Working radius of a lining",
        what: "The mean radius at which a plate's lining works, run in and new.",
        inputs: &[OUTSIDE, INSIDE],
        work: radius,
        care: "",
    },
    Sum {
        name: "lining-force",
        title: "Force a lining bears",
        what: "The force on a pack that brings its lining to a pressure, run in and new.",
        inputs: &[
            OUTSIDE,
            INSIDE,
            Input::number::<Psi>("pressure", "Pressure on the lining", (1.0, 3000.0), "300")
                .hint("What its maker allows; wet paper to 400 psi (memory, medium)."),
        ],
        work: force,
        care: "",
    },
    Sum {
        name: "clutch-capacity",
        title: "What a clutch pack holds",
        what: "The torque a pack holds with its plates, piston, pressure and springs; with a need given, how much is to \
               spare.",
        inputs: &[FRICTION, PLATES, PRESSURE, PISTON, SPRINGS, RADIUS, NEED],
        work: holds,
        care: TEARS,
    },
    Sum {
        name: "direct-need",
        title: "What the direct clutch must hold",
        what: "The need of the direct clutch in third gear, and on the trans brake where there is one, with the shop's \
               margin.",
        inputs: &[
            FIRST,
            SECOND,
            REVERSE,
            ENGINE_TORQUE,
            STALL_RATIO,
            Input::yes_no("brake", "Trans brake", "yes").hint("With one, the brake usually asks for more."),
        ],
        work: need,
        care: TEARS,
    },
    Sum {
        name: "pack-steel",
        title: "Steel that brings a pack to its clearance",
        what: "How thick the new steels have to be to bring a pack to the clearance wanted.",
        inputs: &[
            Input::number::<Inch>("old", "Steel now", (0.02, 0.5), "0.090"),
            Input::number::<Inch>("clearance", "Clearance measured", (0.0, 0.5), "0.140"),
            Input::number::<Inch>("target", "Clearance wanted", (0.005, 0.3), "0.060"),
            Input::count("changed", "Steels changed", (1, 10), "4"),
        ],
        work: steel,
        care: AIR,
    },
];

/// Outer and inner radius of the lining.
fn ring(given: &Given<'_>) -> Result<(Quantity<Inch>, Quantity<Inch>), Amiss> {
    let (outside, inside) = (given.number::<Inch>("outside")?, given.number::<Inch>("inside")?);
    if inside >= outside {
        let message = format!(
            "Lining inside diameter cannot be {}: it has to be less than the outside, {}.",
            short(inside),
            short(outside)
        );
        return Amiss::clash("inside", message);
    }
    Ok((outside * 0.5, inside * 0.5))
}

fn force(given: &Given<'_>) -> Worked {
    let (outer, inner) = ring(given)?;
    let pressure = given.number::<Psi>("pressure")?;
    Ok(Outcome::default()
        .line(Line::new(
            "Run in",
            force_worn(pressure, outer, inner).to_whole(),
            "2π × pressure × inner radius × (outer radius - inner radius)",
            format!("2π × {} × {1} × ({2} - {1})", short(pressure), short(inner), short(outer)),
            "uniform wear, any machine-design text: the pressure is highest at the inner edge",
        ))
        .line(Line::new(
            "New",
            force_new(pressure, outer, inner).to_whole(),
            "π × pressure × (outer radius² - inner radius²)",
            format!("π × {} × ({}² - {}²)", short(pressure), short(outer), short(inner)),
            "uniform pressure, any machine-design text",
        ))
        .remark("Every lining of a pack bears the same force: it does not divide by the plates."))
}

fn radius(given: &Given<'_>) -> Worked {
    let (outer, inner) = ring(given)?;
    let worn = mean_radius_worn(outer, inner);
    Ok(Outcome::default()
        .line(
            Line::new(
                "Run in",
                worn.to_places(3),
                "(outer radius + inner radius) / 2",
                format!("({} + {}) / 2", short(outer), short(inner)),
                "uniform wear, any machine-design text; the safe one to use",
            )
            .fills("direct.mean_radius_in", (worn.value() * 1e4).round() / 1e4),
        )
        .line(Line::new(
            "New",
            mean_radius_new(outer, inner).to_places(3),
            "2/3 × (outer³ - inner³) / (outer² - inner²)",
            format!("2/3 × ({0}³ - {1}³) / ({0}² - {1}²)", short(outer), short(inner)),
            "uniform pressure, any machine-design text",
        )))
}

pub(super) fn holds(given: &Given<'_>) -> Worked {
    let pack = pack(given)?;
    let holds = capacity(&pack);
    let mut outcome = Outcome::default().line(Line::new(
        "The pack holds",
        holds.to_whole(),
        "friction × 2 × plates × (pressure × area - springs) × mean radius / 12",
        format!(
            "{} × 2 × {} × ({} × {} - {}) × {} / 12",
            ratio(pack.friction),
            pack.plates,
            short(pack.pressure),
            short(pack.piston),
            short(pack.springs),
            short(pack.mean_radius)
        ),
        "exact for the numbers given; areas measured by the shop",
    ));
    outcome = outcome.holding(holds);
    if holds.value() <= 0.0 {
        let said = "The springs are stronger than the pressure: the pack does not apply at all.";
        return Ok(outcome.remark(said));
    }
    if let Some(need) = given.maybe::<PoundFoot>("need") {
        let margin = margin(holds, need).value();
        outcome = outcome
            .line(Line::new(
                "Margin",
                format!("{margin:.2}"),
                "what it holds / what it must hold",
                format!("{} / {}", holds.to_whole(), short(need)),
                "exact",
            ))
            .at_least("The margin", margin, LimitId::clutch_margin, given.limits());
    }
    Ok(outcome)
}

fn need(given: &Given<'_>) -> Worked {
    let (first, second, reverse) =
        (given.number::<One>("first")?, given.number::<One>("second")?, given.number::<One>("reverse")?);
    let (torque, stall) = (given.number::<PoundFoot>("torque")?, given.number::<One>("stall_ratio")?);
    let (coupling, margin) = (given.limits().coupling, given.limits().clutch_margin);
    let bare: Quantity<One> = Quantity::new(1.0);
    let third = direct_need(second, torque, coupling, None, bare);
    let share = direct_share_on_brake(first, reverse);
    let on_brake = given.yes("brake")?.then(|| direct_load_on_brake(share, torque, stall));
    let all = direct_need(second, torque, coupling, on_brake, margin);
    let larger = on_brake.map_or(third, |brake| if brake > third { brake } else { third });
    let mut outcome = Outcome::default()
        .line(Line::new(
            "Need, margin included",
            all.to_whole(),
            "margin × the larger of third gear and brake",
            format!("{} × {}", ratio(margin), larger.to_whole()),
            "derived; margin is the shop's",
        ))
        .line(Line::new(
            "In third gear",
            third.to_whole(),
            "(second - 1) / second × torque × coupling",
            format!("({0} - 1) / {0} × {1} × {2}", ratio(second), short(torque), ratio(coupling)),
            "derived; coupling is the shop's",
        ));
    if let Some(brake) = on_brake {
        outcome = outcome.line(Line::new(
            "On the brake",
            brake.to_whole(),
            "first / (first + reverse) × torque × torque ratio",
            format!("{0} / ({0} + {1}) × {2} × {3}", ratio(first), ratio(reverse), short(torque), ratio(stall)),
            "derived, with nothing pushing at the wheels",
        ));
    }
    let limits = given.limits();
    Ok(outcome.remark(format!(
        "The shop's own numbers in it: {}; {}.",
        limits.used(LimitId::clutch_margin),
        limits.used(LimitId::coupling)
    )))
}

fn steel(given: &Given<'_>) -> Worked {
    let (old, clearance, target) =
        (given.number::<Inch>("old")?, given.number::<Inch>("clearance")?, given.number::<Inch>("target")?);
    let changed = given.count("changed")?;
    let new = each_steel(old, clearance, target, changed);
    if new.value() <= 0.0 {
        let message =
            format!("Clearance wanted cannot be {}: the steels would have to be {}.", short(target), new.to_places(4));
        return Amiss::clash("target", message);
    }
    Ok(Outcome::default()
        .line(Line::new(
            "New steel",
            new.to_places(4),
            "steel now + (clearance - wanted) / steels changed",
            format!("{} + ({} - {}) / {}", short(old), short(clearance), short(target), plain(f64::from(changed))),
            "exact",
        ))
        .remark("Take the nearest steel there is, build the pack and measure again: only the second reading counts."))
}
