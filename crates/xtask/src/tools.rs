//! The pinned tools: found when the version is exactly right, else installed
//! into `.tools/` of this project, which git ignores.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::places::Places;
use crate::problem::{Outcome, Problem};
use crate::run::{is_executable, on_path, printed, run, say};

/// The target the page is compiled for.
const WASM: &str = "wasm32-unknown-unknown";

/// A tool that cargo can install, of one exact version.
#[derive(Debug)]
pub struct Tool {
    /// The crate it comes from.
    package: &'static str,
    version: &'static str,
    /// The executable that is asked for its version, and the others that come
    /// with it.
    executables: &'static [&'static str],
    /// The features it is built with.
    features: &'static [&'static str],
    /// Whether it says its version when asked; if not, only one that was
    /// installed for this project is sure.
    tells: bool,
    /// Roughly how long two processor cores need to install it.
    takes: &'static str,
}

/// Turns the compiled page into what a browser loads. Its version has to be
/// the one of the `wasm-bindgen` crate in `Cargo.lock`.
pub const WASM_BINDGEN: Tool = Tool {
    package: "wasm-bindgen-cli",
    version: "0.2.126",
    executables: &["wasm-bindgen", "wasm-bindgen-test-runner"],
    features: &[],
    tells: true,
    takes: "two minutes",
};

/// Cuts the compiled page into what a first visit needs and what waits.
pub const WASM_SPLIT: Tool = Tool {
    package: "wasm_split_cli_support",
    version: "0.2.4",
    executables: &["wasm-split-cli"],
    features: &["build-binary"],
    tells: false,
    takes: "one minute",
};

/// Puts the page together.
pub const TRUNK: Tool = Tool {
    package: "trunk",
    version: "0.21.14",
    executables: &["trunk"],
    features: &[],
    tells: true,
    takes: "three to five minutes",
};

/// Drives Firefox in the browser tests.
pub const GECKODRIVER: Tool = Tool {
    package: "geckodriver",
    version: "0.37.1",
    executables: &["geckodriver"],
    features: &[],
    tells: true,
    takes: "one to two minutes",
};

/// Makes sure that the page can be built here.
pub fn for_building(places: &Places) -> Outcome<()> {
    wasm_target()?;
    WASM_BINDGEN.ready(places)?;
    WASM_SPLIT.ready(places)?;
    TRUNK.ready(places)?;
    Ok(())
}

/// A command that finds the project's own tools before any others.
pub fn with_tools(places: &Places, program: impl AsRef<std::ffi::OsStr>) -> Outcome<Command> {
    let mut folders = vec![places.tools().join("bin")];
    if let Some(path) = std::env::var_os("PATH") {
        folders.extend(std::env::split_paths(&path));
    }
    let path = std::env::join_paths(folders).map_err(|cause| {
        Problem::new(format!("a folder on PATH has a colon in its name: {cause}"))
    })?;
    let mut command = Command::new(program);
    command.current_dir(&places.root).env("PATH", path);
    Ok(command)
}

/// The wasm target of the pinned toolchain, added through rustup if missing.
fn wasm_target() -> Outcome<()> {
    let there = printed("rustc", &["--print", "target-libdir", "--target", WASM])
        .is_some_and(|folder| Path::new(folder.trim()).is_dir());
    if there {
        return Ok(());
    }
    say(format!("Adding the {WASM} target (seconds, about 20 MB)"));
    run(Command::new("rustup").args(["target", "add", WASM]))
}

/// The formatter and the linter, added through rustup if missing.
pub fn components() -> Outcome<()> {
    for (tool, component) in [("cargo-fmt", "rustfmt"), ("cargo-clippy", "clippy")] {
        if printed(tool, &["--version"]).is_none() {
            say(format!("Adding {component} (seconds)"));
            run(Command::new("rustup").args(["component", "add", component]))?;
        }
    }
    Ok(())
}

impl Tool {
    /// The path of the tool's first executable, installing it if need be.
    pub fn ready(&self, places: &Places) -> Outcome<PathBuf> {
        if let Some(found) = self.find(places) {
            return Ok(found);
        }
        self.install(places)?;
        self.find(places).ok_or_else(|| {
            Problem::new(format!(
                "{} {} was installed into {} but does not answer with its version",
                self.package,
                self.version,
                places.tools().display()
            ))
        })
    }

