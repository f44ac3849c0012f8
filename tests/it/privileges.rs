//! What the service's role may not do, and that every key begins with the shop.

use crate::support;
use sqlx::{AssertSqlSafe, Executor, Row};

/// Written once, read for ever.
const HISTORY: [&str; 22] = [
    "bench_unit",
    "instrument",
    "part_choice",
    "reading",
    "selective_set",
    "struck_reading",
    "class_table",
    "class_table_use",
    "house_rule",
    "house_rule_switch",
    "house_rule_trial",
    "revision",
    "event",
    "lever_price",
    "limit_change",
    "rule_fired",
    "signature",
    "gate_override",
    "idempotency",
    "step_log",
    "variant",
    "variant_choice",
];

async fn tables(database: &support::TestDatabase) -> Vec<String> {
    let sql = "SELECT table_name::text FROM information_schema.tables
               WHERE table_schema = 'public' AND table_name <> '_sqlx_migrations' ORDER BY 1";
    let tables: Vec<String> = sqlx::query_scalar(sql).fetch_all(&database.owner_pool).await.expect("the tables");
    assert!(tables.len() >= 16, "{tables:?}");
    tables
}

async fn denied(database: &support::TestDatabase, statement: String) {
    let refused = database.service_pool.execute(AssertSqlSafe(statement.clone())).await;
    let message = refused.expect_err(&statement).to_string();
    assert!(message.contains("permission denied") || message.contains("must be owner"), "{statement}: {message}");
}

#[tokio::test]
async fn the_service_cannot_rewrite_history() {
    let database = support::database().await;
    for table in HISTORY {
        denied(&database, format!("UPDATE {table} SET shop_id = shop_id")).await;
        denied(&database, format!("DELETE FROM {table}")).await;
        denied(&database, format!("TRUNCATE {table} CASCADE")).await;
    }
}

#[tokio::test]
async fn the_service_makes_changes_and_drops_nothing_of_the_schema() {
    let database = support::database().await;
    for table in tables(&database).await {
        denied(&database, format!("DROP TABLE {table} CASCADE")).await;
        denied(&database, format!("ALTER TABLE {table} ADD COLUMN more text")).await;
        denied(&database, format!("TRUNCATE {table} CASCADE")).await;
    }
    denied(&database, "CREATE TABLE mine (a int)".into()).await;
    denied(&database, "CREATE FUNCTION f() RETURNS int LANGUAGE sql AS 'SELECT 1'".into()).await;
    denied(&database, "CREATE SCHEMA mine".into()).await;
}

#[tokio::test]
async fn nothing_happens_behind_the_programs_back() {
    let database = support::database().await;
    let triggers: i64 = sqlx::query_scalar("SELECT count(*) FROM pg_trigger WHERE NOT tgisinternal")
        .fetch_one(&database.owner_pool)
        .await
        .expect("a count");
    assert_eq!(triggers, 0);
}

#[tokio::test]
async fn the_shop_stands_first_in_every_key() {
    let database = support::database().await;
    let sql = "SELECT c.conrelid::regclass::text AS on_table, c.conname::text AS name, c.contype::text AS kind,
                      (SELECT attname::text FROM pg_attribute WHERE attrelid = c.conrelid AND attnum = c.conkey[1]) AS first,
                      (SELECT attname::text FROM pg_attribute WHERE attrelid = c.confrelid AND attnum = c.confkey[1]) AS other
               FROM pg_constraint c JOIN pg_namespace n ON n.oid = c.connamespace
               WHERE n.nspname = 'public' AND c.contype IN ('p', 'u', 'f')
                 AND c.conrelid <> '_sqlx_migrations'::regclass";
    let keys = sqlx::query(sql).fetch_all(&database.owner_pool).await.expect("the keys");
    let mut with_primary_key = Vec::new();
    for key in &keys {
        let (table, name): (String, String) = (key.get("on_table"), key.get("name"));
        assert_eq!(key.get::<String, _>("first"), "shop_id", "{name} on {table}");
        match key.get::<String, _>("kind").as_str() {
            "f" => assert_eq!(key.get::<String, _>("other"), "shop_id", "{name} on {table}"),
            "p" => with_primary_key.push(table),
            _ => {}
        }
    }
    with_primary_key.sort();
    assert_eq!(with_primary_key, tables(&database).await, "every table has a primary key");
    let sql = "SELECT i.indexrelid::regclass::text FROM pg_index i JOIN pg_class c ON c.oid = i.indrelid
               JOIN pg_namespace n ON n.oid = c.relnamespace
               JOIN pg_attribute a ON a.attrelid = i.indexrelid AND a.attnum = 1
               WHERE n.nspname = 'public' AND c.relname <> '_sqlx_migrations' AND a.attname <> 'shop_id'";
    let others: Vec<String> = sqlx::query_scalar(sql).fetch_all(&database.owner_pool).await.expect("the indexes");
    assert!(others.is_empty(), "indexes that do not begin with the shop: {others:?}");
}

#[tokio::test]
async fn every_grant_is_one_somebody_decided_on() {
    let database = support::database().await;
    let sql = "SELECT table_name || ': ' || string_agg(lower(privilege_type::text), ' ' ORDER BY privilege_type)
               FROM information_schema.role_table_grants
               WHERE grantee = 'endplay_service' AND table_schema = 'public' GROUP BY table_name ORDER BY table_name";
    let grants: Vec<String> = sqlx::query_scalar(sql).fetch_all(&database.owner_pool).await.expect("the grants");
    assert_eq!(
        grants,
        [
            "bench_unit: insert select",
            "class_table: insert select",
            "class_table_use: insert select",
            "customer: insert select update",
            "customer_link: insert select update",
            "event: insert select",
            "gate_override: insert select",
            "house_rule: insert select",
            "house_rule_switch: insert select",
            "house_rule_trial: insert select",
            "idempotency: insert select",
            "instrument: insert select",
            "lever_price: insert select",
            "limit_change: insert select",
            "outbox: delete insert select",
            "part_choice: insert select",
            "reading: insert select",
            "revision: insert select",
            "rule_fired: insert select",
            "selective_set: insert select",
            "session: delete insert select update",
            "setup_link: insert select update",
            "shop: insert select update",
            "sign_in_failure: delete insert select update",
            "signature: insert select",
            "staff: insert select update",
            "step_log: insert select",
            "struck_reading: insert select",
            "ticket: insert select update",
            "ticket_search: delete insert select",
            "variant: insert select",
            "variant_choice: insert select",
            "vehicle: insert select update",
        ]
    );
}
