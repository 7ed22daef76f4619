//! The clearance in a bearing's readings, and what they say besides.

use std::collections::BTreeMap;

use assembly_core::describe::{Finding, Gravity, length_text};
use assembly_core::fit::running_clearance::{
    RunningClearance, Station, StripReading, from_stations, from_strip,
};
use assembly_core::measure::Measured;
use assembly_core::quantity::Si;
use build_plan::{Direction, Place};

use super::register::{Register, Role, Value};
use super::standing::Missing;

/// Readings of one place that differ by more than this many of their
/// give-or-takes are a slip more likely than chance.
const FAR_APART: f64 = 4.0;

/// The readings of one bearing.
#[derive(Clone, Copy)]
pub(super) struct BearingReadings<'a>(pub(super) &'a Register);

/// Near the joint the bore is wider on purpose.
const fn is_near_joint(place: &Place) -> bool {
    matches!(
        place.direction,
        Some(Direction::JointLeft | Direction::JointRight)
    )
}

/// Along the joint a shell is relieved: it says nothing of the clearance.
fn is_along_joint(place: &Place) -> bool {
    place.direction == Some(Direction::Across)
}

impl<'a> BearingReadings<'a> {
    fn bores(self) -> impl Iterator<Item = (Place, &'a Value)> {
        self.0
            .means(Role::Bore)
            .filter(|(place, _)| !is_along_joint(place))
    }

    fn any(self, role: Role) -> bool {
        self.0.means(role).next().is_some()
    }

    /// The clearance from bore and journal, when both are there.
    pub(super) fn by_size(self) -> Option<RunningClearance> {
        let mut stations: BTreeMap<_, Station> = BTreeMap::new();
        for (place, mean) in self.bores() {
            let station = stations.entry(place.station).or_default();
            let list = if is_near_joint(&place) {
                &mut station.bores_near_joint
            } else {
                &mut station.bores
            };
            list.push(mean.clone());
        }
        for (place, mean) in self.0.means(Role::Journal) {
            let station = stations.entry(place.station).or_default();
            station.journals.push(mean.clone());
        }
        let stations: Vec<Station> = stations.into_values().collect();
        from_stations(&stations).ok()
    }

    /// The clearance as it was read at once: in the middle or at its widest
    /// spot, and at the two ends when both were read.
    pub(super) fn at_once(self) -> Option<RunningClearance> {
        let means: Vec<(Place, &Value)> = self.0.means(Role::Itself).collect();
        let at_ends: Vec<Value> = means
            .iter()
            .filter(|(place, _)| place.station.is_some())
            .map(|(_, mean)| (*mean).clone())
            .collect();
        let widest = means
            .iter()
            .find(|(place, _)| place.station.is_none())
            .map(|(_, mean)| (*mean).clone());
        let ends = match at_ends.as_slice() {
            [front, rear] => Some((front.clone(), rear.clone())),
            _ => None,
        };
        let widest = widest.or_else(|| Measured::least(&at_ends).cloned())?;
        from_strip(&[StripReading { widest, ends }]).ok()
    }

    /// The largest journal, SI units.
    pub(super) fn largest_journal(self) -> Option<f64> {
        self.0
            .means(Role::Journal)
            .map(|(_, mean)| mean.value().to_si())
            .max_by(f64::total_cmp)
    }

    /// How many readings of each place there are: the fewest of any that the
    /// verdict goes by.
    pub(super) fn readings_of_each_place(self) -> usize {
        let by_size = self.bores().next().is_some() && self.any(Role::Journal);
        let roles: &[Role] = if by_size {
            &[Role::Bore, Role::Journal]
        } else {
            &[Role::Itself]
        };
        roles
            .iter()
            .flat_map(|role| self.0.places(*role))
            .filter(|(place, _)| !is_along_joint(place) || !by_size)
            .map(|(_, repeats)| repeats.len())
            .min()
            .unwrap_or(1)
    }

    /// What is missing for a verdict, but for the limits.
    pub(super) fn missing(self) -> Vec<Missing> {
        let mut missing = self.0.missing();
        let upright = self.bores().any(|(place, _)| !is_near_joint(&place));
        let journal = self.any(Role::Journal);
        if (upright && journal) || self.any(Role::Itself) || !missing.is_empty() {
            return missing;
        }
        match (upright, journal) {
            (false, false) if self.bores().next().is_none() => missing.push(Missing::AllReadings),
            (false, true) => missing.push(Missing::Bore),
            (true, false) => missing.push(Missing::Journal),
            _ => missing.extend([Missing::Bore, Missing::Journal]),
        }
        missing
    }

    /// What the numbers say besides their value.
    pub(super) fn findings(
        self,
        by_size: Option<&RunningClearance>,
        at_once: Option<&RunningClearance>,
    ) -> Vec<Finding> {
        let mut findings: Vec<Finding> = by_size
            .into_iter()
            .chain(at_once)
            .flat_map(|clearance| clearance.findings.clone())
            .collect();
        for (what, role) in [
            ("bore", Role::Bore),
            ("journal", Role::Journal),
            ("clearance", Role::Itself),
        ] {
            for (place, repeats) in self.0.places(role) {
                if let Some(apart) = repeats.apart_by_more_than(FAR_APART) {
                    findings.push(caution(format!(
                        "The readings of the {what} at {place} differ by {}: is one of them a slip? Strike it out.",
                        length_text(apart)
                    )));
                }
            }
        }
        if self
            .0
            .means(Role::Bore)
            .any(|(place, _)| is_along_joint(&place))
        {
            findings.push(Finding {
                gravity: Gravity::Note,
                text: "A bore read along the joint does not count: the shells are relieved there."
                    .to_owned(),
            });
        }
        if let (Some(by_size), Some(at_once)) = (by_size, at_once) {
            findings.extend(disagreement(by_size, at_once));
        }
        findings
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

fn caution(text: String) -> Finding {
    Finding {
        gravity: Gravity::Caution,
        text,
    }
}
