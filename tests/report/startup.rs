//! From going to the page until its first screen stands, on a slowed-down
//! processor, next to a bare page of the same framework.

use std::fmt;

use crate::chromium::{Chromium, Failure};
use crate::figures::{median, spread};
use crate::hosted::Hosted;

/// How much slower than this machine. A mid-range phone is about that.
const SLOWER: u32 = 6;

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

/// The requests of somebody who has never been here.
pub async fn first_visit(page: &Hosted) -> Result<Vec<String>, Failure> {
    page.take_requests();
    let browser = Chromium::open().await?;
    browser.client.goto(&page.address).await?;
    browser.wait_for("the page to start", READY).await?;
    browser.wait_for("the page to be kept", KEPT).await?;
    browser.close().await?;
    Ok(page.take_requests())
}

/// Start-up times of two pages, in milliseconds.
pub struct Startup {
    app: Times,
    bare: Times,
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
    };
    for _ in 0..COLD_RUNS {
        startup.app.cold.push(cold(app).await?);
        startup.bare.cold.push(cold(bare).await?);
    }
    let (one, other) = (visited(app).await?, visited(bare).await?);
    for run in 0..BEFORE_WARM + WARM_RUNS {
        let (of_app, of_bare) = (start(&one, app).await?, start(&other, bare).await?);
        if run >= BEFORE_WARM {
            startup.app.warm.push(of_app);
            startup.bare.warm.push(of_bare);
        }
    }
    one.close().await?;
    other.close().await?;
    Ok(startup)
}

/// One start in a browser that has never been there.
async fn cold(page: &Hosted) -> Result<f64, Failure> {
    let browser = Chromium::open().await?;
    let took = start(&browser, page).await?;
    browser.close().await?;
    Ok(took)
}

/// A browser that has been there and has the page kept.
async fn visited(page: &Hosted) -> Result<Chromium, Failure> {
    let browser = Chromium::open().await?;
    browser.client.goto(&page.address).await?;
    browser.wait_for("the page to be kept", KEPT).await?;
    Ok(browser)
}

/// Goes to the page on a slowed-down processor.
async fn start(browser: &Chromium, page: &Hosted) -> Result<f64, Failure> {
    browser.client.goto("about:blank").await?;
    browser.slow_down(SLOWER).await?;
    browser.client.goto(&page.address).await?;
    let ready = browser.wait_for("the page to start", READY).await?;
    let slowed = number(&browser.ask(WORK).await?)?;
    browser.slow_down(1).await?;
    let usual = number(&browser.ask(WORK).await?)?;
    // Half of what was asked for: a doubt about the slowing down itself, not
    // a limit on anything of ours.
    if slowed < usual * f64::from(SLOWER) / 2.0 {
        return Err(Failure::new(format!(
            "the processor was not slowed down: the same work took {slowed:.1} ms and {usual:.1} ms"
        )));
    }
    number(&ready)
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
            "Start-up at {SLOWER} times slower, median (least to most)"
        )?;
        writeln!(f, "  cold  app   {}", spread(&self.app.cold))?;
        writeln!(f, "        bare  {}", spread(&self.bare.cold))?;
        writeln!(f, "        ratio {:7.2}", self.cold_ratio())?;
        writeln!(f, "  warm  app   {}", spread(&self.app.warm))?;
        writeln!(f, "        bare  {}", spread(&self.bare.warm))?;
        write!(f, "        ratio {:7.2}", self.warm_ratio())
    }
}
