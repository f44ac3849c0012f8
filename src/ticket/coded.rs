//! Short lists of words that are stored as codes and shown as labels.

/// Declares an enum whose variants carry the code that is stored and the words people read.
macro_rules! coded {
    ($(#[$doc:meta])* $name:ident { $($(#[$about:meta])* $variant:ident = $code:literal, $label:literal;)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, serde::Deserialize)]
        pub enum $name {
            $($(#[$about])* #[serde(rename = $code)] $variant,)+
        }

        impl $name {
            /// Every one, in declared order.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// As it is stored and as forms send it.
            pub const fn code(self) -> &'static str {
                match self { $(Self::$variant => $code),+ }
            }

            /// As people read it.
            pub const fn label(self) -> &'static str {
                match self { $(Self::$variant => $label),+ }
            }

            /// The one with this code.
            pub fn from_code(code: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.code() == code)
            }
        }
    };
}
pub(super) use coded;
