//! A published value, where it stands, how far it can be trusted, and what the program makes of it.

/// How far a published value can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trust {
    /// Read in the text of the named source.
    Read,
    /// Read in a second text that quotes the source.
    Quoted,
    /// Taken from a public data package.
    Package,
    /// Computed apart, by general-purpose mathematics and not by this program.
    Computed,
    /// Remembered, and marked so.
    Memory,
}

/// Where a value stands.
#[derive(Clone, Copy, Debug)]
pub struct Source(pub &'static str, pub Trust);

/// The value itself.
#[derive(Clone, Debug)]
enum Value {
    Number { computed: f64, published: f64, within: f64 },
    Words { computed: String, published: &'static str },
}

/// One value held against its source.
#[derive(Clone, Debug)]
pub struct Check {
    pub source: Source,
    pub what: String,
    value: Value,
}

impl Check {
    /// Why the program and the source disagree; `None` when they agree.
    pub fn off(&self) -> Option<String> {
        let Self { source: Source(source, trust), what, value } = self;
        match value {
            Value::Number { computed, published, within } => {
                // A NaN is near nothing.
                let near = (computed - published).abs() <= *within;
                (!near).then(|| {
                    format!("{what}: computed {computed}, published {published} ± {within} ({source}, {trust:?})")
                })
            }
            Value::Words { computed, published } => (computed != published)
                .then(|| format!("{what}: here {computed:?}, there {published:?} ({source}, {trust:?})")),
        }
    }
}

impl Source {
    /// A number, and how near the computed one must come.
    pub fn number(self, what: impl Into<String>, computed: f64, published: f64, within: f64) -> Check {
        Check { source: self, what: what.into(), value: Value::Number { computed, published, within } }
    }

    /// A callout, a code, a name: exactly so.
    pub fn words(self, what: impl Into<String>, computed: impl Into<String>, published: &'static str) -> Check {
        Check { source: self, what: what.into(), value: Value::Words { computed: computed.into(), published } }
    }
}

#[test]
fn a_value_that_is_off_is_told_with_its_source() {
    let source = Source("a book", Trust::Read);
    assert_eq!(source.number("just inside", 1.0, 1.5, 0.5).off(), None);
    let off = source.number("just outside", 1.0, 1.51, 0.5).off().expect("off");
    assert!(off.contains("just outside") && off.contains("1.51") && off.contains("a book"), "{off}");
    assert!(source.number("not a number", f64::NAN, 1.0, 0.5).off().is_some());
    assert!(source.number("infinite", f64::INFINITY, 1.0, 0.5).off().is_some());
    assert_eq!(source.words("same", "9/16-18", "9/16-18").off(), None);
    assert!(source.words("other", "9/16-12", "9/16-18").off().is_some());
}
