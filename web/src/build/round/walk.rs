//! The order of a round: part by part, and on each part place by place.

use build_journal::fold::Build;
use build_plan::{At, Measure};

use crate::build::measure::order::{self, Spot, is_measured};

/// Every place of a measure on this engine, in the order of the round.
#[must_use]
pub fn places(build: &Build, measure: &'static Measure) -> Vec<Spot> {
    let Some(described) = &build.engine else {
        return Vec::new();
    };
    let places = measure.places(&described.engine).into_iter();
    places.map(|place| Spot { measure, place }).collect()
}

/// The parts of a measure on this engine, in the order of the round; none when
/// the engine has no such thing.
#[must_use]
pub fn parts(build: &Build, measure: &'static Measure) -> Vec<At> {
    let mut parts: Vec<At> = places(build, measure)
        .iter()
        .map(|spot| spot.place.at)
        .collect();
    parts.dedup();
    parts
}

/// The places of a measure that are not measured yet.
#[must_use]
pub fn left(build: &Build, measure: &'static Measure) -> usize {
    let places = places(build, measure);
    places.iter().filter(|one| !is_measured(build, one)).count()
}

/// The first place on a part that is not measured yet.
#[must_use]
pub fn first_open_on(build: &Build, measure: &'static Measure, at: At) -> Option<Spot> {
    places(build, measure)
        .into_iter()
        .find(|spot| spot.place.at == at && !is_measured(build, spot))
}

/// The next place of the round after this one that is not measured yet, going
/// round once.
#[must_use]
pub fn next_after(build: &Build, spot: &Spot) -> Option<Spot> {
    order::next_of(&places(build, spot.measure), build, spot)
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fact::{EngineDescribed, Reading, Spot as Where};
    use build_journal::{Body, BuildId, DeviceId, Fact, Journal, Stamper, fold};
    use build_plan::measure::{BORE, RING_END_GAP};
    use build_plan::{Engine, Layout};

    fn build(readings: &[Spot]) -> Build {
        let mut journal = Journal::new(BuildId::from_random(1));
        let mut stamper = Stamper::new();
        let mut write = |body| {
            let id = stamper.stamp(1, 1);
            let fact = Fact::new(id, DeviceId::from_random(1), 1, body);
            journal.append(fact).unwrap();
        };
        let engine = Engine::new("orchard sprayer", 4, Layout::Inline, None).unwrap();
        write(Body::EngineDescribed(EngineDescribed::of(&engine)));
        for spot in readings {
            write(Body::Reading(
                Reading {
                    measure: spot.measure.id.to_owned(),
                    place: Where::Known(spot.place),
                    typed: "3.5004".to_owned(),
                    unit: "in".to_owned(),
                    tool: None,
                    setting: None,
                    temperature: None,
                    condition: None,
                    keyed: None,
                }
                .into(),
            ));
        }
        fold(&journal)
    }

    #[test]
    fn a_round_goes_part_by_part_and_forgets_none() {
        let empty = build(&[]);
        let all = places(&empty, &BORE);
        assert_eq!(
            parts(&empty, &BORE),
            (1..=4).map(At::Cylinder).collect::<Vec<_>>()
        );
        assert_eq!(all.len(), 4 * BORE.spots.number_on_each());
        let mut spot = all[0];
        let mut read = vec![spot];
        while let Some(next) = next_after(&build(&read), &spot) {
            assert!(!read.contains(&next));
            read.push(next);
            spot = next;
        }
        assert_eq!(read, all);
        assert_eq!(left(&build(&read), &BORE), 0);
    }

    #[test]
    fn what_was_left_out_comes_round_again() {
        let all = places(&build(&[]), &RING_END_GAP);
        let without_second: Vec<Spot> = all
            .iter()
            .enumerate()
            .filter(|(at, _)| *at != 1)
            .map(|(_, spot)| *spot)
            .collect();
        let build = build(&without_second);
        assert_eq!(left(&build, &RING_END_GAP), 1);
        assert_eq!(next_after(&build, all.last().unwrap()), Some(all[1]));
        assert_eq!(
            first_open_on(&build, &RING_END_GAP, all[1].place.at),
            Some(all[1])
        );
        assert_eq!(first_open_on(&build, &RING_END_GAP, all[0].place.at), None);
    }
}
