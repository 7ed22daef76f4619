//! How long a film of a bearing takes to solve in the page: thirteen of them are
//! drawn on the film chart of a build, and the page marks where they begin and end.

use std::fmt;
use std::path::Path;

use crate::bench::{bring_in, there};
use crate::chromium::{Chromium, Failure};
use crate::figures::spread;
use crate::hosted::Hosted;

/// The invented engine up to its first hour.
const BUILD: &str = "crates/build-journal/fixtures/first-hour-1.json";

/// Films on the chart.
const FILMS: f64 = 13.0;

/// How often the chart is drawn.
const TIMES: usize = 8;

/// Times of one film, in milliseconds, at the machine's own speed and slowed down.
pub struct Films {
    runs: Vec<(u32, Vec<f64>)>,
}

/// Measures at this machine's own speed and slowed down.
pub async fn measure(app: &Hosted) -> Result<Films, Failure> {
    let browser = Chromium::open().await?;
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let build = bring_in(&browser, app, &root.join(BUILD)).await?;
    browser
        .ask(&format!("window.film = '{build}/oil/film'; return true;"))
        .await?;
    let mut runs = Vec::new();
    for slower in [1, 6] {
        browser.slow_down(slower).await?;
        let mut times = Vec::new();
        for _ in 0..TIMES {
            times.push(once(&browser).await? / FILMS);
        }
        runs.push((slower, times));
    }
    browser.close().await?;
    Ok(Films { runs })
}

/// Draws the chart once and gives the milliseconds of all its films.
async fn once(browser: &Chromium) -> Result<f64, Failure> {
    browser
        .ask("performance.clearMarks(); location.hash = '#/'; return true;")
        .await?;
    browser.wait_for("the bench", &there("new-build")).await?;
    browser
        .ask("location.hash = window.film; return true;")
        .await?;
    browser
        .wait_for(
            "the films",
            "return performance.getEntriesByName('thoubook-films-end').length > 0;",
        )
        .await?;
    let took = browser
        .ask(
            "const at = (name) => performance.getEntriesByName(name)[0].startTime;
            return at('thoubook-films-end') - at('thoubook-films-begin');",
        )
        .await?;
    took.as_f64()
        .ok_or_else(|| Failure::new("the page did not mark its films"))
}

impl fmt::Display for Films {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "A film of a bearing to half a per cent, in the page")?;
        for (slower, times) in &self.runs {
            write!(f, "\n  at {slower} times slower  {}", spread(times))?;
        }
        Ok(())
    }
}
