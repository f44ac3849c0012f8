//! What the first page of the intake means: who brings what, and what they want.

use crate::service::{Returning, TakeIn, VehicleWords, WhichVehicle, WhoseUnit};
use crate::ticket::{Edit, Topic};
use crate::web::form::{Entry, Fields, Reader};
use crate::web::pages::contact::person;
use uuid::Uuid;

/// What often comes in with a unit and is missed on the bench when it stays at home.
pub const LOOSE_PARTS: [&str; 8] = [
    "converter",
    "flexplate",
    "yoke",
    "dipstick and tube",
    "transmission mount",
    "shield",
    "driveshaft",
    "shifter and linkage",
];

/// What the person at the counter asks of the page.
#[derive(Debug)]
pub enum Wish {
    /// Look for somebody who has been here before.
    LookUp(String),
    /// Somebody found is the one; a vehicle of theirs, or another one.
    This(Uuid, Option<Uuid>),
    /// Nobody found is the one.
    Somebody,
    /// Open the ticket.
    Open(Box<TakeIn>),
}

impl Entry for Wish {
    fn read(reader: &mut Reader<'_>) -> Self {
        let fields = reader.fields();
        let said = |field: &str| fields.get(field).is_some_and(|text| !text.trim().is_empty());
        let mut wish = fields.get("do").unwrap_or("open").to_owned();
        // The return key presses the first button of a form. Whoever has only typed whom to look for means that.
        if wish == "open" && said("find") && !["customer", "name", "phone", "vehicle"].into_iter().any(said) {
            wish = "look".to_owned();
        }
        match wish.split(' ').collect::<Vec<_>>().as_slice() {
            ["look"] => Self::LookUp(reader.fields().get("find").unwrap_or_default().to_owned()),
            ["somebody"] => Self::Somebody,
            ["this", customer, vehicle] => match customer.parse() {
                Ok(customer) => Self::This(customer, vehicle.parse().ok()),
                Err(_) => Self::Somebody,
            },
            _ => Self::Open(Box::new(take_in(reader))),
        }
    }
}

fn take_in(reader: &mut Reader<'_>) -> TakeIn {
    let customer = match reader.key("customer") {
        Some(known) => WhoseUnit::Known(known),
        None => WhoseUnit::New(person(reader)),
    };
    let vehicle = match reader.key("customer").and(reader.key("known_vehicle")) {
        Some(known) => WhichVehicle::Known(known),
        None => {
            let ask = "Say what it came in, in plain words. \"Unit on a pallet\" will do.";
            let words = reader.needed_line("vehicle", "The vehicle", 200, ask);
            WhichVehicle::New(VehicleWords { words, plate: reader.line("plate", "The plate", 20) })
        }
    };
    let wants = reader.words(Topic::Wants.code(), "What they want", 4000);
    let symptom = reader.words(Topic::Symptom.code(), "What is wrong", 4000);
    if wants.is_empty() && symptom.is_empty() {
        reader.wrong(Topic::Wants.code(), "Write what they want, or below it what is wrong. A few words will do.");
    }
    let unit = reader.line("unit", "The kind of unit", 100);
    let others = reader.words("others", "Other parts", 3000);
    let promised = reader.date("promised", "The promised day");
    let comeback_of = reader.fields().get("comeback_of").and_then(|number| number.parse().ok());
    let some = |text: String| Some(text).filter(|text| !text.is_empty());
    let edit = Edit {
        wants: some(wants),
        symptom: some(symptom),
        brought: some(brought(&unit, reader.fields().all("part"), &others)),
        ..Edit::default()
    };
    TakeIn { customer, vehicle, edit, promised, comeback_of }
}

/// What came in, line by line: the unit, the usual parts that were ticked, everything else. Nothing is said of a part
/// that was not ticked.
fn brought<'a>(unit: &str, parts: impl Iterator<Item = &'a str>, others: &str) -> String {
    let parts: Vec<_> = parts.filter(|part| LOOSE_PARTS.contains(part)).collect();
    let mut lines = Vec::new();
    if !unit.is_empty() {
        lines.push(format!("The unit: {unit}"));
    }
    if !parts.is_empty() {
        lines.push(format!("With it: {}", parts.join(", ")));
    }
    if !others.is_empty() {
        lines.push(others.to_owned());
    }
    lines.join("\n")
}

/// The form with somebody who has been here before in it; everything else that was typed stays.
pub fn filled_in(typed: Fields, found: &Returning, vehicle: Option<Uuid>) -> Fields {
    let same_vehicle = vehicle == Some(found.vehicle_id);
    let typed = typed
        .with("customer", found.customer.id.to_string())
        .with("name", &found.customer.name)
        .with("phone", &found.customer.phone)
        .with("email", &found.customer.email);
    let earlier: Vec<String> = found.tickets.iter().map(ToString::to_string).collect();
    if same_vehicle {
        typed
            .with("known_vehicle", found.vehicle_id.to_string())
            .with("vehicle", &found.vehicle)
            .with("plate", &found.plate)
            .with("earlier", earlier.join(" "))
    } else {
        typed.with("known_vehicle", "").with("earlier", "").with("comeback_of", "")
    }
}

