//! Another build of the page: the same files but for a mark in the first one,
//! and a service worker that knows the new digest.

use std::path::Path;

use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use sha2::{Digest as _, Sha256};

/// Copies a whole folder.
pub fn copy(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap().flatten() {
        let target = to.join(entry.file_name());
        if entry.path().is_dir() {
            copy(&entry.path(), &target);
        } else {
            std::fs::copy(entry.path(), target).unwrap();
        }
    }
}

/// Puts a build into the folder of another, as an upload does it: the page
/// now carries `<meta name="edition">` with this word.
pub fn put(site: &Path, edition: &str) {
    let page = site.join("index.html");
    let old = std::fs::read_to_string(&page).unwrap();
    let mark = format!("<meta name=\"edition\" content=\"{edition}\"></head>");
    let new = old.replacen("</head>", &mark, 1);
    assert_ne!(old, new, "the page has a head");
    let worker = site.join("sw.js");
    let script = std::fs::read_to_string(&worker).unwrap();
    let script = replaced(&script, &digest(&old), &digest(&new));
    let version = version(&script).to_owned();
    let script = replaced(&script, &version, &format!("{version}{edition}"));
    std::fs::write(page, new).unwrap();
    std::fs::write(worker, script).unwrap();
}

fn replaced(text: &str, old: &str, new: &str) -> String {
    assert!(text.contains(old), "the service worker names {old}");
    text.replace(old, new)
}

fn digest(text: &str) -> String {
    BASE64_STANDARD.encode(Sha256::digest(text))
}

/// The name of the build in the worker's script.
fn version(script: &str) -> &str {
    let after = script
        .split_once("const CACHE = OWN + \"")
        .expect("the service worker names its cache by the build's version")
        .1;
    after.split('"').next().unwrap_or_default()
}
