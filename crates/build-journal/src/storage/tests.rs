//! What was acknowledged is there, whatever went wrong.

use std::pin::pin;
use std::task::{Context, Poll, Waker};

use super::double::{Fault, Faults, MemoryShelf, MemoryVault, Side};
use super::*;
use crate::fact::samples::{Pen, limits, reading, sprayer};
use crate::fact::{Body, Fact, Note, Struck};
use crate::id::BuildId;
use crate::journal::Journal;
use build_plan::Place;

/// Runs what never really waits.
pub(super) fn now<T>(future: impl Future<Output = T>) -> T {
    let mut future = pin!(future);
    let mut context = Context::from_waker(Waker::noop());
    loop {
        if let Poll::Ready(value) = future.as_mut().poll(&mut context) {
            return value;
        }
    }
}

pub(super) fn build() -> BuildId {
    BuildId::from_random(7)
}

pub(super) fn keeper(faults: &Faults) -> Keeper<MemoryShelf, MemoryVault> {
    Keeper::new(MemoryShelf::new(faults), MemoryVault::new(faults))
}

fn note(text: &str) -> Body {
    Body::Note(Note {
        text: text.to_owned(),
        place: None,
        step: None,
    })
}

fn key(fact: &Fact) -> String {
    Key::fact(build(), fact.id()).to_string()
}

fn opened(keeper: &Keeper<MemoryShelf, MemoryVault>) -> Opened {
    now(keeper.open()).opened
}

pub(super) fn the_build(keeper: &Keeper<MemoryShelf, MemoryVault>) -> Journal {
    opened(keeper)
        .journals
        .remove(&build())
        .unwrap_or_else(|| Journal::new(build()))
}

#[test]
fn a_key_comes_back_from_its_text() {
    let fact = Pen::new(1).write(sprayer());
    let fact_key = Key::fact(build(), fact.id());
    assert_eq!(
        fact_key.to_string(),
        format!("thoubook/{}/{}", build(), fact.id())
    );
    let aside = Key::aside(build(), "torn");
    for key in [fact_key, aside] {
        assert_eq!(Key::parse(&key.to_string()), Some(key));
    }
    let other = Some(Key::Other { build: build() });
    for rest in ["", "x", "aside/", "aside/12"] {
        assert_eq!(Key::parse(&format!("thoubook/{}/{rest}", build())), other);
    }
    let shouted = fact.id().to_string().to_uppercase();
    assert_eq!(
        Key::parse(&format!("thoubook/{}/{shouted}", build())),
        other
    );
    for foreign in [
        "",
        "thoubook",
        "thoubook/theme",
        "thoubook/theme/dark",
        "radio/1/2",
    ] {
        assert_eq!(Key::parse(foreign), None);
    }
}

#[test]
fn a_fact_is_in_both_copies_once_it_is_kept() {
    let keeper = keeper(&Faults::none());
    let fact = Pen::new(1).write(sprayer());
    assert!(now(keeper.keep(build(), &fact)).is_safe());
    for contents in [keeper.shelf().contents(), keeper.vault().contents()] {
        assert_eq!(
            contents.get(&key(&fact)).map(String::as_str),
            Some(fact.text())
        );
    }
    let opened = opened(&keeper);
    assert_eq!(opened.journals[&build()].len(), 1);
    assert!(opened.missing_in_vault.is_empty() && opened.missing_on_shelf.is_empty());
}

#[test]
fn each_copy_heals_the_other() {
    let keeper = keeper(&Faults::none());
    let mut pen = Pen::new(1);
    let facts: Vec<Fact> = (0..4).map(|_| pen.write(sprayer())).collect();
    now(keeper.put_in_vault(build(), &[&facts[0], &facts[1]])).unwrap();
    keeper.put_on_shelf(build(), &facts[2]).unwrap();
    keeper.put_on_shelf(build(), &facts[3]).unwrap();
    let found = now(keeper.open());
    assert_eq!(found.opened.journals[&build()].len(), 4);
    let healed = now(keeper.heal(&found));
    assert_eq!((healed.shelf, healed.vault), (Ok(2), Ok(2)));
    assert_eq!(keeper.shelf().contents(), keeper.vault().contents());
    let again = now(keeper.open());
    assert!(again.opened.missing_on_shelf.is_empty());
    assert!(again.opened.missing_in_vault.is_empty());
}

