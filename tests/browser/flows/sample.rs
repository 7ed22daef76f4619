//! The sample engine on its map: one tap brings it, the map shows its verdicts
//! and leads to every measure, and one tap takes all of it away.

use serde_json::{Value, json};

use super::seeing::assert_it_is_for_everyone;
use crate::page::Page;
use crate::rig::Rig;

impl Page {
    /// Brings the sample in by one tap, and waits for its map.
    pub async fn bring_in_the_sample(&self) {
        self.press_test("sample").await;
        self.wait_for_test("engine-map").await;
        self.wait_until_all_is_kept().await;
    }

    /// The parts that the map says are to be looked at, with their verdicts.
    async fn worst(&self) -> Value {
        self.script(
            "return [...document.querySelectorAll('[data-test^=worst-]')]
                .map((row) => [row.dataset.test, row.dataset.verdict])",
            vec![],
        )
        .await
    }

    /// What the marks of some parts on the overview are.
    async fn marks(&self, parts: &[&str]) -> Value {
        self.script(
            "return arguments[0].map((part) => {
                const mark = document.querySelector(`[data-part=${part}]`);
                return [...mark.classList].find((name) => name.startsWith('mark-'));
            })",
            vec![json!(parts)],
        )
        .await
    }

    /// The smaller side of the smallest thing to tap on the map, in pixels.
    async fn smallest_target(&self) -> f64 {
        let smallest = self
            .script(
                "return Math.min(...[...document.querySelectorAll('[data-test=engine-map] a .map-plate')]
                    .map((plate) => plate.getBoundingClientRect())
                    .map((box) => Math.min(box.width, box.height)))",
                vec![],
            )
            .await;
        smallest.as_f64().unwrap()
    }
}

each_engine!(the_sample_comes_by_one_tap_and_the_map_leads_to_its_measures);
async fn the_sample_comes_by_one_tap_and_the_map_leads_to_its_measures(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_for_test("no-builds").await;
    page.bring_in_the_sample().await;
    let worst = json!([
        ["worst-main-4", "bad"],
        ["worst-cylinder-3", "stale"],
        ["worst-main-2", "close"],
    ]);
    assert_eq!(page.worst().await, worst);
    let parts = ["main-4", "cylinder-3", "main-2", "main-1", "nose"];
    let marks = json!([
        "mark-bad",
        "mark-stale",
        "mark-close",
        "mark-good",
        "mark-not-measured"
    ]);
    assert_eq!(page.marks(&parts).await, marks);
    assert!(page.smallest_target().await >= 60.0);
    assert_it_is_for_everyone(&page).await;

    // From the crank to the bad main, to where it is measured.
    page.press_test("region-crank").await;
    page.wait_for_test("part-main-4").await;
    assert!(page.smallest_target().await >= 60.0);
    assert_it_is_for_everyone(&page).await;
    page.press_test("part-main-4").await;
    page.wait_for_test("standing").await;
    page.wait_for_text("Main 4").await;
    let address = page.client.current_url().await.unwrap();
    assert!(address.as_str().ends_with("/mains/4"), "{address}");

    // All else that is measured on it, and from one main to the next.
    page.bring_into_view("on-the-map").await;
    page.press_test("on-the-map").await;
    page.wait_for_test("part-measures").await;
    assert_it_is_for_everyone(&page).await;
    page.bring_into_view("measure-main-oil-clearance").await;
    page.press_test("measure-main-oil-clearance").await;
    page.wait_for_test("standing").await;
    page.client.back().await.unwrap();
    page.wait_for_test("part-measures").await;
    page.press_test("part-after").await;
    page.wait_for_text("Main 5").await;
    assert!(!page.has_test("part-after").await, "there are five");

    // A measure that has a round of its own: at this very part of it.
    let build = address.fragment().unwrap().replace("/mains/4", "");
    for (part, measure, round) in [
        ("main-2", "crank-bow", "crank-bow/2"),
        ("cylinder-3", "bore", "bore/3"),
        ("valve-2-exhaust-1", "seat-run-out", "seat-run-out/4"),
        ("pump", "pump-end-clearance", "pump-end-clearance/1"),
    ] {
        page.go_to(&format!("#{build}/map/part/{part}")).await;
        page.press_test(&format!("measure-{measure}")).await;
        page.wait_for_test("standing").await;
        let address = page.client.current_url().await.unwrap();
        assert!(address.as_str().ends_with(round), "{address}");
    }
    page.assert_no_trouble().await;
}

