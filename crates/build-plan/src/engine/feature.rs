//! What an engine has, so that measures and steps can say when they apply.

use super::construction::{
    CamDrive, Casting, Crankcase, Ignition, Liners, MainCaps, Pins, PumpDrive, RearSeal, Rods,
    ValveGear,
};
use super::description::Engine;
use super::layout::Layout;

/// Something that an engine has or has not.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
#[non_exhaustive]
pub enum Feature {
    /// A camshaft in the block, with pushrods.
    Pushrods,
    /// Camshafts on the heads.
    OverheadCam,
    /// Two camshafts on each head.
    TwinCam,
    /// Lifters that slide on their lobes and have to spin.
    FlatLifters,
    /// Lifters with rollers.
    RollerLifters,
    /// Valve clearance that is set, by screw or shim.
    SetLash,
    /// Lifters filled with oil, with a preload.
    Hydraulic,
    /// Buckets right under the camshaft.
    Buckets,
    /// Rockers or fingers between cam and valve.
    Rockers,
    /// A chain to the camshaft, of one or two stages.
    TimingChain,
    /// Gears to the camshaft.
    TimingGears,
    /// A toothed belt to the camshaft.
    TimingBelt,
    /// A block of alloy.
    AlloyBlock,
    /// Heads of alloy.
    AlloyHeads,
    /// Liners that stand in the coolant.
    WetLiners,
    /// Liners pressed in dry.
    DryLiners,
    /// Liners of either kind that come out.
    LooseLiners,
    /// Bores that are honed the ordinary way.
    HonedBores,
    /// A rear seal of one whole ring.
    WholeRearSeal,
    /// A rear seal in halves or of rope, laid in before the caps.
    SplitRearSeal,
    /// Main caps that come off one by one.
    SeparateCaps,
    /// A girdle.
    Girdle,
    /// Rods whose caps may be cut and the eye honed round again.
    ResizableRods,
    /// Floating piston pins.
    FloatingPins,
    /// Pressed piston pins.
    PressedPins,
    /// An oil pump on the crank nose.
    CrankDrivenPump,
    /// An oil pump with a drive that can bind or slip: any but on the crank.
    PumpDriveShaft,
    /// A distributor.
    Distributor,
    /// Spark plugs, by whatever fires them.
    SparkIgnition,
    /// Two banks.
    TwoBanks,
    /// Two rods side by side on one crankpin.
    SharedCrankpins,
    /// A crankcase in two halves.
    CaseHalves,
    /// An oil pan that comes off while the crank stays in.
    Pan,
    /// More than one cylinder.
    SeveralCylinders,
    /// More than two main bearings, so that their line can be out.
    SeveralMains,
}

