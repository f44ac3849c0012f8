//! What comes of a sum: numbers with their formula, the numbers put in, their source, and the limits they are held to.

use crate::calc::converter::torque_curve::TorqueCurve;
use crate::quantity::{PoundFoot, Quantity, Unit, written_down};
use crate::rules::{LimitId, Limits};
use jiff::civil::Date;
use serde_json::Value;

/// What came out.
#[derive(Clone, Debug, Default)]
pub struct Outcome {
    /// The results, the one most wanted first.
    pub lines: Vec<Line>,
    /// The results that make a table of their own.
    pub table: Option<Table>,
    /// Held against limits.
    pub verdicts: Vec<Verdict>,
    /// What else has to be known, in sentences.
    pub remarks: Vec<String>,
    /// The torque a part holds, with its working, when that is among the results.
    pub holds: Option<(Quantity<PoundFoot>, String)>,
    /// The engine's torque curve that was typed, when that is what it was worked with.
    pub curve: Option<TorqueCurve>,
}

/// One result with its working.
#[derive(Clone, Debug)]
pub struct Line {
    /// What it is.
    pub label: String,
    /// The number with its unit, as people read it.
    pub value: String,
    /// How it is got, in words and signs.
    pub formula: &'static str,
    /// The same with the numbers put in, ending in the result.
    pub worked: String,
    /// Where the formula comes from and how far to trust it.
    pub source: &'static str,
    /// The fact of a job it may fill.
    pub fills: Option<Filled>,
}

/// Results that are read row by row.
#[derive(Clone, Debug)]
pub struct Table {
    /// What it lists.
    pub title: &'static str,
    /// What stands in each column, with its unit.
    pub heads: Vec<&'static str>,
    /// As many cells in each as there are columns; the first one names the row.
    pub rows: Vec<Vec<String>>,
    /// How each column is got.
    pub formula: &'static str,
    /// Where the formulas come from and how far to trust them.
    pub source: &'static str,
}

/// A fact that a result may fill.
#[derive(Clone, Debug, PartialEq)]
pub struct Filled {
    /// `group.leaf`.
    pub fact: &'static str,
    /// The value, in the fact's own unit, as a job file writes it.
    pub value: Value,
    /// Is it what will be fitted, rather than what is there? Then it is only planned, and has to be seen on the unit.
    pub planned: bool,
}

/// A result held against a limit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Verdict {
    /// Does it keep within?
    pub within: bool,
    /// What was found, a sentence.
    pub said: String,
    /// The limit with its number and mark.
    pub limit: String,
}

impl Line {
    /// A result: its name, its number as it is shown, the formula, the numbers put in, the source.
    pub fn new(
        label: impl Into<String>,
        value: impl Into<String>,
        formula: &'static str,
        put_in: impl AsRef<str>,
        source: &'static str,
    ) -> Self {
        let value = value.into();
        let worked = format!("{} = {value}", put_in.as_ref());
        Self { label: label.into(), value, formula, worked, source, fills: None }
    }

    /// Which a job may keep as this fact.
    #[must_use]
    pub fn fills(mut self, fact: &'static str, number: f64) -> Self {
        self.fills = Some(Filled { fact, value: json_of(number), planned: false });
        self
    }

    /// Which a job may keep as this fact, which is a day.
    #[must_use]
    pub fn fills_day(mut self, fact: &'static str, day: Date) -> Self {
        self.fills = Some(Filled { fact, value: Value::from(day.to_string()), planned: false });
        self
    }

    /// Which a job may keep as this fact, planned: it is what will be fitted.
    #[must_use]
    pub fn plans(mut self, fact: &'static str, number: f64) -> Self {
        self.fills = Some(Filled { fact, value: json_of(number), planned: true });
        self
    }
}

impl Table {
    /// Each row in a line, for where no table can stand: `Speed ratio 0.8: K 163, torque ratio 1.096`.
    pub fn in_lines(&self) -> impl Iterator<Item = String> {
        let line = |row: &Vec<String>| {
            let mut cells = self.heads.iter().zip(row).map(|(head, cell)| format!("{head} {cell}"));
            let first = cells.next().unwrap_or_default();
            format!("{first}: {}", cells.collect::<Vec<_>>().join(", "))
        };
        self.rows.iter().map(line)
    }
}

