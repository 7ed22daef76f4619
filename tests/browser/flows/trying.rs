//! Tools tried out and told apart, slips asked about, cold parts, and what a file
//! brings that cannot be.

use serde_json::json;

use super::seeing::assert_it_is_for_everyone;
use crate::builds::five_mains;
use crate::measuring::With;
use crate::page::Page;
use crate::places;
use crate::rig::Rig;
use crate::wait::until;

/// The micrometer of the five mains.
const MICROMETER: &str = "e9c5a522-7aa2-4f94-b53d-fed9a4056d0a";
const VERDICTS: [&str; 5] = ["good", "bad", "close", "good", "good"];

/// Two micrometers of one name and a main that was read in the cold.
fn tools_tried() -> String {
    let path = places::root().join("crates/build-journal/fixtures/tools-tried-1.json");
    std::fs::read_to_string(path).unwrap()
}

/// The file with one line left out; the last line's comma goes with it.
fn without(file: &str, kind: &str) -> String {
    let kept: Vec<&str> = file
        .lines()
        .filter(|line| !line.contains(&format!("\"kind\":\"{kind}\"")))
        .collect();
    kept.join("\n").replace("},\n],", "}\n],") + "\n"
}

impl Page {
    async fn with_build(rig: &mut Rig, file: &std::path::Path) -> Self {
        let page = rig.open().await;
        page.bring_in(file).await;
        page.close_the_file().await;
        page.open_the_build().await;
        page
    }

    /// Opens the fold of the n-th tool that carries this name.
    async fn open_fold_of_tool(&self, nth: usize, name: &str) {
        self.wait_for_test("tool").await;
        self.script(
            "const tool = document.querySelectorAll('[data-test=tool]')[arguments[0]];
             tool.querySelector(`[data-test=${arguments[1]}]`).open = true;",
            vec![json!(nth), json!(name)],
        )
        .await;
    }

    /// The names of the tools on the list.
    async fn names_of_tools(&self) -> Vec<String> {
        self.wait_for_test("tool").await;
        let script = "return [...document.querySelectorAll('[data-test=tool] strong')]
            .map((name) => name.textContent)";
        serde_json::from_value(self.script(script, vec![]).await).unwrap()
    }

    async fn try_out(&self, readings: &[&str]) {
        let field = format!("trial-{MICROMETER}");
        for (number, reading) in (1..).zip(readings) {
            self.enter(&field, reading).await;
            self.press_next().await;
            until(&format!("reading {number} to be taken"), async || {
                let said = self.by_test("trial-readings").await?.text().await.ok()?;
                (said.split('·').count() >= number).then_some(())
            })
            .await;
        }
        self.put_keypad_away().await;
    }

    async fn press_and_wait(&self, name: &str, facts: u64) {
        let before = self.acknowledged().await;
        self.bring_into_view(name).await;
        self.press_test(name).await;
        self.wait_until_acknowledged(before + facts).await;
    }
}

each_engine!(a_tool_tried_out_changes_what_rests_on_it_until_the_trial_is_struck);
async fn a_tool_tried_out_changes_what_rests_on_it_until_the_trial_is_struck(rig: &mut Rig) {
    let page = Page::with_build(rig, &five_mains()).await;
    assert_eq!(page.bearings().await, VERDICTS);
    page.turn_to("Tools").await;
    let common = page.text_of("scatter").await;
    assert!(common.contains("common for its kind"), "{common}");
    page.open_fold_of_tool(0, "try-out").await;
    page.try_out(&["2.4500", "2.4515", "2.4486"]).await;
    page.reload().await;
    page.open_fold_of_tool(0, "try-out").await;
    let said = page.text_of("trial-says").await;
    assert!(
        said.contains("take 2 more"),
        "nothing typed is lost: {said}"
    );
    let keep = page.wait_for_test("trial-keep").await;
    assert!(keep.attr("disabled").await.unwrap().is_some());
    page.try_out(&["2.4508", "2.4491"]).await;
    let said = page.text_of("trial-says").await;
    assert!(said.contains("in your hand"), "{said}");
    assert!(said.contains("Is one of the readings a slip"), "{said}");
    assert_it_is_for_everyone(&page).await;
    page.press_and_wait("trial-keep", 1).await;
    let own = page.text_of("scatter").await;
    assert!(own.contains("from your five readings of"), "{own}");
    page.turn_to("Mains").await;
    assert_eq!(page.bearings().await[0], "close");
    page.turn_to("Tools").await;
    page.press_and_wait("strike-trial", 1).await;
    assert_eq!(page.text_of("scatter").await, common);
    page.turn_to("Mains").await;
    assert_eq!(page.bearings().await, VERDICTS);
    page.assert_no_trouble().await;
}

