//! A sum's address with what was typed in it, so that the sum can be sent to somebody.

use super::declaration::Sum;
use super::named;

/// `/sums/turns-a-mile?tire=28.5`: what is blank is left out.
pub fn address(sum: &Sum, typed: impl Fn(&str) -> String) -> String {
    let mut query = form_urlencoded::Serializer::new(String::new());
    for input in sum.inputs {
        let text = typed(input.name);
        if !text.trim().is_empty() {
            query.append_pair(input.name, text.trim());
        }
    }
    let query = query.finish();
    let mark = if query.is_empty() { "" } else { "?" };
    format!("/sums/{}{mark}{query}", sum.name)
}

/// The sum of such an address and what was typed in it, name by name; nothing when there is no such sum any more.
pub fn of_address(address: &str) -> Option<(&'static Sum, Vec<(String, String)>)> {
    let (path, query) = address.split_once('?').unwrap_or((address, ""));
    let sum = named(path.strip_prefix("/sums/")?)?;
    Some((sum, form_urlencoded::parse(query.as_bytes()).into_owned().collect()))
}
