//! The sizes that the builder's own sheet lists: typed with where they come from,
//! asked about in place of the common ones, and offered for half-shells.

use serde_json::json;

use super::seeing::assert_it_is_for_everyone;
use crate::measuring::With;
use crate::prepared::{Prepared, Tool};
use crate::rig::Rig;
use crate::wait::until;

each_engine!(undersizes_of_the_sheet_are_asked_about_and_no_others);
async fn undersizes_of_the_sheet_are_asked_about_and_no_others(rig: &mut Rig) {
    let mut four = Prepared::engine(4, &[]);
    four.limits("main-journal-diameter", "62.18", "62.20");
    let at = json!({ "main": 1, "station": "front", "direction": "across" });
    four.read("main-journal-diameter", at, "62.19", Tool::Micrometer);
    let page = rig.open().await;
    page.bring_in(&rig.write("four.json", four.file())).await;
    page.close_the_file().await;
    page.open_the_build().await;

    // What is no size is said, and nothing is written down.
    page.plan_page("measure/main-journal-diameter/limits").await;
    page.wait_for_test("sizes").await;
    let before = page.acknowledged().await;
    page.paste("sizes", "0.4 mm; much").await;
    page.press_far("sizes-save").await;
    let said = page.says("sizes").await;
    assert!(said.contains("“much” is no size"), "{said}");
    let said = page.says("sizes-note").await;
    assert!(said.contains("which sheet and page"), "{said}");
    assert_it_is_for_everyone(&page).await;
    assert_eq!(page.acknowledged().await, before);
    page.paste("sizes", "0.4 mm; 0.8 mm").await;
    page.paste("sizes-note", "page 9").await;
    page.press_and_keep("sizes-save").await;
    page.reload().await;
    let listed = page
        .wait_for_test("listed-sizes")
        .await
        .text()
        .await
        .unwrap();
    let words = "Undersizes of the main journals: 0.4 mm; 0.8 mm, from the maker's sheet, page 9";
    assert!(listed.contains(words), "{listed}");
    assert_it_is_for_everyone(&page).await;
    page.plan_page("book").await;
    page.wait_for_text(words).await;

    // A quarter under is a slip or a ruin here, and four tenths are a size.
    page.plan_page("measure/main-journal-diameter/2").await;
    page.wait_for_test("field-reading").await;
    page.write_reading("61.79 mm", With::Keyboard).await;
    let asked = page.text_of("asked").await;
    assert!(asked.contains("0.40 mm undersize"), "{asked}");
    page.put_keypad_away().await;
    page.press_and_keep("take-size").await;
    until("the question to go", async || {
        (!page.has_test("asked").await).then_some(())
    })
    .await;
    page.plan_page("measure/main-journal-diameter/3").await;
    page.wait_for_test("field-reading").await;
    page.write_reading("61.94 mm", With::Keyboard).await;
    let asked = match page.by_test("asked").await {
        Some(asked) => asked.text().await.unwrap(),
        None => String::new(),
    };
    assert!(!asked.contains("0.25 mm undersize"), "{asked}");
    page.assert_no_trouble().await;
}

each_engine!(half_shells_are_marked_in_the_sizes_that_their_sheet_lists);
async fn half_shells_are_marked_in_the_sizes_that_their_sheet_lists(rig: &mut Rig) {
    let page = rig.open().await;
    let file = Prepared::engine(1, &[]).file();
    page.bring_in(&rig.write("single.json", file)).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.plan_page("measure/choose/main-shells").await;
    page.wait_for_test("select-bench-steps").await;
    let marks = page.text_of("select-bench-steps").await;
    assert!(marks.contains("1 step thicker"), "{marks}");
    page.open_all_folds().await;
    // Another tool is picked, and the list of all folds up again under the thumb.
    let caliper = "list-main-shell-wall-caliper-outside";
    page.bring_into_view(caliper).await;
    page.press_pick(caliper).await;
    until("the tool that was picked, and no others", async || {
        let tool = page.by_test("bench-tool").await?;
        let open = tool.attr("open").await.ok()?.is_some();
        let named = tool.text().await.ok()?.contains("aliper");
        (named && !open).then_some(())
    })
    .await;
    let focus = "return document.activeElement.closest('[data-test=bench-tool]') !== null";
    page.wait_for_script("the focus on the tool", focus).await;
    page.open_all_folds().await;
    page.wait_for_test("sizes").await;
    page.paste("sizes", "0.025 mm; 0.05 mm; -0.025 mm").await;
    page.paste("sizes-note", "on the lid").await;
    page.press_and_keep("sizes-save").await;
    until("the sizes among the marks", async || {
        let marks = page
            .by_test("select-bench-steps")
            .await?
            .text()
            .await
            .ok()?;
        let all = [
            "standard",
            "0.025 mm under",
            "0.05 mm under",
            "0.025 mm extra clearance",
        ];
        all.iter().all(|mark| marks.contains(mark)).then_some(())
    })
    .await;
    assert_it_is_for_everyone(&page).await;
    page.assert_no_trouble().await;
}
