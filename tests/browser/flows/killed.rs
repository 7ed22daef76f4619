//! The browser is killed in the moment a fact was acknowledged.

use crate::builds::sprayer;
use crate::rig::Rig;

/// How often the browser is killed, and how many facts are written in between.
const KILLS: usize = 4;
const FACTS_EACH: usize = 6;

each_engine!(a_fact_that_was_acknowledged_is_there_after_a_kill);
async fn a_fact_that_was_acknowledged_is_there_after_a_kill(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&sprayer()).await;
    page.close_the_file().await;
    let mut expected = page.kept().await.vault.len();
    let mut texts: Vec<String> = Vec::new();
    for kill in 0..KILLS {
        let page = rig.open().await;
        page.to_the_bench().await;
        page.open_the_build().await;
        page.turn_to("Book").await;
        for fact in 0..FACTS_EACH {
            let text = format!("note {fact} before kill {kill}");
            page.write_note(&text).await;
            texts.push(text);
        }
        // The last one was acknowledged a moment ago.
        rig.kill_browser();
        expected += FACTS_EACH;
        let page = rig.open().await;
        page.to_the_bench().await;
        page.wait_for_test("build").await;
        let kept = page.kept().await;
        assert_eq!(kept.vault.len(), expected, "after kill {kill}");
        assert_eq!(kept.shelf, kept.vault, "healed after kill {kill}");
        for text in &texts {
            let typed = format!("\"text\":\"{text}\"");
            let found = kept.vault.iter().filter(|(_, fact)| fact.contains(&typed));
            assert_eq!(
                found.count(),
                1,
                "{text} after kill {kill}: {:#?}",
                kept.vault
            );
        }
    }
    rig.page().assert_no_trouble().await;
}

each_engine!(what_was_being_typed_is_there_after_a_reload);
async fn what_was_being_typed_is_there_after_a_reload(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&sprayer()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.open_bearing(4).await;
    page.press_test("place-main-journal-diameter-front-across")
        .await;
    page.enter("reading", "2.448").await;
    page.reload().await;
    page.wait_until_it_stands().await;
    page.press_test("place-main-journal-diameter-front-across")
        .await;
    assert_eq!(page.value_of("reading").await, "2.448");
    page.assert_no_trouble().await;
}
