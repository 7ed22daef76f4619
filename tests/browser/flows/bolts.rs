//! A group of bolts as it really sits, on the wrench there really is; and a run
//! that is given up.

use fantoccini::actions::{InputSource, MOUSE_BUTTON_LEFT, MouseActions, PointerAction};
use serde_json::{Value, json};

use super::seeing::assert_it_is_for_everyone;
use super::tightening::{ORDER, TORQUES, vee_eight_of};
use crate::page::Page;
use crate::rig::Rig;
use crate::tightening::Asked;
use crate::wait::until;

/// Where a bolt stands on the drawing it is moved on.
async fn place_of(page: &Page, bolt: u32) -> Value {
    let script = "return document.querySelector(`[data-test=move-bolt-${arguments[0]}]`)
        .getAttribute('transform')";
    page.script(script, vec![json!(bolt)]).await
}

/// Drags a bolt with the pointer, pixels to the right and down.
async fn drag(page: &Page, bolt: u32, right: f64, down: f64) {
    page.bring_into_view(&format!("move-bolt-{bolt}")).await;
    let script = "return document.querySelector(`[data-test=move-bolt-${arguments[0]}] circle`)";
    let found = page.script(script, vec![json!(bolt)]).await;
    let element = page.element(found).unwrap();
    let mouse = MouseActions::new("mouse".to_owned())
        .then(PointerAction::MoveToElement {
            element,
            duration: None,
            x: 0.0,
            y: 0.0,
        })
        .then(PointerAction::Down {
            button: MOUSE_BUTTON_LEFT,
        })
        .then(PointerAction::MoveBy {
            duration: Some(std::time::Duration::from_millis(120)),
            x: right,
            y: down,
        })
        .then(PointerAction::Up {
            button: MOUSE_BUTTON_LEFT,
        });
    page.client.perform_actions(mouse).await.unwrap();
}

each_engine!(bolts_are_dragged_and_pushed_to_where_they_sit);
async fn bolts_are_dragged_and_pushed_to_where_they_sit(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    page.describe_head(&ORDER, &TORQUES).await;
    page.reach("describe-group").await;
    page.reach("bolts-move").await;
    page.wait_for_test("bolt-drag").await;
    let before = place_of(&page, 5).await;
    // The last of the first row, out by half of the way to the next.
    drag(&page, 5, 30.0, 0.0).await;
    until("the bolt to lie elsewhere", async || {
        (place_of(&page, 5).await != before).then_some(())
    })
    .await;
    assert!(page.text_of("bolt-picked").await.contains("Bolt 5"));
    // Picked by a tap and pushed by the arrows, with no drag at all.
    drag(&page, 10, 0.0, 0.0).await;
    page.wait_for_text("Bolt 10 is picked").await;
    page.reach("move-down").await;
    page.reach("move-down").await;
    // Onto its neighbour it does not go.
    drag(&page, 4, 60.0, 0.0).await;
    let said = page.text_of("move-said").await;
    assert!(
        said.contains("stays where it was") && said.contains("4 and 5"),
        "{said}"
    );
    // The order was tapped before and still stands.
    page.wait_for_text("The sheet is whole").await;
    page.reach("group-save").await;
    page.wait_for_test("run-begin").await;
    page.wait_until_all_is_kept().await;
    page.assert_no_trouble().await;
    page.to_the_bench().await;
    let out = rig.export(&page).await;
    let places = "\"places\":[[0,0],[100,0],[200,0],[300,0],[450,0],[0,100],[100,100],[200,100],[300,100],[400,150]]";
    assert!(out.contains(places), "{}", out.lines().last().unwrap_or(""));
}

