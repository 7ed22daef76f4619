//! The oil, from what is missing to the first fire and after it.

use crate::builds::five_mains;
use crate::page::Page;
use crate::places;
use crate::rig::Rig;
use crate::wait::until;

/// The invented engine up to its first hour.
fn first_hour() -> std::path::PathBuf {
    places::root().join("crates/build-journal/fixtures/first-hour-1.json")
}

async fn go_to(page: &Page, place: &str) {
    page.turn_to("Oil").await;
    let way = format!("oil-{place}");
    page.bring_into_view(&way).await;
    page.press_test(&way).await;
    until(&format!("the page {place} of the oil"), async || {
        let thing = page.by_test(&way).await?;
        thing.attr("aria-current").await.ok()?.map(drop)
    })
    .await;
}

async fn open(rig: &mut Rig, file: &std::path::Path) -> Page {
    let page = rig.open().await;
    page.bring_in(file).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page
}

async fn press(page: &Page, name: &str) {
    page.put_keypad_away().await;
    page.bring_into_view(name).await;
    page.press_test(name).await;
}

/// Presses something and waits for so many facts.
async fn write(page: &Page, name: &str, facts: u64) {
    let before = page.acknowledged().await;
    press(page, name).await;
    page.wait_until_acknowledged(before + facts).await;
}

each_engine!(what_is_missing_of_the_oil_is_said_and_typing_it_gives_the_chart);
async fn what_is_missing_of_the_oil_is_said_and_typing_it_gives_the_chart(rig: &mut Rig) {
    let page = open(rig, &five_mains()).await;
    page.turn_to("Oil").await;
    let lacks = page.text_of("oil-lacks").await;
    for wanted in ["The stroke", "The oil", "The pump's volume", "crankpins"] {
        assert!(lacks.contains(wanted), "{lacks}");
    }
    // The mains were measured: their journals are not asked for.
    assert!(!lacks.contains("main journals"), "{lacks}");
    assert!(!page.has_test("oil-chart").await);
    press(&page, "oil-type-in").await;
    for (field, text) in [
        ("grade", "10w30"),
        ("stroke", "3.5"),
        ("main-shell", "0.82"),
        ("rod-journal", "2.1"),
        ("rod-shell", "0.8"),
    ] {
        page.paste(field, text).await;
    }
    write(&page, "oil-system-save", 1).await;
    // No pump yet: where the oil goes, and the flow that is wanted.
    page.wait_for_test("oil-flow").await;
    let share = page.text_of("oil-share-main-3").await;
    assert!(share.contains('%') && share.contains("measured"), "{share}");
    let share = page.text_of("oil-share-rod-1").await;
    assert!(share.contains("estimated"), "{share}");
    // The film asks for no pump.
    let lacks = page.text_of("oil-lacks").await;
    assert!(lacks.contains("pump's volume"), "{lacks}");
    go_to(&page, "film").await;
    page.wait_for_test("film-of-mains").await;
    assert!(!page.has_test("oil-lacks").await);
    go_to(&page, "system").await;
    page.paste("pump-volume", "14 cc").await;
    page.paste("relief", "50").await;
    write(&page, "oil-system-save", 1).await;
    page.wait_for_test("oil-chart").await;
    page.wait_for_test("oil-pumps").await;
    assert!(!page.has_test("oil-lacks").await);
    page.assert_no_trouble().await;
}

fn first_number(words: &str) -> f64 {
    let start = words.split(": ").nth(1).unwrap_or_default();
    start
        .split_whitespace()
        .next()
        .and_then(|number| number.parse().ok())
        .unwrap_or_else(|| panic!("no number in {words:?}"))
}

