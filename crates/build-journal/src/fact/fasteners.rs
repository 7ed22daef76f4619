//! A group of fasteners, as the builder's sheet has it.

use crate::id::{OwnId, ToolId};

/// A group of fasteners that are tightened together.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct FastenerGroup {
    /// Its id. It is a check as well: a tick for every bolt at every stage.
    pub own: OwnId,
    /// What it is called.
    pub label: String,
    /// On which parts, as in a measure.
    pub per: Option<String>,
    /// How many bolts there are at each part.
    pub bolts: u32,
    /// Thread and length in one, as typed by the first version; later ones keep
    /// them apart, in the sheet.
    pub size: Option<String>,
    /// What the threads are lubricated with; "dry" is an answer.
    pub lubricant: Option<String>,
    /// The stages in order, as typed with their units: "25 ft-lb", "90°". A lone
    /// number is in the wrench's unit.
    pub stages: Vec<String>,
    /// Where that comes from.
    pub source: Option<String>,
    /// Ids of measures, checks, steps and events that make it stale.
    pub stale_with: Vec<String>,
    /// All else that the sheet says. A file of the first version has none of it.
    pub sheet: Box<FastenerSheet>,
}

/// What a tightening needs besides. Nothing of it has to be there: a run says
/// what is missing.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct FastenerSheet {
    /// What the group holds: an id of [`Holds`](assembly_core::tightening::group::Holds).
    pub holds: Option<String>,
    /// What kind of fastener: an id of [`Kind`](assembly_core::tightening::kind::Kind).
    pub fastener: Option<String>,
    /// The thread, as typed: "7/16-14".
    pub thread: Option<String>,
    /// The length under the head, as typed.
    pub length: Option<String>,
    /// What is under the heads: the other half of the lubricant.
    pub under_head: Option<String>,
    /// The wrench.
    pub wrench: Option<Wrench>,
    /// Stages that are pulled with another wrench than that one.
    pub stage_wrenches: Vec<StageWrench>,
    /// An adapter on it that moves the bolt away from its drive.
    pub adapter: Option<Adapter>,
    /// Where the bolts sit.
    pub layout: Option<BoltLayout>,
    /// Where each bolt was dragged to on the drawing, in hundredths of the way
    /// from one bolt to the next, across and down; empty when they sit as in the
    /// layout.
    pub places: Vec<[i32; 2]>,
    /// The order, bolts counted from 1 as they are drawn.
    pub order: Vec<u32>,
    /// Where the order comes from.
    pub order_from: Option<Origin>,
    /// Where the stages come from.
    pub stages_from: Option<Origin>,
    /// What lies between the parts: a word of
    /// [`Between`](assembly_core::tightening::retorque::Between).
    pub between: Option<String>,
    /// How often a bolt may be used.
    pub uses_allowed: Option<u32>,
    /// The least stretch, as typed with its unit.
    pub stretch_low: Option<String>,
    /// The greatest stretch, as typed with its unit.
    pub stretch_high: Option<String>,
    /// How much longer a bolt may have grown for good, as typed with its unit.
    pub set_at_most: Option<String>,
}

/// A torque wrench with its scale.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Wrench {
    /// What the builder calls it.
    pub name: Option<String>,
    /// The lowest mark, as typed.
    pub low: String,
    /// The highest mark, as typed.
    pub high: String,
    /// The unit on it: the run shows its numbers in this one.
    pub unit: String,
    /// How far apart its marks are, as typed.
    pub step: Option<String>,
    /// From the middle of its grip to its drive, as typed: what an adapter asks
    /// for.
    pub grip: Option<String>,
}

/// A stage that is pulled with a wrench of its own.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct StageWrench {
    /// The stage, from 1.
    pub stage: u32,
    /// The wrench, as it was then: a list that changes later changes no record.
    pub wrench: Wrench,
}

/// A torque wrench was put on the builder's list, or described anew.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct WrenchListed {
    /// The tool.
    pub tool: ToolId,
    /// What it is.
    pub wrench: Wrench,
}

/// A crowfoot or other adapter on a torque wrench.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Adapter {
    /// The wrench from the middle of the grip to its drive, as typed with its
    /// unit.
    pub wrench_length: String,
    /// From the drive to the middle of the bolt, as typed with its unit.
    pub length: String,
    /// By how much it is turned from straight ahead, as typed; a lone number is
    /// in degrees.
    pub turned: String,
}

/// Where the bolts of a group sit, as drawn.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum BoltLayout {
    /// In rows, each centred, numbered along the first row, then the next.
    Rows(Vec<u32>),
    /// Evenly around a circle.
    Circle(u32),
    /// Something else, as its JSON text.
    Unknown(String),
}

super::words::words! {
    /// Where an order or a list of stages comes from.
    Origin {
        /// It is printed on the maker's sheet.
        Printed = "printed";
        /// It was proposed here when the builder asked: common practice.
        CommonPractice = "common-practice";
    }
}
