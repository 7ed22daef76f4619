//! Text that is no number of the wanted kind: the field says what it read and
//! what would be right, keeps what was typed, and nothing breaks.

use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

/// What is typed into a field for a length, and words that the sentence under
/// the field must have: what was read, or what would be right.
const BAD: [(&str, &[&str]); 12] = [
    ("-", &["“-”", "number after the sign"]),
    ("1/0", &["“1/0”", "zero under the fraction bar"]),
    ("2.44.8", &["“2.44.8”", "two decimal points"]),
    ("7 3/8/2", &["“7 3/8/2”", "two fraction bars"]),
    ("abc", &["“abc”", "a length such as"]),
    ("1e400", &["“1e400”", "too large"]),
    ("NaN", &["“NaN”", "type a number"]),
    ("inf", &["“inf”", "such as"]),
    ("5 psi", &["pressure", "a length is wanted"]),
    ("1,234", &["1.234", "1234"]),
    ("2.4 furlongs", &["furlongs", "no unit known"]),
    ("<b>2</b>", &["“<b>2</b>”", "a length such as"]),
];

/// Types each bad text into the field and reads what is said about it.
pub async fn refuses_bad_text(page: &Page, field: &str) {
    for (text, words) in BAD {
        page.paste(field, text).await;
        page.leave_the_field().await;
        let what = format!("{field} to say something about {text:?} with {words:?}");
        until(&what, async || {
            let says = page.says(field).await;
            words.iter().all(|word| says.contains(word)).then_some(())
        })
        .await;
        assert_eq!(page.value_of(field).await, text, "{field}");
    }
    let long = "7".repeat(10_000);
    page.paste(field, &long).await;
    page.leave_the_field().await;
    until(
        &format!("{field} to say that 10,000 characters are too many"),
        async || page.says(field).await.contains("too long").then_some(()),
    )
    .await;
    assert_eq!(page.value_of(field).await.len(), 10_000, "{field}");
    page.paste(field, "").await;
    page.leave_the_field().await;
    until(&format!("{field} to say nothing when empty"), async || {
        page.says(field).await.is_empty().then_some(())
    })
    .await;
    page.assert_no_trouble().await;
}

each_engine!(every_field_of_a_quick_check_says_what_is_wrong_with_a_text);
async fn every_field_of_a_quick_check_says_what_is_wrong_with_a_text(rig: &mut Rig) {
    for check in ["running-clearance", "running-clearance-same-micrometer"] {
        let page = rig.open_address(&format!("#/quick/{check}")).await;
        page.wait_until_it_stands().await;
        let fields = page.quantity_fields().await;
        assert!(fields.len() >= 4, "{check}: {fields:?}");
        for field in fields {
            page.open_all_folds().await;
            refuses_bad_text(&page, &field).await;
        }
    }
}

each_engine!(bad_text_is_still_there_after_a_reload);
async fn bad_text_is_still_there_after_a_reload(rig: &mut Rig) {
    let page = rig.open_address("#/quick/running-clearance").await;
    page.paste("journal-1", "2.44.8").await;
    page.paste("bore-1", "7 3/8/2").await;
    page.reload().await;
    page.wait_until_it_stands().await;
    assert_eq!(page.value_of("journal-1").await, "2.44.8");
    assert_eq!(page.value_of("bore-1").await, "7 3/8/2");
    page.assert_no_trouble().await;
}

each_engine!(an_address_that_leads_nowhere_says_so);
async fn an_address_that_leads_nowhere_says_so(rig: &mut Rig) {
    for address in [
        "#/quick/no-such-check",
        "#/build/no-such-build/mains",
        "#/build/0192f0c1-aaaa-7bbb-8ccc-0123456789ab/mains/3",
        "#/%00%ff<script>",
    ] {
        let page = rig.open_address(address).await;
        page.wait_until_it_stands().await;
        until(&format!("a way back from {address}"), async || {
            page.find("link", "To the bench")
                .await
                .or(page.find("link", "All quick checks").await)
                .map(drop)
        })
        .await;
        page.assert_no_trouble().await;
    }
}

each_engine!(every_field_of_a_build_says_what_is_wrong_with_a_text);
async fn every_field_of_a_build_says_what_is_wrong_with_a_text(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&crate::builds::five_mains()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.open_bearing(3).await;
    page.press_test("place-main-bearing-bore-front-up-and-down")
        .await;
    refuses_bad_text(&page, "reading").await;
    page.put_keypad_away().await;
    page.turn_to("Limits").await;
    for field in ["limits-low", "limits-high"] {
        refuses_bad_text(&page, field).await;
    }
}

each_engine!(a_text_of_ten_thousand_letters_is_refused_whole_and_stays);
async fn a_text_of_ten_thousand_letters_is_refused_whole_and_stays(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&crate::builds::five_mains()).await;
    page.close_the_file().await;
    let before = page.kept().await.vault.len();
    page.open_the_build().await;
    let long = "crank ".repeat(1_667);
    for (tab, field, button) in [
        ("Book", "note", "note-write"),
        ("Limits", "limits-note", "limits-save"),
    ] {
        page.turn_to(tab).await;
        page.paste(field, &long).await;
        page.bring_into_view(button).await;
        page.press_test(button).await;
        page.leave_the_field().await;
        assert!(page.says(field).await.contains("too many"), "{field}");
        assert_eq!(page.value_of(field).await.len(), long.len(), "{field}");
    }
    page.to_the_bench().await;
    page.press_test("new-build").await;
    page.paste("name", &long).await;
    page.paste("cylinders", "4").await;
    page.put_keypad_away().await;
    page.press_test("describe-save").await;
    assert!(page.says("name").await.contains("too many"));
    assert_eq!(page.value_of("name").await.len(), long.len());
    assert_eq!(page.kept().await.vault.len(), before);
    page.assert_no_trouble().await;
}

each_engine!(an_engine_that_cannot_be_is_refused_with_a_sentence);
async fn an_engine_that_cannot_be_is_refused_with_a_sentence(rig: &mut Rig) {
    let page = rig.open().await;
    page.press_test("new-build").await;
    page.press_test("describe-save").await;
    for (name, cylinders, mains, words) in [
        ("", "4", "", "name"),
        ("sprayer", "", "", "cylinders"),
        ("sprayer", "0", "", "cylinder"),
        ("sprayer", "-4", "", "“-4” is not a count"),
        ("sprayer", "4.5", "", "“4.5” is not a count"),
        ("sprayer", "1e9", "", "cylinder"),
        ("sprayer", "4", "400", "main"),
        ("sprayer", "4", "1/0", "zero under the fraction bar"),
    ] {
        page.paste("name", name).await;
        page.paste("cylinders", cylinders).await;
        page.paste("mains", mains).await;
        page.put_keypad_away().await;
        page.bring_into_view("describe-save").await;
        page.press_test("describe-save").await;
        let what = format!("a sentence with {words:?} about {name:?}, {cylinders:?}, {mains:?}");
        until(&what, async || {
            let wrong = "return [...document.querySelectorAll('.wrong')].map((one) => one.textContent).join(' ')";
            let said = page.client.execute(wrong, vec![]).await.ok()?;
            said.as_str()?.to_lowercase().contains(words).then_some(())
        })
        .await;
        assert_eq!(page.value_of("cylinders").await, cylinders);
        assert_eq!(page.number_of_builds().await, 0);
    }
    assert_eq!(page.kept().await.vault, vec![]);
    page.assert_no_trouble().await;
}
