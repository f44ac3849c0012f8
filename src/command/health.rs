//! Whether the service lives, and whether it can work: for watchdogs.
//!
//! Neither answer says more than that, for anybody may ask.

use std::time::Duration;

use axum::Router;
use axum::extract::State;
use axum::http::{HeaderName, StatusCode, header};
use axum::routing::get;
use sqlx::PgPool;

/// A database that takes longer than this is as good as gone.
const PATIENCE: Duration = Duration::from_secs(1);

type Answer = (StatusCode, [(HeaderName, &'static str); 3], &'static str);

/// `/healthz` says 200 while the program runs; `/readyz` says 200 while the
/// database answers as well, and 503 otherwise.
pub fn routes(pool: PgPool) -> Router {
    Router::new().route("/healthz", get(healthz)).route("/readyz", get(readyz)).with_state(pool)
}

async fn healthz() -> Answer {
    answer(StatusCode::OK, "alive\n")
}

async fn readyz(State(pool): State<PgPool>) -> Answer {
    let asked = sqlx::query_scalar::<_, i32>("SELECT 1").fetch_one(&pool);
    match tokio::time::timeout(PATIENCE, asked).await {
        Ok(Ok(_)) => answer(StatusCode::OK, "ready\n"),
        Ok(Err(_)) | Err(_) => answer(StatusCode::SERVICE_UNAVAILABLE, "the database does not answer\n"),
    }
}

fn answer(status: StatusCode, text: &'static str) -> Answer {
    let headers = [
        (header::CONTENT_SECURITY_POLICY, "default-src 'none'; frame-ancestors 'none'"),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::CACHE_CONTROL, "no-store"),
    ];
    (status, headers, text)
}