    /// An executable of the tool's by name, when the whole tool is there in
    /// the right version.
    pub fn executable(&self, places: &Places, name: &str) -> Outcome<PathBuf> {
        self.ready(places)?
            .parent()
            .map(|folder| folder.join(name))
            .ok_or_else(|| Problem::new(format!("{name} has no folder")))
    }

    fn find(&self, places: &Places) -> Option<PathBuf> {
        let own = places.tools().join("bin");
        if !self.tells {
            let there = self.is_noted(&places.tools());
            let file = self.executables.first().map(|name| own.join(name));
            return file.filter(|file| there && is_executable(file));
        }
        if self
            .executables
            .iter()
            .all(|name| self.is_right(&own.join(name)))
        {
            return self.executables.first().map(|name| own.join(name));
        }
        let found: Vec<PathBuf> = self
            .executables
            .iter()
            .filter_map(|name| on_path(name))
            .collect();
        let together = found.windows(2).all(|pair| match pair {
            [one, other] => one.parent() == other.parent(),
            _ => true,
        });
        let all = found.len() == self.executables.len();
        (all && together && found.iter().all(|file| self.is_right(file)))
            .then(|| found.first().cloned())
            .flatten()
    }

    /// Whether cargo has noted that it installed this version here.
    fn is_noted(&self, tools: &Path) -> bool {
        let line = format!("\"{} {} (", self.package, self.version);
        std::fs::read_to_string(tools.join(".crates.toml")).is_ok_and(|notes| notes.contains(&line))
    }

    fn is_right(&self, executable: &Path) -> bool {
        printed(executable, &["--version"])
            .and_then(|answer| version_in(&answer).map(str::to_owned))
            .is_some_and(|version| version == self.version)
    }

    fn install(&self, places: &Places) -> Outcome<()> {
        say(format!(
            "Installing {} {} into .tools (once; {} on two cores)",
            self.package, self.version, self.takes
        ));
        let kept = places.tools().join("build");
        // A build folder of its own, so that an interrupted install goes on
        // where it stopped, and no setting of this workspace reaches it.
        run(Command::new(Places::cargo())
            .current_dir(&places.root)
            .args(["install", "--locked", "--debug", "--force"])
            .args([self.package, "--version", self.version])
            .args(self.features.iter().flat_map(|name| ["--features", *name]))
            .arg("--root")
            .arg(places.tools())
            .arg("--target-dir")
            .arg(&kept)
            .env_remove("CARGO_BUILD_TARGET")
            // Nobody debugs these here, and what it takes to is most of them.
            .env("CARGO_PROFILE_DEV_DEBUG", "false")
            .env("CARGO_PROFILE_DEV_STRIP", "true"))?;
        // A folder that stays only costs room.
        let _ = std::fs::remove_dir_all(&kept);
        Ok(())
    }
}

/// The version in a line such as `trunk 0.21.14` or `geckodriver 0.37.1 (…)`.
fn version_in(answer: &str) -> Option<&str> {
    answer.split_whitespace().nth(1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_version_is_the_second_word_of_the_answer() {
        assert_eq!(version_in("trunk 0.21.14\n"), Some("0.21.14"));
        assert_eq!(
            version_in("geckodriver 0.37.1 (abc 2026-01-01)\n\nMore"),
            Some("0.37.1")
        );
        assert_eq!(version_in("trunk"), None);
        assert_eq!(version_in(""), None);
    }

    #[test]
    fn wasm_bindgen_is_pinned_to_the_version_in_the_lock_file() {
        let lock = include_str!("../../../Cargo.lock");
        let wanted = format!(
            "name = \"wasm-bindgen\"\nversion = \"{}\"",
            WASM_BINDGEN.version
        );
        assert!(
            lock.contains(&wanted),
            "Cargo.lock has another wasm-bindgen"
        );
    }

    #[test]
    fn a_tool_of_another_version_is_not_taken() {
        // cargo answers `cargo 1.x.y`, so it is there but never this version.
        let tool = Tool {
            package: "cargo",
            version: "0.0.0",
            executables: &["cargo"],
            features: &[],
            tells: true,
            takes: "no time",
        };
        let places = Places {
            root: std::env::temp_dir().join("no-such-project"),
            xtask: PathBuf::new(),
        };
        assert!(tool.find(&places).is_none());
    }
}
