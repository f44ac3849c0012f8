//! From settings to everything the service stands on: the data folder, the
//! port, the database brought up to date, the pool.

use std::io;
use std::net::SocketAddr;
use std::time::Duration;

use sqlx::PgPool;
use sqlx::postgres::PgConnectOptions;
use tokio::net::TcpListener;

use crate::postgres::{self, Durability, Folder, Running, StartError};
use crate::settings::{Database, Settings};
use crate::store::{self, access::AccessError};

/// Why the service does not run: a whole sentence with the remedy.
#[derive(Debug, thiserror::Error)]
#[expect(missing_docs, reason = "the sentence of each variant says what its fields are")]
pub enum Failure {
    /// The private database does not start.
    #[error(transparent)]
    Start(#[from] StartError),

    /// The address cannot be listened on.
    #[error("{}", port_sentence(*listen, reason))]
    Port { listen: SocketAddr, reason: io::Error },

    /// The database does not let the service work.
    #[error(transparent)]
    Access(#[from] AccessError),

    /// Whether the shop is set up could not be found out.
    #[error("{0}")]
    FirstStart(#[from] crate::service::Failure),

    /// The private database ended while the service ran.
    #[error("{0}")]
    DatabaseGone(String),

    /// The operating system refuses something basic.
    #[error("The operating system did not give Endplay what it needs: {0}.")]
    System(#[from] io::Error),
}

/// What the service stands on.
#[derive(Debug)]
pub struct Site {
    /// Where requests come in.
    pub listener: TcpListener,
    /// The database, under the role of the daily work.
    pub pool: PgPool,
    /// The start of every link, without a slash at its end.
    pub public_url: String,
    /// The private server, where there is one.
    pub private: Option<Running>,
}

impl Site {
    /// Opens everything in the order in which a failure does least harm: the
    /// folder, the port, then the database.
    ///
    /// # Errors
    /// A sentence for each way it can fail.
    pub async fn open(settings: &Settings, durability: Durability) -> Result<Self, Failure> {
        match &settings.database {
            Database::Private { folder, bin, path } => {
                let folder = Folder::open(folder)?;
                let listener = listen(settings.listen).await?;
                let private = postgres::start(folder, bin.clone(), path.clone(), durability).await?;
                let (owner, service) = (private.owner(), private.service());
                let opened = Self::finish(settings, listener, &owner, service).await;
                match opened {
                    Ok(site) => Ok(Self { private: Some(private), ..site }),
                    Err(failure) => {
                        private.stop().await;
                        Err(failure)
                    }
                }
            }
            Database::Server { owner, service } => {
                let listener = listen(settings.listen).await?;
                store::access::prepare(owner, service.as_deref()).await?;
                let service = service.as_deref().map_or_else(|| store::access::under_service_role(owner), Clone::clone);
                Self::finish(settings, listener, owner, service).await
            }
        }
    }

    async fn finish(
        settings: &Settings,
        listener: TcpListener,
        owner: &PgConnectOptions,
        service: PgConnectOptions,
    ) -> Result<Self, Failure> {
        store::access::migrate(owner).await?;
        let address = listener.local_addr()?;
        Ok(Self {
            listener,
            pool: store::pool::lazy(service),
            public_url: settings.public_url.clone().unwrap_or_else(|| format!("http://{address}")),
            private: None,
        })
    }

    /// Lets everything go again: connections, then the private server.
    pub async fn close(self) {
        close(self.pool, self.private).await;
    }
}

/// Closes the pool and stops the private server, each within its time.
pub async fn close(pool: PgPool, private: Option<Running>) {
    tokio::time::timeout(Duration::from_secs(1), pool.close()).await.ok();
    if let Some(private) = private {
        private.stop().await;
    }
}

async fn listen(listen: SocketAddr) -> Result<TcpListener, Failure> {
    TcpListener::bind(listen).await.map_err(|reason| Failure::Port { listen, reason })
}

fn port_sentence(listen: SocketAddr, reason: &io::Error) -> String {
    let (port, other) = (listen.port(), SocketAddr::new(listen.ip(), listen.port().wrapping_add(1).max(1024)));
    match reason.kind() {
        io::ErrorKind::AddrInUse => format!(
            "The port {port} on {} is already taken by another program. \
             Stop that program, or choose another port in ENDPLAY_LISTEN, for example ENDPLAY_LISTEN={other}",
            listen.ip()
        ),
        io::ErrorKind::PermissionDenied => format!(
            "This user may not use the port {port}; ports below 1024 are the administrator's. \
             Choose a higher one in ENDPLAY_LISTEN, for example ENDPLAY_LISTEN={}",
            SocketAddr::new(listen.ip(), 8080)
        ),
        io::ErrorKind::AddrNotAvailable => format!(
            "The address {} does not belong to this machine. \
             Name one of its own in ENDPLAY_LISTEN; 127.0.0.1:{port} is this machine alone, \
             0.0.0.0:{port} every network it is on.",
            listen.ip()
        ),
        _ => format!("Endplay cannot listen on {listen} (set in ENDPLAY_LISTEN): {reason}."),
    }
}
