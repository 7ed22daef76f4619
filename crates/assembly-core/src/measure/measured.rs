//! A typed measured value.

use std::borrow::Borrow;
use std::marker::PhantomData;
use std::ops::{Add, Mul, Neg, Sub};

use super::estimate::Estimate;
use super::source::SourceId;
use crate::quantity::Si;

/// A measured quantity: its value and how far each named cause may move it.
///
/// ```
/// use assembly_core::measure::{Measured, Origin, Sources};
/// use assembly_core::quantity::Si;
/// use uom::si::f64::Length;
///
/// let mut sources = Sources::new();
/// let zero = sources.shared("mic 1", "the micrometer's zero", Origin::SharedZero);
/// let housing = Measured::exact(Length::from_si(0.0622)).with(zero, Length::from_si(5e-6));
/// let journal = Measured::exact(Length::from_si(0.0621)).with(zero, Length::from_si(5e-6));
/// // One micrometer read both, so its zero cancels.
/// assert_eq!((housing - journal).give_or_take(), Length::from_si(0.0));
/// ```
#[derive(Clone, PartialEq, Debug)]
pub struct Measured<Q> {
    estimate: Estimate,
    quantity: PhantomData<Q>,
}

impl<Q: Si> Measured<Q> {
    /// A value taken as exact.
    #[must_use]
    pub fn exact(value: Q) -> Self {
        Self::from_estimate(Estimate::exact(value.to_si()))
    }

    /// The value with one more cause of error of this standard deviation.
    #[must_use]
    pub fn with(self, source: SourceId, deviation: Q) -> Self {
        Self::from_estimate(self.estimate.with(source, deviation.to_si()))
    }

    /// Takes an untyped estimate as one of this quantity. The caller vouches for the kind.
    #[must_use]
    pub const fn from_estimate(estimate: Estimate) -> Self {
        Self {
            estimate,
            quantity: PhantomData,
        }
    }

    /// The value.
    #[must_use]
    pub fn value(&self) -> Q {
        Q::from_si(self.estimate.value())
    }

    /// One standard deviation of all causes together.
    #[must_use]
    pub fn give_or_take(&self) -> Q {
        Q::from_si(self.estimate.deviation())
    }

    /// The untyped inside.
    #[must_use]
    pub const fn estimate(&self) -> &Estimate {
        &self.estimate
    }

    /// The untyped inside, without a copy.
    #[must_use]
    pub fn into_estimate(self) -> Estimate {
        self.estimate
    }

    /// The size without its sign.
    #[must_use]
    pub fn size(&self) -> Self {
        Self::from_estimate(self.estimate.size())
    }

    /// The mean of some values; `None` of none.
    #[must_use]
    pub fn mean<'a>(
        values: impl IntoIterator<Item = &'a Self, IntoIter: ExactSizeIterator + Clone>,
    ) -> Option<Self>
    where
        Q: 'a,
    {
        Estimate::mean_of(values.into_iter().map(Self::estimate)).map(Self::from_estimate)
    }

    /// The least of some values, with the errors of that one; `None` of none.
    #[must_use]
    pub fn least<'a>(values: impl IntoIterator<Item = &'a Self>) -> Option<&'a Self>
    where
        Q: 'a,
    {
        (values.into_iter()).min_by(|a, b| a.estimate.value().total_cmp(&b.estimate.value()))
    }

    /// The greatest of some values, with the errors of that one; `None` of none.
    #[must_use]
    pub fn greatest<'a>(values: impl IntoIterator<Item = &'a Self>) -> Option<&'a Self>
    where
        Q: 'a,
    {
        (values.into_iter()).max_by(|a, b| a.estimate.value().total_cmp(&b.estimate.value()))
    }
}

impl<Q: Si, R: Borrow<Measured<Q>>> Add<R> for &Measured<Q> {
    type Output = Measured<Q>;

    fn add(self, other: R) -> Measured<Q> {
        Measured::from_estimate(&self.estimate + &other.borrow().estimate)
    }
}

impl<Q: Si, R: Borrow<Self>> Add<R> for Measured<Q> {
    type Output = Self;

    fn add(self, other: R) -> Self {
        &self + other
    }
}

impl<Q: Si, R: Borrow<Measured<Q>>> Sub<R> for &Measured<Q> {
    type Output = Measured<Q>;

    fn sub(self, other: R) -> Measured<Q> {
        Measured::from_estimate(&self.estimate - &other.borrow().estimate)
    }
}

impl<Q: Si, R: Borrow<Self>> Sub<R> for Measured<Q> {
    type Output = Self;

    fn sub(self, other: R) -> Self {
        &self - other
    }
}

impl<Q: Si> Neg for Measured<Q> {
    type Output = Self;

    fn neg(self) -> Self {
        self * -1.0
    }
}

impl<Q: Si> Mul<f64> for Measured<Q> {
    type Output = Self;

    fn mul(self, factor: f64) -> Self {
        Self::from_estimate(&self.estimate * factor)
    }
}
