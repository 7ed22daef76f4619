//! One main bearing: where to measure next, what was read, and what comes of it.

use build_journal::fold::{MainBearing, Standing};
use leptos::prelude::*;

use super::entry::Entry;
use super::order::{self, Spot};
use super::places::Places;
use super::result::{ResultOf, judged};
use super::tools::Foreseen;
use crate::build::Opened;
use crate::device::settings::{UnitClass, settings};
use crate::kit::keypad::pad;
use crate::kit::verdict::{Mark, MarkShape};
use crate::route::{self, Page, Route};

/// One main bearing.
#[component]
pub fn Bearing(
    /// Which one, counted from the front.
    #[prop(into)]
    number: Signal<u8>,
) -> impl IntoView {
    let opened: Opened = expect_context();
    let settings = settings();
    let pad = pad();
    let bearing = Memo::new(move |_| {
        let number = number.get();
        opened.build.with(|build| {
            build
                .mains
                .iter()
                .find(|bearing| bearing.main.number() == number)
                .cloned()
        })
    });
    // The place that was taken in hand by a tap; else the first open one.
    let chosen = RwSignal::new(None::<Spot>);
    let spot = Memo::new(move |_| {
        let number = number.get();
        let chosen = chosen.get();
        match chosen {
            Some(spot) if spot.main() == Some(number) => Some(spot),
            _ => opened.build.with_untracked(|build| {
                order::first_open_on(build, number, chosen.map(|spot| spot.measure))
            }),
        }
    });
    let go_on = Callback::new(move |from: Spot| {
        let next = opened
            .build
            .with_untracked(|build| order::next_after(build, &from));
        match next {
            Some(next) if next.main() == Some(number.get_untracked()) => chosen.set(Some(next)),
            Some(next) => {
                // Chosen stays behind: it says which measure comes first there.
                chosen.set(Some(from));
                if let Some(main) = next.main() {
                    route::go(&Route::Build(opened.id.to_string(), Page::Main(main)));
                }
            }
            None => pad.close(),
        }
    });
    let choose = Callback::new(move |spot: Spot| {
        chosen.set(Some(spot));
        if let Some(field) = document().get_element_by_id("reading") {
            let field: web_sys::HtmlElement = wasm_bindgen::JsCast::unchecked_into(field);
            let _ = field.focus();
        }
    });
    Effect::new(move |_| {
        let live = bearing.get().and_then(|bearing| {
            let judged = judged(&bearing, settings.units().clearance())?;
            matches!(bearing.standing, Standing::Judged(_))
                .then(|| (judged.mark(), judged.live_words()))
        });
        pad.show_live(live);
    });
    on_cleanup(move || pad.show_live(None));
    let any_spot = Memo::new(move |_| spot.get().is_some());
    view! {
        {move || match bearing.get() {
            None => view! {
                <h1>"No such main"</h1>
                <p>"This engine has no main "{number.get()}"."</p>
            }
            .into_any(),
            Some(bearing) => view! { <Title bearing units=settings.units() /> }.into_any(),
        }}
        <Show when=move || bearing.with(Option::is_some)>
            <div class="halves">
                <div class="half">
                    <Foreseen />
                    {move || if any_spot.get() {
                        // There is a spot as long as this stands.
                        let held = Memo::new(move |last: Option<&Option<Spot>>| {
                            spot.get().or_else(|| last.copied().flatten())
                        });
                        held.get_untracked()
                            .map(|first| {
                                let spot = Signal::derive(move || held.get().unwrap_or(first));
                                view! { <Entry spot go_on /> }
                            })
                            .into_any()
                    } else {
                        view! {
                            <p class="lead">"Every place on this main is measured. Tap one to read it again."</p>
                        }
                        .into_any()
                    }}
                    <Places number spot choose />
                </div>
                <div class="half answer" data-test="answer">
                    {move || bearing.get().map(|bearing| view! { <ResultOf bearing units=settings.units() /> })}
                </div>
            </div>
        </Show>
    }
}

/// Which main, the ones beside it, and how it stands.
#[component]
fn Title(bearing: MainBearing, units: UnitClass) -> impl IntoView {
    let opened: Opened = expect_context();
    let main = bearing.main;
    let to = |number: u8| Route::Build(opened.id.to_string(), Page::Main(number)).to_string();
    let before = (!main.is_front()).then(|| {
        let number = main.number() - 1;
        view! { <a class="button quiet" href=to(number) aria-label=format!("main {number}")>"‹ "{number}</a> }
    });
    let after = (!main.is_rear()).then(|| {
        let number = main.number() + 1;
        view! { <a class="button quiet" href=to(number) aria-label=format!("main {number}")>{number}" ›"</a> }
    });
    let judged = judged(&bearing, units.clearance());
    let (mark, words) = match (&bearing.standing, judged) {
        (Standing::Judged(_), Some(judged)) => (judged.mark(), judged.live_words()),
        (_, Some(judged)) => {
            let mark = if judged.mark() == Mark::Bad {
                Mark::Bad
            } else {
                Mark::None
            };
            (mark, judged.value_words())
        }
        (_, None) => (Mark::None, Mark::None.words().to_owned()),
    };
    view! {
        <div class="title-row">
            {before}
            <h1>"Main "{main.number()}<span class="title-of">" of "{main.of()}</span></h1>
            {after}
        </div>
        <p class="standing" data-test="standing" data-verdict=mark.name()>
            <MarkShape mark />
            <span>{words}</span>
        </p>
    }
}
