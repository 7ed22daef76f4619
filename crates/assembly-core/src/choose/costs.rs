//! A table of what each part would cost in each place, in whole steps, so that
//! nothing is decided by rounding.

use thiserror::Error;

/// Why nothing can be chosen.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum ChoiceError {
    /// There is nothing to choose from.
    #[error("there is nothing to choose from: name at least one place and one part")]
    Nothing,
    /// A row of another length than the first.
    #[error(
        "place {place} has another number of parts than the first: every place needs a figure for every part"
    )]
    Ragged {
        /// Which place, from 1.
        place: usize,
    },
    /// Not enough parts.
    #[error("there are {places} places and only {parts} parts: each place needs one of its own")]
    TooFewParts {
        /// How many places.
        places: usize,
        /// How many parts.
        parts: usize,
    },
    /// More than can be handled.
    #[error("{parts} parts are more than can be looked through at once: up to {most} can")]
    TooMany {
        /// How many there are.
        parts: usize,
        /// How many there may be.
        most: usize,
    },
    /// A figure that is none, or that is too large for its step.
    #[error("the figure for place {place} and part {part} is no number that can be worked with")]
    NotANumber {
        /// Which place, from 1.
        place: usize,
        /// Which part, from 1.
        part: usize,
    },
    /// The rules leave no way.
    #[error("no way of placing the parts keeps the rules: {hint}")]
    NoWay {
        /// What would open one.
        hint: &'static str,
    },
}

/// The most parts at once: one bit each in a word.
pub(super) const MOST_PARTS: usize = 64;
/// The largest figure in steps; sums of [`MOST_PARTS`] of them stay exact.
pub(super) const LARGEST: i64 = 1_000_000_000_000_000;

/// What each part (column) would cost in each place (row), in whole steps.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Costs {
    places: usize,
    parts: usize,
    cells: Vec<i64>,
}

/// Which part goes into each place.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Assignment {
    /// The part of each place, in the order of the places.
    pub parts: Vec<usize>,
}

impl Costs {
    /// A table from plain figures; each is rounded to a whole number of `step`s.
    ///
    /// # Errors
    /// [`ChoiceError`] names what is wrong with the table.
    pub fn new(rows: &[Vec<f64>], step: f64) -> Result<Self, ChoiceError> {
        let parts = rows.first().map_or(0, Vec::len);
        let mut cells = Vec::with_capacity(rows.len() * parts);
        for (row, place) in rows.iter().zip(1..) {
            if row.len() != parts {
                return Err(ChoiceError::Ragged { place });
            }
            for (value, part) in row.iter().zip(1..) {
                cells.push(whole(*value, step).ok_or(ChoiceError::NotANumber { place, part })?);
            }
        }
        Self::of_cells(rows.len(), parts, cells)
    }

    fn of_cells(places: usize, parts: usize, cells: Vec<i64>) -> Result<Self, ChoiceError> {
        if places == 0 || parts == 0 {
            return Err(ChoiceError::Nothing);
        }
        if places > parts {
            return Err(ChoiceError::TooFewParts { places, parts });
        }
        if parts > MOST_PARTS {
            return Err(ChoiceError::TooMany {
                parts,
                most: MOST_PARTS,
            });
        }
        Ok(Self {
            places,
            parts,
            cells,
        })
    }

    /// The same table with another figure in each cell.
    pub(super) fn map(&self, figure: impl Fn(i64) -> i64) -> Self {
        Self {
            cells: self.cells.iter().map(|cell| figure(*cell)).collect(),
            ..self.clone()
        }
    }

    /// How many places there are.
    #[must_use]
    pub const fn places(&self) -> usize {
        self.places
    }

    /// How many parts there are.
    #[must_use]
    pub const fn parts(&self) -> usize {
        self.parts
    }

    /// The figures of one place after the other.
    pub(super) fn rows(&self) -> impl Iterator<Item = &[i64]> {
        self.cells.chunks_exact(self.parts)
    }

    /// All different figures, ascending.
    pub(super) fn levels(&self) -> Vec<i64> {
        let mut levels = self.cells.clone();
        levels.sort_unstable();
        levels.dedup();
        levels
    }

    /// The figures that an assignment picks, in steps.
    #[must_use]
    pub fn picked(&self, assignment: &Assignment) -> Vec<i64> {
        self.rows()
            .zip(&assignment.parts)
            .filter_map(|(row, part)| row.get(*part).copied())
            .collect()
    }

    /// The sum of what an assignment picks, in steps.
    #[must_use]
    pub fn total(&self, assignment: &Assignment) -> i64 {
        self.picked(assignment).iter().sum()
    }

    /// The largest figure that an assignment picks, in steps.
    #[must_use]
    pub fn worst(&self, assignment: &Assignment) -> i64 {
        self.picked(assignment).into_iter().max().unwrap_or(0)
    }

    /// The largest less the smallest figure that an assignment picks, in steps.
    #[must_use]
    pub fn spread(&self, assignment: &Assignment) -> i64 {
        let picked = self.picked(assignment);
        let least = picked.iter().copied().min().unwrap_or(0);
        picked.into_iter().max().unwrap_or(0) - least
    }
}

/// A picometre: finer than any reading, so that equal sizes stay equal and
/// different ones different.
pub(super) const PICOMETRE: f64 = 1e-12;

/// A value as a whole number of steps.
pub(super) fn whole(value: f64, step: f64) -> Option<i64> {
    let steps = (value / step).round();
    // Not written as "larger than", so that a number that is none is refused.
    (steps.abs() <= LARGEST as f64).then_some(steps as i64)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bad_table_is_told_by_place_and_part() {
        let new = |rows: &[Vec<f64>]| Costs::new(rows, 1e-6).unwrap_err();
        assert_eq!(new(&[]), ChoiceError::Nothing);
        assert_eq!(new(&[vec![]]), ChoiceError::Nothing);
        assert_eq!(
            new(&[vec![1.0, 2.0], vec![1.0]]),
            ChoiceError::Ragged { place: 2 }
        );
        let (places, parts) = (2, 1);
        assert_eq!(
            new(&[vec![1.0], vec![1.0]]),
            ChoiceError::TooFewParts { places, parts }
        );
        for wrong in [f64::NAN, f64::INFINITY, 1e10] {
            let place_and_part = ChoiceError::NotANumber { place: 1, part: 2 };
            assert_eq!(new(&[vec![1.0, wrong]]), place_and_part);
        }
        assert!(matches!(new(&[vec![0.0; 65]]), ChoiceError::TooMany { .. }));
    }

    #[test]
    fn figures_are_kept_to_the_step() {
        let costs = Costs::new(&[vec![0.1, 0.3], vec![0.2, 0.4]], 0.1).unwrap();
        let crossed = Assignment { parts: vec![1, 0] };
        assert_eq!(costs.picked(&crossed), [3, 2]);
        assert_eq!(
            (
                costs.total(&crossed),
                costs.worst(&crossed),
                costs.spread(&crossed)
            ),
            (5, 3, 1)
        );
    }
}
