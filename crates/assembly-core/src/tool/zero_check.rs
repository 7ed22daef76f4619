//! Proving a zero on a standard, and which readings a failed proof puts in doubt.

use thiserror::Error;

use super::bench::Tool;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, length_text,
};
use crate::measure::{Estimate, Shape};

/// How many of its own give-or-takes a zero may be off before it is called off.
const DEVIATIONS: f64 = 2.0;

/// A tenth of a nanometre: rounding of the arithmetic, not of any tool.
const UNSEEN: f64 = 1e-10;

/// What a tool showed on a standard. SI units.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct ZeroCheck {
    /// How much the tool reads too large; below zero too small.
    pub off_by: f64,
    /// One standard deviation of that.
    pub give_or_take: f64,
}

/// Why a check says nothing.
#[derive(Clone, Copy, PartialEq, Debug, Error)]
pub enum ZeroCheckError {
    /// Nothing was read.
    #[error("no reading of the standard is there: read it at least once")]
    NoReading,
    /// A reading is not a finite number.
    #[error("a reading or the standard's size is not a finite number: type it again")]
    NotFinite,
}

impl ZeroCheck {
    /// Checks a tool: readings of a standard of this size, everything with its
    /// give-or-take.
    ///
    /// # Errors
    /// [`ZeroCheckError`] when nothing was read or something is no number.
    pub fn of(readings: &[Estimate], standard: &Estimate) -> Result<Self, ZeroCheckError> {
        let mean = Estimate::mean(readings).ok_or(ZeroCheckError::NoReading)?;
        let off = mean - standard;
        if !off.value().is_finite() || !off.deviation().is_finite() {
            return Err(ZeroCheckError::NotFinite);
        }
        Ok(Self {
            off_by: off.value(),
            give_or_take: off.deviation(),
        })
    }

    /// Whether the zero holds: what it is off by is within twice the give-or-take
    /// of the check itself.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.off_by.abs() <= DEVIATIONS * self.give_or_take + UNSEEN
    }

    /// The doubt of the zero that is left in later readings, when the zero is
    /// left as it is.
    #[must_use]
    pub fn doubt_left(&self) -> f64 {
        self.off_by.hypot(self.give_or_take)
    }

    /// What this check says of a reading taken since the zero was last proved
    /// good: it had drifted by anything between nothing and what it is off by
    /// now. The likeliest error, and its standard deviation.
    #[must_use]
    pub fn drift(&self) -> (f64, f64) {
        let half = self.off_by / 2.0;
        (
            half,
            Shape::Rectangular.deviation(half).hypot(self.give_or_take),
        )
    }
}

impl Tool {
    /// The same tool, with the doubt of its zero that a check left.
    #[must_use]
    pub fn zero_checked(self, check: &ZeroCheck) -> Self {
        self.with_shared_zero(check.doubt_left())
    }
}

/// What the checks of one setting say about a reading taken with it.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Standing {
    /// The next check after it was good.
    Proved,
    /// No check came after it yet.
    NotProvedYet,
    /// The next check after it failed: it may be off by as much.
    InDoubt,
}

/// What the checks of a setting say about a reading. Checks come with when they
/// were done and whether the zero held; when is anything that sorts.
///
/// ```
/// use assembly_core::tool::{Standing, standing};
/// let checks = [(1, true), (5, true), (9, false)];
/// assert_eq!(standing(&checks, &3), Standing::Proved);
/// assert_eq!(standing(&checks, &7), Standing::InDoubt);
/// assert_eq!(standing(&checks, &12), Standing::NotProvedYet);
/// ```
#[must_use]
pub fn standing<T: Ord>(checks: &[(T, bool)], reading: &T) -> Standing {
    checks
        .iter()
        .filter(|(when, _)| when >= reading)
        .min_by(|a, b| a.0.cmp(&b.0))
        .map_or(Standing::NotProvedYet, |(_, held)| {
            if *held {
                Standing::Proved
            } else {
                Standing::InDoubt
            }
        })
}

static STANDARD: Input = Input::size(
    "standard",
    "size of the standard",
    (0.0, 1.0),
    "The size that is marked on the setting standard or gauge block; nothing for a micrometer closed on itself.",
);

static READING: Input = Input::size(
    "reading",
    "reading of the standard",
    (-0.01, 1.0),
    "Clean both faces, read the standard with the feel of every day, three times if it matters.",
)
.one_or_more();

