//! A drawing in SVG: lines, boxes and words in one system of units, black on whatever ground, whole in its own box.
//!
//! Units are those of the view box, [`WIDTH`] across. Whatever is drawn stays inside the box: a place beyond it, or
//! one that is no number, is moved to its rim, so that no input can make a drawing that is not one. Colour comes from
//! the page (`currentColor`, and the `heat` classes of its style sheet); nothing here hangs on it.

use super::area::{Area, Spot};
use std::collections::BTreeSet;
use std::fmt::{self, Write as _};

/// How wide every picture is: a phone shows it one to one.
pub const WIDTH: f64 = 360.0;

/// Height of a line of words.
pub const TEXT: f64 = 12.0;

/// From one line of words to the next.
pub const LINE: f64 = 14.0;

/// A letter's width as a share of its height, in the widest of the fonts the pages name.
const LETTER: f64 = 0.63;

/// How a line is drawn. Lines that mean different things differ in this, whatever their colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stroke {
    /// Guides and ticks.
    Hair,
    /// From a label to what it names.
    Tie,
    /// A plain line.
    Plain,
    /// What matters most.
    Heavy,
    /// Long dashes.
    Dashed,
    /// Dots.
    Dotted,
    /// Dash and dot by turns.
    DashDot,
}

/// How an area is filled: the more heat, the closer the hatching.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fill {
    /// The ground of the page, with a rim.
    Open,
    /// Hatched by heat, 1 to 4; 0 is open.
    Heat(u8),
    /// Crossed: beyond what is allowed.
    Over,
    /// All ink.
    Ink,
}

/// On which side of its place a word stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// It begins there.
    Start,
    /// Its middle is there.
    Middle,
    /// It ends there.
    End,
}

/// A drawing in the making.
#[derive(Debug)]
pub struct Canvas {
    name: String,
    height: f64,
    marks: String,
    hatches: BTreeSet<Fill>,
}

impl Canvas {
    /// An empty one; `name` is unique on its page, of letters and dashes.
    pub fn new(name: &str, height: f64) -> Self {
        Self {
            name: name.to_owned(),
            height: sound(height, 2000.0),
            marks: String::with_capacity(8192),
            hatches: BTreeSet::new(),
        }
    }

    /// How high it is.
    pub const fn height(&self) -> f64 {
        self.height
    }

    /// A line through these places.
    pub fn line(&mut self, through: &[Spot], stroke: Stroke) {
        self.marks.push_str("<path d=\"");
        for (nth, spot) in through.iter().enumerate() {
            let (x, y) = self.inside(*spot);
            let step = if nth == 0 { 'M' } else { 'L' };
            write!(self.marks, "{step}{} {}", Tenths(x), Tenths(y)).ok();
        }
        write!(self.marks, "\" fill=\"none\"{}/>", stroke.attributes()).ok();
    }

    /// A rectangle.
    pub fn area(&mut self, area: Area, fill: Fill) {
        let (left, top) = self.inside((area.left, area.top));
        let (right, bottom) = self.inside((area.left + area.width, area.top + area.height));
        let (x, y, wide, high) = (Tenths(left), Tenths(top), Tenths(right - left), Tenths(bottom - top));
        self.filled(&format!("rect x=\"{x}\" y=\"{y}\" width=\"{wide}\" height=\"{high}\""), fill);
    }

    /// A disc; the whole of it stays inside.
    pub fn disc(&mut self, middle: Spot, radius: f64, fill: Fill) {
        let radius = sound(radius, 40.0).min(self.height / 2.0);
        let x = middle.0.clamp(radius, WIDTH - radius);
        let y = if middle.1.is_finite() { middle.1.clamp(radius, (self.height - radius).max(radius)) } else { radius };
        let x = if x.is_finite() { x } else { radius };
        self.filled(&format!("circle cx=\"{}\" cy=\"{}\" r=\"{}\"", Tenths(x), Tenths(y), Tenths(radius)), fill);
    }

    fn filled(&mut self, shape: &str, fill: Fill) {
        let rim = "stroke=\"currentColor\" stroke-width=\"1\"";
        match fill {
            Fill::Ink => write!(self.marks, "<{shape}/>").ok(),
            Fill::Open | Fill::Heat(0) => write!(self.marks, "<{shape} class=\"ground\" fill=\"#fff\" {rim}/>").ok(),
            Fill::Heat(_) | Fill::Over => {
                let fill = if let Fill::Heat(level) = fill { Fill::Heat(level.min(4)) } else { fill };
                self.hatches.insert(fill);
                let hatch = fill.hatch();
                let name = &self.name;
                write!(
                    self.marks,
                    "<{shape} class=\"ground {hatch}\" fill=\"#fff\"/><{shape} fill=\"url(#{name}-{hatch})\" {rim}/>"
                )
                .ok()
            }
        };
    }

