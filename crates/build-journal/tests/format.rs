//! The file format: its schema, and the files of every version there was.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

use assembly_core::measure::Verdict;
use build_journal::fact::{Body, Mark, Note, SizedPart};
use build_journal::fold::tightening::{State, tightenings};
use build_journal::fold::{ChosenPart, Conflict, OilView, Wishes, conflicts, valve_gear};
use build_journal::{BuildId, DeviceId, Fact, Journal, Stamper, export, fold, import};
use build_plan::At;
use build_plan::choice::MAIN_SHELLS;
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE};
use serde_json::Value;

const SCHEMA: &str = include_str!("../schema/thoubook-journal-1.schema.json");
const SPRAYER: &str = include_str!("../fixtures/orchard-sprayer-1.json");
const EVENING: &str = include_str!("../fixtures/shed-evening-1.json");
const ROD_CAPS: &str = include_str!("../fixtures/rod-caps-1.json");
const COVER: &str = include_str!("../fixtures/timing-cover-1.json");
const TWO_WRENCHES: &str = include_str!("../fixtures/two-wrenches-1.json");
const HOUR: &str = include_str!("../fixtures/first-hour-1.json");
const STEP_NOTE: &str = include_str!("../fixtures/step-note-1.json");
const TWO_DEVICES: &str = include_str!("../fixtures/two-devices-1.json");
const TWO_PLACINGS: &str = include_str!("../fixtures/two-placings-1.json");
const SIZES: &str = include_str!("../fixtures/sizes-listed-1.json");
const TOOLS_TRIED: &str = include_str!("../fixtures/tools-tried-1.json");
const WHERE: &str = include_str!("../fixtures/what-goes-where-1.json");
const ODDITIES: &str = include_str!("../fixtures/oddities-1.json");

/// What is wrong with a file by the schema; nothing when it is right.
fn complaints(file: &str) -> Vec<String> {
    let schema: Value = serde_json::from_str(SCHEMA).unwrap();
    let file: Value = serde_json::from_str(file).unwrap();
    jsonschema::validator_for(&schema)
        .unwrap()
        .iter_errors(&file)
        .map(|error| format!("{} at {}", error, error.instance_path()))
        .collect()
}

#[test]
fn the_schema_is_itself_right() {
    let schema: Value = serde_json::from_str(SCHEMA).unwrap();
    assert!(jsonschema::meta::is_valid(&schema));
}

#[test]
fn a_real_build_is_right_by_the_schema_and_comes_back_byte_for_byte() {
    assert_eq!(complaints(SPRAYER), Vec::<String>::new());
    let journal = import(SPRAYER.as_bytes()).unwrap().journal;
    assert_eq!(export(&journal), SPRAYER);
    assert_eq!(journal.set_aside().count(), 0);
    let later_kinds = |fact: &&Fact| matches!(fact.body(), Body::Unknown(_) | Body::Unreadable(_));
    assert_eq!(journal.facts().filter(later_kinds).count(), 0);
}

#[test]
fn a_real_build_folds_to_the_verdicts_it_was_made_for() {
    let build = fold(&import(SPRAYER.as_bytes()).unwrap().journal);
    assert_eq!(
        build.engine.as_ref().unwrap().engine.name(),
        "orchard sprayer"
    );
    let verdicts: Vec<Option<Verdict>> = build
        .mains
        .iter()
        .map(|main| main.standing.verdict())
        .collect();
    let (good, close, bad) = (Verdict::Good, Verdict::TooCloseToCall, Verdict::Bad);
    let meant = [good, good, bad, close, good].map(Some);
    assert_eq!(verdicts, meant);
    assert!(build.problems.is_empty() && build.elsewhere.is_empty());
    assert_eq!(build.struck.len(), 1);
    // The clock fell back a day, and the strip reading is still after the bores.
    let at_third = |measure| build.readings(measure, At::Main(3)).last().unwrap();
    let strip = at_third(&MAIN_OIL_CLEARANCE);
    assert_eq!(strip.reading.typed, ".0010");
    assert!(at_third(&MAIN_BEARING_BORE).fact < strip.fact);
    assert_eq!(build.notes.len(), 2);
}

