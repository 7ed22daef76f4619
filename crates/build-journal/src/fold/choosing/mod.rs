//! Which part goes where, from what was measured on this build and what lies on
//! the bench.

mod chosen;
mod gathering;
mod lacking;

use assembly_core::choose::parts_to_places::Places;
use assembly_core::choose::shells::OddHalf;
use assembly_core::measure::Assessment;
use build_plan::choice::{Choice, ChosenBy};
use uom::si::f64::Length;

pub use self::chosen::{Chosen, ChosenPart, ChosenPlace, Span};
use self::gathering::Gathering;
pub use self::lacking::Lacking;
use super::build::Build;
use super::register::Role;

/// What is wished of a choice.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub struct Wishes {
    /// Where the odd halves of mixed pairs go.
    pub odd: OddHalf,
    /// The step in which shims are sold; none when none can be bought.
    pub sold_in: Option<Length>,
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
                ChosenPlace::new(at, part, gives, said, &window)
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
}
