//! The words a choice fact can take, one enum a list.

mod case;
mod control;
mod converter;
mod engine;
mod inside;
mod output;
mod outside;
mod vehicle;

pub use case::*;
pub use control::*;
pub use converter::*;
pub use engine::*;
pub use inside::*;
pub use output::*;
pub use outside::*;
pub use vehicle::*;

/// Declares choices: doc, name, then each variant with the code of the job file and the words for people.
macro_rules! choices {
    ($($(#[$doc:meta])* $name:ident { $($variant:ident = $code:literal, $label:literal;)+ })+) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum $name {
            $(#[doc = $label] $variant,)+
        }
        impl $crate::job::Choice for $name {
            const WORDS: &'static [$crate::job::Word] = &[$($crate::job::Word { code: $code, label: $label }),+];
            const ALL: &'static [Self] = &[$(Self::$variant),+];
            fn place(self) -> usize {
                self as usize
            }
        }
        impl $crate::job::FactValue for $name {
            const KIND: $crate::job::Kind = $crate::job::Kind::Choice(<Self as $crate::job::Choice>::WORDS);
            fn read(
                given: &serde_json::Value,
                declaration: &$crate::job::Declaration,
            ) -> Result<Self, $crate::job::Refused> {
                $crate::job::read_choice(given, declaration)
            }
            fn json(&self) -> serde_json::Value {
                serde_json::json!(<Self as $crate::job::Choice>::WORDS[*self as usize].code)
            }
        }
    )+};
}
use choices;
