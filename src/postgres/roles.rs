//! The two roles and the database, made on the first start.

use sqlx::{Connection, Executor, PgConnection};

use super::{ADMIN, Cluster};

/// Makes the roles `endplay_owner` (owns the schema and migrates it) and
/// `endplay_service` (does the daily work), and the database between them;
/// what exists is left alone.
///
/// # Errors
/// When the server does not take the statements.
pub async fn make(cluster: &Cluster) -> Result<(), sqlx::Error> {
    let mut admin = PgConnection::connect_with(&cluster.options(ADMIN, "postgres")).await?;
    let finished = "SELECT EXISTS (SELECT FROM pg_database WHERE datname = 'endplay')";
    if !sqlx::query_scalar::<_, bool>(finished).fetch_one(&mut admin).await? {
        make_roles(&mut admin).await?;
        // Last, for it is what says that the work was finished.
        admin.execute("CREATE DATABASE endplay OWNER endplay_owner").await?;
    }
    admin.close().await
}

/// Makes the two roles where they are missing.
///
/// # Errors
/// When the server does not take the statements.
pub async fn make_roles(admin: &mut PgConnection) -> Result<(), sqlx::Error> {
    admin
        .execute(
            "DO $$ BEGIN
               IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'endplay_owner') THEN
                 CREATE ROLE endplay_owner LOGIN;
               END IF;
               IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'endplay_service') THEN
                 CREATE ROLE endplay_service LOGIN;
               END IF;
             END $$",
        )
        .await?;
    Ok(())
}
