//! The questions a reading raises.

use std::fmt;

use super::candidates::{Candidate, candidates};
use super::{Expectation, Slip, size_words};
use crate::quantity::Typed;

/// A reading that looks like a slip, and what may have been meant.
#[derive(Clone, PartialEq, Debug)]
pub struct Question {
    /// What was typed.
    pub typed: Typed,
    /// The slip that would explain it.
    pub slip: Slip,
    /// What was probably meant. Its text can be typed instead. For
    /// [`Slip::OtherSize`] it is the reading itself.
    pub likely: Typed,
    /// How likely this explanation is against all others, the reading being
    /// right among them: 0 to 1.
    pub weight: f64,
}

/// Nothing is asked while the reading itself is the likelier explanation.
const ASK_FROM: f64 = 0.5;
/// An explanation less likely than this is not mentioned.
const MENTION_FROM: f64 = 0.1;
/// At most so many explanations are mentioned.
const MOST: usize = 3;

/// The slips that explain a reading better than the part does, likeliest first.
/// None when the reading is ordinary, or when too little is known to say.
///
/// Bayes' theorem with stated priors: each slip's chance per reading, times the
/// density that what was meant has under the [`Expectation`]. Priors and trust
/// are estimates of the trade (common practice, no source).
///
/// ```
/// use assembly_core::quantity::{read, unit, Kind};
/// use assembly_core::typing_sense::{questions, Expectation, Scale, Slip};
/// let inch = unit("in").unwrap();
/// let expected = Expectation {
///     nominal: Some(inch.to_si(2.4500)),
///     part_spread: inch.to_si(0.002),
///     reading_spread: inch.to_si(0.0001),
///     scale: Scale::INCH_THIMBLE,
///     ..Expectation::default()
/// };
/// let typed = read("2.4733", Kind::Length, inch).unwrap();
/// let asked = questions(&typed, &expected);
/// assert_eq!(asked[0].slip, Slip::ThimbleTurn);
/// assert_eq!(asked[0].likely.to_string(), "2.4483 in");
/// assert_eq!(asked[0].to_string(), "2.4733 in looks like one turn of the thimble off: is 2.4483 in meant?");
///
/// let ordinary = read("2.4483", Kind::Length, inch).unwrap();
/// assert!(questions(&ordinary, &expected).is_empty());
/// ```
#[must_use]
pub fn questions(typed: &Typed, expected: &Expectation) -> Vec<Question> {
    if expected.is_empty() {
        return Vec::new();
    }
    let slips = candidates(typed, expected);
    let all_slips: f64 = slips.iter().map(|one| one.chance).sum();
    let honest = (1.0 - all_slips).max(0.5)
        * expected.density(typed.si(), typed.resolution())
        * typed.resolution();
    let weighed: Vec<(f64, Candidate)> = slips
        .into_iter()
        .map(|one| (mass(&one, expected) * one.chance, one))
        .filter(|(weight, _)| *weight > 0.0)
        .collect();
    let total = honest + weighed.iter().map(|(weight, _)| weight).sum::<f64>();
    if !total.is_finite() || total <= 0.0 || honest / total > 1.0 - ASK_FROM {
        return Vec::new();
    }
    let mut asked: Vec<Question> = Vec::new();
    for (weight, candidate) in weighed {
        let weight = weight / total;
        match asked.iter_mut().find(|one| is_same(one, &candidate)) {
            // Two slips that lead to the same value are one question.
            Some(same) if same.weight >= weight => same.weight += weight,
            Some(same) => {
                let sum = same.weight + weight;
                *same = question(typed, candidate, sum);
            }
            None => asked.push(question(typed, candidate, weight)),
        }
    }
    asked.sort_unstable_by(|a, b| b.weight.total_cmp(&a.weight));
    asked.retain(|one| one.weight >= MENTION_FROM);
    asked.truncate(MOST);
    asked
}

fn question(typed: &Typed, candidate: Candidate, weight: f64) -> Question {
    Question {
        typed: typed.clone(),
        slip: candidate.slip,
        likely: candidate.meant,
        weight,
    }
}

/// The probability of what was meant, to the step of its last digit.
fn mass(candidate: &Candidate, expected: &Expectation) -> f64 {
    let (value, step) = (candidate.meant.si(), candidate.step);
    let density = match candidate.slip {
        Slip::OtherSize { step: size } => expected.density_at_size(value, step, size),
        _ => expected.fitting_density(value, step),
    };
    density * step
}

fn is_same(asked: &Question, candidate: &Candidate) -> bool {
    let size = |slip: Slip| match slip {
        Slip::OtherSize { step } => Some(step),
        _ => None,
    };
    let apart = (asked.likely.si() - candidate.meant.si()).abs();
    size(asked.slip) == size(candidate.slip) && apart <= 1e-6 * candidate.step
}

/// The question in one sentence.
impl fmt::Display for Question {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { typed, likely, .. } = self;
        let Slip::OtherSize { step } = self.slip else {
            let told = self.slip.told();
            return write!(f, "{typed} looks like {told}: is {likely} meant?");
        };
        let size = size_words(step);
        let side = if step < 0.0 { "undersize" } else { "oversize" };
        write!(
            f,
            "{typed} would be right for a part {size} {side}: has it been repaired to that size?"
        )
    }
}
