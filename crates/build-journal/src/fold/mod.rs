//! What follows from the facts: the state of a build, worked out afresh.
//!
//! - [`fold`]: all facts in, the [`Build`] out. It is pure, and a fact that
//!   makes no sense becomes a [`Problem`] at its place and stops nothing else.
//! - [`Taken`]: a reading, with what its text says.
//! - [`Limits`]: the limits of a measure, with where they come from.
//! - [`MainBearing`]: a main bearing with all that is known of it.
//! - [`Standing`]: its verdict, or what is still missing for one.

mod bearing_readings;
mod bench;
mod build;
mod engine;
mod limits;
mod main_bearing;
mod problem;
mod readings;
mod standing;
mod strikes;
mod tools;

pub use build::{Build, DescribedEngine, NotedDown, OtherFact, fold};
pub use engine::DescriptionProblem;
pub use limits::{Limits, LimitsProblem};
pub use main_bearing::MainBearing;
pub use problem::Problem;
pub use readings::{ReadingProblem, Taken};
pub use standing::{Missing, Standing};
pub use strikes::StruckOut;
pub use tools::{ListedTool, ToolSetting};

#[cfg(test)]
mod bearing_tests;
#[cfg(test)]
mod tests;