/// Whether a tool's zero still holds.
pub static ZERO_CHECK: Calculation = Calculation {
    id: "zero-check",
    title: "Prove a zero",
    purpose: "Whether a measuring tool still reads a standard right, and what to do when it does not.",
    inputs: &[STANDARD, READING],
    outputs: &[Output::gap("off", "reads too large by")],
    workings: &["off = mean of {reading} − {standard} = {off}"],
    provenance: Provenance::Derivation("difference from a standard"),
    cautions: &[
        "Tool and standard must have lain side by side: a standard warm from the hand is long.",
        "Set the tool by its maker's instructions, never by bending or filing.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let standard = given.one(&STANDARD)?;
    let readings = given.several(READING.id);
    let check = ZeroCheck::of(readings, standard)
        .map_err(|error| CalculationError::not_possible(&READING, error.to_string()))?;
    let off = Estimate::mean(readings).ok_or_else(|| {
        CalculationError::not_possible(&READING, ZeroCheckError::NoReading.to_string())
    })? - standard;
    let answer = Answer::new().with("off", off);
    Ok(if check.holds() {
        answer.finding(Gravity::Note, "The zero holds.")
    } else {
        let side = if check.off_by > 0.0 { "large" } else { "small" };
        answer.finding(
            Gravity::Caution,
            format!(
                "The tool reads {} too {side}: set it again. Every reading since the last good check may be off by as much.",
                length_text(check.off_by.abs())
            ),
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{Measured, Origin, Sources};
    use crate::tool::{Setting, instrument};
    use uom::si::f64::Length;

    const THOU: f64 = 0.000_025_4;

    fn readings(off: &[f64], feel: f64) -> Vec<Estimate> {
        let mut sources = Sources::new();
        off.iter()
            .map(|off| {
                Estimate::exact(0.0254 + off * THOU)
                    .with(sources.fresh("micrometer", Origin::Repeat), feel * THOU)
            })
            .collect()
    }

    fn check(off: &[f64]) -> ZeroCheck {
        ZeroCheck::of(&readings(off, 0.1), &Estimate::exact(0.0254)).unwrap()
    }

    #[test]
    fn a_zero_within_its_own_doubt_holds_and_one_beyond_does_not() {
        assert!(check(&[0.1, 0.0, 0.1]).holds());
        let failed = check(&[0.3, 0.4, 0.4]);
        assert!(!failed.holds());
        assert!((failed.off_by / THOU - 0.3667).abs() < 1e-3);
        assert!((failed.give_or_take / THOU - 0.1 / 3_f64.sqrt()).abs() < 1e-6);
    }

    #[test]
    fn a_proved_zero_leaves_less_doubt_than_one_taken_on_trust() {
        let instrument = instrument("outside-micrometer-tenths").unwrap();
        let tool =
            Tool::new("m", "micrometer", instrument).zero_checked(&check(&[0.05, -0.05, 0.0]));
        let mut sources = Sources::new();
        let reading: Measured<Length> =
            tool.reading(&mut sources, &Setting::on_standard("a"), 0.05, 0.0);
        let left = reading.estimate().lasting_deviation(&sources);
        assert!(left < 0.5 * instrument.shared_zero && left > 0.0);
    }

    #[test]
    fn a_drift_lies_anywhere_between_nothing_and_what_was_found() {
        let failed = ZeroCheck {
            off_by: 0.6 * THOU,
            give_or_take: 0.0,
        };
        let (likeliest, deviation) = failed.drift();
        assert!((likeliest / THOU - 0.3).abs() < 1e-9);
        assert!((deviation / THOU - 0.6 / 12_f64.sqrt()).abs() < 1e-9);
    }

    #[test]
    fn a_failed_zero_puts_in_doubt_what_came_since_the_last_good_one_and_nothing_else() {
        let checks = [(10, true), (20, true), (30, false)];
        for (when, wanted) in [
            (5, Standing::Proved),
            (20, Standing::Proved),
            (21, Standing::InDoubt),
            (30, Standing::InDoubt),
            (31, Standing::NotProvedYet),
        ] {
            assert_eq!(standing(&checks, &when), wanted, "{when}");
        }
        assert_eq!(standing(&[], &5), Standing::NotProvedYet);
    }

    #[test]
    fn a_check_without_numbers_is_refused() {
        let exact = Estimate::exact(0.0254);
        assert_eq!(ZeroCheck::of(&[], &exact), Err(ZeroCheckError::NoReading));
        let broken = [Estimate::exact(f64::NAN)];
        assert_eq!(
            ZeroCheck::of(&broken, &exact),
            Err(ZeroCheckError::NotFinite)
        );
    }

    #[test]
    fn the_quick_check_tells_what_a_failed_zero_means() {
        let mut given = Given::new().with("standard", Estimate::exact(0.0254));
        for reading in readings(&[0.5, 0.5], 0.1) {
            given.push("reading", reading);
        }
        let answer = ZERO_CHECK.answer(&given).unwrap();
        let finding = &answer.findings()[0];
        assert_eq!(finding.gravity, Gravity::Caution);
        assert!(
            finding.text.contains("0.0005 in (0.013 mm) too large"),
            "{}",
            finding.text
        );
    }
}
