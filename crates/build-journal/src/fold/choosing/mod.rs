//! Which part goes where, from what was measured on this build and what lies on
//! the bench.

mod gathering;
mod lacking;

use std::sync::Arc;

use assembly_core::choose::parts_to_places::Places;
use assembly_core::choose::shells::OddHalf;
use assembly_core::measure::{Assessment, Sources, Window};
use build_plan::choice::{Choice, ChosenBy};
use build_plan::{At, Place};
use uom::si::f64::Length;

use self::gathering::Gathering;
pub use self::lacking::Lacking;
use super::build::Build;
use super::register::{Role, Value};
use crate::fact::{PartsPlaced, PlacedPart, Spot};
use crate::id::PartId;

/// What is wished of a choice.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub struct Wishes {
    /// Where the odd halves of mixed pairs go.
    pub odd: OddHalf,
    /// The step in which shims are sold; none when none can be bought.
    pub sold_in: Option<Length>,
}

/// Which part goes where.
#[derive(Clone, PartialEq, Debug)]
pub struct Chosen {
    /// The choice.
    pub choice: &'static Choice,
    /// What goes where, place by place.
    pub places: Vec<ChosenPlace>,
    /// The limits it was held against; their middle is aimed at.
    pub window: Window,
    /// The causes of error behind it.
    pub sources: Arc<Sources>,
    /// Parts whose size is the box's and was not measured, by their names: what
    /// they give has no verdict.
    pub not_measured: Vec<String>,
}

/// What goes to a place.
#[derive(Clone, PartialEq, Debug)]
pub struct ChosenPlace {
    /// The place.
    pub at: At,
    /// The part.
    pub part: ChosenPart,
    /// What it gives there: the least that the readings say.
    pub gives: Value,
    /// How that stands against the limits; none when a size was not measured.
    pub said: Option<Assessment>,
}

/// A part that goes to a place.
#[derive(Clone, PartialEq, Debug)]
pub enum ChosenPart {
    /// What is there stays there.
    Stays,
    /// What was measured at another place.
    Of(At),
    /// A part off the bench, with what is marked on it.
    OnBench(PartId, String),
    /// Two half-shells: the one in block or rod, and the one in the cap.
    Halves([(PartId, String); 2]),
    /// One that has to be bought, of this size, m.
    Bought(f64),
}

impl Build {
    /// Which part goes where, so that the worst miss of the middle of the limits
    /// is the least there is.
    ///
    /// # Errors
    /// All that is missing for it, each as a sentence.
    pub fn choose(&self, choice: &'static Choice, wishes: Wishes) -> Result<Chosen, Vec<Lacking>> {
        let engine = self.engine.as_ref().map(|described| &described.engine);
        let Some(engine) = engine.filter(|engine| !choice.places(engine).is_empty()) else {
            return Err(vec![Lacking::NoSuchParts]);
        };
        let mut gathering = Gathering::new(self, engine);
        let limits = gathering.limits(choice);
        let places = choice.places(engine);
        let found = match choice.by {
            ChosenBy::Shells { housing, journal } => {
                gathering.shells(choice, (housing, journal), &places, wishes.odd, limits)
            }
            ChosenBy::Shafts { hole, shaft } => {
                let of = (hole, Role::Bore, shaft, Role::Journal);
                gathering.matched(choice, of, Places::Holes, &places, limits)
            }
            ChosenBy::Holes { shaft, hole } => {
                let of = (shaft, Role::Journal, hole, Role::Bore);
                gathering.matched(choice, of, Places::Shafts, &places, limits)
            }
            ChosenBy::Shims => gathering.shims(choice, &places, wishes.sold_in, limits),
        };
        let missing = gathering.all_missing();
        let (Some(found), Some((window, _)), true) = (found, limits, missing.is_empty()) else {
            return Err(missing);
        };
        let measured = gathering.not_measured.is_empty();
        let places = found
            .into_iter()
            .map(|(at, part, gives)| {
                let value = gives.estimate();
                let dangerous = choice.measure.dangerous;
                let said = measured.then(|| {
                    Assessment::judged((value, value), &window, dangerous, &gathering.sources)
                });
                ChosenPlace {
                    at,
                    part,
                    gives,
                    said,
                }
            })
            .collect();
        Ok(Chosen {
            choice,
            places,
            window,
            sources: gathering.sources,
            not_measured: gathering.not_measured,
        })
    }

    /// A choice as it is written down when it is accepted; `words` says what goes
    /// to a place, and what it gives there.
    #[must_use]
    pub fn accepted(
        &self,
        chosen: &Chosen,
        words: impl Fn(&ChosenPlace) -> (String, String),
    ) -> PartsPlaced {
        let spot = |at: At| Spot::Known(Place::of(at));
        let sits = |at: At| {
            let part = self.places.sits_at(chosen.choice, at);
            part.map(|part| part.listed.part).into_iter().collect()
        };
        let placed = chosen.places.iter().map(|one| {
            let (parts, from): (Vec<PartId>, Option<At>) = match &one.part {
                ChosenPart::Stays => (sits(one.at), Some(one.at)),
                ChosenPart::Of(at) => (sits(*at), Some(*at)),
                ChosenPart::OnBench(part, _) => (vec![*part], None),
                ChosenPart::Halves(halves) => {
                    (halves.iter().map(|(part, _)| *part).collect(), None)
                }
                ChosenPart::Bought(_) => (Vec::new(), None),
            };
            let (what, gives) = words(one);
            PlacedPart {
                place: spot(one.at),
                what,
                parts,
                from: from.map(spot),
                gives: Some(gives),
            }
        });
        PartsPlaced {
            choice: chosen.choice.id.to_owned(),
            placed: placed.collect(),
        }
    }
}
