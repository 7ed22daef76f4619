//! Bringing a build onto the bench of a page that is measured.

use std::path::Path;

use fantoccini::Locator;

use crate::chromium::{Chromium, Failure};
use crate::hosted::Hosted;

/// What holds when something of this name for tests is on the page.
pub fn there(test: &str) -> String {
    format!("return document.querySelector('[data-test={test}]') !== null;")
}

/// Opens the page, brings a file in, and gives the address of its build, `#/build/…`.
pub async fn bring_in(browser: &Chromium, app: &Hosted, file: &Path) -> Result<String, Failure> {
    browser.client.goto(&format!("{}#/", app.address)).await?;
    browser.wait_for("the bench", &there("import-file")).await?;
    let input = browser
        .client
        .find(Locator::Css("[data-test=import-file]"))
        .await?;
    // A driver takes no path with `..` in it.
    let file = file.canonicalize()?;
    input.send_keys(&file.display().to_string()).await?;
    browser
        .wait_for("the build", &there("import-close"))
        .await?;
    browser
        .ask("document.querySelector('[data-test=import-close]').click(); return true;")
        .await?;
    let link = browser
        .wait_for(
            "its card",
            "return document.querySelector('[data-test=build-link]')?.getAttribute('href');",
        )
        .await?;
    let link = link.as_str().unwrap_or_default();
    let build: Vec<&str> = link.split('/').take(3).collect();
    Ok(build.join("/"))
}
