//! What the intermediate one-way clutch carries in second gear.

use super::shared::{ENGINE_TORQUE, SECOND, ratio};
use crate::calc::one_way::{load_share, second_gear_load};
use crate::job::{OneWayKind, UseKind};
use crate::quantity::{One, PoundFoot};
use crate::rules::LimitId;
use crate::sums::declaration::{Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, short};

pub(super) const SUMS: &[Sum] = &[Sum {
    name: "one-way-load",
    title: "Intermediate one-way clutch in second",
    what: "The torque on the outer race in second gear, shock included, against what the shop lets this clutch carry.",
    inputs: &[
        SECOND,
        ENGINE_TORQUE,
        Input::choice_of::<UseKind>("use", "Use", "street_strip").fact("use.kind"),
        Input::choice_of::<OneWayKind>("kind", "One-way clutch", "sprag").fact("one_way.kind"),
        Input::count("elements", "Rollers or sprag elements", (4, 60), "34")
            .hint("Count them.")
            .fact("one_way.elements"),
    ],
    work: load,
    care: "A one-way clutch that lets go in second turns the drum over at once and can burst it. Which way it goes on, and \
           that it holds, is tried by hand on the bench, whatever the sum says.",
}];

fn load(given: &Given<'_>) -> Worked {
    let (second, torque) = (given.number::<One>("second")?, given.number::<PoundFoot>("torque")?);
    let (usage, kind) = (given.chosen::<UseKind>("use")?, given.chosen::<OneWayKind>("kind")?);
    let elements = given.count("elements")?;
    let limits = given.limits();
    let (coupling, shock) = (limits.coupling, limits.shock(usage));
    let load = second_gear_load(second, torque, coupling, shock);
    let carries = limits.one_way(kind, elements);
    let share = load_share(load, carries);
    Ok(Outcome::default()
        .line(Line::new(
            "Torque on the outer race",
            load.to_whole(),
            "(second - 1) × torque × coupling × shock",
            format!("({} - 1) × {} × {} × {}", ratio(second), short(torque), ratio(coupling), ratio(shock)),
            "second - 1 derived; coupling and shock are the shop's",
        ))
        .line(Line::new(
            "Share of what the shop lets it carry",
            share.to_places(2),
            "torque on the race / what this clutch may carry",
            format!("{} / {}", load.to_whole(), short(carries)),
            "what it may carry is the shop's; above 1 is too much",
        ))
        .at_most("The torque on the race", load.value(), LimitId::of_one_way(kind, elements), limits)
        .remark(format!(
            "The shop's own numbers in it: {}; {}.",
            limits.used(LimitId::of_use(usage)),
            limits.used(LimitId::coupling)
        )))
}