each_engine!(a_crowfoot_changes_the_number_and_says_what_the_bolt_gets);
async fn a_crowfoot_changes_the_number_and_says_what_the_bolt_gets(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    page.describe_head(&ORDER, &TORQUES).await;
    page.reach("describe-group").await;
    page.bring_into_view("adapter-on").await;
    page.pick("adapter-on").await;
    page.wait_for_text("type the wrench's length as well").await;
    page.type_into("adapter-grip", "10 in").await;
    page.type_into("adapter-offset", "4 in").await;
    page.type_into("adapter-turned", "0").await;
    page.put_keypad_away().await;
    // TM 1-1500-204-23-9: 300 is set as 214, so 30 as 21.4.
    let set = page.text_of("adapter-set").await;
    assert!(
        set.contains("set 21") && set.contains("for 30 at the bolt"),
        "{set}"
    );
    page.reach("group-save").await;
    page.press_test("run-begin").await;
    page.wait_for_test("run-tap").await;
    let number = page.text_of("run-number").await;
    assert!(number.contains("ft-lb"), "{number}");
    let words = page.text_of("run-tap").await;
    assert!(words.contains("Set the wrench to"), "{words}");
    assert_eq!(
        page.text_of("run-at-bolt").await,
        "for 30 ft-lb at the bolt"
    );
    // Readable a metre away with two lines more.
    let high = page
        .script(
            "return document.querySelector('.run-number').getBoundingClientRect().height",
            vec![],
        )
        .await;
    assert!(high.as_f64().unwrap() >= 95.0, "{high}");
    page.assert_no_trouble().await;
}

each_engine!(a_run_is_given_up_with_its_cost_said_before);
async fn a_run_is_given_up_with_its_cost_said_before(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    page.describe_head(&ORDER, &TORQUES).await;
    page.press_test("run-begin").await;
    page.pulls(3).await;
    page.press_test("run-close").await;
    page.wait_for_test("group-state").await;
    page.open_all_folds().await;
    page.reach("give-up").await;
    let costs = page.text_of("give-up-costs").await;
    for said in [
        "neither tight nor loose",
        "back all of them off",
        "a new one",
    ] {
        assert!(costs.contains(said), "{costs}");
    }
    // Not yet: back goes back.
    page.press_test("give-up-back").await;
    page.wait_for_test("run-open").await;
    page.open_all_folds().await;
    page.reach("give-up").await;
    page.press_test("give-up-sure").await;
    page.wait_for_text("Given up half-way").await;
    page.wait_for_test("given-up").await;
    // The way out is to loosen them, and then all is as before the first pull.
    page.reach("all-loose").await;
    page.wait_for_test("run-begin").await;
    assert_eq!(page.text_of("group-state").await.trim(), "Loose");
    page.assert_no_trouble().await;
}

each_engine!(a_headset_is_a_press_and_every_key_that_moves_on);
async fn a_headset_is_a_press_and_every_key_that_moves_on(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    page.describe_head(&ORDER, &TORQUES).await;
    page.press_test("run-begin").await;
    page.wait_for_test("run-tap").await;
    // The tests have no headset: its buttons are what the page asked to hear of.
    page.script(
        "window.presses = {};
        Object.defineProperty(navigator, 'mediaSession', { configurable: true, value: {
            setActionHandler(name, act) {
                if (name === 'stop') throw new TypeError('not known here');
                window.presses[name] = act;
            } } })",
        vec![],
    )
    .await;
    page.press_test("run-headset").await;
    page.wait_for_script("the button to be heard", "return !!window.presses.play")
        .await;
    for (at, press) in ["play", "pause", "nexttrack"].iter().enumerate() {
        tokio::time::sleep(std::time::Duration::from_millis(520)).await;
        page.script("window.presses[arguments[0]]()", vec![json!(press)])
            .await;
        let next = ORDER[at + 1];
        until(&format!("the pull by {press}"), async || {
            (page.asked().await? == Asked { bolt: next, lap: 1 }).then_some(())
        })
        .await;
    }
    for (at, key) in ["Enter", " ", "PageDown", "ArrowDown", "ArrowRight"]
        .iter()
        .enumerate()
    {
        tokio::time::sleep(std::time::Duration::from_millis(520)).await;
        page.script(
            "document.body.dispatchEvent(new KeyboardEvent('keydown', { key: arguments[0], bubbles: true }))",
            vec![json!(key)],
        )
        .await;
        let next = ORDER[at + 4];
        until(&format!("the pull by {key:?}"), async || {
            (page.asked().await? == Asked { bolt: next, lap: 1 }).then_some(())
        })
        .await;
    }
    // Off again: nobody listens, and nothing plays on.
    page.press_test("run-headset").await;
    page.wait_for_script("nobody to listen", "return window.presses.play === null")
        .await;
    page.assert_no_trouble().await;
}

