//! The database server that Endplay brings up itself where no other is named.
//!
//! The server lives in the data folder and talks through a socket that only
//! the user who runs Endplay (and root) can reach; it never listens on a
//! network. [`Folder::open`] takes the folder, [`start`] the rest.

mod account;
mod cluster;
mod config;
mod error;
mod folder;
pub mod programs;
mod roles;
mod server;
mod stray;

use std::path::{Path, PathBuf};

use sqlx::postgres::PgConnectOptions;
use tokio::sync::watch;

pub use account::Account;
pub use cluster::{Cluster, Durability};
pub use error::StartError;
pub use folder::Folder;
pub use programs::Programs;
pub use roles::make_roles;
pub use server::{Health, Ready, Server, wait_until_ready};
pub use stray::clear as stop_left_over;

/// The oldest major version of PostgreSQL that serves.
pub const OLDEST_MAJOR: u32 = 15;
/// The role that made the cluster; used only to make the other two.
pub const ADMIN: &str = "endplay_admin";
/// The role that owns the schema and migrates it.
pub const OWNER: &str = "endplay_owner";
/// The role of the daily work, which cannot rewrite history.
pub const SERVICE: &str = "endplay_service";
/// The one database.
pub const DATABASE: &str = "endplay";

/// A private server that runs, with the lock on its folder.
#[derive(Debug)]
pub struct Running {
    // In this order: the server has ended before the lock is let go.
    server: Server,
    cluster: Cluster,
    _folder: Folder,
}

/// Starts the private server in `folder` and sees to the roles and the
/// database. `bin` is the folder of the server programs when the settings name
/// one; otherwise the machine and the search path `path` are looked through.
///
/// # Errors
/// A sentence for each way it can fail; nothing in the folder is damaged.
pub async fn start(
    folder: Folder,
    bin: Option<PathBuf>,
    path: String,
    durability: Durability,
) -> Result<Running, StartError> {
    let work = tokio::task::spawn_blocking(move || {
        let places = bin.map_or_else(|| programs::usual_places(&path), |bin| vec![bin]);
        let cluster = Cluster::prepare(&folder, &programs::find(&places)?, durability)?;
        let server = Server::start(cluster.clone())?;
        Ok::<_, StartError>(Running { server, cluster, _folder: folder })
    });
    let running = match work.await {
        Ok(outcome) => outcome?,
        Err(panic) => std::panic::resume_unwind(panic.into_panic()),
    };
    roles::make(&running.cluster).await?;
    Ok(running)
}

impl Running {
    /// How to connect as the role that owns the schema.
    pub fn owner(&self) -> PgConnectOptions {
        self.cluster.options(OWNER, DATABASE)
    }

    /// How to connect as the role of the daily work.
    pub fn service(&self) -> PgConnectOptions {
        self.cluster.options(SERVICE, DATABASE)
    }

    /// How the server is, now and later.
    pub fn health(&self) -> watch::Receiver<Health> {
        self.server.health()
    }

    /// Where the server writes about itself.
    pub fn log(&self) -> &Path {
        self.cluster.log()
    }

    /// Stops the server within a few seconds and lets the folder go.
    pub async fn stop(self) {
        tokio::task::spawn_blocking(move || drop(self)).await.ok();
    }
}
