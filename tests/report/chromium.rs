//! One headless Chromium, slowed down on demand.

use std::net::{Ipv4Addr, TcpListener};
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use fantoccini::wd::{Capabilities, WebDriverCompatibleCommand};
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};

/// Why the report could not be made.
#[derive(Debug)]
pub struct Failure(String);

impl Failure {
    /// A failure in these words.
    pub fn new(words: impl Into<String>) -> Self {
        Self(words.into())
    }
}

impl std::fmt::Display for Failure {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

impl<E: std::error::Error> From<E> for Failure {
    fn from(cause: E) -> Self {
        Self(cause.to_string())
    }
}

/// A browser with a profile of its own that has never been anywhere.
pub struct Chromium {
    /// The way to it.
    pub client: Client,
    driver: Child,
}

/// How often something is looked for before the report gives up. A slow
/// machine gets minutes.
const LOOKS: u32 = 1200;

impl Chromium {
    /// Starts one.
    pub async fn open() -> Result<Self, Failure> {
        let port = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?
            .local_addr()?
            .port();
        let driver = Command::new("chromedriver")
            .arg(format!("--port={port}"))
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()?;
        let mut browser = Starting {
            driver: Some(driver),
        };
        let mut last = Failure::new("the driver was not asked");
        for _ in 0..LOOKS {
            match connect(port).await {
                Ok(client) => {
                    let driver = browser
                        .driver
                        .take()
                        .ok_or_else(|| Failure::new("no driver"))?;
                    return Ok(Self { client, driver });
                }
                Err(failure) => last = failure,
            }
            pause().await;
        }
        Err(last)
    }

    /// Slows the processor down for the page that is open, so many times.
    pub async fn slow_down(&self, times: u32) -> Result<(), Failure> {
        let command = json!({"cmd": "Emulation.setCPUThrottlingRate", "params": {"rate": times}});
        self.client.issue_cmd(Devtools(command)).await?;
        Ok(())
    }

    /// Clears away what pages before have left, so that it is not done in the
    /// middle of the next one.
    pub async fn clear_away(&self) -> Result<(), Failure> {
        let command = json!({"cmd": "HeapProfiler.collectGarbage", "params": {}});
        self.client.issue_cmd(Devtools(command)).await?;
        Ok(())
    }

    /// Runs a function's body in the page.
    pub async fn ask(&self, body: &str) -> Result<Value, Failure> {
        Ok(self.client.execute(body, Vec::new()).await?)
    }

    /// Runs it until it gives something other than null or false.
    pub async fn wait_for(&self, what: &str, body: &str) -> Result<Value, Failure> {
        for _ in 0..LOOKS {
            let answer = self.ask(body).await?;
            if !matches!(answer, Value::Null | Value::Bool(false)) {
                return Ok(answer);
            }
            pause().await;
        }
        Err(Failure::new(format!("waited in vain for {what}")))
    }

    /// Ends it.
    pub async fn close(self) -> Result<(), Failure> {
        Ok(self.client.clone().close().await?)
    }
}

impl Drop for Chromium {
    fn drop(&mut self) {
        // It may have ended by itself.
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}

/// A driver that no browser hangs on yet.
struct Starting {
    driver: Option<Child>,
}

impl Drop for Starting {
    fn drop(&mut self) {
        if let Some(driver) = &mut self.driver {
            let _ = driver.kill();
            let _ = driver.wait();
        }
    }
}

async fn connect(port: u16) -> Result<Client, Failure> {
    let arguments = [
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
    ];
    let mut capabilities = Capabilities::new();
    capabilities.insert("goog:chromeOptions".to_owned(), json!({"args": arguments}));
    let client = ClientBuilder::new(HttpConnector::new())
        .capabilities(capabilities)
        .connect(&format!("http://127.0.0.1:{port}"))
        .await?;
    Ok(client)
}

async fn pause() {
    tokio::time::sleep(Duration::from_millis(100)).await;
}

/// A command of the devtools, which only Chromium's driver knows.
#[derive(Debug)]
struct Devtools(Value);

impl WebDriverCompatibleCommand for Devtools {
    fn endpoint(
        &self,
        base: &url::Url,
        session: Option<&str>,
    ) -> Result<url::Url, url::ParseError> {
        base.join(&format!(
            "session/{}/goog/cdp/execute",
            session.unwrap_or_default()
        ))
    }

    fn method_and_body(&self, _: &url::Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(self.0.to_string()))
    }
}
