//! What holds for the map of every engine: those of the steps' tests, and every
//! number of cylinders in every layout with every number of mains.

use std::collections::{BTreeMap, BTreeSet};

use assembly_core::quantity::Si;
use uom::si::f64::Angle;

use super::*;
use crate::engine::{Construction, Engine, Layout, Numbering, ValveGear};
use crate::measure::{MEASURES, Per};
use crate::place::{At, ValveSide};

fn every() -> Vec<Engine> {
    let vee = |degrees: f64| Layout::Vee {
        bank_angle: Angle::from_si(degrees.to_radians()),
    };
    let mut all: Vec<Engine> = crate::step::tests::engines().collect();
    for cylinders in 1..=16 {
        for layout in [Layout::Inline, vee(15.0), vee(90.0), Layout::Flat] {
            for mains in 2..=cylinders + 2 {
                for (nth, gear) in ValveGear::ALL.iter().enumerate() {
                    let valves = u8::try_from(nth % 3 + 1).unwrap();
                    let built = Construction {
                        valve_gear: *gear,
                        numbering: Numbering::ALL[nth % 2],
                        intake_valves: valves,
                        exhaust_valves: valves,
                        ..Construction::default()
                    };
                    let engine = Engine::new("test bed", cylinders, layout, Some(mains))
                        .and_then(|engine| engine.built(built));
                    // No vee of one cylinder, no flat engine of an odd number.
                    all.extend(engine);
                }
            }
        }
    }
    assert!(all.len() > 5000, "{}", all.len());
    all
}

fn sheet(height: f64) -> Frame {
    Frame {
        x: 0.0,
        y: 0.0,
        width: SHEET_WIDTH,
        height,
    }
}

fn no_two_overlap(spots: &[Spot], engine: &Engine) {
    for (nth, one) in spots.iter().enumerate() {
        for other in &spots[nth + 1..] {
            assert!(
                !one.frame.overlaps(&other.frame),
                "{one:?} {other:?} {engine:?}"
            );
        }
    }
}

#[test]
fn every_part_that_is_measured_is_on_the_map_once() {
    for engine in every() {
        let all = Part::all(&engine);
        let once: BTreeSet<Part> = all.iter().copied().collect();
        assert_eq!(once.len(), all.len(), "{engine:?}");
        let numbered = Per::ALL.iter().filter(|(per, _)| *per != Per::Engine);
        let of_the_plan: BTreeSet<Part> = numbered
            .flat_map(|(per, _)| per.parts(&engine))
            .map(Part::At)
            .collect();
        let others: BTreeSet<Part> = once.difference(&of_the_plan).copied().collect();
        let unnumbered = [
            Part::Crank,
            Part::Nose,
            Part::Flywheel,
            Part::Drive,
            Part::Pump,
            Part::Whole,
        ];
        assert_eq!(others, unnumbered.into(), "{engine:?}");
        assert!(of_the_plan.is_subset(&once));
        for measure in MEASURES.iter().filter(|one| one.when.applies_to(&engine)) {
            for at in measure.spots.per.parts(&engine) {
                assert!(once.contains(&Part::of(measure, at)), "{} {at}", measure.id);
            }
        }
    }
}

#[test]
fn the_overview_shows_every_part_in_its_region_and_none_on_another() {
    for engine in every() {
        let drawn = overview(&engine);
        let all = sheet(drawn.height);
        let spots: Vec<Spot> = (drawn.regions.iter())
            .flat_map(|region| region.spots.clone())
            .collect();
        let parts: Vec<Part> = spots.iter().map(|spot| spot.part).collect();
        assert_eq!(parts, Part::all(&engine), "{engine:?}");
        no_two_overlap(&spots, &engine);
        assert!(drawn.end_view.lies_in(&all));
        for (nth, region) in drawn.regions.iter().enumerate() {
            assert!(region.frame.lies_in(&all), "{region:?} {engine:?}");
            assert!(region.frame.width >= 60.0 && region.frame.height >= 60.0);
            assert!(!region.frame.overlaps(&drawn.end_view));
            for other in &drawn.regions[nth + 1..] {
                assert!(!region.frame.overlaps(&other.frame), "{engine:?}");
            }
            for spot in &region.spots {
                assert!(spot.frame.lies_in(&region.frame), "{spot:?} {engine:?}");
                assert!(spot.frame.width >= 13.0, "{spot:?} {engine:?}");
                assert_eq!(spot.part.region(&engine), Some(region.region));
            }
        }
    }
}

#[test]
fn a_region_zoomed_shows_its_parts_as_large_as_a_thumb() {
    for engine in every() {
        for region in Region::all(&engine) {
            let drawn = zoomed(&engine, region);
            let parts: BTreeSet<Part> = drawn.spots.iter().map(|spot| spot.part).collect();
            let own: BTreeSet<Part> = region.parts(&engine).into_iter().collect();
            assert_eq!(parts, own, "{region:?} {engine:?}");
            assert_eq!(drawn.spots.len(), own.len());
            no_two_overlap(&drawn.spots, &engine);
            for spot in &drawn.spots {
                assert!(spot.frame.lies_in(&sheet(drawn.height)), "{spot:?}");
                assert!(spot.frame.width >= 60.0 && spot.frame.height >= 60.0);
            }
            let heading_on_a_part = drawn.headings.iter().any(|heading| {
                let base = Frame {
                    x: 0.0,
                    y: heading.y - 14.0,
                    width: SHEET_WIDTH,
                    height: 14.0,
                };
                drawn.spots.iter().any(|spot| spot.frame.overlaps(&base))
            });
            assert!(!heading_on_a_part, "{region:?} {engine:?}");
        }
    }
}

