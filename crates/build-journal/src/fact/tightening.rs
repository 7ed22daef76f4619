//! What happens in a tightening: begun, pulled, interrupted, taken up again,
//! and what becomes of the bolts.
//!
//! A run is named by the fact that began it. Bolts and laps count from 1 here,
//! as a person counts them. A *sitting* is one screen that one pair of hands
//! works on: who opens a run anew begins another sitting, so that two tabs or
//! two phones at one group are told apart.

use super::body::Spot;
use super::words::{Outcome, words};
use crate::id::{FactId, OwnId, SittingId, ToolId};

words! {
    /// Which way a run goes.
    Way {
        /// The group is tightened.
        Tighten = "tighten";
        /// It is loosened: the other way round.
        Loosen = "loosen";
        /// It is tightened once more after it was hot, as a lap of its own.
        Again = "again";
    }
}

words! {
    /// What is said of a run.
    RunMark {
        /// The last pull was not made: it is taken back.
        TakenBack = "taken-back";
        /// The work stopped.
        Interrupted = "interrupted";
        /// What is ticked is so, up to the last tick.
        Confirmed = "confirmed";
        /// A lap is begun again.
        LapRestarted = "lap-restarted";
        /// All bolts were backed off.
        BackedOff = "backed-off";
        /// The paint stripe of a bolt was looked at after the last lap.
        StripeSeen = "stripe-seen";
        /// It is not gone on with.
        Left = "left";
    }
}

words! {
    /// What a person knew when a run was taken up again.
    Knew {
        /// The last bolt.
        Bolt = "bolt";
        /// The lap, not the bolt.
        Lap = "lap";
        /// Nothing.
        Nothing = "nothing";
    }
}

words! {
    /// How a bolt was when its length was measured.
    BoltState {
        /// Loose, with no load on it.
        Free = "free";
        /// Tightened to the end.
        Tight = "tight";
    }
}

/// A run over a group was begun.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct RunBegun {
    /// The group.
    pub group: OwnId,
    /// The part; the whole engine when not said.
    pub place: Option<Spot>,
    /// The description of the group that it goes by: order, stages, bolts.
    pub sheet: FactId,
    /// Which way.
    pub way: Way,
    /// The sitting it was begun in.
    pub sitting: SittingId,
}

/// A run was opened in a sitting of its own: after the page was away, in
/// another tab, on another device. What is ticked has to be confirmed then.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct RunOpened {
    /// The run.
    pub run: FactId,
    /// The sitting.
    pub sitting: SittingId,
}

/// A bolt was pulled.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct BoltPulled {
    /// The run.
    pub run: FactId,
    /// The bolt, from 1.
    pub bolt: u32,
    /// The lap, from 1.
    pub lap: u32,
    /// The sitting.
    pub sitting: SittingId,
}

/// Something was said of a run.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct RunMarked {
    /// The run.
    pub run: FactId,
    /// What is said.
    pub mark: RunMark,
    /// The bolt it is about, from 1.
    pub bolt: Option<u32>,
    /// The lap it is about, from 1.
    pub lap: Option<u32>,
    /// What was known when it was taken up again.
    pub knew: Option<Knew>,
    /// What the builder adds.
    pub words: Option<String>,
}

/// Bolts were taken new: their uses count from nothing again.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct BoltsRenewed {
    /// The group.
    pub group: OwnId,
    /// The part; the whole engine when not said.
    pub place: Option<Spot>,
    /// Which, from 1; all when none is named.
    pub bolts: Vec<u32>,
    /// What stands on the bag.
    pub lot: Option<String>,
}

/// The length of a bolt was measured.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct BoltMeasured {
    /// The group.
    pub group: OwnId,
    /// The part; the whole engine when not said.
    pub place: Option<Spot>,
    /// The bolt, from 1.
    pub bolt: u32,
    /// Free or tight.
    pub state: BoltState,
    /// The length, exactly as typed.
    pub typed: String,
    /// The symbol of the unit that a lone number is in.
    pub unit: String,
    /// The tool, when it was said.
    pub tool: Option<ToolId>,
}

/// A bolt was held against the map of its hole: length and mark.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct BoltCompared {
    /// The group.
    pub group: OwnId,
    /// The part; the whole engine when not said.
    pub place: Option<Spot>,
    /// The bolt, from 1.
    pub bolt: u32,
    /// Good: it is the one that belongs there.
    pub outcome: Outcome,
    /// What the builder adds.
    pub words: Option<String>,
}

/// Sealant was put on.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct SealantPutOn {
    /// The group that closes the joint.
    pub group: OwnId,
    /// The part; the whole engine when not said.
    pub place: Option<Spot>,
    /// What it is, as the tube says.
    pub what: Option<String>,
    /// How long it may stay open, as typed: "10 min".
    pub close_by: String,
    /// From when full torque may be given, counted from putting it on.
    pub torque_from: Option<String>,
    /// From when oil may come, counted from putting it on.
    pub oil_from: Option<String>,
}

/// A joint with sealant was closed, snug.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct JointClosed {
    /// The fact that the sealant was put on.
    pub sealant: FactId,
}
