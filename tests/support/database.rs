//! A fresh, migrated database for one test.

use std::sync::OnceLock;
use std::sync::atomic::{AtomicU32, Ordering};

use endplay::postgres::{ADMIN, Cluster, OWNER, SERVICE, make_roles};
use endplay::store;
use sha2::{Digest, Sha256};
use sqlx::postgres::PgConnectOptions;
use sqlx::{AssertSqlSafe, Connection, Executor, PgConnection, PgPool};

/// A database of its own, as it stands after all migrations; removed at the
/// end of the test.
pub struct TestDatabase {
    /// As the role that owns the schema: for arranging what the service may not.
    pub owner_pool: PgPool,
    /// As the role of the daily work: what the service itself uses.
    pub service_pool: PgPool,
    /// How to connect as the owner, for what needs more pools or another program.
    pub owner: PgConnectOptions,
    /// How to connect as the service.
    pub service: PgConnectOptions,
    /// The name of the database.
    pub name: String,
}

/// Makes a fresh database on the server of this test run.
pub async fn database() -> TestDatabase {
    static SERVER: OnceLock<Cluster> = OnceLock::new();
    static NUMBER: AtomicU32 = AtomicU32::new(0);
    let cluster = tokio::task::spawn_blocking(|| SERVER.get_or_init(super::cluster::shared)).await.expect("a server");
    let mut admin = connect(cluster, ADMIN, "postgres").await;
    let template = template(cluster, &mut admin).await;

    let name = format!("test_{}_{}", std::process::id(), NUMBER.fetch_add(1, Ordering::Relaxed));
    run(&mut admin, format!("CREATE DATABASE {name} TEMPLATE {template} STRATEGY FILE_COPY OWNER {OWNER}")).await;
    admin.close().await.expect("the server answers");
    let (owner, service) = (cluster.options(OWNER, &name), cluster.options(SERVICE, &name));
    TestDatabase {
        owner_pool: store::pool::sized(2).connect_lazy_with(owner.clone()),
        service_pool: store::pool::sized(8).connect_lazy_with(service.clone()),
        owner,
        service,
        name,
    }
}

impl TestDatabase {
    /// The address of the database as `role`, for programs that take DATABASE_URL.
    pub fn url(&self, role: &str) -> String {
        let socket = self.service.get_socket().expect("the test server has a socket").display().to_string();
        format!("postgres://{role}@localhost/{}?host={}", self.name, socket.replace('/', "%2F"))
    }

    /// A connection that may do everything on the whole test server.
    pub async fn admin(&self) -> PgConnection {
        let options = self.owner.clone().username(ADMIN);
        PgConnection::connect_with(&options).await.expect("the test server takes connections")
    }
}

impl Drop for TestDatabase {
    fn drop(&mut self) {
        let (name, options) = (self.name.clone(), self.owner.clone().username(ADMIN).database("postgres"));
        // A test's own runtime may be ending; this one is certain.
        let cleaner = std::thread::spawn(move || {
            let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
            runtime.block_on(async {
                if let Ok(mut admin) = PgConnection::connect_with(&options).await {
                    admin.execute(AssertSqlSafe(format!("DROP DATABASE {name} WITH (FORCE)"))).await.ok();
                }
            });
        });
        cleaner.join().ok();
    }
}

/// The migrated database the others are copied from, named by its migrations.
async fn template(cluster: &Cluster, admin: &mut PgConnection) -> String {
    let mut hash = Sha256::new();
    store::MIGRATIONS.iter().for_each(|m| hash.update(&m.checksum));
    let name: String = hash.finalize().iter().take(6).map(|b| format!("{b:02x}")).collect();
    let name = format!("template_{name}");

    // Test processes come at the same time; the first makes it, the others wait.
    admin.execute("SELECT pg_advisory_lock(20)").await.expect("the server answers");
    let there = "SELECT EXISTS (SELECT FROM pg_database WHERE datname = $1 AND datistemplate)";
    let there = sqlx::query_scalar::<_, bool>(there).bind(&name).fetch_one(&mut *admin).await;
    if !there.expect("the server answers") {
        make_roles(admin).await.expect("roles are made");
        run(admin, format!("DROP DATABASE IF EXISTS {name}")).await;
        run(admin, format!("CREATE DATABASE {name} OWNER {OWNER}")).await;
        let mut owner = connect(cluster, OWNER, &name).await;
        store::MIGRATIONS.run_direct(None, &mut owner, false).await.expect("the migrations run");
        owner.close().await.expect("the server answers");
        run(admin, format!("ALTER DATABASE {name} IS_TEMPLATE true")).await;
    }
    admin.execute("SELECT pg_advisory_unlock(20)").await.expect("the server answers");
    name
}

async fn connect(cluster: &Cluster, role: &str, database: &str) -> PgConnection {
    PgConnection::connect_with(&cluster.options(role, database)).await.expect("the test server takes connections")
}

async fn run(admin: &mut PgConnection, statement: String) {
    admin.execute(AssertSqlSafe(statement)).await.expect("the test server obeys");
}
