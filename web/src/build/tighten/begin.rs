//! Beginning a run.

use build_journal::fact::{Body, RunBegun, Spot as Where, Way};
use build_journal::{FactId, SittingId};
use build_plan::{At, Place as EnginePlace};

use super::place::{Place, part_name};
use super::{Spot, Tighten};
use crate::device::chance;
use crate::route;

/// A sitting of its own: one screen, one pair of hands.
pub fn new_sitting() -> SittingId {
    SittingId::from_random(chance::bits())
}

/// The part as facts have it: the whole engine is not named.
pub fn place_of(at: At) -> Option<Where> {
    (at != At::Engine).then(|| Where::Known(EnginePlace::of(at)))
}

/// Begins a run by the group's latest description and goes to it.
pub fn begin(context: Tighten, spot: Spot, way: Way) {
    let Some(group) = context.group(spot.own) else {
        return;
    };
    let begun: Option<FactId> = context.opened.write_down(Body::RunBegun(RunBegun {
        group: spot.own,
        place: place_of(spot.at),
        sheet: group.fact,
        way,
        sitting: new_sitting(),
    }));
    if begun.is_some() {
        let to = Place::Run(spot.own.to_string(), part_name(spot.at));
        route::go(&context.to(to));
    }
}
