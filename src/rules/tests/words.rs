use super::*;

/// Words of the trade a customer need not know. Where one is used, an explanation in brackets follows it.
const JARGON: &[&str] = &[
    "band",
    "bell",
    "boss",
    "bosses",
    "bushing",
    "carrier",
    "converter",
    "counterbore",
    "dash-6",
    "detent",
    "dowel",
    "dowels",
    "droop",
    "flexplate",
    "governor",
    "helical",
    "hub",
    "insert",
    "inserts",
    "kickdown",
    "linkage",
    "lockup",
    "modulator",
    "o-ring",
    "one-way",
    "pawl",
    "pilot",
    "pinion",
    "planetary",
    "psi",
    "race",
    "runout",
    "servo",
    "shim",
    "slip",
    "snap",
    "solenoid",
    "spline",
    "splines",
    "sprag",
    "spacer",
    "stall",
    "stator",
    "tang",
    "teeth",
    "torque",
    "valve",
    "yoke",
];

/// Words that frighten, blame or promise.
const UNKIND: &[&str] = &["invalid", "oops", "illegal", "wrongly", "your fault", "guarantee", "safe to", "perfectly"];

fn sentences(text: &str) -> Vec<&str> {
    text.split_inclusive(['.', '?', '!', ';', ':']).map(str::trim).filter(|sentence| sentence.len() > 2).collect()
}

fn words(text: &str) -> Vec<String> {
    text.split_whitespace()
        .map(|word| word.trim_matches(|c: char| !c.is_alphanumeric()).to_lowercase())
        .filter(|word| !word.is_empty())
        .collect()
}

/// Syllables as they are counted for reading ages: runs of vowels, a silent e at the end left out.
fn syllables(word: &str) -> usize {
    let vowel = |c: char| "aeiouy".contains(c);
    let mut count = 0;
    let mut before = false;
    for c in word.chars() {
        count += usize::from(vowel(c) && !before);
        before = vowel(c);
    }
    let silent = word.ends_with('e') && !word.ends_with("le") || word.ends_with("ed") && !word.ends_with("ted");
    (count - usize::from(silent && count > 1)).max(1)
}

/// The Flesch-Kincaid grade: about the school year in which the text can be read (reading age less five).
fn grade(text: &str) -> f64 {
    let words = words(text);
    let spoken: usize = words.iter().map(|word| syllables(word)).sum();
    let sentences = text.matches(['.', '?', '!']).count().max(1);
    0.39 * words.len() as f64 / sentences as f64 + 11.8 * spoken as f64 / words.len() as f64 - 15.59
}

fn is_whole_sentences(text: &str) -> bool {
    let begins = text.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit());
    begins && text.ends_with(['.', '?']) && !text.contains("  ") && text == text.trim()
}

#[test]
fn the_measure_knows_easy_from_hard() {
    assert_eq!(["cat", "table", "made", "fitted", "idea"].map(syllables), [1, 2, 1, 2, 2]);
    assert!(grade("The cat sat on the mat. It was a red mat.") < 2.0);
    let hard = "Notwithstanding considerable deterioration, the intermediate assembly necessitates comprehensive \
                replacement in accordance with manufacturer recommendations.";
    assert!(grade(hard) > 15.0);
}

#[test]
fn every_rule_is_documented_with_what_why_and_where_from() {
    for rule in rules() {
        assert!(rule.doc.contains("Source:"), "{} does not say where it comes from", rule.code);
        assert!(sentences(rule.doc).len() >= 3, "{} says too little: {}", rule.code, rule.doc);
        assert!(is_whole_sentences(rule.basis), "{}: {}", rule.code, rule.basis);
    }
}

#[test]
fn the_shop_is_told_what_it_means_and_what_to_do_in_whole_sentences() {
    for rule in rules() {
        for text in [rule.shop, rule.fix] {
            assert!(is_whole_sentences(text), "{}: {text}", rule.code);
        }
        assert!(rule.shop.len() >= 80, "{} tells the shop too little: {}", rule.code, rule.shop);
        assert!(rule.title.len() <= 60 && !rule.title.ends_with('.'), "{}: {}", rule.code, rule.title);
        assert!(rule.title.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit()), "{}", rule.code);
    }
}

#[test]
fn no_two_rules_say_the_same() {
    let texts: [fn(&'static Rule) -> Option<&'static str>; 3] =
        [|rule| Some(rule.title), |rule| Some(rule.shop), |rule| rule.customer];
    for pick in texts {
        let mut texts: Vec<_> = rules().filter_map(pick).collect();
        let all = texts.len();
        texts.sort_unstable();
        texts.dedup();
        assert_eq!(texts.len(), all);
    }
}

#[test]
fn whoever_must_accept_something_is_told_what() {
    for rule in rules().filter(|rule| rule.customer_accepts) {
        assert!(rule.customer.is_some(), "{} asks to be accepted and tells the customer nothing", rule.code);
    }
}

#[test]
fn customers_are_told_in_plain_kind_words() {
    let mut grades = Vec::new();
    let mut amiss = Vec::new();
    for (rule, text) in rules().filter_map(|rule| Some((rule, rule.customer?))) {
        let mut complain = |why: String| amiss.push(format!("{}: {why}: {text}", rule.code));
        if !is_whole_sentences(text) {
            complain("not whole sentences".to_owned());
        }
        if text.len() > 240 {
            complain("too much at once".to_owned());
        }
        let grade = grade(text);
        if grade > 7.0 {
            complain(format!("reads like school year {grade:.1}"));
        }
        grades.push(grade);
        let lower = text.to_lowercase();
        for word in UNKIND.iter().filter(|word| lower.contains(**word)) {
            complain(format!("says \"{word}\""));
        }
        let words = words(text);
        for word in JARGON.iter().filter(|word| words.iter().any(|used| used == *word)) {
            let explained = lower.find(word).is_some_and(|at| lower[at + word.len()..].trim_start().starts_with('('));
            if !explained {
                complain(format!("uses \"{word}\" without explaining it"));
            }
        }
    }
    assert!(amiss.is_empty(), "\n{}", amiss.join("\n"));
    let mean = grades.iter().sum::<f64>() / grades.len() as f64;
    assert!(mean <= 5.0, "on the whole these read like school year {mean:.1}");
}
