//! From a key to the painted verdict, on the quick check of a running
//! clearance.

use std::fmt;

use fantoccini::Locator;

use crate::chromium::{Chromium, Failure};
use crate::figures::spread;
use crate::hosted::Hosted;

/// The check and what is typed into it: an invented bearing of two inches with
/// two thousandths of clearance. The digit that is added makes that one: far
/// more than the give-or-take, by which the answer is rounded.
const CHECK: &str = "#/quick/running-clearance";
const TYPED: [(&str, &str); 4] = [
    ("field-bore-1", "2.0020 in"),
    ("field-limit-low", "0.0010 in"),
    ("field-limit-high", "0.0030 in"),
    ("field-journal-1", "2.000"),
];

/// The field that is typed into while the clock runs.
const FIELD: &str = "field-journal-1";

/// The key that adds a digit which moves the answer, and the key that takes it
/// away again.
const KEYS: [&str; 2] = ["9", "\u{e003}"];

/// Pairs of keys that are timed.
const PAIRS: usize = 12;

/// Starts a clock at each key and stops it after the frame in which the answer
/// first reads differently. The key's own time stamp is the browser's.
const CLOCK: &str = "
    const answer = () => document.querySelector('[data-test=reading]')?.textContent;
    window.waits = [];
    addEventListener('keydown', (event) => {
        const before = answer();
        const look = () => {
            if (answer() === before) return requestAnimationFrame(look);
            setTimeout(() => window.waits.push(performance.now() - event.timeStamp));
        };
        requestAnimationFrame(look);
    }, true);
    return true;";

/// Waits for a verdict, in milliseconds.
pub struct Keystroke {
    runs: Vec<(u32, Vec<f64>)>,
}

/// Measures at this machine's own speed and slowed down.
pub async fn measure(app: &Hosted) -> Result<Keystroke, Failure> {
    let browser = Chromium::open().await?;
    browser
        .client
        .goto(&format!("{}{CHECK}", app.address))
        .await?;
    for (field, text) in TYPED {
        type_into(&browser, field, text).await?;
    }
    browser
        .wait_for("a verdict", "return document.querySelector('[data-test=verdict]') !== null && document.querySelector('[data-test=reading]') !== null;")
        .await?;
    browser.ask(CLOCK).await?;
    let mut runs = Vec::new();
    for slower in [1, 6] {
        browser.slow_down(slower).await?;
        runs.push((slower, timed(&browser).await?));
    }
    browser.close().await?;
    Ok(Keystroke { runs })
}

async fn timed(browser: &Chromium) -> Result<Vec<f64>, Failure> {
    browser.ask("window.waits = []; return true;").await?;
    for pair in 0..PAIRS {
        for (at, key) in KEYS.iter().enumerate() {
            type_into(browser, FIELD, key).await?;
            let so_far = pair * KEYS.len() + at + 1;
            browser
                .wait_for(
                    "the verdict to change",
                    &format!("return window.waits.length >= {so_far};"),
                )
                .await?;
        }
    }
    let waits = browser.ask("return window.waits;").await?;
    let waits: Vec<f64> = waits
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|wait| wait.as_f64())
        .collect();
    if waits.len() == PAIRS * KEYS.len() {
        return Ok(waits);
    }
    Err(Failure::new(format!(
        "{} keys gave {} verdicts",
        PAIRS * KEYS.len(),
        waits.len()
    )))
}

async fn type_into(browser: &Chromium, field: &str, text: &str) -> Result<(), Failure> {
    let selector = format!("[data-test={field}]");
    browser
        .wait_for(
            &selector,
            &format!("return document.querySelector('{selector}') !== null;"),
        )
        .await?;
    let input = browser.client.find(Locator::Css(&selector)).await?;
    Ok(input.send_keys(text).await?)
}

impl fmt::Display for Keystroke {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "From a key to the painted verdict, median (least to most)"
        )?;
        for (slower, waits) in &self.runs {
            write!(f, "\n  at {slower} times slower  {}", spread(waits))?;
        }
        Ok(())
    }
}
