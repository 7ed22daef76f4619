//! Which room may use which. The arrows go one way.

use std::collections::BTreeMap;
use std::process::Command;

use serde_json::Value;

use crate::files::root;

/// Each room and the rooms it may use. The tests may use all.
const MAY_USE: [(&str, &[&str]); 5] = [
    ("assembly-core", &[]),
    ("build-plan", &["assembly-core"]),
    ("build-journal", &["assembly-core", "build-plan"]),
    (
        "thoubook-web",
        &["assembly-core", "build-plan", "build-journal"],
    ),
    ("xtask", &[]),
];

/// Crates that have no place in a room: the calculations and what is built on
/// them know no clock, no browser and no screen.
const KEPT_OUT: [(&str, &[&str]); 3] = [
    ("assembly-core", BROWSER),
    ("build-plan", BROWSER),
    ("build-journal", BROWSER),
];

const BROWSER: &[&str] = &[
    "web-sys",
    "js-sys",
    "wasm-bindgen",
    "leptos",
    "gloo-storage",
];

/// What cargo knows of this workspace alone.
fn metadata() -> Value {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let output = Command::new(cargo)
        .current_dir(root())
        .args([
            "metadata",
            "--format-version",
            "1",
            "--no-deps",
            "--offline",
        ])
        .output()
        .unwrap();
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    serde_json::from_slice(&output.stdout).unwrap()
}

/// Each package with the names of everything it depends on.
fn dependencies() -> BTreeMap<String, Vec<String>> {
    let name = |value: &Value| value["name"].as_str().unwrap().to_owned();
    let metadata = metadata();
    let packages = metadata["packages"].as_array().unwrap();
    packages
        .iter()
        .map(|package| {
            let uses = package["dependencies"].as_array().unwrap();
            (name(package), uses.iter().map(name).collect())
        })
        .collect()
}

#[test]
fn the_arrows_between_the_rooms_go_one_way() {
    let all = dependencies();
    for (room, may_use) in MAY_USE {
        let uses = all
            .get(room)
            .unwrap_or_else(|| panic!("there is no {room}"));
        for used in uses.iter().filter(|used| all.contains_key(*used)) {
            assert!(may_use.contains(&used.as_str()), "{room} uses {used}");
        }
    }
}

#[test]
fn what_calculates_knows_no_browser() {
    let all = dependencies();
    for (room, kept_out) in KEPT_OUT {
        for used in &all[room] {
            assert!(!kept_out.contains(&used.as_str()), "{room} uses {used}");
        }
    }
}

#[test]
fn nothing_of_ours_is_left_out_of_the_rules() {
    let outside = ["thoubook-tests", "bare-page"];
    for package in dependencies().keys() {
        let ruled = MAY_USE.iter().any(|(room, _)| room == package);
        assert!(
            ruled || outside.contains(&package.as_str()),
            "say in MAY_USE what {package} may use"
        );
    }
}
