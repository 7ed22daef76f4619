//! The one door in and out of `uom`.
//!
//! `uom`'s inch and pound factors carry seven digits only, so nothing converts
//! through them: a value enters and leaves as its number of SI base units, and
//! the exact factors live in this crate's own unit table.

use std::marker::PhantomData;

use uom::si::{Dimension, Quantity, SI};

/// A quantity that can be taken as its number of SI base units and made from one.
pub trait Si: Copy {
    /// The number of SI base units.
    fn to_si(self) -> f64;
    /// The quantity of that many SI base units.
    fn from_si(value: f64) -> Self;
}

impl<D: Dimension + ?Sized> Si for Quantity<D, SI<f64>, f64>
where
    Self: Copy,
{
    fn to_si(self) -> f64 {
        self.value
    }

    fn from_si(value: f64) -> Self {
        Self {
            dimension: PhantomData,
            units: PhantomData,
            value,
        }
    }
}
