//! All main bearings with their verdicts: the way into each.

use assembly_core::quantity::Kind;
use build_journal::fold::MainBearing;
use build_plan::measure::MAIN_OIL_CLEARANCE;
use leptos::prelude::*;

use super::crank_line::CrankLine;
use super::verdict::{judged, mark, words};
use crate::build::page::opened;
use crate::device::settings::settings;
use crate::kit::verdict::MarkShape;
use crate::route::Page;

/// All main bearings.
#[component]
pub fn Mains() -> impl IntoView {
    let opened = opened();
    let settings = settings();
    let rows = move || {
        let unit = settings.units().of(Kind::Length, MAIN_OIL_CLEARANCE.units);
        let row = |bearing: &MainBearing| {
            let number = bearing.main.number();
            let mark = mark(bearing);
            let value = judged(bearing, unit).map(|judged| judged.value_words());
            view! {
                <li>
                    <a
                        class="bearing-row"
                        href=opened.to(Page::Main(number))
                        data-test=format!("bearing-{number}")
                        data-verdict=mark.name()
                    >
                        <MarkShape mark />
                        <span class="bearing-name">"Main "{number}</span>
                        <span class="bearing-value">{value}</span>
                        <span class="bearing-words">{words(bearing, unit)}</span>
                    </a>
                </li>
            }
        };
        opened.build.with(|build| build.mains.iter().map(row).collect_view())
    };
    let undescribed = move || opened.build.with(|build| build.engine.is_none());
    view! {
        <h1>"Main bearings"</h1>
        <Show when=undescribed>
            <p class="lead">"The engine of this build is not described, so its main bearings are not known."</p>
        </Show>
        {move || view! { <CrankLine build=opened.build.get() /> }}
        <ul class="bearings">{rows}</ul>
    }
}