    /// Words; what would run over the rim is moved back, what is too long for the picture is drawn smaller.
    pub fn words(&mut self, at: Spot, anchor: Anchor, words: &str) {
        self.put(at, anchor, words, "");
    }

    /// Words that matter most.
    pub fn bold(&mut self, at: Spot, anchor: Anchor, words: &str) {
        self.put(at, anchor, words, " font-weight=\"700\"");
    }

    fn put(&mut self, at: Spot, anchor: Anchor, words: &str, weight: &str) {
        if words.is_empty() {
            return;
        }
        let wide = width_of(words).min(WIDTH - 2.0);
        let (x, y) = self.inside(at);
        let (before, attribute) = match anchor {
            Anchor::Start => (0.0, ""),
            Anchor::Middle => (wide / 2.0, " text-anchor=\"middle\""),
            Anchor::End => (wide, " text-anchor=\"end\""),
        };
        let x = (x - before).clamp(1.0, WIDTH - 1.0 - wide) + before;
        let y = y.clamp(TEXT, self.height - 3.0);
        let long = width_of(words);
        let small = if long > wide { format!(" font-size=\"{:.2}\"", TEXT * wide / long) } else { String::new() };
        write!(
            self.marks,
            "<text x=\"{}\" y=\"{}\"{attribute}{weight}{small}>{}</text>",
            Tenths(x),
            Tenths(y),
            Escaped(words)
        )
        .ok();
    }

    /// The whole drawing with its title and description.
    pub fn finish(self, title: &str, description: &str) -> String {
        let Self { name, height, marks, hatches } = self;
        let mut patterns = String::new();
        for fill in hatches {
            let (hatch, apart, lines) = (fill.hatch(), Tenths(fill.apart()), fill.lines());
            write!(
                patterns,
                "<pattern id=\"{name}-{hatch}\" width=\"{apart}\" height=\"{apart}\" patternUnits=\"userSpaceOnUse\" \
                 patternTransform=\"rotate(45)\"><path d=\"{lines}\" stroke=\"currentColor\" stroke-width=\"1.2\"/>\
                 </pattern>"
            )
            .ok();
        }
        let defs = if patterns.is_empty() { String::new() } else { format!("<defs>{patterns}</defs>") };
        format!(
            "<svg role=\"img\" aria-labelledby=\"{name}-title {name}-desc\" viewBox=\"0 0 {} {}\" fill=\"currentColor\" \
             font-size=\"{}\"><title id=\"{name}-title\">{}</title><desc id=\"{name}-desc\">{}</desc>{defs}{marks}</svg>",
            Tenths(WIDTH),
            Tenths(height),
            Tenths(TEXT),
            Escaped(title),
            Escaped(description)
        )
    }

    fn inside(&self, (x, y): Spot) -> Spot {
        (sound(x, WIDTH), sound(y, self.height))
    }
}

impl Stroke {
    const fn attributes(self) -> &'static str {
        match self {
            Self::Hair => " stroke=\"currentColor\" stroke-width=\"0.5\"",
            Self::Tie => " stroke=\"currentColor\" stroke-width=\"1\"",
            Self::Plain => " stroke=\"currentColor\" stroke-width=\"1.8\"",
            Self::Heavy => " stroke=\"currentColor\" stroke-width=\"3.5\"",
            Self::Dashed => " stroke=\"currentColor\" stroke-width=\"1.8\" stroke-dasharray=\"7 4\"",
            Self::Dotted => " stroke=\"currentColor\" stroke-width=\"1.8\" stroke-dasharray=\"2 3\"",
            Self::DashDot => " stroke=\"currentColor\" stroke-width=\"1.8\" stroke-dasharray=\"9 3 2 3\"",
        }
    }
}

