//! All places of one bearing: what was read there last, each a button.

use build_journal::fold::{Build, Taken};
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE};
use build_plan::{Direction, Measure, Place, Station};
use leptos::prelude::*;

use super::order::Spot;
use crate::build::Opened;
use crate::kit::section::{Fold, Section};

/// The readings at a spot, oldest first, those struck out included.
#[must_use]
pub fn readings_at(build: &Build, spot: &Spot) -> Vec<Taken> {
    build
        .mains
        .iter()
        .flat_map(|bearing| &bearing.readings)
        .filter(|taken| taken.place == Some(spot.place))
        .filter(|taken| {
            taken
                .measure
                .is_some_and(|measure| measure.id == spot.measure.id)
        })
        .cloned()
        .collect()
}

/// The grids of one bearing's places.
#[component]
pub fn Places(
    /// Which main, counted from the front.
    #[prop(into)]
    number: Signal<u8>,
    /// The place in hand.
    #[prop(into)]
    spot: Signal<Option<Spot>>,
    /// Takes another one in hand.
    choose: Callback<Spot>,
) -> impl IntoView {
    let grid = move |measure: &'static Measure| {
        view! { <Grid measure number spot choose /> }
    };
    view! {
        <Section title="Journal">{grid(&MAIN_JOURNAL_DIAMETER)}</Section>
        <Section title="Bore, shells in, caps torqued">{grid(&MAIN_BEARING_BORE)}</Section>
        <Fold title="Plastic strip, as a second opinion">
            <Strip number spot choose />
        </Fold>
    }
}

#[component]
fn Grid(
    measure: &'static Measure,
    number: Signal<u8>,
    spot: Signal<Option<Spot>>,
    choose: Callback<Spot>,
) -> impl IntoView {
    let rows = measure.spots.stations.iter().map(|station| {
        let station = *station;
        let cells = measure.spots.directions.iter().map(|direction| {
            let direction = *direction;
            let place = Signal::derive(move || {
                Place::main(number.get())
                    .station(station)
                    .direction(direction)
            });
            let test = format!("{}-{}-{}", measure.id, station.id(), direction.id());
            view! { <Cell measure place label=short(direction) test spot choose /> }
        });
        view! {
            <div class="place-row">
                <p class="place-station">{station.label()}</p>
                <div class="place-cells">{cells.collect_view()}</div>
            </div>
        }
    });
    rows.collect_view()
}

#[component]
fn Strip(number: Signal<u8>, spot: Signal<Option<Spot>>, choose: Callback<Spot>) -> impl IntoView {
    let measure = &MAIN_OIL_CLEARANCE;
    let cell = move |station: Option<Station>, label: &'static str| {
        let place = Signal::derive(move || {
            let main = Place::main(number.get());
            station.map_or(main, |station| main.station(station))
        });
        let test = format!("{}-{}", measure.id, station.map_or("widest", Station::id));
        view! { <Cell measure place label test spot choose /> }
    };
    view! {
        <div class="place-cells">
            {cell(None, "widest spot")} {cell(Some(Station::Front), "front end")}
            {cell(Some(Station::Rear), "rear end")}
        </div>
    }
}

const fn short(direction: Direction) -> &'static str {
    match direction {
        Direction::UpAndDown => "up-down",
        Direction::Across => "across",
        Direction::JointLeft => "joint, left",
        Direction::JointRight => "joint, right",
        _ => direction.label(),
    }
}

#[component]
fn Cell(
    measure: &'static Measure,
    #[prop(into)] place: Signal<Place>,
    label: &'static str,
    test: String,
    spot: Signal<Option<Spot>>,
    choose: Callback<Spot>,
) -> impl IntoView {
    let opened: Opened = expect_context();
    let own = move || Spot {
        measure,
        place: place.get(),
    };
    let in_hand = move || spot.get() == Some(own());
    let values = Memo::new(move |_| {
        let spot = own();
        opened.build.with(|build| {
            let readings = readings_at(build, &spot);
            let counting: Vec<String> = readings
                .iter()
                .filter_map(|taken| taken.counting().map(ToString::to_string))
                .collect();
            (counting.last().cloned(), counting.len())
        })
    });
    let measured = move || values.get().1 > 0;
    let spoken = move || {
        let place = place.get();
        match values.get() {
            (Some(last), 1) => format!("{place}: {last}"),
            (Some(last), more) => format!("{place}: {last}, {more} readings"),
            (None, _) => format!("{place}: not measured"),
        }
    };
    view! {
        <button
            type="button"
            class="place"
            class:measured=measured
            data-test=format!("place-{test}")
            aria-label=spoken
            aria-pressed=move || if in_hand() { "true" } else { "false" }
            on:click=move |_| choose.run(Spot { measure, place: place.get_untracked() })
        >
            <span class="place-word">{label}</span>
            <span class="place-value">
                {move || values.get().0.unwrap_or_else(|| "–".to_owned())}
            </span>
            {move || (values.get().1 > 1).then(|| format!("mean of {}", values.get().1))}
        </button>
    }
}
