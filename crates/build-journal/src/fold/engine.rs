//! The engine in a description as it was written down.

use assembly_core::quantity::{Kind, ReadError, read, unit};
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
        Ok(Engine::new(&self.name, self.cylinders, layout, self.mains)?)
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
