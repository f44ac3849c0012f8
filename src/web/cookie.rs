//! The session's cookie: out of reach of scripts and of other sites.

use super::site::Site;
use axum::http::{HeaderMap, HeaderValue, header};
use axum_extra::extract::cookie::{Cookie, SameSite};

/// A browser takes a `__Host-` cookie only from an encrypted answer of this very host.
const ENCRYPTED: &str = "__Host-endplay";
const PLAIN: &str = "endplay";

const fn name(encrypted: bool) -> &'static str {
    if encrypted { ENCRYPTED } else { PLAIN }
}

/// The session's secret in a request.
pub fn read(headers: &HeaderMap, site: &Site) -> Option<String> {
    let wanted = name(site.encrypted());
    headers
        .get_all(header::COOKIE)
        .iter()
        .filter_map(|line| line.to_str().ok())
        .flat_map(Cookie::split_parse)
        .filter_map(Result::ok)
        .find(|cookie| cookie.name() == wanted)
        .map(|cookie| cookie.value().to_owned())
}

/// The header that hands the session's secret over. The session itself ends on the server.
pub fn hand_over(secret: &str, site: &Site) -> HeaderValue {
    header_of(made(secret.to_owned(), site))
}

/// The header that takes the session's secret back.
pub fn take_back(site: &Site) -> HeaderValue {
    let mut cookie = made(String::new(), site);
    cookie.make_removal();
    header_of(cookie)
}

fn made(value: String, site: &Site) -> Cookie<'static> {
    Cookie::build((name(site.encrypted()), value))
        .path("/")
        .http_only(true)
        .secure(site.encrypted())
        // Lax, not strict: the code on a unit's tag has to open the ticket signed in.
        .same_site(SameSite::Lax)
        .build()
}

fn header_of(cookie: Cookie<'static>) -> HeaderValue {
    HeaderValue::try_from(cookie.to_string()).unwrap_or_else(|_| HeaderValue::from_static(""))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_encrypted_cookie_is_bound_to_the_host() {
        let site = Site::new("https://shop.example");
        let line = hand_over("secret", &site);
        let line = line.to_str().expect("text");
        for part in ["__Host-endplay=secret", "HttpOnly", "Secure", "SameSite=Lax", "Path=/"] {
            assert!(line.contains(part), "{line} lacks {part}");
        }
        assert!(!line.contains("Domain"));
    }

    #[test]
    fn a_plain_cookie_is_not_taken_where_an_encrypted_one_is_due() {
        let mut headers = HeaderMap::new();
        headers.insert(header::COOKIE, HeaderValue::from_static("other=1; endplay=stolen"));
        assert_eq!(read(&headers, &Site::new("https://shop.example")), None);
        assert_eq!(read(&headers, &Site::new("http://localhost")).as_deref(), Some("stolen"));
    }
}
