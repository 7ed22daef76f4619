//! What one test gets: a server, a browser with a profile of its own, and a
//! picture of the end when it fails.

use std::panic::{AssertUnwindSafe, resume_unwind};
use std::path::{Path, PathBuf};
use std::sync::{Condvar, Mutex, PoisonError};

use futures_util::FutureExt as _;

use crate::browser::Browser;
use crate::engine::{Device, Engine};
use crate::page::Page;
use crate::places;
use crate::second_build;
use crate::server::Server;

/// One browser at a time: with two of them WebKitGTK now and then left a write
/// to its database unanswered, or ended in its own memory.
const AT_ONCE: usize = 1;

/// How many tests have a browser now.
static RUNNING: Mutex<usize> = Mutex::new(0);
static ONE_IS_DONE: Condvar = Condvar::new();

/// Leave to run, for as long as it is held.
struct Turn;

impl Turn {
    fn take() -> Self {
        let cores = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
        let running = RUNNING.lock().unwrap_or_else(PoisonError::into_inner);
        let mut running = ONE_IS_DONE
            .wait_while(running, |running| *running >= cores.min(AT_ONCE))
            .unwrap_or_else(PoisonError::into_inner);
        *running += 1;
        Self
    }
}

impl Drop for Turn {
    fn drop(&mut self) {
        *RUNNING.lock().unwrap_or_else(PoisonError::into_inner) -= 1;
        ONE_IS_DONE.notify_one();
    }
}

/// All that a test works with.
pub struct Rig {
    /// Which engine it is about.
    pub engine: Engine,
    /// The device it plays; set it before the first opening.
    pub device: Device,
    /// Serves the page, until it is stopped.
    pub server: Server,
    folder: PathBuf,
    profile: &'static str,
    browser: Option<Browser>,
}

/// Runs one flow in one engine.
pub fn run(engine: Engine, fact: &str, flow: impl AsyncFnOnce(&mut Rig)) {
    run_with(engine, fact, &places::dist(), "/", flow);
}

/// The same with another page than the app's, or under another path.
pub fn run_with(
    engine: Engine,
    fact: &str,
    dist: &Path,
    base: &str,
    flow: impl AsyncFnOnce(&mut Rig),
) {
    let _turn = Turn::take();
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .unwrap();
    runtime.block_on(async {
        let mut rig = Rig::set_up(engine, fact, dist, base);
        let end = AssertUnwindSafe(flow(&mut rig)).catch_unwind().await;
        if let Err(cause) = end {
            rig.tell_how_it_ended(fact).await;
            rig.tear_down();
            resume_unwind(cause);
        }
        rig.tear_down();
    });
}

impl Rig {
    fn set_up(engine: Engine, fact: &str, dist: &Path, base: &str) -> Self {
        let name = format!("thoubook-{}-{fact}-{engine:?}", std::process::id());
        let folder = std::env::temp_dir().join(name.to_lowercase());
        let _ = std::fs::remove_dir_all(&folder);
        std::fs::create_dir_all(&folder).unwrap();
        let server = Server::start(dist, base, &folder.join("server.log"));
        Self {
            engine,
            device: Device::PHONE,
            server,
            folder,
            profile: "profile",
            browser: None,
        }
    }

    fn tear_down(mut self) {
        self.browser = None;
        self.server.stop();
        let _ = std::fs::remove_dir_all(&self.folder);
    }

    /// Serves a copy of the page from now on, which the test may change, and
    /// says where the copy is.
    pub fn serve_a_copy(&mut self) -> PathBuf {
        let site = self.file("site");
        second_build::copy(&places::dist(), &site);
        self.server = Server::start(&site, "/", &self.file("copy.log"));
        site
    }

    /// A file of this test's own.
    pub fn file(&self, name: &str) -> PathBuf {
        self.folder.join(name)
    }

    /// Where the browser keeps everything.
    pub fn profile(&self) -> PathBuf {
        self.folder.join(self.profile)
    }

    /// Starts the browser if it isn't there, opens the app and waits until it
    /// stands.
    pub async fn open(&mut self) -> Page {
        let page = self.open_address("").await;
        page.wait_until_it_stands().await;
        page
    }

    /// Starts the browser if it isn't there and opens an address below the
    /// server's, such as `#/quick`.
    pub async fn open_address(&mut self, address: &str) -> Page {
        let page = self.open_blank().await;
        page.go(&format!("{}{address}", self.server.address()))
            .await;
        page
    }

    /// Starts the browser if it isn't there.
    pub async fn open_blank(&mut self) -> Page {
        if self.browser.is_none() {
            self.browser = Some(Browser::open(self.engine, &self.profile(), &self.device).await);
        }
        self.page()
    }

    /// The page in the open browser.
    pub fn page(&self) -> Page {
        Page::of(self.browser().client.clone())
    }

    /// The open browser itself.
    pub fn browser(&self) -> &Browser {
        self.browser.as_ref().expect("the browser is open")
    }

    /// Puts the device in hand away and takes up another one, with a profile of
    /// its own that it keeps for as long as the test lasts. One browser runs at
    /// a time.
    pub async fn take_up(&mut self, name: &'static str, device: Device) -> Page {
        self.browser = None;
        self.profile = name;
        self.device = device;
        self.open().await
    }

    /// SIGKILL to the browser. The next opening starts it again with the same
    /// profile.
    pub fn kill_browser(&mut self) {
        self.browser = None;
    }

    /// Prints what is known about a failure, and keeps a picture of it.
    async fn tell_how_it_ended(&self, fact: &str) {
        let Some(browser) = &self.browser else {
            return;
        };
        let page = Page::of(browser.client.clone());
        let name = format!("{fact}-{:?}", self.engine).to_lowercase();
        let picture = places::pictures().join(format!("failed/{name}.png"));
        if let Ok(png) = browser.client.screenshot().await {
            let _ = std::fs::create_dir_all(picture.parent().unwrap());
            let _ = std::fs::write(&picture, png);
            eprintln!("A picture of the end: {}", picture.display());
        }
        if let Ok(address) = browser.client.current_url().await {
            eprintln!("The page was at {address}");
        }
        eprintln!("It went wrong there: {:?}", page.trouble_or_none().await);
        eprintln!("The page said:\n{}", page.text_or_none().await);
    }
}
