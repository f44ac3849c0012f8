//! Brake bands: what one holds, either way about.

use super::shared::ratio;
use crate::calc::band::{Band, Drag, Servo, anchor_force, apply_force, lining_pressure, tension_ratio, torque};
use crate::calc::holding::margin;
use crate::job::Word;
use crate::quantity::{Degree, Inch, One, PoundFoot, PoundForce, Psi, Quantity, SquareInch};
use crate::rules::LimitId;
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

const BELT: &str = "belt equation, any machine-design text; the band lying on all around";

pub(super) const GRABS: &str = "A band that slips burns within seconds, and reverse or the brake lets go with it; one that grabs breaks its strut, \
     its anchor or the case. Which way the drum drags is seen on the unit, range by range. A servo's cover stands under its \
     spring: hold it with the tool made for it, eyes covered, before its ring comes out.";

pub(super) const PRESSURE: Input = Input::number::<Psi>("pressure", "Pressure at the servo", (5.0, 500.0), "250")
    .hint("By a gauge, in the range it is applied in.");
pub(super) const PISTON: Input = Input::number::<SquareInch>("piston", "Servo piston area", (0.2, 30.0), "5.0");
pub(super) const SPRING: Input =
    Input::number::<PoundForce>("spring", "Return spring force, applied", (0.0, 3000.0), "60");
pub(super) const LEVER: Input = Input::ratio("lever", "Lever ratio", (0.5, 10.0), "3.0")
    .hint("Band end's force for one of the piston; 1 for a straight pin.");
pub(super) const FRICTION: Input = Input::ratio("friction", "Friction of the lining", (0.02, 0.4), "0.12")
    .hint("In fluid; 0.08 to 0.15 (memory, medium).");
pub(super) const WRAP: Input = Input::number::<Degree>("wrap", "Wrap of the lining", (30.0, 720.0), "330")
    .hint("Angle it lies on the drum; a double band has more than a turn.");
pub(super) const DRUM: Input = Input::number::<Inch>("drum", "Drum diameter", (1.0, 20.0), "6.5");
pub(super) const DRAG: Input = Input::choice("drag", "The drum drags the band", drag_words, "servo")
    .hint("In that range; away from the anchor when you are not sure.");

pub(super) const SUMS: &[Sum] = &[Sum {
    name: "band-capacity",
    title: "What a band holds",
    what: "The torque a band holds with its servo, for a drum that drags it toward its anchor and for one that drags it \
           away; with a need given, how much is to spare.",
    inputs: &[
        PRESSURE,
        PISTON,
        SPRING,
        LEVER,
        FRICTION,
        WRAP,
        DRUM,
        Input::number::<Inch>("width", "Lining width", (0.3, 6.0), "2.0")
            .hint("Blank to leave the lining's pressure out.")
            .optional(),
        Input::number::<PoundFoot>("need", "Torque it has to hold", (1.0, 10000.0), "750")
            .hint("Before any margin. Leave it blank to see only what the band holds.")
            .optional(),
    ],
    work: holds,
    care: GRABS,
}];

fn drag_words() -> Vec<Word> {
    vec![Word { code: "anchor", label: "Toward its anchor" }, Word { code: "servo", label: "Away from its anchor" }]
}

/// The band, the force on its end, and how that was got.
fn applied(given: &Given<'_>) -> Result<(Band, Quantity<PoundForce>, Line), Amiss> {
    let servo = Servo {
        pressure: given.number("pressure")?,
        piston: given.number("piston")?,
        spring: given.number("spring")?,
        lever: given.number::<One>("lever")?,
    };
    let band = Band {
        friction: given.number("friction")?,
        wrap: given.number::<Degree>("wrap")?,
        drum_radius: given.number::<Inch>("drum")? * 0.5,
    };
    let force = apply_force(&servo);
    if force.value() <= 0.0 {
        let message = format!(
            "Return spring force, applied, cannot be {}: the piston pushes only {}, and the band would not apply at all.",
            short(servo.spring),
            short(Quantity::<PoundForce>::new(servo.pressure.value() * servo.piston.value()))
        );
        return Amiss::clash("spring", message);
    }
    let line = Line::new(
        "Force on the band's end",
        force.to_whole(),
        "(pressure × piston area - spring) × lever ratio",
        format!(
            "({} × {} - {}) × {}",
            short(servo.pressure),
            short(servo.piston),
            short(servo.spring),
            ratio(servo.lever)
        ),
        "exact for the sizes given, without the friction of the servo",
    );
    Ok((band, force, line))
}

