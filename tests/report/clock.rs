//! The clock that runs in the page, from an event to the frame that shows what
//! came of it.
//!
//! It starts with the browser's own time stamp of the event, so it counts the
//! wait for a page that is busy, and stops behind the painting of the next frame,
//! so it counts the wait for that frame as well: up to 17 ms of it are the
//! screen's and not the page's. What the driver needs is not in it. Beside the
//! page's own control stands one that changes a letter and no more; what the page
//! costs is what it takes longer than that.

use serde_json::Value;

use crate::chromium::{Chromium, Failure};
use crate::figures::{at_percent, median, spread};

/// Gives the page a clock: `window.time(what, event)` starts it at that event.
const CLOCK: &str = "
    window.waits = [];
    window.time = (what, event) => requestAnimationFrame(() => setTimeout(() =>
        window.waits.push([what, performance.now() - event.timeStamp])));
    return true;";

/// What the bare control is called.
pub const BARE: &str = "bare";

/// Waits for the page, in milliseconds, each with what was waited for.
pub struct Waits(Vec<(String, f64)>);

/// Puts the clock into the page.
pub async fn set_up(browser: &Chromium) -> Result<(), Failure> {
    browser.ask(CLOCK).await.map(drop)
}

/// Waits until so many events have been timed.
pub async fn timed(browser: &Chromium, count: usize) -> Result<(), Failure> {
    let done = format!("return window.waits.length >= {count};");
    let waited = browser.wait_for("the frame after an event", &done);
    waited.await.map(drop)
}

/// All that was timed.
pub async fn read(browser: &Chromium) -> Result<Waits, Failure> {
    let waits: Value = browser.ask("return window.waits;").await?;
    Ok(Waits(serde_json::from_value(waits)?))
}

impl Waits {
    /// Those of which this holds.
    pub fn of(&self, holds: impl Fn(&str) -> bool) -> Vec<f64> {
        let own = self.0.iter().filter(|(what, _)| holds(what));
        own.map(|(_, wait)| *wait).collect()
    }
}

/// The waits for one thing beside those for the bare control.
pub fn beside(waits: &[f64], bare: &[f64]) -> String {
    let bare = median(bare);
    format!(
        "{}\n      on top of the bare one {:.1} ms, 95 in 100 within {:.1} ms",
        spread(waits),
        median(waits) - bare,
        at_percent(waits, 95) - bare
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_the_bare_control_takes_is_taken_off() {
        let waits = Waits(vec![
            (BARE.to_owned(), 10.0),
            ("tap".to_owned(), 14.0),
            ("tap".to_owned(), 18.0),
        ]);
        let (bare, taps) = (waits.of(|of| of == BARE), waits.of(|of| of != BARE));
        let said = beside(&taps, &bare);
        assert!(said.contains("one 4.0 ms, 95 in 100 within 8.0"), "{said}");
    }
}
