//! Building a page: trunk puts it together, then it is packed.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::cut;
use crate::pack;
use crate::places::Places;
use crate::problem::{Outcome, While};
use crate::run::{run, say};
use crate::styles::{self, Marked};
use crate::tools;

/// A page that trunk can build.
#[derive(Debug)]
pub struct Page {
    /// Its `index.html`, from the root.
    pub index: &'static str,
    /// The folder it is built into.
    pub dist: PathBuf,
    /// The name its cache goes by in the browser.
    pub cache: &'static str,
    /// Whether it is cut into the files that a first visit needs and those
    /// that wait.
    pub apart: bool,
}

impl Page {
    /// The app.
    pub fn app(places: &Places) -> Self {
        Self {
            index: "web/index.html",
            dist: places.dist(),
            cache: "thoubook",
            // Left whole on request, to see whether the cut is to blame.
            apart: std::env::var_os("THOUBOOK_WHOLE").is_none(),
        }
    }
}

/// Builds the app into `dist/`, installing what that needs.
pub fn build_app(places: &Places) -> Outcome<()> {
    build(places, &Page::app(places))
}

/// Builds one page, installing what that needs.
pub fn build(places: &Places, page: &Page) -> Outcome<()> {
    tools::for_building(places)?;
    fetch(places)?;
    say(format!(
        "Building {} into {} (some minutes the first time, then under one)",
        page.index,
        page.dist.display()
    ));
    run(tools::with_tools(places, tools::TRUNK.ready(places)?)?
        // Trunk takes `NO_COLOR=1` for a misspelt yes or no.
        .env_remove("NO_COLOR")
        .args(["build", "--config", "Trunk.toml", "--dist"])
        .arg(&page.dist)
        .args(apart(page))
        .arg(page.index))?;
    if page.apart {
        cut::cut(places, &page.dist)?;
    }
    let marked = if page.apart {
        Marked::Wait
    } else {
        Marked::AtOnce
    };
    styles::join(&page.dist, marked)?;
    pack::pack(places, page)?;
    println!("{} is ready for any static host.", page.dist.display());
    Ok(())
}

/// How trunk is told to build what will be cut.
fn apart(page: &Page) -> &'static [&'static str] {
    if page.apart {
        &["--cargo-profile", "apart", "--features", "apart"]
    } else {
        &[]
    }
}

/// Gets the sources of the crates that the page is made of. Trunk then runs
/// without the network.
fn fetch(places: &Places) -> Outcome<()> {
    run(Command::new(Places::cargo())
        .current_dir(&places.root)
        .args(["fetch", "--locked", "--target", "wasm32-unknown-unknown"]))?;
    // The compiler's plug-ins run on this machine, so their crates count too.
    run(Command::new(Places::cargo())
        .current_dir(&places.root)
        .args(["fetch", "--locked", "--target", &host()?]))
}

/// The target of this machine.
fn host() -> Outcome<String> {
    let answer = crate::run::printed("rustc", &["--version", "--verbose"]).unwrap_or_default();
    answer
        .lines()
        .find_map(|line| line.strip_prefix("host: "))
        .map(str::to_owned)
        .ok_or("rustc names no host")
        .during("asking rustc what this machine is")
}

/// The folder of a page is there and has been packed.
pub fn is_built(dist: &Path) -> bool {
    dist.join("index.html").is_file() && dist.join("sw.js").is_file()
}
