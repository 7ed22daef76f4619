//! Parts that change places by a choice: pistons, rods and shims are chosen from
//! what was measured, accepted, found again in the record and at their parts, and
//! measured anew where they came to.

use serde_json::json;

use super::seeing::assert_it_is_for_everyone;
use crate::engine::Device;
use crate::measuring::With;
use crate::page::Page;
use crate::prepared::{Prepared, Tool};
use crate::rig::Rig;
use crate::wait::until;

/// A choice of which the first two places swap their parts.
struct Swap {
    /// The choice and the measure it is about.
    choice: &'static str,
    about: &'static str,
    /// What the parts themselves are measured by, and what that is called.
    measure: (&'static str, &'static str),
    /// The first two places, as they are named and as the map names them.
    places: [(&'static str, &'static str); 2],
    /// What goes to them.
    goes: [&'static str; 2],
    /// What the book says of it.
    decided: &'static str,
    /// What the parts measure at their new places, all that are asked for.
    anew: [&'static str; 2],
    /// What goes there once they are measured there.
    stays: &'static str,
}

impl Page {
    /// Goes to a choice from the measure that it is about.
    async fn to_the_choice(&self, swap: &Swap) {
        self.plan_page(&format!("measure/{}/1", swap.about)).await;
        self.wait_for_test("standing").await;
        let link = format!("choice-{}", swap.choice);
        self.put_keypad_away().await;
        self.press_far(&link).await;
        self.wait_for_test("choose").await;
    }

    /// Measures one place of a round as often as it wants to be.
    async fn measure_anew(&self, measure: &str, part: usize, reading: &str) {
        self.plan_page(&format!("measure/{measure}/{part}")).await;
        self.wait_for_test("standing").await;
        until("the field of the reading", async || {
            if !self.has_test("field-reading").await && self.has_test("zeroed").await {
                // A telescope is read on the micrometer that is offered.
                self.press_far("zeroed").await;
            }
            self.by_test("field-reading").await.map(|_| ())
        })
        .await;
        self.write_reading(reading, With::Keyboard).await;
    }

    /// What is struck through on this screen as no longer counting.
    async fn struck_through(&self) -> String {
        self.open_all_folds().await;
        let script = "return [...document.querySelectorAll('[data-test=undone] > del')]
            .map((thing) => thing.textContent).join('; ')";
        self.script(script, vec![])
            .await
            .as_str()
            .unwrap()
            .to_owned()
    }
}

/// The way of a swap from the readings to the readings of the swapped parts.
async fn swap_and_measure_anew(rig: &mut Rig, swap: &Swap, file: &str) {
    let page = rig.open().await;
    page.bring_in(&rig.write("twin.json", file)).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.to_the_choice(swap).await;
    page.press_far("choose").await;
    let chosen = page.chosen().await;
    for (at, (place, _)) in swap.places.iter().enumerate() {
        assert_eq!(chosen[at], json!([place, swap.goes[at], "good"]));
    }
    // What it undoes is told before: the parts that move, and nothing that stays.
    let (measure, label) = swap.measure;
    let undoes = page.text_of("placing-undoes").await;
    assert!(undoes.contains(label), "{undoes}");
    assert_it_is_for_everyone(&page).await;
    page.press_and_keep("accept").await;
    let placed = page.text_of("placed").await;
    for (place, goes) in swap.places.iter().zip(swap.goes) {
        assert!(placed.contains(&format!("{}: {goes}", place.0)), "{placed}");
    }
    assert_it_is_for_everyone(&page).await;

    // In the record, at the part and on the map of it, also after a reload.
    page.reload().await;
    page.plan_page("book").await;
    page.wait_for_text(swap.decided).await;
    for (at, (_, part)) in swap.places.iter().enumerate() {
        let here = format!("Goes here: {}", swap.goes[at]);
        page.plan_page(&format!("map/part/{part}")).await;
        page.wait_for_text(&here).await;
        page.plan_page(&format!("measure/{measure}/{}", at + 1))
            .await;
        page.wait_for_text(&here).await;
    }

    // What was measured of them where they were no longer counts.
    page.plan_page("tonight").await;
    page.wait_for_test("undone").await;
    let stale = page.struck_through().await;
    assert!(stale.contains(label), "{stale}");
    page.to_the_choice(swap).await;
    page.press_far("choose").await;
    page.wait_for_test("choice-missing").await;
    let missing = page.text_of("choice-missing").await;
    assert!(
        missing.contains("not measured, or no longer counts"),
        "{missing}"
    );

    // Measured where they are now, they stay, and accepting that undoes nothing.
    for (at, reading) in swap.anew.iter().enumerate() {
        page.measure_anew(measure, at + 1, reading).await;
    }
    page.to_the_choice(swap).await;
    page.press_far("choose").await;
    let chosen = page.chosen().await;
    for (at, (place, _)) in swap.places.iter().enumerate() {
        assert_eq!(chosen[at], json!([place, swap.stays, "good"]));
    }
    assert!(!page.has_test("placing-undoes").await);
    page.press_and_keep("accept").await;
    page.plan_page("tonight").await;
    page.wait_for_test("next-step").await;
    let stale = page.struck_through().await;
    assert!(!stale.contains(label), "{stale}");

    // Struck out, the swap before it stands again.
    page.to_the_choice(swap).await;
    page.press_and_keep("strike-placed").await;
    let first = format!("{}: {}", swap.places[0].0, swap.goes[0]);
    until("the first placing to stand again", async || {
        page.by_test("placed")
            .await?
            .text()
            .await
            .ok()?
            .contains(&first)
            .then_some(())
    })
    .await;
    page.assert_no_trouble().await;
}

each_engine!(pistons_change_bores_and_are_measured_where_they_came_to);
async fn pistons_change_bores_and_are_measured_where_they_came_to(rig: &mut Rig) {
    let mut twin = Prepared::engine(2, &[]);
    twin.limits("piston-to-wall", "0.03", "0.07");
    for (cylinder, bore, piston) in [(1, "92.020", "91.950"), (2, "92.000", "91.970")] {
        let at = json!({ "cylinder": cylinder, "station": "middle", "direction": "thrust" });
        twin.read("bore", at, bore, Tool::Micrometer);
        let at = json!({ "cylinder": cylinder });
        twin.read("piston-diameter", at, piston, Tool::Micrometer);
    }
    let swap = Swap {
        choice: "pistons",
        about: "piston-to-wall",
        measure: ("piston-diameter", "piston diameter"),
        places: [("Cylinder 1", "cylinder-1"), ("Cylinder 2", "cylinder-2")],
        goes: ["the piston of cylinder 2", "the piston of cylinder 1"],
        decided: "Decided which piston goes in which bore: cylinder 1: the piston of cylinder 2",
        anew: ["91.970 mm", "91.950 mm"],
        stays: "its piston stays",
    };
    swap_and_measure_anew(rig, &swap, &twin.file()).await;
}

each_engine!(rods_change_pins_and_are_measured_where_they_came_to);
async fn rods_change_pins_and_are_measured_where_they_came_to(rig: &mut Rig) {
    rig.device = Device::TABLET;
    let mut twin = Prepared::engine(2, &[]);
    // A telescope is not so sure: its limits are wider.
    twin.limits("rod-oil-clearance", "0.005", "0.075");
    for (rod, bore, pin) in [(1, "48.030", "47.980"), (2, "48.020", "47.990")] {
        let at = json!({ "rod": rod, "station": "front", "direction": "up-and-down" });
        twin.read("rod-bearing-bore", at, bore, Tool::Telescope);
        let at = json!({ "crankpin": rod, "station": "front", "direction": "across" });
        twin.read("rod-journal-diameter", at, pin, Tool::Micrometer);
    }
    let swap = Swap {
        choice: "rods",
        about: "rod-oil-clearance",
        measure: ("rod-bearing-bore", "rod bearing bore"),
        places: [("Rod 1", "rod-1"), ("Rod 2", "rod-2")],
        goes: ["the rod of cylinder 2", "the rod of cylinder 1"],
        decided: "Decided which rod goes on which pin: rod 1: the rod of cylinder 2",
        anew: ["48.020 mm", "48.030 mm"],
        stays: "its rod stays",
    };
    swap_and_measure_anew(rig, &swap, &twin.file()).await;
}

each_engine!(lash_shims_change_valves_and_the_lash_is_measured_again);
async fn lash_shims_change_valves_and_the_lash_is_measured_again(rig: &mut Rig) {
    let mut single = Prepared::engine(1, &[("valve_gear", "twin-overhead-bucket")]);
    single.limits("valve-lash", "0.15", "0.25");
    let valves = [
        ("intake", "shim 1", "2.50", "0.30"),
        ("exhaust", "shim 2", "2.60", "0.10"),
    ];
    for (number, (valve, name, size, lash)) in (1..).zip(valves) {
        let at = json!({ "cylinder": 1, "valve": valve, "number": 1 });
        single.read("valve-lash", at.clone(), lash, Tool::Blades);
        single.on_bench("lash-shims", (number, name), size, at);
    }
    let swap = Swap {
        choice: "lash-shims",
        about: "valve-lash",
        measure: ("valve-lash", "valve lash"),
        places: [
            ("Cylinder 1, intake valve 1", "valve-1-intake-1"),
            ("Cylinder 1, exhaust valve 1", "valve-1-exhaust-1"),
        ],
        goes: [
            "the shim of cylinder 1, exhaust valve 1",
            "the shim of cylinder 1, intake valve 1",
        ],
        decided: "Decided which lash shim goes to which valve: cylinder 1, intake valve 1: the shim of cylinder 1, exhaust valve 1",
        anew: ["0.20 mm", "0.20 mm"],
        stays: "its shim stays",
    };
    swap_and_measure_anew(rig, &swap, &single.file()).await;
}
