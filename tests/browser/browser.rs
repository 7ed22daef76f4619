//! One browser with one profile, driven through WebDriver.

use std::collections::BTreeSet;
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};
use std::time::Duration;

use fantoccini::wd::{WebDriverCompatibleCommand, WindowHandle};
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};

use crate::engine::{Device, Engine, Scheme, watch_addon};
use crate::process::{Group, kill_all_with};
use crate::wait::until_now;

/// A running browser. It is killed when it is dropped.
pub struct Browser {
    /// The way to it.
    pub client: Client,
    engine: Engine,
    device: Device,
    profile: PathBuf,
    driver: Group,
    // Kept for as long as the browser draws on it.
    screen: Option<Group>,
}

impl Browser {
    /// Starts the engine with this profile, new or used before.
    pub async fn open(engine: Engine, profile: &Path, device: &Device) -> Self {
        // A browser now and then fails to start on a busy machine. The page
        // has no part in that, so a second try hides nothing.
        match Self::start(engine, profile, device).await {
            Ok(browser) => browser,
            Err(first) => {
                eprintln!("{engine:?} did not start, once more: {first}");
                tokio::time::sleep(Duration::from_secs(2)).await;
                Self::start(engine, profile, device)
                    .await
                    .unwrap_or_else(|again| panic!("{engine:?} does not start: {again}"))
            }
        }
    }

    async fn start(engine: Engine, profile: &Path, device: &Device) -> Result<Self, String> {
        engine.prepare(profile);
        let port = free_port();
        let mut command = engine.driver(port);
        let screen = engine.screen().map(|mut wanted| {
            let log = profile.with_extension("screen.log");
            let _ = std::fs::remove_file(&log);
            let screen = Group::start(&mut wanted, &log);
            command.env("DISPLAY", format!(":{}", display(&log)));
            screen
        });
        command.envs(engine.environment(profile, device));
        let mut driver = Group::start(&mut command, &profile.with_extension("driver.log"));
        until_now("the driver to listen", || {
            let there = TcpStream::connect((Ipv4Addr::LOCALHOST, port)).is_ok();
            (there || !driver.is_alive()).then_some(())
        });
        let client = ClientBuilder::new(HttpConnector::new())
            .capabilities(engine.capabilities(profile, device))
            .connect(&format!("http://127.0.0.1:{port}"))
            .await
            .map_err(|cause| {
                kill_all_with(&profile.display().to_string());
                cause.to_string()
            })?;
        let browser = Self {
            client,
            engine,
            device: *device,
            profile: profile.to_owned(),
            driver,
            screen,
        };
        browser
            .furnish(engine, device)
            .await
            .map_err(|cause| cause.to_string())?;
        Ok(browser)
    }

    /// What capabilities can't say.
    async fn furnish(
        &self,
        engine: Engine,
        device: &Device,
    ) -> Result<(), fantoccini::error::CmdError> {
        match engine {
            Engine::Chromium => {
                let watch = std::fs::read_to_string(crate::places::fixture("watch/watch.js"))?;
                self.devtools(
                    "Page.addScriptToEvaluateOnNewDocument",
                    json!({"source": watch}),
                )
                .await?;
                let scheme = match device.scheme {
                    Scheme::Light => "light",
                    Scheme::Dark => "dark",
                };
                let features = json!([{"name": "prefers-color-scheme", "value": scheme}]);
                self.devtools("Emulation.setEmulatedMedia", json!({"features": features}))
                    .await?;
            }
            Engine::Firefox => {
                let addon = json!({"path": watch_addon(), "temporary": true});
                self.own("moz/addon/install", addon).await?;
                self.client
                    .set_window_size(device.width, device.height)
                    .await?;
            }
            Engine::WebKit => {}
        }
        Ok(())
    }

    /// Opens one more tab and turns to it.
    pub async fn new_tab(&self) -> Result<WindowHandle, fantoccini::error::CmdError> {
        let tab = self.client.new_window(true).await?.handle;
        self.client.switch_to_window(tab.clone()).await?;
        // The others watch every tab by themselves.
        if self.engine == Engine::Chromium {
            self.furnish(self.engine, &self.device).await?;
        }
        Ok(tab)
    }

    /// A command of the Chromium devtools.
    pub async fn devtools(
        &self,
        command: &str,
        parameters: Value,
    ) -> Result<Value, fantoccini::error::CmdError> {
        let body = json!({"cmd": command, "params": parameters});
        self.own("goog/cdp/execute", body).await
    }

    async fn own(
        &self,
        path: &'static str,
        body: Value,
    ) -> Result<Value, fantoccini::error::CmdError> {
        self.client.issue_cmd(Own { path, body }).await
    }

    /// SIGKILL to the browser, all its processes and the driver at once.
    pub fn kill(&mut self) {
        self.driver.kill();
        // The browser's own children may have groups of their own.
        let profile = self.profile.display().to_string();
        until_now("every process of the browser to be gone", || {
            (kill_all_with(&profile) == 0).then_some(())
        });
        self.screen = None;
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        self.kill();
    }
}

/// The number of the display that the screen server took.
fn display(log: &Path) -> u32 {
    until_now("the screen server to say its number", || {
        let said = std::fs::read_to_string(log).unwrap_or_default();
        said.lines().find_map(|line| line.trim().parse().ok())
    })
}

/// A port that nobody listens on, and that no other test was given.
fn free_port() -> u16 {
    static GIVEN: Mutex<BTreeSet<u16>> = Mutex::new(BTreeSet::new());
    loop {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
        let port = listener.local_addr().unwrap().port();
        let mut given = GIVEN.lock().unwrap_or_else(PoisonError::into_inner);
        if given.insert(port) {
            return port;
        }
    }
}

/// A command that only one driver knows.
#[derive(Debug)]
struct Own {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Own {
    fn endpoint(
        &self,
        base_url: &url::Url,
        session_id: Option<&str>,
    ) -> Result<url::Url, url::ParseError> {
        base_url.join(&format!(
            "session/{}/{}",
            session_id.unwrap_or_default(),
            self.path
        ))
    }

    fn method_and_body(&self, _: &url::Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(self.body.to_string()))
    }
}
