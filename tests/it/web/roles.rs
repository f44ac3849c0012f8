//! Who may ask for what: every address of the table, every role.

use super::client::Shop;
use axum::http::{Method, StatusCode};
use endplay::ticket::Role;
use endplay::web::table;

/// Who gets past the guard: owner, desk, technician, nobody.
const MATRIX: &[(&str, &str, [bool; 4])] = &[
    ("GET", "/static/{name}", [true; 4]),
    ("GET", "/sign-in", [true; 4]),
    ("POST", "/sign-in", [true; 4]),
    ("GET", "/setup/{pass}", [true; 4]),
    ("POST", "/setup/{pass}", [true; 4]),
    ("GET", "/", STAFF),
    ("POST", "/sign-out", STAFF),
    ("GET", "/me/password", STAFF),
    ("POST", "/me/password", STAFF),
    ("GET", "/staff", OWNER),
    ("POST", "/staff", OWNER),
    ("POST", "/staff/{id}/off", OWNER),
    ("GET", "/house-rules", STAFF),
    ("POST", "/house-rules", OWNER),
    ("GET", "/house-rules/new", OWNER),
    ("POST", "/house-rules/look", OWNER),
    ("GET", "/house-rules/{nth}", STAFF),
    ("POST", "/house-rules/{nth}", OWNER),
    ("GET", "/house-rules/{nth}/edit", OWNER),
    ("POST", "/house-rules/{nth}/try", OWNER),
    ("POST", "/house-rules/{nth}/switch", OWNER),
    ("GET", "/intake", STAFF),
    ("POST", "/intake", STAFF),
    ("GET", "/tickets/{number}/intake", STAFF),
    ("POST", "/tickets/{number}/intake", STAFF),
    ("POST", "/tickets/{number}/look", STAFF),
    ("GET", "/tickets/{number}/intake/done", STAFF),
    ("GET", "/tickets/{number}", STAFF),
    ("POST", "/tickets/{number}/stage", STAFF),
    ("POST", "/tickets/{number}/waits", STAFF),
    ("POST", "/tickets/{number}/promise", DESK),
    ("POST", "/tickets/{number}/price", DESK),
    ("POST", "/tickets/{number}/judge", STAFF),
    ("GET", "/tickets/{number}/aside/{code}", DESK),
    ("POST", "/tickets/{number}/aside/{code}", DESK),
    ("POST", "/tickets/{number}/aside/{code}/back", DESK),
    ("POST", "/tickets/{number}/notes", STAFF),
    ("POST", "/tickets/{number}/links", DESK),
    ("POST", "/tickets/{number}/links/{link}/revoke", DESK),
    ("GET", "/tickets/{number}/facts/{sheet}", STAFF),
    ("POST", "/tickets/{number}/facts/{sheet}", STAFF),
    ("POST", "/tickets/{number}/facts/{sheet}/look", STAFF),
    ("GET", "/tickets/{number}/next", STAFF),
    ("POST", "/tickets/{number}/next", STAFF),
    ("GET", "/tickets/{number}/pictures", STAFF),
    ("GET", "/tickets/{number}/steps", STAFF),
    ("GET", "/tickets/{number}/steps/{code}", STAFF),
    ("POST", "/tickets/{number}/steps/{code}", STAFF),
    ("POST", "/tickets/{number}/steps/{code}/look", STAFF),
    ("GET", "/tickets/{number}/what-if", STAFF),
    ("POST", "/tickets/{number}/what-if", STAFF),
    ("POST", "/tickets/{number}/what-if/look", STAFF),
    ("POST", "/tickets/{number}/variants/{nth}/apply", STAFF),
    ("POST", "/tickets/{number}/variants/{nth}/withdraw", STAFF),
    ("GET", "/tickets/{number}/contact", DESK),
    ("POST", "/tickets/{number}/contact", DESK),
    ("GET", "/tickets/{number}/history", STAFF),
    ("GET", "/tickets/{number}/compare", STAFF),
    ("GET", "/tickets/{number}/sign/{purpose}", DESK),
    ("POST", "/tickets/{number}/sign/{purpose}", DESK),
    ("POST", "/tickets/{number}/decline/{purpose}", DESK),
    ("GET", "/tickets/{number}/tag", STAFF),
    ("GET", "/tickets/{number}/receipt", STAFF),
    ("GET", "/receipts/{reference}", STAFF),
    ("GET", "/c/{token}", [true; 4]),
    ("POST", "/c/{token}/sign", [true; 4]),
    ("POST", "/c/{token}/decline", [true; 4]),
    ("POST", "/c/{token}/choose", [true; 4]),
    ("GET", "/c/{token}/receipt", [true; 4]),
    ("GET", "/class-tables", STAFF),
    ("POST", "/class-tables", DESK),
    ("GET", "/class-tables/new", DESK),
    ("GET", "/class-tables/{id}", STAFF),
    ("GET", "/tickets/{number}/class-table", STAFF),
    ("POST", "/tickets/{number}/class-table", STAFF),
    ("GET", "/rules", STAFF),
    ("GET", "/rules/{code}", STAFF),
    ("GET", "/sums", [true; 4]),
    ("GET", "/sums/{name}", [true; 4]),
    ("POST", "/sums/{name}", STAFF),
    ("GET", "/tickets/{number}/sums", STAFF),
    ("GET", "/tickets/{number}/sums/{name}", STAFF),
    ("GET", "/limits", STAFF),
    ("GET", "/limits/{name}", STAFF),
    ("POST", "/limits/{name}", OWNER),
    ("GET", "/levers", STAFF),
    ("GET", "/levers/{code}", STAFF),
    ("POST", "/levers/{code}", OWNER),
    ("GET", "/tickets/{number}/clearing", STAFF),
    ("POST", "/tickets/{number}/clearing", STAFF),
    ("GET", "/tickets/{number}/sheet", STAFF),
    ("GET", "/tickets/{number}/sheet/{name}", STAFF),
    ("POST", "/tickets/{number}/sheet/{name}", STAFF),
    ("POST", "/tickets/{number}/sheet/{name}/look", STAFF),
    ("GET", "/tickets/{number}/sheet/{name}/strike/{turn}", STAFF),
    ("POST", "/tickets/{number}/sheet/{name}/strike/{turn}", STAFF),
    ("GET", "/instruments", STAFF),
    ("POST", "/instruments", STAFF),
    ("GET", "/instruments/{nth}", STAFF),
    ("POST", "/instruments/{nth}", STAFF),
    ("GET", "/sets", STAFF),
    ("GET", "/sets/{code}", STAFF),
    ("POST", "/sets/{code}", STAFF),
    ("POST", "/bench-units", OWNER),
    ("GET", "/shop", OWNER),
    ("POST", "/shop", OWNER),
];

