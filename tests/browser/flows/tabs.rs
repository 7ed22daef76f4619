//! The same build open twice on one device.

use crate::builds::sprayer;
use crate::rig::Rig;
use crate::wait::until;

each_engine!(two_tabs_on_one_build_lose_nothing_of_each_other);
async fn two_tabs_on_one_build_lose_nothing_of_each_other(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&sprayer()).await;
    page.close_the_file().await;
    let before = page.kept().await.vault.len();
    page.open_the_build().await;
    page.turn_to("Book").await;
    let address = page.client.current_url().await.unwrap();
    let first = page.client.window().await.unwrap();
    let second = rig.browser().new_tab().await.unwrap();
    page.go(address.as_str()).await;
    page.wait_for_test("field-note").await;

    // By turns, neither loading anew.
    let mut texts = Vec::new();
    for turn in 0..3 {
        for (tab, window) in [(1, &first), (2, &second)] {
            page.client.switch_to_window(window.clone()).await.unwrap();
            let text = format!("turn {turn} of tab {tab}");
            page.write_note(&text).await;
            texts.push(text);
        }
    }
    // Each shows what the other wrote, and after loading anew still does.
    for window in [&first, &second] {
        page.client.switch_to_window(window.clone()).await.unwrap();
        for _ in 0..2 {
            for text in &texts {
                page.wait_for_text(text).await;
            }
            page.reload().await;
            page.wait_until_it_stands().await;
        }
        page.assert_no_trouble().await;
    }
    let kept = page.kept().await;
    assert_eq!(kept.vault.len(), before + texts.len());
    until("both copies to have them all", async || {
        let kept = page.kept().await;
        (kept.shelf == kept.vault).then_some(())
    })
    .await;
}
