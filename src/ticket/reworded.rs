//! What a customer's paper says now that it did not say when it was signed.

use super::paper::{Block, Paper};
use serde::{Deserialize, Serialize};

/// One heading under which something changed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Reworded {
    /// The heading.
    pub heading: String,
    /// Lines that are gone.
    pub gone: Vec<String>,
    /// Lines that are new.
    pub new: Vec<String>,
}

/// Every heading under which the two papers differ, in the order of the present one; the price last.
pub fn reworded(was: &Paper, now: &Paper) -> Vec<Reworded> {
    let of = |blocks: &[Block], heading: &str| -> Vec<String> {
        blocks.iter().find(|block| block.heading == heading).map(|block| block.lines.clone()).unwrap_or_default()
    };
    let mut headings: Vec<&str> = now.blocks.iter().map(|block| block.heading.as_str()).collect();
    headings.extend(
        was.blocks.iter().map(|block| block.heading.as_str()).filter(|heading| of(&now.blocks, heading).is_empty()),
    );
    let pairs = headings.into_iter().map(|heading| (heading, of(&was.blocks, heading), of(&now.blocks, heading)));
    let price = ("Price", vec![was.price.clone()], vec![now.price.clone()]);
    pairs
        .chain([price])
        .map(|(heading, was, now)| Reworded {
            heading: heading.to_owned(),
            gone: was.iter().filter(|line| !now.contains(line)).cloned().collect(),
            new: now.iter().filter(|line| !was.contains(line)).cloned().collect(),
        })
        .filter(|change| !change.gone.is_empty() || !change.new.is_empty())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ticket::{Contents, Judgement, Purpose, Setting, paper};

    fn with(blocks: &[(&str, &[&str])], price: &str) -> Paper {
        let (contents, judgement) = (Contents::default(), Judgement::default());
        let setting = Setting {
            shop: "",
            customer: "",
            vehicle: "",
            ticket: 1,
            revision: 1,
            contents: &contents,
            judgement: &judgement,
            terms: "",
        };
        Paper {
            blocks: blocks
                .iter()
                .map(|(heading, lines)| Block {
                    heading: (*heading).into(),
                    lines: lines.iter().map(|line| (*line).into()).collect(),
                })
                .collect(),
            price: price.into(),
            ..paper(Purpose::Build, &setting)
        }
    }

    #[test]
    fn only_what_differs_is_told_with_both_sides() {
        let was = with(&[("Built", &["By hand.", "Deep pan."]), ("Old", &["Gone."])], "Price: 10.00");
        let now = with(&[("Built", &["By itself.", "Deep pan."]), ("Fresh", &["New."])], "Price: 12.00");
        let told = reworded(&was, &now);
        let seen: Vec<_> =
            told.iter().map(|change| (change.heading.as_str(), change.gone.join("|"), change.new.join("|"))).collect();
        assert_eq!(
            seen,
            [
                ("Built", "By hand.".into(), "By itself.".into()),
                ("Fresh", String::new(), "New.".to_owned()),
                ("Old", "Gone.".to_owned(), String::new()),
                ("Price", "Price: 10.00".to_owned(), "Price: 12.00".to_owned()),
            ]
        );
        assert!(reworded(&now, &now).is_empty());
    }
}
