//! The parts of an engine that carry a number or a name.

use crate::named::named;

named! {
    /// A ring of a piston.
    Ring {
        /// The top compression ring.
        Top = "top", "top ring";
        /// The second compression ring.
        Second = "second", "second ring";
        /// The oil ring, or its rails.
        Oil = "oil", "oil ring";
    }
}

named! {
    /// Which way a valve lets the gas go.
    ValveSide {
        /// Into the cylinder.
        Intake = "intake", "intake";
        /// Out of the cylinder.
        Exhaust = "exhaust", "exhaust";
    }
}
