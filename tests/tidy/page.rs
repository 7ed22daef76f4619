//! What a page under a strict policy, and without a network, may not hold.

use std::path::PathBuf;

use crate::files::{files, root, shown, text};

/// Everything the page is made of.
fn sources() -> Vec<PathBuf> {
    let ends = [
        ".rs",
        ".js",
        ".css",
        ".html",
        ".svg",
        ".webmanifest",
        ".toml",
    ];
    let mut found = files(&root().join("web"), &ends);
    found.extend(files(&root().join("static"), &ends));
    found.push(root().join("Trunk.toml"));
    found
}

/// Each line of the page's sources that a finder finds something wrong with.
fn lines_with(wrong: impl Fn(&str) -> bool) -> Vec<String> {
    let mut found = Vec::new();
    for file in sources() {
        for (number, line) in text(&file).lines().enumerate() {
            if wrong(line) {
                found.push(format!("{}:{}: {}", shown(&file), number + 1, line.trim()));
            }
        }
    }
    found
}

#[test]
fn the_policy_is_never_loosened() {
    let loosened =
        lines_with(|line| line.contains("unsafe-inline") || line.contains("'unsafe-eval'"));
    assert!(loosened.is_empty(), "{loosened:#?}");
}

#[test]
fn nothing_is_named_that_lies_elsewhere() {
    let elsewhere = lines_with(|line| {
        // Names of vocabularies, which nothing is ever fetched from.
        let line = line.replace("http://www.w3.org/", "");
        line.contains("http://") || line.contains("https://")
    });
    assert!(elsewhere.is_empty(), "{elsewhere:#?}");
}

#[test]
fn no_style_stands_in_an_element() {
    // The policy lets only style sheets of the page through. `style:property`
    // sets a property by script, which is allowed.
    let inline = lines_with(|line| {
        let line = line.trim_start();
        !line.starts_with("//") && (line.contains(" style=") || line.starts_with("style="))
    });
    assert!(inline.is_empty(), "{inline:#?}");
}
