//! Two copies on one device: each heals the other, and what is broken stops
//! nothing.

use serde_json::json;

use crate::builds::{Kept, sprayer};
use crate::engine::{Device, Engine};
use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

async fn with_the_sprayer(rig: &mut Rig) -> Page {
    let page = rig.open().await;
    page.bring_in(&sprayer()).await;
    page.close_the_file().await;
    page
}

each_engine!(a_copy_that_was_emptied_is_healed_from_the_other);
async fn a_copy_that_was_emptied_is_healed_from_the_other(rig: &mut Rig) {
    let page = with_the_sprayer(rig).await;
    let whole = page.kept().await;
    assert_eq!(whole.shelf, whole.vault);
    assert!(whole.vault.len() > 10, "{whole:?}");
    for copy in ["shelf", "vault"] {
        page.empty(copy).await;
        page.reload().await;
        page.wait_for_test("build").await;
        until(&format!("the {copy} to be healed"), async || {
            (page.kept().await == whole).then_some(())
        })
        .await;
        assert_eq!(
            rig.export(&page).await,
            std::fs::read_to_string(sprayer()).unwrap()
        );
    }
    page.assert_no_trouble().await;
}

each_engine!(a_broken_value_under_one_key_stops_nothing_and_is_exported);
async fn a_broken_value_under_one_key_stops_nothing_and_is_exported(rig: &mut Rig) {
    let page = with_the_sprayer(rig).await;
    page.open_the_build().await;
    let verdicts = page.bearings().await;
    let broken = "{\"id\":\"019ced78-3c41-70 torn off <b>here</b>";
    page.script(
        "const key = Object.keys(localStorage).find((key) => key.startsWith('thoubook/'));
        const build = key.split('/')[1];
        localStorage.setItem(`thoubook/${build}/019ced7f-0001-7000-8d5c-06e32f50d754`, arguments[0]);
        localStorage.setItem(`thoubook/${build}/no-fact-at-all`, 'something else');
        localStorage.setItem('thoubook/not-a-build/x', 'of nobody');",
        vec![json!(broken)],
    )
    .await;
    page.reload().await;
    page.wait_until_it_stands().await;
    assert_eq!(page.bearings().await, verdicts);
    page.turn_to("Book").await;
    page.wait_for_test("set-aside").await;
    page.open_all_folds().await;
    page.wait_for_text("torn off <b>here</b>").await;
    page.to_the_bench().await;
    let out: serde_json::Value = serde_json::from_str(&rig.export(&page).await).unwrap();
    let aside = out["set_aside"].as_array().unwrap();
    for text in [broken, "something else"] {
        assert!(
            aside.iter().any(|one| one["text"] == text),
            "{text}: {aside:?}"
        );
    }
    assert!(
        aside
            .iter()
            .all(|one| one["reason"].as_str().is_some_and(|why| why.len() > 10))
    );
    page.assert_no_trouble().await;
}

/// Fills local storage to the last character.
const FILL: &str = "let size = 1 << 20;
let at = 0;
while (size >= 1) {
    try {
        localStorage.setItem('filling-' + at, 'x'.repeat(size));
        at += 1;
    } catch {
        size = Math.floor(size / 2);
    }
    if (at > 1000) return false;
}
return true";

each_engine!(a_full_local_storage_is_told_and_nothing_is_lost);
async fn a_full_local_storage_is_told_and_nothing_is_lost(rig: &mut Rig) {
    let page = rig.open().await;
    assert_eq!(page.script(FILL, vec![]).await, json!(true));
    page.describe_engine("orchard sprayer", "4", "5").await;
    page.wait_until_all_is_kept().await;
    page.wait_for_test("storage-notice").await;
    assert_eq!(page.kept().await.shelf, vec![]);
    assert_eq!(page.kept().await.vault.len(), 1);
    page.reload().await;
    page.wait_until_it_stands().await;
    assert_eq!(page.bearings().await.len(), 5);
    page.to_the_bench().await;
    assert!(rig.export(&page).await.contains("orchard sprayer"));
    // Once there is room again, the second copy is made up for.
    page.script(
        "Object.keys(localStorage).filter((key) => key.startsWith('filling-'))
        .forEach((key) => localStorage.removeItem(key))",
        vec![],
    )
    .await;
    page.reload().await;
    page.wait_for_test("build").await;
    until("the second copy", async || {
        (page.kept().await.shelf.len() == 1).then_some(())
    })
    .await;
    page.assert_no_trouble().await;
}