impl Outcome {
    /// With a table.
    #[must_use]
    pub fn table(mut self, table: Table) -> Self {
        self.table = Some(table);
        self
    }

    /// Held against a rule that is no limit of the shop's.
    #[must_use]
    pub fn ruled(mut self, within: bool, said: String, rule: &str) -> Self {
        self.verdicts.push(Verdict { within, said, limit: rule.to_owned() });
        self
    }

    /// With this result.
    #[must_use]
    pub fn line(mut self, line: Line) -> Self {
        self.lines.push(line);
        self
    }

    /// With what a part holds, which is the last result so far.
    #[must_use]
    pub fn holding(mut self, torque: Quantity<PoundFoot>) -> Self {
        self.holds = self.lines.last().map(|line| (torque, line.worked.clone()));
        self
    }

    /// Worked with this torque curve.
    #[must_use]
    pub fn by_curve(mut self, curve: TorqueCurve) -> Self {
        self.curve = Some(curve);
        self
    }

    /// With these results.
    #[must_use]
    pub fn lines(mut self, lines: impl IntoIterator<Item = Line>) -> Self {
        self.lines.extend(lines);
        self
    }

    /// With this sentence.
    #[must_use]
    pub fn remark(mut self, remark: impl Into<String>) -> Self {
        self.remarks.push(remark.into());
        self
    }

    /// With a sentence, when there is one.
    #[must_use]
    pub fn remarks(mut self, remarks: impl IntoIterator<Item = String>) -> Self {
        self.remarks.extend(remarks);
        self
    }

    /// Held against the most it may be; `what` begins the sentence.
    #[must_use]
    pub fn at_most(mut self, what: &str, number: f64, limit: LimitId, limits: &Limits) -> Self {
        self.verdicts.push(Verdict::new(
            what,
            number,
            written_down(number) <= limits.get(limit),
            ["at most", "above"],
            limit,
            limits,
        ));
        self
    }

    /// Held against the least it may be; `what` begins the sentence.
    #[must_use]
    pub fn at_least(mut self, what: &str, number: f64, limit: LimitId, limits: &Limits) -> Self {
        let within = written_down(number) >= limits.get(limit);
        self.verdicts.push(Verdict::new(what, number, within, ["at least", "below"], limit, limits));
        self
    }
}

impl Verdict {
    fn new(what: &str, number: f64, within: bool, words: [&str; 2], limit: LimitId, limits: &Limits) -> Self {
        let declaration = limit.declaration();
        let to = |number: f64, places: usize| match declaration.unit {
            _ if limit.is_share() => format!("{} %", to_places(number * 100.0, places - 2)),
            unit @ ("" | "°") => format!("{}{unit}", to_places(number, places)),
            unit => format!("{} {unit}", to_places(number, places)),
        };
        let told = |number: f64| to(number, 4);
        let asked = told(limits.get(limit));
        // Four figures that count, unless that would print the very limit it is beyond.
        let short = told(figures(number));
        let number = if short == asked { to(number, 7) } else { short };
        let said = if within {
            format!("{what} is {number}: within what this shop asks, {} {asked}.", words[0])
        } else {
            format!("{what} is {number}: {} the limit of {asked}.", words[1])
        };
        Self { within, said, limit: format!("{} {}", declaration.label, limits.used(limit).said_by(told)) }
    }
}

/// The number to four figures that count.
fn figures(number: f64) -> f64 {
    if number == 0.0 || !number.is_finite() {
        return number;
    }
    let step = 10_f64.powi(3 - number.abs().log10().floor() as i32);
    (number * step).round() / step
}

/// A number as a job keeps it; whole ones without a point.
fn json_of(number: f64) -> Value {
    let number = written_down(number);
    if number.fract() == 0.0 && number.abs() < 9e15 { Value::from(number as i64) } else { Value::from(number) }
}

