//! The way of the oil: pump, relief, filter, gallery, and every leak.
//!
//! The pump pushes a volume a turn, whatever the pressure; the leaks take what
//! goes with the pressure, the cube of the clearance and one over the viscosity.
//! So pressure goes with speed, viscosity and one over the sum of the clearances
//! cubed, until the relief opens. Besides, each turning journal drags oil out of
//! the ends of its film: as much as the film of Reynolds' equation loses there.

pub mod balance;
mod check;
pub mod eccentricity;
pub mod error;
pub mod example;
pub mod gallery;
pub mod layout;
pub mod leak;
pub mod map;
mod prepared;
pub mod pump;
pub mod rule;
#[cfg(test)]
mod tests;
pub mod usual;

pub use balance::{At, BearingLoads, Circuit, Demand, Filter};
pub use check::OIL_PRESSURE;
pub use error::CircuitError;
pub use layout::{BearingRow, Known, Layout, Leak, LeakKind, Leaks};
pub use leak::Entry;
pub use map::{Point, PressureMap, Share};
pub use pump::{Pump, Relief};
