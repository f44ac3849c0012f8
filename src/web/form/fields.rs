//! The fields of a form as they were sent, in order.

/// Names and values, as typed. A name may come more than once (ticks).
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Fields(Vec<(String, String)>);

impl Fields {
    /// Takes apart the body of a form.
    pub fn parse(body: &[u8]) -> Self {
        let pairs = form_urlencoded::parse(body);
        Self(pairs.map(|(name, value)| (name.into_owned(), value.into_owned())).collect())
    }

    /// Puts a value in, as if it had been typed.
    pub fn set(&mut self, name: impl Into<String>, value: impl Into<String>) {
        let name = name.into();
        self.0.retain(|(held, _)| *held != name);
        self.0.push((name, value.into()));
    }

    /// The same, in passing.
    #[must_use]
    pub fn with(mut self, name: &str, value: impl Into<String>) -> Self {
        self.set(name, value);
        self
    }

    /// The last value of this name: a form that was changed on the way counts with its last word.
    pub fn get(&self, name: &str) -> Option<&str> {
        self.0.iter().rev().find(|(held, _)| held == name).map(|(_, value)| value.as_str())
    }

    /// Every value of this name.
    pub fn all<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a str> + 'a {
        self.0.iter().filter(move |(held, _)| held == name).map(|(_, value)| value.as_str())
    }

    /// Every field whose name starts like this, with the rest of the name.
    pub fn starting<'a>(&'a self, start: &'a str) -> impl Iterator<Item = (&'a str, &'a str)> + 'a {
        self.0.iter().filter_map(move |(name, value)| Some((name.strip_prefix(start)?, value.as_str())))
    }

    /// All of it, to be carried through a page in hidden fields.
    pub fn pairs(&self) -> impl Iterator<Item = (&str, &str)> {
        self.0.iter().map(|(name, value)| (name.as_str(), value.as_str()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plus_and_percent_are_read_as_a_browser_writes_them() {
        let fields = Fields::parse(b"name=Ada+Lark&note=50%25+more&tick=a&tick=b&tick=c");
        assert_eq!(fields.get("name"), Some("Ada Lark"));
        assert_eq!(fields.get("note"), Some("50% more"));
        assert_eq!(fields.all("tick").collect::<Vec<_>>(), ["a", "b", "c"]);
        assert_eq!(fields.get("absent"), None);
    }

    #[test]
    fn a_value_put_in_replaces_what_stood_there() {
        let fields = Fields::parse(b"f.bell.kind=integral").with("f.bell.kind", "bolt_on");
        assert_eq!(fields.starting("f.").collect::<Vec<_>>(), [("bell.kind", "bolt_on")]);
    }
}
