//! Tightening: the place is never lost.

use serde_json::json;

use crate::engine::Engine;
use crate::page::Page;
use crate::rig::Rig;
use crate::tightening::Asked;
use crate::wait::until;

/// From the middle out, as a sheet may print it.
pub const ORDER: [u32; 10] = [3, 8, 2, 9, 4, 7, 1, 10, 5, 6];
/// To three laps.
pub const TORQUES: [&str; 3] = ["30", "60", "90"];

each_engine!(a_head_is_tightened_with_an_interruption_in_each_lap);
async fn a_head_is_tightened_with_an_interruption_in_each_lap(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    page.describe_head(&ORDER, &TORQUES).await;
    page.press_test("run-begin").await;

    // Lap 1: loaded anew, and the last bolt is known.
    assert_eq!(page.pulls(4).await, ORDER[..4]);
    // As it is heard, too: the figures themselves are a drawing.
    let number = "return document.querySelector('[data-test=run-number]').textContent";
    assert_eq!(page.script(number, vec![]).await, json!("30 ft-lb"));
    page.interrupt().await;
    let book = page.text_of("ask-book").await;
    assert!(
        book.contains("lap 1 of 3, bolt 4 is next, 4 of 10 done"),
        "{book}"
    );
    page.press_test("ask-sure").await;
    assert_eq!(page.pulls(6).await, ORDER[4..]);

    // Lap 2: the last tick is wrong, then nobody knows the bolt.
    assert_eq!(page.pulls(3).await, ORDER[..3]);
    page.interrupt().await;
    page.press_test("ask-not-last").await;
    page.wait_for_test("run-tap").await;
    assert_eq!(
        page.asked().await,
        Some(Asked {
            bolt: ORDER[2],
            lap: 2
        })
    );
    assert_eq!(page.pulls(3).await, ORDER[2..5]);
    page.interrupt().await;
    page.press_test("ask-lap").await;
    assert!(
        page.text_of("remedy")
            .await
            .starts_with("Begin this lap again")
    );
    page.press_test("remedy-restart").await;
    assert_eq!(page.pulls(10).await, ORDER);

    // Lap 3, the final torque: a pull whose press was lost, then nobody knows
    // anything: all come off, and the gasket with them.
    assert_eq!(page.pulls(2).await, ORDER[..2]);
    page.interrupt().await;
    page.press_test("ask-as-well").await;
    page.wait_for_test("run-tap").await;
    assert_eq!(
        page.asked().await,
        Some(Asked {
            bolt: ORDER[3],
            lap: 3
        })
    );
    let mut done = page.looks("done").await;
    done.sort_unstable();
    assert_eq!(done, [2, 3, 8]);
    page.interrupt().await;
    page.press_test("ask-nothing").await;
    page.wait_for_test("new-gasket").await;
    page.press_test("remedy-backed-off").await;
    page.wait_for_test("run-tap").await;
    assert_eq!(
        page.asked().await,
        Some(Asked {
            bolt: ORDER[0],
            lap: 1
        })
    );
    for _ in 0..3 {
        assert_eq!(page.pulls(10).await, ORDER);
    }

    // It counts, and is in the book.
    let credit = page.wait_for_test("run-credit").await;
    assert_eq!(
        credit.attr("data-verdict").await.unwrap().as_deref(),
        Some("good")
    );
    for bolt in 1..=10 {
        page.tap_bolt(bolt).await;
    }
    page.wait_for_text("10 of 10 seen").await;
    page.reach("run-to-book").await;
    page.wait_for_test("group-state").await;
    page.wait_for_text("Tight, and it counts").await;
    page.wait_until_all_is_kept().await;
    page.assert_no_trouble().await;
    page.to_the_bench().await;
    let out = rig.export(&page).await;
    assert_eq!(
        out.matches("\"kind\":\"bolt-pulled\"").count(),
        10 + 6 + 10 + 3 + 30
    );
    assert!(out.contains("\"kind\":\"check-made\""));
}

each_engine!(a_run_on_two_screens_is_noticed);
async fn a_run_on_two_screens_is_noticed(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    page.describe_head(&ORDER, &TORQUES).await;
    page.press_test("run-begin").await;
    page.pulls(2).await;
    let address = page.client.current_url().await.unwrap();
    let first = page.client.window().await.unwrap();
    let second = rig.browser().new_tab().await.unwrap();
    page.go(address.as_str()).await;
    page.wait_for_test("run-asking").await;
    page.press_test("ask-sure").await;
    assert_eq!(page.pulls(1).await, ORDER[2..3]);
    // The first has nothing to press any more but this.
    page.client.switch_to_window(first).await.unwrap();
    page.wait_for_test("run-elsewhere").await;
    assert!(!page.has_test("run-tap").await);
    page.press_test("run-take-over").await;
    page.wait_for_test("run-asking").await;
    page.press_test("ask-sure").await;
    page.wait_for_test("run-tap").await;
    assert_eq!(
        page.asked().await,
        Some(Asked {
            bolt: ORDER[3],
            lap: 1
        })
    );
    page.client.switch_to_window(second).await.unwrap();
    page.wait_for_test("run-elsewhere").await;
    page.assert_no_trouble().await;
}

