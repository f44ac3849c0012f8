//! Looking for a sum by a word.

use super::chapters;
use super::chapters::Chapter;
use super::declaration::Sum;

/// What is looked for, word by word, in lower case.
pub fn words_of(asked: &str) -> Vec<String> {
    asked.split_whitespace().map(str::to_lowercase).collect()
}

/// The sums in which every word stands, chapter by chapter; all of them for no word.
pub fn find(words: &[String]) -> Vec<(&'static Chapter, Vec<&'static Sum>)> {
    let has_all = |chapter: &Chapter, sum: &Sum| {
        let labels: String = sum.inputs.iter().map(|input| format!(" {}", input.label)).collect();
        let text = format!("{} {} {} {}{labels}", chapter.title, sum.title, sum.what, sum.name).to_lowercase();
        words.iter().all(|word| text.contains(word))
    };
    let within = |chapter: &'static Chapter| {
        let sums: Vec<_> = chapter.sums.iter().filter(|sum| has_all(chapter, sum)).collect();
        (chapter, sums)
    };
    chapters().iter().map(within).filter(|(_, sums)| !sums.is_empty()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sums::all;

    #[test]
    fn every_sum_is_found_by_its_own_title_and_nothing_by_nonsense() {
        for (_, sum) in all() {
            let found = find(&words_of(&sum.title.to_uppercase()));
            assert!(found.iter().any(|(_, sums)| sums.iter().any(|found| found.name == sum.name)), "{}", sum.title);
        }
        assert!(find(&words_of("xyzzy")).is_empty());
        assert_eq!(find(&[]).iter().map(|(_, sums)| sums.len()).sum::<usize>(), all().count());
    }
}
