//! What handlers may take from a request besides forms. The bare extractors of axum are banned
//! (`clippy.toml`): they answer with codes and jargon, these with a page.
#![allow(clippy::disallowed_types)]

use super::failure::Failure;
use axum::extract::{FromRequestParts, Path, Query};
use axum::http::request::Parts;
use serde::de::DeserializeOwned;

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
pub struct Address(pub String);

impl<S: Send + Sync> FromRequestParts<S> for Address {
    type Rejection = Failure;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Failure> {
        let peer = parts.extensions.get::<axum::extract::ConnectInfo<std::net::SocketAddr>>();
        Ok(Self(peer.map_or_else(|| "not known".to_owned(), |peer| peer.0.ip().to_string())))
    }
}
