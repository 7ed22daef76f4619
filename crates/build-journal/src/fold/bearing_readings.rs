//! The readings of one bearing, sorted by what they are readings of.

use std::collections::BTreeMap;

use assembly_core::describe::{Finding, Gravity, length_text};
use assembly_core::fit::running_clearance::{
    RunningClearance, Station, StripReading, from_stations, from_strip,
};
use assembly_core::measure::{Measured, Sources};
use assembly_core::quantity::Si;
use build_plan::{Direction, Place};
use uom::si::f64::Length;

use super::bench::{Bench, Measuring, NoGiveOrTake};
use super::readings::Taken;
use super::standing::Missing;
use super::store::Readings;
use crate::id::FactId;

/// Several readings of one place.
#[derive(Default)]
struct Repeats(Vec<Measured<Length>>);

/// Along the bearing, front to rear, then in which direction.
type Places = BTreeMap<Place, Repeats>;

/// The readings of one bearing that count, and those that have no give-or-take.
#[derive(Default)]
pub(super) struct Sorted {
    bores: Places,
    journals: Places,
    clearances: Places,
    bores_that_do_not_count: usize,
    without_tool: Vec<FactId>,
    without_known_tool: Vec<FactId>,
    without_zero: Vec<FactId>,
}

/// Readings of one place that differ by more than this many of their
/// give-or-takes are a slip more likely than chance.
const FAR_APART: f64 = 4.0;

/// The readings of a bearing by what they are readings of.
pub(super) struct Roles<'a> {
    /// Of its bore.
    pub(super) bores: Vec<&'a Taken>,
    /// Of its journal.
    pub(super) journals: Vec<&'a Taken>,
    /// Of the clearance itself.
    pub(super) clearances: Vec<&'a Taken>,
}

impl Sorted {
    pub(super) fn of(roles: &Roles, bench: &Bench, all: &Readings, sources: &mut Sources) -> Self {
        let mut sorted = Self::default();
        let mut measuring = Measuring::new(bench, all, sources);
        sorted.journals = sorted.places(&roles.journals, &mut measuring);
        sorted.bores = sorted.places(&roles.bores, &mut measuring);
        sorted.clearances = sorted.places(&roles.clearances, &mut measuring);
        // Along the joint a shell is relieved: it says nothing of the clearance.
        let all_bores = sorted.bores.len();
        sorted
            .bores
            .retain(|place, _| place.direction != Some(Direction::Across));
        sorted.bores_that_do_not_count = all_bores - sorted.bores.len();
        sorted
    }

    fn places(&mut self, readings: &[&Taken], measuring: &mut Measuring) -> Places {
        let mut places = Places::new();
        for taken in readings {
            let (Some(typed), Some(place)) = (taken.counting(), taken.place) else {
                continue;
            };
            match measuring.measured(taken, typed) {
                Ok(measured) => places.entry(place).or_default().0.push(measured),
                Err(NoGiveOrTake::ToolNotSaid) => self.without_tool.push(taken.fact),
                Err(NoGiveOrTake::ToolNotKnown) => self.without_known_tool.push(taken.fact),
                Err(NoGiveOrTake::SetAtNotSaid) => self.without_zero.push(taken.fact),
            }
        }
        places
    }

    /// The clearance from bore and journal, when both are there.
    pub(super) fn by_size(&self) -> Option<RunningClearance> {
        let mut stations: BTreeMap<_, Station> = BTreeMap::new();
        for (place, repeats) in &self.bores {
            let station = stations.entry(place.station).or_default();
            let near_joint = matches!(
                place.direction,
                Some(Direction::JointLeft | Direction::JointRight)
            );
            let list = if near_joint {
                &mut station.bores_near_joint
            } else {
                &mut station.bores
            };
            list.extend(repeats.mean());
        }
        for (place, repeats) in &self.journals {
            let station = stations.entry(place.station).or_default();
            station.journals.extend(repeats.mean());
        }
        let stations: Vec<Station> = stations.into_values().collect();
        from_stations(&stations).ok()
    }

    /// The clearance as it was read at once: in the middle or at its widest
    /// spot, and at the two ends when both were read.
    pub(super) fn at_once(&self) -> Option<RunningClearance> {
        let means: Vec<(Place, Measured<Length>)> = self
            .clearances
            .iter()
            .filter_map(|(place, repeats)| Some((*place, repeats.mean()?)))
            .collect();
        let at_ends: Vec<Measured<Length>> = means
            .iter()
            .filter(|(place, _)| place.station.is_some())
            .map(|(_, mean)| mean.clone())
            .collect();
        let widest = means
            .iter()
            .find(|(place, _)| place.station.is_none())
            .map(|(_, mean)| mean.clone());
        let ends = match at_ends.as_slice() {
            [front, rear] => Some((front.clone(), rear.clone())),
            _ => None,
        };
        let widest = widest.or_else(|| Measured::least(&at_ends).cloned())?;
        from_strip(&[StripReading { widest, ends }]).ok()
    }

