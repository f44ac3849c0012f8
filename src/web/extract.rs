//! What handlers may take from a request besides forms. The bare extractors of axum are banned
//! (`.clippy.toml`): they answer with codes and jargon, these with a page.
#![allow(clippy::disallowed_types)]

use super::failure::Failure;
use axum::extract::{ConnectInfo, FromRequestParts, Path, Query};
use axum::http::request::Parts;
use serde::de::DeserializeOwned;
use std::net::{IpAddr, SocketAddr};

/// The variable parts of the address. What does not fit is a page that does not exist.
pub struct At<T>(pub T);

impl<T: DeserializeOwned + Send, S: Send + Sync> FromRequestParts<S> for At<T> {
    type Rejection = Failure;

    async fn from_request_parts(parts: &mut Parts, state: &S) -> Result<Self, Failure> {
        let Path(value) = Path::from_request_parts(parts, state).await.map_err(|_| Failure::NotFound)?;
        Ok(Self(value))
    }
}

/// What stands behind the question mark. Unknown names are ignored.
pub struct Asked<T>(pub T);

impl<T: DeserializeOwned + Send, S: Send + Sync> FromRequestParts<S> for Asked<T> {
    type Rejection = Failure;

    async fn from_request_parts(parts: &mut Parts, state: &S) -> Result<Self, Failure> {
        let Query(value) = Query::from_request_parts(parts, state).await.map_err(|_| Failure::NotFound)?;
        Ok(Self(value))
    }
}

/// A text as it may stand as a value behind the question mark.
pub fn escaped(text: &str) -> String {
    form_urlencoded::byte_serialize(text.as_bytes()).collect()
}

/// The network address a request came from.
///
/// Behind a proxy the peer is the proxy. What it says of whom it forwards for is written down beside
/// the peer, as its word and no more: anybody can send that header.
pub struct Address(pub String);

impl<S: Send + Sync> FromRequestParts<S> for Address {
    type Rejection = Failure;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Failure> {
        let peer = parts.extensions.get::<ConnectInfo<SocketAddr>>().map(|peer| peer.0.ip());
        let forwarded = parts.headers.get("x-forwarded-for").and_then(|value| value.to_str().ok());
        Ok(Self(address(peer, forwarded)))
    }
}

/// The peer, and the right-most address it says it forwards for: the one nearest to it.
fn address(peer: Option<IpAddr>, forwarded: Option<&str>) -> String {
    let peer = peer.map_or_else(|| "not known".to_owned(), |peer| peer.to_string());
    let nearest =
        forwarded.and_then(|list| list.rsplit(',').next()).and_then(|last| last.trim().parse::<IpAddr>().ok());
    match nearest {
        Some(client) => format!("{peer}, which says it forwards for {client}"),
        None => peer,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_is_the_peers_and_a_forwarded_one_only_its_word() {
        let peer = "192.0.2.1".parse().ok();
        assert_eq!(address(peer, None), "192.0.2.1");
        let told = address(peer, Some("198.51.100.7, 203.0.113.9"));
        assert_eq!(told, "192.0.2.1, which says it forwards for 203.0.113.9");
        for nonsense in ["", "shop.example", "203.0.113.9;<b>", "1.2.3.4, unknown"] {
            assert_eq!(address(peer, Some(nonsense)), "192.0.2.1", "{nonsense}");
        }
        assert_eq!(address(None, None), "not known");
    }
}