each_engine!(a_looser_main_takes_pressure_away_while_the_slider_moves);
async fn a_looser_main_takes_pressure_away_while_the_slider_moves(rig: &mut Rig) {
    let page = open(rig, &first_hour()).await;
    page.turn_to("Oil").await;
    page.wait_for_test("oil-chart").await;
    let as_it_is = first_number(&page.text_of("oil-idle").await);
    for _ in 0..4 {
        press(&page, "what-if-looser").await;
    }
    let words = page.text_of("oil-idle").await;
    assert!(words.contains("main 3 1.0 thou looser"), "{words}");
    assert!(first_number(&words) < as_it_is, "{words}");
    // Every number of the chart stands in a table beside it.
    page.open_all_folds().await;
    let table = "return document.querySelectorAll(
        '[data-test=oil-chart] tbody tr').length >= 5
        && document.querySelector('[data-test=oil-chart] svg').getAttribute('aria-label').length > 20";
    page.wait_for_script("the table of the chart", table).await;
    // It stays open while the slider moves on under it.
    press(&page, "what-if-looser").await;
    page.wait_for_script(
        "the table of the chart to stay open",
        "return document.querySelector('[data-test=oil-chart-numbers]').open
            && !document.querySelector('[data-test=oil-idle]').textContent.includes('1.0 thou')",
    )
    .await;
    go_to(&page, "film").await;
    page.wait_for_test("film-chart").await;
    let film = page.text_of("film-chart").await;
    assert!(
        film.contains("main 3") && film.contains("least film"),
        "{film}"
    );
    go_to(&page, "oils").await;
    let oils = page.text_of("oils-table").await;
    assert!(
        oils.contains("yours, 10W-30") && oils.contains("20W-50"),
        "{oils}"
    );
    page.assert_no_trouble().await;
}

each_engine!(a_pressure_without_temperature_is_kept_and_tells_nothing);
async fn a_pressure_without_temperature_is_kept_and_tells_nothing(rig: &mut Rig) {
    let page = open(rig, &first_hour()).await;
    go_to(&page, "gauge").await;
    page.paste("gauge-pressure", "18").await;
    page.paste("gauge-speed", "750").await;
    write(&page, "gauge-save", 1).await;
    let first = page.text_of("gauge-note").await;
    assert!(
        first.contains("18 psi") && first.contains("tells nothing"),
        "{first}"
    );
    page.paste("gauge-pressure", "18").await;
    page.paste("gauge-speed", "750").await;
    page.paste("gauge-temperature", "205 °F").await;
    write(&page, "gauge-save", 1).await;
    let first = page.text_of("gauge-note").await;
    assert!(first.contains("Should be about"), "{first}");
    page.assert_no_trouble().await;
}

each_engine!(a_prime_goes_by_each_rocker_and_an_opened_joint_makes_it_void);
async fn a_prime_goes_by_each_rocker_and_an_opened_joint_makes_it_void(rig: &mut Rig) {
    let page = open(rig, &five_mains()).await;
    go_to(&page, "prime").await;
    let said = page.text_of("prime-verdict").await;
    assert!(
        said.contains("Do not start") && said.contains("0 of 8"),
        "{said}"
    );
    page.paste("prime-pressure", "35").await;
    page.paste("prime-temperature", "70 °F").await;
    write(&page, "prime-save", 2).await;
    for cylinder in 1..=4 {
        for side in ["intake", "exhaust"] {
            let said = page.text_of("prime-verdict").await;
            assert!(said.contains("Do not start"), "{said}");
            write(&page, &format!("dot-{cylinder}-{side}-1"), 1).await;
        }
    }
    let said = page.text_of("prime-verdict").await;
    assert!(said.contains("Primed") && said.contains("8 of 8"), "{said}");
    assert!(
        said.contains("It holds 13 days more") || said.contains("14 days"),
        "{said}"
    );
    write(&page, "prime-opened", 1).await;
    let said = page.text_of("prime-verdict").await;
    assert!(
        said.contains("Do not start") && said.contains("Prime again"),
        "{said}"
    );
    // And the list before the key knows it.
    go_to(&page, "before").await;
    let primed = page.wait_for_test("before-primed").await;
    assert_eq!(
        primed.attr("data-done").await.unwrap().as_deref(),
        Some("false")
    );
    let done = page.wait_for_test("before-done").await;
    assert!(done.attr("disabled").await.unwrap().is_some());
    page.assert_no_trouble().await;
}

