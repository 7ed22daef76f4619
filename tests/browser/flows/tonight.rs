//! What is next, a step with a bouncing thumb, something that was changed: what
//! it undoes is told before and after, and striking it out brings all back.

use crate::builds::five_mains;
use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

const VERDICTS: [&str; 5] = ["good", "bad", "close", "good", "good"];

/// Taps where a thing stands, and twice again within a fifth of a second: on
/// whatever stands there by then.
const BOUNCE: &str = "const [thing] = arguments;
    thing.scrollIntoView({ block: 'center' });
    const { x, y, width, height } = thing.getBoundingClientRect();
    const tap = () => document.elementFromPoint(x + width / 2, y + height / 2)?.click();
    tap();
    setTimeout(tap, 80);
    return new Promise((done) => setTimeout(() => { tap(); setTimeout(() => done(true), 300); }, 200));";

impl Page {
    /// Goes to a page of the plan of the open build.
    pub async fn plan_page(&self, page: &str) {
        let script = "return location.hash.split('/').slice(0, 3).join('/')";
        let build = self.script(script, vec![]).await;
        self.go_to(&format!("{}/{page}", build.as_str().unwrap()))
            .await;
    }

    /// Presses what may stand anywhere on a long page.
    pub async fn press_far(&self, name: &str) {
        self.bring_into_view(name).await;
        self.press_test(name).await;
    }

    /// Presses it and waits until what follows is safe.
    pub async fn press_and_keep(&self, name: &str) {
        let before = self.acknowledged().await;
        self.press_far(name).await;
        self.wait_until_acknowledged(before + 1).await;
    }

    /// How the open step stands.
    async fn step_state(&self) -> String {
        let state = self.wait_for_test("step-state").await;
        state.attr("data-state").await.unwrap().unwrap_or_default()
    }

    pub async fn wait_for_step_state(&self, wanted: &str) {
        until(&format!("the step to be {wanted}"), async || {
            let state = self.by_test("step-state").await?;
            let state = state.attr("data-state").await.ok()??;
            (state == wanted).then_some(())
        })
        .await;
    }

    /// What is struck through on the screen as no longer counting.
    async fn undone(&self) -> Vec<String> {
        let script = "return [...document.querySelectorAll('[data-test=undone] > del')]
            .filter((thing) => thing.checkVisibility())
            .map((thing) => thing.textContent)";
        serde_json::from_value(self.script(script, vec![]).await).unwrap()
    }
}

each_engine!(a_bouncing_thumb_does_a_step_once_and_doing_it_again_is_asked_about);
async fn a_bouncing_thumb_does_a_step_once_and_doing_it_again_is_asked_about(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    page.describe_engine("orchard sprayer", "4", "5").await;
    page.turn_to("Tonight").await;
    let first = page.wait_for_test("next-step").await;
    let first = first.attr("data-step").await.unwrap().unwrap();
    page.press_far("next-step").await;
    assert_eq!(page.step_state().await, "open");

    // Three taps are one.
    let before = page.acknowledged().await;
    let done = page.wait_for_test("mark-done").await;
    let done = serde_json::to_value(&done).unwrap();
    page.script(BOUNCE, vec![done]).await;
    page.wait_until_acknowledged(before + 1).await;
    assert_eq!(page.step_state().await, "done");
    assert_eq!(page.acknowledged().await, before + 1);
    assert!(!page.has_test("ask-yes").await, "nothing is asked");
    page.turn_to("Tonight").await;
    let stopped = page.wait_for_test("stopped-at").await;
    assert_eq!(
        stopped.attr("data-step").await.unwrap(),
        Some(first.clone())
    );
    let next = page.wait_for_test("next-step").await;
    assert_ne!(next.attr("data-step").await.unwrap(), Some(first));

    // The crank is in and so are the rods, which lie over it.
    page.plan_page("step/crank-in").await;
    assert!(page.text_of("cautions").await.contains("heavy"));
    assert!(page.text_of("step-waits").await.contains("earlier"));
    page.press_and_keep("mark-done").await;
    page.press_and_keep("good-crank-turns-free").await;
    page.plan_page("step/pistons-in").await;
    page.wait_for_text("piston").await;
    page.press_and_keep("mark-done").await;
    page.wait_for_step_state("done").await;
    page.plan_page("step/crank-in").await;
    page.wait_for_step_state("done").await;

    // Once more is asked about, with what comes undone; no leaves all as it is.
    let before = page.acknowledged().await;
    page.press_far("mark-again").await;
    page.wait_for_test("ask-yes").await;
    let undone = page.undone().await;
    assert!(!undone.is_empty(), "rods and pistons lie over the crank");
    assert!(page.has_test("way-back").await);
    page.press_test("ask-no").await;
    assert_eq!(page.acknowledged().await, before);
    page.plan_page("step/pistons-in").await;
    page.wait_for_step_state("done").await;
    page.plan_page("step/crank-in").await;
    page.wait_for_step_state("done").await;
    page.press_far("mark-again").await;
    page.press_and_keep("ask-yes").await;
    page.plan_page("step/pistons-in").await;
    page.wait_for_step_state("undone").await;

    // Without the server's process it is the same.
    rig.server.stop();
    page.reload().await;
    page.wait_until_it_stands().await;
    page.wait_for_step_state("undone").await;
    page.turn_to("Tonight").await;
    page.wait_for_test("stale").await;
    page.assert_no_trouble().await;
}

