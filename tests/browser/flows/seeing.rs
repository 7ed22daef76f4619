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
    page.script(
        &format!("{checker}; window.axe = axe ?? window.axe;"),
        vec![],
    )
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
pub async fn sticking_out(page: &Page) -> Value {
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

/// Everything that a stranger sees first, with a build on the device.
async fn every_screen_is_for_everyone(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&crate::builds::five_mains()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    let build = page.client.current_url().await.unwrap();
    let build = build
        .fragment()
        .unwrap()
        .trim_end_matches("/mains")
        .to_owned();
    let mut found = Vec::new();
    for screen in [
        "/".to_owned(),
        "/new".to_owned(),
        "/quick".to_owned(),
        "/quick/running-clearance".to_owned(),
        "/quick/running-clearance-strip".to_owned(),
        "/no-such-place".to_owned(),
        format!("{build}/mains"),
        format!("{build}/mains/1"),
        format!("{build}/mains/limits"),
        format!("{build}/tools"),
        format!("{build}/book"),
    ] {
        page.go_to(&format!("#{screen}")).await;
        page.open_all_folds().await;
        if screen == "/quick/running-clearance" {
            page.enter("bore-1", "2.4504").await;
            page.enter("journal-1", "2.4483").await;
        }
        for violation in violations(&page).await {
            found.push(format!("{screen}: {violation}"));
        }
        let out = sticking_out(&page).await;
        if out != json!([]) {
            found.push(format!("{screen} is wider than the screen: {out}"));
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// Where the checker is told what a stranger's eyes are like.
fn in_dark(engine: Engine, fact: &str, flow: impl AsyncFnOnce(&mut Rig)) {
    run(engine, fact, async |rig: &mut Rig| {
        rig.device = Device::PHONE.dark();
        flow(rig).await;
    });
}

each_engine!(every_screen_is_for_everyone_on_a_phone_in_the_sun);
async fn every_screen_is_for_everyone_on_a_phone_in_the_sun(rig: &mut Rig) {
    every_screen_is_for_everyone(rig).await;
}

each_engine!(super::in_dark; every_screen_is_for_everyone_on_a_phone_in_the_gloom);
async fn every_screen_is_for_everyone_on_a_phone_in_the_gloom(rig: &mut Rig) {
    every_screen_is_for_everyone(rig).await;
}

each_engine!(every_screen_is_for_everyone_on_a_tablet);
async fn every_screen_is_for_everyone_on_a_tablet(rig: &mut Rig) {
    rig.device = Device::TABLET;
    every_screen_is_for_everyone(rig).await;
}