#[test]
fn a_broken_value_is_mended_from_the_other_copy_and_what_it_was_is_kept() {
    let mut pen = Pen::new(1);
    let fact = pen.write(sprayer());
    let stranger = pen.write(note("of another build"));
    for (broken, kept_aside) in [
        (&fact.text()[..40], false),
        ("", false),
        ("scribble", true),
        (stranger.text(), true),
    ] {
        let keeper = keeper(&Faults::none());
        assert!(now(keeper.keep(build(), &fact)).is_safe());
        keeper.shelf().plant(&key(&fact), broken);
        let found = now(keeper.open());
        let journal = &found.opened.journals[&build()];
        assert_eq!(journal.facts().collect::<Vec<_>>(), vec![&fact]);
        let aside: Vec<&str> = journal.set_aside().map(|(text, _)| text).collect();
        assert_eq!(aside, if kept_aside { vec![broken] } else { vec![] });
        assert!(now(keeper.heal(&found)).shelf.is_ok());
        let shelf = keeper.shelf().contents();
        assert_eq!(shelf[&key(&fact)], fact.text());
        assert_eq!(&the_build(&keeper), journal, "it is still set aside");
    }
}

#[test]
fn a_broken_value_with_no_other_copy_stays_where_it_is_and_the_rest_opens() {
    let keeper = keeper(&Faults::none());
    let mut pen = Pen::new(1);
    let fact = pen.write(sprayer());
    let lost = pen.write(note("half of it"));
    assert!(now(keeper.keep(build(), &fact)).is_safe());
    keeper.shelf().plant(&key(&lost), &lost.text()[..60]);
    for _ in 0..2 {
        let found = now(keeper.open());
        let journal = &found.opened.journals[&build()];
        assert_eq!(journal.len(), 1);
        let aside: Vec<&str> = journal.set_aside().map(|(text, _)| text).collect();
        assert_eq!(aside, vec![&lost.text()[..60]]);
        let healed = now(keeper.heal(&found));
        assert!(healed.shelf.is_ok() && healed.vault.is_ok());
        assert_eq!(keeper.shelf().contents()[&key(&lost)], lost.text()[..60]);
    }
    // Shelf: the fact, the broken one, its aside. Vault: the fact and the aside.
    assert_eq!(keeper.shelf().contents().len(), 3);
    assert_eq!(keeper.vault().contents().len(), 2);
}

#[test]
fn what_is_stored_under_no_name_of_ours_is_seen_or_left_alone() {
    let keeper = keeper(&Faults::none());
    keeper.shelf().plant("thoubook/theme", "dark");
    keeper.shelf().plant("radio/station", "7");
    let stray = format!("thoubook/{}/scribble", build());
    keeper.shelf().plant(&stray, "<b>oil</b>");
    let found = now(keeper.open());
    assert_eq!(found.opened.journals.len(), 1);
    let journal = &found.opened.journals[&build()];
    assert_eq!(
        journal.set_aside().next().map(|it| it.0),
        Some("<b>oil</b>")
    );
    now(keeper.heal(&found)).shelf.unwrap();
    assert_eq!(keeper.shelf().contents()[&stray], "<b>oil</b>");
    assert_eq!(keeper.shelf().contents()["thoubook/theme"], "dark");
}

#[test]
fn two_texts_for_one_fact_end_as_the_same_one_in_both_copies() {
    let keeper = keeper(&Faults::none());
    let (one, other) = (
        Pen::new(1).write(note("bores white")),
        Pen::new(1).write(note("bores black")),
    );
    keeper.shelf().plant(&key(&one), one.text());
    keeper.vault().plant(&key(&one), other.text());
    let found = now(keeper.open());
    now(keeper.heal(&found)).shelf.unwrap();
    assert_eq!(keeper.shelf().contents(), keeper.vault().contents());
    let journal = the_build(&keeper);
    assert_eq!(journal.get(one.id()), Some(&other));
    assert_eq!(journal.set_aside().next().map(|it| it.0), Some(one.text()));
    assert!(opened(&keeper).missing_on_shelf.is_empty());
}

