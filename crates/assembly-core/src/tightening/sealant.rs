//! The clock of a sealant, from when it was put on. The waits are those of the
//! tube: sources differ, so there is no waiting time of ours.
//!
//! No clock is read here: both times are handed in, so a phone that slept or was
//! off in between changes nothing.

use thiserror::Error;

/// The waits that a tube prints, each counted from when the sealant was put on,
/// milliseconds.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct Waits {
    close_by: u64,
    torque_from: Option<u64>,
    oil_from: Option<u64>,
}

/// What is wrong with the waits.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Error)]
#[non_exhaustive]
pub enum WaitsError {
    /// There is no time to close the joint in.
    #[error("the time until it skins is nothing: type the minutes from the tube")]
    NoTime,
    /// Final torque would come before the joint has to be closed.
    #[error("full torque comes before the sealant skins: look at the two figures on the tube")]
    TorqueTooSoon,
    /// Oil would come before final torque.
    #[error("oil comes before full torque: look at the two figures on the tube")]
    OilTooSoon,
}

impl Waits {
    /// The joint has to be closed by, may be torqued from, may get oil from.
    ///
    /// # Errors
    /// What does not fit together.
    pub fn new(
        close_by: u64,
        torque_from: Option<u64>,
        oil_from: Option<u64>,
    ) -> Result<Self, WaitsError> {
        if close_by == 0 {
            return Err(WaitsError::NoTime);
        }
        if torque_from.is_some_and(|torque| torque < close_by) {
            return Err(WaitsError::TorqueTooSoon);
        }
        if oil_from.is_some_and(|oil| oil < torque_from.unwrap_or(close_by)) {
            return Err(WaitsError::OilTooSoon);
        }
        Ok(Self {
            close_by,
            torque_from,
            oil_from,
        })
    }
}

/// Where a joint stands; times left in milliseconds.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Phase {
    /// It can still be closed.
    Open {
        /// Until it skins.
        left: u64,
    },
    /// It has skinned and the joint is open: off with it, clean, and again.
    Skinned,
    /// It was closed after it had skinned: it will leak.
    ClosedTooLate,
    /// Closed and snug: full torque has to wait.
    Setting {
        /// Until full torque.
        left: u64,
    },
    /// Full torque may be given; oil has to wait.
    ReadyForTorque {
        /// Until oil; `None` when the tube says nothing of it.
        until_oil: Option<u64>,
    },
    /// Nothing is waited for any more.
    Ready,
    /// The clock stands before the sealant was put on: somebody set it back.
    ClockWentBack,
}

/// Where a joint stands at a time, all as milliseconds of one wall clock.
#[must_use]
pub fn phase(waits: &Waits, put_on: u64, closed: Option<u64>, now: u64) -> Phase {
    let Some(age) = now.checked_sub(put_on) else {
        return Phase::ClockWentBack;
    };
    let Some(closed) = closed else {
        return match waits.close_by.checked_sub(age) {
            Some(left) if left > 0 => Phase::Open { left },
            _ => Phase::Skinned,
        };
    };
    let Some(closed_at) = closed.checked_sub(put_on) else {
        return Phase::ClockWentBack;
    };
    if closed_at > waits.close_by {
        return Phase::ClosedTooLate;
    }
    let until = |wait: u64| wait.checked_sub(age).filter(|left| *left > 0);
    if let Some(left) = waits.torque_from.and_then(until) {
        return Phase::Setting { left };
    }
    match waits.oil_from.map(until) {
        Some(None) => Phase::Ready,
        Some(Some(left)) => Phase::ReadyForTorque {
            until_oil: Some(left),
        },
        None => Phase::ReadyForTorque { until_oil: None },
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    const MINUTE: u64 = 60_000;

    fn waits() -> Waits {
        Waits::new(10 * MINUTE, Some(60 * MINUTE), Some(24 * 60 * MINUTE)).unwrap()
    }

    #[test]
    fn the_joint_goes_from_open_to_ready() {
        let at = |closed: Option<u64>, minutes: u64| {
            phase(
                &waits(),
                0,
                closed.map(|one| one * MINUTE),
                minutes * MINUTE,
            )
        };
        assert_eq!(at(None, 4), Phase::Open { left: 6 * MINUTE });
        assert_eq!(at(None, 10), Phase::Skinned);
        assert_eq!(at(Some(5), 20), Phase::Setting { left: 40 * MINUTE });
        assert_eq!(at(Some(11), 20), Phase::ClosedTooLate);
        let until_oil = Some(23 * 60 * MINUTE);
        assert_eq!(at(Some(5), 60), Phase::ReadyForTorque { until_oil });
        assert_eq!(at(Some(5), 24 * 60), Phase::Ready);
        assert_eq!(phase(&waits(), MINUTE, None, 0), Phase::ClockWentBack);
    }

    #[test]
    fn figures_that_do_not_fit_together_are_told() {
        assert_eq!(Waits::new(0, None, None), Err(WaitsError::NoTime));
        assert_eq!(
            Waits::new(10, Some(5), None),
            Err(WaitsError::TorqueTooSoon)
        );
        assert_eq!(
            Waits::new(10, Some(50), Some(20)),
            Err(WaitsError::OilTooSoon)
        );
        assert_eq!(Waits::new(10, None, Some(5)), Err(WaitsError::OilTooSoon));
    }

    proptest! {
        #[test]
        fn no_times_make_it_panic_and_ready_never_ends(put_on in any::<u64>(), closed in prop::option::of(any::<u64>()), now in any::<u64>(), later in any::<u64>()) {
            let first = phase(&waits(), put_on, closed, now);
            if first == Phase::Ready && later >= now {
                prop_assert_eq!(phase(&waits(), put_on, closed, later), Phase::Ready);
            }
        }
    }
}
