//! The three browser engines: what to start and what to ask of it.

use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::{Map, Value, json};

use crate::places::{fixture, program};

/// A family of browsers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Engine {
    /// Chromium.
    Chromium,
    /// Firefox.
    Firefox,
    /// WebKitGTK.
    WebKit,
}

/// Light or dark, as the device asks for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scheme {
    /// For sun.
    Light,
    /// For gloom.
    Dark,
}

/// Whether the browser lets the page keep anything.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Keeping {
    /// As usual.
    Allowed,
    /// Blocked by a setting of the browser's. Chromium then blocks local
    /// storage, IndexedDB and the service worker; the others local storage only.
    Blocked,
}

/// The device that the browser plays.
#[derive(Debug, Clone, Copy)]
pub struct Device {
    /// Width of the page in CSS pixels.
    pub width: u32,
    /// Height of the page in CSS pixels.
    pub height: u32,
    /// Light or dark.
    pub scheme: Scheme,
    /// Whether it keeps anything.
    pub keeping: Keeping,
}

impl Device {
    /// A phone in the hand.
    pub const PHONE: Self = Self {
        width: 360,
        height: 800,
        scheme: Scheme::Light,
        keeping: Keeping::Allowed,
    };

    /// A tablet at the engine stand.
    pub const TABLET: Self = Self {
        width: 1024,
        height: 768,
        ..Self::PHONE
    };

    /// The same with the dark colours.
    pub const fn dark(self) -> Self {
        Self {
            scheme: Scheme::Dark,
            ..self
        }
    }

    /// The same with storage blocked.
    pub const fn blocked(self) -> Self {
        Self {
            keeping: Keeping::Blocked,
            ..self
        }
    }
}

const CHROMIUM_INSTALL: &str = "apt-get install chromium chromium-driver";
const FIREFOX_INSTALL: &str =
    "apt-get install firefox-esr; cargo install geckodriver --version 0.37.1 --root .tools";
const WEBKIT_INSTALL: &str = "apt-get install webkit2gtk-driver gir1.2-webkit2-4.1 python3-gi xvfb";

impl Engine {
    /// The command that starts the engine's driver.
    pub fn driver(self, port: u16) -> Command {
        match self {
            Self::Chromium => {
                let mut command = Command::new(program(
                    &["chromedriver"],
                    &["/usr/bin", "/usr/lib/chromium"],
                    CHROMIUM_INSTALL,
                ));
                command.arg(format!("--port={port}"));
                command
            }
            Self::Firefox => {
                let mut command = Command::new(program(&["geckodriver"], &[], FIREFOX_INSTALL));
                command
                    .args(["--port", &port.to_string(), "--websocket-port", "0"])
                    .args(["--log", "warn"]);
                command
            }
            Self::WebKit => {
                let mut command = Command::new(program(
                    &["WebKitWebDriver"],
                    &["/usr/bin", "/usr/lib/webkit2gtk-4.1"],
                    WEBKIT_INSTALL,
                ));
                command.arg(format!("--port={port}"));
                command
            }
        }
    }

    /// A screen to draw on, for the engine that has no headless way.
    pub fn screen(self) -> Option<Command> {
        (self == Self::WebKit).then(|| {
            let mut command = Command::new(program(&["Xvfb"], &["/usr/bin"], WEBKIT_INSTALL));
            command.args(["-displayfd", "1", "-screen", "0", "1280x1024x24"]);
            command.args(["-nolisten", "tcp"]);
            command
        })
    }

    /// Puts into the profile what has to be there before the first start.
    pub fn prepare(self, profile: &Path) {
        let write = |name: &str, text: &str| {
            let file = profile.join(name);
            std::fs::create_dir_all(file.parent().unwrap()).unwrap();
            std::fs::write(file, text).unwrap();
        };
        std::fs::create_dir_all(profile.join("downloads")).unwrap();
        match self {
            Self::Chromium => {}
            // Its window is never narrower than 450 pixels otherwise, and the
            // bars take height away from the page.
            Self::Firefox => write(
                "chrome/userChrome.css",
                ":root{min-width:0!important} #navigator-toolbox{display:none!important}",
            ),
            Self::WebKit => {
                // The driver starts one executable without arguments.
                write(
                    "host",
                    "#!/bin/sh\nexec /usr/bin/python3 \"$THOUBOOK_HOST\" \"$@\"\n",
                );
                let file = profile.join("host");
                let mut rights = std::fs::metadata(&file).unwrap().permissions();
                std::os::unix::fs::PermissionsExt::set_mode(&mut rights, 0o755);
                std::fs::set_permissions(file, rights).unwrap();
            }
        }
    }

