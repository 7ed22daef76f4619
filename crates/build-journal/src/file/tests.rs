//! A build goes out and comes back whole; what is no build is told apart.

use std::sync::LazyLock;

use proptest::prelude::*;

use super::*;
use crate::fact::samples::{Pen, fact, foreign_fact_text, limits, reading, sprayer};
use crate::fact::{Body, Fact};
use crate::id::BuildId;
use crate::journal::Journal;
use build_plan::{Direction, Place, Station};

fn journal() -> Journal {
    let mut journal = Journal::new(BuildId::from_random(7));
    let mut pen = Pen::new(1);
    journal.take(pen.write(sprayer()));
    journal.take(pen.write(Body::LimitsSet(limits("1.5", "2.5"))));
    for main in 1..=5 {
        let place = Place::main(main)
            .station(Station::Front)
            .direction(Direction::UpAndDown);
        journal.take(pen.write(reading("main-journal-diameter", place, "2.4483")));
    }
    journal
}

fn error(file: &[u8]) -> ImportError {
    import(file).unwrap_err()
}

#[test]
fn the_file_has_a_fact_a_line() {
    let journal = journal();
    let file = export(&journal);
    let lines: Vec<&str> = file.lines().collect();
    assert_eq!(
        lines[0],
        format!(
            r#"{{"format":"thoubook-journal","version":1,"build":"{}","#,
            journal.build()
        )
    );
    assert_eq!(lines[1], r#""facts":["#);
    for (line, fact) in lines[2..].iter().zip(journal.facts()) {
        assert_eq!(line.trim_end_matches(','), fact.text());
    }
    assert_eq!(lines[lines.len() - 2..], ["],", r#""set_aside":[]}"#]);
    assert!(serde_json::from_str::<serde_json::Value>(&file).is_ok());
}

#[test]
fn a_file_that_an_editor_spread_out_is_the_same_build() {
    let journal = journal();
    let value: serde_json::Value = serde_json::from_str(&export(&journal)).unwrap();
    let spread = format!("\u{feff}{}", serde_json::to_string_pretty(&value).unwrap());
    let back = import(spread.as_bytes()).unwrap().journal;
    let bodies = |journal: &Journal| -> Vec<Body> {
        journal.facts().map(|fact| fact.body().clone()).collect()
    };
    assert_eq!(bodies(&back), bodies(&journal));
}

#[test]
fn the_same_file_twice_changes_nothing() {
    let file = export(&journal());
    let mut here = import(file.as_bytes()).unwrap().journal;
    let again = import(file.as_bytes()).unwrap().journal;
    assert_eq!(
        here.merge(&again).unwrap(),
        crate::journal::CameIn::default()
    );
    assert_eq!(export(&here), file);
}

#[test]
fn a_fact_that_is_there_twice_in_one_file_is_taken_once() {
    let journal = journal();
    let first = journal.facts().next().unwrap().text().to_owned();
    let file = export(&journal).replace("\"facts\":[", &format!("\"facts\":[{first},"));
    let imported = import(file.as_bytes()).unwrap();
    assert_eq!(imported.doubles, 1);
    assert_eq!(imported.journal, journal);
}

#[test]
fn what_is_no_build_is_said_in_a_sentence() {
    let deep = format!("{}{}", "{\"a\":".repeat(100_000), "1");
    let wrong_list = br#"{"format":"thoubook-journal","version":1,"facts":7}"#;
    for (file, words) in [
        (&b""[..], "empty"),
        (b" \n", "empty"),
        (b"bench notes, 3 May", "does not begin with {"),
        (b"\xff\xd8\xff\xe0 photo", "not text"),
        (b"{\"a\":\xff}", "not text"),
        (b"{a:1}", "key must be a string at line 1"),
        (b"[]", "no named fields"),
        (b"\"text\"", "no named fields"),
        (b"{}", "it names no format"),
        (br#"{"format":"other-notes","version":1}"#, "its format is “other-notes”"),
        (br#"{"format":{"a":1}}"#, "it names no format"),
        (br#"{"format":"thoubook-journal"}"#, "version is missing"),
        (br#"{"format":"thoubook-journal","version":"1"}"#, "version is missing or no number"),
        (br#"{"format":"thoubook-journal","version":1}"#, "which build"),
        (
            br#"{"format":"thoubook-journal","version":1,"build":"00000000-0000-4000-8000-000000000007"}"#,
            "list of facts is missing",
        ),
        (wrong_list, "expected a list"),
        (br#"{"format":"thoubook-journal"} and more"#, "trailing characters"),
        (deep.as_bytes(), "stops in the middle"),
    ] {
        let said = error(file).to_string();
        assert!(said.contains(words), "{said} should say {words}");
        assert!(said.ends_with('.') && said.len() < 400, "{said}");
    }
}

#[test]
fn fifty_megabytes_of_noise_are_refused() {
    let noise: Vec<u8> = (0..50_000_000_u32)
        .map(|i| (i.wrapping_mul(2_654_435_761) >> 24) as u8)
        .collect();
    assert!(matches!(error(&noise), ImportError::TooBig { .. }));
    assert!(matches!(error(&noise[..20_000_000]), ImportError::NotText));
    let braces = vec![b'{'; 20_000_000];
    assert!(matches!(error(&braces), ImportError::NotJson { .. }));
}

#[test]
fn a_file_of_a_newer_version_is_refused_and_left_alone() {
    let newer = export(&journal()).replace("\"version\":1", "\"version\":2");
    assert!(matches!(
        error(newer.as_bytes()),
        ImportError::Newer {
            version: 2,
            known: 1
        }
    ));
    assert!(matches!(
        export_over(newer.as_bytes(), &journal()),
        Err(ImportError::Newer { .. })
    ));
}

#[test]
fn a_shared_file_is_only_written_over_with_everything_that_is_in_it() {
    let mut there = Journal::new(BuildId::from_random(7));
    let theirs = Pen::new(2).write(sprayer());
    there.take(theirs.clone());
    let both = export_over(export(&there).as_bytes(), &journal()).unwrap();
    let both = import(both.as_bytes()).unwrap().journal;
    assert_eq!(both.len(), journal().len() + 1);
    assert!(both.get(theirs.id()).is_some());
    let other = Journal::new(BuildId::from_random(8));
    assert!(matches!(
        export_over(export(&other).as_bytes(), &journal()),
        Err(ImportError::OtherBuild(_))
    ));
    assert!(export_over(b"a letter to the shop", &journal()).is_err());
}

#[test]
fn a_file_cut_at_any_point_says_so_and_hands_back_what_is_whole() {
    let journal = journal();
    let file = export(&journal).into_bytes();
    let ends: Vec<usize> = (0..file.len() - 2).collect();
    let mut most = 0;
    for end in ends {
        match import(&file[..end]) {
            Err(ImportError::Empty) => assert_eq!(end, 0),
            Err(ImportError::CutShort { rescued, line, .. }) => {
                assert!(line >= 1);
                let whole = rescued.map_or(0, |rescued| {
                    for fact in rescued.journal.facts() {
                        assert_eq!(journal.get(fact.id()), Some(fact));
                    }
                    assert_eq!(rescued.journal.set_aside().count(), 0);
                    rescued.journal.len()
                });
                assert!(whole >= most, "more of the file gave fewer facts");
                most = whole;
            }
            other => panic!("cut at {end}: {other:?}"),
        }
    }
    assert_eq!(most, journal.len());
}

#[test]
fn a_line_that_is_no_fact_is_set_aside_and_the_rest_opens() {
    let journal = journal();
    let file = export(&journal).replace("\"facts\":[", "\"facts\":[{\"id\":\"?\"},[\"scribble\"],");
    let back = import(file.as_bytes()).unwrap().journal;
    assert_eq!(back.len(), journal.len());
    let aside: Vec<_> = back.set_aside().collect();
    assert_eq!(aside.len(), 2);
    assert!(aside.iter().any(|(text, _)| *text == "[\"scribble\"]"));
    // They go out again, and come back.
    assert_eq!(import(export(&back).as_bytes()).unwrap().journal, back);
}

#[test]
fn markup_in_every_text_comes_back_as_it_was() {
    let markup = "<img src=x onerror=alert(1)></script>";
    let mut journal = Journal::new(BuildId::from_random(7));
    let place = Place::main(1);
    journal.take(Pen::new(1).write(reading(markup, place, markup)));
    journal.put_aside(markup, markup);
    assert_eq!(
        import(export(&journal).as_bytes()).unwrap().journal,
        journal
    );
}

fn any_journal() -> impl Strategy<Value = Journal> {
    let text = prop_oneof![
        4 => fact().prop_map(|fact: Fact| fact.text().to_owned()),
        2 => foreign_fact_text(),
        1 => any::<String>(),
    ];
    prop::collection::vec(text, 0..12).prop_map(|texts| {
        let mut journal = Journal::new(BuildId::from_random(7));
        for text in texts {
            journal.take_text(&text);
        }
        journal
    })
}

static SCHEMA: LazyLock<jsonschema::Validator> = LazyLock::new(|| {
    let schema = include_str!("../../schema/thoubook-journal-1.schema.json");
    jsonschema::validator_for(&serde_json::from_str(schema).unwrap()).unwrap()
});

proptest! {
    #[test]
    fn a_build_comes_back_from_its_file(journal in any_journal()) {
        let file = export(&journal);
        let back = import(file.as_bytes()).unwrap();
        prop_assert_eq!(back.doubles, 0);
        prop_assert_eq!(export(&back.journal), file);
        prop_assert_eq!(back.journal, journal);
    }

    #[test]
    fn two_devices_end_with_the_same_bytes(a in any_journal(), b in any_journal()) {
        let here = a.clone().union(&b).unwrap();
        let there = b.union(&a).unwrap();
        prop_assert_eq!(export(&here), export(&there));
    }

    #[test]
    fn no_file_makes_the_importer_panic(file in prop::collection::vec(any::<u8>(), 0..200)) {
        let _ = import(&file);
    }

    #[test]
    fn no_change_to_a_file_makes_the_importer_panic(
        journal in any_journal(),
        at in any::<prop::sample::Index>(),
        byte in any::<u8>(),
    ) {
        let mut file = export(&journal).into_bytes();
        let at = at.index(file.len());
        file[at] = byte;
        let _ = import(&file);
    }

    #[test]
    fn every_build_that_was_written_here_is_right_by_the_schema(
        facts in prop::collection::vec(fact(), 0..8)
    ) {
        let mut journal = Journal::new(BuildId::from_random(7));
        for fact in facts {
            journal.take(fact);
        }
        let file: serde_json::Value = serde_json::from_str(&export(&journal)).unwrap();
        let wrong = SCHEMA.validate(&file);
        prop_assert!(wrong.is_ok(), "{:?}", wrong);
    }
}
