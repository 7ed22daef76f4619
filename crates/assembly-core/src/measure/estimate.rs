//! A number of SI units with its list of error contributions.

use smallvec::SmallVec;

use super::source::{ErrorSource, Origin, SourceId, Sources};

/// How far one standard deviation of each cause moves a value. A reading has
/// four causes at most, and there are thousands of readings.
type Parts = SmallVec<[(SourceId, f64); 4]>;

/// A value in SI units and, for every cause of error, how far one standard
/// deviation of that cause moves it (with sign). First order, as in the GUM
/// (JCGM 100:2008, 5.1): a smooth function of such values keeps the list, so a
/// cause that two values share adds or cancels by itself.
///
/// This is the untyped inside of [`Measured`](super::Measured).
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Estimate {
    value: f64,
    /// Sorted by source, no source twice.
    parts: Parts,
}

/// How much of a value's uncertainty one cause makes.
#[derive(Clone, PartialEq, Debug)]
pub struct Share {
    /// The cause.
    pub source: SourceId,
    /// One standard deviation that this cause alone gives the value, SI units, not negative.
    pub deviation: f64,
    /// Its part of the total variance, 0 to 1.
    pub of_variance: f64,
}

impl Estimate {
    /// A value taken as exact: a nominal size, a typed limit.
    #[must_use]
    pub const fn exact(value: f64) -> Self {
        Self {
            value,
            parts: SmallVec::new_const(),
        }
    }

    /// Another value with the same errors.
    #[must_use]
    pub(crate) fn at(&self, value: f64) -> Self {
        Self {
            value,
            parts: self.parts.clone(),
        }
    }

    /// The same value with one more cause of error of this standard deviation.
    /// A cause that is there already adds up with its sign.
    #[must_use]
    pub fn with(mut self, source: SourceId, deviation: f64) -> Self {
        if deviation != 0.0 {
            add_part(&mut self.parts, source, deviation);
        }
        self
    }

    /// The value, SI units.
    #[must_use]
    pub const fn value(&self) -> f64 {
        self.value
    }

    /// The signed contributions, sorted by source.
    #[must_use]
    pub fn parts(&self) -> &[(SourceId, f64)] {
        &self.parts
    }

    /// The standard uncertainty, SI units: what is shown as give-or-take.
    #[must_use]
    pub fn deviation(&self) -> f64 {
        root_sum_square(self.parts.iter().map(|(_, part)| *part))
    }

    /// The covariance with another value, from the causes they share.
    #[must_use]
    pub fn covariance(&self, other: &Self) -> f64 {
        let mut sum = 0.0;
        let mut theirs = other.parts.iter().peekable();
        for (source, mine) in &self.parts {
            while theirs.next_if(|(id, _)| id < source).is_some() {}
            if let Some((_, part)) = theirs.next_if(|(id, _)| id == source) {
                sum += mine * part;
            }
        }
        sum
    }

    /// The causes of error, largest share first.
    #[must_use]
    pub fn shares(&self) -> Vec<Share> {
        let total = self.deviation();
        let mut shares: Vec<Share> = self
            .parts
            .iter()
            .map(|(source, part)| Share {
                source: *source,
                deviation: part.abs(),
                of_variance: if total > 0.0 {
                    (part / total).powi(2)
                } else {
                    0.0
                },
            })
            .collect();
        shares.sort_by(|a, b| b.of_variance.total_cmp(&a.of_variance));
        shares
    }

    /// The part of the standard uncertainty that more readings cannot shrink.
    #[must_use]
    pub fn lasting_deviation(&self, sources: &Sources) -> f64 {
        let lasts = |id: SourceId| {
            let origin = sources.get(id).map(|source| source.origin);
            !matches!(origin, Some(Origin::Repeat | Origin::Rounding))
        };
        let lasting = self.parts.iter().filter(|(id, _)| lasts(*id));
        root_sum_square(lasting.map(|(_, part)| *part))
    }

