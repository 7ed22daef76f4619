//! Where the tests find what they need, and what to run when it is not there.

use std::path::{Path, PathBuf};

/// The folder of the workspace.
pub fn root() -> &'static Path {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
    tests.parent().unwrap_or(tests)
}

/// A file of the tests themselves.
pub fn fixture(name: &str) -> PathBuf {
    root().join("tests/browser/fixtures").join(name)
}

/// The program that serves the page.
pub fn xtask() -> PathBuf {
    named("THOUBOOK_XTASK").unwrap_or_else(|| {
        let own = std::env::current_exe().unwrap_or_default();
        // target/debug/deps/browser-… stands beside target/debug/xtask.
        let beside = own
            .ancestors()
            .nth(2)
            .map(|folder| folder.join("xtask"))
            .unwrap_or_default();
        assert!(
            beside.is_file(),
            "{} is not there. Run: cargo xtask test",
            beside.display()
        );
        beside
    })
}

/// The finished page.
pub fn dist() -> PathBuf {
    named("THOUBOOK_DIST").unwrap_or_else(|| root().join("dist"))
}

/// The accessibility checker's script.
pub fn axe() -> PathBuf {
    let file = named("THOUBOOK_AXE").unwrap_or_else(|| {
        let package = ".tools/axe-playwright-python==0.1.8";
        root()
            .join(package)
            .join("axe_playwright_python/axe.min.js")
    });
    assert!(
        file.is_file(),
        "{} is not there. Run: cargo xtask test",
        file.display()
    );
    file
}

/// A program by name: in the project's own tools, on the path, or in one of
/// the usual places. Fails with the line that installs it.
pub fn program(names: &[&str], usual: &[&str], install: &str) -> PathBuf {
    let mut folders = vec![
        named("THOUBOOK_TOOLS")
            .unwrap_or_else(|| root().join(".tools"))
            .join("bin"),
    ];
    if let Some(path) = std::env::var_os("PATH") {
        folders.extend(std::env::split_paths(&path));
    }
    folders.extend(usual.iter().map(PathBuf::from));
    names
        .iter()
        .flat_map(|name| folders.iter().map(move |folder| folder.join(name)))
        .find(|file| file.is_file())
        .unwrap_or_else(|| {
            panic!(
                "{} is not on this machine. Run: {install}",
                names.join(" or ")
            )
        })
}

fn named(variable: &str) -> Option<PathBuf> {
    std::env::var_os(variable).map(PathBuf::from)
}

/// Where pictures of the screens go; git ignores it.
pub fn pictures() -> PathBuf {
    root().join("tests/screenshots")
}
