//! A stack worked out many times with its terms drawn at random
//! (JCGM 101:2008, 7).

use oorandom::Rand32;

use super::stack_up::{StackUp, numbers};
use super::term_value::TermValue;
use crate::describe::CalculationError;
use crate::measure::{Shape, SourceId, Window};

/// More draws than this are not made: they would say nothing new.
pub const MOST_DRAWS: u32 = 2_000_000;

/// The results of many draws.
#[derive(Clone, PartialEq, Debug)]
pub struct Drawn {
    /// Every result that was a number, in no order.
    results: Vec<f64>,
    /// Draws that gave no number.
    without_result: u32,
    mean: f64,
    deviation: f64,
}

impl Drawn {
    /// The mean of the results, SI units.
    #[must_use]
    pub const fn mean(&self) -> f64 {
        self.mean
    }

    /// Their standard deviation, SI units.
    #[must_use]
    pub const fn deviation(&self) -> f64 {
        self.deviation
    }

    /// The part of all draws that lies inside a window, 0 to 1. A draw that
    /// gave no number is not inside.
    #[must_use]
    pub fn share_inside(&self, window: &Window) -> f64 {
        let inside = self
            .results
            .iter()
            .filter(|one| window.holds(**one))
            .count();
        inside as f64 / (self.results.len() as f64 + f64::from(self.without_result))
    }

    /// How many draws gave no number, such as a chamber of no volume.
    #[must_use]
    pub const fn without_result(&self) -> u32 {
        self.without_result
    }

    /// The limits that hold this part of the results, as much left out below as
    /// above (JCGM 101:2008, 7.7.2). A part that is none counts as all of them.
    #[must_use]
    pub fn limits(&self, part: f64) -> (f64, f64) {
        let outside = if part.is_finite() {
            (1.0 - part.clamp(0.0, 1.0)) / 2.0
        } else {
            0.0
        };
        let mut results = self.results.clone();
        (
            result_at(&mut results, outside),
            result_at(&mut results, 1.0 - outside),
        )
    }
}

/// The result below which this part of all lies. Brings them into another order.
fn result_at(results: &mut [f64], part: f64) -> f64 {
    let last = results.len().saturating_sub(1);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 0 and the number of results"
    )]
    let place = (part * last as f64).round() as usize;
    let (_, result, _) = results.select_nth_unstable_by(place.min(last), f64::total_cmp);
    *result
}

impl StackUp {
    /// Works the stack out many times. Every cause of measuring error is drawn
    /// once for all terms that share it, as normal; every part that is known
    /// within limits is drawn between them. The same seed gives the same
    /// draws on every machine.
    ///
    /// # Errors
    /// As for [`value`](Self::value); also when no draw gave a number.
    pub fn monte_carlo(&self, draws: u32, seed: u64) -> Result<Drawn, CalculationError> {
        self.value()?;
        let terms = self.terms()?;
        let plan = Plan::of(&terms);
        let mut random = Random::new(seed);
        let middle = numbers(&terms);
        let mut values = middle.clone();
        let mut causes = vec![0.0; plan.causes];
        let draws = draws.clamp(1, MOST_DRAWS);
        let mut results = Vec::with_capacity(draws as usize);
        for _ in 0..draws {
            for cause in &mut causes {
                *cause = random.normal();
            }
            values.copy_from_slice(&middle);
            for (value, term) in values.iter_mut().zip(&plan.terms) {
                for (cause, deviation) in &term.parts {
                    *value += deviation * causes.get(*cause).copied().unwrap_or_default();
                }
                if term.half_width > 0.0 {
                    *value += term.half_width * random.between(term.shape);
                }
            }
            let result = self.stack.value_at(&values);
            if result.is_finite() {
                results.push(result);
            }
        }
        let count = results.len();
        // What is not drawn gives the one result every time, to the last bit.
        let Some(first) = results.first().copied() else {
            return Err(CalculationError::NoNumber {
                output: self.stack.result.id,
            });
        };
        let mean = first + results.iter().map(|one| one - first).sum::<f64>() / count as f64;
        let squares: f64 = results.iter().map(|one| (one - mean) * (one - mean)).sum();
        let deviation = (squares / count.saturating_sub(1).max(1) as f64).sqrt();
        if !mean.is_finite() || !deviation.is_finite() {
            return Err(CalculationError::NoNumber {
                output: self.stack.result.id,
            });
        }
        Ok(Drawn {
            without_result: draws - u32::try_from(count).unwrap_or(draws),
            results,
            mean,
            deviation,
        })
    }
}

