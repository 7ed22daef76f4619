//! The report on what the page costs. Building is done here, measuring by the
//! `report` program of the tests.

use std::process::Command;

use crate::lighthouse::lighthouse;
use crate::page::{self, Page};
use crate::places::Places;
use crate::problem::Outcome;
use crate::run::{run, say};
use crate::{browsers, tools};

/// What a broken budget means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Budgets {
    /// It is said.
    Reported,
    /// It fails the run.
    Enforced,
}

/// Builds the app and a bare page with the same settings, and measures both;
/// then has Lighthouse look at the app, and runs the benches of the core.
pub fn report(places: &Places, budgets: Budgets) -> Outcome<()> {
    browsers::ready()?;
    page::build_app(places)?;
    let bare = Page {
        index: "tests/bare-page/index.html",
        dist: places.root.join("target/bare-page"),
        cache: "bare-page",
        apart: false,
    };
    page::build(places, &bare)?;
    say("Measuring (some minutes; the less else runs here the better)");
    let mut command: Command = tools::with_tools(places, Places::cargo())?;
    command
        .args(["run", "--quiet", "--locked"])
        .args(["--package", "thoubook-tests", "--bin", "report"])
        .env("THOUBOOK_XTASK", &places.xtask)
        .env("THOUBOOK_DIST", places.dist())
        .env("THOUBOOK_BARE", &bare.dist);
    if budgets == Budgets::Enforced {
        command.args(["--", "--enforce"]);
    }
    run(&mut command)?;
    lighthouse(places, budgets)?;
    say("How fast the core is, on this machine alone (minutes)");
    run(tools::with_tools(places, Places::cargo())?
        .args(["bench", "--locked", "--package", "assembly-core"])
        .args(["--package", "build-journal", "--", "--quick"]))
}
