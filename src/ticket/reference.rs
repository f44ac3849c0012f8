//! The reference number of a receipt: short enough to read out over the telephone.

use super::canonical::Digest;
use serde::{Deserialize, Serialize};
use std::fmt;

/// Thirty-one letters and digits without those that are mistaken for one another (0 O, 1 I L).
const LETTERS: &[u8; 31] = b"23456789ABCDEFGHJKMNPQRSTUVWXYZ";
const LENGTH: usize = 8;

/// Eight letters drawn from the record's digest and a check letter, as `7K3M-Q9TA-X`.
///
/// The check letter catches any one wrong letter and any two neighbours swapped: the alphabet's size is
/// prime, and every place has a weight of its own.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Reference(String);

impl Reference {
    /// The reference of the record with this digest.
    pub fn of(digest: &Digest) -> Self {
        let mut number = digest.0[..8].iter().fold(0_u64, |sum, byte| (sum << 8) | u64::from(*byte));
        let mut letters = Vec::with_capacity(LENGTH + 1);
        for _ in 0..LENGTH {
            letters.push(LETTERS[(number % 31) as usize]);
            number /= 31;
        }
        letters.push(LETTERS[check(&letters)]);
        Self::printed(&letters)
    }

    /// Reads a reference as people type it: any case, with or without dashes and blanks.
    ///
    /// Nothing when it has the wrong length, a letter that is never used, or the check letter does not fit.
    pub fn read(text: &str) -> Option<Self> {
        let letters: Vec<u8> =
            text.bytes().filter(|byte| !matches!(byte, b' ' | b'-')).map(|byte| byte.to_ascii_uppercase()).collect();
        let known = letters.iter().all(|letter| LETTERS.contains(letter));
        let fits = known && letters.len() == LENGTH + 1 && letters[LENGTH] == LETTERS[check(&letters[..LENGTH])];
        fits.then(|| Self::printed(&letters))
    }

    fn printed(letters: &[u8]) -> Self {
        let text = String::from_utf8_lossy(letters);
        Self(format!("{}-{}-{}", &text[..4], &text[4..LENGTH], &text[LENGTH..]))
    }
}

fn check(letters: &[u8]) -> usize {
    let place = |letter: u8| LETTERS.iter().position(|known| *known == letter).unwrap_or(0);
    letters.iter().enumerate().map(|(at, letter)| (at + 2) * place(*letter)).sum::<usize>() % 31
}

impl fmt::Display for Reference {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn some() -> Vec<Reference> {
        (0_u32..200).map(|n| Reference::of(&Digest::of(&n.to_be_bytes()))).collect()
    }

    #[test]
    fn it_reads_back_however_it_is_typed() {
        for reference in some() {
            let printed = reference.to_string();
            assert_eq!(printed.len(), 11);
            assert_eq!(Reference::read(&printed.to_lowercase().replace('-', " ")), Some(reference.clone()));
        }
    }

    #[test]
    fn one_wrong_letter_is_always_caught() {
        for reference in some().iter().take(20) {
            let printed = reference.to_string();
            for at in (0..printed.len()).filter(|at| printed.as_bytes()[*at] != b'-') {
                for letter in LETTERS.iter().map(|letter| char::from(*letter)) {
                    let mut wrong = printed.clone();
                    wrong.replace_range(at..=at, &letter.to_string());
                    assert_eq!(Reference::read(&wrong).is_some(), wrong == printed, "{wrong} for {printed}");
                }
            }
        }
    }

    #[test]
    fn two_swapped_neighbours_are_always_caught() {
        for reference in some() {
            let letters: Vec<char> = reference.to_string().chars().filter(|letter| *letter != '-').collect();
            for at in 1..letters.len() {
                let mut swapped = letters.clone();
                swapped.swap(at - 1, at);
                let text: String = swapped.iter().collect();
                assert_eq!(Reference::read(&text).is_some(), swapped == letters, "{text} for {reference}");
            }
        }
    }
}
