//! Which part goes where: from readings and parts on the bench to what stands
//! there, and what another part makes stale.

mod moved;
mod shells;
mod shims;

use super::written::{Written, book};
use super::*;
use crate::fact::{Body, EngineDescribed, PartOnBench};
use crate::id::{FactId, PartId, ToolId};
use assembly_core::quantity::Si;
use build_plan::choice::Choice;
use build_plan::measure::VALVE_LASH;
use build_plan::{Measure, Place};

book! {
    /// A small engine in line, measured in millimetres.
    Book
}

const MICROMETER: u128 = 1;
const BLADES: u128 = 2;

impl Book {
    pub(super) fn new(cylinders: u32, built: Vec<(&'static str, String)>) -> Self {
        let engine = Body::EngineDescribed(EngineDescribed {
            name: "shed twin".to_owned(),
            cylinders,
            layout: "inline".to_owned(),
            bank_angle: None,
            mains: Some(2),
            built,
        });
        Self(Written::of(
            engine,
            &[
                (MICROMETER, "outside-micrometer-proved"),
                (BLADES, "feeler-blades"),
            ],
        ))
    }

    pub(super) fn read(&mut self, measure: &Measure, place: Place, typed: &str) -> FactId {
        let tool = if measure.id == VALVE_LASH.id {
            BLADES
        } else {
            MICROMETER
        };
        self.reads((measure.id, place), (typed, "mm"), (tool, None), None)
    }

    pub(super) fn limits(&mut self, measure: &Measure, low: Option<&str>, high: Option<&str>) {
        self.limit(measure.id, (low, high), "mm");
    }

    fn part(&mut self, choice: &Choice, number: u128, name: &str, size: &str) -> PartOnBench {
        let part = PartOnBench {
            part: PartId::from_random(number),
            choice: choice.id.to_owned(),
            name: name.to_owned(),
            size: size.to_owned(),
            unit: "mm".to_owned(),
            tool: Some(ToolId::from_random(MICROMETER)),
            setting: None,
            side: None,
            steps: None,
            make: None,
            place: None,
        };
        self.write(Body::PartOnBench(part.clone()));
        part
    }

    pub(super) fn build(&self) -> Build {
        let build = self.state().clone();
        assert!(build.problems.is_empty(), "{:?}", build.problems);
        build
    }

    /// What is chosen without any wish.
    fn choose(&self, choice: &'static Choice) -> Chosen {
        self.build().choose(choice, Wishes::default()).unwrap()
    }

    /// What is missing for a choice, in words.
    fn missing(&self, choice: &'static Choice) -> Vec<String> {
        let missing = self.build().choose(choice, Wishes::default());
        missing
            .unwrap_err()
            .iter()
            .map(ToString::to_string)
            .collect()
    }

    /// Accepts what was chosen, as the screen does.
    fn accept(&mut self, chosen: &Chosen) -> FactId {
        let words = |_: &ChosenPlace| ("in words".to_owned(), "0.04 mm".to_owned());
        let placed = self.build().accepted(chosen, words);
        self.write(Body::PartsPlaced(placed))
    }
}

fn millimetres(place: &ChosenPlace) -> f64 {
    (place.gives.value().to_si() * 1e6).round() / 1e3
}
