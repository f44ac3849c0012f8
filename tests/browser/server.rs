//! The shop the browsers visit: the real pages on a database of their own, behind a port of this machine.

use crate::support::{TestDatabase, database};
use axum::Router;
use endplay::demo::{self, DESK, Demo, PASSWORD};
use endplay::service::{Caller, FirstStart, Service, judge};
use endplay::web::{AppState, router};
use jiff::Timestamp;
use std::net::SocketAddr;
use tokio::net::TcpListener;

/// A shop that is open for visitors as long as this lives.
pub struct Shop {
    /// Where its pages start: `http://127.0.0.1:PORT`.
    pub origin: String,
    /// The use cases behind the pages.
    pub service: Service,
    _database: TestDatabase,
}

impl Shop {
    async fn open() -> Self {
        let database = database().await;
        let service = Service::new(database.service_pool.clone(), judge);
        let listener = TcpListener::bind("127.0.0.1:0").await.expect("a free port");
        let origin = format!("http://{}", listener.local_addr().expect("an address"));
        let pages = router(AppState::new(service.clone(), &origin), Router::new());
        let pages = pages.into_make_service_with_connect_info::<SocketAddr>();
        tokio::spawn(async move { axum::serve(listener, pages).await });
        Self { origin, service, _database: database }
    }

    /// The invented shop with its jobs.
    pub async fn full() -> (Self, Demo) {
        let shop = Self::open().await;
        let demo = demo::fill(shop.service.clone(), Timestamp::now()).await.expect("every story can be told");
        (shop, demo)
    }

    /// A shop nobody has set up, and the address where its owner does.
    pub async fn new() -> (Self, String) {
        let shop = Self::open().await;
        let FirstStart::SetUpWith(pass) = shop.service.first_start().await.expect("a first start") else {
            panic!("a new database holds no shop yet")
        };
        (shop, format!("/setup/{pass}"))
    }

    /// Somebody at the desk, for arranging what the pages then show.
    pub async fn desk(&self) -> Caller {
        let shop = self.service.first_shop().await.expect("the database answers").expect("a shop").shop_id;
        self.service.sign_in(shop, DESK, PASSWORD, "the counter").await.expect("signed in").caller
    }
}