#[test]
fn an_evening_with_every_other_kind_is_right_by_the_schema_and_comes_back() {
    assert_eq!(complaints(EVENING), Vec::<String>::new());
    let journal = import(EVENING.as_bytes()).unwrap().journal;
    assert_eq!(export(&journal), EVENING);
    let strange = |fact: &&Fact| matches!(fact.body(), Body::Unknown(_) | Body::Unreadable(_));
    assert_eq!(journal.facts().filter(strange).count(), 0);
    for kind in [
        "step-marked",
        "check-made",
        "event-happened",
        "waived",
        "tool-checked",
        "photo-taken",
        "own-measure",
        "own-step",
        "fastener-group",
        "part-listed",
        "part-moved",
        "work-ordered",
        "work-wanted",
        "work-returned",
        "work-moved",
    ] {
        assert!(EVENING.contains(&format!(r#""kind":"{kind}""#)), "{kind}");
    }
}

#[test]
fn the_evening_folds_to_what_happened() {
    let build = fold(&import(EVENING.as_bytes()).unwrap().journal);
    assert!(build.problems.is_empty(), "{:?}", build.problems);
    let stale: Vec<String> = (build.stale().iter())
        .map(|one| format!("{} at {}", one.proof.id(), one.at))
        .collect();
    // Only the second cylinder's ring gap: the honed bore's dirt was let pass.
    assert_eq!(stale, ["ring-end-gap at cylinder 2, top ring"]);
    let order = &build.bought.work[0];
    assert_eq!(order.lines[0].returned[0].within, Some(true));
    assert_eq!(order.promised, None);
    assert!(build.bought.parts[0].is_here());
    assert_eq!((build.photos.len(), build.plan.fasteners().count()), (1, 1));
    assert_eq!(build.clocks().len(), 1);
}

#[test]
fn what_goes_where_is_right_by_the_schema_and_can_be_chosen_again() {
    assert_eq!(complaints(WHERE), Vec::<String>::new());
    let journal = import(WHERE.as_bytes()).unwrap().journal;
    assert_eq!(export(&journal), WHERE);
    let strange = |fact: &&Fact| matches!(fact.body(), Body::Unknown(_) | Body::Unreadable(_));
    assert_eq!(journal.facts().filter(strange).count(), 0);
    let build = fold(&journal);
    assert!(build.problems.is_empty(), "{:?}", build.problems);
    let put = build.places.put_at(&MAIN_SHELLS, At::Main(2)).unwrap();
    assert_eq!(put.what, "upper “D”, lower “A”");
    assert_eq!(build.places.bench.len(), 5);
    let chosen = build.choose(&MAIN_SHELLS, Wishes::default()).unwrap();
    let parts = |at: usize| match &chosen.places[at].part {
        ChosenPart::Halves(halves) => halves.clone().map(|(_, name)| name),
        other => panic!("{other:?}"),
    };
    assert_eq!((parts(0)[1].as_str(), parts(1)[1].as_str()), ("B", "A"));
}

#[test]
fn sizes_that_a_sheet_lists_are_right_by_the_schema_and_are_asked_about() {
    assert_eq!(complaints(SIZES), Vec::<String>::new());
    let journal = import(SIZES.as_bytes()).unwrap().journal;
    assert_eq!(export(&journal), SIZES);
    for (from, to) in [
        (r#""of":"bores""#, r#""of":"rings""#),
        (r#""sizes":["0.016","0.032"]"#, r#""sizes":"0.016""#),
        (r#""origin":"part-sheet""#, r#""origin":"hearsay""#),
    ] {
        let wrong = SIZES.replacen(from, to, 1);
        assert!(!complaints(&wrong).is_empty(), "{from} as {to}");
        let build = fold(&import(wrong.as_bytes()).unwrap().journal);
        assert!(!build.problems.is_empty(), "{from} as {to}");
    }
    let build = fold(&journal);
    assert!(build.problems.is_empty(), "{:?}", build.problems);
    let sizes = |part| build.sizes_of(part).unwrap().sizes.len();
    assert_eq!(sizes(SizedPart::Bores), 3);
    assert_eq!(sizes(SizedPart::RodJournals), 0);
    assert_eq!(build.shell_sizes(&MAIN_SHELLS).len(), 4);
    let reading = journal.facts().next_back().unwrap().id();
    let asked = build.questions_of(reading);
    assert!(asked[0].to_string().contains("0.016 in undersize"));
}

#[test]
fn a_dragged_cover_with_a_crowfoot_is_right_by_the_schema_and_was_given_up() {
    assert_eq!(complaints(COVER), Vec::<String>::new());
    let journal = import(COVER.as_bytes()).unwrap().journal;
    assert_eq!(export(&journal), COVER);
    let all = tightenings(&journal);
    let cover = &all.groups[0];
    assert!(cover.sheet.wrong.is_empty(), "{:?}", cover.sheet.wrong);
    assert_eq!(cover.sheet.layout.places()[2], (2.25, -0.25));
    assert_eq!(cover.state(At::Engine), State::GivenUp);
    // 60 × 10 ÷ (10 + 1.5 × cos 45°) = 54.2
    let set = cover.part(At::Engine).unwrap().runs[0].number(0).unwrap();
    assert!(
        (set.0.parse::<f64>().unwrap() - 54.2).abs() < 0.6,
        "{set:?}"
    );
}

#[test]
fn a_group_with_two_wrenches_is_right_by_the_schema_and_each_lap_has_its_own() {
    assert_eq!(complaints(TWO_WRENCHES), Vec::<String>::new());
    let journal = import(TWO_WRENCHES.as_bytes()).unwrap().journal;
    assert_eq!(export(&journal), TWO_WRENCHES);
    let strange = |fact: &&Fact| matches!(fact.body(), Body::Unknown(_) | Body::Unreadable(_));
    assert_eq!(journal.facts().filter(strange).count(), 0);
    let all = tightenings(&journal);
    assert!(all.problems.is_empty(), "{:?}", all.problems);
    let shaft = &all.groups[0];
    assert_eq!(shaft.state(At::Engine), State::Tight);
    let run = &shaft.part(At::Engine).unwrap().runs[0];
    assert_eq!(run.number(0), Some(("120".to_owned(), "in-lb")));
    assert_eq!(run.number(1), Some(("35".to_owned(), "ft-lb")));
    assert!(run.takes_up(1).is_some());
    assert_eq!((all.listed.len(), all.wrenches().len()), (2, 2));
}

#[test]
fn a_tightening_is_right_by_the_schema_and_folds_to_what_happened() {
    assert_eq!(complaints(ROD_CAPS), Vec::<String>::new());
    let journal = import(ROD_CAPS.as_bytes()).unwrap().journal;
    assert_eq!(export(&journal), ROD_CAPS);
    let strange = |fact: &&Fact| matches!(fact.body(), Body::Unknown(_) | Body::Unreadable(_));
    assert_eq!(journal.facts().filter(strange).count(), 0);
    for kind in [
        "run-begun",
        "run-opened",
        "bolt-pulled",
        "run-marked",
        "bolts-renewed",
        "bolt-measured",
        "bolt-compared",
        "sealant-put-on",
        "joint-closed",
    ] {
        assert!(ROD_CAPS.contains(&format!(r#""kind":"{kind}""#)), "{kind}");
    }
    let all = tightenings(&journal);
    assert!(all.problems.is_empty(), "{:?}", all.problems);
    let [rods, pan] = &all.groups[..] else {
        panic!("{} groups", all.groups.len());
    };
    let part = rods.part(At::Rod(1)).unwrap();
    assert_eq!(part.state(), State::Tight);
    assert_eq!(
        (part.runs[0].interruptions, part.runs[0].stripes.len()),
        (1, 1)
    );
    // 1.6064 − 1.6004 = 6.0 thou, between 5.5 and 6.5 by the card.
    assert!((part.bolts[0].stretch().unwrap() - 6.0 * 0.000_025_4).abs() < 1e-12);
    assert_eq!(part.bolts[0].troubles(&rods.sheet, part.uses(0)), []);
    assert!(pan.sheet.wrong.is_empty(), "{:?}", pan.sheet.wrong);
    let pan = pan.part(At::Engine).unwrap();
    assert!(pan.sealants[0].closed.is_some());
    assert_eq!(pan.state(), State::NotYet);
}

#[test]
fn a_first_hour_with_every_kind_of_the_oil_is_right_by_the_schema_and_comes_back() {
    assert_eq!(complaints(HOUR), Vec::<String>::new());
    let journal = import(HOUR.as_bytes()).unwrap().journal;
    assert_eq!(export(&journal), HOUR);
    let strange = |fact: &&Fact| matches!(fact.body(), Body::Unknown(_) | Body::Unreadable(_));
    assert_eq!(journal.facts().filter(strange).count(), 0);
    for kind in [
        "oil-system",
        "gauge-read",
        "prime-tested",
        "running-begun",
        "running-ended",
        "running-row",
        "oil-noted",
        "compression-read",
        "leak-down-read",
    ] {
        assert!(HOUR.contains(&format!(r#""kind":"{kind}""#)), "{kind}");
    }
}

#[test]
fn the_first_hour_folds_to_what_happened() {
    let journal = import(HOUR.as_bytes()).unwrap().journal;
    let view = OilView::of(&journal);
    let build = &view.build;
    assert!(build.problems.is_empty(), "{:?}", build.problems);
    assert_eq!(view.inputs.lacks, []);
    let circuit = view.inputs.circuit.as_ref().unwrap();
    // Five mains, four rods, cam bearings, lifters, rockers.
    assert_eq!(circuit.leaks.leaks.len(), 12);
    let (blind, seeing): (Vec<_>, Vec<_>) =
        (build.oil.gauge.iter()).partition(|note| note.tells_nothing().is_some());
    assert_eq!((blind.len(), seeing.len()), (2, 2));
    let gear = valve_gear(&build.engine.as_ref().unwrap().engine);
    let progress = build.oil.progress(&gear.schedule());
    assert!((progress.in_band - 8.0).abs() < 1e-9 && (progress.to_go - 12.0).abs() < 1e-9);
    assert_eq!((build.oil.notes.len(), build.oil.rows.len()), (5, 2));
    assert!(view.trends.iter().all(|line| line.alarm().is_none()));
}

#[test]
fn a_file_of_oddities_opens_with_everything_in_it() {
    let imported = import(ODDITIES.as_bytes()).unwrap();
    assert_eq!(imported.doubles, 1);
    let journal = imported.journal;
    assert_eq!(journal.len(), 10);
    let aside: Vec<&str> = journal.set_aside().map(|(text, _)| text).collect();
    assert_eq!(aside.len(), 6, "{aside:?}");
    assert_eq!(journal.later_format(), Some(4));
    // Out again and back: nothing more changes, and every word is still there.
    let file = export(&journal);
    assert_eq!(export(&import(file.as_bytes()).unwrap().journal), file);
    for word in [
        "valve_gear",
        "1.50e+3",
        r#""mood":"good""#,
        r#"spread  over\ttwo lines \\ \"quoted\""#,
        "one text for this id",
        "another text for this id",
        "scribble",
        "<b>not</b>",
        "[2.4483,2.4482]",
        r#""value":2.4483"#,
    ] {
        let quoted = Value::from(word).to_string();
        let quoted = quoted.trim_matches('"');
        assert!(
            file.contains(word) || file.contains(quoted),
            "{word} is lost"
        );
    }
}

#[test]
fn a_note_keeps_the_step_it_was_written_on() {
    assert_eq!(complaints(STEP_NOTE), Vec::<String>::new());
    let journal = import(STEP_NOTE.as_bytes()).unwrap().journal;
    assert_eq!(export(&journal), STEP_NOTE);
    let build = fold(&journal);
    let steps: Vec<_> = build.notes.iter().map(|one| one.step.as_deref()).collect();
    assert_eq!(steps, [Some("crank-in"), Some("gravity-off")]);
    let wrong = STEP_NOTE.replacen(r#""step":"crank-in""#, r#""step":7"#, 1);
    assert!(!complaints(&wrong).is_empty());
    let build = fold(&import(wrong.as_bytes()).unwrap().journal);
    assert!(
        build.problems[0].text.contains("“step”"),
        "{:?}",
        build.problems
    );
}

#[test]
fn what_two_devices_had_in_view_is_right_by_the_schema_and_comes_back() {
    assert_eq!(complaints(TWO_DEVICES), Vec::<String>::new());
    let journal = import(TWO_DEVICES.as_bytes()).unwrap().journal;
    assert_eq!(export(&journal), TWO_DEVICES);
    assert!(TWO_DEVICES.contains(r#""kind":"readings-stand""#));
    for (from, to) in [
        (r#""replaces":[]"#, r#""replaces":["first"]"#),
        (r#""replaces":[]"#, r#""replaces":7"#),
        (r#""settles":true"#, r#""settles":"yes""#),
        (r#""readings":["#, r#""reading":["#),
    ] {
        let wrong = TWO_DEVICES.replacen(from, to, 1);
        assert!(!complaints(&wrong).is_empty(), "{from} as {to}");
        let build = fold(&import(wrong.as_bytes()).unwrap().journal);
        let field = from.split('"').nth(1).unwrap();
        let said = &build.problems[0].text;
        assert!(said.contains(&format!("“{field}”")), "{said}");
    }
}

#[test]
fn two_devices_are_asked_about_what_neither_saw_of_the_other_and_nothing_else() {
    let journal = import(TWO_DEVICES.as_bytes()).unwrap().journal;
    let build = fold(&journal);
    assert!(build.problems.is_empty(), "{:?}", build.problems);
    let found = conflicts(&journal);
    // The step was settled and the readings stand: the check and the engine are open.
    let [
        Conflict::Engines { said },
        Conflict::Checks { check, parts, .. },
    ] = &found[..]
    else {
        panic!("{found:?}");
    };
    assert_eq!(said.len(), 2);
    assert_eq!(check.id, "clean");
    assert_eq!(parts[..], [At::Engine]);
    // Taking apart was decided against, so the first word and its day hold.
    let step = build.plan.step("crank-in").unwrap();
    let marked = build.record.marked(step, At::Engine).unwrap();
    assert_eq!(marked.mark, Mark::Done);
    let done = journal.facts().nth(3).unwrap();
    assert!(done.text().contains("caps on for good"));
    assert_eq!(marked.done, Some(done.id()));
    assert_eq!(build.stale(), []);
}

#[test]
fn parts_placed_in_two_ways_are_right_by_the_schema_asked_about_and_settled() {
    assert_eq!(complaints(TWO_PLACINGS), Vec::<String>::new());
    let journal = import(TWO_PLACINGS.as_bytes()).unwrap().journal;
    assert_eq!(export(&journal), TWO_PLACINGS);
    let wrong = TWO_PLACINGS.replacen(r#""settles":true"#, r#""settles":"yes""#, 1);
    assert!(!complaints(&wrong).is_empty());
    let build = fold(&journal);
    assert!(build.problems.is_empty(), "{:?}", build.problems);
    // Of the half-shells it was decided, of the pistons not yet.
    let found = conflicts(&journal);
    assert!(
        matches!(&found[..], [Conflict::Placings { choice, said }]
            if choice.id == "pistons" && said.len() == 2),
        "{found:?}"
    );
    let put = build.places.put_at(&MAIN_SHELLS, At::Main(2)).unwrap();
    assert_eq!(put.what, "upper “D”, lower “A”");
    assert_eq!(put.fact, journal.facts().nth(3).unwrap().id());
}

#[test]
fn a_file_of_the_first_version_says_nothing_of_what_was_in_view_and_asks_nothing() {
    let old = TWO_DEVICES.lines().map(|line| {
        let cut = line.find(r#","replaces""#);
        cut.map_or_else(|| line.to_owned(), |cut| format!("{}}},", &line[..cut]))
    });
    let old: Vec<String> = old
        .filter(|line| !line.contains("readings-stand"))
        .collect();
    let old = old.join("\n").replace("},\n],", "}\n],");
    let journal = import(old.as_bytes()).unwrap().journal;
    assert_eq!(journal.set_aside().count(), 0);
    assert!(journal.facts().all(|fact| fact.in_view().is_none()));
    let found = conflicts(&journal);
    assert!(
        matches!(&found[..], [Conflict::Readings { .. }]),
        "{found:?}"
    );
}

#[test]
fn oddities_are_shown_and_stop_nothing() {
    let build = fold(&import(ODDITIES.as_bytes()).unwrap().journal);
    assert_eq!(build.engine.as_ref().unwrap().engine.cylinders(), 8);
    assert_eq!(build.mains.len(), 5);
    let unknown: Vec<&str> = build.unknown.iter().map(|one| one.kind.as_str()).collect();
    assert_eq!(unknown, ["photo", "reading"]);
    assert_eq!(build.elsewhere.len(), 2);
    let mut journals = build.readings(&MAIN_JOURNAL_DIAMETER, At::Main(1));
    assert!(journals.any(|taken| taken.value.is_err()));
    let said: Vec<&str> = build.problems.iter().map(|one| one.text.as_str()).collect();
    assert_eq!(said.len(), 3, "{said:?}");
    assert!(said[0].contains("“valve_gear” is “{\"of\":\"tomorrow\"}”"));
    assert!(said[1].contains("“typed” is missing"));
    assert!(said[2].contains("comes after it"));
}

#[test]
fn the_schema_finds_what_is_wrong() {
    let note = |text: &str| {
        let id = Stamper::new().stamp(1_773_510_000_000, 1);
        let device = DeviceId::from_random(1);
        let body = Body::Note(Note {
            text: text.to_owned(),
            place: None,
            step: None,
        });
        let mut journal = Journal::new(BuildId::from_random(1));
        journal.take(Fact::new(id, device, 0, body));
        export(&journal)
    };
    let right = note("oil");
    assert!(complaints(&right).is_empty());
    for (from, to) in [
        ("thoubook-journal", "other"),
        (r#""version":1"#, r#""version":"1""#),
        (r#""facts":"#, r#""fact":"#),
        ("-7000-", "-4000-"),
        (r#""clock":0"#, r#""clock":0.5"#),
        (r#""text":"oil""#, r#""text":5"#),
        (r#""text":"oil""#, r#""words":"oil""#),
        (r#""kind":"note""#, r#""kind":"reading""#),
        (r#""set_aside":[]"#, r#""set_aside":[7]"#),
    ] {
        let wrong = right.replacen(from, to, 1);
        assert_ne!(wrong, right, "{from}");
        assert!(
            !complaints(&wrong).is_empty(),
            "{from} as {to} went through"
        );
    }
    for (from, to) in [
        (r#""mark":"done""#, r#""mark":"nearly""#),
        (r#""outcome":"good""#, r#""outcome":"so-so""#),
        (r#""places":[{"#, r#""places":{"#),
        (r#""reason":"#, r#""because":"#),
        (r#""bytes":"#, r#""byte":"#),
        (r#""bolts":1"#, r#""bolts":-1"#),
        (r#""stages":["#, r#""stages":[9,"#),
        (r#""stage":"here""#, r#""stage":"nowhere""#),
        (r#""what":"#, r#""whatever":"#),
        (r#""rows":[2]"#, r#""rows":[-2]"#),
        (r#""low":"10","#, ""),
        (r#""order_from":"printed""#, r#""order_from":"hearsay""#),
        (r#""way":"tighten""#, r#""way":"sideways""#),
        (r#""lap":1,"#, ""),
        (r#""mark":"lap-restarted""#, r#""mark":"nearly""#),
        (r#""knew":"lap""#, r#""knew":"half""#),
        (r#""state":"free""#, r#""state":"bent""#),
        (r#""close_by":"#, r#""close":"#),
        (r#","sealant":"#, r#","sealed":"#),
        (r#""bolts":[2,5]"#, r#""bolts":2"#),
        (r#"[225,-25]"#, r#"[225]"#),
        (r#""turned":"45""#, r#""turned":45"#),
        (r#""wrench_length":"10 in","#, ""),
    ] {
        let files = [EVENING, ROD_CAPS, COVER];
        let file = files.into_iter().find(|file| file.contains(from)).unwrap();
        let wrong = file.replacen(from, to, 1);
        assert_ne!(wrong, file, "{from}");
        let wrong =
            serde_json::from_str::<Value>(&wrong).is_err() || !complaints(&wrong).is_empty();
        assert!(wrong, "{from} as {to} went through");
    }
    for (from, to) in [
        (r#""pressure":{"typed""#, r#""pressure":{"number""#),
        (r#""band":"within""#, r#""band":"fast""#),
        (r#""seconds":480"#, r#""seconds":-480"#),
        (r#""what":"filter-cut""#, r#""what":"filter-eaten""#),
        (r#""state":"wet""#, r#""state":"damp""#),
        (r#""groove":"upper""#, r#""groove":"lower""#),
        (r#""held":"#, r#""holds":"#),
    ] {
        let wrong = HOUR.replacen(from, to, 1);
        assert_ne!(wrong, HOUR, "{from}");
        assert!(
            !complaints(&wrong).is_empty(),
            "{from} as {to} went through"
        );
    }
    // What a later version adds is no mistake.
    let later = right.replace(r#""kind":"note""#, r#""kind":"photo""#);
    assert!(complaints(&later).is_empty());
    let later = right.replace(
        r#""kind":"note","text":"oil""#,
        r#""format":2,"kind":"note""#,
    );
    assert!(complaints(&later).is_empty());
}

#[test]
fn tools_tried_out_and_readings_brought_to_20_degrees_come_back_and_count() {
    assert_eq!(complaints(TOOLS_TRIED), Vec::<String>::new());
    let journal = import(TOOLS_TRIED.as_bytes()).unwrap().journal;
    assert_eq!(export(&journal), TOOLS_TRIED);
    let build = fold(&journal);
    let names: Vec<&str> = build.tools.iter().map(|one| one.name.as_str()).collect();
    assert_eq!(
        names,
        ["micrometer (2 to 3 in)", "Micrometer", "bore gauge"]
    );
    let (_, shows) = build.tools[0].tried().unwrap();
    // Differences 0, 1, −1, 0, 2 tenths: √(5.2 ÷ 4) = 1.14 tenths.
    assert!((shows.repeat - 1.140e-4 * 0.0254).abs() < 1e-9);
    assert!(build.tools[1].tried().is_none());
    assert!(
        build.problems[0].text.contains("take 2 more"),
        "{:?}",
        build.problems
    );
    let warmth = build.warmth_of(&MAIN_OIL_CLEARANCE, At::Main(1)).unwrap();
    assert!(warmth.is_corrected() && warmth.warning.is_some());
    for (right, wrong, field) in [
        (r#""answer":"to-20""#, r#""answer":"to-30""#, "answer"),
        (
            r#""readings":["62,20","62,21","62,20"]"#,
            r#""readings":[62.2]"#,
            "readings",
        ),
        (r#""mark":"2 to 3 in""#, r#""mark":23"#, "mark"),
    ] {
        let file = TOOLS_TRIED.replacen(right, wrong, 1);
        assert!(!complaints(&file).is_empty(), "{field}");
        let build = fold(&import(file.as_bytes()).unwrap().journal);
        let named =
            |problem: &build_journal::fold::Problem| problem.text.contains(&format!("“{field}”"));
        assert!(build.problems.iter().any(named), "{:?}", build.problems);
    }
}
