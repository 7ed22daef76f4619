//! Sorts of facts, and the lines of the log that are wanted.

use build_journal::Fact;
use build_journal::fact::{Body, Spot};
use build_plan::At;

/// A sort of facts, as a person looks for them.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Sort {
    /// Readings.
    Readings,
    /// Limits.
    Limits,
    /// Tools, their settings and checks.
    Tools,
    /// Steps, checks, events, what was let pass.
    Steps,
    /// Bolts and their tightening.
    Tightening,
    /// The oil, the first hour and what was read of it.
    Oil,
    /// Parts and machine work.
    Parts,
    /// Photos.
    Photos,
    /// Notes.
    Notes,
    /// Everything else: descriptions, strikes, kinds not known here.
    Other,
}

impl Sort {
    /// All of them, in the order they are offered.
    pub const ALL: [Self; 10] = [
        Self::Readings,
        Self::Limits,
        Self::Tools,
        Self::Steps,
        Self::Tightening,
        Self::Oil,
        Self::Parts,
        Self::Photos,
        Self::Notes,
        Self::Other,
    ];

    /// The sort of a fact.
    #[must_use]
    pub const fn of(body: &Body) -> Self {
        match body {
            Body::Reading(_) | Body::ReadingsStand(_) | Body::WarmthSettled(_) => Self::Readings,
            Body::LimitsSet(_) | Body::SizesListed(_) => Self::Limits,
            Body::ToolListed(_)
            | Body::ToolSet(_)
            | Body::ToolChecked(_)
            | Body::ToolTried(_)
            | Body::WrenchListed(_) => Self::Tools,
            Body::StepMarked(_)
            | Body::CheckMade(_)
            | Body::EventHappened(_)
            | Body::Waived(_)
            | Body::OwnMeasure(_)
            | Body::OwnStep(_) => Self::Steps,
            Body::FastenerGroup(_)
            | Body::RunBegun(_)
            | Body::RunOpened(_)
            | Body::BoltPulled(_)
            | Body::RunMarked(_)
            | Body::BoltsRenewed(_)
            | Body::BoltMeasured(_)
            | Body::BoltCompared(_)
            | Body::SealantPutOn(_)
            | Body::JointClosed(_) => Self::Tightening,
            Body::OilSystem(_)
            | Body::GaugeRead(_)
            | Body::PrimeTested(_)
            | Body::RunningBegun(_)
            | Body::RunningEnded(_)
            | Body::RunningRow(_)
            | Body::OilNoted(_)
            | Body::CompressionRead(_)
            | Body::LeakDownRead(_)
            | Body::PlugsCounted(_) => Self::Oil,
            Body::PartListed(_)
            | Body::PartOnBench(_)
            | Body::PartsPlaced(_)
            | Body::PartMoved(_)
            | Body::WorkOrdered(_)
            | Body::WorkWanted(_)
            | Body::WorkReturned(_)
            | Body::WorkMoved(_) => Self::Parts,
            Body::Photo(_) => Self::Photos,
            Body::Note(_) => Self::Notes,
            _ => Self::Other,
        }
    }

    /// Stable name.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Readings => "readings",
            Self::Limits => "limits",
            Self::Tools => "tools",
            Self::Steps => "steps",
            Self::Tightening => "tightening",
            Self::Oil => "oil",
            Self::Parts => "parts",
            Self::Photos => "photos",
            Self::Notes => "notes",
            Self::Other => "other",
        }
    }

    /// So many of them, in words.
    #[must_use]
    pub fn count(self, count: usize) -> String {
        let (one, more) = match self {
            Self::Readings => ("reading", "readings"),
            Self::Limits => ("set of limits", "sets of limits"),
            Self::Tools => ("line on tools", "lines on tools"),
            Self::Steps => ("line on steps and checks", "lines on steps and checks"),
            Self::Tightening => ("line on tightening", "lines on tightening"),
            Self::Oil => ("line on oil and running", "lines on oil and running"),
            Self::Parts => (
                "line on parts and machine work",
                "lines on parts and machine work",
            ),
            Self::Photos => ("photo", "photos"),
            Self::Notes => ("note", "notes"),
            Self::Other => ("other line", "other lines"),
        };
        format!("{count} {}", if count == 1 { one } else { more })
    }

    /// The sort in words.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Readings => "Readings",
            Self::Limits => "Limits",
            Self::Tools => "Tools",
            Self::Steps => "Steps and checks",
            Self::Tightening => "Tightening",
            Self::Oil => "Oil and running",
            Self::Parts => "Parts and machine work",
            Self::Photos => "Photos",
            Self::Notes => "Notes",
            Self::Other => "Everything else",
        }
    }
}

