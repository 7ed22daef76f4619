//! The book of the sample, from the first evening to where it was left.

use build_journal::Journal;
use build_journal::fact::{
    Body, BoltLayout, BoltPulled, EngineDescribed, EventHappened, FastenerGroup, FastenerSheet,
    Mark, Note, Origin, PartListed, PartMoved, PartStage, ResultName, RunBegun, RunMark, RunMarked,
    Sort, Spot, StepMarked, Waived, Way, Wrench,
};
use build_journal::{OwnId, PartId, SittingId};
use build_plan::{At, Place};

use super::bench::{Pen, drawn};
use super::oil;
use super::rounds::{ROUNDS, type_the_limits};

/// The steps that are done when the measuring begins.
const DONE: &[&str] = &[
    "identify-engine",
    "drain",
    "engine-out",
    "strip-accessories",
    "measure-as-found",
    "valve-gear-out",
    "timing-off",
    "heads-off",
    "pan-off",
    "rods-out",
    "crank-out",
    "cam-out",
    "liners-out",
    "plugs-removed",
    "heads-stripped",
    "rough-clean",
    "crack-check",
];

/// The steps that the measuring did.
const MEASURED: &[&str] = &[
    "measure-block",
    "measure-crank",
    "measure-rods",
    "measure-pistons",
    "measure-heads",
    "measure-cam-and-pump",
];

/// The whole book.
pub fn book() -> Journal {
    let mut pen = Pen::new();
    let built = [
        ("valve_gear", "pushrod-flat-solid"),
        ("cam_drive", "gear"),
        ("block", "iron"),
        ("heads", "iron"),
        ("liners", "wet-top-flange"),
        ("pump_drive", "crank"),
        ("ignition", "magneto"),
    ];
    let described = EngineDescribed {
        name: "Orchard sprayer, a sample".to_owned(),
        cylinders: 4,
        layout: "inline".to_owned(),
        bank_angle: None,
        mains: Some(5),
        built: built.map(|(field, word)| (field, word.to_owned())).into(),
    };
    let engine = described.engine().unwrap();
    pen.write(Body::EngineDescribed(described));
    note(
        &mut pen,
        "A sample: an invented engine with invented numbers, to try things out on. Nothing in it is good for a real one.",
        None,
    );
    oil::as_found(&mut pen);
    steps(&mut pen, DONE);
    parts(&mut pen);

    pen.next_evening();
    pen.lay_out_the_tools();
    type_the_limits(&mut pen);
    let (bottom, top) = ROUNDS.split_at(ROUNDS.len() / 2);
    for round in bottom {
        round.go(&mut pen, &engine);
    }

    pen.next_evening();
    for round in top {
        round.go(&mut pen, &engine);
    }
    steps(&mut pen, MEASURED);
    oil::system(&mut pen);
    pen.write(Body::Waived(Waived {
        result: ResultName {
            sort: Sort::Measure,
            id: "pump-tip-clearance".to_owned(),
        },
        place: None,
        reason: "the pump has gears, no rotors".to_owned(),
    }));
    tighten_the_caps(&mut pen);
    pen.write(Body::EventHappened(EventHappened {
        event: "bores-honed".to_owned(),
        places: vec![Spot::Known(Place::of(At::Cylinder(3)))],
        words: Some("a scratch taken out after it was measured".to_owned()),
    }));
    let words = "Half a thou under on this one: try the half-thou shells from the other box.";
    note(&mut pen, words, Some(At::Main(4)));
    pen.journal
}

fn note(pen: &mut Pen, text: &str, at: Option<At>) {
    pen.write(Body::Note(Note {
        text: text.to_owned(),
        place: at.map(|at| Spot::Known(Place::of(at))),
        step: None,
    }));
}

fn steps(pen: &mut Pen, ids: &[&str]) {
    for id in ids {
        pen.write(Body::StepMarked(StepMarked {
            step: (*id).to_owned(),
            place: None,
            mark: Mark::Done,
            words: None,
        }));
    }
}

/// What is on its way, and what is here.
fn parts(pen: &mut Pen) {
    let wanted = [
        (
            "Main shells, half a thou under",
            "shells",
            PartStage::Ordered,
        ),
        ("Ring sets", "rings", PartStage::Here),
        ("Gasket set", "gaskets", PartStage::Here),
    ];
    for (number, (name, supply, stage)) in (0..).zip(wanted) {
        let part = PartId::from_random(drawn(0x9a47, number));
        pen.write(Body::PartListed(PartListed {
            part,
            name: name.to_owned(),
            supply: Some(supply.to_owned()),
            place: None,
            size: None,
            quantity: Some("1".to_owned()),
            supplier: None,
            price: None,
            lot: None,
        }));
        pen.write(Body::PartMoved(PartMoved {
            part,
            stage,
            promised: None,
            words: None,
        }));
    }
}

/// Ten main cap bolts for the trial fit: two laps of three done, then stopped.
fn tighten_the_caps(pen: &mut Pen) {
    let group = OwnId::from_random(drawn(0x6407, 0));
    let order: Vec<u32> = vec![5, 6, 3, 4, 7, 8, 1, 2, 9, 10];
    let sheet = pen.write(Body::FastenerGroup(FastenerGroup {
        own: group,
        label: "Main caps, for the trial fit".to_owned(),
        per: None,
        bolts: 10,
        size: None,
        lubricant: Some("engine oil".to_owned()),
        stages: ["30 ft-lb", "60 ft-lb", "85 ft-lb"]
            .map(str::to_owned)
            .to_vec(),
        source: Some("engine sheet, page 25".to_owned()),
        stale_with: Vec::new(),
        sheet: Box::new(FastenerSheet {
            holds: Some("mains".to_owned()),
            fastener: Some("plain".to_owned()),
            under_head: Some("engine oil".to_owned()),
            wrench: Some(Wrench {
                name: Some("half-inch wrench".to_owned()),
                low: "20".to_owned(),
                high: "150".to_owned(),
                unit: "ft-lb".to_owned(),
                step: None,
                grip: None,
            }),
            layout: Some(BoltLayout::Rows(vec![5, 5])),
            order: order.clone(),
            order_from: Some(Origin::Printed),
            stages_from: Some(Origin::Printed),
            ..FastenerSheet::default()
        }),
    }));
    let sitting = SittingId::from_random(drawn(0x5177, 0));
    let run = pen.write(Body::RunBegun(RunBegun {
        group,
        place: None,
        sheet,
        way: Way::Tighten,
        sitting,
    }));
    for lap in 1..=2 {
        for bolt in &order {
            pen.write(Body::BoltPulled(BoltPulled {
                run,
                bolt: *bolt,
                lap,
                sitting,
            }));
        }
    }
    pen.write(Body::RunMarked(RunMarked {
        run,
        mark: RunMark::Interrupted,
        bolt: None,
        lap: None,
        knew: None,
        words: Some("called to supper".to_owned()),
    }));
}
