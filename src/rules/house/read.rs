//! From CEL's tree of a text to a checked condition, or to everything that is amiss with it.

use super::condition::{Condition, Function, Number, Order, Sum, Test, Word};
use super::words::Vocabulary;
use crate::job::{FactId, Kind, fact_named, nearest_path};
use crate::quantity::cut;
use crate::rules::derived::DerivedId;
use cel::common::ast::{CallExpr, Expr, LiteralValue, operators};
use cel::parser::Parser;

/// The longest text that is read, in characters.
pub const LONGEST: usize = 2000;
/// The deepest nesting that is read.
const DEEPEST: u16 = 12;
/// The most signs (`+`, `.`, `&&` and so on) that are read: each can make the parser go one call deeper.
const MOST_SIGNS: usize = 240;
/// The most parts a condition may have.
const MOST_PARTS: usize = 300;

/// How much of a wrong name or word is said back: more than any right one has.
pub(super) const SAID_BACK: usize = 80;

/// Something that is wrong with a condition, in a whole sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Amiss {
    /// The sentence.
    pub message: String,
}

/// Reads a condition.
///
/// # Errors
/// Everything that is amiss with it; nothing of it is kept then.
pub fn read(text: &str) -> Result<Condition, Vec<Amiss>> {
    let one = |message: String| vec![Amiss { message }];
    let given = text.chars().count();
    if text.trim().is_empty() {
        return Err(one("The condition is empty. Write what has to be true for the rule to speak.".to_owned()));
    }
    if given > LONGEST {
        return Err(one(format!("The condition has {given} characters; at most {LONGEST} are read.")));
    }
    if deepest(text) > usize::from(DEEPEST) {
        return Err(one(format!("The brackets are nested more than {DEEPEST} deep.")));
    }
    let signs = text.chars().filter(|sign| "+-*/%.?:!<>=&|,".contains(*sign)).count();
    if signs > MOST_SIGNS {
        return Err(one(format!(
            "The condition has {signs} signs; at most {MOST_SIGNS} are read. Split it into several rules."
        )));
    }
    let tree =
        Parser::new().max_recursion_depth(DEEPEST * 4).error_recovery_limit(1).parse(text).map_err(|errors| {
            let last = errors.errors.last().map(|error| place(text, error.pos));
            one(last.unwrap_or_else(|| "The condition cannot be read.".to_owned()))
        })?;
    let mut reader = Reader::default();
    let term = reader.term(&tree.expr);
    if reader.amiss.is_empty() && !reader.touches_a_fact {
        reader.complain("The condition names no fact, so it would be the same for every job.".to_owned());
    }
    match term {
        Some(Term::Test(root)) if reader.amiss.is_empty() => Ok(Condition { text: text.to_owned(), root }),
        Some(other) => {
            if !matches!(other, Term::Test(_)) {
                reader.complain(format!("The whole condition is {}; it has to be true or false.", other.what()));
            }
            Err(reader.amiss)
        }
        None => Err(reader.amiss),
    }
}

/// How deep the brackets go, whatever kind they are.
fn deepest(text: &str) -> usize {
    let (mut depth, mut most) = (0_usize, 0);
    for sign in text.chars() {
        match sign {
            '(' | '[' | '{' => depth += 1,
            ')' | ']' | '}' => depth = depth.saturating_sub(1),
            _ => {}
        }
        most = most.max(depth);
    }
    most
}

/// Where reading stopped, with what stands there.
fn place(text: &str, (line, column): (isize, isize)) -> String {
    let line = usize::try_from(line).unwrap_or(1).max(1);
    let column = usize::try_from(column).unwrap_or(0);
    let there: String =
        text.lines().nth(line - 1).unwrap_or_default().chars().skip(column.saturating_sub(1)).take(20).collect();
    if there.trim().is_empty() {
        format!("The condition cannot be read: it ends too early, in line {line}.")
    } else {
        format!("The condition cannot be read from \"{there}\" on, in line {line}.")
    }
}

