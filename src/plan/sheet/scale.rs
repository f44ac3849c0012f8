//! What a measurement is counted in, and the units a shop may write it in.

/// What a measurement is counted in; the number kept is always in the scale's own unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scale {
    /// Inches.
    Length,
    /// Degrees.
    Angle,
    /// Pounds a square inch, gauge.
    Pressure,
    /// Pound-feet.
    Torque,
    /// Volts.
    Voltage,
    /// Seconds to fill one quart.
    Flow,
    /// Revolutions a minute.
    Speed,
}

/// A unit that numbers of a scale are written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Written {
    /// As it is written behind a number.
    pub symbol: &'static str,
    /// In a sentence.
    pub name: &'static str,
    /// What stands behind a number on the way to the reader of numbers.
    pub(super) suffix: &'static str,
}

const INCH: Written = Written { symbol: "in", name: "inches", suffix: "in" };
const THOU: Written = Written { symbol: "thou", name: "thousandths of an inch", suffix: "thou" };
const MILLIMETRE: Written = Written { symbol: "mm", name: "millimeters", suffix: "mm" };
const POUND_FOOT: Written = Written { symbol: "lb-ft", name: "pound-feet", suffix: "lb-ft" };
const NEWTON_METRE: Written = Written { symbol: "N-m", name: "newton-meters", suffix: "n-m" };
const INCH_POUND: Written = Written { symbol: "in-lb", name: "inch-pounds", suffix: "in-lb" };
const PSI: Written = Written { symbol: "psi", name: "pounds a square inch", suffix: "psi" };
const BAR: Written = Written { symbol: "bar", name: "bar", suffix: "bar" };
const KILOPASCAL: Written = Written { symbol: "kPa", name: "kilopascals", suffix: "kpa" };

impl Scale {
    /// The symbol of the scale's own unit.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Length => "in",
            Self::Angle => "°",
            Self::Pressure => "psi",
            Self::Torque => "lb-ft",
            Self::Voltage => "V",
            Self::Flow => "s/qt",
            Self::Speed => "rpm",
        }
    }

    /// What instruments of this trade show of it, in the scale's own unit: no mean claims more.
    pub const fn step(self) -> f64 {
        match self {
            Self::Length => 0.0001,
            Self::Angle | Self::Voltage | Self::Torque | Self::Flow => 0.1,
            Self::Pressure | Self::Speed => 1.0,
        }
    }

    /// The units it may be written in, the scale's own first.
    pub const fn units(self) -> &'static [Written] {
        match self {
            Self::Length => &[INCH, THOU, MILLIMETRE],
            Self::Torque => &[POUND_FOOT, NEWTON_METRE, INCH_POUND],
            Self::Pressure => &[PSI, BAR, KILOPASCAL],
            Self::Angle => &[Written { symbol: "°", name: "degrees", suffix: "°" }],
            Self::Voltage => &[Written { symbol: "V", name: "volts", suffix: "v" }],
            Self::Flow => &[Written { symbol: "s/qt", name: "seconds a quart", suffix: "s" }],
            Self::Speed => &[Written { symbol: "rpm", name: "revolutions a minute", suffix: "rpm" }],
        }
    }

    /// A number of the scale's own unit with its unit: `0.012 in`, `3°`.
    pub fn say(self, value: f64) -> String {
        let printed = match self {
            Self::Length => {
                let whole = format!("{value:.4}");
                // Three decimals are the trade's habit; the fourth is shown when there is one.
                whole.strip_suffix('0').map_or(whole.clone(), str::to_owned)
            }
            Self::Speed | Self::Pressure => format!("{value:.0}"),
            Self::Angle | Self::Voltage | Self::Torque | Self::Flow => {
                let whole = format!("{value:.1}");
                whole.strip_suffix(".0").map_or(whole.clone(), str::to_owned)
            }
        };
        let printed = if printed.trim_matches(['-', '0', '.']).is_empty() {
            printed.trim_start_matches('-').to_owned()
        } else {
            printed
        };
        if self == Self::Angle { format!("{printed}°") } else { format!("{printed} {}", self.symbol()) }
    }
}

/// The unit a shop means when it writes a number without one, quantity by quantity.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
pub struct Habit {
    /// Of lengths.
    pub length: LengthHabit,
    /// Of torques.
    pub torque: TorqueHabit,
    /// Of pressures.
    pub pressure: PressureHabit,
}

/// Declares the units a shop may be used to: doc, name, variants with code and unit; the first is as supplied.
macro_rules! habit {
    ($(#[$doc:meta])* $name:ident { $first:ident = $first_code:literal, $first_unit:expr; $($(#[$own:meta])* $other:ident = $code:literal, $unit:expr;)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
        pub enum $name {
            /// As supplied.
            #[default]
            #[serde(rename = $first_code)]
            $first,
            $($(#[$own])* #[serde(rename = $code)] $other,)+
        }

        impl $name {
            /// Every one.
            pub const ALL: &'static [Self] = &[Self::$first, $(Self::$other),+];

            /// Its code in the database and in forms.
            pub const fn code(self) -> &'static str {
                match self { Self::$first => $first_code, $(Self::$other => $code),+ }
            }

            /// The one with this code.
            pub fn from_code(code: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.code() == code)
            }

            /// The unit.
            pub const fn unit(self) -> Written {
                match self { Self::$first => $first_unit, $(Self::$other => $unit),+ }
            }
        }
    };
}

habit! {
    /// How a shop writes lengths.
    LengthHabit {
        Inch = "in", INCH;
        /// Thousandths of an inch.
        Thou = "thou", THOU;
        /// Millimetres.
        Millimetre = "mm", MILLIMETRE;
    }
}

habit! {
    /// How a shop writes torques.
    TorqueHabit {
        PoundFoot = "lb-ft", POUND_FOOT;
        /// Newton-metres.
        NewtonMetre = "n-m", NEWTON_METRE;
    }
}

habit! {
    /// How a shop writes pressures.
    PressureHabit {
        Psi = "psi", PSI;
        /// Bar.
        Bar = "bar", BAR;
    }
}

impl Habit {
    /// The unit that a bare number of this scale is in.
    pub const fn of(self, scale: Scale) -> Written {
        match scale {
            Scale::Length => self.length.unit(),
            Scale::Torque => self.torque.unit(),
            Scale::Pressure => self.pressure.unit(),
            Scale::Angle | Scale::Voltage | Scale::Flow | Scale::Speed => scale.units()[0],
        }
    }
}
