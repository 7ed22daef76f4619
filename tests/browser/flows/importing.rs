//! Files: one's own, and everything that is not.

use serde_json::json;

use super::seeing::sticking_out;
use crate::builds::{oddities, sprayer};
use crate::page::Page;
use crate::rig::Rig;

each_engine!(a_build_goes_out_and_comes_in_unchanged);
async fn a_build_goes_out_and_comes_in_unchanged(rig: &mut Rig) {
    let page = rig.open().await;
    let said = page.bring_in(&sprayer()).await;
    assert!(said.contains("on this device now"), "{said}");
    page.close_the_file().await;
    page.open_the_build().await;
    let verdicts = page.bearings().await;
    assert_eq!(verdicts.len(), 5);
    page.to_the_bench().await;
    let file = rig.export(&page).await;
    assert_eq!(file, std::fs::read_to_string(sprayer()).unwrap());

    page.wipe().await;
    page.reload().await;
    page.wait_for_test("no-builds").await;
    assert_eq!(page.kept().await.shelf, vec![]);
    assert_eq!(page.kept().await.vault, vec![]);

    page.bring_in(&rig.write("again.json", &file)).await;
    page.close_the_file().await;
    page.open_the_build().await;
    assert_eq!(page.bearings().await, verdicts);
    page.to_the_bench().await;
    let said = page.bring_in(&rig.file("again.json")).await;
    assert!(said.contains("nothing has changed"), "{said}");
    page.close_the_file().await;
    assert_eq!(page.number_of_builds().await, 1);
    assert_eq!(rig.export(&page).await, file);
    page.assert_no_trouble().await;
}

each_engine!(a_file_that_is_picked_while_the_book_opens_waits_for_it);
async fn a_file_that_is_picked_while_the_book_opens_waits_for_it(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&sprayer()).await;
    page.close_the_file().await;
    for _ in 0..5 {
        page.reload().await;
        let said = page.bring_in(&sprayer()).await;
        assert!(said.contains("nothing has changed"), "{said}");
    }
    page.assert_no_trouble().await;
}

each_engine!(a_file_that_is_no_build_is_refused_with_a_sentence);
async fn a_file_that_is_no_build_is_refused_with_a_sentence(rig: &mut Rig) {
    let good = std::fs::read_to_string(sprayer()).unwrap();
    let newer = good.replacen("\"version\":1", "\"version\":2", 1);
    let page = rig.open().await;
    page.wait_for_test("no-builds").await;
    for (name, bytes, words) in [
        ("empty.json", Vec::new(), "is empty"),
        (
            "words.json",
            b"Dear sir, the crank is done.".to_vec(),
            "no exported build",
        ),
        ("list.json", b"[1, 2, 3]".to_vec(), "no exported build"),
        (
            "other.json",
            br#"{"app":"another","parts":[{"x":1}]}"#.to_vec(),
            "JSON, but no exported build",
        ),
        (
            "picture.json",
            b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\xff\xfe".to_vec(),
            "not text",
        ),
        (
            "deep.json",
            "[".repeat(100_000).into_bytes(),
            "no exported build",
        ),
        ("newer.json", newer.into_bytes(), "newer version"),
    ] {
        let said = page.bring_in(&rig.write(name, bytes)).await;
        assert!(said.contains(words), "{name}: {said}");
        page.close_the_file().await;
        assert_eq!(page.number_of_builds().await, 0, "{name}");
    }
    page.assert_no_trouble().await;
}

each_engine!(fifty_megabytes_of_noise_are_refused_with_a_sentence);
async fn fifty_megabytes_of_noise_are_refused_with_a_sentence(rig: &mut Rig) {
    let page = rig.open().await;
    // A small generator of Marsaglia's, so that nothing can pack it.
    let mut state = 2_463_534_242_u32;
    let mut noise = Vec::with_capacity(50_000_000);
    while noise.len() < 50_000_000 {
        state ^= state << 13;
        state ^= state >> 17;
        state ^= state << 5;
        noise.extend_from_slice(&state.to_le_bytes());
    }
    let said = page.bring_in(&rig.write("noise.json", noise)).await;
    assert!(said.contains("50 MB"), "{said}");
    page.close_the_file().await;
    assert_eq!(page.number_of_builds().await, 0);
    page.assert_no_trouble().await;
}

each_engine!(what_is_whole_of_a_truncated_file_can_be_taken_in);
async fn what_is_whole_of_a_truncated_file_can_be_taken_in(rig: &mut Rig) {
    let page = rig.open().await;
    let good = std::fs::read_to_string(sprayer()).unwrap();
    let half = good.split_at(good.len() / 2).0;
    let said = page.bring_in(&rig.write("half.json", half)).await;
    assert!(said.contains("stops in the middle"), "{said}");
    assert_eq!(page.number_of_builds().await, 0, "nothing without a yes");
    page.press_test("import-rescue").await;
    page.wait_for_text("from the file are in the book now")
        .await;
    page.close_the_file().await;
    // Every whole line of the half, and nothing else.
    let out = rig.export(&page).await;
    let lines = |text: &str| -> Vec<String> {
        let lines = text.lines().filter(|line| line.starts_with("{\"id\""));
        lines
            .map(|line| line.trim_end_matches(',').to_owned())
            .collect()
    };
    let mut whole = lines(half);
    if !half.ends_with('\n') {
        whole.pop();
    }
    assert_eq!(lines(&out), whole);
    page.assert_no_trouble().await;
}

