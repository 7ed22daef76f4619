//! Parts that are bought and work that is given out.

use super::body::Spot;
use super::words::{PartStage, WorkStage};
use crate::id::{PartId, WorkId};

/// A part on the parts list. Listed again it takes its own place.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PartListed {
    /// Its id.
    pub part: PartId,
    /// What it is.
    pub name: String,
    /// What it is for: the id of a supply in `build_plan`, that steps wait for.
    pub supply: Option<String>,
    /// Where it goes.
    pub place: Option<Spot>,
    /// Its size, as typed: standard, an oversize or undersize.
    pub size: Option<String>,
    /// How many, as typed.
    pub quantity: Option<String>,
    /// Who sells it.
    pub supplier: Option<String>,
    /// Its price, as typed.
    pub price: Option<String>,
    /// Its lot or box.
    pub lot: Option<String>,
}

/// How far a part has come.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PartMoved {
    /// The part.
    pub part: PartId,
    /// Where it stands.
    pub stage: PartStage,
    /// The day it is promised for, as year-month-day.
    pub promised: Option<String>,
    /// Who or what is waited for, and what else is to be said.
    pub words: Option<String>,
}

/// Machine work on the order. Ordered again it takes its own place.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct WorkOrdered {
    /// Its id.
    pub work: WorkId,
    /// What is to be done.
    pub what: String,
    /// The step in `build_plan` that it is.
    pub step: Option<String>,
    /// Who does it.
    pub shop: Option<String>,
    /// What came in, and what was brought along to measure to: pistons, rings,
    /// shells, plate, fasteners.
    pub brought: Option<String>,
    /// What has to be left alone.
    pub leave_alone: Option<String>,
    /// The conditions that the numbers hold in: caps torqued, plate on, 68 °F.
    pub conditions: Option<String>,
    /// The price agreed on, as typed.
    pub price: Option<String>,
}

/// A number that is wanted of machine work.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct WorkWanted {
    /// The work.
    pub work: WorkId,
    /// The measure.
    pub measure: String,
    /// The part; all of them when not said.
    pub place: Option<Spot>,
    /// The least that is wanted, as typed.
    pub low: Option<String>,
    /// The most that is wanted, as typed.
    pub high: Option<String>,
    /// The symbol of the unit that a lone number is in.
    pub unit: String,
}

/// A number that the shop gave back with its work.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct WorkReturned {
    /// The work.
    pub work: WorkId,
    /// The measure.
    pub measure: String,
    /// Where.
    pub place: Spot,
    /// The number, as the shop wrote it.
    pub typed: String,
    /// The symbol of the unit that a lone number is in.
    pub unit: String,
}

/// How far machine work has come.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct WorkMoved {
    /// The work.
    pub work: WorkId,
    /// Where it stands.
    pub stage: WorkStage,
    /// The day it is promised for, as year-month-day.
    pub promised: Option<String>,
    /// What else is to be said.
    pub words: Option<String>,
}
