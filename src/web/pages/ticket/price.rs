//! What the job costs, line by line. A changed price is a new version.

use super::{Head, back, load, or_back};
use crate::quantity::Cents;
use crate::service::{ChangeTicket, Failure, Key, Who};
use crate::ticket::{Contents, Edit, Price, PriceLine};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::form::{Entry, Fields, FormState, Reader, Sent};
use crate::web::frame::{Answer, on_to};
use crate::web::moment::moment;
use crate::web::pages::conflict::{ConflictPage, theirs};
use crate::web::site::AppState;
use axum::extract::State;
use jiff::tz::TimeZone;

/// What it costs.
#[derive(Default)]
pub struct PriceView {
    /// The sum in words.
    pub total: String,
    /// The lines.
    pub lines: Vec<(String, String)>,
    /// Who named it and when; empty without a price.
    pub named: String,
    /// Was something planned since?
    pub planned_since: bool,
}

/// What the ticket shows of its price.
pub fn shown(contents: &Contents, zone: &TimeZone) -> PriceView {
    let Some(quoted) = &contents.price else {
        return PriceView { total: "Not named yet".into(), ..PriceView::default() };
    };
    PriceView {
        total: quoted.price.total().map_or_else(|| "Not named yet".into(), |total: Cents| total.to_string()),
        lines: quoted.price.lines.iter().map(|line| (line.what.clone(), line.cents.to_string())).collect(),
        named: format!("{}, {}", quoted.by, moment(quoted.at, zone)),
        planned_since: contents.planned_after_price(),
    }
}

/// One line of the price on the form.
pub struct PriceRow {
    /// Its place, counted from 1.
    pub at: usize,
    /// What it is for.
    pub what: String,
    /// What it costs, as typed.
    pub amount: String,
    /// What is wrong with the amount or the words; empty when nothing is.
    pub problem: String,
}

/// Empty lines kept ready below the ones that are filled.
const SPARE: usize = 2;
/// The most lines a form can send.
const MOST: usize = 60;

/// The lines of the price form: what was sent when it comes back, what stands otherwise.
pub fn rows(form: &FormState, stands: Option<&Price>) -> Vec<PriceRow> {
    let sent = !form.value("base").is_empty();
    let lines = stands.map_or(&[][..], |price| &price.lines);
    let filled = if sent {
        (1..=MOST)
            .filter(|at| !form.value(&what_name(*at)).is_empty() || !form.value(&amount_name(*at)).is_empty())
            .max()
    } else {
        Some(lines.len())
    };
    (1..=(filled.unwrap_or(0) + SPARE).min(MOST))
        .map(|at| {
            let line = lines.get(at - 1).filter(|_| !sent);
            PriceRow {
                at,
                what: line.map_or_else(|| form.value(&what_name(at)).to_owned(), |line| line.what.clone()),
                amount: line.map_or_else(|| form.value(&amount_name(at)).to_owned(), |line| line.cents.to_string()),
                problem: format!("{}{}", form.problem(&what_name(at)), form.problem(&amount_name(at))),
            }
        })
        .collect()
}

/// The name of the field that says what a line is for.
pub fn what_name(at: usize) -> String {
    format!("what.{at}")
}

/// The name of the field with a line's amount.
pub fn amount_name(at: usize) -> String {
    format!("amount.{at}")
}

/// A price as it is sent.
pub struct PriceSent {
    base: i32,
    price: Price,
}

impl Entry for PriceSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let price = lines(reader);
        let base = reader.number("base").and_then(|base| i32::try_from(base).ok()).unwrap_or_default();
        Self { base, price }
    }
}