    /// Effective degrees of freedom by Welch and Satterthwaite (GUM G.4.1).
    /// Infinite when every cause is taken as known. Causes of one label and
    /// origin were found in one and the same trial, so they count as one.
    #[must_use]
    pub fn degrees_of_freedom(&self, sources: &Sources) -> f64 {
        let mut trials: Vec<(&ErrorSource, f64)> = Vec::new();
        for (id, part) in &self.parts {
            let Some(source) = sources.get(*id) else {
                continue;
            };
            if !source.degrees_of_freedom.is_finite() {
                continue;
            }
            match trials.iter_mut().find(|(known, _)| *known == source) {
                Some((_, deviation)) => *deviation = deviation.hypot(*part),
                None => trials.push((source, part.abs())),
            }
        }
        if trials.is_empty() {
            return f64::INFINITY;
        }
        let total = self.deviation();
        let sum: f64 = trials
            .iter()
            .filter(|_| total > 0.0)
            .map(|(source, deviation)| {
                (deviation / total).powi(4) / source.degrees_of_freedom.max(f64::MIN_POSITIVE)
            })
            .sum();
        if sum > 0.0 { 1.0 / sum } else { f64::INFINITY }
    }

    /// A smooth function of other values: its value, and each input with the
    /// function's slope for it (output SI units per input SI unit).
    #[must_use]
    pub fn from_slopes(value: f64, inputs: &[(&Self, f64)]) -> Self {
        let many = inputs.iter().map(|(input, _)| input.parts.len()).sum();
        let mut parts = Parts::with_capacity(many);
        for (input, slope) in inputs.iter().filter(|(_, slope)| *slope != 0.0) {
            for (id, part) in &input.parts {
                // Readings come one after the other, so what is fresh in each comes
                // last, and what they share is there already.
                let added = match parts.last() {
                    Some((last, _)) if id <= last => add_to(&mut parts, *id, part * slope),
                    _ => {
                        parts.push((*id, part * slope));
                        true
                    }
                };
                if !added {
                    return Self::from_mixed_slopes(value, inputs);
                }
            }
        }
        parts.retain(|(_, part)| *part != 0.0);
        Self { value, parts }
    }

    /// The same for inputs whose causes lie between those of others: putting them in
    /// one by one would take a time that grows with the square of their number.
    fn from_mixed_slopes(value: f64, inputs: &[(&Self, f64)]) -> Self {
        let mut all: Vec<(SourceId, f64)> = inputs
            .iter()
            .filter(|(_, slope)| *slope != 0.0)
            .flat_map(|(input, slope)| input.parts.iter().map(|(id, part)| (*id, part * *slope)))
            .collect();
        // Stable, so that the parts of one cause add up in the inputs' order.
        all.sort_by_key(|(id, _)| *id);
        let mut parts = Parts::with_capacity(all.len());
        for (id, part) in all {
            match parts.last_mut() {
                Some((last, sum)) if *last == id => *sum += part,
                _ => parts.push((id, part)),
            }
        }
        parts.retain(|(_, part)| *part != 0.0);
        Self { value, parts }
    }

    /// The mean of some values; `None` of none.
    #[must_use]
    pub fn mean(values: &[Self]) -> Option<Self> {
        Self::mean_of(values.iter())
    }

    /// The same, wherever they lie.
    pub(super) fn mean_of<'a>(
        values: impl ExactSizeIterator<Item = &'a Self> + Clone,
    ) -> Option<Self> {
        let first = values.clone().next()?;
        if values.len() == 1 {
            return Some(first.clone());
        }
        let weight = 1.0 / values.len() as f64;
        // The mean of equal numbers must be that number to the last bit.
        let first = first.value;
        let offset: f64 = values.clone().map(|one| one.value - first).sum::<f64>() * weight;
        let inputs: Vec<(&Self, f64)> = values.map(|one| (one, weight)).collect();
        Some(Self::from_slopes(first + offset, &inputs))
    }

    /// The least of some values, with the errors of that one; `None` of none.
    #[must_use]
    pub fn least(values: &[Self]) -> Option<&Self> {
        values.iter().min_by(|a, b| a.value.total_cmp(&b.value))
    }

    /// The greatest of some values, with the errors of that one; `None` of none.
    #[must_use]
    pub fn greatest(values: &[Self]) -> Option<&Self> {
        values.iter().max_by(|a, b| a.value.total_cmp(&b.value))
    }
}

