//! For everyone: in sun and gloom, with a screen reader, on a narrow screen.
//! The checker is axe-core.

use serde_json::{Value, json};

use crate::engine::{Device, Engine};
use crate::page::Page;
use crate::places;
use crate::rig::{Rig, run};

/// Every violation, a line each, with the first place where it is.
pub async fn violations(page: &Page) -> Vec<String> {
    let checker = std::fs::read_to_string(places::axe()).unwrap();
    page.script(&format!("{checker}; window.axe = axe ?? window.axe;"), vec![])
        .await;
    let found = page
        .script(
            "return axe.run(document, { resultTypes: ['violations'] }).then((result) =>
                result.violations.map((one) =>
                    `${one.id}: ${one.help}: ${one.nodes.map((node) => node.target.join(' ')).join(', ')}`))",
            vec![],
        )
        .await;
    serde_json::from_value(found).unwrap()
}

/// Whether the page is wider than the screen, and what makes it so.
async fn sticking_out(page: &Page) -> Value {
    page.script(
        "const width = document.documentElement.clientWidth;
        if (document.scrollingElement.scrollWidth <= width) return [];
        return [...document.body.querySelectorAll('*')]
            .filter((thing) => thing.getBoundingClientRect().right > width + 1)
            .map((thing) => thing.tagName + '.' + thing.className).slice(0, 5)",
        vec![],
    )
    .await
}
