//! Bolts: torque and clamp load, and what gives first.

use super::shared::ratio;
use super::threads::{STRIPS, THREAD, Thread, own, size, thread};
use crate::calc::thread::Form;
use crate::calc::thread::engaged::{Gives, Metals, least_engagement, reserve, torque_at_failure, weakest};
use crate::calc::thread::tension::{
    CLASSES, GRADES, Grade, PERMANENT, SCATTER, System, TORQUE_FACTORS, USED_AGAIN, clamp, clamp_band,
    factor_from_friction, find, proof_load, stress, torque,
};
use crate::job::Word;
use crate::quantity::{Inch, One, PoundFoot, Psi, Quantity, Unit};
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

const GRADE: Input = Input::choice("grade", "Grade on the head", grade_words, "5");
const STATE: Input = Input::choice("state", "State of the threads", state_words, "zinc plated");
const TORQUE: Input = Input::number::<PoundFoot>("torque", "Torque", (0.1, 1000.0), "30")
    .hint("In lb-ft, or with in-lb or N·m behind it.");

const TEXTBOOK: &str = "machine-design textbook, 9th ed., section 8-8: the short form K × d × F";
const MANUAL: &str = "A bolt lets go without a warning. The unit's manual and the maker's figure come before any sum, and a \
                      bolt that was stretched is thrown away.";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "bolt-torque",
        title: "Torque for a bolt, with its scatter",
        what: "The torque that loads a bolt to the usual share of its proof load, and how far the clamp load may be off.",
        inputs: &[
            THREAD,
            GRADE,
            STATE,
            Input::yes_no("again", "Opened again some day", "yes").hint("75 % of proof if so, 90 % if never."),
        ],
        work: torques,
        care: MANUAL,
    },
    Sum {
        name: "clamp-load",
        title: "Clamp load of a torque",
        what: "What a torque clamps with, how far that may be off, and its share of what the bolt bears.",
        inputs: &[THREAD, GRADE, STATE, TORQUE],
        work: clamps,
        care: MANUAL,
    },
    Sum {
        name: "torque-factor",
        title: "Torque factor K from friction",
        what: "The factor between torque and clamp load, from the friction in the thread and under the head, for threads of \
               60°.",
        inputs: &[
            THREAD,
            Input::ratio("in_thread", "Friction in the thread", (0.02, 0.5), "0.15")
                .hint("0.10 to 0.20 for steel, less when oiled (memory, medium)."),
            Input::ratio("under_head", "Friction under the head", (0.02, 0.5), "0.15")
                .hint("Under whatever is turned, head or nut."),
        ],
        work: rubbed,
        care: MANUAL,
    },
    Sum {
        name: "bolt-or-case",
        title: "What gives first, bolt or case?",
        what: "Whether the bolt breaks or the thread in the case strips, how much engagement that takes, and the reserve \
               over a torque.",
        inputs: &[
            THREAD,
            GRADE,
            Input::number::<Inch>("engaged", "Length engaged", (0.02, 6.0), "0.56"),
            Input::number::<Psi>("hole", "Tensile strength of the case", (5000.0, 200_000.0), "40,000")
                .hint("Cast aluminum 30,000 to 45,000 psi (memory, medium)."),
            STATE,
            TORQUE,
        ],
        work: gives,
        care: STRIPS,
    },
];

fn grade_words() -> Vec<Word> {
    vec![
        Word { code: "2", label: "Inch grade 2, no lines" },
        Word { code: "5", label: "Inch grade 5, three lines" },
        Word { code: "8", label: "Inch grade 8, six lines" },
        Word { code: "8.8", label: "Metric 8.8" },
        Word { code: "10.9", label: "Metric 10.9" },
    ]
}

fn state_words() -> Vec<Word> {
    TORQUE_FACTORS.iter().map(|(state, _)| Word { code: state, label: state }).collect()
}

fn factor(given: &Given<'_>) -> Result<Quantity<One>, Amiss> {
    let state = given.word("state")?;
    let found = TORQUE_FACTORS.iter().find(|(known, _)| *known == state);
    found.map(|(_, factor)| Quantity::new(*factor)).ok_or(Amiss::Absent("state"))
}

