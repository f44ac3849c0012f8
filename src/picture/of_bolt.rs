//! The mount bolt of a job: its facts say inch or metric and how far it is engaged, the rest is taken for granted aloud.

use super::Picture;
use super::engagement::{Engagement, engagement};
use super::linked::Linked;
use super::of_job::drawable;
use crate::calc::thread::Form;
use crate::calc::thread::table::{metric_thread, unified};
use crate::calc::thread::tension::{CLASSES, GRADES, Grade, System, find};
use crate::job::{Job, ThreadSystem};
use crate::quantity::{Diameter, Inch, Megapascal, One, Quantity};
use crate::rules::{Ask as _, Known, LimitId, Limits, Together as _};

/// Tensile strength of the aluminum a case is cast of, taken low: 240 MPa (memory, medium).
const CAST_ALUMINUM: (Quantity<Megapascal>, &str) = (Quantity::new(240.0), "cast aluminum, memory, medium");

/// 1 MPa, exact to the digits given.
const PSI_IN_MEGAPASCAL: f64 = 145.037_738;

/// Torque factor of a bolt as it comes from the bin, by the state of its threads as the sums name it.
const TORQUE_FACTOR: (Quantity<One>, &str) = (Quantity::new(0.20), "zinc plated, machine-design textbook, 9th ed.");

/// The mount bolt as units of this family have it; a bolt and a hole of different systems are the rule book's matter.
pub(super) fn of_mount_bolt(job: &Job, limits: &Limits) -> Known<Picture> {
    let known = (job.threads.mount_bolt.known(), job.threads.mount_engage_d.known()).together();
    drawable(known.map(|(system, engaged)| match system {
        ThreadSystem::Inch => {
            let (row, hole) = (unified("3/8-16")?, CAST_ALUMINUM.0.value() * PSI_IN_MEGAPASCAL);
            of_thread(row.name, row.form, find(GRADES, "5", row.form.major)?, Quantity::new(hole), engaged, limits)
        }
        ThreadSystem::Metric => {
            let row = metric_thread("M10x1.5")?;
            of_thread(row.name, row.form, find(CLASSES, "8.8", row.form.major)?, CAST_ALUMINUM.0, engaged, limits)
        }
    }))
}

fn of_thread<U: System>(
    thread: &'static str,
    form: Form<U>,
    grade: &'static Grade<U>,
    hole: Quantity<U::Stress>,
    engaged: Quantity<Diameter>,
    limits: &Limits,
) -> Option<Picture> {
    engagement(&Engagement {
        name: "mount-thread",
        place: "Mount bolt",
        thread,
        form,
        engaged,
        wanted: (limits.thread_engaged, limits.used(LimitId::thread_engaged).to_string()),
        grade,
        hole: (hole, CAST_ALUMINUM.1),
        factor: TORQUE_FACTOR,
        sums: same_bolt(thread, grade.name, form.length_for(engaged).to_inches()),
    })
}

/// The sums that say of this bolt what the picture says; the torque is the shop's to type.
fn same_bolt(thread: &str, grade: &str, engaged: Quantity<Inch>) -> Vec<Linked> {
    let hole = CAST_ALUMINUM.0.value() * PSI_IN_MEGAPASCAL;
    let engaged = format!("{:.4}", engaged.value());
    let typed = [
        ("thread", thread.to_owned()),
        ("grade", grade.to_owned()),
        ("engaged", engaged),
        ("hole", format!("{hole:.0}")),
        ("state", "zinc plated".to_owned()),
    ];
    ["bolt-or-case", "thread-engagement"].iter().filter_map(|name| Linked::to(name, &typed)).collect()
}
