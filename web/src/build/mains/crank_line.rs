//! The crank drawn from the engine's own description, with a verdict on every main.

use build_journal::Build;
use build_plan::CrankStop;
use leptos::prelude::*;

use super::verdict::mark;
use crate::kit::verdict::Mark;

const STEP: u32 = 44;
const MIDDLE: u32 = 48;

/// The crank line. The list beside it says the same in words.
#[component]
pub fn CrankLine(
    /// The build.
    build: std::sync::Arc<Build>,
) -> Option<impl IntoView> {
    let engine = &build.engine.as_ref()?.engine;
    let stops = engine.crank_line();
    let width = STEP * u32::try_from(stops.len()).unwrap_or(1);
    let last = stops.len().saturating_sub(1);
    let mut pins_seen = 0_u32;
    let parts: Vec<AnyView> = stops
        .iter()
        .enumerate()
        .map(|(at, stop)| {
            let left = STEP * u32::try_from(at).unwrap_or_default();
            match stop {
                CrankStop::Main(main) => {
                    let bearing = build.mains.iter().find(|one| one.main.number() == main.number());
                    let mark = bearing.map_or(Mark::None, mark);
                    let (outline, sign) = mark.outline();
                    let to_left = if at == 0 { left + 6 } else { left };
                    let wide = if at == 0 || at == last { STEP - 6 } else { STEP };
                    view! {
                        <g>
                            <rect class="crank-main" x=to_left y=MIDDLE - 15 width=wide height="30" />
                            <svg
                                class=format!("mark mark-{}", mark.name())
                                x=left + STEP / 2 - 12 y=MIDDLE - 12 width="24" height="24"
                                viewBox="0 0 24 24"
                            >
                                <path class="mark-outline" d=outline />
                                <path class="mark-sign" d=sign />
                            </svg>
                            <text class="crank-number" x=left + STEP / 2 y="92">{main.number()}</text>
                        </g>
                    }
                    .into_any()
                }
                CrankStop::Crankpin(_) => {
                    pins_seen += 1;
                    let top = if pins_seen % 2 == 1 { 6 } else { MIDDLE + 14 };
                    view! {
                        <g class="crank-throw">
                            <rect x=left y=top.min(MIDDLE - 15) width="10" height="57" />
                            <rect x=left + STEP - 10 y=top.min(MIDDLE - 15) width="10" height="57" />
                            <rect x=left + 10 y=top width=STEP - 20 height="22" />
                        </g>
                    }
                    .into_any()
                }
            }
        })
        .collect();
    Some(view! {
        <div class="crank-line">
            <svg viewBox=format!("0 0 {width} 96") aria-hidden="true">{parts}</svg>
            <p class="hint crank-ends" aria-hidden="true"><span>"front"</span><span>"flywheel"</span></p>
        </div>
    })
}