/// The middles of the parts of an overview.
fn middles(engine: &Engine) -> BTreeMap<Part, (f64, f64)> {
    let drawn = overview(engine).regions.into_iter();
    drawn
        .flat_map(|region| region.spots)
        .map(|spot| (spot.part, spot.frame.middle()))
        .collect()
}

#[test]
fn the_front_is_at_the_top_and_each_bore_beside_its_crankpin() {
    for engine in every() {
        let at = middles(&engine);
        let y = |part: At| at[&Part::At(part)].1;
        let mains: Vec<f64> = (1..=engine.number_of_mains())
            .map(|main| y(At::Main(main)))
            .collect();
        assert!(mains.is_sorted_by(|a, b| a < b), "{engine:?}");
        assert!(at[&Part::Nose].1 < mains[0]);
        assert!(at[&Part::Flywheel].1 > *mains.last().unwrap());
        let pins = engine.layout().crankpins(engine.cylinders());
        for pin in 1..=pins {
            let pin_y = y(At::Crankpin(pin));
            assert!(mains[0] < pin_y && pin_y < *mains.last().unwrap());
            assert!(pin == 1 || y(At::Crankpin(pin - 1)) < pin_y);
        }
        for cylinder in 1..=engine.cylinders() {
            let pin_y = y(At::Crankpin(engine.crankpin_of(cylinder)));
            assert_eq!(y(At::Rod(cylinder)), pin_y);
            assert!((y(At::Cylinder(cylinder)) - pin_y).abs() < 12.0);
        }
    }
}

#[test]
fn the_first_bank_lies_left_of_the_crank_and_the_second_right() {
    for engine in every() {
        let at = middles(&engine);
        let axis = overview(&engine).axis.0;
        for cylinder in 1..=engine.cylinders() {
            let (bore, _) = at[&Part::At(At::Cylinder(cylinder))];
            let valve = At::Valve {
                cylinder,
                side: ValveSide::Intake,
                number: 1,
            };
            let (valve, _) = at[&Part::At(valve)];
            let (rod, _) = at[&Part::At(At::Rod(cylinder))];
            let outwards = match (engine.layout().banks(), engine.bank_of(cylinder)) {
                (2, 1) => [valve, bore, rod, axis],
                _ => [axis, rod, bore, valve],
            };
            // An intake valve may sit anywhere across its head, but beyond the bore.
            assert!(
                outwards.is_sorted_by(|a, b| a < b),
                "{cylinder}: {outwards:?} {engine:?}"
            );
        }
    }
}

#[test]
fn names_lead_back_to_what_they_name_and_are_told_apart() {
    for engine in every().into_iter().step_by(7) {
        let all = Part::all(&engine);
        let ids: BTreeSet<String> = all.iter().map(|part| part.id()).collect();
        let names: BTreeSet<String> = all.iter().map(ToString::to_string).collect();
        assert_eq!((ids.len(), names.len()), (all.len(), all.len()));
        for part in all {
            assert_eq!(Part::with_id(&engine, &part.id()), Some(part));
        }
        for region in Region::all(&engine) {
            assert_eq!(Region::with_id(&engine, &region.id()), Some(region));
        }
        assert_eq!(Region::with_id(&engine, "bores-9"), None);
        assert_eq!(Part::with_id(&engine, "main-99"), None);
    }
}

#[test]
fn the_whole_of_a_usual_engine_fits_a_phone() {
    let vee = Layout::Vee {
        bank_angle: Angle::from_si(1.5),
    };
    for (cylinders, layout) in [
        (1, Layout::Inline),
        (4, Layout::Inline),
        (6, Layout::Flat),
        (8, vee),
    ] {
        let engine = Engine::new("orchard sprayer", cylinders, layout, None).unwrap();
        let height = overview(&engine).height;
        assert!(height <= 560.0, "{cylinders}: {height}");
    }
}

#[test]
fn banks_lean_by_half_of_their_angle() {
    let degrees = |layout| {
        let engine = Engine::new("test bed", 4, layout, None).unwrap();
        let leaning = leaning(&engine).into_iter();
        leaning
            .map(|(bank, degrees)| (bank, degrees.round() as i32))
            .collect::<Vec<(u8, i32)>>()
    };
    let vee = Layout::Vee {
        bank_angle: Angle::from_si(60_f64.to_radians()),
    };
    assert_eq!(degrees(Layout::Inline), [(1, 0)]);
    assert_eq!(degrees(vee), [(1, -30), (2, 30)]);
    assert_eq!(degrees(Layout::Flat), [(1, -90), (2, 90)]);
}
