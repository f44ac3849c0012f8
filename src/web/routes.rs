//! Every address, with who may ask for it.

use super::access::{Access, staff_only};
use super::assets;
use super::guard::guarded;
use super::pages::{
    board, class_choice, class_tables, clearing, compare, contact, counter, customer, door, facts, hand_off, history,
    house_rules, instruments, intake, intake_receipt, levers, limits, measures, next, password, people, pictures,
    questions, receipt, rules, sets, setup, shop, steps, sums, tag, ticket, what_if,
};
use super::site::AppState;
use crate::ticket::Action::{
    ChangeContact, ChangeFacts, ChangeLimits, ChangePrice, ChangePromise, ChangeWaits, CounterSign, ManageLinks,
    ManageRules, ManageShop, ManageStaff, MoveStage, OwnAccount, ReadTickets, SetAside, TakeIn, WriteClassTables,
    WriteNote,
};
use axum::Router;
use axum::http::Method;
use axum::middleware::from_fn_with_state;
use axum::routing::{MethodRouter, get, post};
use std::sync::Arc;

/// One address and method.
pub struct Route {
    /// The method; GET answers HEAD as well.
    pub method: Method,
    /// The address, with its variable parts in braces.
    pub path: &'static str,
    /// Who may ask.
    pub access: Access,
    handler: MethodRouter<AppState>,
}

/// The whole table.
pub fn table() -> Vec<Route> {
    let mut rows = Vec::new();
    rows.extend(door_rows());
    rows.extend(shop_rows());
    rows.extend(sum_rows());
    rows.extend(house_rule_rows());
    rows.extend(ticket_rows());
    rows.extend(class_table_rows());
    rows.extend(intake_rows());
    rows.extend(customer_rows());
    rows.extend(paper_rows());
    rows.extend(measuring_rows());
    rows
}

/// For whoever stands at the door.
fn door_rows() -> Vec<Route> {
    use Access::Anyone;
    vec![
        looks("/static/{name}", Anyone, get(assets::serve)),
        looks("/sign-in", Anyone, get(door::show)),
        sends("/sign-in", Anyone, post(door::sign_in)),
        looks("/setup/{pass}", Anyone, get(setup::show)),
        sends("/setup/{pass}", Anyone, post(setup::set_up)),
    ]
}

/// For everybody who works here.
fn shop_rows() -> Vec<Route> {
    use Access::Staff;
    vec![
        looks("/", Staff(ReadTickets), get(board::show)),
        sends("/sign-out", Staff(OwnAccount), post(door::sign_out)),
        looks("/me/password", Staff(OwnAccount), get(password::show)),
        sends("/me/password", Staff(OwnAccount), post(password::change)),
        looks("/staff", Staff(ManageStaff), get(people::show)),
        sends("/staff", Staff(ManageStaff), post(people::add)),
        sends("/staff/{id}/off", Staff(ManageStaff), post(people::switch_off)),
        looks("/rules", Staff(ReadTickets), get(rules::show)),
        looks("/rules/{code}", Staff(ReadTickets), get(rules::show_one)),
        looks("/limits", Staff(ReadTickets), get(limits::show)),
        looks("/limits/{name}", Staff(ReadTickets), get(limits::show_one)),
        sends("/limits/{name}", Staff(ChangeLimits), post(limits::send)),
        looks("/levers", Staff(ReadTickets), get(levers::show)),
        looks("/levers/{code}", Staff(ReadTickets), get(levers::show_one)),
        sends("/levers/{code}", Staff(ManageShop), post(levers::send)),
        looks("/shop", Staff(ManageShop), get(shop::show)),
        sends("/shop", Staff(ManageShop), post(shop::change)),
    ]
}

/// Calculations, open to whoever holds the counter's tablet; a job's numbers and its history are for staff.
fn sum_rows() -> Vec<Route> {
    use Access::{Anyone, Staff};
    vec![
        looks("/sums", Anyone, get(sums::show)),
        looks("/sums/{name}", Anyone, get(sums::show_one)),
        sends("/sums/{name}", Staff(WriteNote), post(sums::send)),
        looks("/tickets/{number}/sums", Staff(ReadTickets), get(sums::show_for_job)),
        looks("/tickets/{number}/sums/{name}", Staff(ReadTickets), get(sums::of_job)),
    ]
}

