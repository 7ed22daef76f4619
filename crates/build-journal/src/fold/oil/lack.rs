//! What is missing before something can be shown, and what can be shown without.

use thiserror::Error;

/// Something that is not known of the oil system.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[non_exhaustive]
pub enum Lack {
    /// The engine is not described.
    #[error("The engine is not described yet.")]
    Engine,
    /// Nobody said how thick a journal is.
    #[error("The diameter of the main journals: measure one, or type it.")]
    MainJournal,
    /// Nobody said how long a main shell is.
    #[error("The length of a main shell: a caliper across its running face.")]
    MainShell,
    /// Nobody said how thick a crankpin is.
    #[error("The diameter of the crankpins: measure one, or type it.")]
    RodJournal,
    /// Nobody said how long a rod shell is.
    #[error("The length of a rod shell: a caliper across its running face.")]
    RodShell,
    /// Nobody said the stroke.
    #[error("The stroke: the crank throws oil outward to the rods by it.")]
    Stroke,
    /// Nobody said what oil it is.
    #[error("The oil: its grade, or the two viscosities of its sheet.")]
    Oil,
    /// The oil cannot be.
    #[error("The oil: {reason}.")]
    ThatOil {
        /// Why.
        reason: String,
    },
    /// Nothing is known of the pump. The shares of the leaks can be shown without.
    #[error(
        "The pump's volume a turn: from its maker, or by π/4 × (tip circle² − root circle²) × width of its gears. Until then: where the oil goes, and what flow ten psi for each thousand turns would take."
    )]
    Pump,
    /// Nobody said where the relief opens. Below it nothing changes.
    #[error(
        "The pressure at which the relief opens. Until then the lines climb as if it never did."
    )]
    Relief,
    /// A clearance that cannot run.
    #[error(
        "{bearing}: a clearance of {thou} thou cannot run. Measure it again; it is estimated until then."
    )]
    Clearance {
        /// Which bearing.
        bearing: String,
        /// What was measured, thousandths of an inch.
        thou: String,
    },
    /// A text that cannot be read.
    #[error("The {field}: {reason}.")]
    Text {
        /// Of which field.
        field: &'static str,
        /// Why.
        reason: String,
    },
}

impl Lack {
    /// Whether it is about the pump, which the film of a bearing does not ask for.
    #[must_use]
    pub const fn is_of_the_pump(&self) -> bool {
        matches!(self, Self::Pump | Self::Relief)
    }

    /// Whether the circuit cannot be worked out without it.
    #[must_use]
    pub const fn stops_the_circuit(&self) -> bool {
        !matches!(
            self,
            Self::Pump | Self::Relief | Self::Clearance { .. } | Self::Text { .. }
        )
    }
}