/// Which causes of error move which terms.
struct Plan {
    causes: usize,
    terms: Vec<TermPlan>,
}

struct TermPlan {
    /// The place of a cause and its standard deviation in this term.
    parts: Vec<(usize, f64)>,
    half_width: f64,
    shape: Shape,
}

impl Plan {
    fn of(terms: &[TermValue]) -> Self {
        let mut all: Vec<SourceId> = terms
            .iter()
            .flat_map(|term| term.estimate.parts().iter().map(|(source, _)| *source))
            .collect();
        all.sort_unstable();
        let mut shared: Vec<SourceId> = all
            .iter()
            .zip(all.iter().skip(1))
            .filter_map(|(one, next)| (one == next).then_some(*one))
            .collect();
        shared.dedup();
        let mut causes = shared.len();
        let terms = terms
            .iter()
            .map(|term| {
                let mut parts = Vec::new();
                // Causes that move this term alone are normal together, too:
                // feel and last digit of a reading need one draw and not two.
                let mut own = 0.0_f64;
                for (source, deviation) in term.estimate.parts() {
                    match shared.binary_search(source) {
                        Ok(at) => parts.push((at, *deviation)),
                        Err(_) => own = own.hypot(*deviation),
                    }
                }
                if own > 0.0 {
                    parts.push((causes, own));
                    causes += 1;
                }
                TermPlan {
                    parts,
                    half_width: term.half_width,
                    shape: term.shape,
                }
            })
            .collect();
        Self { causes, terms }
    }
}

/// Random numbers of the shapes that a stack needs.
struct Random {
    bits: Rand32,
    /// The polar method makes two at a time.
    spare: Option<f64>,
}

impl Random {
    fn new(seed: u64) -> Self {
        Self {
            bits: Rand32::new(seed),
            spare: None,
        }
    }

    /// Even between −1 and 1, both left out.
    fn even(&mut self) -> f64 {
        (f64::from(self.bits.rand_u32()) + 0.5) / 2_147_483_648.0 - 1.0
    }

    fn between(&mut self, shape: Shape) -> f64 {
        match shape {
            Shape::Rectangular => self.even(),
            Shape::Triangular => 0.5 * (self.even() + self.even()),
            Shape::ArcSine => self.swing(),
        }
    }

    /// A place within the unit circle, and the square of its distance from the middle.
    fn in_circle(&mut self) -> (f64, f64, f64) {
        loop {
            let (x, y) = (self.even(), self.even());
            let square = x * x + y * y;
            if square > 0.0 && square < 1.0 {
                return (x, y, square);
            }
        }
    }

    /// The cosine of an angle that may be any: a value that swings between −1 and 1.
    fn swing(&mut self) -> f64 {
        let (x, y, square) = self.in_circle();
        // The cosine of twice the place's angle, which may be any as well.
        (x * x - y * y) / square
    }

    /// Normal with deviation 1, by the polar method of Marsaglia and Bray
    /// (SIAM Review 6, 1964, 260).
    fn normal(&mut self) -> f64 {
        if let Some(spare) = self.spare.take() {
            return spare;
        }
        let (x, y, square) = self.in_circle();
        let factor = (-2.0 * libm::log(square) / square).sqrt();
        self.spare = Some(y * factor);
        x * factor
    }
}
