//! Shafts and splines: stress, torque and power, which spline it is, what its teeth bear.

use super::shared::ratio;
use crate::calc::shaft::{power, stress, stress_metric, torque_at, torque_from_power};
use crate::calc::spline::{PITCHES, Service, Spline, nearest, tooth_shear};
use crate::job::Word;
use crate::quantity::{Horsepower, Inch, One, PoundFoot, Psi, Quantity, Rpm};
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

const OUTSIDE: Input = Input::number::<Inch>("outside", "Shaft diameter", (0.1, 6.0), "1.0")
    .hint("Where it is thinnest: at a groove, or the root of the spline.");
const BORE: Input =
    Input::number::<Inch>("bore", "Bore through it", (0.0, 5.9), "0.25").hint("Blank for none.").optional();
const TORQUE: Input = Input::number::<PoundFoot>("torque", "Torque in the shaft", (1.0, 10000.0), "800")
    .hint("Turbine torque for an input shaft: engine torque × the converter's torque ratio.");
const SPEED: Input = Input::number::<Rpm>("rpm", "Speed", (10.0, 20000.0), "5252");

const TORSION: &str =
    "strength of materials, elastic, away from notches and splines, which make it two to three times worse";
const BREAKS: &str = "A shaft that breaks at speed goes through the case and the floor. The sum knows no notch, no heat \
                      treatment and no earlier race: the shaft maker's rating comes first.";
const SERIES: &str = "ANSI B92.1-1970 (looked up on an engineering reference page)";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "shaft-stress",
        title: "Shaft: stress by a torque",
        what: "The shear stress at the surface of a round shaft under a torque.",
        inputs: &[TORQUE, OUTSIDE, BORE],
        work: stressed,
        care: BREAKS,
    },
    Sum {
        name: "shaft-torque",
        title: "Shaft: torque at a stress",
        what: "The torque at which the surface of a round shaft reaches a shear stress.",
        inputs: &[
            Input::number::<Psi>("stress", "Shear stress", (100.0, 300_000.0), "60,000")
                .hint("Yield in shear is somewhat over half of the yield in tension."),
            OUTSIDE,
            BORE,
        ],
        work: bears,
        care: BREAKS,
    },
    Sum {
        name: "power-of-torque",
        title: "Power from torque and speed",
        what: "The power that a torque makes at a speed, in horsepower.",
        inputs: &[Input::number::<PoundFoot>("torque", "Torque", (0.1, 10000.0), "500"), SPEED],
        work: powered,
        care: "",
    },
    Sum {
        name: "torque-of-power",
        title: "Torque from power and speed",
        what: "The torque that a power makes at a speed, in pound-feet.",
        inputs: &[Input::number::<Horsepower>("power", "Power", (0.1, 10000.0), "500"), SPEED],
        work: torqued,
        care: "",
    },
    Sum {
        name: "which-spline",
        title: "Which spline is it?",
        what: "The standard spline nearest to what is counted and measured over its teeth.",
        inputs: &[
            Input::count("teeth", "Teeth", (6, 100), "32").hint("Count them twice."),
            Input::number::<Inch>("over", "Measured over the teeth", (0.1, 6.0), "1.372")
                .hint("Across the shaft's tips."),
        ],
        work: which,
        care: "",
    },
    Sum {
        name: "spline-stress",
        title: "Spline: what its teeth bear",
        what: "About what shear stress the teeth of a spline bear under a torque.",
        inputs: &[
            Input::count("teeth", "Teeth", (6, 100), "32"),
            Input::choice("pitch", "Pitch", pitch_words, "24"),
            Input::number::<Inch>("length", "Length engaged", (0.1, 10.0), "2.0"),
            TORQUE,
            Input::ratio("application", "Roughness of the drive", (1.0, 2.8), "2.0")
                .hint("1.0 smooth to 2.8 heavy shock."),
            Input::ratio("distribution", "How unevenly the teeth carry", (1.0, 3.0), "1.0").hint("1.0 well aligned."),
            Input::ratio("life", "Fatigue life factor", (0.2, 1.8), "1.0")
                .hint("1.0 for 10,000 turns of torque, less for more."),
        ],
        work: teeth,
        care: BREAKS,
    },
];

fn pitch_words() -> Vec<Word> {
    PITCH_NAMES.iter().zip(PITCHES).map(|((code, label), _)| Word { code, label }).collect()
}

/// The pitches of the standard series as they are called out.
const PITCH_NAMES: [(&str, &str); 14] = [
    ("3", "3/6"),
    ("4", "4/8"),
    ("5", "5/10"),
    ("6", "6/12"),
    ("8", "8/16"),
    ("10", "10/20"),
    ("12", "12/24"),
    ("16", "16/32"),
    ("20", "20/40"),
    ("24", "24/48"),
    ("32", "32/64"),
    ("40", "40/80"),
    ("48", "48/96"),
    ("64", "64/128"),
];

/// Outside and bore, which has to be the smaller.
fn section(given: &Given<'_>) -> Result<(Quantity<Inch>, Quantity<Inch>), Amiss> {
    let outside = given.number::<Inch>("outside")?;
    let bore = given.maybe::<Inch>("bore").unwrap_or(Quantity::new(0.0));
    if bore >= outside {
        let message = format!("Bore through it cannot be {}: the shaft is only {}.", short(bore), short(outside));
        return Amiss::clash("bore", message);
    }
    Ok((outside, bore))
}

