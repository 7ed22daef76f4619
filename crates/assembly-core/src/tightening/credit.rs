//! Why a tightening does not count, even when every bolt is ticked.

use std::collections::BTreeMap;

use thiserror::Error;

use super::kind::Kind;
use super::run::{Standing, Sureness};
use super::wrenches::Wrench;
use crate::fastener::adapter::Adapter;
use crate::fastener::stages::Stage;
use crate::fastener::wrench::{Place, Scale};

/// What was recorded of a group and its tightening.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Record {
    /// The lubricant on the threads, when it was written down; "none" is one.
    pub thread_lubricant: Option<String>,
    /// The lubricant under the heads, when it was written down.
    pub head_lubricant: Option<String>,
    /// The wrench's scale, when the wrench was named.
    pub wrench: Option<Scale>,
    /// The adapter on it, when there is one: what the wrench was set to counts,
    /// not what the bolt got.
    pub adapter: Option<Adapter>,
    /// Laps, from nothing, that are pulled with another wrench than that one.
    pub others: BTreeMap<usize, Wrench>,
    /// How often a bolt may be used by the builder's sheet; the kind's own
    /// limit when there is none.
    pub uses_allowed: Option<u32>,
    /// Uses of each bolt before this run; none counts as new.
    pub used_before: Vec<u32>,
    /// Bolts that are not the ones of the map: another length, another mark.
    pub not_as_mapped: Vec<usize>,
}

/// A reason for which a tightening does not count.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum NoCredit {
    /// It is not through.
    #[error("{left} of {of} pulls are still to be made")]
    NotThrough {
        /// Those left.
        left: usize,
        /// All of them.
        of: usize,
    },
    /// After an interruption nobody said where it stood.
    #[error("it was interrupted, and nobody has said since where it stood")]
    NotSaid,
    /// The lubricant was not written down.
    #[error(
        "the lubricant {} is not written down: the same torque pulls a third harder oiled than dry",
        place
    )]
    LubricantNotRecorded {
        /// Where.
        place: &'static str,
    },
    /// No wrench was named.
    #[error("no wrench is named: nobody can say what the click was worth")]
    NoWrench,
    /// A torque is outside of the wrench's useful band.
    #[error("lap {} is {} of the wrench that was used: take another one", lap + 1, match place { Place::OffTheScale => "off the scale", _ => "too low on the scale" })]
    WrenchOutsideItsBand {
        /// The lap.
        lap: usize,
        /// Where it lies.
        place: Place,
    },
    /// A bolt was used too often.
    #[error("bolt {} has been tightened {uses} times and may be {allowed}: take a new one", bolt + 1)]
    UsedTooOften {
        /// The bolt.
        bolt: usize,
        /// How often.
        uses: u32,
        /// How often it may.
        allowed: u32,
    },
    /// A bolt is not the one that belongs there.
    #[error("bolt {} is not the one that the map names for its hole: look at its length and mark", bolt + 1)]
    NotAsMapped {
        /// The bolt.
        bolt: usize,
    },
}

/// Everything that stands against a tightening; nothing when it counts.
#[must_use]
pub fn against(kind: Kind, standing: &Standing, record: &Record) -> Vec<NoCredit> {
    let mut reasons = Vec::new();
    let of = standing.stages().len() * standing.uses().len();
    let left = of.saturating_sub(standing.done());
    if left > 0 {
        reasons.push(NoCredit::NotThrough { left, of });
    }
    if standing.sureness() == Sureness::NotSaid {
        reasons.push(NoCredit::NotSaid);
    }
    for (recorded, place) in [
        (&record.thread_lubricant, "on the threads"),
        (&record.head_lubricant, "under the heads"),
    ] {
        if recorded
            .as_deref()
            .is_none_or(|text| text.trim().is_empty())
        {
            reasons.push(NoCredit::LubricantNotRecorded { place });
        }
    }
    wrench(standing, record, &mut reasons);
    if let Some(allowed) = record.uses_allowed.or(kind.uses()) {
        for (bolt, run) in standing.uses().into_iter().enumerate() {
            let before = record.used_before.get(bolt).copied().unwrap_or_default();
            let uses = before.saturating_add(run);
            if uses > allowed {
                reasons.push(NoCredit::UsedTooOften {
                    bolt,
                    uses,
                    allowed,
                });
            }
        }
    }
    reasons.extend(
        record
            .not_as_mapped
            .iter()
            .map(|bolt| NoCredit::NotAsMapped { bolt: *bolt }),
    );
    reasons
}

fn wrench(standing: &Standing, record: &Record, reasons: &mut Vec<NoCredit>) {
    let torques = standing
        .stages()
        .iter()
        .enumerate()
        .filter_map(|(lap, stage)| match stage {
            Stage::Torque(torque) => Some((lap, *torque)),
            Stage::Angle(_) | Stage::Stretch(_) => None,
        });
    let torques: Vec<(usize, f64)> = torques.collect();
    let last = torques.iter().map(|one| one.1).fold(0.0, f64::max);
    let usual = (record.wrench).map(|scale| Wrench::new(scale, None, record.adapter));
    let with = |lap: usize| record.others.get(&lap).copied().or(usual);
    if torques.iter().any(|(lap, _)| with(*lap).is_none()) {
        reasons.push(NoCredit::NoWrench);
    }
    for (lap, torque) in torques {
        let Some(wrench) = with(lap) else {
            continue;
        };
        let place = wrench.lies(torque).place;
        // A soft first lap low on the scale does no harm; the final one decides.
        let counts = match place {
            Place::OffTheScale => true,
            Place::TooLow => torque >= last * (1.0 - 1e-9),
            Place::Useful | Place::High => false,
        };
        if counts {
            reasons.push(NoCredit::WrenchOutsideItsBand { lap, place });
        }
    }
}