    pub(super) fn largest_journal(&self) -> Option<Measured<Length>> {
        let means: Vec<Measured<Length>> =
            self.journals.values().filter_map(Repeats::mean).collect();
        Measured::greatest(&means).cloned()
    }

    /// How many readings of each place there are: the fewest of any.
    pub(super) fn readings_of_each_place(&self) -> usize {
        let used: &[&Places] = if self.bores.is_empty() || self.journals.is_empty() {
            &[&self.clearances]
        } else {
            &[&self.bores, &self.journals]
        };
        used.iter()
            .flat_map(|places| places.values())
            .map(|repeats| repeats.0.len())
            .min()
            .unwrap_or(1)
    }

    /// What is missing for a verdict, but for the limits.
    pub(super) fn missing(&self) -> Vec<Missing> {
        let mut missing = Vec::new();
        let upright = self.bores.keys().any(|place| {
            !matches!(
                place.direction,
                Some(Direction::JointLeft | Direction::JointRight)
            )
        });
        let sized = upright && !self.journals.is_empty();
        let facts = |facts: &Vec<FactId>| facts.clone();
        if !self.without_tool.is_empty() {
            let facts = facts(&self.without_tool);
            missing.push(Missing::Tool { facts });
        }
        if !self.without_known_tool.is_empty() {
            let facts = facts(&self.without_known_tool);
            missing.push(Missing::KnownTool { facts });
        }
        if !self.without_zero.is_empty() {
            let facts = facts(&self.without_zero);
            missing.push(Missing::ZeroedAt { facts });
        }
        if !sized && self.clearances.is_empty() && missing.is_empty() {
            match (upright, !self.journals.is_empty()) {
                (false, false) if self.bores.is_empty() => missing.push(Missing::AllReadings),
                (false, true) => missing.push(Missing::Bore),
                (true, false) => missing.push(Missing::Journal),
                _ => missing.extend([Missing::Bore, Missing::Journal]),
            }
        }
        missing
    }

    /// What the numbers say besides their value.
    pub(super) fn findings(
        &self,
        by_size: Option<&RunningClearance>,
        at_once: Option<&RunningClearance>,
    ) -> Vec<Finding> {
        let mut findings: Vec<Finding> = by_size
            .into_iter()
            .chain(at_once)
            .flat_map(|clearance| clearance.findings.clone())
            .collect();
        for (what, places) in [
            ("bore", &self.bores),
            ("journal", &self.journals),
            ("clearance", &self.clearances),
        ] {
            for (place, repeats) in places {
                if let Some(apart) = repeats.far_apart() {
                    findings.push(caution(format!(
                        "The readings of the {what} at {place} differ by {}: is one of them a slip? Strike it out.",
                        length_text(apart)
                    )));
                }
            }
        }
        if self.bores_that_do_not_count > 0 {
            findings.push(note(
                "A bore read along the joint does not count: the shells are relieved there.",
            ));
        }
        if let (Some(by_size), Some(at_once)) = (by_size, at_once) {
            findings.extend(disagreement(by_size, at_once));
        }
        findings
    }
}

impl Repeats {
    fn mean(&self) -> Option<Measured<Length>> {
        Measured::mean(&self.0)
    }

    /// How far two readings of the place lie apart, when that is too far for chance.
    fn far_apart(&self) -> Option<f64> {
        let least = Measured::least(&self.0)?;
        let greatest = Measured::greatest(&self.0)?;
        let apart = greatest - least;
        let by = apart.value().to_si();
        (by > FAR_APART * apart.give_or_take().to_si() && by > 0.0).then_some(by)
    }
}

/// The two ways of measuring are each other's second opinion.
fn disagreement(by_size: &RunningClearance, at_once: &RunningClearance) -> Option<Finding> {
    let apart = &at_once.least - &by_size.least;
    let by = apart.value().to_si();
    (by.abs() > 2.0 * apart.give_or_take().to_si()).then(|| {
        caution(format!(
            "Read at once, the clearance is {} {} than from bore and journal: that is more than measuring explains. Measure again.",
            length_text(by.abs()),
            if by < 0.0 { "tighter" } else { "looser" }
        ))
    })
}

fn caution(text: impl Into<String>) -> Finding {
    Finding {
        gravity: Gravity::Caution,
        text: text.into(),
    }
}

fn note(text: impl Into<String>) -> Finding {
    Finding {
        gravity: Gravity::Note,
        text: text.into(),
    }
}
