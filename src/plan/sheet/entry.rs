//! What a measurement is: one declaration that says how it is taken, what it is held against, what to do when it is out.

use super::band::Band;
use super::scale::Scale;
use super::sets::SetKind;
use crate::job::{FactId, Job, fact_named};
use crate::quantity::written_down;
use crate::rules::{Known, Limits, Truth};
use std::fmt;

/// One measurement of the sheet.
pub struct Measurement {
    /// Its name in addresses and in history, for ever: `front-end-play`.
    pub name: &'static str,
    /// What people call it.
    pub label: &'static str,
    /// Where on the sheet it stands.
    pub chapter: Chapter,
    /// What it is counted in.
    pub scale: Scale,
    /// What is written down when it is taken.
    pub fills: Fills,
    /// What it is usually taken with.
    pub instrument: Instrument,
    /// How it is taken, for somebody who has never done it.
    pub how: &'static str,
    /// What to do when it is out.
    pub out: &'static str,
    /// How taking it can hurt somebody, and whose word counts; none when it cannot more than any work can.
    pub hurts: Option<&'static str>,
    /// Between which numbers it lies on any unit that was ever on a bench, good or bad. Outside it is asked about.
    pub likely: Span,
    /// Between which numbers it can lie at all. Outside it is refused.
    pub possible: Span,
    /// How far readings of the same thing may lie apart.
    pub may_move: f64,
    /// How many readings are asked for.
    pub readings: usize,
    /// What several of them come to.
    pub counts: Counts,
    /// What it is held against, in the scale's own unit.
    pub band: fn(&Job, &Limits) -> Known<Band>,
    /// When it belongs to a job; none when it belongs to every job.
    pub when: Option<fn(&Job) -> Truth>,
    /// What is worked out from it.
    pub fit: Option<Fit>,
}

/// What several readings come to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Counts {
    /// Readings of one and the same thing: their mean.
    Mean,
    /// Readings at several places, the lowest of which does the harm.
    Least,
    /// Readings at several places, the highest of which does the harm.
    Most,
}

/// From one number to another of a scale's own unit, both ends among them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// The lower end.
    pub from: f64,
    /// The upper end.
    pub to: f64,
}

impl Span {
    /// Does it hold this number?
    pub fn holds(&self, value: f64) -> bool {
        (self.from..=self.to).contains(&written_down(value))
    }
}

/// What a measurement fills.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fills {
    /// No fact of the job: it stands on the sheet alone.
    Nothing,
    /// The number goes into this fact.
    Number(&'static str),
    /// This fact gets the first word when the part by it fits, and the second when none does.
    Word(&'static str, &'static str, &'static str),
}

/// What is worked out from a measurement.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// One part out of a set takes up the play: new = old + reading − aim.
    Washer(SetKind),
    /// Steels, several at once.
    Pack(SetKind),
    /// Shims under a bearing that replaces a pair of washers; the reading is the height of the bearing.
    Shims(SetKind),
    /// The pin whose window of the gauge holds the reading.
    Pin(SetKind),
    /// Offset dowels: half the runout.
    OffsetDowels,
    /// Converter spacers: gap − aim, the same at every pad.
    Spacers,
}

impl Fit {
    /// The set it chooses from, when there is one.
    pub const fn set(self) -> Option<SetKind> {
        match self {
            Self::Washer(set) | Self::Pack(set) | Self::Shims(set) | Self::Pin(set) => Some(set),
            Self::OffsetDowels | Self::Spacers => None,
        }
    }
}

/// The parts of the sheet, in the order of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Chapter {
    /// Wear, measured while the unit is apart.
    Parts,
    /// Selective fits and checks while it goes together.
    Assembly,
    /// Bolts.
    Torques,
    /// Engine, bell, converter, driveshaft.
    Installation,
    /// Hot and running.
    Running,
}

impl Chapter {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Parts, Self::Assembly, Self::Torques, Self::Installation, Self::Running];

    /// Its heading.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Parts => "Parts on the bench",
            Self::Assembly => "End plays and packs",
            Self::Torques => "Bolt torques",
            Self::Installation => "Engine, converter and driveshaft",
            Self::Running => "Pressures and running",
        }
    }
}

/// Declares kinds of instrument: doc, name, code, label.
macro_rules! instruments {
    ($($(#[$doc:meta])+ $name:ident = $code:literal, $label:literal;)+) => {
        /// A kind of instrument.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Instrument {
            $($(#[$doc])+ $name,)+
        }

        impl Instrument {
            /// Every kind.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// Its code in the database and in forms.
            pub const fn code(self) -> &'static str {
                match self { $(Self::$name => $code),+ }
            }

            /// What people call it.
            pub const fn label(self) -> &'static str {
                match self { $(Self::$name => $label),+ }
            }

            /// The kind with this code.
            pub fn from_code(code: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.code() == code)
            }
        }
    };
}

