//! The language of `conditions.txt`: reading it, and working it out for one job.

use std::collections::{BTreeSet, HashMap};

/// A value, or the facts that would have to be learnt first.
pub type Answer = Result<Value, BTreeSet<String>>;

#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    Yes(bool),
    Number(f64),
    Word(String),
}

#[derive(Clone, Debug)]
pub enum Expression {
    Literal(Value),
    Name(String),
    Call(String, Vec<Expression>),
    Not(Box<Expression>),
    And(Box<Expression>, Box<Expression>),
    Or(Box<Expression>, Box<Expression>),
    /// Operator, left, right.
    Sum(String, Box<Expression>, Box<Expression>),
    Compare(String, Box<Expression>, Box<Expression>),
    Among(Box<Expression>, Vec<String>),
    /// Value, test, other value.
    Choice(Box<Expression>, Box<Expression>, Box<Expression>),
}

/// Everything the file says.
pub struct Book {
    pub rules: Vec<(String, Expression)>,
    pub derived: Vec<(String, Expression)>,
    /// Steps in the order of the work; none when one belongs to every job.
    pub steps: Vec<(String, Option<Expression>)>,
    /// Keys and number, in the order of the file; `*` stands for anything.
    limits: Vec<(Vec<String>, f64)>,
}

impl Book {
    pub fn read(text: &str) -> Self {
        let mut book = Self { rules: Vec::new(), derived: Vec::new(), steps: Vec::new(), limits: Vec::new() };
        for line in text.lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
            let (head, body) = line.split_once(" = ").expect("every line has a name and a body");
            let mut head = head.split(' ').map(str::to_owned);
            let kind = head.next().unwrap_or_default();
            let rest: Vec<String> = head.collect();
            match kind.as_str() {
                "limit" => book.limits.push((rest, body.parse().expect("a limit is a number"))),
                "derived" => book.derived.push((rest[0].clone(), parse(body))),
                "step" => book.steps.push((rest[0].clone(), (body != "always").then(|| parse(body)))),
                "rule" => book.rules.push((rest[0].clone(), parse(body))),
                other => panic!("a line of no known kind: {other}"),
            }
        }
        book
    }

    /// These rules and quantities alone.
    pub fn of(rules: Vec<(String, Expression)>, derived: Vec<(String, Expression)>) -> Self {
        Self { rules, derived, steps: Vec::new(), limits: Vec::new() }
    }

    fn limit(&self, keys: &[String]) -> f64 {
        let fits = |row: &[String]| row.len() == keys.len() && row.iter().zip(keys).all(|(a, b)| a == "*" || a == b);
        let row = self.limits.iter().find(|(row, _)| fits(row));
        row.unwrap_or_else(|| panic!("no limit for {keys:?}")).1
    }

    /// Works an expression out; `facts` holds what is known of the job.
    pub fn work_out(&self, expression: &Expression, facts: &HashMap<String, Value>) -> Answer {
        let answer = |inner: &Expression| self.work_out(inner, facts);
        match expression {
            Expression::Literal(value) => Ok(value.clone()),
            Expression::Name(name) => match self.derived.iter().find(|(known, _)| known == name) {
                Some((_, formula)) => answer(formula),
                None => facts.get(name).cloned().ok_or_else(|| BTreeSet::from([name.clone()])),
            },
            Expression::Call(name, given) => {
                let given = all(given.iter().map(answer))?;
                Ok(self.call(name, &given))
            }
            Expression::Not(inner) => Ok(Value::Yes(!yes(&answer(inner)?))),
            Expression::And(a, b) => settle(answer(a), answer(b), false),
            Expression::Or(a, b) => settle(answer(a), answer(b), true),
            Expression::Sum(operator, a, b) => {
                let both = all([answer(a), answer(b)].into_iter())?;
                let (a, b) = (number(&both[0]), number(&both[1]));
                Ok(Value::Number(match operator.as_str() {
                    "+" => a + b,
                    "-" => a - b,
                    "*" => a * b,
                    "/" => a / b,
                    _ => a.powf(b),
                }))
            }
            Expression::Compare(operator, a, b) => {
                let both = all([answer(a), answer(b)].into_iter())?;
                Ok(Value::Yes(compare(operator, &both[0], &both[1])))
            }
            Expression::Among(inner, words) => match answer(inner)? {
                Value::Word(word) => Ok(Value::Yes(words.contains(&word))),
                other => panic!("only words stand in lists, not {other:?}"),
            },
            Expression::Choice(value, test, other) => answer(if yes(&answer(test)?) { value } else { other }),
        }
    }

    fn call(&self, name: &str, given: &[Value]) -> Value {
        let numbers = || given.iter().map(number);
        if let Some(limit) = name.strip_prefix("limit.") {
            let mut keys = vec![limit.to_owned()];
            keys.extend(given.iter().map(|value| match value {
                Value::Word(word) => word.clone(),
                other => number(other).to_string(),
            }));
            return Value::Number(self.limit(&keys));
        }
        match (name, given) {
            ("min", _) => Value::Number(numbers().fold(f64::INFINITY, f64::min)),
            ("max", _) => Value::Number(numbers().fold(f64::NEG_INFINITY, f64::max)),
            ("abs", [one]) => Value::Number(number(one).abs()),
            ("sqrt", [one]) => Value::Number(number(one).sqrt()),
            ("year", [Value::Word(date)]) => Value::Number(date[..4].parse().expect("a date begins with its year")),
            _ => panic!("no function {name} of {given:?}"),
        }
    }
}

