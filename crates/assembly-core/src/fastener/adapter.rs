//! A crowfoot or other adapter on a torque wrench: what to set it to.

use std::f64::consts::PI;

use super::common::{ANGLE, TORQUE, TORQUES};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};

/// The reach from grip to bolt has to be at least this share of the wrench:
/// nearer to the hand a small slip of the grip changes the torque too much.
const LEAST_REACH: f64 = 0.2;

/// An adapter on a torque wrench: a crowfoot, an offset ring, a cranked one.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Adapter {
    factor: f64,
}

/// What is wrong with an adapter.
#[derive(Clone, Copy, PartialEq, Eq, Debug, thiserror::Error)]
#[non_exhaustive]
pub enum AdapterError {
    /// The wrench has no length.
    #[error(
        "the wrench's length is no number above nothing: from the middle of the grip to the middle of the drive"
    )]
    NoWrench,
    /// The adapter's length is not one.
    #[error(
        "the adapter's length is no number above nothing: from the middle of the drive to the middle of the bolt"
    )]
    NoLength,
    /// The angle is not between straight ahead and straight back.
    #[error(
        "the adapter is turned by 0° to 180°: 0° when it lengthens the wrench, 90° square to it, 180° back at the hand"
    )]
    NoAngle,
    /// It reaches back nearly to the hand.
    #[error(
        "turned back like this the adapter reaches nearly to the hand: use a longer wrench, or turn the adapter to 90°"
    )]
    AtTheHand,
}

impl Adapter {
    /// An adapter of this length from drive to bolt on a wrench of this length
    /// from grip to drive (both metres), turned by this angle from straight ahead
    /// (radians). The formula is that of [`WRENCH_WITH_ADAPTER`].
    ///
    /// # Errors
    /// Which of the three is wrong, and what would be right.
    ///
    /// ```
    /// use assembly_core::fastener::adapter::Adapter;
    /// // TM 1-1500-204-23-9: 300 in-lb, wrench 10 in, adapter 4 in straight: 214.
    /// let straight = Adapter::new(10.0, 4.0, 0.0).unwrap();
    /// assert_eq!(straight.set_for(300.0).round(), 214.0);
    /// ```
    pub fn new(wrench: f64, length: f64, turned: f64) -> Result<Self, AdapterError> {
        if !(wrench.is_finite() && wrench > 0.0) {
            return Err(AdapterError::NoWrench);
        }
        if !(length.is_finite() && length > 0.0) {
            return Err(AdapterError::NoLength);
        }
        // A typed 180° may come out a hair above π.
        if !(-1e-9..=PI + 1e-9).contains(&turned) {
            return Err(AdapterError::NoAngle);
        }
        let reach = length.mul_add(libm::cos(turned), wrench);
        if reach < LEAST_REACH * wrench {
            return Err(AdapterError::AtTheHand);
        }
        Ok(Self {
            factor: wrench / reach,
        })
    }

    /// What to set the wrench to for this torque at the bolt, in the unit of the
    /// torque.
    #[must_use]
    pub fn set_for(self, torque: f64) -> f64 {
        torque * self.factor
    }
}

static WANTED: Input = Input::of(
    "wanted",
    "torque wanted at the bolt",
    TORQUE,
    TORQUES,
    "From the sheet.",
);
static WRENCH: Input = Input::size(
    "wrench-length",
    "wrench, grip to drive",
    (0.05, 2.0),
    "From the middle of the grip, where the hand pulls, to the middle of the square drive.",
);
static ADAPTER: Input = Input::size(
    "adapter-length",
    "adapter, drive to bolt",
    (0.0, 0.5),
    "From the middle of the square drive to the middle of the bolt.",
);
static TURNED: Input = Input::of(
    "turned",
    "adapter turned from straight ahead",
    ANGLE,
    (0.0, PI),
    "Nothing when it lengthens the wrench, 90° when it stands square to it, 180° when it points back at the hand.",
);

