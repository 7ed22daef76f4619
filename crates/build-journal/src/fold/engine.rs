//! The engine in a description as it was written down.

use assembly_core::quantity::{Kind, ReadError, read, unit};
use build_plan::engine::{
    CamDrive, Casting, Construction, Crankcase, Ignition, Liners, MainCaps, Numbering, Pins,
    PumpDrive, RearSeal, Rods, ValveGear,
};
use build_plan::{Engine, EngineError, Layout};
use thiserror::Error;

use crate::fact::EngineDescribed;

/// Why a description gives no engine.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum DescriptionProblem {
    /// The engine itself is not possible.
    #[error(transparent)]
    Engine(#[from] EngineError),
    /// A layout that this version does not know.
    #[error("The layout “{read}” is not known here; it would be inline, vee or flat.")]
    Layout {
        /// What was read.
        read: String,
    },
    /// A vee without its angle.
    #[error("A vee engine needs the angle between its banks, such as 90°.")]
    BankAngleMissing,
    /// An angle that cannot be read.
    #[error("The angle between the banks: {0}.")]
    BankAngle(ReadError),
}

impl EngineDescribed {
    /// The description of an engine, with its number of mains said.
    #[must_use]
    pub fn of(engine: &Engine) -> Self {
        Self {
            name: engine.name().to_owned(),
            cylinders: u32::from(engine.cylinders()),
            layout: engine.layout().name().to_owned(),
            bank_angle: match engine.layout() {
                Layout::Vee { bank_angle } => {
                    // A billionth of a degree is far below what anybody types.
                    let degrees = (bank_angle.value.to_degrees() * 1e9).round() / 1e9;
                    Some(format!("{degrees}°"))
                }
                _ => None,
            },
            mains: Some(u32::from(engine.number_of_mains())),
            built: words_of(engine.construction()),
        }
    }

    /// The engine that is described.
    ///
    /// # Errors
    /// [`DescriptionProblem`] says what in the description is not possible.
    pub fn engine(&self) -> Result<Engine, DescriptionProblem> {
        let layout = match self.layout.as_str() {
            "inline" => Layout::Inline,
            "flat" => Layout::Flat,
            "vee" => self.vee()?,
            other => {
                return Err(DescriptionProblem::Layout {
                    read: other.chars().take(40).collect(),
                });
            }
        };
        let engine = Engine::new(&self.name, self.cylinders, layout, self.mains)?;
        Ok(engine.built(self.construction().0)?)
    }

    /// How it is built, and the words that are not known here. Each of those is
    /// left out, and the usual taken in its place.
    #[must_use]
    pub fn construction(&self) -> (Construction, Vec<(&'static str, &str)>) {
        let mut built = Construction::default();
        let mut unknown = Vec::new();
        for (field, word) in &self.built {
            if set(&mut built, field, word).is_none() {
                unknown.push((*field, word.as_str()));
            }
        }
        (built, unknown)
    }

    fn vee(&self) -> Result<Layout, DescriptionProblem> {
        let (Some(typed), Some(degrees)) = (&self.bank_angle, unit("°")) else {
            return Err(DescriptionProblem::BankAngleMissing);
        };
        let angle = read(typed, Kind::Angle, degrees).map_err(DescriptionProblem::BankAngle)?;
        Ok(Layout::Vee {
            bank_angle: angle.quantity(),
        })
    }
}

/// Sets a field of the construction by its word; `None` when either is not known.
fn set(built: &mut Construction, field: &str, word: &str) -> Option<()> {
    match field {
        "valve_gear" => built.valve_gear = ValveGear::from_id(word)?,
        "cam_drive" => built.cam_drive = CamDrive::from_id(word)?,
        "block" => built.block = Casting::from_id(word)?,
        "heads" => built.heads = Casting::from_id(word)?,
        "liners" => built.liners = Liners::from_id(word)?,
        "rear_seal" => built.rear_seal = RearSeal::from_id(word)?,
        "main_caps" => built.main_caps = MainCaps::from_id(word)?,
        "rods" => built.rods = Rods::from_id(word)?,
        "pins" => built.pins = Pins::from_id(word)?,
        "pump_drive" => built.pump_drive = PumpDrive::from_id(word)?,
        "ignition" => built.ignition = Ignition::from_id(word)?,
        "crankcase" => built.crankcase = Some(Crankcase::from_id(word)?),
        "numbering" => built.numbering = Numbering::from_id(word)?,
        "intake_valves" => built.intake_valves = word.parse().ok()?,
        "exhaust_valves" => built.exhaust_valves = word.parse().ok()?,
        _ => return None,
    }
    Some(())
}

/// The words of what differs from the usual.
fn words_of(built: &Construction) -> Vec<(&'static str, String)> {
    let usual = Construction::default();
    let all = [
        ("valve_gear", built.valve_gear.id(), usual.valve_gear.id()),
        ("cam_drive", built.cam_drive.id(), usual.cam_drive.id()),
        ("block", built.block.id(), usual.block.id()),
        ("heads", built.heads.id(), usual.heads.id()),
        ("liners", built.liners.id(), usual.liners.id()),
        ("rear_seal", built.rear_seal.id(), usual.rear_seal.id()),
        ("main_caps", built.main_caps.id(), usual.main_caps.id()),
        ("rods", built.rods.id(), usual.rods.id()),
        ("pins", built.pins.id(), usual.pins.id()),
        ("pump_drive", built.pump_drive.id(), usual.pump_drive.id()),
        ("ignition", built.ignition.id(), usual.ignition.id()),
        ("crankcase", built.crankcase.map_or("", Crankcase::id), ""),
        ("numbering", built.numbering.id(), usual.numbering.id()),
    ];
    let words = all
        .into_iter()
        .filter(|(_, word, usual)| word != usual)
        .map(|(field, word, _)| (field, word.to_owned()));
    let valves = [
        ("intake_valves", built.intake_valves, usual.intake_valves),
        ("exhaust_valves", built.exhaust_valves, usual.exhaust_valves),
    ];
    let valves = valves
        .into_iter()
        .filter(|(_, number, usual)| number != usual)
        .map(|(field, number, _)| (field, number.to_string()));
    words.chain(valves).collect()
}