fn stressed(given: &Given<'_>) -> Worked {
    let torque = given.number::<PoundFoot>("torque")?;
    let (outside, bore) = section(given)?;
    let (newtons, wide, hollow) = (torque.to_newton_metres(), outside.to_millimetres(), bore.to_millimetres());
    Ok(Outcome::default()
        .line(Line::new(
            "Shear stress at the surface",
            stress(torque, outside, bore).to_whole(),
            "16 × 12 × T × D / (π (D⁴ - d⁴))",
            format!("16 × 12 × {0} × {1} / (π ({1}⁴ - {2}⁴))", short(torque), short(outside), short(bore)),
            TORSION,
        ))
        .line(Line::new(
            "The same on a metric sheet",
            stress_metric(newtons, wide, hollow).to_places(1),
            "16 × 1,000 × T × D / (π (D⁴ - d⁴)), N·m and mm",
            format!("16 × 1,000 × {0} × {1} / (π ({1}⁴ - {2}⁴))", short(newtons), short(wide), short(hollow)),
            TORSION,
        )))
}

fn bears(given: &Given<'_>) -> Worked {
    let limit = given.number::<Psi>("stress")?;
    let (outside, bore) = section(given)?;
    Ok(Outcome::default().line(Line::new(
        "Torque at that stress",
        torque_at(limit, outside, bore).to_whole(),
        "stress × π (D⁴ - d⁴) / (16 × 12 × D)",
        format!("{0} × π ({1}⁴ - {2}⁴) / (16 × 12 × {1})", short(limit), short(outside), short(bore)),
        TORSION,
    )))
}

fn powered(given: &Given<'_>) -> Worked {
    let (torque, speed) = (given.number::<PoundFoot>("torque")?, given.number::<Rpm>("rpm")?);
    Ok(Outcome::default().line(Line::new(
        "Power",
        power(torque, speed).to_places(1),
        "T × 2π rpm / 33,000, that is T × rpm / 5,252",
        format!("{} × 2π × {} / 33,000", short(torque), short(speed)),
        "definition of the horsepower",
    )))
}

fn torqued(given: &Given<'_>) -> Worked {
    let (power, speed) = (given.number::<Horsepower>("power")?, given.number::<Rpm>("rpm")?);
    let torque = torque_from_power(power, speed);
    Ok(Outcome::default()
        .line(Line::new(
            "Torque",
            torque.to_places(1),
            "hp × 33,000 / (2π rpm), that is 5,252 × hp / rpm",
            format!("{} × 33,000 / (2π × {})", short(power), short(speed)),
            "definition of the horsepower",
        ))
        .line(Line::new(
            "The same on a metric sheet",
            torque.to_newton_metres().to_places(1),
            "lb-ft × 1.3558",
            format!("{} × 1.3558", torque.to_places(1)),
            "definition",
        )))
}

fn which(given: &Given<'_>) -> Worked {
    let (teeth, over) = (given.count("teeth")?, given.number::<Inch>("over")?);
    let Some((spline, off)) = nearest(teeth, over) else { return Err(Amiss::Absent("teeth")) };
    let size = |label: &str, value: Quantity<Inch>, formula: &'static str, more: &str| {
        let put_in = format!("({}{more}) / {}", spline.teeth, spline.pitch);
        Line::new(label, value.to_places(4), formula, put_in, SERIES)
    };
    Ok(Outcome::default()
        .line(Line::new(
            "Nearest standard spline",
            spline.name(),
            "the pitch of the series whose outside diameter is nearest",
            format!("{teeth} teeth, {} over them", short(over)),
            SERIES,
        ))
        .line(Line::new(
            "Reading less its outside diameter",
            off.to_places(4),
            "reading - (N + 1) / P",
            format!("{} - {}", short(over), spline.shaft_major().to_places(4)),
            SERIES,
        ))
        .line(size("Outside diameter of that spline", spline.shaft_major(), "(N + 1) / P", " + 1"))
        .line(size("Pitch diameter", spline.pitch_diameter(), "N / P", ""))
        .line(size("Bore of its hub", spline.hub_minor(), "(N - 1) / P", " - 1"))
        .line(size("Root of its hub, flat roots", spline.hub_major_flat(), "(N + 1.35) / P, side fit", " + 1.35"))
        .line(size("Root of its hub, rounded roots", spline.hub_major_fillet(), "(N + 1.8) / P, side fit", " + 1.8"))
        .line(Line::new(
            "Base circle",
            spline.base_diameter().to_places(4),
            "N / P × cos 30°",
            format!("{} / {} × cos 30°", spline.teeth, spline.pitch),
            SERIES,
        ))
        .remark(
            "A near match is not yet the right one: worn tips read small, and some splines are outside this series. Try \
             the yoke on by hand.",
        ))
}

fn teeth(given: &Given<'_>) -> Worked {
    let pitch = given.word("pitch")?;
    let pitch = PITCHES.into_iter().find(|known| known.to_string() == pitch).ok_or(Amiss::Absent("pitch"))?;
    let spline = Spline { teeth: given.count("teeth")?, pitch };
    let (length, torque) = (given.number::<Inch>("length")?, given.number::<PoundFoot>("torque")?);
    let service = Service {
        application: given.number::<One>("application")?,
        distribution: given.number::<One>("distribution")?,
        life: given.number::<One>("life")?,
    };
    Ok(Outcome::default().line(Line::new(
        format!("Shear stress in the teeth of {}", spline.name()),
        tooth_shear(spline, length, torque, service).to_whole(),
        "4 × 12 × roughness × unevenness × T / (pitch diameter × teeth × length × tooth width × life)",
        format!(
            "4 × 12 × {} × {} × {} / ({} × {} × {} × {} × {})",
            ratio(service.application),
            ratio(service.distribution),
            short(torque),
            short(spline.pitch_diameter()),
            spline.teeth,
            short(length),
            short(spline.tooth()),
            plain(service.life.value())
        ),
        "machinists' handbook (memory, medium); half of the teeth taken as carrying",
    )))
}
