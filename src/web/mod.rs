//! The pages: what staff and customers see and send.
//!
//! One page a file in `pages/`: the struct its template is filled from, its handlers, its form. A handler reads a
//! typed form, calls one use case of [`crate::service`], and answers with a page or the way to the next one.
//! Nothing here decides anything about a ticket, and nothing here keeps anything.
//!
//! - `routes` is the table of every address with who may ask for it. The router is made from the table and the
//!   table's guard stands before every handler, so that a handler cannot forget it.
//! - `guard` is what every answer passes through, errors too: headers, reference, limits, the check that a form
//!   came from our own page.
//! - `failure` is the one error of the edge.

mod access;
mod assets;
mod cookie;
mod difference;
mod extract;
mod facts;
mod failure;
mod findings;
mod form;
mod frame;
mod guard;
mod moment;
mod pages;
mod qr;
mod routes;
mod site;

pub use access::Access;
pub use guard::guarded;
pub use routes::{Route, router, table};
pub use site::{AppState, Site};
