//! `endplay demo`: the web service on a throw-away database, filled with the invented shop.

use super::say;
use super::serve::{Orders, pages, until_stopped};
use super::site::{Failure, Site};
use crate::demo::{self, DESK, Demo, OWNER, PASSWORD, TECHNICIAN};
use crate::postgres::Durability;
use crate::service::{self, Service};
use crate::settings::{Database, Settings};
use crate::ticket::Purpose;
use jiff::Timestamp;
use std::path::{Path, PathBuf};

/// Runs the invented shop until it is told to stop, then throws it away.
///
/// # Errors
/// A sentence for each way it can fail.
pub fn run(mut settings: Settings) -> Result<(), Failure> {
    let folder = Folder::beside_nothing();
    settings.database = match settings.database {
        Database::Private { bin, path, .. } => Database::Private { folder: folder.0.clone(), bin, path },
        // Invented people have no place on a server that may hold real ones.
        Database::Server { .. } => {
            Database::Private { folder: folder.0.clone(), bin: None, path: std::env::var("PATH").unwrap_or_default() }
        }
    };
    tokio::runtime::Runtime::new()?.block_on(async {
        let mut orders = Orders::listen()?;
        let Some(site) = orders.unless_stopped(Site::open(&settings, Durability::ThrowAway)).await? else {
            return Ok(());
        };
        let service = Service::new(site.pool.clone(), service::judge);
        match demo::fill(service.clone(), Timestamp::now()).await {
            Ok(filled) => welcome(&filled, &site.public_url),
            Err(failure) => {
                site.close().await;
                return Err(failure.into());
            }
        }
        until_stopped(site, service, &mut orders, pages).await
    })
}

fn welcome(demo: &Demo, public_url: &str) {
    say(&format!("An invented shop with {} tickets. Nothing you do here is kept.", demo.tickets.len()));
    say("");
    say(&format!("Sign in as  {OWNER} (owner), {DESK} (front desk) or {TECHNICIAN} (technician)"));
    say(&format!("Password    {PASSWORD}"));
    say("");
    for (ticket, purpose, pass) in &demo.links {
        let paper = match purpose {
            Purpose::Intake => "authorises the teardown",
            Purpose::Build => "reads and signs the build",
        };
        say(&format!("The customer of ticket {ticket} {paper} at {public_url}/c/{pass}"));
    }
    say("");
}

/// The demo's data folder; it goes when the demo goes.
struct Folder(PathBuf);

impl Folder {
    /// A folder with a name nobody else has. `/tmp` can be entered by the unprivileged user that the
    /// database runs as; a folder of root's own could not.
    fn beside_nothing() -> Self {
        Self(Path::new("/tmp").join(format!("endplay-demo-{}", uuid::Uuid::now_v7().simple())))
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        if let Err(error) = std::fs::remove_dir_all(&self.0)
            && error.kind() != std::io::ErrorKind::NotFound
        {
            tracing::warn!("the demo's folder {} is left behind: {error}", self.0.display());
        }
    }
}