fn graded<U: System>(
    given: &Given<'_>,
    table: &'static [Grade<U>],
    form: &Form<U>,
) -> Result<&'static Grade<U>, Amiss> {
    let name = given.word("grade")?;
    if let Some(grade) = find(table, name, form.major) {
        return Ok(grade);
    }
    let of_table = |code: &str| table.iter().any(|row| row.name == code);
    let label = |code: &str| grade_words().iter().find(|word| word.code == code).map_or("", |word| word.label);
    let message = if of_table(name) {
        format!(
            "Grade on the head cannot be {}: the standard gives it for no bolt of {}.",
            label(name),
            size(form.major)
        )
    } else {
        let kind = if U::IN_ONE_INCH > 1.0 { "metric" } else { "an inch thread" };
        format!("Grade on the head cannot be {}: the thread is {kind}.", label(name))
    };
    Amiss::clash("grade", message)
}

fn torques(given: &Given<'_>) -> Worked {
    fn of<U: System>(given: &Given<'_>, form: &Form<U>, table: &'static [Grade<U>]) -> Worked {
        let (factor, grade) = (factor(given)?, graded(given, table, form)?);
        let share = if given.yes("again")? { USED_AGAIN } else { PERMANENT };
        let proof = proof_load(form, grade.proof);
        let clamp = proof * share.value();
        Ok(Outcome::default()
            .line(Line::new(
                "Torque",
                torque(factor, form, clamp).to_places(1),
                "K × d × clamp load",
                format!("{} × {} × {}", ratio(factor), short(form.major), clamp.to_whole()),
                TEXTBOOK,
            ))
            .lines(band(clamp, format!("{} × {}", plain(share.value()), proof.to_whole())))
            .line(Line::new(
                "Proof load",
                proof.to_whole(),
                "tensile area × proof stress",
                format!("{} × {}", short(U::tensile_area(form)), short(grade.proof)),
                grade.source,
            ))
            .remark("In an aluminum case the thread may give before the bolt: see what gives first."))
    }
    match thread(given)? {
        Thread::Inch(row) => of(given, &row.form, GRADES),
        Thread::Metric(row) => of(given, &row.form, CLASSES),
    }
}

/// The clamp load, and between what it may lie.
fn band<F: Unit>(clamp: Quantity<F>, put_in: String) -> [Line; 2] {
    let (least, most) = clamp_band(clamp, SCATTER);
    [
        Line::new("Clamp load", clamp.to_whole(), "share of proof load, or torque / (K × d)", put_in, TEXTBOOK),
        Line::new(
            "It may be",
            format!("{} to {}", least.to_whole(), most.to_whole()),
            "clamp load, 30 % either way with a good wrench",
            format!("{} ± 30 %", clamp.to_whole()),
            "common practice: 25 to 30 %",
        ),
    ]
}

fn clamps(given: &Given<'_>) -> Worked {
    fn of<U: System>(
        given: &Given<'_>,
        form: &Form<U>,
        table: &'static [Grade<U>],
        torque: Quantity<U::Torque>,
    ) -> Worked {
        let (factor, grade) = (factor(given)?, graded(given, table, form)?);
        let load = clamp(factor, form, torque);
        let proof = proof_load(form, grade.proof);
        let share = load / proof;
        let remark = if share > 1.0 {
            "Above the proof load: the bolt stretches for good."
        } else if share > PERMANENT.value() {
            "Above nine tenths of the proof load: with the scatter it may stretch for good."
        } else {
            "Below the proof load."
        };
        Ok(Outcome::default()
            .lines(band(load, format!("{} / ({} × {})", short(torque), ratio(factor), short(form.major))))
            .line(Line::new(
                "Stress in the bolt",
                stress(form, load).to_whole(),
                "clamp load / tensile area",
                format!("{} / {}", load.to_whole(), short(U::tensile_area(form))),
                TEXTBOOK,
            ))
            .line(Line::new(
                "Share of the proof load",
                Quantity::<One>::new(share).to_percent(0),
                "clamp load / (tensile area × proof stress)",
                format!("{} / ({} × {})", load.to_whole(), short(U::tensile_area(form)), short(grade.proof)),
                grade.source,
            ))
            .remark(remark))
    }
    let torque = given.number::<PoundFoot>("torque")?;
    match thread(given)? {
        Thread::Inch(row) => of(given, &row.form, GRADES, torque),
        Thread::Metric(row) => of(given, &row.form, CLASSES, torque.to_newton_metres()),
    }
}

