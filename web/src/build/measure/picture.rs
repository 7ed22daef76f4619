//! Where to measure, drawn: along the bearing and around it.

use build_plan::measure::MAIN_JOURNAL_DIAMETER;
use build_plan::{Direction, Station};
use leptos::prelude::*;

use super::order::Spot;

/// The place of a spot: which side of the oil hole, and in which direction.
#[component]
pub fn SpotPicture(
    /// The spot.
    spot: Spot,
) -> impl IntoView {
    let is_journal = spot.measure.id == MAIN_JOURNAL_DIAMETER.id;
    let turned = match spot.place.direction {
        Some(Direction::Across) => "rotate(90 132 40)",
        // 25° above the joint, left and right.
        Some(Direction::JointLeft) => "rotate(-65 132 40)",
        Some(Direction::JointRight) => "rotate(65 132 40)",
        _ => "",
    };
    let band = match spot.place.station {
        Some(Station::Front) => "M14 10h14v60H14z",
        Some(Station::Rear) => "M52 10h14v60H52z",
        _ => "M10 10h60v60H10z",
    };
    view! {
        <svg class="spot-picture" viewBox="0 0 176 80" aria-hidden="true">
            <path class="spot-part" d="M10 10h60v60H10z" />
            <path class="spot-band" d=band />
            <circle class="spot-hole" cx="40" cy="40" r="4" />
            <circle class="spot-part" cx="132" cy="40" r="30" />
            {(!is_journal).then(|| view! { <path class="spot-joint" d="M94 40h76" /> })}
            <g transform=turned>
                <path class="spot-arrow" d="M132 12v56M126 19l6-8 6 8M126 61l6 8 6-8" />
            </g>
        </svg>
    }
}