/// The oil's minutes, as the line under the buttons says them.
async fn minutes(page: &Page) -> String {
    page.text_of("run-minutes").await
}

each_engine!(the_first_fire_counts_its_minutes_and_a_bad_row_says_off);
async fn the_first_fire_counts_its_minutes_and_a_bad_row_says_off(rig: &mut Rig) {
    let page = open(rig, &first_hour()).await;
    go_to(&page, "run").await;
    let stops = page.text_of("stop-list").await;
    assert!(
        stops.contains("fuel leak") && stops.contains("10"),
        "{stops}"
    );
    // Eight minutes were run before: they add up.
    assert!(minutes(&page).await.starts_with("8:00 of 20:00"));
    write(&page, "run-fired", 2).await;
    until("the minutes to go on", async || {
        let said = minutes(&page).await;
        (said.starts_with("8:0") && !said.starts_with("8:00")).then_some(())
    })
    .await;
    page.paste("run-pressure", "48").await;
    page.paste("run-speed", "2100").await;
    page.paste("run-coolant", "150").await;
    write(&page, "run-row", 1).await;
    assert_eq!(page.text_of("large-pressure").await, "48 psi");
    assert!(!page.has_test("run-alarm").await);
    // The stop list stands where it can be seen, wherever the page is scrolled.
    page.bring_into_view("run-row").await;
    let seen =
        "const box = document.querySelector('[data-test=stop-list]').getBoundingClientRect();
        return box.top >= -1 && box.bottom <= window.innerHeight + 1";
    page.wait_for_script("the stop list in sight", seen).await;
    page.paste("run-pressure", "30").await;
    page.paste("run-speed", "2100").await;
    page.paste("run-coolant", "236").await;
    write(&page, "run-row", 1).await;
    let alarm = page.text_of("run-alarm").await;
    assert!(
        alarm.contains("OFF NOW") && alarm.contains("110 °C"),
        "{alarm}"
    );
    write(&page, "run-off", 1).await;
    let stopped = minutes(&page).await;
    page.reload().await;
    page.wait_for_test("run-fired").await;
    assert_eq!(minutes(&page).await, stopped);
    page.assert_no_trouble().await;
}

each_engine!(compression_is_held_against_the_last_time_and_not_against_a_book);
async fn compression_is_held_against_the_last_time_and_not_against_a_book(rig: &mut Rig) {
    let page = open(rig, &first_hour()).await;
    go_to(&page, "after").await;
    for psi in ["167", "150", "166", "171"] {
        page.paste("compression", psi).await;
        write(&page, "compression-save", 1).await;
    }
    let trends = "return [...document.querySelectorAll('[data-test=trend]')]
        .map((one) => [one.dataset.verdict, one.textContent])";
    let trends = page.script(trends, vec![]).await;
    let alarms: Vec<&serde_json::Value> = trends
        .as_array()
        .unwrap()
        .iter()
        .filter(|one| one[0] == "bad")
        .collect();
    assert_eq!(alarms.len(), 1, "{trends}");
    assert!(
        alarms[0][1].as_str().unwrap().contains("cylinder 2"),
        "{trends}"
    );
    page.assert_no_trouble().await;
}

