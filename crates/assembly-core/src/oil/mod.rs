//! The oil of an engine: how thick it is, what film it makes, what pressure the
//! pump makes of the leaks, and what a reading of the gauge means.
//!
//! - [`viscosity`]: an oil against temperature, by sheet or by grade.

pub mod viscosity;
