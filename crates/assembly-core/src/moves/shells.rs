//! Which two bearing halves may go together, and what another pair changes.
//!
//! A set that is "one thou under" closes the clearance by one thou: each of its
//! two walls is half a thou thicker. So one such half beside a standard one
//! closes it by half a thou.

use thiserror::Error;
use uom::si::f64::Length;

use super::trade_size::THOU;
use crate::quantity::Si;

/// The finest and coarsest shells that are looked at, in steps from the size
/// that the journal is ground for: one step of extra clearance to two steps under.
const STEPS_LOOKED_AT: std::ops::RangeInclusive<i32> = -1..=2;

/// One half of a bearing.
#[derive(Clone, PartialEq, Debug)]
pub struct Half {
    /// How far under standard the journal is ground that this half is made for;
    /// nothing for a standard journal.
    pub grind: Length,
    /// Steps of a set: 1 is one step under (thicker), −1 one step of extra clearance.
    pub steps: i32,
    /// Maker and material as written on the box; unknown is not compared.
    pub make: Option<String>,
}

impl Half {
    /// A standard half for a standard journal.
    #[must_use]
    pub fn standard() -> Self {
        Self::of_steps(0)
    }

    /// A half for a standard journal, so many steps under.
    #[must_use]
    pub fn of_steps(steps: i32) -> Self {
        Self {
            grind: Length::from_si(0.0),
            steps,
            make: None,
        }
    }
}

/// The two halves around one journal.
#[derive(Clone, PartialEq, Debug)]
pub struct Pair {
    /// The half in the block or rod.
    pub upper: Half,
    /// The half in the cap.
    pub lower: Half,
    /// How far a whole set of one step changes the clearance. One thou for most
    /// inch shells; metric shells as their maker lists.
    pub step: Length,
}

impl Pair {
    /// Two halves whose sets step by one thou.
    #[must_use]
    pub fn of(upper: Half, lower: Half) -> Self {
        Self {
            upper,
            lower,
            step: Length::from_si(THOU),
        }
    }

    /// Two standard halves.
    #[must_use]
    pub fn standard() -> Self {
        Self::of(Half::standard(), Half::standard())
    }

    fn steps(&self) -> i32 {
        self.upper.steps.saturating_add(self.lower.steps)
    }
}

/// Why two halves must not go together.
#[derive(Clone, PartialEq, Debug, Error)]
pub enum MixError {
    /// They are made for journals of different grinds.
    #[error(
        "one half is for a journal ground {}, the other for one ground {}: use two of the same grind (0.25 mm is not 0.010 in)",
        ground(*upper),
        ground(*lower)
    )]
    OtherGrind {
        /// The upper half's grind, metres.
        upper: f64,
        /// The lower half's grind, metres.
        lower: f64,
    },
    /// They differ by more than one step.
    #[error("the halves are {apart} steps apart: at most one step may lie between two halves")]
    TooFarApart {
        /// Steps between them.
        apart: u32,
    },
    /// They are of different make or material.
    #[error("one half is {upper}, the other {lower}: both have to be of one make and material")]
    OtherMake {
        /// The upper half's make.
        upper: String,
        /// The lower half's make.
        lower: String,
    },
}

fn ground(undersize: f64) -> String {
    if undersize == 0.0 {
        "to standard".to_owned()
    } else {
        format!(
            "{:.5} in ({:.4} mm) under",
            undersize / 0.0254,
            undersize * 1e3
        )
    }
}

/// Whether two halves may go together: made for the same grind, at most one
/// step apart, of one make and material. Common practice.
///
/// ```
/// use assembly_core::moves::shells::{Half, MixError, may_go_together};
///
/// assert!(may_go_together(&Half::of_steps(0), &Half::of_steps(1)).is_ok());
/// assert_eq!(
///     may_go_together(&Half::of_steps(-1), &Half::of_steps(1)),
///     Err(MixError::TooFarApart { apart: 2 }),
/// );
/// ```
///
/// # Errors
/// [`MixError`] says what keeps them apart.
pub fn may_go_together(upper: &Half, lower: &Half) -> Result<(), MixError> {
    let (above, below) = (upper.grind.to_si(), lower.grind.to_si());
    // The two grinds that the trade mistakes for each other, 0.010 in and
    // 0.25 mm, lie 4 µm apart; half a micrometre is only rounding.
    if (above - below).abs() > 0.5e-6 || !(above - below).is_finite() {
        return Err(MixError::OtherGrind {
            upper: above,
            lower: below,
        });
    }
    let apart = upper.steps.abs_diff(lower.steps);
    if apart > 1 {
        return Err(MixError::TooFarApart { apart });
    }
    if let (Some(one), Some(other)) = (&upper.make, &lower.make)
        && one != other
    {
        return Err(MixError::OtherMake {
            upper: one.clone(),
            lower: other.clone(),
        });
    }
    Ok(())
}

/// A pair that could be fitted instead.
#[derive(Clone, PartialEq, Debug)]
pub struct Instead {
    /// Steps of the thinner half.
    pub thinner: i32,
    /// Steps of the thicker half.
    pub thicker: i32,
    /// What both walls together gain in thickness, metres, with sign.
    pub wall_gain: f64,
    /// What to fit, in words.
    pub words: String,
}