/// The price that stands in a form's lines; what is wrong with a line is noted.
pub fn lines(reader: &mut Reader<'_>) -> Price {
    let mut lines = Vec::new();
    for at in 1..=MOST {
        let what = reader.line(&what_name(at), &format!("What line {at} is for"), 200);
        let cents = amount(reader, at);
        match (what.is_empty(), cents) {
            (false, Some(cents)) => lines.push(PriceLine { what, cents }),
            (true, Some(_)) => reader.wrong(what_name(at), format!("Say what line {at} of the price is for.")),
            (false, None) if reader.fields().get(&amount_name(at)).is_none_or(|text| text.trim().is_empty()) => {
                reader.wrong(amount_name(at), format!("Write what line {at}, \"{what}\", costs; 0 if it is free."));
            }
            _ => {}
        }
    }
    Price { lines }
}

/// An amount with or without a minus before it.
fn amount(reader: &mut Reader<'_>, at: usize) -> Option<Cents> {
    let typed = reader.fields().get(&amount_name(at)).unwrap_or_default().trim();
    let size = typed.trim_start_matches(['-', '\u{2212}']);
    let alone = Fields::default().with("amount", size);
    let mut inner = Reader::new(&alone);
    let cents = inner.money("amount", &format!("The amount of line {at}"));
    for problem in inner.problems() {
        reader.wrong(amount_name(at), problem.message);
    }
    cents.map(|cents| if size.len() < typed.len() { Cents(-cents.0) } else { cents })
}

/// `POST /tickets/{number}/price`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<PriceSent>,
) -> Answer {
    let PriceSent { base, price } = match sent.read {
        Ok(price) => price,
        Err(problems) => return back(&state, &caller, number, sent.typed, problems).await,
    };
    if !theirs(&sent.typed).is_empty() {
        return on_to(&format!("/tickets/{number}"));
    }
    let edit = Edit { price: Some(price), ..Edit::default() };
    let command = ChangeTicket { ticket: number, made_from: base, edit };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(revised) if revised.changes.is_empty() => on_to(&format!("/tickets/{number}?saved=same")),
        Ok(_) => on_to(&format!("/tickets/{number}?saved=price")),
        Err(Failure::Conflict(clashes)) => {
            let (frame, page, now) = load(&state, &caller, number).await?;
            let carried = sent.typed.with("base", page.ticket.revision.to_string());
            let action = format!("/tickets/{number}/price");
            ConflictPage::new(frame, Head::new(&page), action, clashes, &carried, &now.zone).answer()
        }
        Err(failure) => or_back(&state, &caller, number, sent.typed, failure).await,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(body: &str) -> Result<Price, Vec<String>> {
        let fields = Fields::parse(body.as_bytes());
        let mut reader = Reader::new(&fields);
        let sent = PriceSent::read(&mut reader);
        let problems = reader.problems();
        if problems.is_empty() { Ok(sent.price) } else { Err(problems.into_iter().map(|one| one.field).collect()) }
    }

    #[test]
    fn lines_are_read_to_the_cent_and_a_minus_is_a_discount() {
        let price = read("what.1=Rebuild&amount.1=1850&what.2=&amount.2=&what.3=Returning&amount.3=-100.50");
        let lines: Vec<_> = price.expect("reads").lines.into_iter().map(|line| (line.what, line.cents.0)).collect();
        assert_eq!(lines, [("Rebuild".to_owned(), 185_000), ("Returning".to_owned(), -10_050)]);
    }

    #[test]
    fn half_a_line_is_asked_about_and_never_guessed() {
        let wrong = read("what.1=Rebuild&amount.1=&what.2=&amount.2=5&what.3=Bolt&amount.3=much").expect_err("three");
        assert_eq!(wrong, ["amount.1", "what.2", "amount.3"]);
    }

    #[test]
    fn everything_typed_comes_back_with_empty_lines_below() {
        let typed = Fields::parse(b"base=3&what.1=Rebuild&amount.1=much&what.4=Bolt");
        let rows = rows(&FormState::back(typed, Vec::new()), None);
        assert_eq!(rows.len(), 4 + SPARE);
        assert_eq!((rows[0].amount.as_str(), rows[3].what.as_str()), ("much", "Bolt"));
    }
}
