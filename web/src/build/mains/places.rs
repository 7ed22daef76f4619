//! The places of one bearing: which of them are measured, and which is next.

use build_journal::fold::{MainBearing, Taken};
use build_plan::{Direction, Measure, Place, Station};
use leptos::prelude::*;

/// The places a measure is taken at on a main, in the order of the work.
#[must_use]
pub fn places(measure: &Measure, main: u8) -> Vec<Place> {
    measure.spots.on(build_plan::At::Main(main))
}

/// A place's name in an address or a draft.
#[must_use]
pub fn place_id(place: &Place) -> String {
    let station = place.station.map_or("", Station::id);
    let direction = place.direction.map_or("", Direction::id);
    format!("{station}/{direction}")
}

/// A place's name on the bearing, without the bearing's own.
#[must_use]
pub fn place_words(place: &Place) -> String {
    let parts = [
        place.station.map(Station::label),
        place.direction.map(Direction::label),
    ];
    let words: Vec<&str> = parts.into_iter().flatten().collect();
    if words.is_empty() {
        "widest spot".to_owned()
    } else {
        words.join(", ")
    }
}

/// The readings of a measure at a place, latest last.
pub fn readings_at<'a>(
    bearing: &'a MainBearing,
    measure: &'static Measure,
    place: Place,
) -> impl Iterator<Item = &'a Taken> {
    bearing.readings.iter().filter(move |taken| {
        taken.place == Some(place) && taken.measure.is_some_and(|one| one.id == measure.id)
    })
}

/// The place to measure next: the first one without a reading that counts.
#[must_use]
pub fn next_place(bearing: &MainBearing, measure: &'static Measure) -> Option<Place> {
    places(measure, bearing.main.number())
        .into_iter()
        .find(|place| readings_at(bearing, measure, *place).all(|taken| taken.counting().is_none()))
}

/// What was read at a place, as it was typed, the latest that counts.
#[must_use]
pub fn last_words(bearing: &MainBearing, measure: &'static Measure, place: Place) -> Option<String> {
    let taken = readings_at(bearing, measure, place).filter(|taken| taken.counting().is_some()).last()?;
    taken.counting().map(ToString::to_string)
}

/// A diameter's direction in a circle, seen from the front of the engine.
#[component]
pub fn DirectionPicture(
    /// The place.
    place: Place,
) -> impl IntoView {
    let line = match place.direction {
        Some(Direction::Across) => "M3 12H21",
        // 25° above the joint, which lies level here.
        Some(Direction::JointLeft) => "M3.8 8.2L20.2 15.8",
        Some(Direction::JointRight) => "M20.2 8.2L3.8 15.8",
        _ => "M12 3V21",
    };
    view! {
        <svg class="direction" viewBox="0 0 24 24" aria-hidden="true">
            <circle class="direction-ring" cx="12" cy="12" r="9" />
            <path class="direction-joint" d="M1 12H4M20 12H23" />
            <path class="direction-line" d=line />
        </svg>
    }
}

/// One place as a button: where, and what was read there.
#[component]
pub fn PlaceButton(
    /// The place.
    place: Place,
    /// What was read there last, as it was typed.
    last: Option<String>,
    /// Whether it is the one being measured.
    #[prop(into)]
    here: Signal<bool>,
    /// Called when it is picked.
    on_pick: Callback<Place>,
) -> impl IntoView {
    let read = last.is_some();
    view! {
        <button
            type="button"
            class="place"
            class:read=read
            aria-pressed=move || here.get().to_string()
            data-test=format!("place-{}", place_id(&place).replace('/', "-"))
            on:click=move |_| on_pick.run(place)
        >
            <DirectionPicture place />
            <span class="place-words">{place_words(&place)}</span>
            <span class="place-read">{last.unwrap_or_else(|| "–".to_owned())}</span>
        </button>
    }
}
