//! The first minutes after it fires: what stops it at once, and what changed.
//!
//! Common practice; the maker's limits win. Stopping is always right, and a run-in
//! that was stopped is gone on with.

use crate::oil::circuit::rule::PSI;
use crate::oil::viscosity::line::FREEZING;

/// A row of numbers as noted while it runs.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Note {
    /// Since it fired, seconds.
    pub seconds: f64,
    /// Oil pressure, Pa, if read.
    pub pressure: Option<f64>,
    /// Speed, rad/s, if read.
    pub speed: Option<f64>,
    /// Coolant, kelvin, if read.
    pub coolant: Option<f64>,
    /// Oil, kelvin, if read.
    pub oil: Option<f64>,
}

/// Why to stop.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Stop {
    /// Under 10 psi five seconds after it fired, or later.
    NoPressure,
    /// Pressure fell by 30 % or more at a speed that did not fall.
    PressureDropped,
    /// Coolant over 110 °C (230 °F).
    Boiling,
    /// Oil over 120 °C (250 °F).
    OilTooHot,
}

impl Stop {
    /// What to do, in a sentence.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::NoPressure => "Under 10 psi: off, now. Find out before it turns again.",
            Self::PressureDropped => "The pressure fell by a third: off. Level, drive, pickup.",
            Self::Boiling => "Coolant over 110 °C: off. Do not open the cap; air in the system?",
            Self::OilTooHot => "Oil over 120 °C: off and let it cool.",
        }
    }
}

/// The least pressure, Pa, and from when on it must be there, seconds.
pub const LEAST: (f64, f64) = (10.0 * PSI, 5.0);

/// What a cold engine shows at least soon after it fired, Pa.
pub const GOOD_COLD: f64 = 20.0 * PSI;

/// A fall of the pressure by this part is a stop.
const FALL: f64 = 0.30;

/// The hottest coolant and oil, kelvin.
pub const HOTTEST: (f64, f64) = (110.0 + FREEZING, 120.0 + FREEZING);

/// Speed may have fallen by so much, as a part, and the pressure still says something.
const SAME_SPEED: f64 = 0.85;

/// What stops the engine at the last of these notes, given in the order they were
/// made. Each stop once.
#[must_use]
pub fn stops(notes: &[Note]) -> Vec<Stop> {
    let Some((last, before)) = notes.split_last() else {
        return Vec::new();
    };
    let mut stops = Vec::new();
    if let Some(pressure) = last.pressure {
        if last.seconds >= LEAST.1 && pressure < LEAST.0 {
            stops.push(Stop::NoPressure);
        }
        let earlier = before.iter().rev().find(|note| note.pressure.is_some());
        if earlier.is_some_and(|earlier| has_dropped(earlier, last, pressure)) {
            stops.push(Stop::PressureDropped);
        }
    }
    if last.coolant.is_some_and(|coolant| coolant > HOTTEST.0) {
        stops.push(Stop::Boiling);
    }
    if last.oil.is_some_and(|oil| oil > HOTTEST.1) {
        stops.push(Stop::OilTooHot);
    }
    stops
}

fn has_dropped(earlier: &Note, last: &Note, pressure: f64) -> bool {
    // A slower engine and warmer oil show less without any fault.
    let slower = match (earlier.speed, last.speed) {
        (Some(then), Some(now)) => now < SAME_SPEED * then,
        _ => false,
    };
    !slower
        && earlier
            .pressure
            .is_some_and(|then| pressure <= (1.0 - FALL) * then)
}

/// A row of readings of the same thing at several times: lash of a valve, compression
/// of a cylinder. What counts is the change, not the level.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Trend {
    /// The last less the first.
    pub change: f64,
    /// Whether it is past what should be looked into.
    pub alarm: bool,
}

/// Lash that opened by this much since the first setting: a lobe wears. Metres.
pub const LASH_OPENED: f64 = 0.005 * 0.0254;

/// Compression that fell by this part since the best: a leak grows.
pub const COMPRESSION_FELL: f64 = 0.10;

/// Lash of one valve over time, metres, each as it was found or set; `None` of fewer
/// than two. The alarm stays when the lash is set back: the lobe is no better for it.
#[must_use]
pub fn lash_trend(lash: &[f64]) -> Option<Trend> {
    let first = *lash.first()?;
    let widest = lash.iter().copied().fold(first, f64::max);
    (lash.len() > 1).then_some(Trend {
        change: lash.last()? - first,
        // A rounding must not hide the one that is just there.
        alarm: widest - first >= LASH_OPENED * (1.0 - 1e-9),
    })
}

/// Compression of one cylinder over time, Pa; `None` of fewer than two. It rises
/// while rings bed in, so it is held against the best there was.
#[must_use]
pub fn compression_trend(readings: &[f64]) -> Option<Trend> {
    let best = readings.iter().copied().fold(0.0, f64::max);
    let change = readings.last()? - readings.first()?;
    (readings.len() > 1).then_some(Trend {
        change,
        alarm: *readings.last()? < (1.0 - COMPRESSION_FELL) * best,
    })
}

