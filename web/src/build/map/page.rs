//! The pages of the map.

use build_plan::At;
use build_plan::map::{Part, Region};
use leptos::prelude::*;

use super::one_part::one_part;
use super::place::Place;
use super::region::enlarged;
use super::standing::EngineStands;
use super::whole::whole;
use crate::build::Opened;
use crate::device::settings::settings;
use crate::kit::piece::{Piece, note, p, title};
use crate::route::{Page, Route};

/// The map: the whole engine, a region, or a part.
#[must_use]
pub fn engine_map(place: Memo<Place>) -> Piece {
    let opened: Opened = expect_context();
    let settings = settings();
    // Worked out once for every fact, whichever page of the map is open.
    let stands = Memo::new(move |_| opened.build.with(EngineStands::of));
    let id = opened.id.to_string();
    Piece::live(move || {
        let place = place.get();
        let to = |place: Place| Route::Build(id.clone(), Page::Map(place)).to_string();
        let measured_at = |part: Part| match part {
            Part::At(At::Main(number)) => {
                Some(Route::Build(id.clone(), Page::Main(number)).to_string())
            }
            _ => None,
        };
        stands.with(|stands| {
            let Some(stands) = stands else {
                let words = "The engine is not described in what is here of this build. Bring in the file it was exported to.";
                return Piece::all([title("Engine map").into(), note("lead", words).into()]);
            };
            let engine = &stands.engine;
            let found = match &place {
                Place::Whole => Some(whole(stands, &to)),
                Place::Region(id) => Region::with_id(engine, id)
                    .map(|region| enlarged(stands, region, &to, &measured_at)),
                Place::Part(id) => Part::with_id(engine, id).map(|part| {
                    let units = settings.units();
                    opened
                        .build
                        .with(|build| one_part(build, (engine, part), units, &to))
                }),
            };
            found.unwrap_or_else(|| {
                Piece::all([
                    title("Engine map").into(),
                    p("This engine has no such part.").into(),
                ])
            })
        })
    })
}