impl Fill {
    const fn hatch(self) -> &'static str {
        match self {
            Self::Heat(1) => "heat-1",
            Self::Heat(2) => "heat-2",
            Self::Heat(3) => "heat-3",
            Self::Heat(_) => "heat-4",
            Self::Open | Self::Over | Self::Ink => "over",
        }
    }

    const fn apart(self) -> f64 {
        match self {
            Self::Heat(1) => 9.0,
            Self::Heat(2) => 6.0,
            Self::Heat(3) => 4.0,
            Self::Heat(_) => 2.5,
            Self::Open | Self::Over | Self::Ink => 5.0,
        }
    }

    const fn lines(self) -> &'static str {
        match self {
            Self::Heat(_) => "M0 0V9",
            Self::Open | Self::Over | Self::Ink => "M0 0V5M0 0H5",
        }
    }
}

/// How wide words are at most.
pub fn width_of(words: &str) -> f64 {
    words.chars().count() as f64 * TEXT * LETTER
}

/// Within nought and `most`; nought for what is no number.
fn sound(value: f64, most: f64) -> f64 {
    if value.is_nan() { 0.0 } else { value.clamp(0.0, most) }
}

/// Prints to a tenth, without what says nothing. In whole tenths, because a page prints thousands of them.
struct Tenths(f64);

impl fmt::Display for Tenths {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let tenths = (self.0.abs() * 10.0).round() as u64;
        if self.0 < 0.0 && tenths > 0 {
            out.write_char('-')?;
        }
        let (whole, part) = (tenths / 10, tenths % 10);
        if part == 0 { write!(out, "{whole}") } else { write!(out, "{whole}.{part}") }
    }
}

/// Words as they may stand inside SVG.
struct Escaped<'a>(&'a str);

impl fmt::Display for Escaped<'_> {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut rest = self.0;
        // From one letter that cannot stand as it is to the next.
        while let Some(at) = rest.find(|letter: char| matches!(letter, '&' | '<' | '>' | '"') || letter.is_control()) {
            let (plain, from) = rest.split_at(at);
            out.write_str(plain)?;
            let mut letters = from.chars();
            out.write_str(match letters.next() {
                Some('&') => "&amp;",
                Some('<') => "&lt;",
                Some('>') => "&gt;",
                Some('"') => "&quot;",
                // Control characters are no part of any SVG.
                _ => " ",
            })?;
            rest = letters.as_str();
        }
        out.write_str(rest)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::picture::check::sound_svg;
    use proptest::prelude::*;

    #[test]
    fn words_are_escaped_and_ids_belong_to_the_picture() {
        let mut canvas = Canvas::new("a", 100.0);
        canvas.words((10.0, 20.0), Anchor::Start, "1 < 2 & \"3\"");
        canvas.area(Area { left: 0.0, top: 0.0, width: 10.0, height: 10.0 }, Fill::Heat(2));
        let svg = canvas.finish("A <title>", "What & why");
        sound_svg(&svg);
        assert!(svg.contains("1 &lt; 2 &amp; &quot;3&quot;") && svg.contains("A &lt;title&gt;"), "{svg}");
        assert!(svg.contains("id=\"a-heat-2\"") && svg.contains("url(#a-heat-2)"), "{svg}");
        assert!(svg.contains("aria-labelledby=\"a-title a-desc\""), "{svg}");
    }

    #[test]
    fn numbers_are_printed_to_a_tenth_and_no_further() {
        for (number, printed) in
            [(0.0, "0"), (12.0, "12"), (12.04, "12"), (12.06, "12.1"), (-0.04, "0"), (-3.5, "-3.5"), (359.96, "360")]
        {
            assert_eq!(Tenths(number).to_string(), printed);
        }
    }

    #[test]
    fn more_heat_is_hatched_closer() {
        let apart: Vec<f64> = (1..=4).map(|level| Fill::Heat(level).apart()).collect();
        assert!(apart.windows(2).all(|pair| pair[0] > pair[1]), "{apart:?}");
    }

    proptest! {
        #[test]
        fn whatever_is_drawn_stays_inside_and_well_formed(
            x in proptest::num::f64::ANY, y in proptest::num::f64::ANY, wide in proptest::num::f64::ANY,
            high in 20.0..900.0f64, level in 0u8..9, words in "\\PC{0,80}|[\u{0}-\u{1f}]{0,4}",
        ) {
            let mut canvas = Canvas::new("p", high);
            for anchor in [Anchor::Start, Anchor::Middle, Anchor::End] {
                canvas.words((x, y), anchor, &words);
            }
            canvas.line(&[(x, y), (y, x), (wide, high)], Stroke::Dashed);
            canvas.area(Area { left: x, top: y, width: wide, height: wide }, Fill::Heat(level));
            canvas.disc((x, y), wide, Fill::Over);
            sound_svg(&canvas.finish(&words, &words));
        }
    }
}
