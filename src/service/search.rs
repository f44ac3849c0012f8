//! Finding tickets and returning customers.

use super::form::{name_words, phone_backwards, plate_key};
use super::{Caller, Failure, Line, Returning, Service};
use crate::store::search::{self, Sought};
use crate::ticket::Action;

const MOST: i64 = 50;
/// Words beyond this many make a search no finer.
const MOST_WORDS: usize = 6;
/// Sorts after every letter, in the order the terms are kept in.
const LAST: char = char::MAX;

impl Service {
    /// Tickets by number, customer's name, telephone number (its last digits will do) or plate.
    ///
    /// # Errors
    /// [`Failure::Busy`] when the database cannot be reached.
    pub async fn search(&self, caller: &Caller, text: &str) -> Result<Vec<Line>, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let shop = caller.shop;
        let mut lines: Vec<Line> = Vec::new();
        for sought in ways_to_look(text) {
            let sought = &sought;
            let found = self
                .read(|conn| {
                    let sought = sought.clone();
                    Box::pin(async move { Ok(search::tickets(conn, shop, &sought, MOST).await?) })
                })
                .await?;
            lines.extend(
                found
                    .into_iter()
                    .filter(|line| lines.iter().all(|known| known.number != line.number))
                    .collect::<Vec<_>>(),
            );
        }
        Ok(lines)
    }

    /// Customers who have been here before, by telephone number or name, each with their vehicles.
    ///
    /// # Errors
    /// [`Failure::NotAllowed`] for those who take no units in.
    pub async fn returning(&self, caller: &Caller, text: &str) -> Result<Vec<Returning>, Failure> {
        self.admit(caller, Action::TakeIn).await?;
        let shop = caller.shop;
        let mut customers: Vec<Returning> = Vec::new();
        for sought in ways_to_look(text).into_iter().filter(|sought| !sought.kinds.is_empty()) {
            let sought = &sought;
            let found = self
                .read(|conn| {
                    let sought = sought.clone();
                    Box::pin(async move { Ok(search::customers(conn, shop, &sought, MOST).await?) })
                })
                .await?;
            for one in found {
                if customers.iter().all(|known| known.vehicle_id != one.vehicle_id) {
                    customers.push(one);
                }
            }
        }
        Ok(customers)
    }
}

/// What the text may mean, the likeliest first: a number or telephone, a plate, a name.
fn ways_to_look(text: &str) -> Vec<Sought> {
    let text: String = text.chars().take(100).filter(|letter| !letter.is_control()).collect();
    let digits = phone_backwards(&text);
    let only_digits = text.chars().all(|letter| letter.is_ascii_digit() || " +-()./#".contains(letter));
    let mut ways = Vec::new();
    if only_digits && !digits.is_empty() {
        let number = text.trim_start_matches('#').trim().parse().ok();
        // Fewer digits would find half the town.
        let phone = if digits.len() >= 4 { sought(vec![("phone", digits)]) } else { Sought::default() };
        ways.push(Sought { number, ..phone });
    }
    let plate = plate_key(&text);
    if plate.chars().count() >= 3 {
        ways.push(sought(vec![("plate", plate)]));
    }
    let words: Vec<_> = name_words(&text).into_iter().take(MOST_WORDS).map(|word| ("name", word)).collect();
    if !words.is_empty() && !only_digits {
        ways.push(sought(words));
    }
    ways.retain(|way| way.number.is_some() || !way.kinds.is_empty());
    ways
}

fn sought(mut terms: Vec<(&str, String)>) -> Sought {
    terms.sort();
    terms.dedup();
    let kinds = terms.iter().map(|(kind, _)| (*kind).to_owned()).collect();
    let starts: Vec<String> = terms.into_iter().map(|(_, start)| start).collect();
    let ends = starts.iter().map(|start| format!("{start}{LAST}")).collect();
    Sought { number: None, kinds, starts, ends }
}

#[cfg(test)]
mod tests {
    use super::*;

    type Terms = Vec<(String, String)>;

    fn looked_for(text: &str) -> Vec<(Option<i64>, Terms)> {
        let terms = |way: Sought| (way.number, way.kinds.into_iter().zip(way.starts).collect());
        ways_to_look(text).into_iter().map(terms).collect()
    }

    fn term(kind: &str, start: &str) -> (String, String) {
        (kind.to_owned(), start.to_owned())
    }

    #[test]
    fn what_people_type_is_taken_for_what_it_can_be() {
        assert_eq!(looked_for("#1042")[0], (Some(1042), vec![term("phone", "2401")]));
        assert_eq!(looked_for("42"), [(Some(42), vec![])]);
        assert_eq!(looked_for("(555) 010-4477")[0], (None, vec![term("phone", "7744010555")]));
        let name = looked_for("Lee, rosa rosa");
        assert_eq!(name[1], (None, vec![term("name", "lee"), term("name", "rosa")]));
        assert_eq!(looked_for("ab-12")[0], (None, vec![term("plate", "AB12")]));
        for nothing in ["", "  ", "%", "-"] {
            assert!(looked_for(nothing).is_empty(), "{nothing:?}");
        }
    }
}
