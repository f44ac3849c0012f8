//! Under which name the shop is reached.

use crate::service::Service;
use axum::http::Uri;
use std::net::IpAddr;
use std::sync::Arc;

/// What handlers work with.
#[derive(Clone)]
pub struct AppState {
    /// Everything people can do.
    pub service: Service,
    /// Under which name the shop is reached.
    pub site: Arc<Site>,
}

impl AppState {
    /// The state of a site.
    pub fn new(service: Service, public_url: &str) -> Self {
        Self { service, site: Arc::new(Site::new(public_url)) }
    }
}

/// The address people use, and what follows from it.
#[derive(Debug)]
pub struct Site {
    public_url: String,
    host: String,
}

impl Site {
    /// A site reached at this address (`https://shop.example`, without a slash at its end).
    pub fn new(public_url: &str) -> Self {
        let public_url = public_url.trim_end_matches('/').to_owned();
        let host = public_url.parse::<Uri>().ok().and_then(|uri| uri.host().map(str::to_lowercase)).unwrap_or_default();
        Self { public_url, host }
    }

    /// Does everything travel encrypted?
    pub fn encrypted(&self) -> bool {
        self.public_url.starts_with("https://")
    }

    /// An address to print or send. Made from the settings, never from what a request claims.
    pub fn link(&self, path: &str) -> String {
        format!("{}{path}", self.public_url)
    }

    /// May a request name this host?
    ///
    /// The shop's own name, this machine, or a bare network address: a foreign page can make its own name point
    /// at the shop's machine, but it cannot make a bare address its own.
    pub fn answers_to(&self, host: &str) -> bool {
        let name = without_port(host).to_lowercase();
        let bare = name.trim_start_matches('[').trim_end_matches(']');
        name == self.host || name == "localhost" || bare.parse::<IpAddr>().is_ok()
    }

    /// Is this origin the page's own, for a request to this host?
    pub fn is_own_origin(&self, origin: &str, host: &str) -> bool {
        let own = |scheme: &str| origin.strip_prefix(scheme).is_some_and(|rest| rest.eq_ignore_ascii_case(host));
        own("https://") || (own("http://") && (!self.encrypted() || is_this_machine(host)))
    }
}

fn is_this_machine(host: &str) -> bool {
    matches!(without_port(host), "localhost" | "127.0.0.1" | "[::1]")
}

fn without_port(host: &str) -> &str {
    match host.rsplit_once(':') {
        Some((name, port)) if port.bytes().all(|byte| byte.is_ascii_digit()) && !name.ends_with(':') => name,
        _ => host,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_own_names_and_bare_addresses_are_answered() {
        let site = Site::new("https://shop.example/");
        for host in ["shop.example", "SHOP.example:443", "localhost:8080", "127.0.0.1", "192.168.1.20:8080", "[::1]:80"]
        {
            assert!(site.answers_to(host), "{host}");
        }
        for host in ["evil.example", "shop.example.evil.example", "", "127.0.0.1.evil.example", "localhost.evil"] {
            assert!(!site.answers_to(host), "{host}");
        }
    }

    #[test]
    fn an_origin_is_own_only_with_the_same_host_port_and_scheme() {
        let site = Site::new("https://shop.example");
        assert!(site.is_own_origin("https://shop.example", "shop.example"));
        assert!(!site.is_own_origin("http://shop.example", "shop.example"));
        assert!(!site.is_own_origin("https://shop.example.evil", "shop.example"));
        assert!(!site.is_own_origin("null", "shop.example"));
        let local = Site::new("http://127.0.0.1:8080");
        assert!(local.is_own_origin("http://127.0.0.1:8080", "127.0.0.1:8080"));
        assert!(!local.is_own_origin("http://127.0.0.1:9090", "127.0.0.1:8080"));
    }

    #[test]
    fn links_start_with_the_settings_address() {
        assert_eq!(Site::new("https://shop.example/").link("/tickets/7"), "https://shop.example/tickets/7");
    }
}