/// Rules of the shop's own.
fn house_rule_rows() -> Vec<Route> {
    use Access::Staff;
    vec![
        looks("/house-rules", Staff(ReadTickets), get(house_rules::list)),
        sends("/house-rules", Staff(ManageRules), post(house_rules::write_new)),
        looks("/house-rules/new", Staff(ManageRules), get(house_rules::fresh)),
        sends("/house-rules/look", Staff(ManageRules), post(house_rules::look)),
        looks("/house-rules/{nth}", Staff(ReadTickets), get(house_rules::show)),
        sends("/house-rules/{nth}", Staff(ManageRules), post(house_rules::write_next)),
        looks("/house-rules/{nth}/edit", Staff(ManageRules), get(house_rules::edit)),
        sends("/house-rules/{nth}/try", Staff(ManageRules), post(house_rules::try_out)),
        sends("/house-rules/{nth}/switch", Staff(ManageRules), post(house_rules::switch)),
    ]
}

/// What classes ask for.
fn class_table_rows() -> Vec<Route> {
    use Access::Staff;
    vec![
        looks("/class-tables", Staff(ReadTickets), get(class_tables::list)),
        sends("/class-tables", Staff(WriteClassTables), post(class_tables::form::send)),
        looks("/class-tables/new", Staff(WriteClassTables), get(class_tables::form::show)),
        looks("/class-tables/{id}", Staff(ReadTickets), get(class_tables::show)),
        looks("/tickets/{number}/class-table", Staff(ChangeFacts), get(class_choice::show)),
        sends("/tickets/{number}/class-table", Staff(ChangeFacts), post(class_choice::send)),
    ]
}

/// Taking a unit in.
fn intake_rows() -> Vec<Route> {
    use Access::Staff;
    vec![
        looks("/intake", Staff(TakeIn), get(intake::show)),
        sends("/intake", Staff(TakeIn), post(intake::send)),
        looks("/tickets/{number}/intake", Staff(ChangeFacts), get(questions::show)),
        sends("/tickets/{number}/intake", Staff(ChangeFacts), post(questions::send)),
        sends("/tickets/{number}/look", Staff(ChangeFacts), post(questions::look)),
        looks("/tickets/{number}/intake/done", Staff(ReadTickets), get(hand_off::show)),
    ]
}

/// Measuring: the sheet of a job, the shop's instruments, its shelf and its units.
fn measuring_rows() -> Vec<Route> {
    use Access::Staff;
    vec![
        looks("/tickets/{number}/sheet", Staff(ReadTickets), get(measures::show)),
        looks("/tickets/{number}/sheet/{name}", Staff(ReadTickets), get(measures::show_one)),
        sends("/tickets/{number}/sheet/{name}", Staff(ChangeFacts), post(measures::send)),
        sends("/tickets/{number}/sheet/{name}/look", Staff(ChangeFacts), post(measures::look)),
        looks("/tickets/{number}/sheet/{name}/strike/{turn}", Staff(ChangeFacts), get(measures::strike::show)),
        sends("/tickets/{number}/sheet/{name}/strike/{turn}", Staff(ChangeFacts), post(measures::strike::send)),
        looks("/instruments", Staff(ReadTickets), get(instruments::show)),
        sends("/instruments", Staff(ChangeFacts), post(instruments::add)),
        looks("/instruments/{nth}", Staff(ReadTickets), get(instruments::show_one)),
        sends("/instruments/{nth}", Staff(ChangeFacts), post(instruments::send)),
        looks("/sets", Staff(ReadTickets), get(sets::list)),
        looks("/sets/{code}", Staff(ReadTickets), get(sets::show)),
        sends("/sets/{code}", Staff(ChangeFacts), post(sets::send)),
        sends("/bench-units", Staff(ManageShop), post(sets::units)),
    ]
}

/// For customers with a link; the link is checked by what it opens.
fn customer_rows() -> Vec<Route> {
    use Access::Anyone;
    vec![
        looks("/c/{token}", Anyone, get(customer::read)),
        sends("/c/{token}/sign", Anyone, post(customer::sign)),
        sends("/c/{token}/decline", Anyone, post(customer::decline)),
        sends("/c/{token}/choose", Anyone, post(customer::choose)),
        looks("/c/{token}/receipt", Anyone, get(customer::receipt)),
    ]
}

/// Signing at the counter, and what is printed.
fn paper_rows() -> Vec<Route> {
    use Access::Staff;
    vec![
        looks("/tickets/{number}/sign/{purpose}", Staff(CounterSign), get(counter::read)),
        sends("/tickets/{number}/sign/{purpose}", Staff(CounterSign), post(counter::sign)),
        sends("/tickets/{number}/decline/{purpose}", Staff(CounterSign), post(counter::decline)),
        looks("/tickets/{number}/tag", Staff(ReadTickets), get(tag::show)),
        looks("/tickets/{number}/receipt", Staff(ReadTickets), get(intake_receipt::show)),
        looks("/receipts/{reference}", Staff(ReadTickets), get(receipt::show)),
    ]
}

