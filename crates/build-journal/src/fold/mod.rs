//! What follows from the facts: the state of a build, worked out afresh.
//!
//! - [`fold`]: all facts in, the [`Build`] out. It is pure, and a fact that
//!   makes no sense becomes a [`Problem`] at its place and stops nothing else.
//! - [`Taken`]: a reading, with what its text says.
//! - [`Limits`]: the limits of a measure, with where they come from.
//! - [`Folding`]: the same, taken further fact by fact.
//! - [`MainBearing`], [`RodBearing`]: a bearing with all that is known of it.
//! - [`Fit`]: any other measure at any part of the engine.
//! - [`tightening`]: where the groups of fasteners stand.
//! - [`Standing`]: its verdict, or what is still missing for one.

mod bearing_readings;
mod bench;
mod beside;
mod bought;
mod build;
mod choosing;
mod clocks;
mod conflicts;
mod critical;
mod doubt;
mod engine;
mod fit;
mod folding;
mod left_out;
mod limits;
mod made_sizes;
mod main_bearing;
mod meant;
mod next;
mod noting;
mod oil;
mod own_items;
mod photos;
mod placing;
mod plan;
mod preview;
mod problem;
mod reach;
mod readings;
mod record;
mod register;
mod repaired;
mod running_fit;
mod sayings;
mod side_by_side;
mod stale;
mod standing;
mod store;
mod strikes;
mod taking;
pub mod tightening;
mod tools;
mod trials;
mod units;
mod unseen;
mod warmth;
mod way_back;
mod worked_out;
mod working_out;

pub use beside::Beside;
pub use bought::{Bought, ListedPart, Returned, ShopWork, WorkLine};
pub use build::{Build, DescribedEngine, NotedDown, OtherFact, fold};
pub use choosing::{Chosen, ChosenPart, ChosenPlace, Lacking, Span, Wishes};
pub use clocks::{Clock, lasting};
pub use conflicts::{Conflict, Said, conflicts};
pub use critical::{CriticalPath, OnTheWay, Promised};
pub use doubt::Doubt;
pub use engine::DescriptionProblem;
pub use fit::{Fit, FitStanding};
pub use folding::Folding;
pub use left_out::LeftOut;
pub use limits::{Limits, LimitsProblem};
pub use made_sizes::{ListedSizes, SizesProblem};
pub use main_bearing::{MainBearing, RodBearing};
pub use next::{Outlook, StepState, WaitsFor};
pub use oil::{
    CompressionNote, Count as PlugCount, CylinderNumber, Estimated, GaugeNote, KnownSystem, Lack,
    LeakDownNote, MeasuredCylinder, Meter, MeterOf, Number, NumberFrom, OilBook, OilInputs,
    OilNote, OilUse, OilView, PlugCounts, PrimeNote, RowNote, RunStretch, TrendLine, TrendOf,
    valve_gear,
};
pub use photos::KeptPhoto;
pub use placing::{BenchSizeProblem, OnBench, PutThere, WhatGoesWhere};
pub use plan::Plan;
pub use preview::{Preview, preview, preview_all};
pub use problem::Problem;
pub use readings::{ReadingProblem, Taken};
pub use record::{Cause, LetPass, Made, Marked, Record, ResultAt, Void};
pub use running_fit::RunningFit;
pub use side_by_side::SideBySide;
pub use stale::{ResultState, Stale};
pub use standing::{Missing, Standing};
pub use strikes::StruckOut;
pub use tools::{ListedTool, ToolSeen, ToolSetting, is_one_name};
pub use trials::{ToolTrial, TrialProblem, is_wild, scatter_of, still_wanted};
pub use warmth::{FitWarmth, SettledWarmth, temperature_of};
pub use way_back::{Job, WayBack};
pub use worked_out::ReadAt;

#[cfg(test)]
mod bearing_tests;
#[cfg(test)]
mod beside_tests;
#[cfg(test)]
mod choosing_tests;
#[cfg(test)]
mod conflict_tests;
#[cfg(test)]
mod deeds;
#[cfg(test)]
mod devices;
#[cfg(test)]
mod fit_tests;
#[cfg(test)]
mod in_view_tests;
#[cfg(test)]
mod left_out_tests;
#[cfg(test)]
mod next_tests;
#[cfg(test)]
mod placing_conflict_tests;
#[cfg(test)]
mod stale_tests;
#[cfg(test)]
mod tests;
#[cfg(test)]
mod tool_tests;
#[cfg(test)]
mod undone_tests;
#[cfg(test)]
mod unseen_tests;
#[cfg(test)]
mod warmth_tests;
#[cfg(test)]
mod worked_out_tests;
#[cfg(test)]
mod written;