/// What the band holds one way about.
fn holds_line(band: &Band, force: Quantity<PoundForce>, drag: Drag) -> Line {
    let power = format!("{} × {}", ratio(band.friction), plain(band.wrap.value().to_radians()));
    let radius = short(band.drum_radius);
    let (formula, put_in) = match drag {
        Drag::TowardAnchor => (
            "force × (e^(friction × wrap) - 1) × drum radius / 12, wrap in radians; the band tightens itself",
            format!("{} × (e^({power}) - 1) × {radius} / 12", short(force)),
        ),
        Drag::TowardServo => (
            "force × (1 - e^(-friction × wrap)) × drum radius / 12, wrap in radians; the band loosens itself",
            format!("{} × (1 - e^(-{power})) × {radius} / 12", short(force)),
        ),
    };
    Line::new(format!("Holds, {}", way(drag)), torque(band, force, drag).to_whole(), formula, put_in, BELT)
}

/// What the band of one element holds, the way its drum drags it.
pub(super) fn holds_so(given: &Given<'_>) -> Worked {
    let (band, force, applied) = applied(given)?;
    let drag = if given.word("drag")? == "anchor" { Drag::TowardAnchor } else { Drag::TowardServo };
    Ok(Outcome::default()
        .line(holds_line(&band, force, drag))
        .holding(torque(&band, force, drag))
        .line(applied)
        .remark("It is what a band holds that is run in and adjusted."))
}

fn holds(given: &Given<'_>) -> Worked {
    let (band, force, applied) = applied(given)?;
    let each = [Drag::TowardAnchor, Drag::TowardServo].map(|drag| (drag, torque(&band, force, drag)));
    let anchor = anchor_force(&band, force, Drag::TowardAnchor);
    let outcome = Outcome::default()
        .lines(each.map(|(drag, _)| holds_line(&band, force, drag)))
        .line(applied)
        .line(Line::new(
            "Pull at the anchor, tightening itself",
            anchor.to_whole(),
            "force × e^(friction × wrap)",
            format!("{} × {}", force.to_whole(), plain(tension_ratio(&band).value())),
            BELT,
        ))
        .lines(given.maybe::<Inch>("width").map(|width| {
            Line::new(
                "Highest pressure on the lining",
                lining_pressure(anchor, band.drum_radius, width).to_whole(),
                "pull at the tight end / (drum radius × lining width)",
                format!("{} / ({} × {})", anchor.to_whole(), short(band.drum_radius), short(width)),
                "balance of a short piece of the band, any machine-design text",
            )
        }));
    let outcome = match given.maybe::<PoundFoot>("need") {
        Some(need) => each.into_iter().fold(outcome, |outcome, (drag, holds)| {
            let margin = margin(holds, need).value();
            outcome
                .line(Line::new(
                    format!("Margin, {}", way(drag)),
                    format!("{margin:.2}"),
                    "what it holds / what it must hold",
                    format!("{} / {}", holds.to_whole(), short(need)),
                    "exact",
                ))
                .at_least(
                    &format!("The margin, {},", way(drag)),
                    (margin * 1e4).round() / 1e4,
                    LimitId::clutch_margin,
                    given.limits(),
                )
        }),
        None => outcome,
    };
    Ok(outcome.remark(
        "It is what a band holds that is run in and adjusted. In the range where the drum drags it away from its anchor \
         only the smaller figure counts.",
    ))
}

const fn way(drag: Drag) -> &'static str {
    match drag {
        Drag::TowardAnchor => "drum dragging it to its anchor",
        Drag::TowardServo => "drum dragging it away",
    }
}
