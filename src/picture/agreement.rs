//! A picture says what the sums of the same job say, and leads to them.

use super::check::sound_picture;
use super::tests::{drawn, of, racing, row};
use super::{Beside, Picture, Put, pictures};
use crate::job::{Fitted, Job};
use crate::rules::{Derived, Known, Limits};
use crate::sums::{Outcome, named, of_address, taken_from};

/// What a sum gives for a job, with this typed besides.
fn sum(job: &Job, name: &str, typed: &[(&str, &str)]) -> Outcome {
    let typed: Vec<_> = typed.iter().map(|(input, text)| ((*input).to_owned(), (*text).to_owned())).collect();
    answered(job, name, &typed).unwrap_or_else(|| panic!("{name} gives nothing"))
}

fn answered(job: &Job, name: &str, typed: &[(String, String)]) -> Option<Outcome> {
    let sum = named(name).unwrap_or_else(|| panic!("{name} is no sum"));
    let taken = taken_from(sum, job);
    let text = |input: &str| {
        let own = typed.iter().find(|(name, _)| name == input).map(|(_, text)| text.clone());
        let of_job = || taken.iter().find(|taken| taken.input.name == input).map(|taken| taken.text.clone());
        own.or_else(of_job).unwrap_or_default()
    };
    sum.answer(text, &Limits::default()).outcome
}

fn line(outcome: &Outcome, label: &str) -> String {
    let line = outcome.lines.iter().find(|line| line.label == label);
    line.unwrap_or_else(|| panic!("no {label} in {:?}", outcome.lines)).value.clone()
}

fn with_sums(job: &Job, name: &str, put: &[&str]) -> Picture {
    let put: Vec<String> = put.iter().map(|address| (*address).to_owned()).collect();
    let limits = Limits::default();
    let beside = Beside { put: Put(&put), ..Beside::default() };
    drawn(&pictures(job, &limits, &Derived::of(job, &limits), &beside), name)
}

#[test]
fn every_load_is_the_one_the_sums_give() {
    let job = racing();
    let capacity = drawn(&of(&job).0, "capacity");
    let need = sum(&job, "need-by-range", &[("brake", "yes"), ("front_band", "yes"), ("one_way", "yes")]);
    for element in ["forward clutch", "intermediate clutch", "low one-way clutch", "front band", "rear band"] {
        assert_eq!(row(&capacity, element)[1], line(&need, &format!("The {element}")), "{element}");
    }
    let direct = sum(&job, "direct-need", &[("brake", "yes")]);
    assert_eq!(row(&capacity, "direct clutch")[1], line(&direct, "Need, margin included"));
    assert_eq!(
        row(&capacity, "intermediate one-way clutch")[1],
        line(&sum(&job, "one-way-load", &[]), "Torque on the outer race")
    );
    let reactions = sum(&job, "reactions", &[]);
    assert_eq!(row(&capacity, "rear band, reverse")[1], line(&reactions, "Rear band in reverse"));
    assert_eq!(row(&capacity, "direct clutch, reverse")[1], "560 lb-ft", "all of the engine's torque goes through it");
}

#[test]
fn every_range_is_the_one_the_sums_give_though_the_written_ratios_are_rounded() {
    let job = racing();
    let slots = of(&job).0;
    let brake = sum(&job, "brake-split", &[]);
    let flow = drawn(&slots, "flow-brake");
    for (element, label) in [("direct clutch", "Direct clutch"), ("forward clutch", "Forward clutch")] {
        assert_eq!(format!("{} lb-ft", row(&flow, element)[3]), line(&brake, label));
    }
    let reverse = drawn(&slots, "flow-reverse");
    assert_eq!(row(&reverse, "rear band")[3], "-1,725", "3.08 × 560, as the sum of the reactions");
    assert!(reverse.notes[0].contains("the ratios of second and reverse"), "{:?}", reverse.notes);
    for (name, range) in
        [("flow-first", "first"), ("flow-second", "second"), ("flow-third", "third"), ("flow-reverse", "reverse")]
    {
        let picture = drawn(&slots, name);
        let [link] = &picture.sums[..] else { panic!("{name}: one sum, not {:?}", picture.sums) };
        let (_, typed) = of_address(&link.address).expect("a sum");
        assert!(typed.contains(&("range".to_owned(), range.to_owned())), "{typed:?}");
        let outcome = answered(&job, "power-flow", &typed).expect("it is worked out");
        // Backward is a word in the picture and a sign in the sum.
        let ratio = outcome.lines[0].value.split(' ').next().expect("a number").trim_start_matches('-');
        assert!(picture.description.contains(&format!("turns {ratio} times")), "{}", picture.description);
        for line in outcome.lines.iter().filter(|line| line.label.starts_with("Speed, ")) {
            let shaft = line.label.trim_start_matches("Speed, ");
            let shown = row(&picture, shaft)[2];
            assert!(
                shown == line.value || (shown == "not settled" && line.value == "not settled"),
                "{name}: {shaft} {shown}, {}",
                line.value
            );
        }
    }
}

#[test]
fn every_sum_that_a_picture_leads_to_can_be_worked_with_what_the_job_knows() {
    let job = racing();
    // These ask for parts of which a job has no fact, or for the shop's torque.
    let open = |name: &str| {
        name.ends_with("-holds") || name.ends_with("-in-reverse") || name == "bolt-or-case" || name == "stall-by-curve"
    };
    let mut seen = 0;
    for slot in of(&job).0 {
        let picture = drawn(std::slice::from_ref(&slot), slot.name);
        assert!(!picture.sums.is_empty(), "{}", picture.name);
        for link in &picture.sums {
            let (sum, typed) = of_address(&link.address).unwrap_or_else(|| panic!("{}", link.address));
            if !picture.name.ends_with("end-play") && !open(sum.name) {
                assert!(answered(&job, sum.name, &typed).is_some(), "{}: {}", picture.name, link.address);
            }
            seen += 1;
        }
    }
    assert!(seen > 15, "{seen}");
}

