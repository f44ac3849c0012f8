//! What a customer reads and signs, by link or on the shop's screen.

use crate::plan::summary::TO_PUT_RIGHT;
use crate::service::{Offers, Shop, Shown, SinceSigned};
use crate::ticket::{Paper, Purpose, Reworded, Tick, TickStanding};
use crate::web::form::FormState;
use askama::Template;
use jiff::Zoned;
use jiff::tz::TimeZone;

/// The page to read and sign.
#[derive(Template)]
#[template(path = "pages/customer.html")]
pub struct CustomerPage {
    shop: Shop,
    place: Place,
    text: PaperView,
    ticks: Vec<TickView>,
    since: Option<Since>,
    digest: String,
    form: FormState,
    decline: FormState,
    offers: Offers,
    choose: FormState,
}

/// Where the page is read.
#[derive(Clone, Debug)]
pub enum Place {
    /// On the customer's own device.
    Link {
        /// The link's secret.
        token: String,
    },
    /// On the shop's screen, before a member of staff.
    Counter {
        /// The ticket.
        ticket: i64,
        /// What is signed.
        purpose: Purpose,
    },
}

/// A paper's text, for the page and for the receipt.
pub struct PaperView {
    /// What it is called.
    pub title: String,
    /// Who it is from, to whom, about what, which version.
    pub opening: Vec<String>,
    /// What is said.
    pub blocks: Vec<BlockView>,
    /// The price line.
    pub price: String,
    /// What the name under it means.
    pub promise: String,
    /// What happens when the customer says no.
    pub refusal: String,
}

/// A heading with its lines.
pub struct BlockView {
    /// The heading.
    pub heading: String,
    /// The mark beside it; empty without one.
    pub mark: &'static str,
    /// The lines.
    pub lines: Vec<String>,
}

/// Something to tick.
pub struct TickView {
    /// The field's name.
    pub field: String,
    /// The mark beside it; empty without one.
    pub mark: &'static str,
    /// What is accepted.
    pub text: String,
    /// What became of an earlier tick of the same point; empty when there was none.
    pub before: &'static str,
}

/// What happened to an earlier signature.
pub struct Since {
    /// The version that was signed.
    pub version: i32,
    /// When, on the shop's clock.
    pub when: String,
    /// What the page says otherwise now.
    pub reworded: Vec<Reworded>,
    /// Ticks that no longer count because the point is gone.
    pub gone: Vec<String>,
}

impl Place {
    /// Where signing is sent.
    pub fn sign(&self) -> String {
        match self {
            Self::Link { token } => format!("/c/{token}/sign"),
            Self::Counter { ticket, purpose } => format!("/tickets/{ticket}/sign/{}", purpose.code()),
        }
    }

    /// Where choosing is sent; at the counter people talk instead.
    pub fn choose(&self) -> String {
        match self {
            Self::Link { token } => format!("/c/{token}/choose"),
            Self::Counter { .. } => String::new(),
        }
    }

    /// Where saying no is sent.
    pub fn decline(&self) -> String {
        match self {
            Self::Link { token } => format!("/c/{token}/decline"),
            Self::Counter { ticket, purpose } => format!("/tickets/{ticket}/decline/{}", purpose.code()),
        }
    }

    /// The ticket, when staff stand beside the customer.
    pub const fn counter(&self) -> Option<i64> {
        match self {
            Self::Link { .. } => None,
            Self::Counter { ticket, .. } => Some(*ticket),
        }
    }
}

impl CustomerPage {
    /// The page as it stands, with what was typed into its two forms.
    pub fn new(shop: Shop, place: Place, shown: Shown, form: FormState, decline: FormState) -> Self {
        let zone = TimeZone::get(&shop.zone).unwrap_or(TimeZone::UTC);
        let standing = shown.since.as_ref().map(|since| since.ticks.as_slice()).unwrap_or_default();
        Self {
            ticks: shown.paper.ticks.iter().map(|tick| TickView::new(tick, standing)).collect(),
            since: shown.since.as_ref().map(|since| Since::new(since, &zone)),
            text: PaperView::new(&shown.paper),
            digest: shown.digest,
            shop,
            place,
            form,
            decline,
            offers: Offers::default(),
            choose: FormState::empty(),
        }
    }

    /// The same with what can be chosen instead.
    pub fn offering(self, offers: Offers, choose: FormState) -> Self {
        Self { offers, choose, ..self }
    }
}

impl PaperView {
    /// The text of this paper.
    pub fn new(paper: &Paper) -> Self {
        let mark = |heading: &str| if heading == TO_PUT_RIGHT { "stop" } else { "" };
        Self {
            title: paper.title.clone(),
            opening: paper.opening.clone(),
            blocks: paper
                .blocks
                .iter()
                .map(|block| BlockView {
                    heading: block.heading.clone(),
                    mark: mark(&block.heading),
                    lines: block.lines.clone(),
                })
                .collect(),
            price: paper.price.clone(),
            promise: paper.promise.clone(),
            refusal: paper.refusal.clone(),
        }
    }
}

impl TickView {
    fn new(tick: &Tick, standing: &[TickStanding]) -> Self {
        let before = standing
            .iter()
            .find_map(|one| match one {
                TickStanding::Changed { now, .. } if now.code == tick.code => {
                    Some("This point changed. Your earlier tick no longer counts.")
                }
                TickStanding::New(now) if now.code == tick.code => Some("This point is new."),
                TickStanding::Same(now) if now.code == tick.code => Some("You ticked this before. It has not changed."),
                _ => None,
            })
            .unwrap_or_default();
        Self {
            field: format!("tick.{}", tick.code),
            mark: tick.severity.map_or("", crate::ticket::Severity::code),
            text: tick.text.clone(),
            before,
        }
    }
}

impl Since {
    fn new(since: &SinceSigned, zone: &TimeZone) -> Self {
        let gone = |one: &TickStanding| match one {
            TickStanding::Gone(tick) => Some(tick.text.clone()),
            _ => None,
        };
        Self {
            version: since.revision,
            when: when(&since.at.to_zoned(zone.clone())),
            reworded: since.reworded.clone(),
            gone: since.ticks.iter().filter_map(gone).collect(),
        }
    }
}

/// A moment as a customer reads it: `March 2, 2026, 08:00 MST`.
pub fn when(at: &Zoned) -> String {
    at.strftime("%B %-d, %Y, %H:%M %Z").to_string()
}

/// A telephone number as a link dials it.
pub fn dialled(phone: &str) -> String {
    phone.chars().filter(|sign| sign.is_ascii_digit() || *sign == '+').collect()
}
