//! A stack turned round: what one term has to be for a wanted result.

use thiserror::Error;

use super::formula::{Formula, Stack};
use super::stack_up::{StackUp, numbers};
use crate::describe::CalculationError;
use crate::describe::given::kind_text;
use crate::measure::Estimate;
use crate::quantity::Kind;

/// In how many pieces the range of a term is searched when the formula is no sum.
const PIECES: u32 = 128;

/// How often a piece is halved: more than the bits of a number.
const HALVINGS: u32 = 80;

/// The part of a range that adding up may round.
const ROUNDING: f64 = 1e-12;

/// Why no value of a term gives the wanted result.
#[derive(Clone, PartialEq, Debug, Error)]
pub enum SolveError {
    /// The values given so far are not right.
    #[error(transparent)]
    Given(#[from] CalculationError),
    /// The result does not depend on this term.
    #[error("{result} does not depend on {label} here: solve for another one")]
    DoesNotMatter {
        /// The term's id.
        term: &'static str,
        /// Its name at the bench.
        label: &'static str,
        /// The result's name.
        result: &'static str,
    },
    /// No value in the range gives it.
    #[error(
        "no {label} between {} and {} gives {result} of {}: that range gives {} to {}",
        kind_text(between.0, *kind), kind_text(between.1, *kind),
        kind_text(*wanted, *result_kind),
        kind_text(gives.0, *result_kind), kind_text(gives.1, *result_kind)
    )]
    OutOfReach {
        /// The term's id.
        term: &'static str,
        /// Its name at the bench.
        label: &'static str,
        /// What it is a number of.
        kind: Kind,
        /// The range that was searched, SI units.
        between: (f64, f64),
        /// The result's name.
        result: &'static str,
        /// What the result is a number of.
        result_kind: Kind,
        /// The result that was wanted.
        wanted: f64,
        /// The least and the greatest result that the range gives.
        gives: (f64, f64),
    },
}

impl StackUp {
    /// The value of one term that gives the wanted result, all others as they
    /// are, with the errors of everything measured. Exact for sums; for other
    /// formulas the range is searched and the piece with the answer halved down
    /// to it. When several values give it, the one nearest
    /// to the value that the term has now, or else the least.
    ///
    /// # Errors
    /// [`SolveError`] says why no value of this term gives it.
    pub fn solve(&self, term: &str, wanted: f64) -> Result<Estimate, SolveError> {
        let between = self
            .stack
            .term(term)
            .map_or((0.0, 0.0), |(_, term)| term.input.sane);
        self.solve_between(term, wanted, between)
    }

    /// The same within a range of one's own, such as the gaskets that can be bought.
    ///
    /// # Errors
    /// As for [`solve`](Self::solve).
    pub fn solve_between(
        &self,
        term: &str,
        wanted: f64,
        between: (f64, f64),
    ) -> Result<Estimate, SolveError> {
        let Some((place, term)) = self.stack.term(term) else {
            return Err(SolveError::Given(CalculationError::NoSuchTerm {
                stack: self.stack.title,
                terms: self.term_names(),
            }));
        };
        let terms = self.terms_but(Some(place))?;
        let mut numbers = numbers(&terms);
        let search = Search {
            stack: self.stack,
            numbers: numbers.clone(),
            place,
            wanted,
            between,
            now: self.known(place).map(super::term_value::TermValue::value),
        };
        let found = match self.stack.formula {
            Formula::Sum(_) => search.sum(),
            Formula::Smooth(_) => search.smooth(),
        };
        let does_not_matter = SolveError::DoesNotMatter {
            term: term.input.id,
            label: term.input.label,
            result: self.stack.result.label,
        };
        let solution = match found {
            Found::At(solution) => solution,
            Found::Flat => return Err(does_not_matter),
            Found::Nowhere(gives) => {
                return Err(SolveError::OutOfReach {
                    term: term.input.id,
                    label: term.input.label,
                    kind: term.input.kind,
                    between,
                    result: self.stack.result.label,
                    result_kind: self.stack.result.kind,
                    wanted,
                    gives,
                });
            }
        };
        if let Some(number) = numbers.get_mut(place) {
            *number = solution;
        }
        // The result is held, so an error of another term has to be made good
        // by this one: minus the other's slope over its own.
        let own = self.stack.slope_at(&numbers, place);
        let inputs: Vec<(&Estimate, f64)> = terms
            .iter()
            .enumerate()
            .filter(|(at, _)| *at != place)
            .map(|(at, value)| (&value.estimate, -self.stack.slope_at(&numbers, at) / own))
            .collect();
        let solved = Estimate::from_slopes(solution, &inputs);
        if solved.deviation().is_finite() {
            Ok(solved)
        } else {
            Err(does_not_matter)
        }
    }
}

