//! How long it ran, by speed: minutes add up across interruptions.

use assembly_core::oil::running_in::schedule::{Progress, Schedule, Stretch, ValveGear};
use build_plan::engine::{Engine, Feature};

use super::book::OilBook;
use crate::fact::{Fact, SpeedBand};
use crate::id::{DeviceId, FactId};

/// Nobody runs in for longer than that without a word: a clock was put forward.
const LONGEST: i64 = 2 * 60 * 60_000;

/// A stretch of running at one speed.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct RunStretch {
    /// The fact that it began.
    pub begun: FactId,
    /// The device's clock then, in milliseconds since 1970.
    pub clock: i64,
    device: DeviceId,
    /// Which speeds.
    pub band: SpeedBand,
    /// How long, seconds. While its end was not written, up to the last row of
    /// numbers.
    pub seconds: u32,
    /// Whether its end was written.
    pub ended: bool,
}

impl OilBook {
    pub(super) fn begin(&mut self, fact: &Fact, band: SpeedBand) {
        self.stretches.push(RunStretch {
            begun: fact.id(),
            clock: fact.clock(),
            device: fact.device(),
            band,
            seconds: 0,
            ended: false,
        });
    }

    /// Ends a stretch. Says no when there is none that this fact began.
    pub(super) fn end(&mut self, begun: FactId, seconds: u32) -> bool {
        let Some(stretch) = self.stretches.iter_mut().find(|one| one.begun == begun) else {
            return false;
        };
        stretch.seconds = seconds;
        stretch.ended = true;
        true
    }

    /// A row of numbers shows that it still ran.
    pub(super) fn still_running(&mut self, fact: &Fact) {
        let Some(last) = self.stretches.last_mut() else {
            return;
        };
        let since = fact.clock().saturating_sub(last.clock);
        if !last.ended && last.device == fact.device() && (0..LONGEST).contains(&since) {
            let seconds = u32::try_from(since / 1000).unwrap_or(u32::MAX);
            last.seconds = last.seconds.max(seconds);
        }
    }

    /// The stretch that is not ended, when it is the last.
    #[must_use]
    pub fn open_stretch(&self) -> Option<&RunStretch> {
        self.stretches.last().filter(|one| !one.ended)
    }

    /// What is done of a run-in. A stretch that is still open counts for what its
    /// rows show.
    #[must_use]
    pub fn progress(&self, schedule: &Schedule) -> Progress {
        let (low, high) = schedule.band;
        let stretches: Vec<Stretch> = self
            .stretches
            .iter()
            .map(|one| Stretch {
                speed: match one.band {
                    SpeedBand::Below => 0.5 * low,
                    SpeedBand::Within => f64::midpoint(low, high),
                    SpeedBand::Above => 1.5 * high,
                },
                minutes: f64::from(one.seconds) / 60.0,
            })
            .collect();
        schedule.progress(&stretches)
    }
}

/// What rides on the cam of an engine, for its run-in.
#[must_use]
pub fn valve_gear(engine: &Engine) -> ValveGear {
    if engine.has(Feature::FlatLifters) {
        ValveGear::FlatTappet
    } else if engine.has(Feature::RollerLifters) {
        ValveGear::Roller
    } else {
        ValveGear::OverheadSliding
    }
}