#[test]
fn what_a_sum_on_the_job_says_an_element_holds_stands_beside_its_load() {
    let job = racing();
    let plates = |plates: u8| {
        format!("/sums/forward-holds?friction=0.13&plates={plates}&pressure=150&piston=15&springs=250&radius=2.5")
    };
    let (old, new) = (plates(4), plates(5));
    let gone = "/sums/no-such-sum?plates=5";
    let picture = with_sums(&job, "capacity", &[&old, "/sums/low-one-way-holds?rollers=12", gone, &new]);
    sound_picture(&picture);
    let forward = row(&picture, "forward clutch");
    assert_eq!((forward[1], forward[3]), ("1,120 lb-ft", "542 lb-ft"), "the latest counts");
    assert!(forward[5].starts_with("sum put on this job: 0.13 × 2 × 5"), "{forward:?}");
    assert!(picture.description.starts_with("Has more to hold than it can: forward clutch, 1,120 lb-ft of 542 lb-ft"));
    assert!(row(&picture, "low one-way clutch")[3].contains("cannot be worked any more"), "half of it is missing");
    let said = |plates: u8, psi: u16| {
        let put = format!(
            "/sums/forward-holds?friction=0.13&plates={plates}&pressure={psi}&piston=15&springs=250&radius=2.5"
        );
        with_sums(&job, "capacity", &[&put]).description
    };
    let short = "Holds it without the margin the shop asks for: forward clutch, 1,120 lb-ft of 1,192 lb-ft";
    assert!(said(11, 150).contains(short), "{}", said(11, 150));
    assert!(!said(12, 165).contains("without the margin"), "1,446 is 1.25 times 1,120 and more: {}", said(12, 165));
    let before = with_sums(&job, "capacity", &[]);
    assert!(row(&before, "forward clutch")[3].starts_with("not known: the job has no fact for it"));
    let asks = |picture: &Picture| picture.sums.iter().any(|sum| sum.address == "/sums/forward-holds");
    assert!(asks(&before) && !asks(&picture));
}

#[test]
fn a_front_band_of_which_nothing_is_known_is_said_to_be_left_out() {
    let mut job = racing();
    let said = |job: &Job| {
        drawn(&of(job).0, "capacity").notes.iter().any(|note| note.starts_with("The front band is left out"))
    };
    assert!(!said(&job));
    job.bands.front.forget();
    assert!(said(&job));
    job.bands.front.set(Fitted::Removed);
    assert!(!said(&job), "it is known that there is none");
    assert!(matches!(
        of(&job).0.iter().find(|slot| slot.name == "capacity").map(|slot| &slot.picture),
        Some(Known::Yes(..))
    ));
}

#[test]
fn a_torque_curve_put_on_the_job_is_drawn_with_the_stall_that_its_sum_gives() {
    let job = racing();
    let curve =
        "/sums/stall-by-curve?stall=2400&rated=500&curve=1500+380%3B+2200+430%3B+3000+500%3B+4000+540%3B+5500+470";
    let picture = with_sums(&job, "stall", &[curve]);
    sound_picture(&picture);
    let (label, rated) = (job.converter.stall_rpm.value(), job.converter.rated_torque_lbft.value());
    let own = |number: Option<f64>| number.expect("known").to_string();
    let (_, typed) = of_address(curve).expect("a sum");
    let [_, _, (_, points)] = &typed[..] else { panic!("{typed:?}") };
    let of_job = [
        ("stall", own(label.map(|label| label.value()))),
        ("rated", own(rated.map(|rated| rated.value()))),
        ("curve", points.clone()),
    ];
    let of_job: Vec<_> = of_job.iter().map(|(input, text)| (*input, text.as_str())).collect();
    let given = sum(&job, "stall-by-curve", &of_job);
    assert_eq!(
        row(&picture, "By its own curve")[1],
        line(&given, "Stall here"),
        "by the job's converter, not the sum's"
    );
    assert!(!picture.notes[0].contains("not known"), "{:?}", picture.notes);
    let flat = with_sums(&job, "stall", &[]);
    assert!(flat.notes[0].starts_with("The engine is drawn with its peak torque at every speed"), "{:?}", flat.notes);
    assert_eq!(row(&flat, "Behind this engine")[1], row(&picture, "Behind this engine")[1]);
}

#[test]
fn every_element_without_a_fact_can_be_told_by_a_sum_of_its_own() {
    let job = racing();
    let before = with_sums(&job, "capacity", &[]);
    let open: Vec<_> = before.table.rows.iter().filter(|row| row[3].text().starts_with("not known")).collect();
    assert_eq!(open.len(), 7, "{open:?}");
    let example = |address: &str| {
        let (sum, _) = of_address(address).expect("a sum");
        crate::sums::address(sum, |input| sum.input(input).expect("its own").example.to_owned())
    };
    let put: Vec<_> = before.sums.iter().filter(|sum| sum.label.contains("put it on this job")).collect();
    assert_eq!(put.len(), open.len(), "a sum for each: {put:?}");
    let put: Vec<_> = put.iter().map(|sum| example(&sum.address)).collect();
    let after = with_sums(&job, "capacity", &put.iter().map(String::as_str).collect::<Vec<_>>());
    sound_picture(&after);
    assert!(after.table.rows.iter().all(|row| row[3].is_drawn()), "{:?}", after.table.rows);
    assert_eq!(row(&after, "rear band, reverse")[3], "482 lb-ft");
}