/// Leak-down that grew by this part of the supply since the least: a leak grows. Ours:
/// a band of the trade is as wide.
pub const LEAK_DOWN_GREW: f64 = 0.05;

/// A leak of the whole oil system that grew by this part since the first reading that
/// tells of it: the same as makes a pressure low.
pub const OIL_LEAK_GREW: f64 = 0.30;

/// Leak-down of one cylinder over time, as parts of the supply; `None` of fewer than
/// two. It falls while rings bed in, so it is held against the least there was.
#[must_use]
pub fn leak_down_trend(readings: &[f64]) -> Option<Trend> {
    let least = readings.iter().copied().fold(f64::INFINITY, f64::min);
    let change = readings.last()? - readings.first()?;
    (readings.len() > 1).then_some(Trend {
        change,
        alarm: *readings.last()? >= least + LEAK_DOWN_GREW * (1.0 - 1e-9),
    })
}

/// The leak that gauge readings tell of over time, by the predicted one; `None` of
/// fewer than two. The level hangs on what was estimated; the change does not.
#[must_use]
pub fn oil_leak_trend(of_predicted: &[f64]) -> Option<Trend> {
    let (first, last) = (*of_predicted.first()?, *of_predicted.last()?);
    (of_predicted.len() > 1 && first > 0.0).then_some(Trend {
        change: last / first - 1.0,
        alarm: last / first - 1.0 >= OIL_LEAK_GREW * (1.0 - 1e-9),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn note(seconds: f64, psi: f64, speed: f64) -> Note {
        Note {
            seconds,
            pressure: Some(psi * PSI),
            speed: Some(speed),
            coolant: Some(350.0),
            oil: None,
        }
    }

    #[test]
    fn no_pressure_after_five_seconds_stops() {
        assert_eq!(stops(&[note(3.0, 4.0, 100.0)]), []);
        assert_eq!(stops(&[note(5.0, 4.0, 100.0)]), [Stop::NoPressure]);
        assert_eq!(stops(&[note(60.0, 45.0, 200.0)]), []);
        assert_eq!(stops(&[]), []);
    }

    #[test]
    fn a_fall_at_speed_stops_and_one_by_slowing_does_not() {
        let fast = note(60.0, 50.0, 200.0);
        assert_eq!(
            stops(&[fast, note(70.0, 35.0, 200.0)]),
            [Stop::PressureDropped]
        );
        assert_eq!(stops(&[fast, note(70.0, 36.0, 200.0)]), []);
        assert_eq!(stops(&[fast, note(70.0, 25.0, 90.0)]), []);
        // A note without a pressure between the two hides nothing.
        let blank = Note {
            pressure: None,
            ..fast
        };
        assert_eq!(
            stops(&[fast, blank, note(70.0, 30.0, 200.0)]),
            [Stop::PressureDropped]
        );
    }

    #[test]
    fn heat_stops() {
        let hot = Note {
            coolant: Some(384.0),
            oil: Some(394.0),
            ..note(600.0, 40.0, 200.0)
        };
        assert_eq!(stops(&[hot]), [Stop::Boiling, Stop::OilTooHot]);
        assert!(
            stops(&[hot])
                .iter()
                .all(|stop| stop.words().contains("off"))
        );
    }

    // Common practice: lash that opened by 0.005 in is an alarm, whatever it is.
    #[test]
    fn alarms_go_by_change() {
        let thou = 25.4e-6;
        assert!(lash_trend(&[20.0 * thou, 25.0 * thou]).unwrap().alarm);
        assert!(!lash_trend(&[30.0 * thou, 31.0 * thou]).unwrap().alarm);
        assert!(!lash_trend(&[20.0 * thou, 14.0 * thou]).unwrap().alarm);
        // Found five open and set back: the lobe is worn all the same.
        let set_back = lash_trend(&[20.0 * thou, 25.0 * thou, 20.0 * thou]).unwrap();
        assert!(set_back.alarm && set_back.change.abs() < 1e-12);
        // A seat that sank, set back to what it was, is no lobe.
        assert!(
            !lash_trend(&[20.0 * thou, 13.0 * thou, 20.0 * thou])
                .unwrap()
                .alarm
        );
        assert_eq!(lash_trend(&[20.0 * thou]), None);
        assert!(!compression_trend(&[1.0e6, 1.1e6]).unwrap().alarm);
        assert!(compression_trend(&[1.0e6, 1.2e6, 1.0e6]).unwrap().alarm);
    }

    #[test]
    fn leaks_alarm_on_their_change_and_not_on_their_level() {
        assert_eq!(leak_down_trend(&[0.08]), None);
        assert!(!leak_down_trend(&[0.25, 0.22, 0.24]).unwrap().alarm);
        assert!(leak_down_trend(&[0.12, 0.06, 0.11]).unwrap().alarm);
        // Twice the predicted all along is a matter of the estimates.
        assert!(!oil_leak_trend(&[2.0, 2.1, 2.4]).unwrap().alarm);
        let grown = oil_leak_trend(&[0.9, 1.2]).unwrap();
        assert!(grown.alarm && (grown.change - 1.0 / 3.0).abs() < 1e-12);
        assert_eq!(oil_leak_trend(&[0.0, 1.0]), None);
    }
}
