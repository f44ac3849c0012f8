//! Fluid: how it grows with heat, what that does to the level, what a pan holds.

use crate::calc::fluid::{Part, growth, growth_by_rule, level_rise, pan_volume};
use crate::quantity::{AtCelsius, CubicInch, Inch, KilogramPerCubicMetre, Quantity, Quart, SquareInch};
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "fluid-growth",
        title: "Fluid: growth with heat, and the level",
        what: "How much fluid grows from cold to hot, and how far the level rises for it.",
        inputs: &[
            Input::number::<Quart>("fluid", "Fluid in the unit", (0.5, 40.0), "11").fact("fluid.capacity_qt"),
            Input::temperature("cold", "Cold", (-20.0, 150.0), "70 F"),
            Input::temperature("hot", "Hot", (-20.0, 150.0), "190 F"),
            Input::number::<KilogramPerCubicMetre>("density", "Density at 15 °C", (800.0, 1160.0), "860")
                .hint("From the fluid's data sheet; 840 to 870 is usual."),
            Input::number::<SquareInch>("surface", "Surface of the fluid in the pan", (10.0, 1000.0), "150")
                .hint("Length × width at the level; blank to leave the level out.")
                .optional(),
        ],
        work: grows,
        care: "The level is read the way the unit's manual says: running, in the gear it names, at the heat it names, \
               parking brake on and wheels chocked.",
    },
    Sum {
        name: "pan-volume",
        title: "What a pan holds",
        what: "The quarts in a pan up to a level, part by part.",
        inputs: &[
            Input::numbers::<Inch>("parts", "Parts: length, width, depth", (0.05, 60.0), (3, 18), "14 10 2; 8 10 1")
                .hint("Three inside sizes of each level part, parts with a semicolon between them."),
            Input::number::<CubicInch>("taken", "What stands in it", (0.0, 2000.0), "12")
                .hint("Filter and valve body below the level; blank for nothing.")
                .optional(),
        ],
        work: holds,
        care: "",
    },
];

fn grows(given: &Given<'_>) -> Worked {
    let fluid = given.number::<Quart>("fluid")?;
    let (cold, hot) = (given.number::<AtCelsius>("cold")?, given.number::<AtCelsius>("hot")?);
    let density = given.number::<KilogramPerCubicMetre>("density")?;
    let share = growth(density, cold, hot);
    let more = fluid * share.value();
    let mut outcome = Outcome::default()
        .line(Line::new(
            "It grows by",
            more.to_places(2),
            "fluid × share",
            format!("{} × {}", short(fluid), plain(share.value())),
            "exact for that share",
        ))
        .line(Line::new(
            "Share",
            share.to_percent(2),
            "volume factor cold / hot - 1; factor = exp(-α ΔT (1 + 0.8 α ΔT)), α = 0.6278 / density, ΔT from 15 °C",
            format!("from {} to {}, α = 0.6278 / {}", short(cold), short(hot), short(density)),
            "ASTM D1250-80, table 54D (looked up in a public code file; memory, high)",
        ))
        .line(Line::new(
            "Share by the simple rule",
            growth_by_rule(cold, hot).to_percent(2),
            "0.0007 × (hot - cold), temperatures in °C",
            format!("0.0007 × ({} - {})", short(hot), short(cold)),
            "looked up: a fluids engineer, quoted; the other is better above 60 °C",
        ));
    if let Some(surface) = given.maybe::<SquareInch>("surface") {
        outcome = outcome.line(Line::new(
            "The level rises by",
            level_rise(more, surface).to_places(2),
            "growth × 57.75 / surface",
            format!("{} × 57.75 / {}", short(more), short(surface)),
            "right only if all of it shows in the pan",
        ));
    }
    Ok(outcome)
}

fn holds(given: &Given<'_>) -> Worked {
    let sizes = given.numbers::<Inch>("parts")?;
    if !sizes.len().is_multiple_of(3) {
        let message = format!("Parts: length, width, depth cannot be {} numbers: each part has three.", sizes.len());
        return Amiss::clash("parts", message);
    }
    let part = |sizes: &[Quantity<Inch>]| Part { length: sizes[0], width: sizes[1], depth: sizes[2] };
    let parts: Vec<Part> = sizes.chunks_exact(3).map(part).collect();
    let taken = given.maybe::<CubicInch>("taken").unwrap_or(Quantity::new(0.0));
    let volume = pan_volume(&parts, taken);
    if volume.value() <= 0.0 {
        let message = format!("What stands in it cannot be {}: the pan is no larger.", short(taken));
        return Amiss::clash("taken", message);
    }
    let product = |part: &Part| {
        format!("{} × {} × {}", plain(part.length.value()), plain(part.width.value()), plain(part.depth.value()))
    };
    let products: Vec<String> = parts.iter().map(product).collect();
    Ok(Outcome::default().line(Line::new(
        "The pan holds",
        volume.to_places(2),
        "(sum of length × width × depth - what stands in it) / 57.75",
        format!("({} - {}) / 57.75", products.join(" + "), plain(taken.value())),
        "geometry; round corners and a sloping floor make it a few per cent less",
    )))
}