each_engine!(five_readings_alike_make_no_perfect_tool);
async fn five_readings_alike_make_no_perfect_tool(rig: &mut Rig) {
    let page = Page::with_build(rig, &five_mains()).await;
    page.turn_to("Tools").await;
    page.open_fold_of_tool(0, "try-out").await;
    page.try_out(&["2.4500"; 5]).await;
    let said = page.text_of("trial-says").await;
    assert!(said.contains("alike to the last digit"), "{said}");
    page.press_test("trial-back").await;
    let said = page.text_of("trial-says").await;
    assert!(said.contains("take one more"), "{said}");
    page.assert_no_trouble().await;
}

each_engine!(a_second_tool_of_a_name_is_asked_about_and_told_apart);
async fn a_second_tool_of_a_name_is_asked_about_and_told_apart(rig: &mut Rig) {
    let page = Page::with_build(rig, &five_mains()).await;
    page.turn_to("Tools").await;
    let kind = "list-main-journal-diameter-outside-micrometer-proved";
    page.bring_into_view(kind).await;
    page.pick(kind).await;
    let asked = page.text_of("same-name").await;
    assert!(
        asked.contains("on the list already: the micrometer"),
        "{asked}"
    );
    assert_it_is_for_everyone(&page).await;
    page.press_test("same-tool").await;
    assert_eq!(page.names_of_tools().await.len(), 2, "it is that one");

    page.bring_into_view(kind).await;
    page.pick(kind).await;
    let another = page.wait_for_test("second-tool").await;
    assert!(another.attr("disabled").await.unwrap().is_some());
    page.paste("second-outside-micrometer-proved", "3 to 4 in")
        .await;
    page.press_and_wait("second-tool", 1).await;
    assert_eq!(
        page.names_of_tools().await,
        ["micrometer", "bore gauge", "micrometer (3 to 4 in)"]
    );

    // The first cannot take its name either.
    page.open_fold_of_tool(0, "rename").await;
    page.paste(&format!("mark-{MICROMETER}"), "3 to 4 IN").await;
    let wrong = page.says(&format!("name-{MICROMETER}")).await;
    assert!(wrong.contains("micrometer (3 to 4 in)"), "{wrong}");
    page.paste(&format!("mark-{MICROMETER}"), "2 to 3 in").await;
    page.press_and_wait("rename-save", 1).await;
    let names = page.names_of_tools().await;
    assert!(
        names.contains(&"micrometer (2 to 3 in)".to_owned()),
        "{names:?}"
    );
    page.turn_to("Mains").await;
    assert_eq!(page.bearings().await, VERDICTS, "its readings stay its own");
    page.assert_no_trouble().await;
}

