//! How a file of the project looks.

use std::path::{Path, PathBuf};

/// Past this a file is mentioned.
const LONG: usize = 400;

/// Past this a file has to be cut up.
const TOO_LONG: usize = 600;

/// Folders that hold nothing of ours.
const NOT_OURS: [&str; 5] = ["target", "dist", ".git", ".tools", "node_modules"];

/// The project's own folder.
pub fn root() -> &'static Path {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.parent().unwrap_or(here)
}

/// Every file of ours under a folder whose name ends in one of these.
pub fn files(folder: &Path, ends: &[&str]) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_str().unwrap();
        if path.is_dir() {
            if !NOT_OURS.contains(&name) {
                found.extend(files(&path, ends));
            }
        } else if ends.iter().any(|end| name.ends_with(end)) {
            found.push(path);
        }
    }
    found.sort();
    found
}

/// The path as it stands in the project.
pub fn shown(file: &Path) -> String {
    file.strip_prefix(root())
        .unwrap_or(file)
        .display()
        .to_string()
}

/// The text of a file.
pub fn text(file: &Path) -> String {
    std::fs::read_to_string(file).unwrap_or_else(|cause| panic!("{}: {cause}", shown(file)))
}

fn rust() -> Vec<PathBuf> {
    files(root(), &[".rs"])
}

#[test]
fn every_file_says_first_what_it_is_for() {
    let silent: Vec<String> = rust()
        .iter()
        .filter(|file| !text(file).starts_with("//! "))
        .map(|file| shown(file))
        .collect();
    assert!(rust().len() > 20, "the files were not found");
    assert!(
        silent.is_empty(),
        "these don't open with `//! `: {silent:#?}"
    );
}

#[test]
fn no_file_is_too_long_to_read() {
    let mut too_long = Vec::new();
    for file in files(root(), &[".rs", ".js", ".css", ".py", ".html"]) {
        let lines = text(&file).lines().count();
        if lines > TOO_LONG {
            too_long.push(format!("{}: {lines} lines", shown(&file)));
        } else if lines > LONG {
            println!("long: {} has {lines} lines", shown(&file));
        }
    }
    assert!(too_long.is_empty(), "past {TOO_LONG} lines: {too_long:#?}");
}
