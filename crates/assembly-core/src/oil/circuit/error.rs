//! What keeps an engine's oil pressure from being worked out.

use thiserror::Error;

/// Why there is no pressure to be shown.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum CircuitError {
    /// A clearance of nothing or less.
    #[error(
        "{name}: a clearance of {thou:.2} thou cannot run: measure it again, or leave it out to have it estimated"
    )]
    Clearance {
        /// Which leak.
        name: String,
        /// What was read, thousandths of an inch.
        thou: f64,
    },
    /// Nothing is known of the pump.
    #[error(
        "nothing is known of the pump: its volume a turn is needed, or outside diameter, centre distance and width of its gears. Shares of the leaks and the flow that a pressure needs can be shown without it"
    )]
    NoPump,
    /// The relief opens at less than the pump makes at idle.
    #[error(
        "{name}: the relief opens at {psi:.0} psi, which is below what hot idle should have: nothing of the bearings could be seen. Type the pressure at which it opens"
    )]
    ReliefBelowIdle {
        /// Which pump.
        name: String,
        /// What was read, psi.
        psi: f64,
    },
    /// A speed or temperature that no engine has.
    #[error("{what} of {read} is beyond an engine's")]
    Beyond {
        /// Which.
        what: &'static str,
        /// What was read, SI units.
        read: f64,
    },
}
