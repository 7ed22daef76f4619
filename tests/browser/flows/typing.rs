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
