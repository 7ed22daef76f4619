//! The figures of Lighthouse for accessibility and best practices. It is no part
//! of the tests: it needs Node.js, which nothing else here does.

use std::io::{BufRead as _, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};

use crate::places::Places;
use crate::problem::{Outcome, Problem, While};
use crate::report::Budgets;
use crate::run::{on_path, run, say};

/// Lighthouse and its version. Later ones want a later Node.js than Debian has.
const LIGHTHOUSE: &str = "lighthouse@12.8.2";

/// Looks at the main screens of the finished page, if there is Node.js to do it
/// with; else says what to install.
pub fn lighthouse(places: &Places, budgets: Budgets) -> Outcome<()> {
    let (Some(node), Some(npm)) = (on_path("node"), on_path("npm")) else {
        say("No figures of Lighthouse: they need Node.js. Run this, then try again:");
        println!("\n  sudo apt-get install --no-install-recommends nodejs npm\n");
        return Ok(());
    };
    let folder = places.tools().join(LIGHTHOUSE);
    fetched(&npm, &folder)?;
    say("Looking at the main screens with Lighthouse (two minutes)");
    let server = Served::start(places)?;
    let mut command = Command::new(node);
    command
        .arg(places.root.join("tests/lighthouse/screens.mjs"))
        .args([folder.as_os_str(), server.address.as_ref()]);
    if let Some(chromium) = on_path("chromium") {
        command.env("CHROMIUM", chromium);
    }
    if budgets == Budgets::Enforced {
        command.arg("--enforce");
    }
    run(&mut command)
}

/// Fetches it into this folder if it is not there.
fn fetched(npm: &Path, folder: &Path) -> Outcome<()> {
    if folder
        .join("node_modules/lighthouse/core/index.js")
        .is_file()
    {
        return Ok(());
    }
    say("Fetching Lighthouse (half a minute, 200 MB)");
    run(Command::new(npm)
        .args(["install", "--no-audit", "--no-fund", "--silent", "--prefix"])
        .arg(folder)
        .arg(LIGHTHOUSE))
}

/// The finished page, served for as long as this lives.
struct Served {
    address: String,
    server: Child,
}

impl Served {
    fn start(places: &Places) -> Outcome<Self> {
        let mut server = Command::new(&places.xtask)
            .args(["host", "--port", "0"])
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .during("serving the page")?;
        let output = server.stdout.take();
        let mut served = Self {
            address: String::new(),
            server,
        };
        let mut line = String::new();
        if let Some(output) = output {
            BufReader::new(output)
                .read_line(&mut line)
                .during("serving the page")?;
        }
        let origin = line
            .trim()
            .strip_prefix("listening ")
            .ok_or_else(|| Problem::new(format!("the server said `{}`", line.trim())))?;
        served.address = format!("{origin}/");
        Ok(served)
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        // It may have ended by itself.
        let _ = self.server.kill();
        let _ = self.server.wait();
    }
}
