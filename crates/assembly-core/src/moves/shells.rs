//! Which two bearing halves may go together, and what another pair changes.
//!
//! A set that is "one thou under" closes the clearance by one thou: each of its
//! two walls is half a thou thicker. So one such half beside a standard one
//! closes it by half a thou.

use thiserror::Error;
use uom::si::f64::Length;

use super::trade_size::THOU;
use crate::quantity::Si;
use crate::typing_sense::size_words;

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

/// A size that sets are made in.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct MadeSize {
    /// Its place in the row of all sizes: standard is 0, thicker ones follow. Two that
    /// lie more than a thou apart have a place between them that is empty.
    pub steps: i32,
    /// How far a whole set of it closes the clearance of a standard one, metres;
    /// less than nothing for extra clearance.
    pub size: f64,
}

/// Two halves whose sets lie further apart than this do not go together: one step of
/// a thou, or what metric sheets make of it, and a tenth of it for rounding. Sizes for
/// ground journals lie much further apart. Common practice, no source.
const ONE_STEP: f64 = 1.1 * 0.0254e-3;

/// No more sizes than this are looked at to either side of standard.
const SIZES_LOOKED_AT: usize = 8;

/// The sizes of a list in a row from the thinnest on, the standard one with them.
///
/// ```
/// use assembly_core::moves::shells::row_of_sizes;
/// use assembly_core::quantity::Si;
/// use uom::si::f64::Length;
///
/// let mm = |size: f64| Length::from_si(size * 1e-3);
/// let row = row_of_sizes(&[mm(0.05), mm(0.025), mm(-0.025)]);
/// let steps: Vec<i32> = row.iter().map(|one| one.steps).collect();
/// assert_eq!(steps, [-1, 0, 1, 2]);
/// ```
#[must_use]
pub fn row_of_sizes(sets: &[Length]) -> Vec<MadeSize> {
    let mut sizes: Vec<f64> = sets
        .iter()
        .map(|one| one.to_si())
        .filter(|it| it.is_finite())
        .collect();
    sizes.sort_unstable_by(f64::total_cmp);
    // Sizes closer than a tenth of a micrometre are one size, typed twice.
    sizes.dedup_by(|one, other| (*one - *other).abs() < 1e-7);
    let side = |sign: f64| {
        let mut all: Vec<f64> = sizes
            .iter()
            .copied()
            .filter(|it| it * sign >= 1e-7)
            .collect();
        all.sort_unstable_by(|one, other| one.abs().total_cmp(&other.abs()));
        all.truncate(SIZES_LOOKED_AT);
        all
    };
    // Halves of neighbouring places may go together, so those that lie too far
    // apart for that are no neighbours.
    let placed = |sign: f64| {
        let (mut before, mut steps) = (0.0, 0);
        side(sign).into_iter().map(move |size| {
            steps += if (size - before).abs() <= ONE_STEP {
                1
            } else {
                2
            };
            before = size;
            (if sign < 0.0 { -steps } else { steps }, size)
        })
    };
    let (thinner, thicker) = (placed(-1.0), placed(1.0));
    let mut row: Vec<MadeSize> = (thinner.chain(std::iter::once((0, 0.0))).chain(thicker))
        .map(|(steps, size)| MadeSize { steps, size })
        .collect();
    row.sort_unstable_by_key(|one| one.steps);
    row
}

/// The same, of the sizes that sets are made in; of the common ones, when none is
/// known. Two halves go together when no other size lies between theirs and they are
/// one thou apart at most.
#[must_use]
pub fn made_instead_of(fitted: &Pair, sets: &[Length]) -> Vec<Instead> {
    if sets.is_empty() {
        return instead_of(fitted);
    }
    let row = row_of_sizes(sets);
    let size_of = |steps: i32| {
        let made = row.iter().find(|one| one.steps == steps);
        made.map_or(f64::from(steps) * fitted.step.to_si(), |one| one.size)
    };
    // A set of one size is half of it on each wall.
    let walls = |one: i32, other: i32| f64::midpoint(size_of(one), size_of(other));
    let fitted_walls = walls(fitted.upper.steps, fitted.lower.steps);
    let mut pairs = Vec::new();
    for (at, thinner) in row.iter().enumerate() {
        for thicker in row.iter().skip(at).take(2) {
            let wall_gain = walls(thinner.steps, thicker.steps) - fitted_walls;
            let (half, other) = (Half::of_steps(thinner.steps), Half::of_steps(thicker.steps));
            if wall_gain.abs() > 1e-7 && may_go_together(&half, &other).is_ok() {
                pairs.push(Instead {
                    thinner: thinner.steps,
                    thicker: thicker.steps,
                    wall_gain,
                    words: made_words(thinner.size, thicker.size, fitted),
                });
            }
        }
    }
    pairs
}