each_engine!(tools_of_one_name_from_a_file_are_told_apart);
async fn tools_of_one_name_from_a_file_are_told_apart(rig: &mut Rig) {
    let file = tools_tried().replace(r#","mark":"2 to 3 in""#, "");
    let page = Page::with_build(rig, &rig.write("two.json", &file)).await;
    page.turn_to("Tools").await;
    assert_eq!(
        page.names_of_tools().await,
        ["micrometer, number 1", "Micrometer, number 2", "bore gauge"]
    );
    page.turn_to("Book").await;
    page.wait_for_text("take 2 more of the same place").await;
    page.assert_no_trouble().await;
}

each_engine!(a_slip_is_asked_about_and_the_likely_one_taken_or_the_own_one_kept);
async fn a_slip_is_asked_about_and_the_likely_one_taken_or_the_own_one_kept(rig: &mut Rig) {
    let page = Page::with_build(rig, &five_mains()).await;
    page.open_bearing(5).await;
    for (answer, stands) in [("take-likely", "2.4482 in"), ("keep-mine", "2.4732 in")] {
        let place = "place-main-journal-diameter-rear-across";
        page.put_keypad_away().await;
        page.bring_into_view(place).await;
        page.press_test(place).await;
        page.press_and_wait("strike-reading", 1).await;
        // One turn of the thimble too far.
        page.write_reading("2.4732", With::Keypad).await;
        let asked = page.text_of("asked").await;
        assert!(asked.contains("one turn of the thimble"), "{asked}");
        assert!(asked.contains("2.4482 in"), "{asked}");
        page.reload().await;
        page.wait_for_test("asked").await;
        let facts = if answer == "take-likely" { 2 } else { 0 };
        page.press_and_wait(answer, facts).await;
        until("the question to go", async || {
            (!page.has_test("asked").await).then_some(())
        })
        .await;
        page.put_keypad_away().await;
        page.bring_into_view(place).await;
        page.press_test(place).await;
        page.wait_for_text(stands).await;
    }
    page.assert_no_trouble().await;
}

each_engine!(a_journal_under_the_sheets_size_is_asked_about_and_gets_limits_of_its_own);
async fn a_journal_under_the_sheets_size_is_asked_about_and_gets_limits_of_its_own(rig: &mut Rig) {
    let sheet = r#""kind":"limits-set","measure":"main-journal-diameter","low":"2.4475","high":"2.4490","unit":"in""#;
    let file = without(&tools_tried(), "reading").replace(
        r#""kind":"limits-set","measure":"main-oil-clearance","low":"1.5","high":"2.8","unit":"thou""#,
        sheet,
    );
    let page = Page::with_build(rig, &rig.write("under.json", &file)).await;
    let address = page.client.current_url().await.unwrap();
    let build = address.fragment().unwrap().replace("/mains", "");
    page.go_to(&format!("#{build}/measure/main-journal-diameter/2"))
        .await;
    page.wait_for_test("entry").await;
    until("the field of the reading", async || {
        if !page.has_test("field-reading").await {
            let first = "document.querySelector('[data-test^=hand-]')?.closest('label').click()";
            page.script(first, vec![]).await;
        }
        page.has_test("field-reading").await.then_some(())
    })
    .await;
    page.write_reading("2.4384", With::Keypad).await;
    let asked = page.text_of("asked").await;
    assert!(asked.contains("0.010 in undersize"), "{asked}");
    assert!(!page.has_test("take-likely").await);
    page.put_keypad_away().await;
    page.press_and_wait("take-size", 1).await;
    until("the question to go", async || {
        (!page.has_test("asked").await).then_some(())
    })
    .await;
    page.go_to(&format!("#{build}/book")).await;
    page.wait_for_text("repaired to 0.01 in undersize").await;
    page.assert_no_trouble().await;
}

each_engine!(parts_measured_in_the_cold_are_asked_about_and_brought_to_20_degrees_by_one_tap);
async fn parts_measured_in_the_cold_are_asked_about_and_brought_to_20_degrees_by_one_tap(
    rig: &mut Rig,
) {
    let file = without(&tools_tried(), "warmth-settled");
    let page = Page::with_build(rig, &rig.write("cold.json", &file)).await;
    page.open_bearing(1).await;
    let asked = page.text_of("warmth-asked").await;
    assert!(asked.contains("Read at 4 °C"), "{asked}");
    assert!(
        asked.contains("more than a quarter of the window"),
        "{asked}"
    );
    assert!(asked.contains("common practice"), "{asked}");
    assert_it_is_for_everyone(&page).await;
    let as_read = page.text_of("reading").await;
    page.press_and_wait("warmth-take", 1).await;
    let settled = page.text_of("warmth-settled").await;
    assert!(settled.contains("brought to 20 °C"), "{settled}");
    assert_ne!(page.text_of("reading").await, as_read);
    page.press_and_wait("warmth-again", 1).await;
    page.wait_for_test("warmth-asked").await;
    assert_eq!(page.text_of("reading").await, as_read);
    page.press_and_wait("warmth-keep", 1).await;
    let settled = page.text_of("warmth-settled").await;
    assert!(settled.contains("left as read"), "{settled}");
    assert_eq!(page.text_of("reading").await, as_read);

    // The round of the bores says it, too, and a part that was not read does not.
    let address = page.client.current_url().await.unwrap();
    let build = address.fragment().unwrap().replace("/mains/1", "");
    page.go_to(&format!("#{build}/measure/main-bearing-bore/1"))
        .await;
    page.wait_for_test("warmth-settled").await;
    page.go_to(&format!("#{build}/measure/main-bearing-bore/2"))
        .await;
    until("nothing said of another main", async || {
        (!page.has_test("warmth-settled").await).then_some(())
    })
    .await;
    page.assert_no_trouble().await;
}

each_engine!(what_a_file_brings_that_cannot_be_is_named_in_the_book);
async fn what_a_file_brings_that_cannot_be_is_named_in_the_book(rig: &mut Rig) {
    let good = tools_tried();
    let page = rig.open().await;
    for (name, right, wrong, words) in [
        (
            "place.json",
            r#""place":{"main":1,"#,
            r#""place":{"main":9,"#,
            "Read where this engine has nothing",
        ),
        (
            "down.json",
            r#""low":"1.5""#,
            r#""low":"3.5""#,
            "swap the two",
        ),
        (
            "zero.json",
            r#""low":"1.5""#,
            r#""low":"2.8""#,
            "no reading could ever be inside",
        ),
    ] {
        assert!(good.contains(right), "{name}");
        let file = good.replace(right, wrong);
        page.bring_in(&rig.write(name, &file)).await;
        page.close_the_file().await;
        page.open_the_build().await;
        assert_ne!(page.bearings().await[0], "good", "{name}");
        page.turn_to("Book").await;
        page.wait_for_text(words).await;
        assert_it_is_for_everyone(&page).await;
        page.assert_no_trouble().await;
        page.to_the_bench().await;
        page.wipe().await;
    }
}

each_engine!(a_clock_that_fell_back_a_day_is_told_in_the_book);
async fn a_clock_that_fell_back_a_day_is_told_in_the_book(rig: &mut Rig) {
    let page = Page::with_build(rig, &crate::builds::sprayer()).await;
    page.turn_to("Book").await;
    page.wait_for_text("the clock of the device was behind")
        .await;
    page.assert_no_trouble().await;
}
