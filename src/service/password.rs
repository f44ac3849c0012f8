//! Passwords: what is refused, how they are kept, how they are checked.

use super::Failure;
use super::form::name_words;
use argon2::password_hash::phc::PasswordHash;
use argon2::password_hash::{PasswordHasher, PasswordVerifier};
use argon2::{Algorithm, Argon2, Params, Version};
use std::sync::LazyLock;

/// The fewest characters.
pub(super) const SHORTEST: usize = 15;
/// The most characters; more would only cost time.
pub(super) const LONGEST: usize = 128;

/// Long passwords that everybody thinks of, in lower case without blanks.
const COMMON: [&str; 24] = [
    "passwordpassword",
    "password12345678",
    "password123456789",
    "password1234567890",
    "mypasswordmypassword",
    "passwordispassword",
    "thisismypassword",
    "mypasswordissecret",
    "changemechangeme",
    "changemeplease",
    "letmeinletmein",
    "letmeinletmeinletmein",
    "welcomewelcome",
    "welcometotheshop",
    "administrator",
    "administratoradministrator",
    "qwertyuiopasdfgh",
    "qwertyuiopasdfghjkl",
    "1qaz2wsx3edc4rfv",
    "iloveyouiloveyou",
    "correcthorsebatterystaple",
    "transmissionshop",
    "automatictransmission",
    "trustno1trustno1",
];

/// Why a password is refused, in a sentence; nothing when it will do. There are no rules about kinds of characters.
pub(super) fn complaint(password: &str, shop: &str, person: &str) -> Option<String> {
    let length = password.chars().count();
    if length < SHORTEST {
        return Some(format!(
            "The password has {length} characters; it needs at least {SHORTEST}. Four or five words in a row do well."
        ));
    }
    if length > LONGEST {
        return Some(format!("The password has {length} characters; {LONGEST} is the most."));
    }
    let plain: String = password.to_lowercase().split_whitespace().collect();
    if COMMON.contains(&plain.as_str()) || repeats(&plain) || runs(&plain) {
        return Some("That password is one of the first anybody would try. Please choose another.".to_owned());
    }
    let mut rest = plain;
    for word in name_words(shop).into_iter().chain(name_words(person)).filter(|word| word.chars().count() > 2) {
        rest = rest.replace(&word, "");
    }
    let own = rest.chars().filter(|letter| letter.is_alphabetic()).count();
    let named = rest.len() < password.to_lowercase().split_whitespace().collect::<String>().len();
    (named && own < 8)
        .then(|| "The password is little more than a name of the shop or the person. Please choose another.".to_owned())
}

/// Is it one short piece over and over?
fn repeats(text: &str) -> bool {
    let letters: Vec<char> = text.chars().collect();
    (1..=4)
        .any(|period| letters.len() > period && (period..letters.len()).all(|at| letters[at] == letters[at - period]))
}

/// Does it only count up or down?
fn runs(text: &str) -> bool {
    let codes: Vec<i64> = text.chars().map(|letter| i64::from(u32::from(letter))).collect();
    let steps = |step: i64| codes.windows(2).filter(|pair| pair[1] - pair[0] == step).count();
    codes.len() > 1 && (steps(1) + 2 >= codes.len() || steps(-1) + 2 >= codes.len())
}

/// Argon2id with 19 MiB, two passes, one lane.
fn hasher() -> Argon2<'static> {
    Argon2::new(Algorithm::Argon2id, Version::V0x13, parameters())
}

fn parameters() -> Params {
    Params::new(19 * 1024, 2, 1, None).expect("these parameters are within the algorithm's bounds")
}

/// The hash that is kept, in PHC form. Slow on purpose; runs beside the server's own threads.
pub(super) async fn hash(password: String) -> Result<String, Failure> {
    beside(move || hasher().hash_password(password.as_bytes()).map(|hash| hash.to_string())).await?.map_err(broken)
}

/// What checking a password found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Checked {
    /// Does it fit?
    pub fits: bool,
    /// Was it kept with weaker parameters than today's, so that it should be hashed anew?
    pub weak: bool,
}

