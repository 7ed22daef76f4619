//! What happened, by kind.
//!
//! Everything a person typed is kept as text, exactly as typed.

use std::sync::Arc;

use assembly_core::fit::running_clearance::NeedleSense;
use build_plan::Place;

use super::bought::{PartListed, PartMoved, WorkMoved, WorkOrdered, WorkReturned, WorkWanted};
use super::doings::{
    CheckMade, EventHappened, Photo, ReadingsStand, StepMarked, ToolChecked, ToolTried, Waived,
    WarmthSettled,
};
use super::fasteners::{FastenerGroup, WrenchListed};
use super::oil::{
    CompressionRead, GaugeRead, LeakDownRead, OilNoted, OilSystem, PlugsCounted, PrimeTested,
    RunningBegun, RunningEnded, RunningRow,
};
use super::own::{OwnMeasure, OwnStep};
use super::placing::{PartOnBench, PartsPlaced};
use super::sizes::SizesListed;
use super::tightening::{
    BoltCompared, BoltMeasured, BoltPulled, BoltsRenewed, JointClosed, RunBegun, RunMarked,
    RunOpened, SealantPutOn,
};
use super::unreadable::Unreadable;
use crate::id::{FactId, SettingId, ToolId};

/// What happened.
#[derive(Clone, PartialEq, Eq, Debug)]
#[non_exhaustive]
pub enum Body {
    /// The engine was described. The latest description counts.
    EngineDescribed(EngineDescribed),
    /// A tool was put on the list.
    ToolListed(ToolListed),
    /// A tool was set: zeroed on a standard or in another tool.
    ToolSet(ToolSet),
    /// Something was measured.
    Reading(Arc<Reading>),
    /// Limits were set for a measure.
    LimitsSet(LimitsSet),
    /// An earlier fact was struck out.
    Struck(Struck),
    /// Something was noted down.
    Note(Note),
    /// Something was said of a step.
    StepMarked(StepMarked),
    /// Something was looked at, felt or counted.
    CheckMade(CheckMade),
    /// Something happened that may make results stale.
    EventHappened(EventHappened),
    /// A result is let pass as it is.
    Waived(Waived),
    /// A tool was checked.
    ToolChecked(ToolChecked),
    /// Readings far apart stand side by side.
    ReadingsStand(ReadingsStand),
    /// A tool was tried out.
    ToolTried(ToolTried),
    /// It was decided what is done about readings taken cold or warm.
    WarmthSettled(WarmthSettled),
    /// A photo was taken.
    Photo(Photo),
    /// The builder added a measure.
    OwnMeasure(OwnMeasure),
    /// The builder added a step.
    OwnStep(OwnStep),
    /// The builder added a group of fasteners.
    FastenerGroup(FastenerGroup),
    /// A run over a group of fasteners was begun.
    RunBegun(RunBegun),
    /// A run was opened in a sitting of its own.
    RunOpened(RunOpened),
    /// A bolt was pulled.
    BoltPulled(BoltPulled),
    /// Something was said of a run.
    RunMarked(RunMarked),
    /// Bolts were taken new.
    BoltsRenewed(BoltsRenewed),
    /// The length of a bolt was measured.
    BoltMeasured(BoltMeasured),
    /// A bolt was held against the map of its hole.
    BoltCompared(BoltCompared),
    /// Sealant was put on.
    SealantPutOn(SealantPutOn),
    /// A joint with sealant was closed.
    JointClosed(JointClosed),
    /// A torque wrench was put on the builder's list.
    WrenchListed(WrenchListed),
    /// A part was put on the list.
    PartListed(PartListed),
    /// A part has come further.
    PartMoved(PartMoved),
    /// Machine work was ordered.
    WorkOrdered(WorkOrdered),
    /// A number is wanted of machine work.
    WorkWanted(WorkWanted),
    /// A shop gave a number back.
    WorkReturned(WorkReturned),
    /// Machine work has come further.
    WorkMoved(WorkMoved),
    /// A part lies on the bench to be chosen.
    PartOnBench(PartOnBench),
    /// It was chosen which part goes where.
    PartsPlaced(PartsPlaced),
    /// A sheet lists the sizes that parts are made in.
    SizesListed(SizesListed),
    /// What is known of the oil system.
    OilSystem(Box<OilSystem>),
    /// The oil pressure gauge was read.
    GaugeRead(GaugeRead),
    /// The engine was primed.
    PrimeTested(PrimeTested),
    /// It began to run at a speed.
    RunningBegun(RunningBegun),
    /// It stopped running at it.
    RunningEnded(RunningEnded),
    /// A row of numbers while it ran.
    RunningRow(RunningRow),
    /// Oil went in or out, or a filter was seen to.
    OilNoted(OilNoted),
    /// The compression of a cylinder was read.
    CompressionRead(CompressionRead),
    /// The leak-down of a cylinder was read.
    LeakDownRead(LeakDownRead),
    /// Plugs were counted out, or back in.
    PlugsCounted(PlugsCounted),
    /// A kind that this version does not know. It is kept, shown as such and
    /// exported again.
    Unknown(UnknownKind),
    /// A kind that this version knows, in a shape that it cannot read. It is
    /// kept, shown with its reason and exported again.
    Unreadable(UnreadableKind),
}

