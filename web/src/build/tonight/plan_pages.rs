//! Which page of the plan is shown.

use leptos::prelude::*;

use super::{Place, tonight};
use crate::build::change::change;
use crate::build::engine::engine;
use crate::build::step::{step_page, steps};
use crate::kit::piece::Piece;

/// The pages of the plan.
#[must_use]
pub fn plan_pages(place: Memo<Place>) -> Piece {
    Piece::live(move || {
        let place = place.get();
        untrack(|| match place {
            Place::Tonight => tonight(),
            Place::Steps => steps(),
            Place::Step(step, part) => step_page(&step, part.as_deref()),
            Place::Change(event) => change(event.as_deref()),
            Place::Engine => engine(),
        })
    })
}
