//! What can be seen: signs that a builder ticks, and signs in a row of readings.

use super::inferred::{Inferred, Meaning, Reading, infer};
use crate::oil::circuit::{Circuit, Pump};

/// A sign. Each is what the gauge, or the engine beside it, says.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug)]
#[non_exhaustive]
pub enum Sign {
    /// Nothing while priming, and the drill turns free.
    NothingDrillFree,
    /// Nothing while priming, and the drill pulls hard.
    NothingDrillHeavy,
    /// Nothing while cranking, though priming was fine.
    NothingAtCrank,
    /// Low at idle, fine at speed.
    LowIdleFineFast,
    /// Low, and lower as the speed climbs.
    FallsAsSpeedClimbs,
    /// Low everywhere by the same ratio.
    LowEverywhere,
    /// One low value at all speeds.
    FlatLow,
    /// High, and it stays so.
    HighAndStays,
    /// Good pressure, but a rocker stays dry.
    DryRocker,
    /// Good, then suddenly nothing when hot.
    SuddenlyNothingHot,
    /// Flickers in corners or when braking.
    FlickersInCorners,
    /// The needle swings.
    NeedleSwings,
    /// Normal pressure and a knock.
    KnockAtNormalPressure,
    /// Falls over days.
    FallsOverDays,
    /// Rose after the filter was changed.
    RoseAfterFilter,
    /// Fine cold, under 5 psi at hot idle.
    FineColdLowHot,
    /// Takes five seconds and more to rise at each start.
    SlowToRise,
    /// The dashboard says something else than a second gauge.
    DiffersFromDash,
}

impl Sign {
    /// All of them, in the order in which they are asked.
    pub const ALL: [Self; 18] = [
        Self::NothingDrillFree,
        Self::NothingDrillHeavy,
        Self::NothingAtCrank,
        Self::LowIdleFineFast,
        Self::FallsAsSpeedClimbs,
        Self::LowEverywhere,
        Self::FlatLow,
        Self::HighAndStays,
        Self::DryRocker,
        Self::SuddenlyNothingHot,
        Self::FlickersInCorners,
        Self::NeedleSwings,
        Self::KnockAtNormalPressure,
        Self::FallsOverDays,
        Self::RoseAfterFilter,
        Self::FineColdLowHot,
        Self::SlowToRise,
        Self::DiffersFromDash,
    ];

    /// What the builder sees, in a few words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::NothingDrillFree => "nothing while priming, drill turns free",
            Self::NothingDrillHeavy => "nothing while priming, drill pulls hard",
            Self::NothingAtCrank => "nothing while cranking, priming was fine",
            Self::LowIdleFineFast => "low at idle, fine at speed",
            Self::FallsAsSpeedClimbs => "low, and lower as the speed climbs",
            Self::LowEverywhere => "low everywhere by the same ratio",
            Self::FlatLow => "one low value at all speeds",
            Self::HighAndStays => "high, and stays so",
            Self::DryRocker => "good pressure, a dry rocker",
            Self::SuddenlyNothingHot => "good, then suddenly nothing when hot",
            Self::FlickersInCorners => "flickers in corners or when braking",
            Self::NeedleSwings => "needle swings",
            Self::KnockAtNormalPressure => "normal pressure, and a knock",
            Self::FallsOverDays => "falls over days",
            Self::RoseAfterFilter => "rose after the filter was changed",
            Self::FineColdLowHot => "fine cold, under 5 psi at hot idle",
            Self::SlowToRise => "five seconds and more to rise at each start",
            Self::DiffersFromDash => "dashboard and second gauge differ",
        }
    }
}

/// By how much more than predicted the leak has to be before it counts as low
/// pressure, and how many of its own deviations at least.
const CLEARLY_MORE: f64 = 1.3;
const DEVIATIONS: f64 = 2.0;

/// The signs in a row of readings of an engine whose clearances are known. Readings
/// that tell nothing are passed over.
#[must_use]
pub fn signs_of(circuit: &Circuit, pump: &Pump, readings: &[Reading]) -> Vec<Sign> {
    let mut leaks: Vec<(&Reading, Inferred)> = Vec::new();
    let mut at_relief: Vec<f64> = Vec::new();
    for reading in readings {
        match infer(circuit, pump, reading) {
            Meaning::Leak(inferred) => leaks.push((reading, inferred)),
            Meaning::AtRelief(ratio) => at_relief.push(ratio),
            Meaning::NoTemperature | Meaning::NotRunning => {}
        }
    }
    leaks.sort_by(|(a, _), (b, _)| a.speed.total_cmp(&b.speed));
    let mut signs = Vec::new();
    if at_relief.iter().any(|ratio| *ratio > 1.25) {
        signs.push(Sign::HighAndStays);
    }
    if let (Some((slow, at_slow)), Some((fast, at_fast))) = (leaks.first(), leaks.last()) {
        signs.extend(sign_of_pair(
            (slow, at_slow),
            (fast, at_fast),
            !at_relief.is_empty(),
        ));
    }
    signs
}

