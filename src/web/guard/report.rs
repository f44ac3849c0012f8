//! Gives every failure its reference, its page and its one line in the log.

use crate::web::failure::Failure;
use crate::web::pages::failed;
use axum::extract::{MatchedPath, Request};
use axum::middleware::Next;
use axum::response::Response;
use std::sync::Arc;
use uuid::Uuid;

/// Makes the page of a failure, and logs it once. Addresses are logged as the table spells them: theirs may be secret.
pub async fn report(request: Request, next: Next) -> Response {
    let method = request.method().clone();
    let address = request.extensions().get::<MatchedPath>().map(|path| path.as_str().to_owned());
    let mut response = next.run(request).await;
    let Some(failure) = response.extensions_mut().remove::<Arc<Failure>>() else { return response };
    let id = Uuid::now_v7().simple().to_string();
    // The last letters are the random ones; eight can be read out over the telephone.
    let reference = id[id.len() - 8..].to_uppercase();
    let (status, address) = (failure.status().as_u16(), address.unwrap_or_else(|| "no route".to_owned()));
    match &*failure {
        Failure::Fault(cause) => tracing::error!(reference, %method, address, status, cause, "request failed"),
        Failure::Busy(cause) => tracing::warn!(reference, %method, address, status, cause, "request not done"),
        other => tracing::info!(reference, %method, address, status, kind = other.kind(), "request not done"),
    }
    failed::page(&failure, reference)
}
