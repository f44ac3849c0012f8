//! What a measurement is held against, and what that says of a number.

use super::scale::Scale;
use crate::job::FactSet;
use crate::quantity::written_down;
use crate::rules::{Known, LimitId, Limits};

/// One end of a band: the number, and where it comes from with how far to trust it.
#[derive(Clone, Debug, PartialEq)]
pub struct Edge {
    /// In the scale's own unit.
    pub value: f64,
    /// `memory, medium`, or `6 frictions at 0.006 in: memory, low`.
    pub mark: String,
    /// The limit behind it, for its page.
    pub limit: Option<LimitId>,
}

/// What a measurement may come to. What is not set is not held against anything.
#[derive(Clone, Debug, PartialEq)]
pub struct Band {
    /// Below this it is out.
    pub least: Option<Edge>,
    /// Above this it is out.
    pub most: Option<Edge>,
    /// Below this it is allowed, but tighter than the shop builds it.
    pub tight: Option<Edge>,
    /// Above this it is allowed, but looser than the shop builds it.
    pub loose: Option<Edge>,
    /// What is aimed at.
    pub aim: Option<Edge>,
}

/// What is said of a measurement.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// Nobody has taken it.
    NotTaken,
    /// Inside what is wanted.
    Fine,
    /// Allowed, but not what the shop builds: below what is wanted, or above.
    Allowed(Side),
    /// Outside its limits, by so much in the scale's own unit.
    Out(Side, f64),
    /// Taken, and these facts are needed before anything can be said of it.
    CannotSay(FactSet),
    /// Taken; there is no limit to hold it against.
    NoLimit,
}

/// On which side of a band a number lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Below it.
    Below,
    /// Above it.
    Above,
}

impl Band {
    /// Held against nothing.
    pub const NONE: Self = Self { least: None, most: None, tight: None, loose: None, aim: None };

    /// Held against these two limits of the shop.
    pub(super) fn between(limits: &Limits, least: LimitId, most: LimitId) -> Self {
        Self { least: Some(Edge::of(limits, least)), most: Some(Edge::of(limits, most)), ..Self::NONE }
    }

    /// At least this limit.
    pub(super) fn at_least(limits: &Limits, least: LimitId) -> Self {
        Self { least: Some(Edge::of(limits, least)), ..Self::NONE }
    }

    /// At most this limit.
    pub(super) fn at_most(limits: &Limits, most: LimitId) -> Self {
        Self { most: Some(Edge::of(limits, most)), ..Self::NONE }
    }

    /// With an aim.
    pub(super) fn aiming(self, limits: &Limits, aim: LimitId) -> Self {
        Self { aim: Some(Edge::of(limits, aim)), ..self }
    }

    /// Is there anything to hold a number against?
    pub const fn is_none(&self) -> bool {
        self.least.is_none() && self.most.is_none()
    }

    /// Its edges in the order they are told, each with its name.
    pub fn told(&self, scale: Scale) -> Vec<(&'static str, String, String)> {
        let edges = [
            ("At least", &self.least),
            ("Wanted from", &self.tight),
            ("Aim", &self.aim),
            ("Wanted to", &self.loose),
            ("At most", &self.most),
        ];
        edges
            .into_iter()
            .filter_map(|(name, edge)| edge.as_ref().map(|edge| (name, scale.say(edge.value), edge.mark.clone())))
            .collect()
    }
}

impl Edge {
    /// A limit as the shop has it.
    pub(super) fn of(limits: &Limits, limit: LimitId) -> Self {
        Self { value: limits.get(limit), mark: mark(limits, limit), limit: Some(limit) }
    }

    /// A limit for each of so many.
    pub(super) fn for_each(limits: &Limits, limit: LimitId, count: u32, what: &str) -> Self {
        let each = limits.used(limit);
        let mark = format!("{count} {what} at {}: {}", limit.say(each.value), mark(limits, limit));
        Self { value: each.value * f64::from(count), mark, limit: Some(limit) }
    }
}

/// How far a limit can be trusted, and whether the shop has moved it.
pub(super) fn mark(limits: &Limits, limit: LimitId) -> String {
    let declared = limit.declaration();
    if limits.get(limit) == declared.default {
        declared.mark.to_string()
    } else {
        format!("set by this shop; {} as supplied: {}", limit.say(declared.default), declared.mark)
    }
}

/// What a band says of a number.
pub fn judge(value: Option<f64>, band: &Known<Band>) -> Verdict {
    let Some(value) = value else { return Verdict::NotTaken };
    let band = match band {
        Known::Waits(facts) => return Verdict::CannotSay(*facts),
        Known::Yes(band, _) if band.is_none() => return Verdict::NoLimit,
        Known::Yes(band, _) => band,
    };
    // Compared as the rules compare, so that both say the same at the very limit.
    let below = |edge: &Option<Edge>| edge.as_ref().map(|edge| edge.value).filter(|edge| value < *edge);
    let above = |edge: &Option<Edge>| edge.as_ref().map(|edge| edge.value).filter(|edge| value > *edge);
    if let Some(least) = below(&band.least) {
        Verdict::Out(Side::Below, written_down(least - value))
    } else if let Some(most) = above(&band.most) {
        Verdict::Out(Side::Above, written_down(value - most))
    } else if below(&band.tight).is_some() {
        Verdict::Allowed(Side::Below)
    } else if above(&band.loose).is_some() {
        Verdict::Allowed(Side::Above)
    } else {
        Verdict::Fine
    }
}

impl Verdict {
    /// In a few words.
    pub fn word(&self) -> &'static str {
        match self {
            Self::NotTaken => "not taken",
            Self::Fine => "fine",
            Self::Allowed(Side::Below) => "allowed, on the low side",
            Self::Allowed(Side::Above) => "allowed, on the high side",
            Self::Out(..) => "out",
            Self::CannotSay(_) => "cannot be judged yet",
            Self::NoLimit => "written down",
        }
    }

    /// In a sentence.
    pub fn sentence(&self, scale: Scale) -> String {
        match self {
            Self::NotTaken => "Nobody has taken it yet.".to_owned(),
            Self::Fine => "Fine: inside its limits.".to_owned(),
            Self::Allowed(Side::Below) => "Allowed, but lower than this shop builds it.".to_owned(),
            Self::Allowed(Side::Above) => "Allowed, but higher than this shop builds it.".to_owned(),
            // Less than anybody can read: the product that makes the limit ends a hair beside its decimal.
            Self::Out(side, by) if *by == 0.0 => format!(
                "Right at the {} that is allowed, and the rule counts it as out. Read it again.",
                if *side == Side::Below { "least" } else { "most" }
            ),
            Self::Out(Side::Below, by) => format!("Out: {} below the least that is allowed.", scale.say(*by)),
            Self::Out(Side::Above, by) => format!("Out: {} above the most that is allowed.", scale.say(*by)),
            Self::CannotSay(_) => "It cannot be judged before more is known of the unit.".to_owned(),
            Self::NoLimit => "Written down. There is no limit here to hold it against.".to_owned(),
        }
    }

    /// Its code for style: `fine`, `allowed`, `out`, `open`.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Fine => "fine",
            Self::Allowed(_) => "allowed",
            Self::Out(..) => "out",
            Self::NotTaken | Self::CannotSay(_) | Self::NoLimit => "open",
        }
    }
}