each_engine!(a_change_tells_what_it_undoes_before_and_after_and_is_struck_out_again);
async fn a_change_tells_what_it_undoes_before_and_after_and_is_struck_out_again(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    page.bring_in(&five_mains()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    assert_eq!(page.bearings().await, VERDICTS);

    page.turn_to("Tonight").await;
    assert!(!page.has_test("stale").await);
    page.press_far("to-change").await;
    let find = page.wait_for_test("field-find-change").await;
    find.send_keys("shells main").await.unwrap();
    page.press_far("change-main-shells-swapped").await;
    page.wait_for_test("say-where").await;
    page.press_far("at-main-4").await;
    let told = ["main bearing bore, main 4", "main oil clearance, main 4"];
    until("what it undoes", async || {
        (page.undone().await == told).then_some(())
    })
    .await;
    assert!(page.text_of("way-back").await.contains("minutes"));
    page.press_and_keep("change-write").await;

    // It is said everywhere, and main 4 is nowhere called good.
    page.wait_for_test("change-undoes").await;
    page.turn_to("Mains").await;
    let now = ["good", "bad", "close", "stale", "good"];
    assert_eq!(page.bearings().await, now);
    let words = page.bearing_words(4).await;
    assert!(words.contains("Main shells swapped"), "{words}");
    assert!(!words.contains("good"), "{words}");
    page.open_bearing(4).await;
    page.put_keypad_away().await;
    assert_eq!(page.verdict().await.as_deref(), Some("stale"));
    assert!(page.has_test("entry").await, "it is to be measured again");
    rig.server.stop();
    page.reload().await;
    page.wait_until_it_stands().await;
    page.turn_to("Tonight").await;
    let stale = page.text_of("stale").await;
    assert!(stale.contains("Main shells swapped"), "{stale}");
    assert_eq!(page.undone().await, told);
    page.to_the_bench().await;
    assert!(page.text_of("card-stale").await.contains("2 results"));
    page.press_test("build-link").await;

    // Struck out, all is as before.
    page.press_and_keep("strike-cause").await;
    until("nothing stale", async || {
        (!page.has_test("stale").await).then_some(())
    })
    .await;
    page.turn_to("Mains").await;
    assert_eq!(page.bearings().await, VERDICTS);
    page.plan_page("change").await;
    let changed = page.wait_for_test("changed").await;
    assert_eq!(
        changed.attr("data-struck").await.unwrap().as_deref(),
        Some("true")
    );
    page.assert_no_trouble().await;
}

each_engine!(a_clock_runs_by_itself_and_what_was_said_of_the_engine_changes_the_steps);
async fn a_clock_runs_by_itself_and_what_was_said_of_the_engine_changes_the_steps(rig: &mut Rig) {
    let page = rig.open().await;
    page.describe_engine("orchard sprayer", "4", "5").await;
    page.plan_page("step/liners-in").await;
    page.wait_for_text("No such step").await;
    page.plan_page("engine").await;
    let assumed = page.text_of("assumed-liners").await;
    assert!(assumed.contains("bored in the block"), "{assumed}");
    page.bring_into_view("how-built").await;
    page.pick("liners-wet-top-flange").await;
    // What comes into the plan is said before it is written down.
    let before = page.acknowledged().await;
    page.press_far("describe-save").await;
    let come = page.text_of("plan-come").await;
    assert!(come.contains("Wet liners"), "{come}");
    assert_eq!(page.acknowledged().await, before);
    page.press_and_keep("ask-yes").await;
    page.wait_for_test("next-step").await;
    page.plan_page("step/liners-in").await;
    page.wait_for_test("doing").await;
    page.plan_page("engine").await;
    let mark = page.wait_for_test("liners-wet-top-flange").await;
    assert!(mark.is_selected().await.unwrap());

    page.plan_page("step/pan-on").await;
    let lasts = page.wait_for_test("field-lasts-sealant-open").await;
    lasts.send_keys("soon").await.unwrap();
    page.wait_for_text("is no time").await;
    page.paste("lasts-sealant-open", "10 min").await;
    page.press_and_keep("good-sealant-open").await;
    page.turn_to("Tonight").await;
    let shown = page.text_of("clock-face").await;
    assert!(shown.contains("left"), "{shown}");
    until("the clock to have run on", async || {
        let now = page.by_test("clock-face").await?.text().await.ok()?;
        (now != shown && now.contains("left")).then_some(())
    })
    .await;
    // Minutes later by the device's clock, as after a sleep.
    page.script(
        "const now = window.Date.now; window.Date.now = () => now() + 11 * 60 * 1000; window.dispatchEvent(new Event('focus'))",
        vec![],
    )
    .await;
    until("the clock to be over", async || {
        let face = page.by_test("clock-face").await?;
        (face.attr("data-state").await.ok()?.as_deref() == Some("over")).then_some(())
    })
    .await;
    page.assert_no_trouble().await;
}