#[test]
fn a_full_shelf_does_not_stop_the_vault_nor_a_shut_vault_the_shelf() {
    let faults = Faults::at(0, Fault::Fails(StorageError::Full));
    let full = keeper(&faults);
    let fact = Pen::new(1).write(sprayer());
    let kept = now(full.keep(build(), &fact));
    assert_eq!(kept.shelf, Err(StorageError::Full));
    assert!(kept.is_safe());
    assert_eq!(the_build(&full).len(), 1);

    let shut = keeper(&Faults::at(1, Fault::Fails(StorageError::Blocked)));
    let kept = now(shut.keep(build(), &fact));
    assert!(!kept.is_safe() && !kept.is_nowhere());
    assert_eq!(the_build(&shut).len(), 1);

    let nothing = keeper(&Faults::at(0, Fault::FullFromNow));
    assert!(now(nothing.keep(build(), &fact)).is_nowhere());
}

#[test]
fn a_vault_whose_connection_broke_is_opened_again_once() {
    let faults = Faults::at(1, Fault::Fails(StorageError::Gone));
    let mended = keeper(&faults);
    let fact = Pen::new(1).write(sprayer());
    assert!(now(mended.keep(build(), &fact)).is_safe());
    let vault = |side: &&Side| **side == Side::Vault;
    // The failed write, the reopening, the write.
    assert_eq!(faults.operations().iter().filter(vault).count(), 3);
    assert_eq!(mended.vault().contents().len(), 1);
}

#[test]
fn a_copy_that_cannot_be_read_is_not_written_over() {
    let faults = Faults::none();
    let kept = keeper(&faults);
    let fact = Pen::new(1).write(sprayer());
    assert!(now(kept.keep(build(), &fact)).is_safe());
    let now_many = faults.operations().len();
    // The next operation lists the shelf's keys.
    let blind = Faults::at(0, Fault::Fails(StorageError::Blocked));
    let shelf = MemoryShelf::new(&blind);
    let vault = MemoryVault::new(&blind);
    for (key, text) in kept.vault().contents() {
        vault.plant(&key, &text);
    }
    let blinded = Keeper::new(shelf, vault);
    let found = now(blinded.open());
    assert_eq!(found.shelf, Some(StorageError::Blocked));
    assert_eq!(found.opened.journals[&build()].len(), 1);
    assert_eq!(now(blinded.heal(&found)).shelf, Err(StorageError::Blocked));
    assert!(blinded.shelf().contents().is_empty());
    assert_eq!(now_many, 2);
}

#[test]
fn a_build_that_is_forgotten_is_gone_and_the_others_stay() {
    let keeper = keeper(&Faults::none());
    let mut pen = Pen::new(1);
    let (ours, others) = (pen.write(sprayer()), pen.write(sprayer()));
    let other_build = BuildId::from_random(8);
    assert!(now(keeper.keep(build(), &ours)).is_safe());
    assert!(now(keeper.keep(other_build, &others)).is_safe());
    now(keeper.forget(build())).unwrap();
    let opened = opened(&keeper);
    assert_eq!(opened.journals.len(), 1);
    assert!(opened.journals.contains_key(&other_build));
    assert!(opened.missing_on_shelf.is_empty());
}

#[test]
fn two_tabs_do_not_write_over_each_other() {
    let one = keeper(&Faults::none());
    let other = one.clone();
    let (mut here, mut there) = (Pen::new(1), Pen::new(1).in_another_tab());
    for _ in 0..20 {
        assert!(now(one.keep(build(), &here.write(note("one")))).is_safe());
        assert!(now(other.keep(build(), &there.write(note("other")))).is_safe());
    }
    let journal = the_build(&one);
    assert_eq!(journal.len(), 40);
    assert_eq!(journal, the_build(&other));
}