/// What a part turned out to be.
enum Term {
    Test(Test),
    Number(Number),
    Word(Word, Vocabulary),
}

impl Term {
    const fn what(&self) -> &'static str {
        match self {
            Self::Test(_) => "true or false",
            Self::Number(_) => "a number",
            Self::Word(..) => "a text",
        }
    }
}

#[derive(Default)]
struct Reader {
    amiss: Vec<Amiss>,
    parts: usize,
    touches_a_fact: bool,
}

impl Reader {
    fn complain(&mut self, message: String) {
        let amiss = Amiss { message };
        if !self.amiss.contains(&amiss) {
            self.amiss.push(amiss);
        }
    }

    fn nothing<T>(&mut self, message: String) -> Option<T> {
        self.complain(message);
        None
    }

    fn term(&mut self, expr: &Expr) -> Option<Term> {
        self.parts += 1;
        if self.parts > MOST_PARTS {
            return self
                .nothing(format!("The condition has more than {MOST_PARTS} parts. Split it into several rules."));
        }
        match expr {
            Expr::Literal(literal) => self.literal(literal),
            Expr::Ident(_) | Expr::Select(_) => self.name(expr),
            Expr::Call(call) => self.call(call),
            Expr::List(_) => self.nothing("A list can only stand behind \"in\".".to_owned()),
            Expr::Comprehension(_) | Expr::Map(_) | Expr::Struct(_) | Expr::Unspecified => {
                self.nothing("Lists, maps and loops have no place here: write the comparisons out.".to_owned())
            }
        }
    }

    fn literal(&mut self, literal: &LiteralValue) -> Option<Term> {
        let number = |number| Some(Term::Number(Number::Given(number)));
        match literal {
            LiteralValue::Boolean(truth) => Some(Term::Test(Test::Given(*truth.inner()))),
            LiteralValue::Double(double) => number(*double.inner()),
            LiteralValue::Int(int) => number(*int.inner() as f64),
            LiteralValue::UInt(int) => number(*int.inner() as f64),
            LiteralValue::String(text) => {
                let text = text.inner().to_owned();
                Some(Term::Word(Word::Given(text.clone()), Vocabulary::Quoted(text)))
            }
            LiteralValue::Null => {
                self.nothing("An unknown fact is not asked for with null: the rule waits for it by itself.".to_owned())
            }
            LiteralValue::Bytes(_) => self.nothing("Bytes have no place here.".to_owned()),
        }
    }

    fn name(&mut self, expr: &Expr) -> Option<Term> {
        let path = match dotted(expr) {
            Dotted::Name(path) => path,
            Dotted::Presence => {
                return self.nothing(
                    "has() is not needed: while a fact is unknown the rule cannot decide, and says so.".to_owned(),
                );
            }
            Dotted::Other => return self.nothing("A dot can only stand inside the name of a fact.".to_owned()),
        };
        if let Some(fact) = fact_named(&path) {
            self.touches_a_fact = true;
            return Some(of_fact(fact));
        }
        if let Some(which) = DerivedId::ALL.iter().copied().find(|which| which.declaration().path == path) {
            self.touches_a_fact = true;
            return Some(if which.declaration().kind == Kind::YesNo {
                Term::Test(Test::Computed(which))
            } else {
                Term::Number(Number::Computed(which))
            });
        }
        let meant = nearest_path(&path).map_or_else(String::new, |near| format!(" Did you mean {near}?"));
        self.nothing(format!("There is no fact called {}.{meant}", cut(&path, SAID_BACK)))
    }