each_engine!(a_run_goes_on_from_memory_when_nothing_can_be_kept);
async fn a_run_goes_on_from_memory_when_nothing_can_be_kept(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    page.describe_head(&ORDER, &TORQUES).await;
    page.press_test("run-begin").await;
    page.pulls(2).await;
    page.wait_until_all_is_kept().await;
    // Full from here on, both copies.
    page.script(
        "const full = () => { throw new DOMException('no room', 'QuotaExceededError') };
        Storage.prototype.setItem = full;
        IDBObjectStore.prototype.put = full;
        IDBObjectStore.prototype.add = full;",
        vec![],
    )
    .await;
    assert_eq!(page.pulls(2).await, ORDER[2..4]);
    let said = page.text_of("run-trouble").await;
    assert!(said.contains("Export before you close it"), "{said}");
    assert_eq!(page.pulls(2).await, ORDER[4..6]);
    page.press_test("run-close").await;
    page.to_the_bench().await;
    let out = rig.export(&page).await;
    assert_eq!(out.matches("\"kind\":\"bolt-pulled\"").count(), 6);
}

each_engine!(a_press_too_many_is_not_a_pull_and_keys_are);
async fn a_press_too_many_is_not_a_pull_and_keys_are(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    page.describe_head(&ORDER, &TORQUES).await;
    page.press_test("run-begin").await;
    page.wait_for_test("run-tap").await;
    // Two presses as fast as a page can get them: one pull.
    page.script(
        "const tap = document.querySelector('[data-test=run-tap]'); tap.click(); tap.click()",
        vec![],
    )
    .await;
    page.wait_for_text("Pressed twice").await;
    assert_eq!(
        page.asked().await,
        Some(Asked {
            bolt: ORDER[1],
            lap: 1
        })
    );
    // A foot pedal is a key; one that is held down is one pull.
    tokio::time::sleep(std::time::Duration::from_millis(520)).await;
    page.script(
        "for (const repeat of [false, true, true]) document.body.dispatchEvent(
            new KeyboardEvent('keydown', { key: 'PageDown', bubbles: true, repeat }))",
        vec![],
    )
    .await;
    until("the pedal's pull", async || {
        (page.asked().await?
            == Asked {
                bolt: ORDER[2],
                lap: 1,
            })
        .then_some(())
    })
    .await;
    // Undo takes the last one back, and no more than that.
    page.press_test("run-undo").await;
    until("the pull to be taken back", async || {
        (page.asked().await?
            == Asked {
                bolt: ORDER[1],
                lap: 1,
            })
        .then_some(())
    })
    .await;
    let undo = page.wait_for_test("run-undo").await;
    assert!(undo.attr("disabled").await.unwrap().is_some());
    // Large enough to be read a metre away: a phone 360 pixels wide is 64 to
    // 68 mm wide, so that 25 mm are at most 141 pixels of ink; the lower half is the
    // button.
    let size = page
        .script(
            "const paper = document.querySelector('.run-number');
            const room = paper.getBoundingClientRect(), view = paper.viewBox.baseVal;
            const scale = Math.min(room.width / view.width, room.height / view.height);
            const text = getComputedStyle(paper.querySelector('text'));
            const pen = document.createElement('canvas').getContext('2d');
            pen.font = `${text.fontWeight} ${text.fontSize} ${text.fontFamily}`;
            const ink = pen.measureText('0').actualBoundingBoxAscent;
            const tap = document.querySelector('[data-test=run-tap]').getBoundingClientRect();
            return { figures: ink * scale, tap: tap.height, width: tap.width, wide: innerWidth, high: innerHeight }",
            vec![],
        )
        .await;
    let of = |name: &str| size[name].as_f64().unwrap();
    assert!(
        of("tap") >= of("high") / 2.0 - 1.0 && of("width") >= of("wide") - 1.0,
        "{size}"
    );
    assert!(of("figures") >= 360.0 / 64.0 * 25.0, "{size}");
    page.assert_no_trouble().await;
}

