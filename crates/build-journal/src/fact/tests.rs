//! A fact comes back from its text; what is not known here is not lost.

use proptest::prelude::*;

use super::samples::{Pen, body, fact, foreign_fact_text, reading, sprayer};
use super::*;
use assembly_core::quantity::Si;
use build_plan::engine::{Construction, ValveGear};
use build_plan::{Direction, Engine, Layout, Place, Station};

const HEAD: &str = r#""id":"01977b50-1b00-7000-8000-000000000001","device":"00000000-0000-4000-8000-000000000001","clock":1750000000000"#;

fn read(rest: &str) -> Result<Fact, Unreadable> {
    Fact::read(&format!("{{{HEAD}{rest}}}"))
}

#[test]
fn a_fact_is_written_as_a_person_would_read_it() {
    let fact = Pen::new(1).write(reading(
        "main-journal-diameter",
        Place::main(3)
            .station(Station::Front)
            .direction(Direction::UpAndDown),
        "2.4483",
    ));
    assert_eq!(
        fact.text(),
        format!(
            concat!(
                r#"{{"id":"{}","device":"00000000-0000-4000-8000-000000000001","clock":1750000060001,"#,
                r#""kind":"reading","measure":"main-journal-diameter","#,
                r#""place":{{"main":3,"station":"front","direction":"up-and-down"}},"#,
                r#""typed":"2.4483","unit":"in"}}"#
            ),
            fact.id()
        )
    );
}

#[test]
fn an_unknown_kind_is_kept_byte_for_byte() {
    let text = format!(
        r#"{{{HEAD},"kind":"photo","hash":"ab","size":1.50e+3,"deep":{}{}}}"#,
        "[".repeat(5000),
        "]".repeat(5000)
    );
    let fact = Fact::read(&text).unwrap();
    assert_eq!(fact.text(), text);
    assert!(matches!(fact.body(), Body::Unknown(unknown) if unknown.kind() == "photo"));
}