/// All values, or everything any of them waits for.
fn all(answers: impl Iterator<Item = Answer>) -> Result<Vec<Value>, BTreeSet<String>> {
    let mut values = Vec::new();
    let mut waits = BTreeSet::new();
    for answer in answers {
        match answer {
            Ok(value) => values.push(value),
            Err(facts) => waits.extend(facts),
        }
    }
    if waits.is_empty() { Ok(values) } else { Err(waits) }
}

fn settle(a: Answer, b: Answer, settles: bool) -> Answer {
    if [&a, &b].iter().any(|side| matches!(side, Ok(Value::Yes(truth)) if *truth == settles)) {
        return Ok(Value::Yes(settles));
    }
    all([a, b].into_iter()).map(|_| Value::Yes(!settles))
}

fn yes(value: &Value) -> bool {
    match value {
        Value::Yes(truth) => *truth,
        other => panic!("{other:?} is neither yes nor no"),
    }
}

fn number(value: &Value) -> f64 {
    match value {
        Value::Number(number) => *number,
        other => panic!("{other:?} is not a number"),
    }
}

fn compare(operator: &str, a: &Value, b: &Value) -> bool {
    let order = match (a, b) {
        (Value::Number(a), Value::Number(b)) => a.partial_cmp(b),
        (Value::Word(a), Value::Word(b)) => Some(a.cmp(b)),
        (Value::Yes(a), Value::Yes(b)) => Some(a.cmp(b)),
        _ => panic!("{a:?} and {b:?} cannot be compared"),
    };
    let order = order.expect("numbers that can be compared");
    match operator {
        "==" => order.is_eq(),
        "!=" => order.is_ne(),
        "<" => order.is_lt(),
        "<=" => order.is_le(),
        ">" => order.is_gt(),
        _ => order.is_ge(),
    }
}

/// Reads one expression.
pub fn parse(text: &str) -> Expression {
    let mut reader = Reader { tokens: tokens(text), at: 0 };
    let expression = reader.choice();
    assert_eq!(reader.at, reader.tokens.len(), "something is left over in {text}");
    expression
}

