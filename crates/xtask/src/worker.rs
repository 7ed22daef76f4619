//! The service worker of one build: the template of `static/sw.js` with the
//! list of the build's files put in.

use serde_json::json;

use crate::dist::{File, digest, is_hashed};
use crate::problem::{Outcome, Problem};

/// Files that are never kept: the worker itself, and the page for wrong
/// addresses, which the worker answers without.
const NOT_KEPT: [&str; 2] = ["sw.js", "404.html"];

/// The worker's script for a page made of these files.
pub fn write(template: &str, cache: &str, files: &[File]) -> Outcome<String> {
    let kept: Vec<_> = files
        .iter()
        .filter(|file| !NOT_KEPT.contains(&file.path.as_str()))
        .map(|file| {
            json!({
                "url": address(&file.path),
                "integrity": file.digest,
                "hashed": is_hashed(&file.path),
            })
        })
        .collect();
    let list = json!(kept).to_string();
    let version = version(&format!("{template}{list}"));
    let with_cache = put(template, "__CACHE__", &json!(cache).to_string())?;
    let with_version = put(&with_cache, "__VERSION__", &json!(version).to_string())?;
    put(&with_version, "__FILES__", &list)
}

/// The address a file is asked for by. The page itself is the folder's own
/// address: some hosts send `index.html` elsewhere.
fn address(path: &str) -> String {
    match path {
        "index.html" => "./".to_owned(),
        _ => format!("./{path}"),
    }
}

/// A short name for exactly this content.
fn version(content: &str) -> String {
    digest(content.as_bytes())
        .chars()
        .skip("sha256-".len())
        .filter(char::is_ascii_alphanumeric)
        .take(16)
        .collect()
}

fn put(template: &str, place: &str, value: &str) -> Outcome<String> {
    if template.matches(place).count() == 1 {
        return Ok(template.replace(place, value));
    }
    Err(Problem::new(format!(
        "static/sw.js must have {place} exactly once"
    )))
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEMPLATE: &str =
        "const CACHE = __CACHE__; const VERSION = __VERSION__; const FILES = __FILES__;";

    fn file(path: &str, content: &str) -> File {
        File {
            path: path.to_owned(),
            digest: digest(content.as_bytes()),
        }
    }

    #[test]
    fn exactly_the_files_of_the_build_are_listed() {
        let files = [
            file("404.html", "page"),
            file("app-0123456789abcdef.js", "app"),
            file("index.html", "page"),
            file("sw.js", "old"),
        ];
        let script = write(TEMPLATE, "book", &files).unwrap();
        let list: serde_json::Value = serde_json::from_str(
            script
                .rsplit_once("FILES = ")
                .unwrap()
                .1
                .trim_end_matches(';'),
        )
        .unwrap();
        assert_eq!(
            list,
            json!([
                {"url": "./app-0123456789abcdef.js", "integrity": digest(b"app"), "hashed": true},
                {"url": "./", "integrity": digest(b"page"), "hashed": false},
            ])
        );
    }

    #[test]
    fn another_content_is_another_version() {
        let one = write(TEMPLATE, "book", &[file("index.html", "one")]).unwrap();
        let same = write(TEMPLATE, "book", &[file("index.html", "one")]).unwrap();
        let other = write(TEMPLATE, "book", &[file("index.html", "other")]).unwrap();
        assert_eq!(one, same);
        assert_ne!(one.split("FILES").next(), other.split("FILES").next());
    }

    #[test]
    fn a_template_without_its_places_is_refused() {
        assert!(write("nothing", "book", &[]).is_err());
    }
}
