//! The job file: every fact and choice of a job, its type, unit, sheet, how to tell, why it matters.
//!
//! A job is what one unit really is and what is wanted of it. Every fact may be
//! unknown; nothing here fills a blank in.

mod choices;
mod declaration;
mod error;
mod fact;
mod groups;
mod labels;
mod nearest;
mod random;
mod read;
mod set;
mod typed;
mod value;

pub use choices::*;
pub use declaration::{Bound, Declaration, FactId, Kind, Plain, Sheet, Word};
pub use error::JobError;
pub use fact::{Fact, Slot};
pub use groups::*;
pub use labels::group_label;
pub use nearest::{nearest as nearest_word, nearest_path};
pub use random::{random_job, random_value};
pub use set::FactSet;
pub use typed::{read_text, say};
pub use value::{Choice, FactValue, Refused, Year, read_choice};

use std::collections::HashMap;
use std::sync::LazyLock;

/// Declares the job: its groups in registry order.
macro_rules! job {
    ($($field:ident: $group:ident),+ $(,)?) => {
        /// Everything known about one job, group by group.
        #[derive(Clone, Debug, PartialEq)]
        pub struct Job {
            $(#[doc = concat!("The facts of [`", stringify!($group), "`].")] pub $field: $group,)+
        }

        impl Job {
            /// A job of which nothing is known.
            pub fn unknown() -> Self {
                let mut base = 0;
                let mut next = |length: usize| {
                    let here = base;
                    base += length as u16;
                    here
                };
                Self { $($field: $group::unknown(next($group::DECLARATIONS.len())),)+ }
            }

            /// The fact with this id.
            pub fn slot(&self, fact: FactId) -> &dyn Slot {
                let mut at = usize::from(fact.0);
                $(if let Some(slot) = self.$field.slot(at) {
                    return slot;
                }
                at -= $group::DECLARATIONS.len();)+
                unreachable!("a fact id from another registry: {at} past the end")
            }

            /// The fact with this id, to write to.
            pub fn slot_mut(&mut self, fact: FactId) -> &mut dyn Slot {
                let mut at = usize::from(fact.0);
                $(if at < $group::DECLARATIONS.len() && let Some(slot) = self.$field.slot_mut(at) {
                    return slot;
                }
                at = at.wrapping_sub($group::DECLARATIONS.len());)+
                unreachable!("a fact id from another registry: {at} past the end")
            }
        }

        /// Every group's name in the job file and its facts' declarations, in registry order.
        pub const GROUPS: &[(&str, &[Declaration])] = &[$(($group::NAME, $group::DECLARATIONS)),+];

        static FACTS: LazyLock<Vec<&'static Declaration>> =
            LazyLock::new(|| [$($group::DECLARATIONS),+].into_iter().flatten().collect());
    };
}

job! {
    usage: Usage,
    vehicle: Vehicle,
    engine: Engine,
    control: Control,
    flexplate: Flexplate,
    converter: Converter,
    bell: Bell,
    pump: Pump,
    case: Case,
    cooling: Cooling,
    vent: Vent,
    shifter: Shifter,
    threads: Threads,
    output: Output,
    yoke: Yoke,
    driveshaft: Driveshaft,
    speedometer: Speedometer,
    mount: Mount,
    pan: Pan,
    stick: Stick,
    shield: Shield,
    event: Event,
    class_table: ClassTable,
    one_way: OneWay,
    gears: Gears,
    direct: Direct,
    bands: Bands,
    forward: Forward,
    intermediate: Intermediate,
    bench: Bench,
    valve_body: ValveBody,
    trans_brake: TransBrake,
    fluid: Fluid,
    order: Order,
    paper: Paper
}

/// Every fact's declaration, in registry order.
pub fn facts() -> &'static [&'static Declaration] {
    &FACTS
}

/// Every fact's id, in registry order.
pub fn fact_ids() -> impl Iterator<Item = FactId> {
    (0..facts().len() as u16).map(FactId)
}

/// The fact of this path (`group.leaf`), if there is one.
pub fn fact_named(path: &str) -> Option<FactId> {
    static BY_PATH: LazyLock<HashMap<&str, FactId>> =
        LazyLock::new(|| fact_ids().map(|fact| (fact.declaration().path, fact)).collect());
    BY_PATH.get(path).copied()
}

impl FactId {
    /// What is said about this fact.
    pub fn declaration(self) -> &'static Declaration {
        facts()[usize::from(self.0)]
    }
}

impl Job {
    /// The job with every fact at its plain value: a harmless unit in a harmless car.
    pub fn plain() -> Self {
        let mut job = Self::unknown();
        for fact in fact_ids() {
            let declaration = fact.declaration();
            let read = job.slot_mut(fact).read(&declaration.plain.json(), declaration);
            debug_assert!(read.is_ok(), "the plain value of {} is not allowed: {read:?}", declaration.path);
        }
        job
    }
}

#[cfg(test)]
mod tests;