fn made_words(thinner: f64, thicker: f64, fitted: &Pair) -> String {
    let size = |size: f64| match size {
        0.0 => "standard".to_owned(),
        under if under > 0.0 => format!("{} under", size_words(under)),
        extra => format!("{} extra clearance", size_words(extra)),
    };
    // The odd one is named first, and alone where the other is standard.
    let (odd, other) = if thinner == 0.0 {
        (thicker, thinner)
    } else {
        (thinner, thicker)
    };
    pair_words(
        (size(odd), size(other)),
        thinner == thicker,
        other == 0.0,
        fitted,
    )
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
    let (odd, other) = if thinner == 0 {
        (thicker, thinner)
    } else {
        (thinner, thicker)
    };
    pair_words(
        (size(odd), size(other)),
        thinner == thicker,
        other == 0,
        fitted,
    )
}

fn pair_words(
    (odd, other): (String, String),
    alike: bool,
    beside_standard: bool,
    fitted: &Pair,
) -> String {
    let of_grind = if fitted.upper.grind.to_si() == 0.0 {
        ""
    } else {
        ", for the ground journal"
    };
    if alike {
        format!("both half-shells {odd}{of_grind}")
    } else if beside_standard {
        format!("one half-shell {odd}{of_grind}")
    } else {
        format!("one half-shell {odd}, the other {other}{of_grind}")
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
    fn the_sizes_that_are_made_take_the_place_of_the_common_ones() {
        let mm = |size: f64| Length::from_si(size * 1e-3);
        let all = made_instead_of(&Pair::standard(), &[mm(0.05), mm(0.025), mm(0.05)]);
        let found: Vec<(f64, &str)> = (all.iter())
            .map(|pair| ((pair.wall_gain * 1e7).round() / 10.0, pair.words.as_str()))
            .collect();
        assert_eq!(
            found,
            [
                (12.5, "one half-shell 0.025 mm under"),
                (25.0, "both half-shells 0.025 mm under"),
                (
                    37.5,
                    "one half-shell 0.025 mm under, the other 0.05 mm under"
                ),
                (50.0, "both half-shells 0.05 mm under"),
            ]
        );
        // Extra clearance is made as well, and never beside a thicker one.
        let extra = made_instead_of(&Pair::standard(), &[mm(-0.02), mm(0.02)]);
        assert!(
            extra
                .iter()
                .any(|pair| pair.words == "one half-shell 0.02 mm extra clearance")
        );
        assert!(extra.iter().all(|pair| pair.thicker - pair.thinner <= 1));
        // Thicker ones are fitted: the standard ones open it again.
        let fitted = Pair::of(Half::of_steps(1), Half::of_steps(1));
        let back = made_instead_of(&fitted, &[mm(0.02)]);
        let standard = back
            .iter()
            .find(|pair| pair.words == "both half-shells standard")
            .unwrap();
        assert!((standard.wall_gain + 0.02e-3).abs() < 1e-12);
        assert_eq!(made_instead_of(&fitted, &[]), instead_of(&fitted));
    }

    // Trap: a size for a ground journal beside a standard half.
    #[test]
    fn sizes_for_ground_journals_are_never_halves_of_a_pair() {
        let thou = |size: f64| Length::from_si(size * 0.0254e-3);
        let all = made_instead_of(&Pair::standard(), &[thou(1.0), thou(10.0), thou(20.0)]);
        let words: Vec<&str> = all.iter().map(|pair| pair.words.as_str()).collect();
        assert_eq!(
            words,
            [
                "one half-shell 0.001 in under",
                "both half-shells 0.001 in under",
                "both half-shells 0.010 in under",
                "both half-shells 0.020 in under",
            ]
        );
    }

    #[test]
    fn a_place_stays_empty_between_sizes_that_may_not_be_mixed() {
        let mm = |size: f64| Length::from_si(size * 1e-3);
        let row = row_of_sizes(&[mm(0.25), mm(0.275), mm(-0.02), mm(-0.3)]);
        let steps: Vec<i32> = row.iter().map(|one| one.steps).collect();
        assert_eq!(steps, [-3, -1, 0, 2, 3]);
    }

    #[test]
    fn a_list_of_nonsense_makes_no_row_of_nonsense() {
        let sizes: Vec<Length> = (-40..40)
            .map(|it| Length::from_si(f64::from(it) * 1e-5))
            .collect();
        let row = row_of_sizes(&sizes);
        assert_eq!(row.len(), 2 * SIZES_LOOKED_AT + 1);
        assert_eq!(
            row_of_sizes(&[Length::from_si(f64::NAN), Length::from_si(0.0)]).len(),
            1
        );
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
