//! What lies on the bench, and what the mixing rule allows.

use uom::si::f64::Length;

use crate::measure::Measured;
use crate::moves::shells::{Half, may_go_together};

/// Where a half fits: a grooved or drilled half must not go where its oil hole
/// would be blocked.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Position {
    /// In the block or rod only.
    Upper,
    /// In the cap only.
    Lower,
    /// Either side: both halves are drilled alike.
    Either,
}

impl Position {
    pub(super) const fn may_be_upper(self) -> bool {
        matches!(self, Self::Upper | Self::Either)
    }

    pub(super) const fn may_be_lower(self) -> bool {
        matches!(self, Self::Lower | Self::Either)
    }
}

/// A half-shell that lies on the bench.
#[derive(Clone, PartialEq, Debug)]
pub struct BenchHalf {
    /// Its size and make as on the box, for the mixing rule.
    pub half: Half,
    /// Its wall at the crown.
    pub wall: Measured<Length>,
    /// Where it fits.
    pub position: Position,
}

/// A journal with its housing.
#[derive(Clone, PartialEq, Debug)]
pub struct Main {
    /// The housing bore up and down, cap torqued, no shells.
    pub housing: Measured<Length>,
    /// The journal.
    pub journal: Measured<Length>,
    /// The clearance that is wanted.
    pub target: Length,
}

/// Where the odd half of a mixed pair goes: the one that is farther from
/// standard. Common practice puts all odd halves of an engine on one side.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub enum OddHalf {
    /// All above or all below, whichever comes out better.
    #[default]
    OneSide,
    /// All in the block or rod.
    Upper,
    /// All in the cap.
    Lower,
}

/// The one side that odd halves are put on in one search.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum OddSide {
    Upper,
    Lower,
}

impl OddHalf {
    pub(super) const fn sides(self) -> &'static [OddSide] {
        match self {
            Self::OneSide => &[OddSide::Lower, OddSide::Upper],
            Self::Upper => &[OddSide::Upper],
            Self::Lower => &[OddSide::Lower],
        }
    }
}

/// Whether two halves may make a bearing, odd ones on this side.
pub(super) fn may_pair(upper: &BenchHalf, lower: &BenchHalf, odd: OddSide) -> bool {
    if !upper.position.may_be_upper() || !lower.position.may_be_lower() {
        return false;
    }
    if may_go_together(&upper.half, &lower.half).is_err() {
        return false;
    }
    let (above, below) = (
        upper.half.steps.unsigned_abs(),
        lower.half.steps.unsigned_abs(),
    );
    match odd {
        OddSide::Upper => above >= below,
        OddSide::Lower => below >= above,
    }
}