/// An hour of work: opening, describing, measuring, striking out, taking in a
/// file from another device, opening again. Gives what was acknowledged.
fn hour_of_work(keeper: &Keeper<MemoryShelf, MemoryVault>) -> Vec<Fact> {
    let mut acknowledged = Vec::new();
    let mut pen = Pen::new(1);
    let keep = |body: Body, pen: &mut Pen, acknowledged: &mut Vec<Fact>| {
        let fact = pen.write(body);
        if now(keeper.keep(build(), &fact)).is_safe() {
            acknowledged.push(fact.clone());
        }
        fact
    };
    let open = || {
        let found = now(keeper.open());
        let _ = now(keeper.heal(&found));
        found.opened
    };
    open();
    keep(sprayer(), &mut pen, &mut acknowledged);
    keep(
        Body::LimitsSet(limits("1.5", "2.5")),
        &mut pen,
        &mut acknowledged,
    );
    for main in 1..=3 {
        let body = reading("main-journal-diameter", Place::main(main), "2.4483");
        let fact = keep(body, &mut pen, &mut acknowledged);
        if main == 2 {
            let strike = Body::Struck(Struck {
                fact: fact.id(),
                reason: None,
            });
            keep(strike, &mut pen, &mut acknowledged);
        }
    }
    open();
    let mut tablet = Pen::new(2);
    let mut journal = opened(keeper)
        .journals
        .remove(&build())
        .unwrap_or_else(|| Journal::new(build()));
    let came: Vec<Fact> = (0..2)
        .map(|_| tablet.write(note("from the tablet")))
        .collect();
    for fact in &came {
        journal.take(fact.clone());
    }
    journal.put_aside("a torn page", "It was torn.");
    if now(keeper.keep_all(&journal)).is_safe() {
        acknowledged.extend(came);
    }
    open();
    keep(note("good night"), &mut pen, &mut acknowledged);
    acknowledged
}

#[test]
fn nothing_acknowledged_is_missing_after_any_one_fault_at_any_operation() {
    let faults = Faults::none();
    let all = hour_of_work(&keeper(&faults));
    let operations = faults.operations().len();
    assert_eq!(all.len(), 9);
    assert!(operations > 50, "{operations} operations");
    let kinds = [
        Fault::Fails(StorageError::Full),
        Fault::Fails(StorageError::Blocked),
        Fault::Fails(StorageError::Gone),
        Fault::DoneButFails(StorageError::Failed {
            reason: "timed out".to_owned(),
        }),
        Fault::Tears,
        Fault::Strays,
        Fault::FullFromNow,
    ];
    for operation in 0..operations {
        for fault in &kinds {
            for forgotten in [0, 1, 5, usize::MAX] {
                let faults = Faults::at(operation, fault.clone());
                let keeper = keeper(&faults);
                let acknowledged = hour_of_work(&keeper);
                faults.clear();
                keeper.shelf().crash(forgotten.min(1000));
                let journal = the_build(&keeper);
                for fact in &acknowledged {
                    assert_eq!(
                        journal.get(fact.id()),
                        Some(fact),
                        "{fault:?} at {operation}, {forgotten} forgotten"
                    );
                }
                // One fault loses at most the one thing it happened to, but for a full device.
                let lost = all.len() - acknowledged.len();
                assert!(
                    *fault == Fault::FullFromNow || lost <= 2,
                    "{fault:?} at {operation}"
                );
            }
        }
    }
}

#[test]
fn after_a_fault_and_one_healing_both_copies_agree() {
    let faults = Faults::none();
    hour_of_work(&keeper(&faults));
    for operation in 0..faults.operations().len() {
        for fault in [
            Fault::Tears,
            Fault::Strays,
            Fault::Fails(StorageError::Gone),
        ] {
            let faults = Faults::at(operation, fault.clone());
            let keeper = keeper(&faults);
            hour_of_work(&keeper);
            faults.clear();
            let found = now(keeper.open());
            let healed = now(keeper.heal(&found));
            assert!(healed.shelf.is_ok() && healed.vault.is_ok());
            let journal = the_build(&keeper);
            for contents in [keeper.shelf().contents(), keeper.vault().contents()] {
                for fact in journal.facts() {
                    assert_eq!(
                        contents.get(&key(fact)).map(String::as_str),
                        Some(fact.text()),
                        "{fault:?} at {operation}"
                    );
                }
            }
        }
    }
}
