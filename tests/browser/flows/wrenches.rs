//! The builder's torque wrenches: which fits which lap, and changing them in a run.

use serde_json::json;

use crate::page::Page;
use crate::rig::Rig;
use crate::tightening::Asked;
use crate::wait::until;

each_engine!(each_lap_gets_the_wrench_that_fits_and_the_change_is_said);
async fn each_lap_gets_the_wrench_that_fits_and_the_change_is_said(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&rig.write("shaft.json", a_shaft())).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.turn_to("Tighten").await;
    page.press_test("group").await;
    // Before the first tap: the first lap is on no mark of the wrench, and which has it.
    let said = page.text_of("which-wrench").await;
    assert!(
        said.contains("the long one, off its scale.")
            && said.contains("The small one has it at 48 % of its scale.")
            && said.contains("Lap 2, 35 ft-lb: the long one, 23 % of its scale."),
        "{said}"
    );
    page.wait_for_text("1 is off the scale of this wrench")
        .await;
    assert!(!page.has_test("run-begin").await);

    page.reach("describe-group").await;
    page.wait_for_test("wrenches-best").await;
    page.reach("wrenches-best").await;
    page.wait_for_text("The sheet is whole").await;
    let fits = page.text_of("wrench-fits").await;
    assert!(
        fits.contains("Lap 1, 120 in-lb: the small one, 48 % of its scale."),
        "{fits}"
    );
    page.reach("group-save").await;
    page.wait_for_test("run-begin").await;
    let sheet = page.text_of("group-sheet").await;
    assert!(
        sheet.contains("Lap 1 with the small one, 40 to 250 in-lb"),
        "{sheet}"
    );

    page.press_test("run-begin").await;
    page.wait_for_test("run-tap").await;
    let number = "return document.querySelector('[data-test=run-number]').textContent";
    assert_eq!(page.script(number, vec![]).await, json!("120 in-lb"));
    let how = page.text_of("run-how").await;
    assert!(how.contains("the small one"), "{how}");
    assert_eq!(page.pulls(1).await, [1]);
    // The last of the lap: what is asked for next is another wrench and no bolt.
    tokio::time::sleep(std::time::Duration::from_millis(520)).await;
    page.press_test("run-tap").await;
    page.wait_for_text("Change the wrench").await;
    let how = page.text_of("run-how").await;
    assert!(how.contains("take the long one"), "{how}");
    assert_eq!(page.script(number, vec![]).await, json!("35 ft-lb"));
    // A page that was away asks again, and a press says that it is in the hand; it is
    // no pull.
    page.interrupt().await;
    page.press_test("ask-sure").await;
    page.wait_for_text("Change the wrench").await;
    tokio::time::sleep(std::time::Duration::from_millis(520)).await;
    page.press_test("run-tap").await;
    until("the wrench in the hand", async || {
        (page.by_test("run-next").await?.text().await.ok()? == "Bolt 1").then_some(())
    })
    .await;
    let first = Asked { bolt: 1, lap: 2 };
    assert_eq!(page.asked().await, Some(first));
    assert_eq!(page.pulls(2).await, [1, 2]);
    let credit = page.wait_for_test("run-credit").await;
    assert_eq!(
        credit.attr("data-verdict").await.unwrap().as_deref(),
        Some("good")
    );
    page.assert_no_trouble().await;
}

each_engine!(a_wrench_is_put_on_the_list_and_taken_for_another_group);
async fn a_wrench_is_put_on_the_list_and_taken_for_another_group(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    page.press_test("new-group").await;
    page.type_into("label", "cover").await;
    page.type_into("wrench", "the small one").await;
    page.type_into("wrench-low", "4").await;
    page.put_keypad_away().await;
    page.reach("wrench-list").await;
    page.wait_for_text("Put its scale right first").await;
    page.type_into("wrench-high", "20").await;
    page.put_keypad_away().await;
    page.type_into("wrench-step", "0.5").await;
    page.put_keypad_away().await;
    page.reach("wrench-list").await;
    page.wait_for_text("the small one is on your list").await;
    page.wait_until_all_is_kept().await;
    // Another group: it is one tap, with its marks.
    page.reload().await;
    page.wait_until_it_stands().await;
    let address = page.client.current_url().await.unwrap();
    assert!(address.fragment().unwrap().ends_with("tighten/new"));
    for field in ["wrench", "wrench-low", "wrench-high", "wrench-step"] {
        let thing = page.wait_for_test(&format!("field-{field}")).await;
        page.bring_into_view(&format!("field-{field}")).await;
        // One engine's driver can't clear a field.
        thing.send_keys(&"\u{e003}".repeat(14)).await.unwrap();
        until("an empty field", async || {
            page.value_of(field).await.is_empty().then_some(())
        })
        .await;
    }
    page.put_keypad_away().await;
    page.reach("wrench-take-1").await;
    until("the wrench in the fields", async || {
        let low = page.value_of("wrench-low").await;
        let high = page.value_of("wrench-high").await;
        (low == "4" && high == "20" && page.value_of("wrench-step").await == "0.5").then_some(())
    })
    .await;
    page.assert_no_trouble().await;
}

/// Two bolts of a shaft, of a sheet with one wrench that is too large for the first
/// lap, and two wrenches on the list.
fn a_shaft() -> String {
    let (device, own) = (
        "00000000-0000-4000-8000-000000000001",
        "00000000-0000-4000-8000-00000000abda",
    );
    let long = json!({ "name": "the long one", "low": "20", "high": "150", "unit": "ft-lb" });
    let facts = [
        json!({
            "kind": "engine-described",
            "engine": { "name": "shed four", "cylinders": 4, "layout": "inline" },
        }),
        json!({
            "kind": "wrench-listed",
            "tool": "00000000-0000-4000-8000-0000000070a1",
            "wrench": { "name": "the small one", "low": "40", "high": "250", "unit": "in-lb", "step": "5" },
        }),
        json!({
            "kind": "fastener-group",
            "own": own,
            "label": "rocker shaft",
            "bolts": 2,
            "lubricant": "engine oil",
            "under_head": "engine oil",
            "stages": ["120 in-lb", "35"],
            "holds": "other",
            "fastener": "plain",
            "between": "nothing",
            "wrench": long,
            "layout": { "rows": [2] },
            "order": [1, 2],
            "order_from": "printed",
        }),
    ];
    let facts = facts.into_iter().enumerate().map(|(at, mut fact)| {
        let clock = 1_764_010_000_000_u64 + 1000 * at as u64;
        let hex = format!("{clock:012x}");
        let id = format!("{}-{}-7000-8000-{hex}", &hex[..8], &hex[8..]);
        fact["id"] = json!(id);
        fact["device"] = json!(device);
        fact["clock"] = json!(clock + 1);
        fact.to_string()
    });
    let facts: Vec<String> = facts.collect();
    format!(
        "{{\"format\":\"thoubook-journal\",\"version\":1,\"build\":\"00000000-0000-4000-8000-0000000000e9\",\n\"facts\":[\n{}\n],\n\"set_aside\":[]}}\n",
        facts.join(",\n")
    )
}