/// The engine, as it was described.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct EngineDescribed {
    /// What the builder calls it.
    pub name: String,
    /// How many cylinders.
    pub cylinders: u32,
    /// `inline`, `vee` or `flat`.
    pub layout: String,
    /// The angle between the banks of a vee, as typed; a lone number is degrees.
    pub bank_angle: Option<String>,
    /// How many main bearings; the usual number when not said.
    pub mains: Option<u32>,
    /// How it is built, a word for each field of
    /// [`Construction`](build_plan::engine::Construction) that was said.
    pub built: Vec<(&'static str, String)>,
}

/// A tool on the list.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ToolListed {
    /// The tool.
    pub tool: ToolId,
    /// What the builder calls it.
    pub name: String,
    /// What sort of instrument it is: an id in `assembly_core`.
    pub instrument: String,
    /// What tells it from others of its name: its range, what is engraved on it.
    pub mark: Option<String>,
}

/// What a tool was set on.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum SetOn {
    /// A setting standard, a gauge block, or its own closed zero.
    Standard,
    /// Another tool, whose errors it takes over.
    Tool(ToolId),
}

/// A tool was set.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ToolSet {
    /// The tool.
    pub tool: ToolId,
    /// The name of this setting; readings refer to it.
    pub setting: SettingId,
    /// What it was set on.
    pub set_on: SetOn,
    /// The size it was set to, as typed.
    pub set_at: Option<String>,
    /// The unit of a lone number in `set_at`.
    pub unit: Option<String>,
    /// The reading that the other tool was still locked at, when it was: its
    /// errors then cancel against that reading.
    pub locked_at: Option<FactId>,
    /// Which way the needle goes, when readings of this setting are what the
    /// needle shows from its zero and not whole sizes.
    pub needle: Option<NeedleSense>,
}

/// A place as it was written down.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Spot {
    /// A place that this version knows.
    Known(Place),
    /// Something else, as its JSON text.
    Unknown(String),
}

impl Spot {
    /// The place, when this version knows it.
    #[must_use]
    pub const fn place(&self) -> Option<Place> {
        match self {
            Self::Known(place) => Some(*place),
            Self::Unknown(_) => None,
        }
    }
}

/// Something was measured.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Reading {
    /// The id of the measure in `build_plan`.
    pub measure: String,
    /// Where.
    pub place: Spot,
    /// The reading, exactly as typed.
    pub typed: String,
    /// The symbol of the unit that a lone number is in.
    pub unit: String,
    /// The tool, when it was said.
    pub tool: Option<ToolId>,
    /// The setting of the tool, when it was said.
    pub setting: Option<SettingId>,
    /// The temperature of the part, as typed, with its unit.
    pub temperature: Option<String>,
    /// What was bolted on, in words.
    pub condition: Option<String>,
    /// What the fingers typed, when it was less than the whole number: only its
    /// last digits. `typed` is the number that was shown for it and accepted, so
    /// the reading means the same whatever stands beside it later.
    pub keyed: Option<String>,
}

/// Where limits come from.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum LimitsOrigin {
    /// The maker's sheet for the engine.
    Sheet,
    /// The sheet that came with the part.
    PartSheet,
    /// The builder's own choice.
    OwnChoice,
}

/// Limits were set.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LimitsSet {
    /// The id of the measure in `build_plan`.
    pub measure: String,
    /// The part that these limits are for, when not for all.
    pub place: Option<Spot>,
    /// The low limit, as typed.
    pub low: Option<String>,
    /// The high limit, as typed.
    pub high: Option<String>,
    /// The symbol of the unit that a lone number is in.
    pub unit: String,
    /// Where they come from.
    pub origin: LimitsOrigin,
    /// Which sheet and page, or why this choice.
    pub origin_note: String,
    /// The limits these take the place of, as the person saw them. Two that do
    /// not know of each other are a conflict, which a person decides.
    pub replaces: Vec<FactId>,
}

/// An earlier fact was struck out. Striking a strike brings the first back.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Struck {
    /// The fact that no longer counts.
    pub fact: FactId,
    /// Why.
    pub reason: Option<String>,
}

/// Something was noted down.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Note {
    /// The words.
    pub text: String,
    /// Where it belongs, when it belongs somewhere.
    pub place: Option<Spot>,
    /// The id of the step it was written on, when it was written on one.
    pub step: Option<String>,
}

/// A kind of fact that this version does not know. Made by reading only.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct UnknownKind {
    pub(super) kind: String,
    pub(super) format: u32,
}

impl UnknownKind {
    /// The name of the kind.
    #[must_use]
    pub fn kind(&self) -> &str {
        &self.kind
    }

    /// The format the fact says it is in; 1 is this version's.
    #[must_use]
    pub const fn format(&self) -> u32 {
        self.format
    }
}

/// A known kind in an unreadable shape. Made by reading only.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct UnreadableKind {
    pub(super) kind: String,
    pub(super) reason: Unreadable,
}

impl UnreadableKind {
    /// The name of the kind.
    #[must_use]
    pub fn kind(&self) -> &str {
        &self.kind
    }

    /// What is wrong with it.
    #[must_use]
    pub const fn reason(&self) -> &Unreadable {
        &self.reason
    }
}