fn tokens(text: &str) -> Vec<String> {
    let chars: Vec<char> = text.chars().collect();
    let mut found = Vec::new();
    let mut at = 0;
    while at < chars.len() {
        let from = at;
        let c = chars[at];
        at += 1;
        if c.is_whitespace() {
            continue;
        }
        if c == '"' {
            while chars[at] != '"' {
                at += 1;
            }
            at += 1;
        } else if c.is_alphanumeric() {
            while at < chars.len() && (chars[at].is_alphanumeric() || "._".contains(chars[at])) {
                at += 1;
            }
        } else if at < chars.len() && ["==", "!=", "<=", ">=", "**"].contains(&&*format!("{c}{}", chars[at])) {
            at += 1;
        }
        found.push(chars[from..at].iter().collect());
    }
    found
}

struct Reader {
    tokens: Vec<String>,
    at: usize,
}

impl Reader {
    fn next_is(&self, wanted: &[&str]) -> bool {
        self.tokens.get(self.at).is_some_and(|token| wanted.contains(&token.as_str()))
    }

    fn take(&mut self) -> String {
        self.at += 1;
        self.tokens[self.at - 1].clone()
    }

    fn expect(&mut self, wanted: &str) {
        assert_eq!(self.take(), wanted, "in {:?}", self.tokens);
    }

    fn taken(&mut self, wanted: &[&str]) -> Option<String> {
        self.next_is(wanted).then(|| self.take())
    }

    fn choice(&mut self) -> Expression {
        let value = self.either();
        if self.taken(&["if"]).is_none() {
            return value;
        }
        let test = self.either();
        self.expect("else");
        Expression::Choice(Box::new(value), Box::new(test), Box::new(self.choice()))
    }

    fn either(&mut self) -> Expression {
        let mut left = self.both();
        while self.taken(&["or"]).is_some() {
            left = Expression::Or(Box::new(left), Box::new(self.both()));
        }
        left
    }

    fn both(&mut self) -> Expression {
        let mut left = self.negation();
        while self.taken(&["and"]).is_some() {
            left = Expression::And(Box::new(left), Box::new(self.negation()));
        }
        left
    }

    fn negation(&mut self) -> Expression {
        if self.taken(&["not"]).is_some() { Expression::Not(Box::new(self.negation())) } else { self.comparison() }
    }

    fn comparison(&mut self) -> Expression {
        let left = self.sum();
        if self.taken(&["in"]).is_some() {
            self.expect("(");
            let mut words = Vec::new();
            while self.taken(&[")"]).is_none() {
                let token = self.take();
                if token != "," {
                    words.push(token.trim_matches('"').to_owned());
                }
            }
            return Expression::Among(Box::new(left), words);
        }
        match self.taken(&["==", "!=", "<=", ">=", "<", ">"]) {
            Some(operator) => Expression::Compare(operator, Box::new(left), Box::new(self.sum())),
            None => left,
        }
    }

    fn sum(&mut self) -> Expression {
        let mut left = self.product();
        while let Some(operator) = self.taken(&["+", "-"]) {
            left = Expression::Sum(operator, Box::new(left), Box::new(self.product()));
        }
        left
    }

    fn product(&mut self) -> Expression {
        let mut left = self.power();
        while let Some(operator) = self.taken(&["*", "/"]) {
            left = Expression::Sum(operator, Box::new(left), Box::new(self.power()));
        }
        left
    }

    fn power(&mut self) -> Expression {
        let base = self.single();
        match self.taken(&["**"]) {
            Some(operator) => Expression::Sum(operator, Box::new(base), Box::new(self.power())),
            None => base,
        }
    }

    fn single(&mut self) -> Expression {
        let token = self.take();
        if token == "(" {
            let inner = self.choice();
            self.expect(")");
            return inner;
        }
        if let Some(word) = token.strip_prefix('"') {
            return Expression::Literal(Value::Word(word.trim_end_matches('"').to_owned()));
        }
        if let Ok(number) = token.parse() {
            return Expression::Literal(Value::Number(number));
        }
        if self.taken(&["("]).is_none() {
            return Expression::Name(token);
        }
        let mut given = Vec::new();
        while self.taken(&[")"]).is_none() {
            given.push(self.choice());
            self.taken(&[","]);
        }
        Expression::Call(token, given)
    }
}
