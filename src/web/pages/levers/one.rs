//! One lever, or the labour rate: what it costs here, who set it, and the form that sets it.

use super::Row;
use crate::plan::levers::{Lever, LeverPrice, Prices, lever_named};
use crate::quantity::Cents;
use crate::service::{self, Caller, Key, LABOUR_HOUR, PriceSet, SetLeverPrice, Who};
use crate::web::access::Staff;
use crate::web::extract::{Asked, At};
use crate::web::failure::Failure;
use crate::web::form::{Entry, Fields, FormState, Problem, Reader, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::moment::{moment, zone};
use crate::web::pages::clearing::hours;
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use jiff::tz::TimeZone;

/// The page of one lever or of the labour rate.
#[derive(Template)]
#[template(path = "pages/lever.html")]
struct LeverPage {
    frame: Frame,
    code: String,
    /// The lever; none on the page of the labour rate.
    row: Option<Row>,
    /// What stands, in words.
    now: String,
    /// As supplied, in words.
    supplied: String,
    own: bool,
    form: FormState,
    /// The turn of the latest setting; 0 without one.
    turn: i32,
    /// What was set, newest first: what, and who and when.
    set: Vec<(String, String)>,
    done: bool,
}

/// Was it just set?
#[derive(serde::Deserialize)]
pub struct Done {
    saved: Option<String>,
}

/// A price as it is sent.
pub struct PriceSent {
    made_from: i32,
    /// Back to as supplied?
    supplied: bool,
    minutes: Option<u32>,
    parts: Option<Cents>,
}

impl Entry for PriceSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let supplied = reader.fields().get("to") == Some("supplied");
        let made_from = reader.number("turn").and_then(|turn| i32::try_from(turn).ok()).unwrap_or_default();
        if supplied {
            return Self { made_from, supplied, minutes: None, parts: None };
        }
        let parts = reader.money("parts", "The amount");
        if reader.fields().get("parts").is_none_or(|text| text.trim().is_empty()) {
            reader.wrong("parts", "Write the amount; 0 if there is nothing to buy.");
        }
        Self { made_from, supplied, minutes: minutes(reader), parts }
    }
}

/// Hours as a decimal, in whole minutes; nought where the form has no such field.
fn minutes(reader: &mut Reader<'_>) -> Option<u32> {
    let Some(text) = reader.fields().get("hours") else { return Some(0) };
    let typed = text.trim();
    let plain = !typed.is_empty() && typed.bytes().all(|sign| sign.is_ascii_digit() || sign == b'.');
    let read = typed.parse::<f64>().ok().filter(|hours| plain && *hours <= 10_000.0);
    if read.is_none() {
        let given: String = typed.chars().take(60).collect();
        let message = format!("The labour cannot be \"{given}\": write hours such as 0.5 or 2.25, 0 if it takes none.");
        reader.wrong("hours", message);
    }
    read.map(|hours| (hours * 60.0).round() as u32)
}

/// `GET /levers/{code}`
pub async fn show_one(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(code): At<String>,
    Asked(done): Asked<Done>,
) -> Answer {
    page(&of(&state, &caller, &code, None, done.saved.is_some()).await?)
}

/// `POST /levers/{code}`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(code): At<String>,
    sent: Sent<PriceSent>,
) -> Answer {
    let PriceSent { made_from, supplied, minutes, parts } = match sent.read {
        Ok(price) => price,
        Err(problems) => return ask_again(&state, &caller, &code, sent.typed, problems).await,
    };
    let price = minutes.zip(parts).filter(|_| !supplied);
    let command = SetLeverPrice { name: code.clone(), made_from, price };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(()) => on_to(&format!("/levers/{code}?saved=1")),
        Err(service::Failure::Problems(problems)) => {
            ask_again(&state, &caller, &code, sent.typed, problems_of(problems)).await
        }
        Err(failure) => Err(failure.into()),
    }
}

async fn ask_again(state: &AppState, caller: &Caller, code: &str, typed: Fields, problems: Vec<Problem>) -> Answer {
    again(&of(state, caller, code, Some(FormState::back(typed, problems)), false).await?)
}

async fn of(
    state: &AppState,
    caller: &Caller,
    code: &str,
    form: Option<FormState>,
    done: bool,
) -> Result<LeverPage, Failure> {
    let lever = lever_named(code);
    if lever.is_none() && code != LABOUR_HOUR {
        return Err(Failure::NotFound);
    }
    let frame = Frame::of(state, caller).await?;
    let shop = state.service.lever_prices(caller, Some(code)).await?;
    let zone = zone(&frame.shop.zone);
    let stands = price_of(lever, &shop.prices);
    let typed = || {
        let hours = f64::from(stands.minutes) / 60.0;
        Fields::default()
            .with("hours", ((hours * 100.0).round() / 100.0).to_string())
            .with("parts", stands.parts.to_string())
    };
    Ok(LeverPage {
        code: code.to_owned(),
        row: lever.map(|lever| Row::new(lever, &shop.prices)),
        now: in_words(lever.is_some(), stands),
        supplied: in_words(lever.is_some(), price_of(lever, &Prices::default())),
        own: shop.set.first().is_some_and(|set| set.cents.is_some()),
        form: form.unwrap_or_else(|| FormState::holding(typed())),
        turn: shop.set.first().map_or(0, |latest| latest.turn),
        set: shop.set.iter().map(|set| line(lever.is_some(), set, &zone)).collect(),
        frame,
        done,
    })
}

fn price_of(lever: Option<&Lever>, prices: &Prices) -> LeverPrice {
    lever.map_or(LeverPrice { minutes: 0, parts: prices.hour }, |lever| prices.of(lever))
}

fn in_words(has_labour: bool, price: LeverPrice) -> String {
    if has_labour {
        format!("{} of labour, parts {}", hours(price.minutes), price.parts)
    } else {
        format!("{} an hour", price.parts)
    }
}

fn line(has_labour: bool, set: &PriceSet, zone: &TimeZone) -> (String, String) {
    let what = match set.minutes.zip(set.cents) {
        None => "back to as supplied".to_owned(),
        Some((minutes, cents)) => {
            let minutes = u32::try_from(minutes).unwrap_or_default();
            in_words(has_labour, LeverPrice { minutes, parts: Cents(cents) })
        }
    };
    (what, format!("{}, {}", set.made_by, moment(set.at, zone)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(body: &str) -> Result<(Option<u32>, Option<Cents>), Vec<String>> {
        let fields = Fields::parse(body.as_bytes());
        let mut reader = Reader::new(&fields);
        let sent = PriceSent::read(&mut reader);
        let wrong: Vec<String> = reader.problems().into_iter().map(|problem| problem.field).collect();
        if wrong.is_empty() { Ok((sent.minutes, sent.parts)) } else { Err(wrong) }
    }

    #[test]
    fn hours_are_read_to_the_minute_and_nothing_is_guessed() {
        assert_eq!(read("hours=1.25&parts=90"), Ok((Some(75), Some(Cents(9_000)))));
        assert_eq!(read("hours=0&parts=0"), Ok((Some(0), Some(Cents(0)))));
        assert_eq!(read("parts=95.50"), Ok((Some(0), Some(Cents(9_550)))), "the labour rate has no hours");
        for hours in ["", "an hour", "-1", "1e3", "1,5", "99999", "."] {
            assert_eq!(read(&format!("hours={hours}&parts=0")), Err(vec!["hours".to_owned()]), "{hours}");
        }
        assert_eq!(read("hours=1&parts="), Err(vec!["parts".to_owned()]));
        assert_eq!(read("hours=x&parts=y&to=supplied"), Ok((None, None)));
    }
}
