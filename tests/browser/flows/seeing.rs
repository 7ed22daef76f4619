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

/// Fails unless the screen that is shown suits everyone, folds opened.
pub async fn assert_it_is_for_everyone(page: &Page) {
    page.open_all_folds().await;
    let found = violations(page).await;
    assert!(found.is_empty(), "{}", found.join("\n"));
    let out = sticking_out(page).await;
    assert_eq!(out, json!([]), "wider than the screen");
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

/// A page with a build on the device, and the addresses of all its screens.
async fn all_screens(rig: &mut Rig) -> (Page, Vec<String>) {
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
    let screens = [
        "/",
        "/new",
        "/quick",
        "/quick/running-clearance",
        "/quick/running-clearance-strip",
        "/no-such-place",
    ];
    let pages = [
        "mains",
        "mains/1",
        "mains/limits",
        "tools",
        "book",
        "tonight",
        "steps",
        "step/crank-in",
        "step/first-fire",
        "step/trial-main-bearings/main-2",
        "change",
        "change/main-shells-swapped",
        "engine",
        "parts",
        "parts/shop",
        "merge",
        "map",
        "map/crank",
        "map/bores-1",
        "map/head-1",
        "map/part/main-3",
        "measure/choose/main-shells",
        "measure/choose/pistons",
        "measure/bore/1",
    ];
    let screens = screens.map(str::to_owned).into_iter();
    let pages = pages.map(|page| format!("{build}/{page}"));
    (page, screens.chain(pages).collect())
}

/// Everything that a stranger sees first, with a build on the device.
async fn every_screen_is_for_everyone(rig: &mut Rig) {
    let (page, screens) = all_screens(rig).await;
    let mut found = Vec::new();
    for screen in screens {
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

/// Letters twice as large as usual, as a person sets them who sees badly.
const LARGE_LETTERS: &str = "document.documentElement.style.fontSize = '225%'";

/// Whether the field in use stands whole between the screen's top and the keypad.
const FIELD_IS_SEEN: &str = "const field = document.activeElement.getBoundingClientRect();
    const keypad = document.querySelector('[data-test=keypad]').getBoundingClientRect();
    return field.height > 0 && field.top >= 0 && field.bottom <= keypad.top";

each_engine!(letters_twice_as_large_fit_a_phone);
async fn letters_twice_as_large_fit_a_phone(rig: &mut Rig) {
    let (page, screens) = all_screens(rig).await;
    page.script(LARGE_LETTERS, vec![]).await;
    let mut found = Vec::new();
    for screen in screens {
        page.go_to(&format!("#{screen}")).await;
        page.open_all_folds().await;
        let out = sticking_out(&page).await;
        if out != json!([]) {
            found.push(format!("{screen} is wider than the screen: {out}"));
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
    page.to_the_bench().await;
    page.open_the_build().await;
    page.open_bearing(2).await;
    page.press_test("place-main-bearing-bore-front-up-and-down")
        .await;
    page.touch("reading").await;
    page.wait_for_script("the field to be seen", FIELD_IS_SEEN)
        .await;
    page.assert_no_trouble().await;
}

/// How many lines of text a thing is high.
const LINES: &str = "const thing = document.querySelector(arguments[0]);
    const height = thing.getBoundingClientRect().height;
    return Math.round(height / parseFloat(getComputedStyle(thing).lineHeight))";

each_engine!(what_is_read_often_stands_in_few_lines_on_a_phone);
async fn what_is_read_often_stands_in_few_lines_on_a_phone(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&crate::builds::five_mains()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.open_bearing(2).await;
    page.press_test("place-main-bearing-bore-front-joint-right")
        .await;
    page.touch("reading").await;
    let lines = page.script(LINES, vec![json!(".entry-where")]).await;
    assert!(
        lines.as_u64().unwrap() <= 3,
        "the place takes {lines} lines"
    );
    let fits = page
        .script(
            "return [...document.querySelectorAll('.key-unit')].every((key) => {
                const words = document.createRange();
                words.selectNodeContents(key);
                return words.getClientRects().length === 1 && key.scrollWidth <= key.clientWidth;
            })",
            vec![],
        )
        .await;
    assert_eq!(fits, json!(true), "each unit stands in one line on its key");
    page.put_keypad_away().await;
    page.turn_to("Book").await;
    let beside = page
        .script(
            "return [...document.querySelectorAll('[data-test=fact]')].every((fact) => {
                const when = fact.querySelector('.hint').getBoundingClientRect();
                const strike = fact.querySelector('button').getBoundingClientRect();
                return strike.top < when.bottom && when.top < strike.bottom;
            })",
            vec![],
        )
        .await;
    assert_eq!(
        beside,
        json!(true),
        "the strike-out needs no line of its own"
    );
    page.assert_no_trouble().await;
}
