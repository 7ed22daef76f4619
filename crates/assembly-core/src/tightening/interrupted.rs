//! What to do after an interruption, by kind of fastener. Common practice; the
//! maker's manual wins.

use super::kind::Kind;
use crate::fastener::stages::Stage;

/// What is known of where the work stood.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Known {
    /// The last sure bolt is known.
    Bolt,
    /// The lap is known, the bolt is not.
    Lap,
    /// Not even the lap is known.
    Nothing,
}

/// What a gasket between the parts has to do with it.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Gasket {
    /// None is there, or it is not crushed for good: a cap, an O-ring.
    None,
    /// One that is crushed once: a head gasket.
    Crushed,
}

/// Whether paint marks from before the angle are there on every bolt.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Paint {
    /// They show for each bolt whether it was turned.
    OnEveryBolt,
    /// Some or all are missing.
    Missing,
}

/// What to do.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Remedy {
    /// Go on with the bolt after the last sure one.
    GoOn,
    /// Begin this lap again at its first bolt.
    RestartLap,
    /// Back the group off in reverse, in stages, and begin with the first lap.
    BackOffAndBegin,
    /// Either that, or go over all bolts once more at the final torque.
    BackOffOrRelap,
    /// The paint says for each bolt whether it was turned; go on by it.
    PaintDecides,
    /// New bolts, and begin with the first lap.
    NewBolts,
    /// Back the group off and begin again at snug.
    BackOffToSnug,
    /// Measure each bolt's length: its stretch says how far it is.
    MeasureStretch,
}

/// What to do, and what it costs besides.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct Advice {
    /// What to do.
    pub remedy: Remedy,
    /// A gasket that was clamped and comes free again has to be a new one.
    pub new_gasket: bool,
}

/// What is known of the interrupted work.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Interruption<'a> {
    /// The kind of fastener.
    pub kind: Kind,
    /// All stages.
    pub stages: &'a [Stage],
    /// The lap that was on by the record.
    pub lap: usize,
    /// What is known.
    pub known: Known,
    /// Gasket.
    pub gasket: Gasket,
    /// Paint.
    pub paint: Paint,
}

/// What to do after an interruption. Never a guess: where nothing is known the
/// bolts come off.
#[must_use]
pub fn advice(interruption: &Interruption<'_>) -> Advice {
    let remedy = remedy(interruption);
    let frees = matches!(
        remedy,
        Remedy::BackOffAndBegin | Remedy::BackOffOrRelap | Remedy::BackOffToSnug | Remedy::NewBolts
    );
    Advice {
        remedy,
        new_gasket: frees && interruption.gasket == Gasket::Crushed,
    }
}

fn remedy(interruption: &Interruption<'_>) -> Remedy {
    if interruption.known == Known::Bolt {
        return Remedy::GoOn;
    }
    if interruption.kind == Kind::StretchMeasured {
        return Remedy::MeasureStretch;
    }
    if angle_may_be_on(interruption) {
        return match (interruption.paint, interruption.kind) {
            (Paint::OnEveryBolt, _) => Remedy::PaintDecides,
            (Paint::Missing, Kind::StretchToYield) => Remedy::NewBolts,
            (Paint::Missing, _) => Remedy::BackOffToSnug,
        };
    }
    if interruption.known == Known::Lap && below_the_final_torque(interruption) {
        return Remedy::RestartLap;
    }
    match interruption.gasket {
        Gasket::None => Remedy::BackOffOrRelap,
        Gasket::Crushed => Remedy::BackOffAndBegin,
    }
}

/// What is to be done with bolts whose tightening was given up in this lap,
/// before they are tightened anew. Half-tight bolts are never gone on with from
/// the start: a first lap over bolts that are tight already shows nothing.
/// Common practice; the maker's manual wins.
///
/// ```
/// use assembly_core::fastener::stages::Stage;
/// use assembly_core::tightening::interrupted::{Gasket, Remedy, given_up};
/// use assembly_core::tightening::kind::Kind;
///
/// let stages = [Stage::Torque(40.0), Stage::Angle(1.5)];
/// let turned = given_up(Kind::StretchToYield, &stages, 1, Gasket::Crushed);
/// assert_eq!(turned.remedy, Remedy::NewBolts);
/// assert!(turned.new_gasket);
/// ```
#[must_use]
pub fn given_up(kind: Kind, stages: &[Stage], lap: usize, gasket: Gasket) -> Advice {
    let angle = angle_may_be_on(&Interruption {
        kind,
        stages,
        lap,
        known: Known::Lap,
        gasket,
        paint: Paint::Missing,
    });
    let remedy = match (angle, kind) {
        (true, Kind::StretchToYield) => Remedy::NewBolts,
        (true, _) => Remedy::BackOffToSnug,
        (false, _) => Remedy::BackOffAndBegin,
    };
    Advice {
        remedy,
        new_gasket: gasket == Gasket::Crushed,
    }
}

/// Whether some bolt may have been turned by an angle: in a known lap when that
/// is an angle or comes after one, else when there is any angle at all.
fn angle_may_be_on(interruption: &Interruption<'_>) -> bool {
    let upto = match interruption.known {
        Known::Lap => interruption.lap.saturating_add(1),
        Known::Bolt | Known::Nothing => interruption.stages.len(),
    };
    interruption
        .stages
        .iter()
        .take(upto)
        .any(|stage| matches!(stage, Stage::Angle(_)))
}

/// Whether the lap's torque is less than the greatest of the list, so that
/// pulling a bolt again that was pulled already does it no harm.
fn below_the_final_torque(interruption: &Interruption<'_>) -> bool {
    let torque = |stage: &Stage| match stage {
        Stage::Torque(torque) => Some(*torque),
        Stage::Angle(_) | Stage::Stretch(_) => None,
    };
    let greatest = interruption
        .stages
        .iter()
        .filter_map(torque)
        .max_by(f64::total_cmp);
    // A snug torque before angles is never final.
    let angles_follow = interruption
        .stages
        .iter()
        .any(|stage| matches!(stage, Stage::Angle(_)));
    match (
        interruption.stages.get(interruption.lap).and_then(torque),
        greatest,
    ) {
        (Some(lap), Some(greatest)) => angles_follow || lap < greatest * (1.0 - 1e-9),
        _ => false,
    }
}

impl Remedy {
    /// The sentence for the builder.
    #[must_use]
    pub const fn sentence(self) -> &'static str {
        match self {
            Self::GoOn => "Go on with the bolt after the last sure one.",
            Self::RestartLap => {
                "Begin this lap again at its first bolt: below the final torque that does no harm."
            }
            Self::BackOffAndBegin => {
                "Back all of them off in reverse order, in stages, and begin with the first lap."
            }
            Self::BackOffOrRelap => {
                "Back all of them off in reverse order and begin with the first lap; or, as no gasket is crushed, go over all of them once more at the final torque."
            }
            Self::PaintDecides => {
                "The paint decides: a bolt whose mark has turned is done, the others are not."
            }
            Self::NewBolts => {
                "Nobody can know which of these were turned: take new bolts and begin with the first lap."
            }
            Self::BackOffToSnug => {
                "Nobody can know which of these were turned: back all of them right off and begin again at snug."
            }
            Self::MeasureStretch => {
                "Measure each bolt over its ends: its stretch says how far it is."
            }
        }
    }
}