/// How small the smallest bolt to be pressed is, and whether one is out of reach.
const SMALLEST: &str = "const bolts = [...document.querySelectorAll('[data-test=bolt-press] [data-bolt] .bolt-thumb')];
    const sizes = bolts.map((one) => one.getBoundingClientRect());
    return { count: bolts.length,
        least: Math.min(...sizes.map((size) => Math.min(size.width, size.height))) }";

each_engine!(thirty_four_bolts_are_each_as_large_as_a_thumb);
async fn thirty_four_bolts_are_each_as_large_as_a_thumb(rig: &mut Rig) {
    let page = rig.open().await;
    let order: Vec<u32> = (1..=34).collect();
    page.bring_in(&rig.write("vee-eight.json", vee_eight_of(&order)))
        .await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.turn_to("Tighten").await;
    page.press_test("group").await;
    page.reach("describe-group").await;
    page.wait_for_test("bolt-press").await;
    let sizes = page.script(SMALLEST, vec![]).await;
    assert_eq!(sizes["count"], 34);
    assert!(sizes["least"].as_f64().unwrap() >= 60.0, "{sizes}");
    page.reach("order-none").await;
    for bolt in [34, 1, 17, 18] {
        page.tap_bolt(bolt).await;
    }
    until("four in the order", async || {
        let label = page
            .by_test("bolt-18")
            .await?
            .attr("aria-label")
            .await
            .ok()??;
        label.contains("number 4 of the order").then_some(())
    })
    .await;
    page.assert_no_trouble().await;
}

each_engine!(every_screen_of_a_tightening_is_for_everyone);
async fn every_screen_of_a_tightening_is_for_everyone(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    assert_it_is_for_everyone(&page).await;
    page.describe_head(&ORDER, &TORQUES).await;
    assert_it_is_for_everyone(&page).await;
    let group = page.client.current_url().await.unwrap();
    let group = format!("#{}", group.fragment().unwrap());
    let (own, _) = group.rsplit_once('/').unwrap();
    page.go_to(&format!("{own}/describe")).await;
    page.reach("bolts-move").await;
    page.pick("adapter-on").await;
    assert_it_is_for_everyone(&page).await;
    for place in ["lengths", "sealant"] {
        page.go_to(&format!("{group}/{place}")).await;
        assert_it_is_for_everyone(&page).await;
    }
    page.go_to(&group).await;
    page.reach("run-begin").await;
    page.pulls(1).await;
    assert_it_is_for_everyone(&page).await;
    page.interrupt().await;
    assert_it_is_for_everyone(&page).await;
    page.press_test("ask-give-up").await;
    page.wait_for_test("giving-up").await;
    assert_it_is_for_everyone(&page).await;
    page.press_test("ask-back").await;
    page.press_test("ask-nothing").await;
    page.wait_for_test("run-remedy").await;
    assert_it_is_for_everyone(&page).await;
    page.press_test("remedy-backed-off").await;
    for _ in 0..TORQUES.len() {
        page.pulls(ORDER.len()).await;
    }
    page.wait_for_test("run-through").await;
    assert_it_is_for_everyone(&page).await;
    page.go_to(&group).await;
    page.wait_for_test("group-state").await;
    assert_it_is_for_everyone(&page).await;
    page.assert_no_trouble().await;
}
