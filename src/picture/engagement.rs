//! What gives first as a bolt is tightened: the bolt or the hole, over the length of thread that is engaged.

use super::canvas::Stroke;
use super::linked::Linked;
use super::plot::{Axis, Marker, Plot};
use super::scale::Scale;
use super::{Picture, Table, drawn, said, sound};
use crate::calc::thread::Form;
use crate::calc::thread::engaged::{Gives, Metals, SHEAR_SHARE, hole_shear_area, least_engagement, weakest};
use crate::calc::thread::tension::{Grade, SCATTER, System, load, torque};
use crate::quantity::{Diameter, One, Quantity, Unit as _};

/// What is drawn, in one system of units.
#[derive(Clone, Debug)]
pub struct Engagement<U: System> {
    /// Name of the picture: `mount-thread`.
    pub name: &'static str,
    /// The place: `Mount bolt`.
    pub place: &'static str,
    /// The thread: `3/8-16`.
    pub thread: &'static str,
    /// Its basic form.
    pub form: Form<U>,
    /// Thread engaged.
    pub engaged: Quantity<Diameter>,
    /// The least the shop wants, with its mark.
    pub wanted: (Quantity<Diameter>, String),
    /// The bolt's steel.
    pub grade: &'static Grade<U>,
    /// Tensile strength of the metal of the hole, with where that is from.
    pub hole: (Quantity<U::Stress>, &'static str),
    /// Torque factor, with where that is from.
    pub factor: (Quantity<One>, &'static str),
    /// The sums of the same bolt.
    pub sums: Vec<Linked>,
}

/// Draws it; `None` when there is a number too big to draw.
pub fn engagement<U: System>(input: &Engagement<U>) -> Option<Picture> {
    let Engagement { form, engaged, grade, .. } = input;
    let metals = Metals { bolt: grade.tensile, hole: input.hole.0 };
    let turned = |at: Quantity<U::Force>| torque(input.factor.0, form, at);
    let strips = |diameters: Quantity<Diameter>| {
        let area = hole_shear_area(form, form.length_for(diameters));
        turned(Quantity::new(area.value() * metals.hole.value() * SHEAR_SHARE.value()))
    };
    let breaks = turned(load(form, metals.bolt));
    let gives = |diameters: Quantity<Diameter>| {
        let weak = weakest(form, form.length_for(diameters), metals);
        (gives_word(weak.gives), turned(weak.at))
    };
    let least = form.engagement(least_engagement(form, metals));
    let farthest = engaged.value().max(input.wanted.0.value()).max(least.value()) * 1.1;
    if !sound(&[farthest, breaks.value(), strips(Quantity::new(farthest)).value()]) {
        return None;
    }
    let symbol = U::Torque::SYMBOL;
    let across = Axis { label: "thread engaged, bolt diameters".into(), scale: Scale::holding([0.0, farthest]) };
    let most = breaks.value() * 1.3;
    let up = Axis { label: format!("torque at which it gives, {symbol}"), scale: Scale::holding([0.0, most]) };
    let mut plot = Plot::new(input.name, 300.0, &across, &up);
    // The hole's line goes as far as the field does.
    let end = (up.scale.most() / strips(Quantity::new(1.0)).value()).min(across.scale.most());
    plot.curve(&[(0.0, 0.0), (end, strips(Quantity::new(end)).value())], Stroke::Heavy);
    plot.label((end * 0.45, strips(Quantity::new(end * 0.45)).value()), "hole strips");
    plot.level(breaks.value(), Stroke::Dashed, &format!("bolt breaks: {}", breaks.to_whole()));
    plot.upright(input.wanted.0.value(), Stroke::Dotted);
    let say = |diameters: Quantity<Diameter>| diameters.to_places(2);
    plot.label((input.wanted.0.value(), most * 0.1), &format!("wanted: {}", say(input.wanted.0)));
    let (word, at) = gives(*engaged);
    plot.point((engaged.value(), at.value()), Marker::Disc, &format!("{}: {word} at {}", say(*engaged), at.to_whole()));
    plot.point((least.value(), breaks.value()), Marker::Ring, &format!("even at {}", say(least)));
    let (low, high) = (at * (1.0 - SCATTER.value()), at * (1.0 + SCATTER.value()));
    let title = format!("{}: what gives first", input.place);
    let description = format!(
        "{}, taken as grade {} in cast aluminum, with {} engaged: the {word} first, at about {}. From {} on the bolt breaks before the hole strips. The shop \
         wants {}.",
        input.thread,
        grade.name,
        say(*engaged),
        at.to_whole(),
        say(least),
        say(input.wanted.0)
    );
    let rows = vec![
        vec![
            said("As measured"),
            drawn(say(*engaged)),
            said(word),
            drawn(at.to_whole()),
            said("the job's engaged thread"),
        ],
        vec![
            said("Bolt and hole even"),
            drawn(say(least)),
            said("either"),
            drawn(breaks.to_whole()),
            said(format!("grade {}: {}", grade.name, grade.source)),
        ],
        vec![
            said("Wanted at least"),
            drawn(say(input.wanted.0)),
            said(gives(input.wanted.0).0),
            said(gives(input.wanted.0).1.to_whole()),
            said(input.wanted.1.clone()),
        ],
    ];
    let notes = vec![
        format!(
            "Taken for granted, because the job has no fact for it: thread {}, a bolt of grade {}, a hole in metal of \
             {} ({}), torque factor {} ({}). Look at the bolt's head and measure the thread.",
            input.thread,
            grade.name,
            input.hole.0.to_whole(),
            input.hole.1,
            input.factor.0.to_places(2),
            input.factor.1
        ),
        format!(
            "One and the same torque pulls a bolt more or less by {}: what gives at {} may give anywhere from {} to {}. \
             The unit's manual has the torque to use.",
            SCATTER.to_percent(0),
            at.to_whole(),
            low.to_whole(),
            high.to_whole()
        ),
    ];
    Some(Picture {
        name: input.name.to_owned(),
        svg: plot.finish(&title, &description),
        title,
        description,
        table: Table { columns: vec!["What", "Thread engaged", "Gives first", "At a torque of", "From"], rows },
        notes,
        sums: input.sums.clone(),
    })
}

const fn gives_word(gives: Gives) -> &'static str {
    match gives {
        Gives::BoltBreaks => "bolt breaks",
        Gives::BoltStrips => "bolt's thread strips",
        Gives::HoleStrips => "hole strips",
    }
}