each_engine!(the_load_of_gas_and_mass_is_on_the_film);
async fn the_load_of_gas_and_mass_is_on_the_film(rig: &mut Rig) {
    let page = open(rig, &first_hour()).await;
    go_to(&page, "film").await;
    assert!(
        page.text_of("film-load")
            .await
            .starts_with("As you typed it")
    );
    page.pick("film-load-from-worked").await;
    let lacks = page.text_of("film-load-lacks").await;
    assert!(
        lacks.contains("bore") && lacks.contains("compression ratio"),
        "{lacks}"
    );
    go_to(&page, "system").await;
    for (field, text) in [
        ("bore", "4"),
        ("rod-length", "5.7"),
        ("up-and-down", "700"),
        ("going-round", "450"),
        ("compression-ratio", "9"),
    ] {
        page.paste(field, text).await;
    }
    write(&page, "oil-system-save", 1).await;
    go_to(&page, "film").await;
    page.pick("film-load-from-worked").await;
    page.wait_for_test("film-chart").await;
    let load = page.text_of("film-load").await;
    assert!(
        load.contains("By gas and mass") && load.contains("14° after the top"),
        "{load}"
    );
    let film = page.text_of("film-chart").await;
    assert!(film.contains("if the greatest load stood still"), "{film}");
    page.assert_no_trouble().await;
}

each_engine!(a_plug_that_is_still_out_forbids_to_fire);
async fn a_plug_that_is_still_out_forbids_to_fire(rig: &mut Rig) {
    let page = open(rig, &first_hour()).await;
    go_to(&page, "before").await;
    // Nothing counted: a tick like the others.
    let tick = page.wait_for_test("before-plugs").await;
    assert_eq!(tick.tag_name().await.unwrap(), "input");
    go_to(&page, "plugs").await;
    write(&page, "gallery-front-out-more", 1).await;
    write(&page, "gallery-front-out-more", 1).await;
    write(&page, "gallery-front-back-more", 1).await;
    let state = page.text_of("plugs-state").await;
    assert!(
        state.contains("1 of front ends") && state.contains("must not be fired"),
        "{state}"
    );
    go_to(&page, "before").await;
    let stop = page.wait_for_test("before-plugs").await;
    assert_eq!(
        stop.attr("data-done").await.unwrap().as_deref(),
        Some("false")
    );
    go_to(&page, "plugs").await;
    write(&page, "gallery-front-back-more", 1).await;
    page.wait_for_text("As many are back as came out").await;
    // The plan has a check of its own for it.
    write(&page, "plugs-to-book", 1).await;
    let stop = page.wait_for_test("before-plugs").await;
    assert_eq!(
        stop.attr("data-done").await.unwrap().as_deref(),
        Some("true")
    );
    page.assert_no_trouble().await;
}

each_engine!(oil_used_and_what_leaks_are_worked_out_from_the_log);
async fn oil_used_and_what_leaks_are_worked_out_from_the_log(rig: &mut Rig) {
    let page = open(rig, &first_hour()).await;
    go_to(&page, "after").await;
    for (what, amount, meter) in [
        ("filled", "4.5 L", "12000"),
        ("added", "0.5 L", "12500"),
        ("added", "0.3 L", "13500"),
        ("added", "0.5 L", "14500"),
    ] {
        page.bring_into_view(&format!("oil-doing-{what}")).await;
        page.pick(&format!("oil-doing-{what}")).await;
        page.paste("oil-amount", amount).await;
        page.paste("oil-meter", meter).await;
        write(&page, "oil-note-save", 1).await;
    }
    let used = page.text_of("oil-use").await;
    assert!(
        used.contains("for 1000 km") && used.contains("half as much again"),
        "{used}"
    );
    page.paste("leak-supply", "100").await;
    page.paste("leak-held", "92").await;
    page.paste("leak-orifice", "0.040").await;
    write(&page, "leak-save", 1).await;
    let leaks = page.text_of("leak-downs").await;
    assert!(
        leaks.contains("Cylinder 1: 8 %, as through a hole of"),
        "{leaks}"
    );
    page.wait_for_test("to-lash").await;
    page.assert_no_trouble().await;
}

each_engine!(every_screen_of_the_oil_is_for_everyone);
async fn every_screen_of_the_oil_is_for_everyone(rig: &mut Rig) {
    let page = open(rig, &first_hour()).await;
    for place in [
        "pressure", "system", "film", "oils", "gauge", "plugs", "prime", "before", "run", "after",
    ] {
        go_to(&page, place).await;
        super::seeing::assert_it_is_for_everyone(&page).await;
    }
    page.assert_no_trouble().await;
}
