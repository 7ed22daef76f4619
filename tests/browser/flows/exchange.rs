//! A phone at the bench and a tablet at the engine stand both edit one build
//! apart, exchange the files that they export, and end equal.

use std::path::Path;

use crate::builds::{sprayer, two_devices, two_placings};
use crate::engine::Device;
use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

/// Brings a file into a build that is here, and goes to see what came in.
async fn bring_in_and_look(rig: &Rig, page: &Page, name: &str, file: &str) {
    page.to_the_bench().await;
    let said = page.bring_in(&rig.write(name, file)).await;
    assert!(said.contains("not here before"), "{said}");
    page.press_test("import-look").await;
    page.wait_for_test("came-in").await;
}

async fn export(rig: &Rig, page: &Page) -> String {
    page.to_the_bench().await;
    rig.export(page).await
}

/// Brings a file into a bench that is empty and opens its build.
async fn begin_with(page: &Page, file: &Path) {
    page.bring_in(file).await;
    page.close_the_file().await;
    page.open_the_build().await;
}

each_engine!(a_phone_and_a_tablet_exchange_files_and_end_equal);
async fn a_phone_and_a_tablet_exchange_files_and_end_equal(rig: &mut Rig) {
    // Both begin with the same copy, and then each goes its own way.
    let page = rig.open().await;
    begin_with(&page, &sprayer()).await;
    page.set_limits("1.0", "3.0", "the sheet as the phone has it")
        .await;
    page.turn_to("Book").await;
    page.write_note("from the phone").await;
    let of_phone = export(rig, &page).await;
    page.assert_no_trouble().await;

    let page = rig.take_up("tablet", Device::TABLET).await;
    begin_with(&page, &sprayer()).await;
    page.set_limits("1.5", "2.5", "the sheet as the tablet has it")
        .await;
    page.turn_to("Parts").await;
    let before = page.acknowledged().await;
    page.bring_into_view("want-pistons").await;
    page.press_test("want-pistons").await;
    page.wait_until_acknowledged(before + 1).await;
    let of_tablet = export(rig, &page).await;
    assert_ne!(of_phone, of_tablet);

    // The tablet gets the phone's file: told by device, and asked to settle.
    bring_in_and_look(rig, &page, "of-phone.json", &of_phone).await;
    let told = page.text_of("came-in").await;
    for words in [
        "2 lines came in",
        "From device",
        "1 set of limits, 1 note",
        "from the phone",
    ] {
        assert!(told.contains(words), "{words}: {told}");
    }
    page.wait_for_test("conflict-limits").await;
    page.turn_to("Book").await;
    page.wait_for_test("to-settle").await;
    let together = export(rig, &page).await;
    page.assert_no_trouble().await;

    // The phone gets the tablet's file of before: now both have the same.
    let page = rig.take_up("profile", Device::PHONE).await;
    bring_in_and_look(rig, &page, "of-tablet.json", &of_tablet).await;
    page.wait_for_test("conflict-limits").await;
    super::seeing::assert_it_is_for_everyone(&page).await;
    assert_eq!(export(rig, &page).await, together, "byte for byte");

    // One tap on the phone settles it, and the tablet learns of that.
    page.open_the_build().await;
    page.turn_to("Book").await;
    page.press_test("to-merge").await;
    page.wait_for_test("conflict-limits").await;
    page.bring_into_view("these-hold").await;
    page.press_test("these-hold").await;
    page.wait_for_test("nothing-to-settle").await;
    page.wait_until_all_is_kept().await;
    let settled = export(rig, &page).await;
    page.assert_no_trouble().await;

    let page = rig.take_up("tablet", Device::TABLET).await;
    page.wait_for_test("build").await;
    bring_in_and_look(rig, &page, "settled.json", &settled).await;
    page.wait_for_test("nothing-to-settle").await;
    assert_eq!(export(rig, &page).await, settled, "byte for byte");
    // However often, and in whatever order.
    for old in ["of-phone.json", "settled.json"] {
        page.to_the_bench().await;
        let file = if old == "settled.json" {
            &settled
        } else {
            &of_phone
        };
        let said = page.bring_in(&rig.write(old, file)).await;
        assert!(said.contains("nothing has changed"), "{said}");
        page.close_the_file().await;
    }
    assert_eq!(export(rig, &page).await, settled);
    page.assert_no_trouble().await;
}

impl Page {
    async fn wait_until_settled(&self, conflict: &str) {
        until(&format!("{conflict} to be settled"), async || {
            (!self.has_test(conflict).await).then_some(())
        })
        .await;
    }
}

