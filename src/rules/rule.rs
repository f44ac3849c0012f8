//! What a rule is: one declaration that is its documentation, its registration and its check.

use super::derived::{Derived, DerivedId};
use super::known::Truth;
use super::limits::{LimitId, LimitUsed, Limits};
use crate::job::Job;
use std::fmt;

/// One rule of the book.
pub struct Rule {
    /// Its code, for ever: `THR-01`.
    pub code: &'static str,
    /// How bad it is when it is true.
    pub severity: Severity,
    /// When an open verdict begins to be asked about.
    pub due: Due,
    /// Must the customer tick that they accept it?
    pub customer_accepts: bool,
    /// What is wrong, in a few words.
    pub title: &'static str,
    /// What the shop is told: what it means and what to do.
    pub shop: &'static str,
    /// What the customer is told; none when it is the bench's business alone.
    pub customer: Option<&'static str>,
    /// What puts it right.
    pub fix: &'static str,
    /// How far the knowledge can be trusted and where it comes from.
    pub basis: &'static str,
    /// Why the rule exists and where it comes from: its doc comment.
    pub doc: &'static str,
    /// Every computed quantity the condition asks about.
    pub numbers: &'static [DerivedId],
    /// Every limit the condition itself names; those of its computed quantities come on top.
    pub limits: &'static [LimitId],
    /// The condition.
    pub when: fn(&Job, &Derived, &Limits) -> Truth,
    /// Changes the plain job so that the rule fires.
    pub fires: fn(&mut Job),
    /// Changes the plain job in the same corner so that it does not.
    pub clears: fn(&mut Job),
}

impl fmt::Debug for Rule {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code)
    }
}

impl Rule {
    /// The letters of its family: `THR`.
    pub fn family(&self) -> &'static str {
        self.code.split_once('-').map_or(self.code, |(family, _)| family)
    }

    /// The doc comment, a paragraph each, its lines joined.
    pub fn paragraphs(&self) -> Vec<String> {
        let lines: Vec<&str> = self.doc.lines().map(str::trim).collect();
        let paragraphs = lines.split(|line| line.is_empty()).map(|paragraph| paragraph.join(" "));
        paragraphs.filter(|paragraph| !paragraph.is_empty()).collect()
    }

    /// Every limit that can have a say: the condition's own, then those of its computed quantities, none twice.
    pub fn all_limits(&self) -> Vec<LimitId> {
        let of_numbers = self.numbers.iter().flat_map(|number| number.declaration().limits);
        let mut all: Vec<LimitId> = Vec::new();
        for limit in self.limits.iter().chain(of_numbers) {
            if !all.contains(limit) {
                all.push(*limit);
            }
        }
        all
    }

    /// The limits this job's verdict really used, as they stood.
    pub fn limits_used(&self, job: &Job, limits: &Limits) -> Vec<LimitUsed> {
        self.all_limits().into_iter().filter(|limit| limit.chosen_by(job)).map(|limit| limits.used(limit)).collect()
    }

    /// The plain job made to fire this rule.
    pub fn example(&self) -> Job {
        let mut job = Job::plain();
        (self.fires)(&mut job);
        job
    }

    /// The plain job with the same corner put right.
    pub fn counter_example(&self) -> Job {
        let mut job = Job::plain();
        (self.clears)(&mut job);
        job
    }

    /// What it makes of a job.
    pub fn verdict(&self, job: &Job, limits: &Limits) -> Truth {
        (self.when)(job, &Derived::of(job, limits), limits)
    }
}

/// How bad a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Will break, cannot be assembled, or is unsafe.
    Stop,
    /// Works, with a consequence somebody must accept.
    Caution,
    /// Worth saying.
    Note,
}

impl Severity {
    /// As the contract spells it.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Stop => "stop",
            Self::Caution => "caution",
            Self::Note => "note",
        }
    }
}

/// When an open verdict begins to matter, in the order of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Due {
    /// At the counter.
    Intake,
    /// When the build is chosen.
    Spec,
    /// When it is apart.
    Teardown,
    /// Before it is closed.
    Assembly,
    /// On the stand.
    Test,
    /// Before it leaves.
    Delivery,
}

impl Due {
    /// Every one, in the order of the work.
    pub const ALL: [Self; 6] = [Self::Intake, Self::Spec, Self::Teardown, Self::Assembly, Self::Test, Self::Delivery];

    /// The one of this code.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|due| due.code() == code)
    }

    /// As the contract spells it.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Intake => "intake",
            Self::Spec => "spec",
            Self::Teardown => "teardown",
            Self::Assembly => "assembly",
            Self::Test => "test",
            Self::Delivery => "delivery",
        }
    }

    /// As people read it: the stage, and what is done then.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Intake => "Intake (at the counter)",
            Self::Spec => "Spec (when the build is chosen)",
            Self::Teardown => "Teardown (when it is apart)",
            Self::Assembly => "Assembly (before it is closed)",
            Self::Test => "Test (on the stand)",
            Self::Delivery => "Delivery (before it leaves)",
        }
    }

    /// The label of a code that was kept; one that no version knows stays as it is.
    pub fn label_of(code: &str) -> &str {
        Self::from_code(code).map_or(code, |due| due.label())
    }
}

/// Declares the rules of one chapter. Declared means registered, documented and run.
///
/// The doc comment says what the rule checks, why it matters, what to do and
/// where the knowledge comes from. Then code, severity, due, and the rest.
macro_rules! rules {
    ($(
        $(#[doc = $doc:literal])+
        $code:literal $severity:ident $due:ident {
            accepts: $accepts:literal,
            title: $title:literal,
            shop: $shop:literal,
            customer: $customer:expr,
            fix: $fix:literal,
            basis: $basis:literal,
            $(numbers: [$($number:ident),+ $(,)?],)?
            $(limits: [$($limit:ident),+ $(,)?],)?
            when: $when:expr,
            fires: $fires:expr,
            clears: $clears:expr $(,)?
        }
    )+) => {
        #[allow(unused_imports)]
        use $crate::rules::{Ask as _, Measured as _, YesNo as _};

        pub(super) static RULES: &[$crate::rules::Rule] = &[$($crate::rules::Rule {
            code: $code,
            severity: $crate::rules::Severity::$severity,
            due: $crate::rules::Due::$due,
            customer_accepts: $accepts,
            title: $title,
            shop: $shop,
            customer: $customer,
            fix: $fix,
            basis: $basis,
            doc: concat!($($doc, "\n"),+),
            numbers: &[$($($crate::rules::DerivedId::$number),+)?],
            limits: &[$($($crate::rules::LimitId::$limit),+)?],
            when: $when,
            fires: $fires,
            clears: $clears,
        }),+];
    };
}
pub(in crate::rules) use rules;
