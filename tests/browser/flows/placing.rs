//! Which part goes where: chosen from what was measured, accepted, and found
//! again at the part.

use serde_json::{Value, json};

use super::seeing::assert_it_is_for_everyone;
use crate::builds::what_goes_where;
use crate::engine::Device;
use crate::page::Page;
use crate::rig::Rig;

/// The single of the fixture before anything was on the bench.
fn before_the_bench() -> String {
    let file = std::fs::read_to_string(what_goes_where()).unwrap();
    let (head, rest) = file.split_once("\"facts\":[\n").unwrap();
    let (facts, tail) = rest.split_once("\n],").unwrap();
    let kept: Vec<&str> = facts
        .lines()
        .filter(|line| !line.contains("part-on-bench") && !line.contains("parts-placed"))
        .map(|line| line.trim_end_matches(','))
        .collect();
    format!("{head}\"facts\":[\n{}\n],{tail}", kept.join(",\n"))
}

impl Page {
    /// The address of the open build, from the `#` on.
    async fn address_of_the_build(&self) -> String {
        let address = self.client.current_url().await.unwrap();
        let parts: Vec<&str> = address.fragment().unwrap().split('/').collect();
        format!("#/{}/{}", parts[1], parts[2])
    }

    /// Presses what may lie behind the keypad or below the screen.
    async fn reach_and_press(&self, name: &str) {
        self.put_keypad_away().await;
        self.bring_into_view(name).await;
        self.press_test(name).await;
    }

    /// Puts one half-shell on the bench.
    async fn put_half_on_the_bench(&self, name: &str, wall: &str, side: &str) {
        let field = self.wait_for_test("field-bench-name").await;
        field.send_keys(name).await.unwrap();
        self.enter("bench-size", wall).await;
        self.put_keypad_away().await;
        self.pick(&format!("bench-side-{side}")).await;
        let before = self.acknowledged().await;
        self.reach_and_press("bench-write").await;
        self.wait_until_acknowledged(before + 1).await;
        assert_eq!(self.value_of("bench-name").await, "");
    }

    /// What was chosen, place by place.
    pub async fn chosen(&self) -> Value {
        self.wait_for_test("chosen").await;
        self.script(
            "return [...document.querySelectorAll('[data-test=chosen-place]')]
                .map((row) => [row.querySelector('.strip-words').children[0].textContent,
                    row.querySelector('.strip-words').children[1].textContent,
                    row.dataset.verdict])",
            vec![],
        )
        .await
    }
}

each_engine!(half_shells_are_chosen_accepted_and_found_again_at_their_mains);
async fn half_shells_are_chosen_accepted_and_found_again_at_their_mains(rig: &mut Rig) {
    let page = rig.open().await;
    let file = rig.write("single.json", before_the_bench());
    page.bring_in(&file).await;
    page.close_the_file().await;
    page.open_the_build().await;
    let build = page.address_of_the_build().await;
    page.go_to(&format!("{build}/mains/1")).await;
    page.wait_for_test("standing").await;
    assert!(!page.has_test("put-here").await);
    page.reach_and_press("choice-main-shells").await;
    page.wait_for_test("bench-empty").await;

    // Numbers are missing: it says which.
    page.reach_and_press("choose").await;
    page.wait_for_test("choice-missing").await;
    let missing = page.text_of("choice-missing").await;
    assert!(
        missing.contains("4 half-shells are needed, and none is written down below."),
        "{missing}"
    );
    page.reach_and_press("bench-write").await;
    let said = page.says("bench-name").await;
    assert!(said.contains("marked on it"), "{said}");
    assert_it_is_for_everyone(&page).await;

    for (name, wall, side) in [
        ("A", "1.990 mm", "lower"),
        ("B", "1.980 mm", "lower"),
        ("C", "1.980 mm", "upper"),
        ("D", "1.980 mm", "upper"),
    ] {
        page.put_half_on_the_bench(name, wall, side).await;
    }
    page.reach_and_press("choose").await;
    let wanted = json!([
        ["Main 1", "upper “C”, lower “B”", "good"],
        ["Main 2", "upper “D”, lower “A”", "good"],
    ]);
    assert_eq!(page.chosen().await, wanted);
    assert_it_is_for_everyone(&page).await;
    let before = page.acknowledged().await;
    page.reach_and_press("accept").await;
    page.wait_until_acknowledged(before + 1).await;
    page.reload().await;
    page.wait_for_test("placed").await;
    let placed = page.text_of("placed").await;
    assert!(placed.contains("Main 2: upper “D”, lower “A”"), "{placed}");
    assert!(placed.contains("worked out to give"), "{placed}");

    // It stands at the part, in the map of it, and in the book.
    page.go_to(&format!("{build}/mains/2")).await;
    page.wait_for_test("put-here").await;
    let here = page.text_of("put-here").await;
    assert!(here.contains("Goes here: upper “D”, lower “A”"), "{here}");
    page.go_to(&format!("{build}/map/part/main-2")).await;
    page.wait_for_text("Goes here: upper “D”, lower “A”").await;
    page.go_to(&format!("{build}/book")).await;
    page.wait_for_text("Decided which half-shell goes in which main: main 1: upper “C”, lower “B”")
        .await;
    page.assert_no_trouble().await;
}