enum Found {
    At(f64),
    Flat,
    Nowhere((f64, f64)),
}

struct Search {
    stack: &'static Stack,
    /// All terms; the one searched for holds anything.
    numbers: Vec<f64>,
    place: usize,
    wanted: f64,
    between: (f64, f64),
    now: Option<f64>,
}

impl Search {
    fn result(&self, term: f64) -> f64 {
        let mut numbers = self.numbers.clone();
        if let Some(number) = numbers.get_mut(self.place) {
            *number = term;
        }
        self.stack.value_at(&numbers)
    }

    fn sum(&self) -> Found {
        let times = self.stack.slope_at(&self.numbers, self.place);
        if times == 0.0 {
            return Found::Flat;
        }
        let solution = (self.wanted - self.result(0.0)) / times;
        let (low, high) = self.between;
        // An end of the range may be missed by what adding up rounds.
        let rounding = (high - low).abs() * ROUNDING;
        if solution >= low - rounding && solution <= high + rounding {
            Found::At(solution.max(low).min(high))
        } else {
            let (one, other) = (self.result(self.between.0), self.result(self.between.1));
            Found::Nowhere((one.min(other), one.max(other)))
        }
    }

    fn smooth(&self) -> Found {
        let points = self.points();
        let (mut least, mut greatest) = (f64::INFINITY, f64::NEG_INFINITY);
        for (_, result) in &points {
            least = least.min(*result);
            greatest = greatest.max(*result);
        }
        if points.is_empty() || least == greatest {
            return Found::Flat;
        }
        // The same at the ends: the least and the greatest result are reached.
        let rounding = (greatest - least) * ROUNDING;
        let end = points
            .iter()
            .find(|(_, result)| (result - self.wanted).abs() <= rounding);
        if let Some((term, _)) = end
            && (self.wanted <= least || self.wanted >= greatest)
        {
            return Found::At(*term);
        }
        let off = |solution: &f64| self.now.map_or(*solution, |now| (solution - now).abs());
        points
            .windows(2)
            .filter_map(|pair| match pair {
                [one, other] => self.root(*one, *other),
                _ => None,
            })
            .min_by(|one, other| off(one).total_cmp(&off(other)))
            .map_or(Found::Nowhere((least, greatest)), Found::At)
    }

    /// The range in pieces, with the result at each end. Where the formula has
    /// a number at one end of a piece only, the last place with a number stands
    /// for the other.
    fn points(&self) -> Vec<(f64, f64)> {
        let (low, high) = self.between;
        let mut points = Vec::new();
        let mut before: Option<(f64, bool)> = None;
        for at in 0..=PIECES {
            let term = low + (high - low) * f64::from(at) / f64::from(PIECES);
            let has_number = self.result(term).is_finite();
            match before {
                Some((earlier, true)) if !has_number => points.push(self.edge(earlier, term)),
                Some((earlier, false)) if has_number => points.push(self.edge(term, earlier)),
                _ => {}
            }
            if has_number {
                points.push(term);
            }
            before = Some((term, has_number));
        }
        points
            .into_iter()
            .map(|term| (term, self.result(term)))
            .collect()
    }

    /// The last place with a number on the way to one without.
    fn edge(&self, with_number: f64, without: f64) -> f64 {
        let (mut inside, mut outside) = (with_number, without);
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(inside, outside);
            if self.result(middle).is_finite() {
                inside = middle;
            } else {
                outside = middle;
            }
        }
        inside
    }

    /// The root between two neighbouring points, if there is one.
    fn root(&self, one: (f64, f64), other: (f64, f64)) -> Option<f64> {
        let (low, high) = (one.1 - self.wanted, other.1 - self.wanted);
        if low == 0.0 {
            return Some(one.0);
        }
        if high == 0.0 {
            return Some(other.0);
        }
        if (low < 0.0) == (high < 0.0) {
            return None;
        }
        // Halved until the two ends are neighbours among all numbers.
        let (mut below, mut above) = if low < 0.0 {
            (one.0, other.0)
        } else {
            (other.0, one.0)
        };
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(below, above);
            let off = self.result(middle) - self.wanted;
            if off.is_nan() || middle == below || middle == above {
                break;
            }
            if off < 0.0 {
                below = middle;
            } else {
                above = middle;
            }
        }
        Some(above)
    }
}
