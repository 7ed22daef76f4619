//! The Content-Security-Policy of the page, and the check that the page
//! keeps it.

use crate::dist::digest;
use crate::markup::Markup;
use crate::problem::{Outcome, Problem};

/// Where the policy goes in `index.html`: before anything it rules over.
const PLACE: &str = r#"<meta name="content-security-policy-goes-here">"#;

/// The page with its policy in place.
pub fn put_in(html: &str) -> Outcome<String> {
    let markup = Markup::read(html);
    check(&markup)?;
    if html.matches(PLACE).count() != 1 {
        return Err(Problem::new(format!(
            "index.html must have {PLACE} exactly once"
        )));
    }
    let policy = policy(&markup.inline_scripts);
    Ok(html.replace(
        PLACE,
        &format!(r#"<meta http-equiv="Content-Security-Policy" content="{policy}">"#),
    ))
}

/// Everything is forbidden but what the page is made of. Nothing may be
/// fetched from anywhere else, and no script runs that is not a file of the
/// page or named here by its digest.
fn policy(inline_scripts: &[String]) -> String {
    let scripts: String = inline_scripts
        .iter()
        .map(|script| format!(" '{}'", digest(script.as_bytes())))
        .collect();
    [
        "default-src 'none'",
        &format!("script-src 'self' 'wasm-unsafe-eval'{scripts}"),
        "style-src 'self'",
        "img-src 'self' blob: data:",
        // The silence that is played for a headset's button: made by the page.
        "media-src blob:",
        "connect-src 'self'",
        "manifest-src 'self'",
        "worker-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
    ]
    .join("; ")
}

/// Refuses a page that a browser would refuse part of.
fn check(markup: &Markup) -> Outcome<()> {
    let mut faults = markup.faults.clone();
    for url in &markup.urls {
        if !is_relative(url) {
            faults.push(format!(
                "`{url}` is not relative, so it breaks under a sub-path"
            ));
        }
    }
    if faults.is_empty() {
        return Ok(());
    }
    Err(Problem::new(format!(
        "index.html does not keep the page's own rules:\n  {}",
        faults.join("\n  ")
    )))
}

/// Whether a URL stays within the folder the page lies in.
fn is_relative(url: &str) -> bool {
    let climbs = url.split('/').any(|part| part == "..");
    !url.starts_with('/') && !url.contains(':') && !climbs
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page(rest: &str) -> String {
        format!("<!doctype html><head>{PLACE}</head>{rest}")
    }

    #[test]
    fn the_start_script_is_named_by_its_digest() {
        let html = put_in(&page("<script type=\"module\">abc</script>")).unwrap();
        assert!(html.contains(
            "script-src 'self' 'wasm-unsafe-eval' \
             'sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=';"
        ));
        assert!(!html.contains(PLACE));
    }

    #[test]
    fn nothing_unsafe_is_let_in_but_wasm() {
        let html = put_in(&page("<script>1</script>")).unwrap();
        assert_eq!(html.matches("unsafe").count(), 1);
        assert!(html.contains("'wasm-unsafe-eval'"));
        assert!(html.contains("default-src 'none'"));
    }

    #[test]
    fn photos_that_the_page_holds_can_be_shown_and_none_from_elsewhere() {
        let html = put_in(&page("<p>x</p>")).unwrap();
        let start = html.find("img-src").unwrap();
        let images = html[start..].split(';').next().unwrap();
        assert_eq!(images, "img-src 'self' blob: data:");
        // Neither a photo nor a piece of silence is ever a program.
        assert_eq!(html.matches("blob:").count(), 2);
        assert!(html.contains("media-src blob:;"));
        assert!(!html[html.find("script-src").unwrap()..start].contains("blob:"));
    }

    #[test]
    fn a_page_that_breaks_the_policy_is_refused() {
        for broken in [
            "<p style=\"color: red\">x</p>",
            "<style>p {}</style>",
            "<button onclick=\"go()\">x</button>",
            "<a href=\"javascript:go()\">x</a>",
            "<script src=\"/app.js\"></script>",
            "<script src=\"https://elsewhere.invalid/app.js\"></script>",
            "<script src=\"//elsewhere.invalid/app.js\"></script>",
            "<link rel=\"stylesheet\" href=\"../up.css\">",
            "<base href=\"/\">",
            "<iframe></iframe>",
        ] {
            assert!(put_in(&page(broken)).is_err(), "let through: {broken}");
        }
    }

    #[test]
    fn a_page_without_a_place_for_the_policy_is_refused() {
        assert!(put_in("<!doctype html><p>x</p>").is_err());
        assert!(put_in(&page(PLACE)).is_err());
    }
}
