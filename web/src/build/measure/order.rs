//! The order of the work: which place comes next.

use build_journal::fold::Build;
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER};
use build_plan::{At, Direction, Measure, Place, Station};

/// Something to measure at a place.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Spot {
    /// What.
    pub measure: &'static Measure,
    /// Where.
    pub place: Place,
}

impl Spot {
    /// The number of the main it is on.
    #[must_use]
    pub const fn main(&self) -> Option<u8> {
        match self.place.at {
            At::Main(number) => Some(number),
            _ => None,
        }
    }

    /// Where on its part it is, in words.
    #[must_use]
    pub fn on_its_part(&self) -> String {
        let station = self.place.station.map(Station::label);
        let direction = self.place.direction.map(Direction::label);
        let parts: Vec<&str> = station.into_iter().chain(direction).collect();
        if parts.is_empty() {
            self.place.to_string()
        } else {
            parts.join(", ")
        }
    }

    /// A name for its draft.
    #[must_use]
    pub fn name(&self) -> String {
        format!("{}/{}", self.measure.id, self.place)
    }
}

/// All journals first, then all bores: one tool after the other.
static MEASURED: [&Measure; 2] = [&MAIN_JOURNAL_DIAMETER, &MAIN_BEARING_BORE];

/// Every place to measure, in the order of the work.
#[must_use]
pub fn all(build: &Build) -> Vec<Spot> {
    let Some(described) = &build.engine else {
        return Vec::new();
    };
    MEASURED
        .into_iter()
        .flat_map(|measure| {
            let places = measure.places(&described.engine);
            places.into_iter().map(move |place| Spot { measure, place })
        })
        .collect()
}

/// Whether a reading that counts is there, and nothing has made it stale.
#[must_use]
pub fn is_measured(build: &Build, spot: &Spot) -> bool {
    build
        .readings(spot.measure, spot.place.at)
        .any(|taken| taken.place == Some(spot.place) && build.still_counts(taken))
}

/// How many places of a measure are not measured yet.
#[must_use]
pub fn left_of(build: &Build, measure: &Measure) -> usize {
    all(build)
        .iter()
        .filter(|spot| spot.measure.id == measure.id && !is_measured(build, spot))
        .count()
}

/// The first place that is not measured yet.
#[must_use]
pub fn first_open(build: &Build) -> Option<Spot> {
    all(build)
        .into_iter()
        .find(|spot| !is_measured(build, spot))
}

/// The first place on a main that is not measured yet, of this measure if it
/// has one.
#[must_use]
pub fn first_open_on(build: &Build, main: u8, measure: Option<&'static Measure>) -> Option<Spot> {
    let open = |spot: &Spot| spot.main() == Some(main) && !is_measured(build, spot);
    let wanted = |spot: &Spot| measure.is_some_and(|measure| measure.id == spot.measure.id);
    let all = all(build);
    let first = all.iter().find(|spot| wanted(spot) && open(spot));
    first
        .or_else(|| all.iter().find(|spot| open(spot)))
        .copied()
}

/// The next place after this one that is not measured yet, going round once.
#[must_use]
pub fn next_after(build: &Build, spot: &Spot) -> Option<Spot> {
    next_of(&all(build), build, spot)
}

/// The next of these places after this one that is not measured yet, going
/// round once.
#[must_use]
pub fn next_of(all: &[Spot], build: &Build, spot: &Spot) -> Option<Spot> {
    let behind = all
        .iter()
        .position(|one| one == spot)
        .map_or(0, |at| at + 1);
    let (before, after) = all.split_at(behind.min(all.len()));
    after
        .iter()
        .chain(before)
        .find(|one| *one != spot && !is_measured(build, one))
        .copied()
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fact::{EngineDescribed, Reading, Spot as Where};
    use build_journal::{Body, BuildId, DeviceId, Fact, Journal, Stamper, fold};
    use build_plan::{Engine, Layout};

    fn journal(readings: &[Spot]) -> Build {
        let mut journal = Journal::new(BuildId::from_random(1));
        let mut stamper = Stamper::new();
        let mut write = |body| {
            let id = stamper.stamp(1, 1);
            journal
                .append(Fact::new(id, DeviceId::from_random(1), 1, body))
                .unwrap();
        };
        let engine = Engine::new("orchard sprayer", 4, Layout::Inline, None).unwrap();
        write(Body::EngineDescribed(EngineDescribed::of(&engine)));
        for spot in readings {
            write(Body::Reading(
                Reading {
                    measure: spot.measure.id.to_owned(),
                    place: Where::Known(spot.place),
                    typed: "2.4500".to_owned(),
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
    fn journals_of_all_mains_come_before_the_bores() {
        let build = journal(&[]);
        let all = all(&build);
        assert_eq!(all.len(), 5 * 4 + 5 * 6);
        let first_bore = all
            .iter()
            .position(|spot| spot.measure.id == MAIN_BEARING_BORE.id);
        assert_eq!(first_bore, Some(20));
        assert_eq!(first_open(&build), all.first().copied());
    }

    #[test]
    fn what_is_measured_is_not_offered_again() {
        let all = all(&journal(&[]));
        let build = journal(&all[0..4]);
        assert_eq!(first_open(&build), Some(all[4]));
        assert_eq!(first_open_on(&build, 1, None), Some(all[20]));
        assert_eq!(next_after(&build, &all[6]), Some(all[7]));
    }

    #[test]
    fn a_measure_is_done_when_no_place_of_it_is_left() {
        let all = all(&journal(&[]));
        let build = journal(&all[0..20]);
        assert_eq!(left_of(&build, &MAIN_JOURNAL_DIAMETER), 0);
        assert_eq!(left_of(&build, &MAIN_BEARING_BORE), 30);
        assert_eq!(left_of(&journal(&all[1..20]), &MAIN_JOURNAL_DIAMETER), 1);
    }

    #[test]
    fn after_the_last_place_the_ones_left_out_come_round() {
        let all = all(&journal(&[]));
        let last = all[all.len() - 1];
        let build = journal(&all[3..]);
        assert_eq!(next_after(&build, &last), Some(all[0]));
        assert_eq!(next_after(&journal(&all), &last), None);
    }
}
