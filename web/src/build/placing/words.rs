//! What goes to a place, in words.

use assembly_core::moves::shells::MadeSize;
use assembly_core::quantity::{Unit, show};
use assembly_core::typing_sense::size_words;
use build_journal::fact::{BenchSide, PartOnBench, PartsPlaced, Spot};
use build_journal::fold::ChosenPart;
use build_plan::At;
use build_plan::choice::{Choice, choice};

use crate::kit::judged::capital;

/// What goes to a place, so that it is understood without the choice beside it.
#[must_use]
pub fn goes(choice: &Choice, part: &ChosenPart, unit: &'static Unit) -> String {
    let one = choice.part.0;
    match part {
        ChosenPart::Stays => format!("its {one} stays"),
        // A rod is told by its cylinder: “the rod of rod 2” is no help.
        ChosenPart::Of(At::Rod(cylinder)) => format!("the {one} of {}", At::Cylinder(*cylinder)),
        ChosenPart::Of(at) => format!("the {one} of {at}"),
        ChosenPart::OnBench(_, name) => format!("{one} “{name}” off the bench"),
        ChosenPart::Halves([(_, upper), (_, lower)]) => {
            format!("upper “{upper}”, lower “{lower}”")
        }
        ChosenPart::Bought(size) => format!("a new {one} of {}", show(*size, None, unit)),
    }
}

/// The side of a half-shell.
#[must_use]
pub const fn side(side: BenchSide) -> &'static str {
    match side {
        BenchSide::Upper => "upper only",
        BenchSide::Lower => "lower only",
        BenchSide::Either => "upper or lower",
    }
}

/// The size mark of a half-shell, by the sizes that its sheet lists, if it does.
#[must_use]
pub fn steps(steps: i32, made: &[MadeSize]) -> String {
    let listed = made.iter().find(|one| one.steps == steps && steps != 0);
    if let Some(size) = listed {
        let side = if steps > 0 {
            "under"
        } else {
            "extra clearance"
        };
        return format!("{} {side}", size_words(size.size));
    }
    match steps {
        0 => "standard".to_owned(),
        1 => "1 step thicker".to_owned(),
        -1 => "1 step thinner".to_owned(),
        more if more > 0 => format!("{more} steps thicker"),
        fewer => format!("{} steps thinner", fewer.unsigned_abs()),
    }
}

/// A part on the bench, as the log tells of it.
#[must_use]
pub fn on_bench_words(part: &PartOnBench) -> String {
    let what = choice(&part.choice).map_or("part", |choice| choice.part.0);
    let size = if part.size.chars().any(char::is_alphabetic) {
        part.size.clone()
    } else {
        format!("{} {}", part.size, part.unit)
    };
    let mut said = vec![format!(
        "{} “{}” on the bench: {size}",
        capital(what),
        part.name
    )];
    said.extend(part.side.map(|one| side(one).to_owned()));
    said.extend(part.steps.map(|mark| steps(mark, &[])));
    said.extend(part.make.clone());
    if let Some(Spot::Known(place)) = &part.place {
        said.push(format!("in {place} now"));
    }
    if part.tool.is_none() {
        said.push("not measured, by the box".to_owned());
    }
    said.join(", ")
}

/// A fact of these kinds in the words of the log.
#[must_use]
pub fn placed_words(placed: &PartsPlaced) -> String {
    let label = choice(&placed.choice).map_or(placed.choice.as_str(), |choice| choice.label);
    let all: Vec<String> = (placed.placed.iter())
        .map(|one| {
            let place = match &one.place {
                Spot::Known(place) => place.to_string(),
                Spot::Unknown(_) => "a place not known here".to_owned(),
            };
            format!("{place}: {}", one.what)
        })
        .collect();
    format!("Decided {label}: {}", all.join("; "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use assembly_core::quantity::unit;
    use build_journal::PartId;
    use build_journal::fact::PlacedPart;
    use build_plan::Place;
    use build_plan::choice::{LASH_SHIMS, MAIN_SHELLS, PISTONS_TO_BORES, RODS_TO_PINS};

    #[test]
    fn what_goes_to_a_place_is_said_by_its_mark() {
        let mm = unit("mm").unwrap();
        let part = |name: &str| (PartId::from_random(1), name.to_owned());
        let halves = ChosenPart::Halves([part("A"), part("B")]);
        assert_eq!(goes(&MAIN_SHELLS, &halves, mm), "upper “A”, lower “B”");
        let of = ChosenPart::Of(At::Cylinder(3));
        assert_eq!(goes(&PISTONS_TO_BORES, &of, mm), "the piston of cylinder 3");
        let of = ChosenPart::Of(At::Rod(3));
        assert_eq!(goes(&RODS_TO_PINS, &of, mm), "the rod of cylinder 3");
        let bought = ChosenPart::Bought(2.75e-3);
        let said = goes(&LASH_SHIMS, &bought, mm);
        assert!(said.starts_with("a new shim of 2.75"), "{said}");
    }

    #[test]
    fn a_size_mark_is_said_as_the_sheet_lists_it() {
        let made = [MadeSize {
            steps: 1,
            size: 0.025e-3,
        }];
        assert_eq!(steps(1, &made), "0.025 mm under");
        assert_eq!(steps(2, &made), "2 steps thicker");
        assert_eq!(steps(0, &made), "standard");
        let extra = MadeSize {
            steps: -1,
            size: -0.001 * 0.0254,
        };
        assert_eq!(steps(-1, &[extra]), "0.001 in extra clearance");
    }

    #[test]
    fn the_log_says_what_went_where() {
        let placed = PartsPlaced {
            choice: "pistons".to_owned(),
            placed: vec![PlacedPart {
                place: Spot::Known(Place::of(At::Cylinder(1))),
                what: "the piston of cylinder 3".to_owned(),
                parts: Vec::new(),
                from: None,
                gives: None,
            }],
        };
        assert_eq!(
            placed_words(&placed),
            "Decided which piston goes in which bore: cylinder 1: the piston of cylinder 3"
        );
    }

    #[test]
    fn a_half_on_the_bench_is_told_with_all_that_was_said_of_it() {
        let part = PartOnBench {
            part: PartId::from_random(1),
            choice: "main-shells".to_owned(),
            name: "A".to_owned(),
            size: "1.9902".to_owned(),
            unit: "mm".to_owned(),
            tool: None,
            setting: None,
            side: Some(BenchSide::Upper),
            steps: Some(-1),
            make: Some("trimetal".to_owned()),
            place: None,
        };
        assert_eq!(
            on_bench_words(&part),
            "Half-shell “A” on the bench: 1.9902 mm, upper only, 1 step thinner, trimetal, not measured, by the box"
        );
    }
}