each_engine!(sealant_runs_by_the_wall_and_bolts_are_known_one_by_one);
async fn sealant_runs_by_the_wall_and_bolts_are_known_one_by_one(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    page.describe_head(&ORDER, &TORQUES).await;
    page.open_all_folds().await;
    page.reach("to-sealant").await;
    page.wait_for_test("sealant-start").await;
    page.type_into("close-by", "soon").await;
    page.reach("sealant-start").await;
    page.wait_for_text("“soon” is no time").await;
    let field = page.wait_for_test("field-close-by").await;
    // One engine's driver can't clear a field: four times backspace.
    field.send_keys(&"\u{e003}".repeat(4)).await.unwrap();
    page.type_into("close-by", "10 min").await;
    page.type_into("torque-from", "1 h").await;
    page.reach("sealant-start").await;
    let before = seconds(&page.text_of("countdown").await);
    assert!((590..=600).contains(&before), "{before}");
    // The page is away for a while; the clock is not.
    page.reload().await;
    page.wait_until_it_stands().await;
    until("the clock to have gone on", async || {
        (seconds(&page.text_of("countdown").await) < before).then_some(())
    })
    .await;
    page.reach("joint-closed").await;
    page.wait_for_text("until full torque").await;

    // Bolts one by one: what they stretched, and one that is new.
    let group = page.client.current_url().await.unwrap();
    let group = group.fragment().unwrap().replace("/sealant", "/lengths");
    page.go_to(&format!("#{group}")).await;
    for (state, length, at) in [("free", "1.6004", 1), ("tight", "1.6064", 1)] {
        page.pick(&format!("bolt-state-{state}")).await;
        let field = page.wait_for_test("field-bolt-measured").await;
        page.type_into("bolt-measured", length).await;
        page.press_enter(&field).await;
        page.put_keypad_away().await;
        let row = format!("length-{at}");
        until("the length in its row", async || {
            page.text_of(&row).await.contains(length).then_some(())
        })
        .await;
    }
    assert!(page.text_of("length-1").await.contains("stretch 6.0 thou"));
    page.reach("compare-bolt-2").await;
    page.wait_for_text("not the bolt of this hole").await;
    page.reach("new-bolt-1").await;
    until("the new bolt", async || {
        page.text_of("length-1")
            .await
            .contains("nothing known yet")
            .then_some(())
    })
    .await;
    page.assert_no_trouble().await;
}

/// A time on a clock, "9:58", in seconds.
fn seconds(text: &str) -> u32 {
    text.trim()
        .split(':')
        .fold(0, |sum, part| sum * 60 + part.parse::<u32>().unwrap())
}

/// A vee-eight's two heads in one group: 34 bolts by 4 laps, the page loaded
/// anew between any two pulls. In one engine: it takes minutes.
#[test]
fn nothing_is_lost_between_any_two_of_136_pulls() {
    crate::rig::run(Engine::Chromium, "nothing_is_lost", nothing_is_lost);
}

async fn nothing_is_lost(rig: &mut Rig) {
    let order: Vec<u32> = (1..=17).flat_map(|bolt| [bolt, bolt + 17]).collect();
    let page = rig.open().await;
    page.bring_in(&rig.write("vee-eight.json", vee_eight_of(&order)))
        .await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.turn_to("Tighten").await;
    page.press_test("group").await;
    page.press_test("run-begin").await;
    let mut pulled = 0;
    for lap in 1..=4 {
        for (at, bolt) in order.iter().enumerate() {
            if pulled > 0 {
                page.interrupt().await;
                let book = page.text_of("ask-book").await;
                let words = format!("lap {lap} of 4, bolt {bolt} is next, {at} of 34 done");
                assert!(book.contains(&words), "{book}, not {words}");
                page.press_test("ask-sure").await;
            }
            page.wait_for_test("run-tap").await;
            assert_eq!(page.asked().await, Some(Asked { bolt: *bolt, lap }));
            let mut done = page.looks("done").await;
            let mut really: Vec<u32> = order[..at].to_vec();
            done.sort_unstable();
            really.sort_unstable();
            assert_eq!(done, really, "lap {lap}");
            page.press_test("run-tap").await;
            pulled += 1;
            if pulled < 136 {
                let this = Some(Asked { bolt: *bolt, lap });
                until("the pull to be taken", async || {
                    (page.asked().await != this).then_some(())
                })
                .await;
            }
        }
    }
    let credit = page.wait_for_test("run-credit").await;
    assert_eq!(
        credit.attr("data-verdict").await.unwrap().as_deref(),
        Some("good")
    );
}

/// An exported build with a group of 34 bolts in it.
pub fn vee_eight_of(order: &[u32]) -> String {
    let facts = [
        json!({
            "id": "01977421-c661-7000-8000-01977421c661",
            "device": "00000000-0000-4000-8000-000000000001",
            "clock": 1_750_000_060_001_u64,
            "kind": "engine-described",
            "engine": { "name": "shop eight", "cylinders": 8, "layout": "vee", "bank_angle": "90°" },
        }),
        json!({
            "id": "01977422-b0c1-7000-8000-01977422b0c1",
            "device": "00000000-0000-4000-8000-000000000001",
            "clock": 1_750_000_120_001_u64,
            "kind": "fastener-group",
            "own": "00000000-0000-4000-8000-00000000abc3",
            "label": "both heads",
            "bolts": 34,
            "lubricant": "sealer",
            "under_head": "oil",
            "stages": ["25", "45", "65", "65"],
            "holds": "head",
            "fastener": "plain",
            "wrench": { "low": "10", "high": "150", "unit": "ft-lb" },
            "layout": { "rows": [17, 17] },
            "order": order,
            "order_from": "printed",
        }),
    ];
    let facts: Vec<String> = facts.iter().map(ToString::to_string).collect();
    format!(
        "{{\"format\":\"thoubook-journal\",\"version\":1,\"build\":\"00000000-0000-4000-8000-0000000000e8\",\n\"facts\":[\n{}\n],\n\"set_aside\":[]}}\n",
        facts.join(",\n")
    )
}