each_engine!(the_sample_is_there_once_and_goes_without_a_trace);
async fn the_sample_is_there_once_and_goes_without_a_trace(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_for_test("no-builds").await;
    let before = page.all_keys().await;
    page.bring_in_the_sample().await;
    let address = page.client.current_url().await.unwrap();
    let build = address.fragment().unwrap().replace("/map", "");
    let kept = page.kept().await;
    assert_eq!(kept.shelf, kept.vault);
    assert!(kept.shelf.len() > 400, "{}", kept.shelf.len());

    // It says what it is on every page, a draft and a fact of one's own included.
    for place in ["tonight", "map", "mains/3", "book", "oil/"] {
        page.go_to(&format!("#{build}/{place}")).await;
        page.wait_for_test("sample-says").await;
    }
    page.go_to(&format!("#{build}/measure")).await;
    page.wait_for_test("field-find-measure").await;
    page.script(
        "const field = document.querySelector('[data-test=field-find-measure]');
        field.value = 'gap'; field.dispatchEvent(new Event('input', {bubbles: true}));",
        vec![],
    )
    .await;

    // Brought in from a file it is the same one, and still a sample.
    page.to_the_bench().await;
    assert!(!page.has_test("sample").await, "it is here already");
    let file = rig.export(&page).await;
    let said = page.bring_in(&rig.write("sample.json", &file)).await;
    assert!(said.contains("nothing has changed"), "{said}");
    page.close_the_file().await;
    assert_eq!(page.number_of_builds().await, 1);
    page.wait_for_test("sample-says").await;

    page.press_test("sample-remove").await;
    page.wait_for_test("no-builds").await;
    page.wait_for_test("sample").await;
    page.reload().await;
    page.wait_for_test("no-builds").await;
    let kept = page.kept().await;
    assert_eq!((kept.shelf, kept.vault), (vec![], vec![]));
    assert_eq!(page.all_keys().await, before);
    page.assert_no_trouble().await;
}

impl Page {
    /// Every key in local storage, whatever it is for.
    async fn all_keys(&self) -> Value {
        self.script("return Object.keys(localStorage).sort()", vec![])
            .await
    }
}

each_engine!(a_keyboard_and_a_screen_reader_go_over_the_map_in_the_order_of_the_job);
async fn a_keyboard_and_a_screen_reader_go_over_the_map_in_the_order_of_the_job(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_for_test("no-builds").await;
    page.bring_in_the_sample().await;
    let regions = page.links_of_the_map().await;
    let starts = [
        "Crank: 1 bad",
        "Bores: 1 no longer",
        "Head: ",
        "Camshaft: ",
        "Oil pump: ",
    ];
    assert_eq!(regions.len(), starts.len(), "{regions:?}");
    for (region, start) in regions.iter().zip(starts) {
        assert!(region.starts_with(start), "{region}");
    }
    page.press_enter_on_the_map("Crank").await;
    page.wait_for_test("part-main-4").await;
    let parts = page.links_of_the_map().await;
    let mains: Vec<&String> = parts
        .iter()
        .filter(|one| one.starts_with("Main "))
        .collect();
    assert_eq!(mains.len(), 5, "{parts:?}");
    assert_eq!(
        mains[3],
        "Main 4: bad: main oil clearance; 3 of 10 still to measure"
    );
    assert!(mains.is_sorted(), "front to rear: {mains:?}");
    page.press_enter_on_the_map("Main 4").await;
    page.wait_for_test("standing").await;
    page.wait_for_text("Main 4").await;
}

impl Page {
    /// What a screen reader says of everything on the map that can be reached
    /// with the tab key, in that order.
    async fn links_of_the_map(&self) -> Vec<String> {
        let said = self
            .script(
                "return [...document.querySelectorAll('[data-test=engine-map][role=list] [role=listitem] a')]
                    .filter((link) => link.tabIndex === 0)
                    .map((link) => link.getAttribute('aria-label'))",
                vec![],
            )
            .await;
        serde_json::from_value(said).unwrap()
    }

    /// Presses the enter key on the link whose words begin so.
    async fn press_enter_on_the_map(&self, beginning: &str) {
        self.script(
            "document.querySelector(`[data-test=engine-map] a[aria-label^='${arguments[0]}']`).focus()",
            vec![json!(beginning)],
        )
        .await;
        let focused = self.client.active_element().await.unwrap();
        self.press_enter(&focused).await;
    }
}
