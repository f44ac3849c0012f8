//! Getting at the database: who may do what, and the schema up to date.

use std::time::{Duration, Instant};

use sqlx::migrate::MigrateError;
use sqlx::postgres::PgConnectOptions;
use sqlx::{Connection, Executor, PgConnection};

use super::MIGRATIONS;

/// The role that cannot rewrite history.
const SERVICE: &str = "endplay_service";
/// A server that starts together with Endplay may need this long.
const PATIENCE: Duration = Duration::from_secs(10);

/// Why the database does not let the service work: a whole sentence with the
/// remedy.
#[derive(Debug, thiserror::Error)]
#[expect(missing_docs, reason = "the sentence of each variant says what its fields are")]
pub enum AccessError {
    /// No server, or it does not let the user in.
    #[error(
        "The database server in {variable} cannot be used: {reason}. \
         Check that it runs, and that the address, the name of the database, the user and the password are right."
    )]
    NoConnection { variable: &'static str, reason: sqlx::Error },

    /// Older than 15.
    #[error("The database server in DATABASE_URL is PostgreSQL {}; Endplay needs 15 or newer.", version / 10_000)]
    TooOld { version: u32 },

    /// The user in the URL may not make the role, and nobody did it before.
    #[error(
        "The user {owner} in DATABASE_URL may not work as endplay_service, the role for the daily work. \
         Have the server's administrator run once: \
         CREATE ROLE endplay_service NOLOGIN; GRANT endplay_service TO \"{owner}\"; ({reason})"
    )]
    NoServiceRole { owner: String, reason: sqlx::Error },

    /// The second user lacks the role.
    #[error(
        "The user {user} in DATABASE_SERVICE_URL lacks the role for the daily work. \
         Run once as the owner: GRANT endplay_service TO \"{user}\";"
    )]
    NotGranted { user: String },

    /// The second user could rewrite history.
    #[error(
        "The user {user} in DATABASE_SERVICE_URL could rewrite history, for it owns the tables or is a superuser. \
         Name an ordinary user of its own there, or leave the variable out."
    )]
    TooMighty { user: String },

    /// The schema was made by a newer program.
    #[error(
        "The database was last used by a newer Endplay (step {step} of its tables is not known here). \
         Nothing was changed. Start that newer version."
    )]
    Newer { step: i64 },

    /// A step of the schema failed.
    #[error("The tables could not be brought up to date; nothing half done was kept: {0}")]
    Migration(MigrateError),
}

/// Brings the schema up to date as its owner.
///
/// # Errors
/// When the owner cannot connect or a step fails.
pub async fn migrate(owner: &PgConnectOptions) -> Result<(), AccessError> {
    let mut connection = connect("DATABASE_URL", owner).await?;
    MIGRATIONS.run_direct(None, &mut connection, false).await.map_err(|error| match error {
        MigrateError::VersionMissing(step) => AccessError::Newer { step },
        other => AccessError::Migration(other),
    })?;
    connection.close().await.ok();
    Ok(())
}

/// Sees to it that a server somebody else looks after has the role for the
/// daily work and that the users in the settings may take it.
///
/// # Errors
/// A sentence with the statement to run where rights are missing.
pub async fn prepare(owner: &PgConnectOptions, service: Option<&PgConnectOptions>) -> Result<(), AccessError> {
    let no_connection = |reason| AccessError::NoConnection { variable: "DATABASE_URL", reason };
    let mut connection = connect("DATABASE_URL", owner).await?;
    if let Some(version) = connection.server_version_num().filter(|v| *v < 150_000) {
        return Err(AccessError::TooOld { version });
    }
    let rights = "SELECT EXISTS (SELECT FROM pg_roles WHERE rolname = 'endplay_service'), \
                  (SELECT rolsuper FROM pg_roles WHERE rolname = current_user)";
    let (exists, mighty): (bool, bool) =
        sqlx::query_as(rights).fetch_one(&mut connection).await.map_err(no_connection)?;
    let missing = |reason| AccessError::NoServiceRole { owner: owner.get_username().into(), reason };
    if !exists {
        connection.execute("CREATE ROLE endplay_service NOLOGIN").await.map_err(missing)?;
    }
    if !mighty && let Err(reason) = connection.execute("GRANT endplay_service TO CURRENT_USER").await {
        // Somebody mightier may have granted it before.
        connection.execute("SET ROLE endplay_service").await.map_err(|_| missing(reason))?;
    }
    connection.close().await.ok();
    match service {
        Some(service) => check(owner, service).await,
        None => Ok(()),
    }
}

/// The owner's connection, but under the role for the daily work from its
/// first statement on.
pub fn under_service_role(owner: &PgConnectOptions) -> PgConnectOptions {
    owner.clone().options([("role", SERVICE)])
}

/// Whether the second user may do the daily work, and no more.
async fn check(owner: &PgConnectOptions, service: &PgConnectOptions) -> Result<(), AccessError> {
    let variable = "DATABASE_SERVICE_URL";
    let user = service.get_username().to_owned();
    let mut connection = connect(variable, service).await?;
    let rights = "SELECT pg_has_role('endplay_service', 'USAGE'), pg_has_role($1::name, 'MEMBER')";
    let (granted, mighty): (bool, bool) = sqlx::query_as(rights)
        .bind(owner.get_username())
        .fetch_one(&mut connection)
        .await
        .map_err(|reason| AccessError::NoConnection { variable, reason })?;
    connection.close().await.ok();
    match (granted, mighty) {
        (_, true) => Err(AccessError::TooMighty { user }),
        (false, _) => Err(AccessError::NotGranted { user }),
        (true, false) => Ok(()),
    }
}

async fn connect(variable: &'static str, options: &PgConnectOptions) -> Result<PgConnection, AccessError> {
    let until = Instant::now() + PATIENCE;
    loop {
        match PgConnection::connect_with(options).await {
            Ok(connection) => return Ok(connection),
            Err(sqlx::Error::Io(reason)) if Instant::now() < until => {
                tracing::info!(%reason, "waiting for the database server");
                tokio::time::sleep(Duration::from_millis(300)).await;
            }
            Err(reason) => return Err(AccessError::NoConnection { variable, reason }),
        }
    }
}