each_engine!(where_storage_is_blocked_the_page_works_and_says_so);
async fn where_storage_is_blocked_the_page_works_and_says_so(rig: &mut Rig) {
    rig.device = Device::PHONE.blocked();
    let page = rig.open().await;
    // The notice moves what is under it: nothing is pressed before it is there.
    page.wait_for_test("storage-notice").await;
    page.describe_engine("orchard sprayer", "4", "5").await;
    let notice = page.text_of("storage-notice").await;
    assert!(notice.len() > 40, "{notice}");
    page.to_the_bench().await;
    assert!(rig.export(&page).await.contains("orchard sprayer"));
    page.bring_in(&sprayer()).await;
    page.close_the_file().await;
    assert_eq!(page.number_of_builds().await, 2);
    page.assert_no_trouble().await;
    if rig.engine != Engine::Chromium {
        // Only the quick copy is blocked there: the other one keeps it all.
        page.reload().await;
        page.wait_for_test("build").await;
        assert_eq!(page.number_of_builds().await, 2);
    }
}

/// Makes each of the two copies refuse facts, from now on or no longer.
const REFUSE: &str = "const [copy, on] = arguments;
window.__own ??= { put: IDBObjectStore.prototype.put, setItem: Storage.prototype.setItem };
const refuse = () => { throw new DOMException('no room', 'QuotaExceededError'); };
if (copy === 'vault') IDBObjectStore.prototype.put = on ? refuse : window.__own.put;
else Storage.prototype.setItem = on
    ? function (key, text) { return key.startsWith('thoubook/') ? refuse() : window.__own.setItem.call(this, key, text); }
    : window.__own.setItem;";

each_engine!(a_fact_that_was_refused_is_tried_again_and_told_until_it_is_kept);
async fn a_fact_that_was_refused_is_tried_again_and_told_until_it_is_kept(rig: &mut Rig) {
    let page = with_the_sprayer(rig).await;
    page.open_the_build().await;
    page.turn_to("Book").await;
    let before = page.kept().await.vault.len();
    let mut written = 0;
    for copy in ["vault", "shelf"] {
        page.script(REFUSE, vec![json!(copy), json!(true)]).await;
        for turn in 0..2 {
            page.paste("note", &format!("{copy} refused, note {turn}"))
                .await;
            page.reach("note-write").await;
            written += 1;
        }
        page.wait_until_all_is_kept().await;
        page.wait_for_test("storage-notice").await;
        let lacks = |kept: &Kept| match copy {
            "vault" => before + written - kept.vault.len(),
            _ => before + written - kept.shelf.len(),
        };
        assert_eq!(lacks(&page.kept().await), 2, "the {copy} refused two");
        page.script(REFUSE, vec![json!(copy), json!(false)]).await;
        // Nothing is made up for before the next write, and nothing is hidden.
        page.wait_for_test("storage-notice").await;
        page.paste("note", &format!("{copy} takes notes again"))
            .await;
        page.reach("note-write").await;
        written += 1;
        until("the notice to go", async || {
            (!page.has_test("storage-notice").await).then_some(())
        })
        .await;
        let kept = page.kept().await;
        assert_eq!(kept.vault.len(), before + written, "after the {copy}");
        assert_eq!(kept.shelf, kept.vault, "after the {copy}");
    }
    page.assert_no_trouble().await;
}
