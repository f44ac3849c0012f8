//! Fluid: how it grows and warms with heat, what that does to the level, what a pan holds.

use crate::calc::converter::heat::{fluid_rise, mass, oil_heat, specific_gravity};
use crate::calc::fluid::{Part, density_at, growth, growth_by_rule, level_rise, pan_volume, volume_factor};
use crate::quantity::{
    AtCelsius, CubicInch, Inch, KilogramPerCubicMetre, Kilowatt, Quantity, Quart, Second, SquareInch,
};
use crate::sums::declaration::{Amiss, Input, Measure, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

const DENSITY: Input = Input::number::<KilogramPerCubicMetre>("density", "Density at 15 °C", (800.0, 1160.0), "860")
    .hint("From the fluid's data sheet; 840 to 870 is usual.");
const INSIDE: Measure = Measure::of::<Inch>(0.05, 60.0);

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "fluid-growth",
        title: "Fluid: growth with heat, and the level",
        what: "How much fluid grows from cold to hot, and how far the level rises for it.",
        inputs: &[
            Input::number::<Quart>("fluid", "Fluid in the unit", (0.5, 40.0), "11").fact("fluid.capacity_qt"),
            Input::temperature("cold", "Cold", (-20.0, 150.0), "70 F"),
            Input::temperature("hot", "Hot", (-20.0, 150.0), "190 F"),
            DENSITY,
            Input::number::<SquareInch>("surface", "Surface of the fluid in the pan", (10.0, 1000.0), "150")
                .hint("Length × width at the level; blank to leave the level out.")
                .optional(),
        ],
        work: grows,
        care: "The level is read the way the unit's manual says: running, in the gear it names, at the heat it names, \
               parking brake on and wheels chocked.",
    },
    Sum {
        name: "oil-warming",
        title: "Fluid: how fast it warms",
        what: "The heat a fluid takes for a degree, and how far a power warms it in a time with nothing led away.",
        inputs: &[
            Input::number::<Quart>("fluid", "Fluid that is warmed", (0.5, 40.0), "10"),
            Input::number::<KilogramPerCubicMetre>("density", "Density at 15 °C", (800.0, 960.0), "860")
                .hint("From the fluid's data sheet; 840 to 870 is usual."),
            Input::temperature("at", "Its temperature", (0.0, 150.0), "180 F"),
            Input::number::<Kilowatt>("power", "Power turned to heat", (0.1, 2000.0), "100")
                .hint("In kW; the sums on the trans brake give it."),
            Input::number::<Second>("seconds", "For", (0.1, 3600.0), "5"),
        ],
        work: warms,
        care: "Hot fluid burns the skin and, on an exhaust, the vehicle. The middle of it all is cooler than the fluid where the \
               heat is made.",
    },
    Sum {
        name: "pan-volume",
        title: "What a pan holds",
        what: "The quarts in a pan up to a level, part by part.",
        inputs: &[
            Input::rows("parts", "Parts: length, width, depth", &[INSIDE, INSIDE, INSIDE], (1, 6), "14 10 2; 8 10 1")
                .hint("Three inside sizes of each level part, in inches, parts with a semicolon between them."),
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
    if hot < cold {
        let message = format!("Hot cannot be {}: it has to be no less than cold, {}.", short(hot), short(cold));
        return Amiss::clash("hot", message);
    }
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
            format!("from {} to {}, α = 0.6278 / {}", cold.to_places(1), hot.to_places(1), short(density)),
            "ASTM D1250-80, table 54D (looked up in a public code file; memory, high)",
        ))
        .line(Line::new(
            "Share by the simple rule",
            growth_by_rule(cold, hot).to_percent(2),
            "0.0007 × (hot - cold), temperatures in °C",
            format!("0.0007 × ({} - {})", hot.to_places(1), cold.to_places(1)),
            "looked up: a fluids engineer, quoted; the other is better above 60 °C",
        ));
    outcome = outcome.line(Line::new(
        "Density when hot",
        density_at(density, hot).to_whole(),
        "density at 15 °C × volume factor",
        format!("{} × {}", short(density), plain(volume_factor(density, hot).value())),
        "ASTM D1250-80, table 54D (looked up in a public code file; memory, high)",
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

fn warms(given: &Given<'_>) -> Worked {
    let (fluid, density) = (given.number::<Quart>("fluid")?, given.number::<KilogramPerCubicMetre>("density")?);
    let at = given.number::<AtCelsius>("at")?;
    let (power, seconds) = (given.number::<Kilowatt>("power")?, given.number::<Second>("seconds")?);
    let gravity = specific_gravity(density);
    let (heat, mass) = (oil_heat(gravity, at), mass(fluid, density_at(density, at)));
    Ok(Outcome::default()
        .line(Line::new(
            "It warms by",
            fluid_rise(power, seconds, mass, heat).to_places(0),
            "kW × s / (kg × heat for a degree)",
            format!("{} × {} / ({} × {})", short(power), short(seconds), mass.to_places(2), heat.to_places(2)),
            "energy balance with nothing led away, and the fluid alone",
        ))
        .line(Line::new(
            "Heat it takes for a degree",
            heat.to_places(2),
            "4.1868 × (0.388 + 0.00045 × °F) / √specific gravity",
            format!("4.1868 × (0.388 + 0.00045 × {:.0}) / √{:.3}", at.value() * 1.8 + 32.0, gravity.value()),
            "NBS miscellaneous publication 97 (looked up in a second text); 1 to 3 % under the printed figures for engine oil",
        ))
        .line(Line::new(
            "It weighs",
            mass.to_places(2),
            "quarts × 0.946353 × density at that temperature / 1,000",
            format!("{} × 0.946353 × {} / 1,000", short(fluid), density_at(density, at).to_whole()),
            "definition of the quart; density by ASTM D1250-80",
        )))
}

fn holds(given: &Given<'_>) -> Worked {
    let sizes = given.triples::<Inch>("parts")?;
    let parts: Vec<Part> = sizes.iter().map(|&[length, width, depth]| Part { length, width, depth }).collect();
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
