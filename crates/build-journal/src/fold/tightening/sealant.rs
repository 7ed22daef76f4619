//! A joint with sealant, and its clock.

use assembly_core::tightening::sealant::{Phase, Waits, phase};

use crate::fact::{Fact, SealantPutOn};
use crate::fold::clocks::duration;
use crate::id::FactId;

const MINUTE: i64 = 60_000;

/// Sealant that was put on.
#[derive(Clone, PartialEq, Debug)]
pub struct Sealant {
    /// The fact.
    pub fact: FactId,
    /// What it is, as the tube says.
    pub what: Option<String>,
    /// The waits of the tube, or what is wrong with them.
    pub waits: Result<Waits, String>,
    /// When it was put on: milliseconds since 1970 by the device's clock.
    pub put_on: i64,
    /// When the joint was closed.
    pub closed: Option<i64>,
}

impl Sealant {
    pub(super) fn of(fact: &Fact, made: &SealantPutOn) -> Self {
        Self {
            fact: fact.id(),
            what: made.what.clone(),
            waits: waits(made),
            put_on: fact.clock(),
            closed: None,
        }
    }

    /// Where it stands at this moment; nothing when its waits cannot be used.
    #[must_use]
    pub fn phase(&self, now: i64) -> Option<Phase> {
        let waits = self.waits.as_ref().ok()?;
        let time = |clock: i64| u64::try_from(clock).unwrap_or_default();
        Some(phase(
            waits,
            time(self.put_on),
            self.closed.map(time),
            time(now),
        ))
    }
}

/// The waits as typed.
///
/// # Errors
/// A sentence: which of them cannot be read, or do not fit together.
pub fn waits(made: &SealantPutOn) -> Result<Waits, String> {
    let read = |typed: &str| {
        let time = duration(typed, MINUTE).and_then(|time| u64::try_from(time).ok());
        time.ok_or_else(|| {
            format!("“{typed}” is no time: type it as on the tube, such as 10 min, 2 h or 1 day.")
        })
    };
    let optional = |typed: &Option<String>| typed.as_deref().map(read).transpose();
    let (torque, oil) = (optional(&made.torque_from)?, optional(&made.oil_from)?);
    Waits::new(read(&made.close_by)?, torque, oil)
        .map_err(|error| super::sheet::sentence(&error.to_string()))
}
