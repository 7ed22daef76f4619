//! A first visit loads one part of the page. The others come when somebody
//! opens them, from what the worker has kept.

use std::path::{Path, PathBuf};

use crate::page::Page;
use crate::places;
use crate::rig::Rig;

/// The parts that wait, as the build names them.
fn parts(site: &Path) -> Vec<PathBuf> {
    let parts: Vec<PathBuf> = std::fs::read_dir(site)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|file| {
            let name = file.to_string_lossy();
            name.ends_with(".wasm") && !name.ends_with("_bg.wasm")
        })
        .collect();
    assert!(!parts.is_empty(), "the build came out in one piece");
    parts
}

/// The style sheet that waits with the parts of a build.
fn later_sheet(site: &Path) -> PathBuf {
    let files = std::fs::read_dir(site).unwrap();
    let mut sheets = files.map(|entry| entry.unwrap().path()).filter(|file| {
        let name = file.file_name().unwrap().to_string_lossy();
        name.starts_with("later-") && name.ends_with(".css")
    });
    sheets.next().expect("all styles came out in one sheet")
}

/// The files of the program, and the style sheets, that the page itself has
/// asked for.
async fn asked_for(page: &Page) -> String {
    let script = "return performance.getEntriesByType('resource')
        .map((one) => one.name).filter((name) => /\\.(wasm|css)$/.test(name)).join(' ')";
    let names = page.script(script, vec![]).await;
    names.as_str().unwrap().to_owned()
}

each_engine!(a_first_visit_loads_no_part_that_it_does_not_show);
async fn a_first_visit_loads_no_part_that_it_does_not_show(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    let names = asked_for(&page).await;
    assert!(names.contains("_bg.wasm"), "{names}");
    assert!(!names.contains("builds-"), "{names}");
    assert!(names.contains("style-"), "{names}");
    assert!(!names.contains("later-"), "{names}");
    page.press_test("new-build").await;
    page.wait_for_test("field-name").await;
    let names = asked_for(&page).await;
    assert!(names.contains("builds-"), "{names}");
    assert!(names.contains("later-"), "{names}");
}

/// Notes how the form of a new build is laid out the moment it is on the page.
const WATCH_THE_FORM: &str = "
    new MutationObserver(() => {
        const form = document.querySelector('.built');
        if (form) window.__laidOut ??= getComputedStyle(form).display;
    }).observe(document.body, { childList: true, subtree: true });";

each_engine!(no_screen_is_ever_shown_without_its_styles);
async fn no_screen_is_ever_shown_without_its_styles(rig: &mut Rig) {
    let page = rig.open().await;
    page.script(WATCH_THE_FORM, vec![]).await;
    page.press_test("new-build").await;
    page.wait_for_test("field-name").await;
    let laid_out = page.script("return window.__laidOut", vec![]).await;
    assert_eq!(laid_out, "flex");
    page.assert_no_trouble().await;
}

each_engine!(styles_that_cannot_be_fetched_are_said_and_tried_again);
async fn styles_that_cannot_be_fetched_are_said_and_tried_again(rig: &mut Rig) {
    let site = rig.serve_a_copy();
    let sheet = later_sheet(&site);
    std::fs::remove_file(&sheet).unwrap();
    let page = rig.open().await;
    page.script(WATCH_THE_FORM, vec![]).await;
    page.press_test("new-build").await;
    page.wait_for_test("not-here").await;
    assert!(!page.has_test("field-name").await);
    std::fs::copy(later_sheet(&places::dist()), &sheet).unwrap();
    page.press_test("fetch-again").await;
    page.wait_for_test("field-name").await;
    let laid_out = page.script("return window.__laidOut", vec![]).await;
    assert_eq!(laid_out, "flex");
}

each_engine!(a_part_that_was_never_opened_is_there_without_a_signal);
async fn a_part_that_was_never_opened_is_there_without_a_signal(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    rig.server.stop();
    page.press_test("new-build").await;
    page.wait_for_test("field-name").await;
    page.go_to("#/quick/oil-pressure").await;
    page.wait_for_text("Oil pressure from clearances").await;
    page.assert_no_trouble().await;
}

each_engine!(a_part_that_cannot_be_fetched_says_so_and_is_tried_again);
async fn a_part_that_cannot_be_fetched_says_so_and_is_tried_again(rig: &mut Rig) {
    let site = rig.serve_a_copy();
    for part in parts(&site) {
        std::fs::remove_file(part).unwrap();
    }
    let page = rig.open().await;
    page.press_test("new-build").await;
    page.wait_for_test("not-here").await;
    for part in parts(&places::dist()) {
        std::fs::copy(&part, site.join(part.file_name().unwrap())).unwrap();
    }
    page.press_test("fetch-again").await;
    page.wait_for_test("field-name").await;
}
