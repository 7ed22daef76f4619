//! The base of measuring: tolerances, press fits, heat, uncertainty, decisions.
//!
//! - [`standard_tolerance`], [`tolerance_class`], [`limits_and_fits`]: the ISO 286 code system.
//! - [`press_fit`]: the stresses and forces of an interference fit.
//! - [`metal`], [`expansion`]: what metals do with heat.
//! - [`coverage`], [`budget`], [`conformity`]: uncertainty and what may be decided with it.
//! - [`exaggerated`]: taper and roundness drawn many times as large as they are.

pub mod budget;
pub mod conformity;
pub mod coverage;
pub mod exaggerated;
pub mod expansion;
mod hole_deviation;
pub mod limits_and_fits;
pub mod metal;
pub mod press_fit;
mod shaft_deviation;
mod shaft_table;
mod size_step;
pub mod standard_tolerance;
pub mod tolerance_class;

pub use size_step::NominalSize;