const STAFF: [bool; 4] = [true, true, true, false];
const DESK: [bool; 4] = [true, true, false, false];
const OWNER: [bool; 4] = [true, false, false, false];

#[test]
fn every_address_has_its_row() {
    let mut wanted: Vec<_> = MATRIX.iter().map(|(method, path, _)| format!("{method} {path}")).collect();
    let mut found: Vec<_> = table().iter().map(|route| format!("{} {}", route.method, route.path)).collect();
    wanted.sort();
    found.sort();
    assert_eq!(found, wanted, "left: the routes there are; right: the rows of this table");
}

#[tokio::test]
async fn every_role_gets_where_its_row_says_and_nowhere_else() {
    let shop = Shop::staffed().await;
    for (method, path, allowed) in MATRIX {
        for (place, who) in [Some(Role::Owner), Some(Role::Desk), Some(Role::Technician), None].into_iter().enumerate()
        {
            // A new session each time: one of the addresses ends it.
            let client = match who {
                Some(role) => shop.client(role).await,
                None => shop.nobody(),
            };
            let path = super::guards::filled(path);
            let looks = *method == Method::GET.as_str();
            let page = if looks { client.get(&path).await } else { client.post(&path, &[]).await };
            let cell = format!("{method} {path} by {who:?}: {}", page.status);
            let way_in =
                page.location().is_some_and(|to| to.starts_with("/sign-in?next=") || (path == "/" && to == "/sign-in"));
            match (allowed[place], who) {
                (true, _) => {
                    assert!(page.status != StatusCode::FORBIDDEN && page.status != StatusCode::UNAUTHORIZED, "{cell}");
                    assert!(!way_in, "{cell}");
                }
                (false, Some(_)) => {
                    assert_eq!(page.status, StatusCode::FORBIDDEN, "{cell}");
                    page.assert_says("Ask: ");
                }
                (false, None) if looks => assert!(way_in, "{cell}"),
                (false, None) => assert_eq!(page.status, StatusCode::UNAUTHORIZED, "{cell}"),
            }
        }
    }
}

#[tokio::test]
async fn an_attempt_at_somebody_elses_work_is_kept_for_the_owner() {
    let shop = Shop::staffed().await;
    let tech = shop.client(Role::Technician).await;
    let denied = "SELECT count(*) FROM event WHERE happened->>'kind' = 'denied' AND by_name = 'Terry Tech'";
    let count =
        async || sqlx::query_scalar::<_, i64>(denied).fetch_one(&shop.database.owner_pool).await.expect("a count");
    assert_eq!(tech.get("/staff").await.status, StatusCode::FORBIDDEN);
    assert_eq!(count().await, 0, "looking leaves no mark");
    assert_eq!(tech.post("/staff", &[("name", "Robin Bench")]).await.status, StatusCode::FORBIDDEN);
    assert_eq!(count().await, 1);
}