each_engine!(a_step_done_on_one_device_and_not_needed_on_the_other_is_settled_by_one_tap);
async fn a_step_done_on_one_device_and_not_needed_on_the_other_is_settled_by_one_tap(
    rig: &mut Rig,
) {
    let page = rig.open().await;
    begin_with(&page, &sprayer()).await;
    page.plan_page("step/crank-in").await;
    page.press_and_keep("mark-done").await;
    page.wait_for_step_state("done").await;
    let of_phone = export(rig, &page).await;
    page.assert_no_trouble().await;

    let page = rig.take_up("tablet", Device::TABLET).await;
    begin_with(&page, &sprayer()).await;
    page.plan_page("step/crank-in").await;
    page.press_and_keep("mark-not-needed").await;
    bring_in_and_look(rig, &page, "of-phone.json", &of_phone).await;
    page.wait_for_test("conflict-marks").await;
    super::seeing::assert_it_is_for_everyone(&page).await;
    let told = page.text_of("conflict-marks").await;
    for words in ["Done: ", "Not needed: ", "this device", "On device"] {
        assert!(told.contains(words), "{words}: {told}");
    }
    // The phone was first: its word stands first.
    page.press_and_keep("this-holds").await;
    page.wait_for_test("nothing-to-settle").await;
    page.plan_page("step/crank-in").await;
    page.wait_for_step_state("done").await;
    page.turn_to("Book").await;
    page.wait_for_text("Settled: Done").await;
    // Who has seen it changes his mind, and nobody is asked.
    page.plan_page("step/crank-in").await;
    page.press_far("mark-apart").await;
    page.press_and_keep("ask-yes").await;
    page.plan_page("merge").await;
    page.wait_for_test("nothing-to-settle").await;
    page.assert_no_trouble().await;
}

each_engine!(readings_stand_side_by_side_and_checks_and_descriptions_are_settled);
async fn readings_stand_side_by_side_and_checks_and_descriptions_are_settled(rig: &mut Rig) {
    let page = rig.open().await;
    let file = std::fs::read_to_string(two_devices()).unwrap();
    // As it was before anybody said that the readings stand.
    let (before, _) = file.rsplit_once(",\n").unwrap();
    let (before, _) = before.rsplit_once(",\n").unwrap();
    let file = format!("{before}\n],\n\"set_aside\":[]}}\n");
    begin_with(&page, &rig.write("two.json", &file)).await;
    page.plan_page("merge").await;
    for conflict in ["conflict-engines", "conflict-checks", "conflict-readings"] {
        page.wait_for_test(conflict).await;
    }
    assert!(
        !page.has_test("conflict-marks").await,
        "that one is settled"
    );
    super::seeing::assert_it_is_for_everyone(&page).await;
    let told = page.text_of("conflict-engines").await;
    assert!(told.contains("Liners: wet top flange"), "{told}");
    page.press_and_keep("all-stand").await;
    page.wait_until_settled("conflict-readings").await;
    page.press_and_keep("this-holds").await;
    page.wait_until_settled("conflict-engines").await;
    page.press_and_keep("this-holds").await;
    page.wait_for_test("nothing-to-settle").await;
    page.turn_to("Book").await;
    page.wait_for_text("These readings all stand").await;
    page.assert_no_trouble().await;
}

each_engine!(parts_placed_in_two_ways_are_settled_by_one_tap);
async fn parts_placed_in_two_ways_are_settled_by_one_tap(rig: &mut Rig) {
    let page = rig.open().await;
    begin_with(&page, &two_placings()).await;
    // Whoever looks where the pistons go learns of it there.
    page.plan_page("measure/choose/pistons").await;
    page.wait_for_test("to-settle").await;
    super::seeing::assert_it_is_for_everyone(&page).await;
    page.press_far("to-merge").await;
    page.wait_for_test("conflict-placings").await;
    let told = page.text_of("conflict-placings").await;
    for words in [
        "which piston goes in which bore",
        "Cylinder 1: its piston stays; Cylinder 2: its piston stays",
        "Cylinder 1: the piston of cylinder 2; Cylinder 2: the piston of cylinder 1",
    ] {
        assert!(told.contains(words), "{words}: {told}");
    }
    super::seeing::assert_it_is_for_everyone(&page).await;
    // The first word holds, though the other came later.
    page.press_and_keep("this-holds").await;
    page.wait_for_test("nothing-to-settle").await;
    page.plan_page("measure/choose/pistons").await;
    page.wait_for_test("placed").await;
    assert!(!page.has_test("to-settle").await);
    let placed = page.text_of("placed").await;
    assert!(placed.contains("Cylinder 1: its piston stays"), "{placed}");
    page.assert_no_trouble().await;
}
