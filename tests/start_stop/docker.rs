//! What the files in docker/ name, held against what the program knows. No
//! container engine runs here.

use std::path::Path;

use endplay::settings::{Database, Settings};
use yaml_rust2::{Yaml, YamlLoader};

use crate::service::Scratch;

fn read(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(name);
    std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

/// The words after `instruction` on each of its lines in the Dockerfile.
fn instructions(instruction: &str) -> Vec<String> {
    let start = format!("{instruction} ");
    read("docker/Dockerfile").lines().filter_map(|l| l.strip_prefix(&start).map(str::to_owned)).collect()
}

fn compose() -> Yaml {
    let mut documents = YamlLoader::load_from_str(&read("docker/compose.yaml")).expect("YAML");
    assert_eq!(documents.len(), 1);
    documents.remove(0)
}

fn text(yaml: &Yaml) -> &str {
    yaml.as_str().unwrap_or_else(|| panic!("text was expected, not {yaml:?}"))
}

/// A variable's value with `${NAME:-default}` and `${NAME:?why}` filled in.
fn filled_in(value: &str) -> String {
    let Some((before, rest)) = value.split_once("${") else { return value.into() };
    let (inside, after) = rest.split_once('}').expect("a closing brace");
    let default = inside.split_once(":-").map_or("secret", |(_, default)| default);
    format!("{before}{default}{}", filled_in(after))
}

fn variables(service: &Yaml) -> Vec<(String, String)> {
    let variables = service["environment"].as_hash().expect("variables");
    variables.iter().map(|(name, value)| (text(name).into(), filled_in(text(value)))).collect()
}

/// The settings as the service finds them in its container.
fn settings() -> Settings {
    let of_image = instructions("ENV").into_iter().filter_map(|line| {
        let (name, value) = line.split_once('=')?;
        Some((name.to_owned(), value.to_owned()))
    });
    // The build alone knows this one.
    let of_image = of_image.filter(|(name, _)| name != "SQLX_OFFLINE");
    let all: Vec<_> = of_image.chain(variables(&compose()["services"]["endplay"])).collect();
    for (name, _) in &all {
        assert!(endplay::settings::VARIABLES.iter().any(|v| v.name == name), "{name} means nothing to the program");
    }
    let (settings, warnings) = Settings::read(all, false).expect("the container's settings are usable");
    assert_eq!(warnings, Vec::<String>::new());
    settings
}

#[test]
fn the_service_listens_on_the_port_everything_else_expects() {
    let listen = settings().listen;
    assert!(listen.ip().is_unspecified(), "inside the container, {listen} is out of the host's reach");
    assert_eq!(instructions("EXPOSE"), [listen.port().to_string()]);

    let compose = compose();
    let ports = compose["services"]["endplay"]["ports"].as_vec().expect("ports");
    assert_eq!(ports.len(), 1);
    let published: Vec<_> = text(&ports[0]).split(':').collect();
    assert_eq!(published.first(), Some(&"127.0.0.1"), "without https, only this machine may reach it");
    assert_eq!(published.last(), Some(&listen.port().to_string().as_str()));
    let public = settings().public_url.expect("links need a start");
    assert!(public.ends_with(&format!(":{}", published[1])), "{public} is not where it is published");
}

#[test]
fn the_health_checks_ask_what_the_service_answers() {
    let scratch = Scratch::new();
    let service = scratch.start();
    let compose = compose();
    let of_compose = compose["services"]["endplay"]["healthcheck"]["test"].as_vec().expect("a check").last();
    let of_image = instructions("HEALTHCHECK").concat();
    let of_image = of_image.rsplit('"').nth(1).expect("an address");
    for address in [text(of_compose.expect("an address")), of_image] {
        let port = settings().listen.port();
        let path = address.strip_prefix(&format!("http://127.0.0.1:{port}")).expect("this very container");
        assert_eq!(path, "/readyz");
        assert_eq!(service.status(path), Some(200));
    }
    service.stop();
}

#[test]
fn the_service_finds_the_database_compose_brings() {
    let compose = compose();
    let Database::Server { owner, service: None } = settings().database else {
        panic!("the container has no server programs of its own");
    };
    let host = owner.get_host();
    let database = &compose["services"][host];
    assert!(!database.is_badvalue(), "no service is called {host}");
    assert!(!compose["services"]["endplay"]["depends_on"][host]["condition"].is_badvalue());
    let given = variables(database);
    let given = |name: &str| given.iter().find(|(n, _)| n == name).map(|(_, v)| v.clone());
    assert_eq!(given("POSTGRES_USER").as_deref(), Some(owner.get_username()));
    assert_eq!(given("POSTGRES_DB").as_deref(), owner.get_database());
    assert_eq!(owner.get_port(), 5432);

    let image = text(&database["image"]);
    let version = image.strip_prefix("postgres:").and_then(|tag| tag.split('-').next()).expect("a version");
    let (major, minor) = version.split_once('.').expect("pinned to the minor version");
    assert!(minor.parse::<u32>().is_ok());
    assert!((endplay::postgres::OLDEST_MAJOR..18).contains(&major.parse().expect("a number")), "18 moved its files");
}

#[test]
fn what_has_to_last_lies_in_named_volumes() {
    let compose = compose();
    let mounts = compose["services"]["database"]["volumes"].as_vec().expect("volumes");
    let (name, place) = text(&mounts[0]).split_once(':').expect("name:place");
    assert_eq!(place, "/var/lib/postgresql/data");
    assert!(compose["volumes"].as_hash().expect("volumes").contains_key(&Yaml::String(name.into())));
}

#[test]
fn the_image_is_built_with_a_compiler_that_is_new_enough_and_stops_in_time() {
    let from = instructions("FROM").into_iter().find(|l| l.starts_with("rust:")).expect("a compiler");
    let minor = |version: &str| version.split('.').nth(1).and_then(|n| n.parse::<u32>().ok()).expect("a version");
    let image = minor(from.trim_start_matches("rust:").split('-').next().expect("a version"));
    assert!(image >= minor(env!("CARGO_PKG_RUST_VERSION")));

    let compose = compose();
    let grace = text(&compose["services"]["endplay"]["stop_grace_period"]);
    let seconds: u32 = grace.strip_suffix('s').and_then(|s| s.parse().ok()).expect("seconds");
    assert!(seconds > 10, "an ordered stop may take ten seconds");
}