/// The pairs that may be fitted instead of this one, for the same journal.
#[must_use]
pub fn instead_of(fitted: &Pair) -> Vec<Instead> {
    let mut pairs = Vec::new();
    for thinner in STEPS_LOOKED_AT {
        for thicker in thinner..=thinner + 1 {
            let steps = thinner + thicker;
            let fits = STEPS_LOOKED_AT.contains(&thicker)
                && may_go_together(&Half::of_steps(thinner), &Half::of_steps(thicker)).is_ok();
            if fits && steps != fitted.steps() {
                let gained = f64::from(steps) - f64::from(fitted.steps());
                pairs.push(Instead {
                    thinner,
                    thicker,
                    // A set of one step is one step on both halves.
                    wall_gain: gained / 2.0 * fitted.step.to_si(),
                    words: words(thinner, thicker, fitted),
                });
            }
        }
    }
    pairs
}

fn words(thinner: i32, thicker: i32, fitted: &Pair) -> String {
    let unit = if (fitted.step.to_si() - THOU).abs() < 1e-9 {
        "thou"
    } else {
        "step"
    };
    let size = |steps: i32| match steps {
        0 => "standard".to_owned(),
        1 => format!("one {unit} under"),
        2 => format!("two {unit}{} under", if unit == "step" { "s" } else { "" }),
        _ => format!("one {unit} extra clearance"),
    };
    let of_grind = if fitted.upper.grind.to_si() == 0.0 {
        ""
    } else {
        ", for the ground journal"
    };
    if thinner == thicker {
        return format!("both half-shells {}{of_grind}", size(thinner));
    }
    let (odd, other) = if thinner == 0 {
        (thicker, thinner)
    } else {
        (thinner, thicker)
    };
    if other == 0 {
        format!("one half-shell {}{of_grind}", size(odd))
    } else {
        format!(
            "one half-shell {}, the other {}{of_grind}",
            size(odd),
            size(other)
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn gain(fitted: &Pair, thinner: i32, thicker: i32) -> f64 {
        instead_of(fitted)
            .into_iter()
            .find(|pair| (pair.thinner, pair.thicker) == (thinner, thicker))
            .unwrap()
            .wall_gain
            / THOU
    }

    // "0.001 undersize" is said of a set; taking it for one half doubles the move.
    #[test]
    fn one_half_of_a_one_thou_set_is_half_a_thou() {
        let standard = Pair::standard();
        assert!((gain(&standard, 0, 1) - 0.5).abs() < 1e-12);
        assert!((gain(&standard, 1, 1) - 1.0).abs() < 1e-12);
        assert!((gain(&standard, -1, 0) + 0.5).abs() < 1e-12);
    }

    #[test]
    fn halves_of_two_steps_are_never_offered() {
        for fitted in [
            Pair::standard(),
            Pair::of(Half::of_steps(1), Half::standard()),
        ] {
            for pair in instead_of(&fitted) {
                assert!(pair.thicker - pair.thinner <= 1);
                assert!(pair.wall_gain != 0.0);
            }
        }
    }

    #[test]
    fn what_is_fitted_already_counts() {
        let fitted = Pair::of(Half::of_steps(1), Half::standard());
        assert!((gain(&fitted, 0, 0) + 0.5).abs() < 1e-12);
        assert!((gain(&fitted, 1, 1) - 0.5).abs() < 1e-12);
    }

    #[test]
    fn a_quarter_millimetre_is_not_ten_thou() {
        let metric = Half {
            grind: Length::from_si(0.25e-3),
            ..Half::standard()
        };
        let inch = Half {
            grind: Length::from_si(0.010 * 0.0254),
            ..Half::standard()
        };
        let refused = may_go_together(&metric, &inch);
        assert!(matches!(refused, Err(MixError::OtherGrind { .. })));
        assert!(
            refused
                .unwrap_err()
                .to_string()
                .contains("0.25 mm is not 0.010 in")
        );
        // A one-thou half made for a standard journal does not go on a ground one.
        assert!(may_go_together(&Half::of_steps(1), &inch).is_err());
    }

    #[test]
    fn one_make_only_when_both_are_known() {
        let one = Half {
            make: Some("orchard, bimetal".to_owned()),
            ..Half::standard()
        };
        let other = Half {
            make: Some("valley, trimetal".to_owned()),
            ..Half::of_steps(1)
        };
        assert!(matches!(
            may_go_together(&one, &other),
            Err(MixError::OtherMake { .. })
        ));
        assert!(may_go_together(&one, &Half::of_steps(1)).is_ok());
    }

    #[test]
    fn the_words_are_those_of_the_bench() {
        let all: Vec<String> = instead_of(&Pair::standard())
            .into_iter()
            .map(|pair| pair.words)
            .collect();
        assert!(all.contains(&"one half-shell one thou under".to_owned()));
        assert!(all.contains(&"both half-shells one thou under".to_owned()));
        assert!(all.contains(&"one half-shell one thou extra clearance".to_owned()));
        assert!(
            all.contains(&"one half-shell one thou under, the other two thou under".to_owned())
        );
    }
}
