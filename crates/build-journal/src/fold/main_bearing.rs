//! A main bearing with all that is known of it.

use build_plan::Main;

use super::limits::Limits;
use super::readings::Taken;

/// A main bearing.
#[derive(Clone, PartialEq, Debug)]
pub struct MainBearing {
    /// Which one.
    pub main: Main,
    /// All its readings, in the order they were taken, also those struck out
    /// and those that cannot be read.
    pub readings: Vec<Taken>,
    /// The limits of its oil clearance. More than one is a conflict that a
    /// person decides.
    pub limits: Vec<Limits>,
}
