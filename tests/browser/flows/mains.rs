//! From an engine's description to five verdicts, through a dead server, a
//! file and a wiped device.

use crate::builds::five_mains;
use crate::engine::Device;
use crate::measuring::With;
use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

/// Journal and bore of each main, front to rear, against 1 to 3 thou.
const MAINS: [(&str, &str); 5] = [
    ("2.4483", "2.4503"),
    ("2.4483", "2.4487"),
    ("2.4484", "2.4495"),
    ("2.4483", "2.4504"),
    ("2.4482", "2.4502"),
];
const VERDICTS: [&str; 5] = ["good", "bad", "close", "good", "good"];

async fn measure_the_engine(page: &Page, with: With) {
    page.describe_engine("orchard sprayer", "4", "5").await;
    assert_eq!(page.bearings().await, ["not-measured"; 5]);
    page.set_limits("1", "3 thou", "engine sheet, table 3")
        .await;
    page.turn_to("Mains").await;
    page.press_test("go-on").await;
    page.measure_all(&MAINS, with).await;
    page.put_keypad_away().await;
    page.turn_to("Mains").await;
}

async fn the_whole_way(rig: &mut Rig, with: With) {
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    measure_the_engine(&page, with).await;
    assert_eq!(page.bearings().await, VERDICTS);
    let tight = page.bearing_words(2).await;
    assert!(tight.contains("tight by 0.6"), "{tight}");

    // The server's process is gone: the same verdicts.
    rig.server.stop();
    page.reload().await;
    page.wait_until_it_stands().await;
    assert_eq!(page.bearings().await, VERDICTS);
    assert_eq!(page.bearing_words(2).await, tight);

    // Export, wipe, bring in: the same again.
    page.to_the_bench().await;
    let file = rig.export(&page).await;
    page.wipe().await;
    page.reload().await;
    page.wait_for_test("no-builds").await;
    page.bring_in(&rig.write("sprayer.json", &file)).await;
    page.close_the_file().await;
    page.open_the_build().await;
    assert_eq!(page.bearings().await, VERDICTS);
    assert_eq!(page.bearing_words(2).await, tight);
    page.to_the_bench().await;
    assert_eq!(rig.export(&page).await, file);
    page.assert_no_trouble().await;
}

each_engine!(five_mains_measured_on_a_phone_read_the_same_after_a_wipe_without_a_server);
async fn five_mains_measured_on_a_phone_read_the_same_after_a_wipe_without_a_server(rig: &mut Rig) {
    the_whole_way(rig, With::Keypad).await;
}

each_engine!(five_mains_measured_on_a_tablet_read_the_same_after_a_wipe_without_a_server);
async fn five_mains_measured_on_a_tablet_read_the_same_after_a_wipe_without_a_server(
    rig: &mut Rig,
) {
    rig.device = Device::TABLET;
    // The other way of typing, which the bench of a shop may have.
    the_whole_way(rig, With::Keyboard).await;
}

/// Taps a place of the open bearing.
pub async fn take_in_hand(page: &Page, place: &str) {
    page.put_keypad_away().await;
    page.bring_into_view(place).await;
    page.press_test(place).await;
}

/// Takes the last reading of a place back, as on paper: struck out.
pub async fn strike_at(page: &Page, place: &str) {
    take_in_hand(page, place).await;
    let before = page.acknowledged().await;
    page.bring_into_view("strike-reading").await;
    page.press_test("strike-reading").await;
    page.wait_until_acknowledged(before + 1).await;
}

each_engine!(the_last_reading_of_a_measure_and_of_all_says_what_comes_next);
async fn the_last_reading_of_a_measure_and_of_all_says_what_comes_next(rig: &mut Rig) {
    let (journal, bore) = (
        "place-main-journal-diameter-rear-across",
        "place-main-bearing-bore-rear-joint-right",
    );
    let page = rig.open().await;
    page.bring_in(&five_mains()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.open_bearing(5).await;
    for place in [journal, bore] {
        strike_at(&page, place).await;
    }
    take_in_hand(&page, journal).await;
    page.write_reading("2.4482", With::Keypad).await;
    let said = page.text_of("toast").await;
    assert!(
        said.contains("every main journal diameter is measured"),
        "{said}"
    );
    assert!(said.contains("Next: main bearing bore"), "{said}");
    // The next press takes it away: it has been seen.
    page.press_key("2").await;
    until("the words to go", async || {
        page.text_of("toast").await.is_empty().then_some(())
    })
    .await;
    page.press_key("take back").await;
    page.write_reading("2.4502", With::Keypad).await;
    let said = page.text_of("all-measured").await;
    assert!(said.contains("every place on main 5 is measured"), "{said}");
    assert!(!page.has_test("keypad").await);
    page.press_test("what-next").await;
    assert_eq!(page.bearings().await, VERDICTS);
    page.assert_no_trouble().await;
}
