//! Running every test there is. The last lines are cargo's own summary of the
//! browser tests.

use std::path::PathBuf;
use std::process::Command;

use crate::places::Places;
use crate::problem::{Outcome, Problem, While};
use crate::run::{run, say};
use crate::{browsers, page, tools};

/// The parts, in the order they run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// The formatter has nothing to change.
    Format,
    /// The linter has nothing to say, for this machine and for the page.
    Lint,
    /// Everything that runs on this machine alone.
    Host,
    /// What of the page exists only in a browser.
    Page,
    /// The finished page is built.
    Build,
    /// The finished page, used in three browsers.
    Browser,
}

impl Part {
    /// All of them, in order: quick to fail first, the browsers last.
    pub const ALL: [Self; 6] = [
        Self::Format,
        Self::Lint,
        Self::Host,
        Self::Page,
        Self::Build,
        Self::Browser,
    ];

    /// The word it goes by on the command line.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Format => "format",
            Self::Lint => "lint",
            Self::Host => "host",
            Self::Page => "page",
            Self::Build => "build",
            Self::Browser => "browser",
        }
    }

    /// The part of this name.
    pub fn named(name: &str) -> Outcome<Self> {
        Self::ALL
            .into_iter()
            .find(|part| part.name() == name)
            .ok_or_else(|| {
                let names = Self::ALL.map(Self::name).join(", ");
                Problem::new(format!("there is no part `{name}`; there are {names}"))
            })
    }
}

/// Runs these parts. What is given besides goes to the test programs, for
/// instance the name of one test.
pub fn test(places: &Places, parts: &[Part], besides: &[String]) -> Outcome<()> {
    // First what needs the network, so that a long run doesn't end in a
    // missing browser.
    prepare(places, parts)?;
    for part in parts {
        carry_out(places, *part, besides).during(format!("the part `{}`", part.name()))?;
    }
    Ok(())
}

/// Takes pictures of every screen of the page as it is now.
pub fn screenshots(places: &Places) -> Outcome<()> {
    tools::for_building(places)?;
    browsers::ready()?;
    page::build_app(places)?;
    say("Taking pictures of every screen into tests/screenshots (minutes)");
    let besides = ["--ignored", "flows::pictures"].map(str::to_owned);
    run(&mut browser_tests(places, &besides)?)
}

fn prepare(places: &Places, parts: &[Part]) -> Outcome<()> {
    let any = |wanted: &[Part]| parts.iter().any(|part| wanted.contains(part));
    if any(&[Part::Format, Part::Lint]) {
        tools::components()?;
    }
    if any(&[Part::Lint, Part::Page, Part::Build]) {
        tools::for_building(places)?;
    }
    if any(&[Part::Page, Part::Browser]) {
        browsers::ready()?;
    }
    if any(&[Part::Browser]) {
        tools::GECKODRIVER.ready(places)?;
        browsers::axe(places)?;
    }
    Ok(())
}

fn carry_out(places: &Places, part: Part, besides: &[String]) -> Outcome<()> {
    match part {
        Part::Format => {
            say("Is everything formatted? (seconds)");
            run(cargo(places)?.args(["fmt", "--all", "--check"]))
        }
        Part::Lint => {
            say("Linting, for this machine and for the page (minutes the first time)");
            let strict = ["--", "--deny", "warnings"];
            run(cargo(places)?
                .args(["clippy", "--locked", "--workspace", "--all-targets"])
                .args(strict))?;
            // Not among all targets: a plain `cargo test` leaves it out. Of
            // the whole workspace, since the crates below would be compiled
            // anew for one package that asks less of them.
            run(cargo(places)?
                .args(["clippy", "--locked", "--workspace", "--test", "browser"])
                .args(strict))?;
            run(for_the_page(cargo(places)?.arg("clippy"))
                .arg("--all-targets")
                .args(strict))
        }
        Part::Host => {
            say("Testing what runs on this machine (minutes the first time)");
            run(cargo(places)?
                .args(["test", "--locked", "--workspace"])
                .args(passed_on(besides)))
        }
        Part::Page => {
            say("Testing what exists only in a browser, in Chromium (minutes the first time)");
            let runner = tools::WASM_BINDGEN.executable(places, "wasm-bindgen-test-runner")?;
            run(for_the_page(cargo(places)?.arg("test"))
                .args(passed_on(besides))
                .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER", runner)
                .env("CHROMEDRIVER", "chromedriver")
                .env(
                    "WASM_BINDGEN_TEST_WEBDRIVER_JSON",
                    places.root.join("web/webdriver.json"),
                )
                // In seconds, for all tests of one program together.
                .env("WASM_BINDGEN_TEST_TIMEOUT", "600"))
        }
        Part::Build => page::build_app(places),
        Part::Browser => {
            say("Using the finished page in Chromium, Firefox and WebKitGTK (minutes)");
            run(browser_tests(places, besides)?.env("THOUBOOK_AXE", browsers::axe(places)?))
        }
    }
}

fn cargo(places: &Places) -> Outcome<Command> {
    tools::with_tools(places, Places::cargo())
}

fn for_the_page(command: &mut Command) -> &mut Command {
    command
        .args(["--locked", "--package", "thoubook-web"])
        .args(["--target", "wasm32-unknown-unknown"])
}

fn browser_tests(places: &Places, besides: &[String]) -> Outcome<Command> {
    let dist = places.dist();
    if !page::is_built(&dist) {
        return Err(Problem::new(format!(
            "{} holds no page; run `cargo xtask build`",
            dist.display()
        )));
    }
    let geckodriver = tools::GECKODRIVER.ready(places)?;
    // The tests look into `bin` of this folder.
    let tools: PathBuf = geckodriver
        .ancestors()
        .nth(2)
        .map(PathBuf::from)
        .unwrap_or_default();
    let mut command = cargo(places)?;
    command
        .args(["test", "--locked", "--workspace", "--test", "browser"])
        .args(passed_on(besides))
        .env("THOUBOOK_XTASK", &places.xtask)
        .env("THOUBOOK_DIST", dist)
        .env("THOUBOOK_TOOLS", tools);
    Ok(command)
}

/// What goes to the test programs themselves.
fn passed_on(besides: &[String]) -> Vec<String> {
    if besides.is_empty() {
        return Vec::new();
    }
    let mut words = vec!["--".to_owned()];
    words.extend_from_slice(besides);
    words
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_part_is_found_by_its_name() {
        for part in Part::ALL {
            assert_eq!(Part::named(part.name()).unwrap(), part);
        }
        assert!(Part::named("everything").is_err());
    }

    #[test]
    fn the_browsers_come_last() {
        assert_eq!(Part::ALL.last(), Some(&Part::Browser));
    }
}