    fn call(&mut self, call: &CallExpr) -> Option<Term> {
        let name = call.func_name.as_str();
        if let Some(target) = &call.target {
            return match dotted(&target.expr) {
                Dotted::Name(space) if space == "math" => self.function(name, call),
                _ => self.unknown_function(name),
            };
        }
        match (name, call.args.as_slice()) {
            (operators::LOGICAL_NOT, [part]) => Some(Term::Test(Test::Not(Box::new(self.test(&part.expr, "!")?)))),
            (operators::LOGICAL_AND, [a, b]) => {
                let (a, b) = (self.test(&a.expr, "&&"), self.test(&b.expr, "&&"));
                Some(Term::Test(Test::And(Box::new(a?), Box::new(b?))))
            }
            (operators::LOGICAL_OR, [a, b]) => {
                let (a, b) = (self.test(&a.expr, "||"), self.test(&b.expr, "||"));
                Some(Term::Test(Test::Or(Box::new(a?), Box::new(b?))))
            }
            (operators::CONDITIONAL, [test, yes, no]) => {
                let test = self.test(&test.expr, "?");
                let (yes, no) = (self.term(&yes.expr), self.term(&no.expr));
                self.choice(test?, yes?, no?)
            }
            (operators::NEGATE, [part]) => {
                let part = self.number(&part.expr, "-")?;
                Some(Term::Number(Number::Sum(Sum::Subtract, Box::new(Number::Given(0.0)), Box::new(part))))
            }
            (operators::IN, [one, list]) => self.among(&one.expr, &list.expr),
            (_, [a, b]) => match (order(name), sum(name)) {
                (Some((order, sign)), _) => {
                    let (a, b) = (self.term(&a.expr), self.term(&b.expr));
                    self.compare(order, sign, a?, b?)
                }
                (_, Some((sum, sign))) => {
                    let (a, b) = (self.number(&a.expr, sign), self.number(&b.expr, sign));
                    let (a, b) = (a?, b?);
                    if sum == Sum::Divide && b == Number::Given(0.0) {
                        return self.nothing("Nothing can be divided by 0.".to_owned());
                    }
                    Some(Term::Number(Number::Sum(sum, Box::new(a), Box::new(b))))
                }
                _ => self.unknown_function(name),
            },
            _ => self.unknown_function(name),
        }
    }

    fn unknown_function(&mut self, name: &str) -> Option<Term> {
        let said = if name == operators::MODULO { "%" } else { &cut(name, SAID_BACK) };
        self.nothing(format!(
            "\"{said}\" cannot be used here. There are && || ! == != < <= > >= + - * / in ?: and math.abs, math.sqrt, \
             math.least, math.greatest."
        ))
    }

    fn function(&mut self, name: &str, call: &CallExpr) -> Option<Term> {
        let (function, wanted) = match name {
            "abs" => (Function::Size, 1..=1),
            "sqrt" => (Function::Root, 1..=1),
            "least" => (Function::Least, 1..=20),
            "greatest" => (Function::Greatest, 1..=20),
            _ => return self.unknown_function(&format!("math.{name}")),
        };
        if !wanted.contains(&call.args.len()) {
            let most = wanted.end();
            return self.nothing(format!("math.{name} takes {} number(s); {} stand there.", most, call.args.len()));
        }
        let parts: Vec<_> = call.args.iter().map(|part| self.number(&part.expr, name)).collect();
        Some(Term::Number(Number::Function(function, parts.into_iter().collect::<Option<_>>()?)))
    }

    fn test(&mut self, expr: &Expr, sign: &str) -> Option<Test> {
        match self.term(expr)? {
            Term::Test(test) => Some(test),
            other => self.nothing(format!("\"{sign}\" wants something true or false, not {}.", other.what())),
        }
    }

    fn number(&mut self, expr: &Expr, sign: &str) -> Option<Number> {
        match self.term(expr)? {
            Term::Number(number) => Some(number),
            other => self.nothing(format!("\"{sign}\" wants a number, not something that is {}.", other.what())),
        }
    }