/// A quantity as it stands in a sum: at most four decimals, no idle noughts, then the unit.
pub fn short<U: Unit>(quantity: Quantity<U>) -> String {
    let space = if matches!(U::SYMBOL, "" | "°") { "" } else { " " };
    format!("{}{space}{}", plain(quantity.value()), U::SYMBOL)
}

/// The same for a bare number: `0.031`, `3,280`, `20,168`.
pub(super) fn plain(number: f64) -> String {
    to_places(number, if number.abs() >= 1000.0 { 1 } else { 4 })
}

/// At most so many decimals, no idle noughts, thousands marked.
fn to_places(number: f64, places: usize) -> String {
    if !number.is_finite() {
        return "no number".to_owned();
    }
    let printed = format!("{:.places$}", number.abs());
    let (whole, part) = printed.split_once('.').unwrap_or((&printed, ""));
    let part = part.trim_end_matches('0');
    let mut grouped = String::new();
    for (at, digit) in whole.chars().enumerate() {
        if at > 0 && (whole.len() - at).is_multiple_of(3) {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    let nought = whole == "0" && part.is_empty();
    let sign = if number < 0.0 && !nought { "-" } else { "" };
    if part.is_empty() { format!("{sign}{grouped}") } else { format!("{sign}{grouped}.{part}") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Degree, Inch, Rpm};

    #[test]
    fn numbers_in_a_sum_are_short_and_say_their_unit() {
        for (number, printed) in [
            (28.5, "28.5"),
            (0.031, "0.031"),
            (20168.0, "20,168"),
            (3276.93, "3,276.9"),
            (-0.000_01, "0"),
            (-2.5, "-2.5"),
        ] {
            assert_eq!(plain(number), printed);
        }
        assert_eq!(short(Quantity::<Inch>::new(4.0 / 25.4)), "0.1575 in");
        assert_eq!(short(Quantity::<Degree>::new(2.0)), "2°");
        assert_eq!(short(Quantity::<Rpm>::new(f64::INFINITY)), "no number rpm");
    }

    #[test]
    fn a_verdict_names_its_limit_with_its_mark_on_either_side_of_it() {
        let limits = Limits::default();
        let held = |number| Outcome::default().at_most("The bore", number, LimitId::bell_runout, &limits).verdicts;
        let (at, over) = (held(0.010), held(0.0101));
        assert!(at[0].within && !over[0].within);
        assert_eq!(at[0].said, "The bore is 0.01 in: within what this shop asks, at most 0.01 in.");
        assert_eq!(over[0].said, "The bore is 0.0101 in: above the limit of 0.01 in.");
        assert_eq!(over[0].limit, "bell bore runout 0.01 in (memory, medium)");
        let share =
            |number| Outcome::default().at_most("The error", number, LimitId::speedometer_error, &limits).verdicts;
        assert_eq!(share(0.111_432)[0].said, "The error is 11.14 %: above the limit of 4 %.");
        assert_eq!(share(0.04)[0].limit, "speedometer error 4 % (common practice)");
        assert!(held(0.012_345_6)[0].said.contains("is 0.0123 in"), "four figures and no more than four decimals");
        let warm = |rise| Outcome::default().at_most("It", rise, LimitId::brake_heat, &limits).verdicts;
        assert!(warm(62.984_2)[0].said.contains("is 62.98 °C: above the limit of 60 °C"), "{}", warm(62.984_2)[0].said);
        assert!(
            held(0.010_04)[0].said.contains("is 0.01004 in: above the limit of 0.01 in"),
            "{}",
            held(0.010_04)[0].said
        );
        assert!(
            warm(60.0004)[0].said.contains("is 60.0004 °C: above"),
            "it is not said to be above what it seems to be"
        );
        let least = Outcome::default().at_least("It", 0.1, LimitId::pilot_held, &limits).verdicts;
        assert!(!least[0].within && least[0].said.contains("below the limit of 0.125 in"), "{}", least[0].said);
    }
}