fn is_low(inferred: &Inferred) -> bool {
    inferred.of_predicted > CLEARLY_MORE
        && inferred.of_predicted - 1.0 > DEVIATIONS * inferred.deviation / inferred.of_predicted
}

fn sign_of_pair(
    (slow, at_slow): (&Reading, &Inferred),
    (fast, at_fast): (&Reading, &Inferred),
    reaches_relief: bool,
) -> Option<Sign> {
    let apart = fast.speed > 1.5 * slow.speed;
    if !apart {
        return is_low(at_slow).then_some(Sign::LowIdleFineFast);
    }
    if is_low(at_fast) && fast.pressure < 0.97 * slow.pressure {
        return Some(Sign::FallsAsSpeedClimbs);
    }
    if is_low(at_fast) && fast.pressure < 1.15 * slow.pressure {
        return Some(Sign::FlatLow);
    }
    let growth = at_fast.of_predicted / at_slow.of_predicted;
    if is_low(at_slow) && (reaches_relief || growth < 0.8) {
        return Some(Sign::LowIdleFineFast);
    }
    if is_low(at_slow) && is_low(at_fast) {
        return Some(Sign::LowEverywhere);
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{Origin, Sources};
    use crate::oil::circuit::At;
    use crate::oil::circuit::example::{five_main_circuit, five_main_layout, standard_pump};

    fn engine() -> (Circuit, Pump) {
        let mut sources = Sources::new();
        let layout = five_main_layout(&mut sources);
        (
            five_main_circuit(&layout, &mut sources).unwrap(),
            standard_pump(),
        )
    }

    fn row(of: impl Fn(f64) -> f64, speeds: &[f64]) -> Vec<Reading> {
        let (circuit, pump) = engine();
        let cause = Sources::new().fresh("oil", Origin::Stated);
        speeds
            .iter()
            .map(|speed| {
                let at = At {
                    speed: *speed,
                    temperature: 378.15,
                };
                let predicted = circuit.pressure(&pump, at, cause).unwrap().value();
                Reading {
                    pressure: of(predicted),
                    speed: *speed,
                    temperature: Some(378.15),
                }
            })
            .collect()
    }

    #[test]
    fn rows_show_their_signs() {
        let (circuit, pump) = engine();
        let speeds = [70.0, 110.0, 160.0];
        let as_predicted = row(|pressure| pressure, &speeds);
        assert_eq!(signs_of(&circuit, &pump, &as_predicted), []);
        let half = row(|pressure| 0.4 * pressure, &speeds);
        assert_eq!(signs_of(&circuit, &pump, &half), [Sign::LowEverywhere]);
        let flat = row(|_| 0.8e5, &speeds);
        assert_eq!(signs_of(&circuit, &pump, &flat), [Sign::FlatLow]);
        let mut falling = half.clone();
        falling[2].pressure = 0.7 * falling[0].pressure;
        assert_eq!(
            signs_of(&circuit, &pump, &falling),
            [Sign::FallsAsSpeedClimbs]
        );
        let mut unknown = half;
        for reading in &mut unknown {
            reading.temperature = None;
        }
        assert_eq!(signs_of(&circuit, &pump, &unknown), []);
    }

    #[test]
    fn a_stuck_relief_shows_high() {
        let (circuit, pump) = engine();
        let high = [Reading {
            pressure: 1.6 * pump.relief.opens_at,
            speed: 400.0,
            temperature: Some(370.0),
        }];
        assert_eq!(signs_of(&circuit, &pump, &high), [Sign::HighAndStays]);
    }

    #[test]
    fn every_sign_has_words_of_its_own() {
        for (at, one) in Sign::ALL.iter().enumerate() {
            assert!(!one.words().is_empty());
            assert!(
                Sign::ALL[at + 1..]
                    .iter()
                    .all(|other| other.words() != one.words())
            );
        }
    }
}
