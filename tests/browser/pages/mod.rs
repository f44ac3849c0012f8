//! Every page in every state: whole at every width, readable, without a fault axe-core knows, alone with the shop.

mod clearing;
mod customer;
mod measures;
mod next;
mod rules;
mod shop;
mod steps;
mod sums;
mod tickets;
mod what_if;

use endplay::web;
pub use steps::worked_on;

/// Every address that can be looked at, but for files and what needs its own visitor.
fn addresses(wanted: impl Fn(&str) -> bool) -> Vec<&'static str> {
    let looks = web::table().into_iter().filter(|route| route.method == axum::http::Method::GET);
    looks.map(|route| route.path).filter(|path| wanted(path)).collect()
}

/// Each address of the table has to be among the visited ones, so that a new page cannot be forgotten here.
fn assert_all_visited(visited: &[String], wanted: impl Fn(&str) -> bool) {
    for path in addresses(wanted) {
        let parts: Vec<&str> = path.split('/').collect();
        let is_visited = visited.iter().any(|seen| {
            let seen: Vec<&str> = seen.split('/').collect();
            seen.len() == parts.len()
                && parts.iter().zip(&seen).all(|(part, seen)| part.starts_with('{') || part == seen)
        });
        assert!(is_visited, "nobody looked at {path}");
    }
}