/// For work on one ticket.
fn ticket_rows() -> Vec<Route> {
    use Access::Staff;
    vec![
        looks("/tickets/{number}", Staff(ReadTickets), get(ticket::show)),
        sends("/tickets/{number}/stage", Staff(MoveStage), post(ticket::moves::send)),
        sends("/tickets/{number}/waits", Staff(ChangeWaits), post(ticket::plans::waits)),
        sends("/tickets/{number}/promise", Staff(ChangePromise), post(ticket::plans::promise)),
        sends("/tickets/{number}/price", Staff(ChangePrice), post(ticket::price::send)),
        looks("/tickets/{number}/clearing", Staff(ReadTickets), get(clearing::show)),
        sends("/tickets/{number}/clearing", Staff(ChangeFacts), post(clearing::send)),
        sends("/tickets/{number}/judge", Staff(ChangeFacts), post(ticket::judge_again::send)),
        looks("/tickets/{number}/aside/{code}", Staff(SetAside), get(ticket::aside::show)),
        sends("/tickets/{number}/aside/{code}", Staff(SetAside), post(ticket::aside::send)),
        sends("/tickets/{number}/aside/{code}/back", Staff(SetAside), post(ticket::aside::bring_back)),
        sends("/tickets/{number}/notes", Staff(WriteNote), post(ticket::notes::send)),
        sends("/tickets/{number}/links", Staff(ManageLinks), post(ticket::links::make)),
        sends("/tickets/{number}/links/{link}/revoke", Staff(ManageLinks), post(ticket::links::revoke)),
        looks("/tickets/{number}/facts/{sheet}", Staff(ChangeFacts), get(facts::show)),
        sends("/tickets/{number}/facts/{sheet}", Staff(ChangeFacts), post(facts::send)),
        sends("/tickets/{number}/facts/{sheet}/look", Staff(ChangeFacts), post(facts::look)),
        looks("/tickets/{number}/next", Staff(ChangeFacts), get(next::show)),
        sends("/tickets/{number}/next", Staff(ChangeFacts), post(next::send)),
        looks("/tickets/{number}/pictures", Staff(ReadTickets), get(pictures::show)),
        looks("/tickets/{number}/steps", Staff(ReadTickets), get(steps::show)),
        looks("/tickets/{number}/steps/{code}", Staff(ReadTickets), get(steps::show_one)),
        sends("/tickets/{number}/steps/{code}", Staff(ChangeFacts), post(steps::send)),
        sends("/tickets/{number}/steps/{code}/look", Staff(ChangeFacts), post(steps::look)),
        looks("/tickets/{number}/what-if", Staff(ChangeFacts), get(what_if::show)),
        sends("/tickets/{number}/what-if", Staff(ChangeFacts), post(what_if::send)),
        sends("/tickets/{number}/what-if/look", Staff(ChangeFacts), post(what_if::look)),
        sends("/tickets/{number}/variants/{nth}/apply", Staff(ChangeFacts), post(what_if::apply)),
        sends("/tickets/{number}/variants/{nth}/withdraw", Staff(ChangeFacts), post(what_if::withdraw)),
        looks("/tickets/{number}/contact", Staff(ChangeContact), get(contact::show)),
        sends("/tickets/{number}/contact", Staff(ChangeContact), post(contact::send)),
        looks("/tickets/{number}/history", Staff(ReadTickets), get(history::show)),
        looks("/tickets/{number}/compare", Staff(ReadTickets), get(compare::show)),
    ]
}

const fn looks(path: &'static str, access: Access, handler: MethodRouter<AppState>) -> Route {
    Route { method: Method::GET, path, access, handler }
}

const fn sends(path: &'static str, access: Access, handler: MethodRouter<AppState>) -> Route {
    Route { method: Method::POST, path, access, handler }
}

/// All pages on this state, guarded; `more` are routes of the program itself, guarded alike.
pub fn router(state: AppState, more: Router) -> Router {
    let mut router = Router::new();
    for Route { path, access, handler, .. } in table() {
        let handler = match access {
            Access::Anyone => handler,
            Access::Staff(action) => handler.route_layer(from_fn_with_state((state.clone(), action), staff_only)),
        };
        router = router.route(path, handler);
    }
    let site = Arc::clone(&state.site);
    guarded(router.with_state(state).merge(more), site)
}
