//! What follows from the facts: the state of a build, worked out afresh.
//!
//! - [`fold`]: all facts in, the [`Build`] out. It is pure, and a fact that
//!   makes no sense becomes a [`Problem`] at its place and stops nothing else.
//! - [`Taken`]: a reading, with what its text says.
//! - [`Limits`]: the limits of a measure, with where they come from.
//! - [`Folding`]: the same, taken further fact by fact.
//! - [`MainBearing`], [`RodBearing`]: a bearing with all that is known of it.
//! - [`Fit`]: any other measure at any part of the engine.
//! - [`Standing`]: its verdict, or what is still missing for one.

mod bearing_readings;
mod bench;
mod build;
mod engine;
mod fit;
mod folding;
mod limits;
mod main_bearing;
mod problem;
mod readings;
mod register;
mod running_fit;
mod standing;
mod store;
mod strikes;
mod tools;
mod units;
mod working_out;

pub use build::{Build, DescribedEngine, NotedDown, OtherFact, fold};
pub use engine::DescriptionProblem;
pub use fit::{Fit, FitStanding};
pub use folding::Folding;
pub use limits::{Limits, LimitsProblem};
pub use main_bearing::{MainBearing, RodBearing};
pub use problem::Problem;
pub use readings::{ReadingProblem, Taken};
pub use running_fit::RunningFit;
pub use standing::{Missing, Standing};
pub use strikes::StruckOut;
pub use tools::{ListedTool, ToolSetting};

#[cfg(test)]
mod bearing_tests;
#[cfg(test)]
mod deeds;
#[cfg(test)]
mod fit_tests;
#[cfg(test)]
mod tests;
