//! Copies of a build merge by union, whatever came in first.

use proptest::prelude::*;

use super::*;
use crate::fact::samples::{Pen, fact, foreign_fact_text, sprayer};
use crate::fact::{Body, Fact, Note};
use crate::id::BuildId;

fn build() -> BuildId {
    BuildId::from_random(7)
}

fn note(text: &str) -> Body {
    Body::Note(Note {
        text: text.to_owned(),
        place: None,
        step: None,
    })
}

#[test]
fn a_fact_is_there_once_however_often_it_is_taken_in() {
    let fact = Pen::new(1).write(sprayer());
    let mut journal = Journal::new(build());
    assert!(journal.take(fact.clone()));
    assert!(!journal.take(fact.clone()));
    assert_eq!(journal.len(), 1);
    assert_eq!(journal.get(fact.id()), Some(&fact));
    assert_eq!(journal.set_aside().count(), 0);
}

#[test]
fn of_two_texts_with_one_id_both_are_kept_and_the_same_one_counts_everywhere() {
    let one = Pen::new(1).write(note("bores white"));
    let other = Pen::new(1).write(note("bores black"));
    assert_eq!(one.id(), other.id());
    let both = |first: &Fact, second: &Fact| {
        let mut journal = Journal::new(build());
        assert!(journal.take(first.clone()));
        assert!(journal.take(second.clone()));
        journal
    };
    let journal = both(&one, &other);
    assert_eq!(journal, both(&other, &one));
    assert_eq!(journal.get(one.id()), Some(&other));
    assert_eq!(journal.set_aside().next().map(|it| it.0), Some(one.text()));
}

#[test]
fn the_readable_text_counts_before_an_unreadable_one() {
    let good = Pen::new(1).write(note("z"));
    let torn = good.text().replace(r#""text":"z""#, r#""text":0"#);
    let mut journal = Journal::new(build());
    journal.take_text(&torn);
    journal.take_text(good.text());
    assert_eq!(journal.get(good.id()), Some(&good));
    assert_eq!(journal.set_aside().next().map(|it| it.0), Some(&*torn));
}

#[test]
fn the_latest_format_is_that_of_the_texts_that_count() {
    let now = Pen::new(1).write(note("z"));
    let in_format = |format: u32, text: &str| {
        let more = format!(r#""format":{format},"kind":"note""#);
        Pen::new(1)
            .write(note(text))
            .text()
            .replace(r#""kind":"note""#, &more)
    };
    let (second, third) = (in_format(2, "a"), in_format(3, "b"));
    let texts = [now.text(), second.as_str(), third.as_str()];
    for order in [[0, 1, 2], [2, 1, 0], [1, 0, 2], [1, 2, 0]] {
        let mut journal = Journal::new(build());
        for at in order {
            journal.take_text(texts[at]);
            let counting = journal.facts().filter_map(Fact::later_format).max();
            assert_eq!(journal.later_format(), counting, "{order:?}");
        }
        assert_eq!(journal.later_format(), Some(3), "{order:?}");
    }
}

#[test]
fn copies_of_different_builds_do_not_mix() {
    let mut ours = Journal::new(build());
    let mut theirs = Journal::new(BuildId::from_random(8));
    theirs.take(Pen::new(1).write(sprayer()));
    let error = ours.merge(&theirs).unwrap_err();
    assert!(error.to_string().contains(&build().to_string()));
    assert!(ours.is_empty());
}

#[test]
fn a_build_touched_by_a_newer_version_is_read_but_not_added_to() {
    let mut journal = Journal::new(build());
    let mut pen = Pen::new(1);
    let newer = pen
        .write(note("a"))
        .text()
        .replace(r#""kind":"note""#, r#""format":3,"kind":"note""#);
    assert!(journal.take_text(&newer));
    let error = journal.append(pen.write(note("b"))).unwrap_err();
    assert_eq!(error, AppendError::NewerFormat { format: 3 });
    assert_eq!(journal.len(), 1);
}

#[test]
fn a_merge_says_what_came_in() {
    let (mut phone, mut tablet) = (Journal::new(build()), Journal::new(build()));
    let (mut here, mut there) = (Pen::new(1), Pen::new(2));
    let first = here.write(sprayer());
    phone.take(first.clone());
    tablet.take(first);
    let second = there.write(note("thrust side worn"));
    tablet.take(second.clone());
    tablet.put_aside("torn", "torn");
    let came = phone.merge(&tablet).unwrap();
    assert_eq!(came.facts, vec![second.id()]);
    assert_eq!(came.set_aside, 1);
    assert_eq!(phone.merge(&tablet).unwrap(), CameIn::default());
}

fn journal() -> impl Strategy<Value = Journal> {
    let text = prop_oneof![
        4 => fact().prop_map(|fact| fact.text().to_owned()),
        2 => foreign_fact_text(),
        1 => any::<String>(),
    ];
    prop::collection::vec(text, 0..12).prop_map(|texts| {
        let mut journal = Journal::new(build());
        for text in texts {
            journal.take_text(&text);
        }
        journal
    })
}

/// Every text in a journal, wherever it is kept.
fn texts(journal: &Journal) -> Vec<String> {
    let facts = journal.facts().map(|fact| fact.text().to_owned());
    let aside = journal.set_aside().map(|(text, _)| text.to_owned());
    facts.chain(aside).collect()
}

proptest! {
    #[test]
    fn union_does_not_care_for_order_or_number(a in journal(), b in journal(), c in journal()) {
        let union = |x: &Journal, y: &Journal| x.clone().union(y).unwrap();
        prop_assert_eq!(union(&a, &b), union(&b, &a));
        prop_assert_eq!(union(&union(&a, &b), &c), union(&a, &union(&b, &c)));
        prop_assert_eq!(union(&a, &a), a.clone());
        prop_assert_eq!(union(&union(&a, &b), &b), union(&a, &b));
    }

    #[test]
    fn union_loses_nothing(a in journal(), b in journal()) {
        let both = texts(&a.clone().union(&b).unwrap());
        for text in texts(&a).iter().chain(&texts(&b)) {
            prop_assert!(both.contains(text), "lost {}", text);
        }
    }
}
