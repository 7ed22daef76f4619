//! The oil of an engine: how thick it is, what film it makes, what pressure the
//! pump makes of the leaks, and what a reading of the gauge means.
//!
//! - [`viscosity`]: an oil against temperature, by sheet or by grade.
//! - [`film`]: the film between journal and bearing.
//! - [`circuit`]: pump, relief, filter, gallery and every leak.
//! - [`diagnosis`]: what a reading of the gauge means, and what made it so.
//! - [`running_in`]: priming, the first hour, compression and leak-down.

pub mod circuit;
pub mod diagnosis;
pub mod film;
mod inputs;
pub mod running_in;
pub mod viscosity;