    /// What the driver and through it the browser find in their environment.
    pub fn environment(self, profile: &Path, device: &Device) -> Vec<(&'static str, String)> {
        let flag = |on: bool| String::from(if on { "1" } else { "0" });
        vec![
            ("THOUBOOK_PROFILE", profile.display().to_string()),
            ("THOUBOOK_HOST", text(&fixture("webkit_host.py"))),
            ("THOUBOOK_WATCH", text(&fixture("watch/watch.js"))),
            (
                "THOUBOOK_SIZE",
                format!("{}x{}", device.width, device.height),
            ),
            ("THOUBOOK_DARK", flag(device.scheme == Scheme::Dark)),
            ("THOUBOOK_BLOCK", flag(device.keeping == Keeping::Blocked)),
        ]
    }

    /// What is asked of the driver for a session.
    pub fn capabilities(self, profile: &Path, device: &Device) -> Map<String, Value> {
        let minutes_2 = 120_000;
        let mut wanted = Map::new();
        wanted.insert(
            "timeouts".into(),
            json!({"script": minutes_2, "pageLoad": minutes_2, "implicit": 0}),
        );
        let (key, own) = match self {
            Self::Chromium => ("goog:chromeOptions", chromium(profile, device)),
            Self::Firefox => ("moz:firefoxOptions", firefox(profile, device)),
            Self::WebKit => (
                "webkitgtk:browserOptions",
                json!({"binary": text(&profile.join("host")), "args": []}),
            ),
        };
        wanted.insert(key.into(), own);
        wanted
    }
}

fn chromium(profile: &Path, device: &Device) -> Value {
    let allowed = 1;
    let blocked = 2;
    let keeping = match device.keeping {
        Keeping::Allowed => allowed,
        Keeping::Blocked => blocked,
    };
    json!({
        "binary": text(&program(&["chromium", "chromium-browser"], &["/usr/bin"], CHROMIUM_INSTALL)),
        "args": [
            "--headless=new", "--no-sandbox", "--disable-gpu", "--disable-quic",
            "--no-first-run", "--disable-background-networking",
            "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage",
            format!("--user-data-dir={}", profile.display()),
            format!("--window-size={},{}", device.width, device.height),
        ],
        "mobileEmulation": {
            "deviceMetrics": {
                "width": device.width, "height": device.height,
                "pixelRatio": 1.0, "mobile": true, "touch": true,
            },
        },
        "prefs": {
            "download.default_directory": text(&profile.join("downloads")),
            "profile.default_content_setting_values.cookies": keeping,
        },
    })
}

fn firefox(profile: &Path, device: &Device) -> Value {
    let scheme = match device.scheme {
        Scheme::Dark => 0,
        Scheme::Light => 1,
    };
    json!({
        "binary": text(&program(&["firefox-esr", "firefox"], &["/usr/bin"], FIREFOX_INSTALL)),
        "args": ["-headless", "-profile", text(profile)],
        "prefs": {
            "browser.download.alwaysOpenPanel": false,
            "browser.download.dir": text(&profile.join("downloads")),
            "browser.download.folderList": 2,
            "dom.storage.enabled": device.keeping == Keeping::Allowed,
            "layout.css.prefers-color-scheme.content-override": scheme,
            "toolkit.legacyUserProfileCustomizations.stylesheets": true,
        },
    })
}

fn text(path: &Path) -> String {
    path.display().to_string()
}

/// The folder that is the Firefox add-on which watches a page.
pub fn watch_addon() -> PathBuf {
    fixture("watch")
}