/// Adapter.
pub static WRENCH_WITH_ADAPTER: Calculation = Calculation {
    id: "wrench-with-adapter",
    title: "Torque wrench with an adapter",
    purpose: "What to set a torque wrench to when a crowfoot or other adapter moves the bolt away from its drive.",
    inputs: &[WANTED, WRENCH, ADAPTER, TURNED],
    outputs: &[
        Output::of("set", "set the wrench to", TORQUE),
        Output::of(
            "without",
            "what the bolt would get at the wanted setting",
            TORQUE,
        ),
    ],
    workings: &[
        "set = wanted × L ÷ (L + A × cos θ) = {wanted} × {wrench-length} ÷ ({wrench-length} + {adapter-length} × cos {turned}) = {set}",
        "set to the wanted torque, the bolt would get {without}",
    ],
    provenance: Provenance::Handbook("TM 1-1500-204-23-9, torque wrench with adapter"),
    cautions: &[
        "Pull at the middle of the grip: anywhere else is another length.",
        "At 90° nothing changes, and a straight extension along the bolt changes nothing. Leave out universal joints and wobble extensions.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (wanted, wrench) = (given.one(&WANTED)?, given.one(&WRENCH)?);
    let reach = wrench + given.one(&ADAPTER)? * given.one(&TURNED)?.cosine();
    if reach.value() < LEAST_REACH * wrench.value() {
        return Err(CalculationError::not_possible(
            &ADAPTER,
            "turned back like this the adapter reaches nearly to the hand: use a longer wrench, or turn the adapter to 90°",
        ));
    }
    let factor = wrench / &reach;
    let answer = if (factor.value() - 1.0).abs() < 0.005 {
        Answer::new().finding(
            Gravity::Note,
            "Set as it is: this adapter changes nothing that counts.",
        )
    } else {
        Answer::new()
    };
    Ok(answer
        .with("set", wanted * &factor)
        .with("without", wanted / &factor))
}

#[cfg(test)]
mod tests {
    use super::super::common::testing::si;
    use super::*;
    use crate::fit::readings::testing::{refused, says, value, worked};

    fn set(wanted: f64, wrench: f64, adapter: f64, degrees: f64) -> Answer {
        worked(
            &WRENCH_WITH_ADAPTER,
            &si(&[
                ("wanted", wanted),
                ("wrench-length", wrench * 0.0254),
                ("adapter-length", adapter * 0.0254),
                ("turned", degrees.to_radians()),
            ]),
        )
    }

    // TM 1-1500-204-23-9: 300, wrench 10 in, adapter 4 in: 214 straight, 233.9 at
    // 45°, 300 at 90°; 19 with 22 and 3 in: 16.7.
    #[test]
    fn the_manuals_examples_come_out() {
        for (degrees, wanted) in [(0.0, 214.29), (45.0, 233.86), (90.0, 300.0)] {
            let got = value(&set(300.0, 10.0, 4.0, degrees), "set", 1.0);
            assert!((got - wanted).abs() < 0.01, "{degrees}: {got}");
        }
        assert!((value(&set(19.0, 22.0, 3.0, 0.0), "set", 1.0) - 16.72).abs() < 0.01);
        assert!(says(&set(300.0, 10.0, 4.0, 90.0), "changes nothing"));
    }

    #[test]
    fn the_setting_is_that_of_the_quick_check_and_bad_sizes_are_named() {
        for (wrench, length, degrees) in
            [(10.0, 4.0, 45.0_f64), (22.0, 3.0, 0.0), (10.0, 4.0, 180.0)]
        {
            let adapter = Adapter::new(wrench, length, degrees.to_radians()).unwrap();
            let answer = value(&set(60.0, wrench, length, degrees), "set", 1.0);
            assert!((adapter.set_for(60.0) - answer).abs() < 1e-6);
        }
        for (wrench, length, turned, wrong) in [
            (0.0, 0.1, 0.0, AdapterError::NoWrench),
            (f64::NAN, 0.1, 0.0, AdapterError::NoWrench),
            (0.4, -0.1, 0.0, AdapterError::NoLength),
            (0.4, 0.1, 4.0, AdapterError::NoAngle),
            (0.4, 0.1, f64::NAN, AdapterError::NoAngle),
            (0.25, 0.25, PI, AdapterError::AtTheHand),
        ] {
            assert_eq!(Adapter::new(wrench, length, turned), Err(wrong));
        }
    }

    #[test]
    fn an_adapter_that_points_back_takes_more_and_has_an_end() {
        assert!((value(&set(60.0, 10.0, 4.0, 180.0), "set", 1.0) - 100.0).abs() < 1e-6);
        let back = si(&[
            ("wanted", 60.0),
            ("wrench-length", 0.25),
            ("adapter-length", 0.25),
            ("turned", PI),
        ]);
        assert_eq!(refused(&WRENCH_WITH_ADAPTER, &back), Some("adapter-length"));
    }
}
