//! What the sample says: one main bad, one that can't be told, one bore that no
//! longer counts, and everything else that was measured good.

use std::collections::BTreeSet;
use std::path::Path;

use assembly_core::measure::Verdict;
use build_journal::fold::{Build, FitStanding, Missing, OilView, TrendLine, conflicts};
use build_journal::{export, fold, import, sample};
use build_plan::At;
use build_plan::proof::Proof;

use super::book::book;
use super::rounds::ROUNDS;

fn path() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../static/sample-engine.json")
}

fn sample_build() -> Build {
    fold(&book())
}

#[test]
fn the_file_of_the_page_is_what_is_made_here() {
    let made = export(&book());
    if std::env::var_os("THOUBOOK_WRITE_SAMPLE").is_some() {
        std::fs::write(path(), &made).unwrap();
    }
    let kept = std::fs::read_to_string(path()).unwrap();
    assert!(
        kept == made,
        "static/sample-engine.json is not what the sample makes: write it anew with THOUBOOK_WRITE_SAMPLE=1"
    );
}

#[test]
fn it_is_read_back_whole_and_taken_in_twice_it_is_there_once() {
    let made = book();
    let read = import(export(&made).as_bytes()).unwrap();
    assert_eq!(read.doubles, 0);
    assert_eq!(read.journal, made);
    let mut twice = made.clone();
    let came_in = twice.merge(&read.journal).unwrap();
    assert_eq!((came_in.facts.len(), twice.len()), (0, made.len()));
    assert!(sample::is_sample(twice.build()));
}

#[test]
fn nothing_in_it_is_left_unread_or_in_conflict() {
    let build = sample_build();
    assert_eq!(build.problems, []);
    assert!(build.unknown.is_empty() && build.elsewhere.is_empty() && build.struck.is_empty());
    assert_eq!(conflicts(&book()), []);
    let engine = &build.engine.as_ref().unwrap().engine;
    assert_eq!(engine.name(), "Orchard sprayer, a sample");
    assert_eq!((engine.cylinders(), engine.number_of_mains()), (4, 5));
}

#[test]
fn one_main_is_bad_and_one_cannot_be_told() {
    let build = sample_build();
    let verdicts: Vec<_> = (build.mains.iter())
        .map(|main| main.standing.verdict())
        .collect();
    let (good, close, bad) = (Verdict::Good, Verdict::TooCloseToCall, Verdict::Bad);
    assert_eq!(verdicts, [good, close, good, bad, good].map(Some));
    assert!(build.mains.iter().all(|main| main.findings.is_empty()));
}

#[test]
fn one_bore_no_longer_counts() {
    let build = sample_build();
    let stale: BTreeSet<(&str, At)> = (build.stale().iter())
        .filter(|one| matches!(one.proof, Proof::Measure(_)))
        .map(|one| (one.proof.id(), one.at))
        .collect();
    let promised = ["bore", "bore-taper", "bore-out-of-round", "piston-to-wall"];
    let promised = promised.map(|id| (id, At::Cylinder(3)));
    assert_eq!(stale, promised.into());
}

#[test]
fn its_oil_screens_have_something_to_show() {
    let view = OilView::of(&book());
    assert_eq!(view.inputs.lacks, []);
    assert!(view.inputs.circuit.is_some() && view.inputs.pump.is_some());
    assert!(
        view.inputs.cylinder.is_some(),
        "{:?}",
        view.inputs.cylinder_lacks
    );
    let oil = &view.build.oil;
    // The rows of the run say the pressure, too.
    assert_eq!(
        (oil.gauge.len(), oil.primes.len(), oil.rows.len()),
        (7, 1, 3)
    );
    assert_eq!(oil.notes.len(), 2);
    let points = |line: &TrendLine| line.points.len() > 1;
    assert!(view.trends.iter().any(points), "a trend has points");
}

#[test]
fn everything_else_that_was_measured_is_good() {
    let build = sample_build();
    let mut judged = 0;
    for fit in build.fits() {
        match &fit.standing {
            FitStanding::Judged(said) => {
                judged += 1;
                assert_eq!(
                    said.verdict,
                    Verdict::Good,
                    "{} {} {:?}",
                    fit.measure.id,
                    fit.at,
                    fit.extent.as_ref().map(|(a, b)| (
                        a.estimate().value(),
                        b.estimate().value(),
                        a.estimate().deviation()
                    ))
                );
            }
            // Sizes have no limits of their own: what goes by them has.
            FitStanding::Open(missing) => {
                assert_eq!(*missing, [Missing::Limits], "{} {}", fit.measure.id, fit.at);
                let sizes = [
                    "main-journal-diameter",
                    "main-bearing-bore",
                    "rod-journal-diameter",
                    "rod-bearing-bore",
                    "piston-diameter",
                    "bore",
                ];
                assert!(sizes.contains(&fit.measure.id), "{}", fit.measure.id);
            }
        }
    }
    assert!(judged > 140, "{judged}");
    for rod in &build.rods {
        assert_eq!(rod.fit.standing.verdict(), Some(Verdict::Good));
    }
    let read: BTreeSet<&str> = build.fits().map(|fit| fit.measure.id).collect();
    for round in ROUNDS {
        assert!(read.contains(round.measure), "{}", round.measure);
    }
}