    fn compare(&mut self, order: Order, sign: &str, a: Term, b: Term) -> Option<Term> {
        let by_order = !matches!(order, Order::Is | Order::IsNot);
        match (a, b) {
            (Term::Number(a), Term::Number(b)) => Some(Term::Test(Test::Numbers(order, a, b))),
            (Term::Test(a), Term::Test(b)) if !by_order => {
                let same = Test::Same(Box::new(a), Box::new(b));
                Some(Term::Test(if order == Order::Is { same } else { Test::Not(Box::new(same)) }))
            }
            (Term::Word(a, these), Term::Word(b, those)) => match these.fits(&those, by_order) {
                Ok(()) => Some(Term::Test(Test::Words(order, a, b))),
                Err(why) => self.nothing(why),
            },
            (a, b) => self.nothing(format!("\"{sign}\" cannot hold {} against {}.", a.what(), b.what())),
        }
    }

    fn choice(&mut self, test: Test, yes: Term, no: Term) -> Option<Term> {
        let test = Box::new(test);
        match (yes, no) {
            (Term::Test(yes), Term::Test(no)) => Some(Term::Test(Test::Choose(test, Box::new(yes), Box::new(no)))),
            (Term::Number(yes), Term::Number(no)) => {
                Some(Term::Number(Number::Choose(test, Box::new(yes), Box::new(no))))
            }
            (yes, no) => self.nothing(format!(
                "Both sides of \"? :\" have to be numbers, or both true or false; here they are {} and {}.",
                yes.what(),
                no.what()
            )),
        }
    }

    /// `a in [x, y]` is `a == x || a == y`.
    fn among(&mut self, one: &Expr, list: &Expr) -> Option<Term> {
        let Expr::List(list) = list else {
            return self.nothing("Behind \"in\" has to stand a list in square brackets.".to_owned());
        };
        if list.elements.is_empty() {
            return self.nothing("The list behind \"in\" is empty.".to_owned());
        }
        let mut whole: Option<Test> = None;
        for element in &list.elements {
            let (a, b) = (self.term(one)?, self.term(&element.expr)?);
            let Term::Test(test) = self.compare(Order::Is, "in", a, b)? else { return None };
            whole = Some(match whole {
                None => test,
                Some(before) => Test::Or(Box::new(before), Box::new(test)),
            });
        }
        whole.map(Term::Test)
    }
}

fn of_fact(fact: FactId) -> Term {
    match (fact.declaration().kind, Vocabulary::of(fact)) {
        (_, Some(vocabulary)) => Term::Word(Word::Fact(fact), vocabulary),
        (Kind::YesNo, None) => Term::Test(Test::Fact(fact)),
        _ => Term::Number(Number::Fact(fact)),
    }
}

/// A name with dots in it, as a tree.
enum Dotted {
    Name(String),
    Presence,
    Other,
}

fn dotted(expr: &Expr) -> Dotted {
    match expr {
        Expr::Ident(name) => Dotted::Name(name.clone()),
        Expr::Select(select) if select.test => Dotted::Presence,
        Expr::Select(select) => match dotted(&select.operand.expr) {
            Dotted::Name(before) => Dotted::Name(format!("{before}.{}", select.field)),
            other => other,
        },
        _ => Dotted::Other,
    }
}

fn order(name: &str) -> Option<(Order, &'static str)> {
    Some(match name {
        operators::EQUALS => (Order::Is, "=="),
        operators::NOT_EQUALS => (Order::IsNot, "!="),
        operators::LESS => (Order::Below, "<"),
        operators::LESS_EQUALS => (Order::AtMost, "<="),
        operators::GREATER => (Order::Above, ">"),
        operators::GREATER_EQUALS => (Order::AtLeast, ">="),
        _ => return None,
    })
}

fn sum(name: &str) -> Option<(Sum, &'static str)> {
    Some(match name {
        operators::ADD => (Sum::Add, "+"),
        operators::SUBSTRACT => (Sum::Subtract, "-"),
        operators::MULTIPLY => (Sum::Multiply, "*"),
        operators::DIVIDE => (Sum::Divide, "/"),
        _ => return None,
    })
}
