//! The limits of one measure.

use build_plan::Measure;
use leptos::prelude::*;

use super::place::Place;
use crate::build::Opened;
use crate::build::measure::limits::{LEAD, limits_of};
use crate::kit::judged::capital;
use crate::kit::piece::{Piece, link, note, p, title};
use crate::route::{Page, Route};

/// The limits of a measure, and the way back to its round.
#[must_use]
pub fn round_limits(measure: &'static Measure) -> Piece {
    let opened: Opened = expect_context();
    let back = Page::Measure(Place::Round(measure.id.to_owned(), 1));
    let back = Route::Build(opened.id.to_string(), back);
    Piece::all([
        title(&format!("Limits: {}", capital(measure.label))).into(),
        note("lead", LEAD).into(),
        limits_of(measure),
        p("").with(link("quiet", &back, "To the readings")).into(),
    ])
}