fn add_part(parts: &mut Parts, source: SourceId, deviation: f64) {
    if parts.last().is_none_or(|(last, _)| *last < source) {
        parts.push((source, deviation));
        return;
    }
    match parts.binary_search_by_key(&source, |(id, _)| *id) {
        Ok(at) => {
            if let Some((_, part)) = parts.get_mut(at) {
                *part += deviation;
            }
        }
        Err(at) => parts.insert(at, (source, deviation)),
    }
}

/// The root of the sum of squares. Where a square is too large or too small for a
/// float, the long way round is taken.
fn root_sum_square(parts: impl Iterator<Item = f64> + Clone) -> f64 {
    // Each square is whole from here on, and what is lost of smaller ones is nothing
    // beside it.
    const LEAST: f64 = 1e-280;
    let sum: f64 = parts.clone().map(|part| part * part).sum();
    if (LEAST..=f64::MAX).contains(&sum) {
        sum.sqrt()
    } else {
        parts.fold(0.0_f64, f64::hypot)
    }
}

/// Adds to a part that is there. Says no when it is not.
fn add_to(parts: &mut Parts, source: SourceId, by: f64) -> bool {
    let at = parts.binary_search_by_key(&source, |(id, _)| *id).ok();
    let part = at.and_then(|at| parts.get_mut(at));
    part.map(|(_, part)| *part += by).is_some()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_error_that_two_readings_share_cancels_in_their_difference() {
        let mut sources = Sources::new();
        let zero = sources.shared("micrometer 1", "the micrometer's zero", Origin::SharedZero);
        let (a, b) = (
            sources.fresh("reading 1", Origin::Repeat),
            sources.fresh("reading 2", Origin::Repeat),
        );
        let bore = Estimate::exact(2.4520).with(zero, 0.0003).with(a, 0.0001);
        let journal = Estimate::exact(2.4500).with(zero, 0.0003).with(b, 0.0001);
        let clearance = Estimate::from_slopes(
            bore.value() - journal.value(),
            &[(&bore, 1.0), (&journal, -1.0)],
        );
        assert!((clearance.deviation() - 0.0001 * 2.0_f64.sqrt()).abs() < 1e-12);
        assert!(clearance.parts().iter().all(|(id, _)| *id != zero));
        assert!((bore.covariance(&journal) - 9e-8).abs() < 1e-20);
    }

    #[test]
    fn more_readings_shrink_only_what_is_fresh_in_each() {
        let mut sources = Sources::new();
        let zero = sources.shared("gauge", "the gauge's zero", Origin::SharedZero);
        let readings: Vec<Estimate> = (0..16)
            .map(|_| {
                Estimate::exact(1.0)
                    .with(zero, 0.3)
                    .with(sources.fresh("feel", Origin::Repeat), 0.4)
            })
            .collect();
        let mean = Estimate::mean(&readings).unwrap();
        assert_eq!(mean.value(), 1.0);
        assert!((mean.deviation() - 0.1_f64.hypot(0.3)).abs() < 1e-12);
        assert!((mean.lasting_deviation(&sources) - 0.3).abs() < 1e-12);
    }

    #[test]
    fn readings_of_one_trial_are_known_no_better_for_being_many() {
        let mut sources = Sources::new();
        let mut tried = |label: &str| {
            sources.add(ErrorSource {
                label: label.into(),
                origin: Origin::Repeat,
                degrees_of_freedom: 4.0,
            })
        };
        let (one, two, other) = (tried("gauge"), tried("gauge"), tried("micrometer"));
        let same = Estimate::exact(1.0).with(one, 0.3).with(two, 0.3);
        let apart = Estimate::exact(1.0).with(one, 0.3).with(other, 0.3);
        assert!((same.degrees_of_freedom(&sources) - 4.0).abs() < 1e-9);
        assert!((apart.degrees_of_freedom(&sources) - 8.0).abs() < 1e-9);
    }

    #[test]
    fn a_deviation_is_right_however_large_or_small_its_parts_are() {
        let mut sources = Sources::new();
        let (one, other) = (
            sources.fresh("one", Origin::Repeat),
            sources.fresh("other", Origin::Repeat),
        );
        for scale in [1e-300, 1e-170, 1e-150, 1e-6, 1.0, 1e150, 1e200, 1e300] {
            let value = Estimate::exact(0.0)
                .with(one, 3.0 * scale)
                .with(other, -4.0 * scale);
            assert!((value.deviation() / scale - 5.0).abs() < 1e-14, "{scale}");
            assert_eq!(value.lasting_deviation(&sources), 0.0);
        }
        assert_eq!(Estimate::exact(1.0).deviation(), 0.0);
    }

    #[test]
    fn inputs_in_any_order_give_the_same() {
        let mut sources = Sources::new();
        let zero = sources.shared("gauge", "the gauge's zero", Origin::SharedZero);
        let mut inputs: Vec<Estimate> = (0..9_i32)
            .map(|number| {
                Estimate::exact(f64::from(number))
                    .with(zero, 0.25)
                    .with(sources.fresh("feel", Origin::Repeat), 0.5)
            })
            .collect();
        let sum = |inputs: &[Estimate]| {
            let weights: Vec<(&Estimate, f64)> = inputs.iter().map(|one| (one, 0.5)).collect();
            Estimate::from_slopes(18.0, &weights)
        };
        let forwards = sum(&inputs);
        inputs.reverse();
        assert_eq!(sum(&inputs), forwards);
        assert_eq!(forwards.parts().len(), 10);
        assert_eq!(forwards.parts()[0], (zero, 9.0 * 0.125));
    }

    #[test]
    fn many_inputs_give_what_few_at_a_time_would() {
        let mut sources = Sources::new();
        let zero = sources.shared("gauge", "the gauge's zero", Origin::SharedZero);
        let inputs: Vec<Estimate> = (0..40_i32)
            .map(|number| {
                Estimate::exact(f64::from(number))
                    .with(zero, 0.3)
                    .with(sources.fresh("feel", Origin::Repeat), 0.4)
            })
            .collect();
        let weights: Vec<(&Estimate, f64)> = inputs.iter().map(|one| (one, 0.5)).collect();
        let at_once = Estimate::from_slopes(7.0, &weights);
        let one_by_one = weights
            .iter()
            .fold(Estimate::exact(7.0), |sum, (input, slope)| {
                Estimate::from_slopes(7.0, &[(&sum, 1.0), (input, *slope)])
            });
        assert_eq!(at_once, one_by_one);
        // What cancels is not kept as a part of nothing.
        let cancelling: Vec<(&Estimate, f64)> = inputs
            .iter()
            .flat_map(|one| [(one, 0.5), (one, -0.5)])
            .collect();
        assert!(Estimate::from_slopes(0.0, &cancelling).parts().is_empty());
    }

    #[test]
    fn shares_add_up_to_one_and_come_largest_first() {
        let mut sources = Sources::new();
        let (a, b) = (
            sources.fresh("a", Origin::Repeat),
            sources.fresh("b", Origin::Repeat),
        );
        let value = Estimate::exact(0.0).with(a, 1.0).with(b, -2.0);
        let shares = value.shares();
        assert_eq!(shares[0].source, b);
        assert!((shares.iter().map(|one| one.of_variance).sum::<f64>() - 1.0).abs() < 1e-12);
    }
}