/// The form for somebody new; what belonged to the one who was chosen goes with them.
pub fn for_somebody_new(typed: Fields) -> Fields {
    let chosen = typed.get("customer").is_some_and(|customer| !customer.is_empty());
    let vehicle = typed.get("known_vehicle").is_some_and(|vehicle| !vehicle.is_empty());
    let mut typed = typed;
    let theirs: &[&str] =
        if chosen { &["customer", "known_vehicle", "name", "phone", "email", "earlier", "comeback_of"] } else { &[] };
    let its: &[&str] = if vehicle { &["vehicle", "plate"] } else { &[] };
    for field in theirs.iter().chain(its) {
        typed.set(*field, "");
    }
    typed
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::service::Customer;
    use crate::web::form::Problem;
    use jiff::civil::date;

    const WHOLE: &str =
        "name=Rosa+Lee&phone=555+010+4477&vehicle=Blue+pickup&plate=AB-12&wants=Quiet+on+the+road&do=open";

    fn read(body: &str) -> (Wish, Vec<Problem>) {
        let typed = Fields::parse(body.as_bytes());
        let mut reader = Reader::new(&typed);
        let wish = Wish::read(&mut reader);
        (wish, reader.problems())
    }

    fn opened(body: &str) -> TakeIn {
        match read(body) {
            (Wish::Open(take_in), problems) if problems.is_empty() => *take_in,
            other => panic!("{other:?}"),
        }
    }

    fn returning() -> Returning {
        Returning {
            customer: Customer {
                id: Uuid::from_u128(7),
                name: "Rosa Lee".into(),
                phone: "555 010 4477".into(),
                email: String::new(),
            },
            vehicle_id: Uuid::from_u128(8),
            vehicle: "Blue pickup".into(),
            plate: "AB-12".into(),
            tickets: vec![1042, 1007],
        }
    }

    #[test]
    fn a_whole_form_opens_a_ticket() {
        let take_in =
            opened(&format!("{WHOLE}&promised=2026-12-01&unit=heavy+three-speed&part=yoke&part=gold&others=A+box"));
        assert!(matches!(take_in.customer, WhoseUnit::New(person) if person.name == "Rosa Lee"));
        assert_eq!(take_in.promised, Some(date(2026, 12, 1)));
        assert_eq!(take_in.edit.wants.as_deref(), Some("Quiet on the road"));
        assert_eq!(take_in.edit.brought.as_deref(), Some("The unit: heavy three-speed\nWith it: yoke\nA box"));
        assert_eq!(opened(WHOLE).edit.brought, None, "nothing is said of what nobody ticked");
    }

    #[test]
    fn what_is_missing_is_asked_for_all_at_once() {
        let (_, problems) = read("name=&phone=+&vehicle=&wants=&promised=next+week&do=open");
        let fields: Vec<_> = problems.iter().map(|problem| problem.field.as_str()).collect();
        assert_eq!(fields, ["name", "phone", "vehicle", "wants", "promised"]);
        assert!(problems[4].message.contains("next week"), "{}", problems[4].message);
        let (_, problems) = read("name=&phone=12&email=rosa&vehicle=Blue&wants=Quiet&do=open");
        let fields: Vec<_> = problems.iter().map(|problem| problem.field.as_str()).collect();
        assert_eq!(fields, ["name", "phone", "email"], "told together and not one after the other");
        let (_, problems) = read(&WHOLE.replace("wants=Quiet+on+the+road", "wants=&symptom=No+second"));
        assert!(problems.is_empty(), "a symptom alone will do: {problems:?}");
    }

    #[test]
    fn looking_somebody_up_asks_for_nothing_else() {
        for (wish, expected) in [("look", "LookUp"), ("somebody", "Somebody")] {
            let (wish, problems) = read(&format!("find=lee&do={wish}"));
            assert!(problems.is_empty());
            assert!(format!("{wish:?}").starts_with(expected), "{wish:?}");
        }
    }

    #[test]
    fn the_return_key_in_the_look_up_looks_up() {
        assert!(matches!(read("do=open&find=4477&name=&phone=&vehicle=").0, Wish::LookUp(find) if find == "4477"));
        assert!(matches!(read("do=open&find=4477&name=Rosa&phone=&vehicle=").0, Wish::Open(_)));
    }

    #[test]
    fn somebody_known_is_taken_as_they_are_known_and_back() {
        let typed = Fields::parse(b"find=lee&wants=Quiet&name=Rosa");
        let found = returning();
        let with = filled_in(typed.clone(), &found, Some(found.vehicle_id));
        assert_eq!(
            (with.get("name"), with.get("earlier"), with.get("wants")),
            (Some("Rosa Lee"), Some("1042 1007"), Some("Quiet"))
        );
        let mut reader = Reader::new(&with);
        let take_in = take_in(&mut reader);
        assert!(matches!(take_in.customer, WhoseUnit::Known(id) if id == found.customer.id));
        assert!(matches!(take_in.vehicle, WhichVehicle::Known(id) if id == found.vehicle_id));

        let other = filled_in(typed.clone().with("vehicle", "Red wagon"), &found, None);
        assert_eq!((other.get("vehicle"), other.get("known_vehicle")), (Some("Red wagon"), Some("")));

        let new = for_somebody_new(with);
        assert_eq!((new.get("name"), new.get("vehicle"), new.get("wants")), (Some(""), Some(""), Some("Quiet")));
        assert_eq!(for_somebody_new(typed).get("name"), Some("Rosa"), "what was typed by hand stays");
    }
}
