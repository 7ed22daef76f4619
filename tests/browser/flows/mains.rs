//! From an engine's description to five verdicts, through a dead server, a
//! file and a wiped device.

use crate::engine::Device;
use crate::page::Page;
use crate::rig::Rig;

/// Journal and bore of each main, front to rear, against 1 to 3 thou.
const MAINS: [(&str, &str); 5] = [
    ("2.4483", "2.4503"),
    ("2.4483", "2.4487"),
    ("2.4484", "2.4495"),
    ("2.4483", "2.4504"),
    ("2.4482", "2.4502"),
];
const VERDICTS: [&str; 5] = ["good", "bad", "close", "good", "good"];

async fn measure_the_engine(page: &Page) {
    page.describe_engine("orchard sprayer", "4", "5").await;
    assert_eq!(page.bearings().await, ["not-measured"; 5]);
    page.set_limits("1", "3 thou", "engine sheet, table 3")
        .await;
    page.turn_to("Mains").await;
    page.press_test("go-on").await;
    page.measure_all(&MAINS).await;
    page.put_keypad_away().await;
    page.turn_to("Mains").await;
}

async fn the_whole_way(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    measure_the_engine(&page).await;
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
    the_whole_way(rig).await;
}

each_engine!(five_mains_measured_on_a_tablet_read_the_same_after_a_wipe_without_a_server);
async fn five_mains_measured_on_a_tablet_read_the_same_after_a_wipe_without_a_server(
    rig: &mut Rig,
) {
    rig.device = Device::TABLET;
    the_whole_way(rig).await;
}
