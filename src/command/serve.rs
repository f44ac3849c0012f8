//! `endplay serve`: the web service, from its start to its ordered end.

use std::fmt::Write as _;
use std::future::IntoFuture as _;
use std::net::SocketAddr;
use std::time::Duration;

use axum::Router;
use tokio::signal::unix::{Signal, SignalKind, signal};
use tokio::sync::watch;

use super::site::{self, Failure, Site};
use super::{health, say};
use crate::postgres::{Durability, Health};
use crate::service::{self, FirstStart, Service};
use crate::settings::{Database, Settings};
use crate::web::{self, AppState};

/// How long open requests may take to finish after the order to stop. With the
/// time the pool and the private server take, the whole stop stays under 10 s.
const DRAIN: Duration = Duration::from_secs(4);
/// A start that is told to stop half way is waited for this long.
const HALF_WAY: Duration = Duration::from_secs(8);

/// What the web service is built from.
#[derive(Clone)]
pub struct Ground {
    /// Everything people can do.
    pub service: Service,
    /// The start of every link, without a slash at its end.
    pub public_url: String,
    /// Turns true when the service is told to stop: long answers end then.
    pub stopping: watch::Receiver<bool>,
}

/// Runs the service until it is told to stop.
///
/// # Errors
/// A sentence for each way it can fail.
pub fn run(settings: Settings) -> Result<(), Failure> {
    tokio::runtime::Runtime::new()?.block_on(async {
        let mut orders = Orders::listen()?;
        let Some(site) = orders.unless_stopped(Site::open(&settings, Durability::Lasting)).await? else {
            return Ok(());
        };
        let service = Service::new(site.pool.clone(), service::judge);
        if let Err(failure) = greet(&service, &site.public_url).await {
            site.close().await;
            return Err(failure);
        }
        until_stopped(site, service, &mut orders, pages).await
    })
}

/// The pages on this ground; the watchdogs' addresses stand behind the same guard.
pub fn pages(ground: Ground, watchdogs: Router) -> Router {
    web::router(AppState::new(ground.service, &ground.public_url), watchdogs)
}

/// Prints the link for the owner while nobody has set the shop up.
async fn greet(service: &Service, public_url: &str) -> Result<(), Failure> {
    if let FirstStart::SetUpWith(pass) = service.first_start().await? {
        say("This shop is not set up yet. The owner does that here; the link works once, for 24 hours:");
        say(&format!("{public_url}/setup/{pass}"));
    }
    Ok(())
}

/// Serves `pages` of `service` on `site` until the order to stop comes or the private
/// database is gone for good; then closes everything.
///
/// # Errors
/// When the private database is gone.
pub async fn until_stopped(
    site: Site,
    service: Service,
    orders: &mut Orders,
    pages: impl FnOnce(Ground, Router) -> Router,
) -> Result<(), Failure> {
    let Site { listener, pool, public_url, private } = site;
    let address = listener.local_addr()?;
    let (stop, stopping) = watch::channel(false);
    let ground = Ground { service, public_url: public_url.clone(), stopping: stopping.clone() };
    let app = pages(ground, health::routes(pool.clone()));

    let mut told = stopping;
    let server = axum::serve(listener, app.into_make_service_with_connect_info::<SocketAddr>()).with_graceful_shutdown(
        async move {
            told.wait_for(|stop| *stop).await.ok();
        },
    );
    let server = tokio::spawn(server.into_future());
    announce(address, &public_url);

    let gone = async {
        match &private {
            Some(private) => given_up(private.health()).await,
            None => std::future::pending().await,
        }
    };
    let outcome = tokio::select! {
        () = orders.next() => Ok(()),
        sentence = gone => Err(Failure::DatabaseGone(sentence)),
    };
    tracing::info!("stopping");
    stop.send_replace(true);
    tokio::select! {
        drained = tokio::time::timeout(DRAIN, server) => {
            if drained.is_err() {
                tracing::warn!("some requests did not end in time and were cut off");
            }
        }
        () = orders.next() => tracing::warn!("told to stop a second time; open requests were cut off"),
    }
    site::close(pool, private).await;
    outcome
}

/// The orders to stop that come from outside: SIGTERM and SIGINT (Ctrl-C).
#[derive(Debug)]
pub struct Orders {
    terminate: Signal,
    interrupt: Signal,
}

impl Orders {
    /// Listens for orders from now on.
    ///
    /// # Errors
    /// When the operating system has no room for it.
    pub fn listen() -> Result<Self, Failure> {
        Ok(Self { terminate: signal(SignalKind::terminate())?, interrupt: signal(SignalKind::interrupt())? })
    }

    /// Waits for the next order.
    pub async fn next(&mut self) {
        tokio::select! {
            _ = self.terminate.recv() => {}
            _ = self.interrupt.recv() => {}
        }
    }

    /// Waits for `opening`. If the order to stop comes first, the opening is
    /// still waited for, closed again, and nothing is given.
    ///
    /// # Errors
    /// What `opening` fails with.
    pub async fn unless_stopped(
        &mut self,
        opening: impl Future<Output = Result<Site, Failure>>,
    ) -> Result<Option<Site>, Failure> {
        let mut opening = std::pin::pin!(opening);
        tokio::select! {
            site = &mut opening => site.map(Some),
            () = self.next() => {
                if let Ok(Ok(site)) = tokio::time::timeout(HALF_WAY, opening).await {
                    site.close().await;
                }
                Ok(None)
            }
        }
    }
}

/// Waits until the private database is given up, and says why.
async fn given_up(mut health: watch::Receiver<Health>) -> String {
    loop {
        if let Health::GivenUp(sentence) = &*health.borrow_and_update() {
            return sentence.clone();
        }
        if health.changed().await.is_err() {
            return "The thread that looks after the private database ended.".into();
        }
    }
}

fn announce(address: SocketAddr, public_url: &str) {
    say(&format!("Endplay serves on http://{address}"));
    if public_url != format!("http://{address}") {
        say(&format!("People reach it at {public_url}"));
    }
    if !address.ip().is_loopback() && !public_url.starts_with("https://") {
        tracing::warn!(
            "other machines can reach this address without encryption: anybody on that network can read along, \
             passwords included. Put an https proxy in front and name it in ENDPLAY_PUBLIC_URL"
        );
    }
}

/// What the settings came to, a line each, without passwords.
pub fn described(settings: &Settings) -> String {
    let mut text = String::new();
    let database = match &settings.database {
        Database::Private { folder, .. } => format!("a private server in {}", folder.display()),
        Database::Server { owner, service } => {
            let user = service.as_deref().map_or("endplay_service", |s| s.get_username());
            format!("the server {}:{}, daily work as {user}", owner.get_host(), owner.get_port())
        }
    };
    // Writing to a string cannot fail.
    writeln!(text, "Database: {database}").ok();
    writeln!(text, "Listens on: {}", settings.listen).ok();
    let url = settings.public_url.clone().unwrap_or_else(|| format!("http://{}", settings.listen));
    writeln!(text, "Links start with: {url}").ok();
    text
}
