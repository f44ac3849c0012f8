//! The groups of facts, one file each, in the order people meet them.

mod bands;
mod bell;
mod bench;
mod case;
mod class_table;
mod control;
mod converter;
mod cooling;
mod direct;
mod driveshaft;
mod engine;
mod event;
mod flexplate;
mod fluid;
mod forward;
mod gears;
mod intermediate;
mod mount;
mod one_way;
mod order;
mod output;
mod pan;
mod paper;
mod pump;
mod shield;
mod shifter;
mod speedometer;
mod stick;
mod threads;
mod trans_brake;
mod usage;
mod valve_body;
mod vehicle;
mod vent;
mod yoke;

pub use bands::Bands;
pub use bell::Bell;
pub use bench::Bench;
pub use case::Case;
pub use class_table::ClassTable;
pub use control::Control;
pub use converter::Converter;
pub use cooling::Cooling;
pub use direct::Direct;
pub use driveshaft::Driveshaft;
pub use engine::Engine;
pub use event::Event;
pub use flexplate::Flexplate;
pub use fluid::Fluid;
pub use forward::Forward;
pub use gears::Gears;
pub use intermediate::Intermediate;
pub use mount::Mount;
pub use one_way::OneWay;
pub use order::Order;
pub use output::Output;
pub use pan::Pan;
pub use paper::Paper;
pub use pump::Pump;
pub use shield::Shield;
pub use shifter::Shifter;
pub use speedometer::Speedometer;
pub use stick::Stick;
pub use threads::Threads;
pub use trans_brake::TransBrake;
pub use usage::Usage;
pub use valve_body::ValveBody;
pub use vehicle::Vehicle;
pub use vent::Vent;
pub use yoke::Yoke;

use super::{Declaration, Slot};

/// A group of facts of one part or subject.
pub trait Group {
    /// The group's name in the job file.
    const NAME: &'static str;
    /// What is said about each of its facts, in field order.
    const DECLARATIONS: &'static [Declaration];
    /// All unknown; `base` is the registry place of its first fact.
    fn unknown(base: u16) -> Self;
    /// The fact at a place within the group.
    fn slot(&self, at: usize) -> Option<&dyn Slot>;
    /// The same, to write to.
    fn slot_mut(&mut self, at: usize) -> Option<&mut dyn Slot>;
}

/// Declares a group: a struct of facts and everything said about them, in one place.
macro_rules! group {
    ($(#[$doc:meta])* $name:ident $group:literal { $($leaf:ident: $type:ty {
        sheet: $sheet:ident, bound: $bound:expr, plain: $plain:expr,
        label: $label:literal, note: $note:literal,
        how: $how:literal,
        why: $why:literal,
    })+ }) => {
        $(#[$doc])*
        #[derive(Clone, Debug, PartialEq)]
        pub struct $name {
            $(#[doc = $label] pub $leaf: $crate::job::Fact<$type>,)+
        }
        impl super::Group for $name {
            const NAME: &'static str = $group;
            const DECLARATIONS: &'static [$crate::job::Declaration] = &[$($crate::job::Declaration {
                path: concat!($group, ".", stringify!($leaf)),
                label: $label,
                sheet: $crate::job::Sheet::$sheet,
                kind: <$type as $crate::job::FactValue>::KIND,
                bound: $bound,
                note: $note,
                how: $how,
                why: $why,
                plain: $plain,
                check: |given, declaration| <$type as $crate::job::FactValue>::read(given, declaration).map(drop),
            }),+];
            fn unknown(base: u16) -> Self {
                let mut ids = base..;
                let mut next = || $crate::job::FactId(ids.next().unwrap_or(u16::MAX));
                Self { $($leaf: $crate::job::Fact::unknown(next()),)+ }
            }
            fn slot(&self, at: usize) -> Option<&dyn $crate::job::Slot> {
                let slots: [&dyn $crate::job::Slot; Self::DECLARATIONS.len()] = [$(&self.$leaf),+];
                slots.get(at).copied()
            }
            fn slot_mut(&mut self, at: usize) -> Option<&mut dyn $crate::job::Slot> {
                let slots: [&mut dyn $crate::job::Slot; Self::DECLARATIONS.len()] = [$(&mut self.$leaf),+];
                slots.into_iter().nth(at)
            }
        }
    };
}
use group;
