//! The stack of shims or packings that comes nearest to a needed thickness.

use crate::choose::costs::{ChoiceError, PICOMETRE, whole};

/// The most pieces in a stack: more adds up its errors and springs.
pub const MOST_PIECES: usize = 4;
/// The most different thicknesses that are looked through.
const MOST_THICKNESSES: usize = 24;

/// A stack of pieces.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Stack {
    /// The thickness of each piece by its place in the list, counted from 0.
    pub pieces: Vec<usize>,
}

/// The stack nearest to what is needed, out of thicknesses of which there are
/// as many pieces as wanted. No piece at all is a stack too. Of two that miss
/// by the same, the one with fewer pieces, and then the thinner.
///
/// ```
/// use assembly_core::choose::shims::stack::nearest_stack;
///
/// // Need 0.8 mm from shims of 0.4, 0.5 and 0.75 mm, at most two of them.
/// let stack = nearest_stack(0.8e-3, &[0.4e-3, 0.5e-3, 0.75e-3], 2).unwrap();
/// assert_eq!(stack.pieces, [0, 0]);
/// ```
///
/// # Errors
/// [`ChoiceError::TooMany`] for more than 24 thicknesses or four pieces,
/// [`ChoiceError::NotANumber`] for a thickness that is none.
pub fn nearest_stack(
    needed: f64,
    thicknesses: &[f64],
    most_pieces: usize,
) -> Result<Stack, ChoiceError> {
    for (parts, most) in [
        (thicknesses.len(), MOST_THICKNESSES),
        (most_pieces, MOST_PIECES),
    ] {
        if parts > most {
            return Err(ChoiceError::TooMany { parts, most });
        }
    }
    let steps = |value: f64, part: usize| {
        whole(value, PICOMETRE).ok_or(ChoiceError::NotANumber { place: 1, part })
    };
    let walls = thicknesses
        .iter()
        .zip(1..)
        .map(|(thickness, part)| steps(*thickness, part))
        .collect::<Result<Vec<i64>, ChoiceError>>()?;
    let mut search = Search {
        needed: steps(needed, 0)?,
        walls,
        most_pieces,
        best: None,
    };
    search.grow(&mut Vec::new(), 0, 0);
    Ok(search
        .best
        .map_or_else(Stack::default, |(_, pieces)| Stack { pieces }))
}

struct Search {
    needed: i64,
    walls: Vec<i64>,
    most_pieces: usize,
    /// Miss, number of pieces, thickness; and the pieces.
    best: Option<((i64, usize, i64), Vec<usize>)>,
}

impl Search {
    fn grow(&mut self, pieces: &mut Vec<usize>, thickness: i64, first: usize) {
        let rank = ((thickness - self.needed).abs(), pieces.len(), thickness);
        if self.best.as_ref().is_none_or(|(best, _)| rank < *best) {
            self.best = Some((rank, pieces.clone()));
        }
        if pieces.len() == self.most_pieces {
            return;
        }
        for piece in first..self.walls.len() {
            let wall = self.walls.get(piece).copied().unwrap_or(0);
            pieces.push(piece);
            self.grow(pieces, thickness + wall, piece);
            pieces.pop();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_stack_with_the_fewest_pieces_wins() {
        let thicknesses = [0.1, 0.2, 0.5].map(|mm: f64| mm * 1e-3);
        let pieces = |needed: f64, most| {
            nearest_stack(needed * 1e-3, &thicknesses, most)
                .unwrap()
                .pieces
        };
        assert_eq!(pieces(0.2, 4), [1]);
        assert_eq!(pieces(0.7, 4), [1, 2]);
        assert_eq!(pieces(0.7, 1), [2]);
        assert!(pieces(0.04, 4).is_empty());
        assert!(pieces(-0.3, 4).is_empty());
        // Half-way between two: the thinner.
        assert_eq!(pieces(0.15, 1), [0]);
    }

    #[test]
    fn senseless_shims_are_told() {
        assert!(nearest_stack(1.0, &[f64::NAN], 1).is_err());
        assert!(nearest_stack(f64::NAN, &[0.1], 1).is_err());
        assert!(nearest_stack(0.1, &[0.1; 25], 1).is_err());
        assert!(nearest_stack(0.1, &[0.1], 5).is_err());
    }
}
