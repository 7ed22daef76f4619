//! All main bearings along the crank, front at the top.

use build_journal::fold::{MainBearing, Standing};
use build_plan::engine::CrankStop;
use leptos::prelude::*;

use super::crank::{JournalDrawing, PinDrawing};
use super::order::{self, Spot};
use super::result::judged;
use crate::build::Opened;
use crate::device::settings::{UnitClass, settings};
use crate::kit::judged::window_words;
use crate::kit::verdict::{Mark, MarkShape};
use crate::route::{Page, Route};

/// The crank line: every main with its verdict, each a link to it.
#[component]
pub fn Mains() -> impl IntoView {
    let opened: Opened = expect_context();
    let settings = settings();
    let id = opened.id;
    move || {
        let units = settings.units();
        opened.build.with(|build| {
            let Some(described) = &build.engine else {
                return view! {
                    <h1>"Main bearings"</h1>
                    <p class="lead">"The engine is not described in what is here of this build. Bring in the file it was exported to."</p>
                }
                .into_any();
            };
            let stops: Vec<_> = described
                .engine
                .crank_line()
                .into_iter()
                .map(|stop| match stop {
                    CrankStop::Crankpin(number) => view! {
                        <li class="crank-pin" aria-hidden="true"><PinDrawing number /></li>
                    }
                    .into_any(),
                    CrankStop::Main(main) => {
                        let bearing =
                            build.mains.iter().find(|bearing| bearing.main == main).cloned();
                        bearing.map(|bearing| view! { <MainRow id=id.to_string() bearing units /> }).into_any()
                    }
                })
                .collect();
            let next = order::first_open(build);
            view! {
                <h1>{described.engine.name().to_owned()}</h1>
                <GoOn id=id.to_string() next />
                <LimitsLine id=id.to_string() bearing=build.mains.first().cloned() units />
                <ol class="crank" aria-label="main bearings, front to rear">{stops}</ol>
            }
            .into_any()
        })
    }
}

#[component]
fn GoOn(id: String, next: Option<Spot>) -> impl IntoView {
    next.and_then(|spot| {
        let to = Route::Build(id, Page::Main(spot.main()?)).to_string();
        Some(view! {
            <a class="button go-on" href=to data-test="go-on">
                <span class="go-on-word">"Go on"</span>
                <span>{spot.measure.label}": "{spot.place.to_string()}</span>
            </a>
        })
    })
}

#[component]
fn LimitsLine(id: String, bearing: Option<MainBearing>, units: UnitClass) -> impl IntoView {
    let to = Route::Build(id, Page::Limits).to_string();
    let limits = bearing.map(|bearing| bearing.limits).unwrap_or_default();
    let window = match limits.as_slice() {
        [one] => one.window.as_ref().ok().copied(),
        _ => None,
    };
    let words = match (window, limits.len()) {
        (Some(window), _) => {
            format!("Oil clearance {}", window_words(&window, units.clearance()))
        }
        (None, 0) => "No limits yet: type them from the maker's sheet".to_owned(),
        (None, _) => "The limits can't be used as they are: look at them".to_owned(),
    };
    view! { <a class="line" href=to data-test="limits-line">{words}</a> }
}

#[component]
fn MainRow(id: String, bearing: MainBearing, units: UnitClass) -> impl IntoView {
    let number = bearing.main.number();
    let to = Route::Build(id, Page::Main(number)).to_string();
    let judged = judged(&bearing, units.clearance());
    let mark = judged
        .as_ref()
        .map_or(Mark::None, |judged| match bearing.standing {
            Standing::Judged(_) => judged.mark(),
            // A missing thing is never a pass; a stop is one even without limits.
            Standing::Open(_) if judged.mark() == Mark::Bad => Mark::Bad,
            Standing::Open(_) => Mark::None,
        });
    let value = judged.as_ref().map(|judged| judged.value_words());
    let words = match (&bearing.standing, &judged) {
        (Standing::Judged(_), Some(judged)) => judged.verdict_words(),
        (Standing::Open(missing), _) => {
            missing.first().map(ToString::to_string).unwrap_or_default()
        }
        (Standing::Judged(_), None) => String::new(),
    };
    view! {
        <li>
            <a
                class=format!("main-row main-row-{}", mark.name())
                href=to
                data-test=format!("bearing-{number}")
                data-verdict=mark.name()
            >
                <JournalDrawing />
                <MarkShape mark />
                <span class="main-row-words">
                    <strong>"Main "{number}</strong>
                    {value.map(|value| view! { <span class="main-row-value">{value}</span> })}
                    <span>{words}</span>
                </span>
            </a>
        </li>
    }
}
