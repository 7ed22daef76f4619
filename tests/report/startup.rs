//! From going to the page until its first screen stands, on a slowed-down
//! processor, next to a bare page of the same framework.

use std::fmt;

use crate::chromium::{Chromium, Failure};
use crate::figures::{median, spread};
use crate::hosted::Hosted;

/// How much slower than this machine. A mid-range phone is about that.
const SLOWER: u32 = 6;

/// With less than this it was not slowed down at all.
const LEAST_SLOWER: f64 = 1.5;

/// Starts of each kind that count.
const COLD_RUNS: usize = 7;
const WARM_RUNS: usize = 15;

/// Warm starts that don't count: a browser keeps compiled code only from the
/// second or third visit on.
const BEFORE_WARM: usize = 3;

/// The page's own word that its first screen stands, in milliseconds since
/// the browser set out for it.
const READY: &str = "const [mark] = performance.getEntriesByName('thoubook-ready'); return mark ? mark.startTime : null;";

/// The worker has the page, and everything it keeps.
const KEPT: &str = "return navigator.serviceWorker.controller !== null;";

/// A fixed piece of work, to see whether the processor is slowed down. The
/// least of several goes, since the machine has other work too.
const WORK: &str = "
    const go = () => {
        const start = performance.now();
        let sum = 0;
        for (let at = 0; at < 1e7; at += 1) sum += at % 7;
        return sum && performance.now() - start;
    };
    return Math.min(go(), go(), go(), go());";

/// What the page itself has asked for. The worker's own requests are not in
/// this list.
const ASKED_FOR: &str =
    "return performance.getEntriesByType('resource').map((one) => new URL(one.name).pathname);";

/// The requests of somebody who has never been here.
pub struct Visit {
    /// What the page needed to start, and the worker's script.
    pub loaded: Vec<String>,
    /// What the worker fetched behind it, for opening without a signal.
    pub kept: Vec<String>,
}

/// Goes there for the first time, waits until all is kept, and leaves.
pub async fn first_visit(page: &Hosted) -> Result<Visit, Failure> {
    page.take_requests();
    let browser = Chromium::open().await?;
    browser.client.goto(&page.address).await?;
    browser.wait_for("the page to start", READY).await?;
    browser.wait_for("the page to be kept", KEPT).await?;
    let asked_for = browser.ask(ASKED_FOR).await?;
    browser.close().await?;
    let mut own: Vec<String> = serde_json::from_value(asked_for)?;
    own.extend(["/".to_owned(), "/sw.js".to_owned()]);
    // The first request for a file of the page's own is the page's.
    let (loaded, kept) = page.take_requests().into_iter().partition(|request| {
        let path = request.split(' ').nth(1).unwrap_or_default();
        let found = own.iter().position(|one| one == path);
        found.map(|at| own.swap_remove(at)).is_some()
    });
    Ok(Visit { loaded, kept })
}

/// Start-up times of two pages, in milliseconds.
pub struct Startup {
    app: Times,
    bare: Times,
    /// How many times as long the same work took, start by start. On a machine
    /// with other work a browser does not reach what was asked of it.
    slower: Vec<f64>,
}

#[derive(Default)]
struct Times {
    cold: Vec<f64>,
    warm: Vec<f64>,
}

impl Startup {
    /// The app's warm start as a multiple of the bare page's.
    pub fn warm_ratio(&self) -> f64 {
        median(&self.app.warm) / median(&self.bare.warm)
    }

    fn cold_ratio(&self) -> f64 {
        median(&self.app.cold) / median(&self.bare.cold)
    }
}

/// Measures both pages by turns, so that whatever else the machine is doing
/// falls on both.
pub async fn measure(app: &Hosted, bare: &Hosted) -> Result<Startup, Failure> {
    println!("Measuring start-up (a few minutes)");
    let mut startup = Startup {
        app: Times::default(),
        bare: Times::default(),
        slower: Vec::new(),
    };
    for _ in 0..COLD_RUNS {
        for (page, times) in [(app, &mut startup.app), (bare, &mut startup.bare)] {
            let browser = Chromium::open().await?;
            let start = start(&browser, page).await?;
            browser.close().await?;
            times.cold.push(start.took);
            startup.slower.push(start.slower);
        }
    }
    let (one, other) = (visited(app).await?, visited(bare).await?);
    for run in 0..BEFORE_WARM + WARM_RUNS {
        let starts = (start(&one, app).await?, start(&other, bare).await?);
        if run >= BEFORE_WARM {
            startup.app.warm.push(starts.0.took);
            startup.bare.warm.push(starts.1.took);
            startup.slower.extend([starts.0.slower, starts.1.slower]);
        }
    }
    one.close().await?;
    other.close().await?;
    if median(&startup.slower) < LEAST_SLOWER {
        return Err(Failure::new("the browser did not slow the processor down"));
    }
    Ok(startup)
}

/// A browser that has been there and has the page kept.
async fn visited(page: &Hosted) -> Result<Chromium, Failure> {
    let browser = Chromium::open().await?;
    browser.client.goto(&page.address).await?;
    browser.wait_for("the page to be kept", KEPT).await?;
    Ok(browser)
}

/// One start.
struct Start {
    took: f64,
    slower: f64,
}

/// Goes to the page on a slowed-down processor.
async fn start(browser: &Chromium, page: &Hosted) -> Result<Start, Failure> {
    browser.client.goto("about:blank").await?;
    browser.clear_away().await?;
    browser.slow_down(SLOWER).await?;
    browser.client.goto(&page.address).await?;
    let took = number(&browser.wait_for("the page to start", READY).await?)?;
    let slowed = number(&browser.ask(WORK).await?)?;
    browser.slow_down(1).await?;
    let usual = number(&browser.ask(WORK).await?)?;
    Ok(Start {
        took,
        slower: slowed / usual,
    })
}

fn number(value: &serde_json::Value) -> Result<f64, Failure> {
    value
        .as_f64()
        .ok_or_else(|| Failure::new(format!("the page gave {value} for a time")))
}

impl fmt::Display for Startup {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(
            f,
            "Start-up at {SLOWER} times slower (work took {:.1} times as long), median (least to most)",
            median(&self.slower)
        )?;
        writeln!(f, "  cold  app   {}", spread(&self.app.cold))?;
        writeln!(f, "        bare  {}", spread(&self.bare.cold))?;
        writeln!(f, "        ratio {:7.2}", self.cold_ratio())?;
        writeln!(f, "  warm  app   {}", spread(&self.app.warm))?;
        writeln!(f, "        bare  {}", spread(&self.bare.warm))?;
        write!(f, "        ratio {:7.2}", self.warm_ratio())
    }
}