/// The parts of the engine that a fact speaks of.
#[must_use]
pub fn parts_of(body: &Body) -> Vec<At> {
    let one = |spot: &Option<Spot>| spot.iter().filter_map(Spot::place).collect::<Vec<_>>();
    let places = match body {
        Body::Reading(reading) => reading.place.place().into_iter().collect(),
        Body::WorkReturned(returned) => returned.place.place().into_iter().collect(),
        Body::LimitsSet(limits) => one(&limits.place),
        Body::Note(note) => one(&note.place),
        Body::StepMarked(marked) => one(&marked.place),
        Body::CheckMade(made) => one(&made.place),
        Body::Waived(waived) => one(&waived.place),
        Body::Photo(photo) => one(&photo.place),
        Body::PartListed(listed) => one(&listed.place),
        Body::PartOnBench(listed) => one(&listed.place),
        Body::PartsPlaced(made) => {
            (made.placed.iter().filter_map(|one| one.place.place())).collect()
        }
        Body::WorkWanted(wanted) => one(&wanted.place),
        Body::EventHappened(event) => event.places.iter().filter_map(Spot::place).collect(),
        _ => Vec::new(),
    };
    places.into_iter().map(|place| place.at).collect()
}

/// Which lines are wanted.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Wanted {
    /// Of this sort only; its stable name, or nothing.
    pub sort: String,
    /// Of this part of the engine only, as it is said; or nothing.
    pub part: String,
}

impl Wanted {
    /// Whether a fact is among them.
    #[must_use]
    pub fn holds(&self, fact: &Fact) -> bool {
        let body = fact.body();
        let sort = self.sort.is_empty() || Sort::of(body).id() == self.sort;
        let part = || parts_of(body).iter().any(|at| at.to_string() == self.part);
        sort && (self.part.is_empty() || part())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fact::Note;
    use build_journal::{DeviceId, Stamper};
    use build_plan::Place;

    fn note(place: Option<Place>) -> Fact {
        let body = Body::Note(Note {
            text: "x".to_owned(),
            place: place.map(Spot::Known),
            step: None,
        });
        Fact::new(
            Stamper::new().stamp(1, 1),
            DeviceId::from_random(1),
            1,
            body,
        )
    }

    #[test]
    fn a_filter_takes_what_fits_in_sort_and_in_part() {
        let wanted = |sort: &str, part: &str| Wanted {
            sort: sort.to_owned(),
            part: part.to_owned(),
        };
        let here = note(Some(Place::main(3)));
        assert!(wanted("", "").holds(&here));
        assert!(wanted("notes", "main 3").holds(&here));
        assert!(!wanted("readings", "main 3").holds(&here));
        assert!(!wanted("notes", "main 2").holds(&here));
        assert!(!wanted("", "main 3").holds(&note(None)));
    }

    #[test]
    fn each_sort_has_a_name_of_its_own() {
        let names: std::collections::BTreeSet<_> = Sort::ALL.iter().map(|one| one.id()).collect();
        assert_eq!(names.len(), Sort::ALL.len());
        assert_eq!(Sort::Photos.count(1), "1 photo");
        assert_eq!(Sort::Limits.count(2), "2 sets of limits");
    }
}