/// Checks a password. Without a kept hash it takes as long and never fits, so that the time tells nobody who exists.
pub(super) async fn check(password: String, kept: Option<String>) -> Result<Checked, Failure> {
    static NOBODY: LazyLock<String> =
        LazyLock::new(|| hasher().hash_password(b"nobody has this").map(|hash| hash.to_string()).unwrap_or_default());
    beside(move || {
        let known = kept.is_some();
        let kept = kept.unwrap_or_else(|| NOBODY.clone());
        let hash = PasswordHash::new(&kept)?;
        let fits = hasher().verify_password(password.as_bytes(), &hash).is_ok() && known;
        let today = parameters();
        let weak = hash.algorithm.as_str() != "argon2id"
            || Params::try_from(&hash)
                .map_or(true, |used| used.m_cost() < today.m_cost() || used.t_cost() < today.t_cost());
        Ok(Checked { fits, weak })
    })
    .await?
    .map_err(|error: argon2::password_hash::phc::Error| broken(error))
}

async fn beside<T: Send + 'static>(work: impl FnOnce() -> T + Send + 'static) -> Result<T, Failure> {
    tokio::task::spawn_blocking(work).await.map_err(|panic| Failure::Broken(Box::new(panic)))
}

fn broken(error: impl std::fmt::Display) -> Failure {
    Failure::Broken(error.to_string().into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn length_is_what_counts() {
        assert!(complaint("a long way home", "Harbor Lane", "Ada").is_none());
        assert!(complaint("a long way hom", "Harbor Lane", "Ada").is_some_and(|text| text.contains("14 characters")));
        assert!(complaint(&"xy4 ".repeat(32), "Harbor Lane", "Ada").is_some(), "a repeated piece");
        assert!(complaint(&"é quite long one ".repeat(8)[..], "Harbor Lane", "Ada").is_some());
        let longest: String = ('a'..='z').cycle().step_by(7).take(LONGEST).collect();
        assert!(complaint(&longest, "Harbor Lane", "Ada").is_none());
        assert!(complaint(&format!("{longest}x"), "Harbor Lane", "Ada").is_some());
    }

    #[test]
    fn the_first_guesses_are_refused() {
        for password in [
            "Password Password",
            "aaaaaaaaaaaaaaaa",
            "abcabcabcabcabcabc",
            "123456789012345",
            "abcdefghijklmnop",
            "correct horse battery staple",
        ] {
            assert!(complaint(password, "Harbor Lane Gearbox", "Ada Quill").is_some(), "{password}");
        }
    }

    #[test]
    fn a_name_with_a_number_behind_it_is_refused_but_a_sentence_with_a_name_is_not() {
        assert!(complaint("HarborLaneGearbox1", "Harbor Lane Gearbox", "Ada Quill").is_some());
        assert!(complaint("quillquill 20262026", "Harbor Lane Gearbox", "Ada Quill").is_some());
        assert!(complaint("ada keeps a very old lathe", "Harbor Lane Gearbox", "Ada Quill").is_none());
    }

    #[tokio::test]
    async fn a_hash_fits_its_password_only_and_has_todays_strength() {
        let kept = hash("a long way home".into()).await.expect("a hash");
        assert!(kept.starts_with("$argon2id$v=19$m=19456,t=2,p=1$"), "{kept}");
        let check = |password: &str, kept: Option<&str>| check(password.to_owned(), kept.map(str::to_owned));
        assert_eq!(check("a long way home", Some(&kept)).await.expect("checked"), Checked { fits: true, weak: false });
        assert!(!check("a long way homf", Some(&kept)).await.expect("checked").fits);
        assert!(!check("nobody has this", None).await.expect("checked").fits);
    }

    #[tokio::test]
    async fn a_weaker_hash_still_fits_and_is_named_weak() {
        let params = Params::new(8 * 1024, 1, 1, None).expect("allowed");
        let old = Argon2::new(Algorithm::Argon2id, Version::V0x13, params);
        let kept = old.hash_password(b"a long way home").expect("a hash").to_string();
        let checked = check("a long way home".into(), Some(kept)).await.expect("checked");
        assert_eq!(checked, Checked { fits: true, weak: true });
    }
}
