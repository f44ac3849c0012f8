//! The database as the service finds it: pool, roles, and the tests' own server.

mod support;

use endplay::store;
use sqlx::{Executor, PgPool};

async fn one(pool: &PgPool) -> i32 {
    sqlx::query_scalar("SELECT 1").fetch_one(pool).await.expect("the database answers")
}

#[tokio::test]
async fn two_tests_never_see_each_other() {
    let (a, b) = (support::database().await, support::database().await);
    a.owner_pool.execute("CREATE TABLE only_here ()").await.expect("the owner may");
    assert_ne!(a.name, b.name);
    assert!(b.owner_pool.execute("SELECT FROM only_here").await.is_err(), "b has no such table");
}

#[tokio::test]
async fn the_service_makes_no_tables() {
    let database = support::database().await;
    assert_eq!(one(&database.service_pool).await, 1);
    let refused = database.service_pool.execute("CREATE TABLE mine ()").await.expect_err("the service may not");
    assert!(refused.to_string().contains("permission denied"), "{refused}");
}

#[tokio::test]
async fn a_connection_that_comes_back_inside_a_transaction_is_not_handed_on() {
    let database = support::database().await;
    let pool = store::pool::sized(1).connect_lazy_with(database.service.clone());
    let backend = "SELECT pg_backend_pid()";

    let first: i32 = sqlx::query_scalar(backend).fetch_one(&pool).await.expect("the database answers");
    let again: i32 = sqlx::query_scalar(backend).fetch_one(&pool).await.expect("the database answers");
    assert_eq!(first, again, "a clean connection is used again");

    // What a request dropped while it waits for BEGIN leaves: a transaction the library does not count.
    let mut connection = pool.acquire().await.expect("a connection");
    connection.execute("BEGIN").await.expect("the database answers");
    drop(connection);
    let next: i32 = sqlx::query_scalar(backend).fetch_one(&pool).await.expect("the database answers");
    assert_ne!(first, next, "the connection was thrown away");
}

#[tokio::test]
async fn requests_dropped_while_they_begin_leave_no_transaction_behind() {
    let database = support::database().await;
    let pool = store::pool::sized(1).connect_lazy_with(database.service.clone());
    for patience in 0..200 {
        let hang_up = async {
            for _ in 0..patience {
                tokio::task::yield_now().await;
            }
        };
        tokio::select! { biased; begun = pool.begin() => drop(begun), () = hang_up => {} }
        // Outside a transaction each statement is one of its own, with a number of its own.
        let mut next = pool.acquire().await.expect("a connection");
        let number = "SELECT pg_current_xact_id()::text";
        let first: String = sqlx::query_scalar(number).fetch_one(&mut *next).await.expect("an answer");
        let second: String = sqlx::query_scalar(number).fetch_one(&mut *next).await.expect("an answer");
        assert_ne!(first, second, "after {patience} turns, both statements ran inside somebody else's transaction");
    }
}
