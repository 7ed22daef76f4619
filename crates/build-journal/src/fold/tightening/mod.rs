//! Where the builder's groups of fasteners stand.
//!
//! - [`tightenings`]: all facts in, every group out. [`Gathering`] is taken
//!   further fact by fact.
//! - [`Sheet`]: what a group's sheet says, and what is wrong with it before the
//!   first tap.
//! - [`Run`]: a run over a group: what is done, what is next, how sure that is,
//!   and whether it counts.
//! - [`Part`]: the bolts of a group at one part: their uses and lengths, the
//!   runs over them, the sealant between.
//!
//! It is worked out from the journal alone and apart from [`Build`](super::Build):
//! a tap in a run must not wait for everything else that follows from the facts.

mod bolts;
mod drawing;
mod gather;
mod group;
mod run;
mod sealant;
mod sheet;
mod stages;
mod wrench;
mod wrenches;

pub use bolts::{Bolt, BoltTrouble, Length};
pub use drawing::{MOST_BOLTS, NEAREST, PITCH, placed};
pub use gather::{Gathering, Tightenings, tightenings};
pub use group::{Group, Part, State};
pub use run::Run;
pub use sealant::{Sealant, waits};
pub use sheet::{Field, Sheet, Wrong};
pub use stages::{SheetStage, read_stage, torque_unit};
pub use wrench::adapter;
pub use wrenches::{Choice, Held, Offered, choices};

#[cfg(test)]
mod bench_tests;
#[cfg(test)]
mod facts;
#[cfg(test)]
mod further_tests;
#[cfg(test)]
mod tests;
#[cfg(test)]
mod wrench_tests;
