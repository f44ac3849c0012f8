//! The pool of connections every request draws from.

use std::time::Duration;

use sqlx::postgres::{PgConnectOptions, PgPoolOptions};
use sqlx::{Connection, Error, PgConnection, PgPool};

/// On two cores four to eight keep the database busy; more of them only queue there.
const CONNECTIONS: u32 = 8;
/// A request waits this long for a connection before it is told to try again.
const PATIENCE: Duration = Duration::from_secs(3);

/// A pool that connects on first use.
pub fn lazy(options: PgConnectOptions) -> PgPool {
    sized(CONNECTIONS).connect_lazy_with(options)
}

/// The settings of a pool with `connections` connections.
pub fn sized(connections: u32) -> PgPoolOptions {
    PgPoolOptions::new()
        .max_connections(connections)
        .acquire_timeout(PATIENCE)
        // A lost connection shows at its next statement, and writes are retried; asking first costs a round trip each.
        .test_before_acquire(false)
        .after_release(|connection, _| Box::pin(is_clean(connection)))
}

/// Whether a connection that comes back may be handed on.
///
/// A request that is dropped while it waits for BEGIN leaves a transaction
/// open that the library does not count. The next user of the connection would
/// work inside it, and what it believes committed would be rolled back one day.
/// An empty statement is the cheapest way to have the server say how the
/// connection stands: `begin_with` succeeds only if it is inside a transaction.
async fn is_clean(connection: &mut PgConnection) -> Result<bool, Error> {
    match connection.begin_with("").await {
        Err(Error::BeginFailed) => Ok(true),
        Ok(_) => Ok(false),
        Err(error) => Err(error),
    }
}