#[test]
fn an_unknown_field_of_a_known_kind_is_kept() {
    let rest = r#","kind":"note","text":"shell backs dry","mood":"good"}"#;
    let fact = Fact::read(&format!("{{ {HEAD} {rest}")).unwrap();
    assert!(matches!(fact.body(), Body::Note(note) if note.text == "shell backs dry"));
    assert!(fact.text().ends_with(r#""mood":"good"}"#));
}

#[test]
fn a_known_kind_in_a_later_format_is_left_alone() {
    let fact = read(r#","kind":"reading","format":2,"value":[1,2]"#).unwrap();
    assert_eq!(fact.later_format(), Some(2));
    assert!(matches!(fact.body(), Body::Unknown(_)));
}

#[test]
fn a_known_kind_in_an_unreadable_shape_says_which_field() {
    let reason = |rest: &str| match read(rest).unwrap().body() {
        Body::Unreadable(unreadable) => unreadable.reason().to_string(),
        other => panic!("{other:?}"),
    };
    for (rest, words) in [
        (r#","kind":"note""#, "“text” is missing"),
        (r#","kind":"note","text":5"#, "“text” holds 5"),
        (r#","kind":"note","text":null"#, "“text” is missing"),
        (
            r#","kind":"note","text":"a","place":"here""#,
            "“place” holds",
        ),
        (r#","kind":"struck","fact":"x""#, "“fact” holds \"x\""),
        (r#","kind":"engine-described""#, "“engine” is missing"),
        (
            r#","kind":"engine-described","engine":{"name":"a","cylinders":-4,"layout":"inline"}"#,
            "“cylinders” holds -4",
        ),
        (
            r#","kind":"engine-described","engine":{"name":"a","cylinders":4.5,"layout":"inline"}"#,
            "“cylinders” holds 4.5",
        ),
        (
            r#","kind":"reading","measure":"m","place":{"main":1},"typed":"1","unit":"in","tool":7"#,
            "“tool” holds 7",
        ),
        (
            r#","kind":"limits-set","measure":"m","unit":"in","origin":"hearsay","origin_note":"""#,
            "“origin” holds \"hearsay\"",
        ),
        (
            r#","kind":"limits-set","measure":"m","unit":"in","origin":"sheet","origin_note":"","replaces":["x"]"#,
            "“replaces” holds",
        ),
    ] {
        let said = reason(rest);
        assert!(said.contains(words), "{said} should say {words}");
    }
}

#[test]
fn blanks_between_the_parts_make_no_difference_and_mend_nothing() {
    let spread = read(
        r#","kind":"engine-described","engine":{"name":"a","cylinders":4,"layout":"inline","liners":{"of": 7 }}"#,
    );
    let spread = spread.unwrap();
    assert_eq!(Fact::read(spread.text()).unwrap(), spread);
    let broken = format!("{{{HEAD},\"kind\":\"note\",\"text\":\"a\"}}")
        .replace("1750000000000", "1750 000000000");
    assert!(matches!(
        Fact::read(&broken),
        Err(Unreadable::NotJson { .. })
    ));
}

#[test]
fn a_text_that_is_no_fact_says_why() {
    for (text, words) in [
        (String::new(), "not whole JSON"),
        ("[1,2]".to_owned(), "no set of named fields"),
        ("{}".to_owned(), "“id” is missing"),
        (format!("{{{HEAD}}}"), "“kind” is missing"),
        (format!("{{{HEAD},\"kind\":\"note\""), "not whole JSON"),
        ("{\"id\":zzzz}".to_owned(), "not whole JSON"),
        (
            format!("{{{HEAD},\"kind\":\"note\"}}").replace("-7000-", "-4000-"),
            "“id” holds",
        ),
        (
            format!("{{{HEAD},\"kind\":\"note\"}}").replace("1750000000000", "1.5"),
            "“clock” holds 1.5",
        ),
    ] {
        let said = Fact::read(&text).unwrap_err().to_string();
        assert!(said.contains(words), "{said} should say {words}");
        assert!(said.len() < 300);
    }
    let long = format!("{{{HEAD},\"kind\":[\"{}\"]}}", "x".repeat(10_000));
    assert!(Fact::read(&long).unwrap_err().to_string().len() < 300);
}

#[test]
fn a_place_unknown_here_is_kept_as_it_came() {
    for place in [
        r#"{"cylinder":2,"plane":"top"}"#,
        r#"{"main":1,"station":"sideways"}"#,
        r#"{"main":1,"depth":"shallow"}"#,
        r#"{"main":999}"#,
        "{}",
    ] {
        let fact = read(&format!(r#","kind":"note","text":"a","place":{place}"#)).unwrap();
        let Body::Note(note) = fact.body() else {
            panic!()
        };
        assert_eq!(note.place, Some(Spot::Unknown(place.to_owned())));
    }
}

#[test]
fn every_place_of_the_plan_comes_back_from_its_text() {
    let built = Construction {
        valve_gear: ValveGear::TwinOverheadBucket,
        pins: build_plan::engine::Pins::Floating,
        liners: build_plan::engine::Liners::Dry,
        intake_valves: 2,
        ..Construction::default()
    };
    let vee = Layout::Vee {
        bank_angle: Si::from_si(1.5),
    };
    let engine = Engine::new("shop eight", 8, vee, None)
        .and_then(|engine| engine.built(built))
        .unwrap();
    let mut pen = Pen::new(1);
    let mut seen = 0;
    for measure in build_plan::MEASURES {
        for place in measure.places(&engine) {
            let fact = pen.write(reading(measure.id, place, "1"));
            assert_eq!(Fact::read(fact.text()), Ok(fact.clone()));
            assert!(
                matches!(fact.body(), Body::Reading(reading) if reading.place == Spot::Known(place))
            );
            seen += 1;
        }
    }
    assert!(seen > 1000, "{seen} places");
}

#[test]
fn an_engine_comes_back_from_its_description() {
    let Body::EngineDescribed(described) = sprayer() else {
        panic!()
    };
    let engine = described.engine().unwrap();
    assert_eq!(EngineDescribed::of(&engine), described);
    let built = Construction {
        valve_gear: ValveGear::TwinOverheadBucket,
        crankcase: Some(build_plan::engine::Crankcase::Halves),
        numbering: build_plan::engine::Numbering::BankByBank,
        intake_valves: 3,
        ..Construction::default()
    };
    let twin = engine.built(built).unwrap();
    let words = EngineDescribed::of(&twin);
    assert_eq!(words.built.len(), 4);
    assert_eq!(words.engine(), Ok(twin));
    for degrees in ["90°", "60°", "15°", "10.6°", "180°", "0.1°"] {
        let vee = EngineDescribed {
            name: "shop eight".to_owned(),
            cylinders: 8,
            layout: "vee".to_owned(),
            bank_angle: Some(degrees.to_owned()),
            mains: Some(5),
            built: Vec::new(),
        };
        assert_eq!(EngineDescribed::of(&vee.engine().unwrap()), vee);
    }
}

proptest! {
    #[test]
    fn what_is_written_reads_back_equal(fact in fact()) {
        prop_assert_eq!(Fact::read(fact.text()), Ok(fact));
    }

    #[test]
    fn every_body_is_one_line_of_json(body in body()) {
        let fact = Pen::new(1).write(body);
        prop_assert!(!fact.text().contains('\n'));
        prop_assert!(serde_json::from_str::<serde_json::Value>(fact.text()).is_ok());
    }

    #[test]
    fn a_text_of_a_later_version_survives(text in foreign_fact_text()) {
        let fact = Fact::read(&text).unwrap();
        prop_assert_eq!(fact.text(), text.as_str());
        prop_assert_eq!(Fact::read(fact.text()), Ok(fact));
    }

    #[test]
    fn no_text_makes_the_reader_panic(text in any::<String>()) {
        let _ = Fact::read(&text);
    }
}
