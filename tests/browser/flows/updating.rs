//! A newer build waits until the person wants it.

use serde_json::json;

use crate::page::Page;
use crate::rig::Rig;
use crate::second_build;
use crate::wait::until;

const LOOK: &str = "return navigator.serviceWorker.getRegistration()
    .then((registration) => registration.update()).then(() => true, () => true)";

async fn edition(page: &Page) -> String {
    let script = "return document.querySelector('meta[name=edition]')?.content ?? 'first'";
    let edition = page.script(script, vec![]).await;
    edition.as_str().unwrap().to_owned()
}

each_engine!(a_newer_build_waits_for_a_yes_and_loses_nothing_typed);
async fn a_newer_build_waits_for_a_yes_and_loses_nothing_typed(rig: &mut Rig) {
    let site = rig.serve_a_copy();
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    page.go_to("#/quick/running-clearance").await;
    page.enter("journal-1", "2.4483").await;

    second_build::put(&site, "second");
    // A browser looks by itself whenever a page is opened.
    page.script(LOOK, vec![]).await;
    page.wait_for_test("update-notice").await;
    assert_eq!(edition(&page).await, "first");
    assert_eq!(page.value_of("journal-1").await, "2.4483");

    // Loading the page anew is no yes.
    page.reload().await;
    page.wait_until_it_stands().await;
    page.wait_for_test("update-notice").await;
    assert_eq!(edition(&page).await, "first");
    assert_eq!(page.value_of("journal-1").await, "2.4483");

    page.press_test("update-now").await;
    until("the second build", async || {
        (page
            .client
            .execute(
                "return document.querySelector('meta[name=edition]')?.content",
                vec![],
            )
            .await
            .ok()?
            == json!("second"))
        .then_some(())
    })
    .await;
    page.wait_until_it_stands().await;
    assert_eq!(page.value_of("journal-1").await, "2.4483");
    page.assert_no_trouble().await;

    // And the second one is what opens without a signal from now on.
    rig.server.stop();
    page.reload().await;
    page.wait_until_it_stands().await;
    assert_eq!(edition(&page).await, "second");
    let caches = page.script("return caches.keys().then((names) => names.length)", vec![]);
    assert_eq!(
        caches.await,
        json!(1),
        "the first build's files are cleared away"
    );
}

each_engine!(a_build_that_arrives_broken_is_not_taken);
async fn a_build_that_arrives_broken_is_not_taken(rig: &mut Rig) {
    let site = rig.serve_a_copy();
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    second_build::put(&site, "second");
    // Cut off on the way.
    let file = site.join("index.html");
    let whole = std::fs::read_to_string(&file).unwrap();
    std::fs::write(&file, whole.split_at(whole.len() / 2).0).unwrap();
    page.script(LOOK, vec![]).await;
    page.wait_for_script(
        "the broken build to be given up",
        "return navigator.serviceWorker.getRegistration()
            .then((registration) => !registration.installing && !registration.waiting)",
    )
    .await;
    rig.server.stop();
    page.reload().await;
    page.wait_until_it_stands().await;
    assert_eq!(edition(&page).await, "first");
    assert!(!page.has_test("update-notice").await);
}