each_engine!(facts_of_unknown_kinds_are_kept_and_exported_unchanged);
async fn facts_of_unknown_kinds_are_kept_and_exported_unchanged(rig: &mut Rig) {
    let page = rig.open().await;
    let unknown = r#"{"id":"019ced7f-0000-7000-8d5c-06e32f50d754","device":"9e074f11-2ab3-41c8-a5d2-60b733f418c9","clock":1773510900000,"kind":"compass-course","to":{"north":1.50e+1,"a":[null,"µ"]}}"#;
    let good = std::fs::read_to_string(sprayer()).unwrap();
    let with = good.replacen("\"facts\":[\n", &format!("\"facts\":[\n{unknown},\n"), 1);
    assert_ne!(good, with);
    page.bring_in(&rig.write("unknown.json", with)).await;
    page.close_the_file().await;
    page.reload().await;
    page.wait_for_test("build").await;
    let out = rig.export(&page).await;
    assert!(out.contains(unknown), "{out}");
    page.press_test("build-link").await;
    page.turn_to("Book").await;
    page.wait_for_text("compass-course").await;
    page.assert_no_trouble().await;
}

/// Visits every page of the open build.
async fn look_everywhere(page: &Page) -> String {
    let mut all = String::new();
    for name in ["Tonight", "Mains", "Limits", "Tools", "Parts", "Book"] {
        page.turn_to(name).await;
        page.open_all_folds().await;
        all.push_str(&page.text().await);
        let out = sticking_out(page).await;
        assert_eq!(out, json!([]), "{name} is wider than the screen");
    }
    all
}

each_engine!(an_odd_file_opens_and_nothing_in_it_is_lost);
async fn an_odd_file_opens_and_nothing_in_it_is_lost(rig: &mut Rig) {
    let page = rig.open().await;
    let said = page.bring_in(&oddities()).await;
    assert!(said.contains("twice"), "{said}");
    assert!(said.contains("set aside"), "{said}");
    page.close_the_file().await;
    page.open_the_build().await;
    look_everywhere(&page).await;
    page.to_the_bench().await;
    let out = rig.export(&page).await;
    for whole in [
        "\"tomorrow\"",
        "1.50e+3",
        "one text for this id",
        "another text for this id",
    ] {
        assert!(out.contains(whole), "{whole}: {out}");
    }
    page.assert_no_trouble().await;
}

each_engine!(markup_in_every_string_is_shown_as_text);
async fn markup_in_every_string_is_shown_as_text(rig: &mut Rig) {
    let page = rig.open().await;
    let evil = r#"<img src=x onerror=window.ran=1><script>window.ran=2</script><b class=bold>"#;
    let note = format!(
        r#"{{"id":"019ced7f-0001-7000-8d5c-06e32f50d754","device":"9e074f11-2ab3-41c8-a5d2-60b733f418c9","clock":1773510900001,"kind":"note","text":"{evil}note"}}"#
    );
    let other = format!(
        r#"{{"id":"019ced7f-0002-7000-8d5c-06e32f50d754","device":"9e074f11-2ab3-41c8-a5d2-60b733f418c9","clock":1773510900002,"kind":"{evil}kind","{evil}":"{evil}"}}"#
    );
    let file = std::fs::read_to_string(sprayer())
        .unwrap()
        .replace("\"orchard sprayer\"", &format!("\"{evil}engine\""))
        .replace("\"2 to 3 inch micrometer\"", &format!("\"{evil}tool\""))
        .replace("\"engine sheet, table 3\"", &format!("\"{evil}sheet\""))
        .replacen(
            "\"facts\":[\n",
            &format!("\"facts\":[\n{note},\n{other},\n"),
            1,
        );
    let said = page.bring_in(&rig.write("evil.json", file)).await;
    assert!(said.contains("on this device now"), "{said}");
    page.close_the_file().await;
    assert!(page.text().await.contains(&format!("{evil}engine")));
    page.press_test("wipe").await;
    page.press_test("wipe-keep").await;
    page.open_the_build().await;
    let all = look_everywhere(&page).await;
    for end in ["engine", "tool", "sheet", "note", "kind"] {
        assert!(all.contains(&format!("{evil}{end}")), "{end}: {all}");
    }
    let made = page
        .script(
            "return [window.ran ?? null, document.querySelectorAll('img, b.bold, body script:not([src])').length]",
            vec![],
        )
        .await;
    assert_eq!(made, json!([null, 0]));
    page.assert_no_trouble().await;
}