fn rubbed(given: &Given<'_>) -> Worked {
    let (in_thread, under_head) = (given.number::<One>("in_thread")?, given.number::<One>("under_head")?);
    let (factor, mean, pitch) = match thread(given)? {
        Thread::Inch(row) => {
            let mean = (row.form.major + row.form.stress_root()) * 0.5;
            (factor_from_friction(&row.form, in_thread, under_head), short(mean), short(row.form.pitch))
        }
        Thread::Metric(row) => {
            let mean = (row.form.major + row.form.stress_root()) * 0.5;
            (factor_from_friction(&row.form, in_thread, under_head), short(mean), short(row.form.pitch))
        }
    };
    Ok(Outcome::default()
        .line(Line::new(
            "Torque factor K",
            factor.to_places(3),
            "(dm / 2d) × (tan λ + f / cos 30°) / (1 - f tan λ / cos 30°) + 0.625 fc, tan λ = pitch / (π dm)",
            format!("dm {mean}, pitch {pitch}, f {}, fc {}", ratio(in_thread), ratio(under_head)),
            "machine-design textbook, 9th ed., eq. 8-26; the head's mean diameter taken as 1.25 d",
        ))
        .remark("Friction is the part nobody knows: the same bolt turned twice differs by a tenth and more."))
}

/// What the two systems have to be told in their own units.
struct Joint<U: System> {
    engaged: Quantity<U>,
    hole: Quantity<U::Stress>,
    torque: Quantity<U::Torque>,
}

fn gives(given: &Given<'_>) -> Worked {
    fn of<U: System>(given: &Given<'_>, form: &Form<U>, table: &'static [Grade<U>], joint: &Joint<U>) -> Worked {
        let (factor, grade) = (factor(given)?, graded(given, table, form)?);
        let metals = Metals { bolt: grade.tensile, hole: joint.hole };
        let weakest = weakest(form, joint.engaged, metals);
        let told = match weakest.gives {
            Gives::BoltBreaks => "the bolt breaks, and the case stays whole",
            Gives::BoltStrips => "the bolt's own threads strip",
            Gives::HoleStrips => "the threads in the case strip",
        };
        let source = "FED-STD-H28, appendix B, at basic sizes (memory, high)";
        let spare = reserve(form, joint.engaged, metals, factor, joint.torque);
        Ok(Outcome::default()
            .line(Line::new(
                "First",
                format!("{told}, at {}", weakest.at.to_whole()),
                "least of: tensile area × strength of the bolt, shear area of either thread × half its strength",
                format!("{} engaged, {} and {}", short(joint.engaged), short(metals.bolt), short(metals.hole)),
                source,
            ))
            .line(Line::new(
                "Least engagement for the bolt to break first",
                size(least_engagement(form, metals)),
                "length at which both threads hold what the bolt holds",
                format!("{} over half of {}", short(metals.bolt), short(metals.hole)),
                source,
            ))
            .line(Line::new(
                "Torque at which that happens",
                torque_at_failure(form, joint.engaged, metals, factor).to_places(1),
                "K × d × load at which it gives; no better than the scatter of K",
                format!("{} × {} × {}", ratio(factor), short(form.major), weakest.at.to_whole()),
                TEXTBOOK,
            ))
            .line(Line::new(
                "Reserve over that torque",
                spare.to_places(2),
                "load at which it gives / clamp load of the torque",
                format!("{} / clamp of {} at K {}", weakest.at.to_whole(), short(joint.torque), ratio(factor)),
                TEXTBOOK,
            ))
            .remark(
                "Worn holes and bolts at their lower limit hold some tenths less: this is the least, never the aim.",
            ))
    }
    let (engaged, hole) = (given.number::<Inch>("engaged")?, given.number::<Psi>("hole")?);
    let torque = given.number::<PoundFoot>("torque")?;
    match thread(given)? {
        Thread::Inch(row) => of(given, &row.form, GRADES, &Joint { engaged, hole, torque }),
        Thread::Metric(row) => {
            let (hole, torque) = (hole.to_megapascals(), torque.to_newton_metres());
            of(given, &row.form, CLASSES, &Joint { engaged: own(engaged), hole, torque })
        }
    }
}
