//! The slips people make with readings, and how often.

use crate::quantity::Unit;

/// A way in which a reading went wrong between the part and the page.
#[derive(Clone, Copy, PartialEq, Debug)]
#[non_exhaustive]
pub enum Slip {
    /// A whole turn of the thimble missed or counted twice.
    ThimbleTurn,
    /// A whole turn of a dial missed or counted twice.
    DialTurn,
    /// The frame's size added wrongly: an inch, or 25 mm.
    Frame,
    /// The number was meant in another unit: inch and millimetre, thou and tenths.
    OtherUnit {
        /// The unit that would fit.
        meant: &'static Unit,
    },
    /// The decimal point one place off.
    DecimalPlace,
    /// Two neighbouring digits swapped.
    SwappedDigits,
    /// A digit left out.
    DroppedDigit,
    /// A digit typed twice.
    DoubledDigit,
    /// The needle read with the wrong sign.
    Sign,
    /// No slip: the part has been repaired to another size than was thought.
    OtherSize {
        /// The step from the standard size, metres.
        step: f64,
    },
}

impl Slip {
    /// How often it happens where it can happen, per reading. Estimates of the
    /// trade (common practice, no source); only their order of size matters.
    pub(super) const fn chance(self, how: Circumstance) -> f64 {
        match (self, how) {
            (Self::ThimbleTurn, _) => 0.01,
            (Self::DialTurn, _) => 0.005,
            (Self::Frame, _) => 0.002,
            (Self::OtherUnit { .. }, Circumstance::Spelt) => 0.004,
            (Self::OtherUnit { .. }, Circumstance::Usual) => 0.01,
            (Self::DecimalPlace, _) => 0.001,
            (Self::SwappedDigits | Self::DroppedDigit, _) => 0.004,
            (Self::DoubledDigit, _) => 0.002,
            (Self::Sign, _) => 0.03,
            (Self::OtherSize { .. }, Circumstance::Spelt) => 0.02,
            (Self::OtherSize { .. }, Circumstance::Usual) => 0.15,
        }
    }

    /// What happened, as the second half of a sentence.
    pub(super) fn told(self) -> String {
        match self {
            Self::ThimbleTurn => "one turn of the thimble off".to_owned(),
            Self::DialTurn => "one turn of the dial off".to_owned(),
            Self::Frame => "one frame size off".to_owned(),
            Self::OtherUnit { meant } => format!("a reading in {}", meant.name),
            Self::DecimalPlace => "the decimal point one place off".to_owned(),
            Self::SwappedDigits => "two digits swapped".to_owned(),
            Self::DroppedDigit => "a digit left out".to_owned(),
            Self::DoubledDigit => "a digit typed twice".to_owned(),
            Self::Sign => "the needle's sign turned round".to_owned(),
            Self::OtherSize { .. } => "a part of another size".to_owned(),
        }
    }
}

/// What makes a slip more or less likely.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Circumstance {
    /// Nothing speaks against it.
    Usual,
    /// Something spelt out speaks against it: the unit was typed, or the
    /// neighbours show the standard size.
    Spelt,
}
