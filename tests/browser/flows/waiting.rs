//! What a person has not opened yet is there without a signal all the same.

use crate::rig::Rig;

each_engine!(a_part_that_was_never_opened_is_there_without_a_signal);
async fn a_part_that_was_never_opened_is_there_without_a_signal(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    rig.server.stop();
    page.press_test("new-build").await;
    page.wait_for_test("field-name").await;
    page.go_to("#/quick/oil-pressure").await;
    page.wait_for_text("Oil pressure from clearances").await;
    page.assert_no_trouble().await;
}