each_engine!(pistons_that_change_places_are_measured_again);
async fn pistons_that_change_places_are_measured_again(rig: &mut Rig) {
    rig.device = Device::TABLET;
    let page = rig.open().await;
    page.wait_for_test("no-builds").await;
    page.bring_in_the_sample().await;
    let build = page.address_of_the_build().await;
    page.go_to(&format!("{build}/measure/piston-to-wall/1"))
        .await;
    page.wait_for_test("standing").await;
    page.reach_and_press("choice-pistons").await;
    page.wait_for_test("choose").await;
    page.reach_and_press("choose").await;
    // The third bore of the sample was honed since it was measured.
    page.wait_for_test("choice-missing").await;
    let missing = page.text_of("choice-missing").await;
    assert!(missing.contains("The cylinder bore"), "{missing}");
    assert!(missing.contains("cylinder 3"), "{missing}");
    assert!(!missing.contains("cylinder 1"), "{missing}");
    assert_it_is_for_everyone(&page).await;
    page.assert_no_trouble().await;
}

each_engine!(a_shape_is_drawn_exaggerated_with_its_numbers_beside_it);
async fn a_shape_is_drawn_exaggerated_with_its_numbers_beside_it(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_for_test("no-builds").await;
    page.bring_in_the_sample().await;
    let build = page.address_of_the_build().await;
    for (place, rows) in [
        ("measure/bore/1", 6),
        ("mains/4", 4),
        ("measure/bore-taper/2", 6),
    ] {
        page.go_to(&format!("{build}/{place}")).await;
        page.wait_for_test("shape").await;
        let said = page.text_of("shape-times").await;
        assert!(
            said.contains("Drawn ") && said.contains(" times"),
            "{place}: {said}"
        );
        page.open_all_folds().await;
        let found = page
            .script(
                "const shape = document.querySelector('[data-test=shape]');
                return [shape.querySelectorAll('polygon').length,
                    shape.querySelectorAll('tbody tr').length]",
                vec![],
            )
            .await;
        let (drawn, found) = (found[0].as_u64().unwrap(), found[1].as_u64().unwrap());
        assert!(drawn >= 3, "{place}: {drawn} drawings");
        assert_eq!(found, rows, "{place}");
        assert_it_is_for_everyone(&page).await;
    }
    // How it was worked out, with the numbers.
    page.go_to(&format!("{build}/measure/piston-to-wall/1"))
        .await;
    page.wait_for_test("workings").await;
    page.open_all_folds().await;
    page.wait_for_text("least = smallest cylinder bore − largest piston diameter")
        .await;
    page.assert_no_trouble().await;
}
