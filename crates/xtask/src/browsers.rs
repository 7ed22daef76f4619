//! What the browser tests need from the system: three browsers, their
//! drivers, a screen for the one that has no headless way, and the
//! accessibility checker's script.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::places::Places;
use crate::problem::{Outcome, Problem, While};
use crate::run::{on_path, printed, run, say};

/// Something the tests use, how it is looked for, and Debian's packages for it.
struct Need {
    what: &'static str,
    is_there: fn() -> bool,
    packages: &'static [&'static str],
}

const NEEDS: [Need; 9] = [
    Need {
        what: "Chromium",
        is_there: || on_path("chromium").is_some(),
        packages: &["chromium"],
    },
    Need {
        what: "Chromium's driver",
        is_there: || on_path("chromedriver").is_some(),
        packages: &["chromium-driver"],
    },
    Need {
        what: "Firefox",
        is_there: || on_path("firefox-esr").is_some() || on_path("firefox").is_some(),
        packages: &["firefox-esr"],
    },
    Need {
        what: "WebKitGTK's driver",
        is_there: || on_path("WebKitWebDriver").is_some(),
        packages: &["webkit2gtk-driver"],
    },
    Need {
        what: "WebKitGTK for Python",
        is_there: || imports("import gi; gi.require_version('WebKit2', '4.1')"),
        packages: &["gir1.2-webkit2-4.1", "python3-gi"],
    },
    Need {
        what: "pip",
        is_there: || imports("import pip"),
        packages: &["python3-pip"],
    },
    Need {
        what: "a screen without a screen",
        is_there: || on_path("Xvfb").is_some(),
        packages: &["xvfb"],
    },
    Need {
        what: "a typeface",
        is_there: || Path::new("/usr/share/fonts/truetype").is_dir(),
        packages: &["fonts-dejavu-core"],
    },
    Need {
        what: "certificates",
        is_there: || Path::new("/etc/ssl/certs/ca-certificates.crt").is_file(),
        packages: &["ca-certificates"],
    },
];

/// The Python that Debian's packages belong to.
const PYTHON: &str = "/usr/bin/python3";

/// A package of the Python index that carries the accessibility checker's
/// script, axe-core, and where the script lies in it.
const AXE: (&str, &str) = (
    "axe-playwright-python==0.1.8",
    "axe_playwright_python/axe.min.js",
);

/// Makes sure that all of it is there: installs it where that is allowed,
/// else says the exact line to run. Nothing missing is ever passed over.
pub fn ready() -> Outcome<()> {
    let missing: Vec<&Need> = NEEDS.iter().filter(|need| !(need.is_there)()).collect();
    if missing.is_empty() {
        return Ok(());
    }
    install(&missing)?;
    match NEEDS.iter().find(|need| !(need.is_there)()) {
        None => Ok(()),
        Some(need) => Err(Problem::new(format!(
            "{} is still not there after installing {}",
            need.what,
            need.packages.join(" ")
        ))),
    }
}

fn install(missing: &[&Need]) -> Outcome<()> {
    let packages: Vec<&str> = missing
        .iter()
        .flat_map(|need| need.packages)
        .copied()
        .collect();
    let what: Vec<&str> = missing.iter().map(|need| need.what).collect();
    let what = what.join(", ");
    let line = by_hand(&packages);
    if !may_install() {
        return Err(Problem::new(format!(
            "the browser tests need {what}. Run this, then try again:\n\n  {line}\n"
        )));
    }
    say(format!(
        "Installing {what} through apt-get (a few minutes, up to 1 GB)"
    ));
    let apt = || {
        let mut command = Command::new("apt-get");
        command.env("DEBIAN_FRONTEND", "noninteractive");
        command
    };
    run(apt().arg("update"))
        .and_then(|()| {
            run(apt()
                .args(["install", "--yes", "--no-install-recommends"])
                .args(&packages))
        })
        .during(format!("installing {what}; by hand it is `{line}`"))
}

/// The line a person would type.
fn by_hand(packages: &[&str]) -> String {
    format!(
        "sudo apt-get update && sudo apt-get install --no-install-recommends {}",
        packages.join(" ")
    )
}

/// Whether this process may install packages.
fn may_install() -> bool {
    let root = printed("id", &["-u"]).is_some_and(|id| id.trim() == "0");
    root && on_path("apt-get").is_some()
}

fn imports(code: &str) -> bool {
    printed(PYTHON, &["-c", code]).is_some()
}

/// The accessibility checker's script, fetched into `.tools/` if need be.
pub fn axe(places: &Places) -> Outcome<PathBuf> {
    let (package, script) = AXE;
    // The version is part of the folder's name, so another one is fetched anew.
    let folder = places.tools().join(package);
    let script = folder.join(script);
    if script.is_file() {
        return Ok(script);
    }
    say("Fetching the accessibility checker (seconds)");
    run(Command::new(PYTHON)
        .args(["-m", "pip", "install", "--quiet", "--no-deps"])
        .args(["--disable-pip-version-check", "--root-user-action=ignore"])
        .arg("--target")
        .arg(&folder)
        .arg(package))?;
    if script.is_file() {
        return Ok(script);
    }
    Err(Problem::new(format!(
        "{package} came without {}",
        script.display()
    )))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_line_to_run_names_every_missing_package() {
        let line = by_hand(&["chromium", "xvfb"]);
        assert!(line.starts_with("sudo apt-get"));
        assert!(line.ends_with("chromium xvfb"));
    }

    #[test]
    fn what_python_cannot_import_is_missing() {
        assert!(!imports("import no_such_thing_as_this"));
    }
}