impl Engine {
    /// Whether the engine has this.
    #[must_use]
    pub fn has(&self, feature: Feature) -> bool {
        let built = self.construction();
        let halves = self.crankcase() == Crankcase::Halves;
        match feature {
            Feature::Pushrods => built.valve_gear.has_pushrods(),
            Feature::OverheadCam => !built.valve_gear.has_pushrods(),
            Feature::TwinCam => matches!(
                built.valve_gear,
                ValveGear::TwinOverheadFinger | ValveGear::TwinOverheadBucket
            ),
            Feature::FlatLifters => matches!(
                built.valve_gear,
                ValveGear::PushrodFlatSolid | ValveGear::PushrodFlatHydraulic
            ),
            Feature::RollerLifters => matches!(
                built.valve_gear,
                ValveGear::PushrodRollerSolid | ValveGear::PushrodRollerHydraulic
            ),
            Feature::SetLash => !self.has(Feature::Hydraulic),
            Feature::Hydraulic => matches!(
                built.valve_gear,
                ValveGear::PushrodFlatHydraulic | ValveGear::PushrodRollerHydraulic
            ),
            Feature::Buckets => matches!(
                built.valve_gear,
                ValveGear::OverheadBucket | ValveGear::TwinOverheadBucket
            ),
            Feature::Rockers => !self.has(Feature::Buckets),
            Feature::TimingChain => {
                matches!(built.cam_drive, CamDrive::Chain | CamDrive::TwoStageChain)
            }
            Feature::TimingGears => built.cam_drive == CamDrive::Gear,
            Feature::TimingBelt => built.cam_drive == CamDrive::Belt,
            Feature::AlloyBlock => built.block == Casting::Alloy,
            Feature::AlloyHeads => built.heads == Casting::Alloy,
            Feature::WetLiners => {
                matches!(built.liners, Liners::WetTopFlange | Liners::WetBottomSeat)
            }
            Feature::DryLiners => built.liners == Liners::Dry,
            Feature::LooseLiners => self.has(Feature::WetLiners) || self.has(Feature::DryLiners),
            Feature::HonedBores => built.liners != Liners::CastInAlloy,
            Feature::WholeRearSeal => matches!(
                built.rear_seal,
                RearSeal::OnePieceRetainer | RearSeal::OnePieceCap
            ),
            Feature::SplitRearSeal => !self.has(Feature::WholeRearSeal),
            Feature::SeparateCaps => !halves && built.main_caps != MainCaps::Girdle,
            Feature::Girdle => !halves && built.main_caps == MainCaps::Girdle,
            Feature::ResizableRods => built.rods != Rods::FractureSplit,
            Feature::FloatingPins => built.pins == Pins::Floating,
            Feature::PressedPins => built.pins == Pins::Pressed,
            Feature::CrankDrivenPump => built.pump_drive == PumpDrive::Crank,
            Feature::PumpDriveShaft => built.pump_drive != PumpDrive::Crank,
            Feature::Distributor => built.ignition == Ignition::Distributor,
            Feature::SparkIgnition => built.ignition != Ignition::None,
            Feature::TwoBanks => self.layout().banks() == 2,
            Feature::SharedCrankpins => matches!(self.layout(), Layout::Vee { .. }),
            Feature::CaseHalves => halves,
            Feature::Pan => !halves,
            Feature::SeveralCylinders => self.cylinders() > 1,
            Feature::SeveralMains => self.number_of_mains() > 2,
        }
    }
}

impl ValveGear {
    /// Whether the camshaft lies in the block and works through pushrods.
    #[must_use]
    pub const fn has_pushrods(self) -> bool {
        matches!(
            self,
            Self::PushrodFlatSolid
                | Self::PushrodFlatHydraulic
                | Self::PushrodRollerSolid
                | Self::PushrodRollerHydraulic
        )
    }

    /// Camshafts on each head; none when the camshaft lies in the block.
    #[must_use]
    pub const fn camshafts_a_head(self) -> u8 {
        match self {
            Self::TwinOverheadFinger | Self::TwinOverheadBucket => 2,
            Self::OverheadFinger | Self::OverheadBucket => 1,
            _ => 0,
        }
    }
}

/// When something applies: with all of these, and without any of those.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct When {
    /// The engine has all of these.
    pub with: &'static [Feature],
    /// The engine has none of these.
    pub without: &'static [Feature],
}

/// On every engine.
pub const ALWAYS: When = When {
    with: &[],
    without: &[],
};

impl When {
    /// On engines that have all of these.
    #[must_use]
    pub const fn with(features: &'static [Feature]) -> Self {
        Self {
            with: features,
            without: &[],
        }
    }

    /// On engines that have none of these.
    #[must_use]
    pub const fn without(features: &'static [Feature]) -> Self {
        Self {
            with: &[],
            without: features,
        }
    }

    /// Whether it applies to an engine.
    #[must_use]
    pub fn applies_to(&self, engine: &Engine) -> bool {
        self.with.iter().all(|feature| engine.has(*feature))
            && !self.without.iter().any(|feature| engine.has(*feature))
    }
}