instruments! {
    /// Needle on a stand.
    Dial = "dial", "Dial indicator";
    /// Leaves of known thickness.
    Feeler = "feeler", "Feeler gauge";
    /// Screw of known pitch.
    Micrometer = "micrometer", "Micrometer";
    /// Jaws on a rule.
    Caliper = "caliper", "Caliper";
    /// Two-legged or dialed, for bores.
    BoreGauge = "bore-gauge", "Bore gauge";
    /// Rod with a foot.
    DepthGauge = "depth-gauge", "Depth gauge";
    /// Plug gauges of the drawer: drill shanks.
    DrillShank = "drill-shank", "Drill shanks";
    /// The tool that goes on the servo bore.
    PinGauge = "pin-gauge", "Pin gauge";
    /// Gauge for oil pressure.
    PressureGauge = "pressure-gauge", "Pressure gauge";
    /// Wrench that shows or clicks.
    TorqueWrench = "torque-wrench", "Torque wrench";
    /// Electrical.
    Meter = "meter", "Volt meter";
    /// Seconds.
    Watch = "watch", "Watch";
    /// Engine speed.
    Tachometer = "tachometer", "Tachometer";
    /// Tape or rule.
    Tape = "tape", "Tape or rule";
    /// Angle finder.
    AngleGauge = "angle-gauge", "Angle gauge";
}

impl fmt::Debug for Measurement {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name)
    }
}

impl Measurement {
    /// Does it belong to this job?
    pub fn applies(&self, job: &Job) -> Truth {
        self.when.map_or(Known::given(true), |when| when(job))
    }

    /// The fact it fills, when it fills one.
    pub fn fact(&self) -> Option<FactId> {
        match self.fills {
            Fills::Nothing => None,
            Fills::Number(path) | Fills::Word(path, ..) => fact_named(path),
        }
    }

    /// A measurement of every job that fills nothing and is held against nothing, until the declaration says more.
    pub(super) const fn new(
        name: &'static str,
        label: &'static str,
        chapter: Chapter,
        scale: Scale,
        instrument: Instrument,
    ) -> Self {
        Self {
            name,
            label,
            chapter,
            scale,
            fills: Fills::Nothing,
            instrument,
            how: "",
            out: "",
            hurts: None,
            likely: Span { from: 0.0, to: 0.0 },
            possible: Span { from: 0.0, to: 0.0 },
            may_move: 0.0,
            readings: 1,
            counts: Counts::Mean,
            band: |_, _| Known::given(Band::NONE),
            when: None,
            fit: None,
        }
    }

    /// The fact that gets the number.
    pub(super) const fn fills(mut self, path: &'static str) -> Self {
        self.fills = Fills::Number(path);
        self
    }

    /// The fact that gets a word when a part fits, and another when none does.
    pub(super) const fn fills_word(mut self, path: &'static str, fits: &'static str, none: &'static str) -> Self {
        self.fills = Fills::Word(path, fits, none);
        self
    }

    /// How it is taken, and what to do when it is out.
    pub(super) const fn told(mut self, how: &'static str, out: &'static str) -> Self {
        self.how = how;
        self.out = out;
        self
    }

    /// How taking it can hurt.
    pub(super) const fn hurts(mut self, words: &'static str) -> Self {
        self.hurts = Some(words);
        self
    }

    /// What is likely, and the most that can be.
    pub(super) const fn likely(mut self, from: f64, to: f64, most: f64) -> Self {
        self.likely = Span { from, to };
        self.possible = Span { from: 0.0, to: most };
        self
    }

    /// It is read so many times, and the readings may lie so far apart.
    pub(super) const fn repeated(mut self, readings: usize, may_move: f64) -> Self {
        self.readings = readings;
        self.may_move = may_move;
        self
    }

    /// It is read at so many places, which may lie so far apart. The worst counts: a mean would hide it.
    pub(super) const fn at_places(mut self, places: usize, may_move: f64, worst: Counts) -> Self {
        self.counts = worst;
        self.repeated(places, may_move)
    }

    /// What it is held against.
    pub(super) const fn band(mut self, band: fn(&Job, &Limits) -> Known<Band>) -> Self {
        self.band = band;
        self
    }

    /// When it belongs to a job.
    pub(super) const fn when(mut self, when: fn(&Job) -> Truth) -> Self {
        self.when = Some(when);
        self
    }

    /// What is worked out from it.
    pub(super) const fn fit(mut self, fit: Fit) -> Self {
        self.fit = Some(fit);
        self
    }
}
