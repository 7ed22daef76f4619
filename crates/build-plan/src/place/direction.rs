//! Which way across a part a reading is taken.

use crate::named::named;

named! {
    /// The direction of a diameter. On a bearing bore, *up and down* means square
    /// to the joint between cap and block, whichever way the engine lies.
    Direction {
        /// Up and down: square to the joint of the cap.
        UpAndDown = "up-and-down", "up and down";
        /// Across: along the joint of the cap, or a quarter turn from up and down.
        Across = "across", "across";
        /// 25° above the joint on the left, seen from the front. The shell is
        /// thinner towards the joint on purpose.
        JointLeft = "joint-left", "25° above the joint, left";
        /// 25° above the joint on the right, seen from the front.
        JointRight = "joint-right", "25° above the joint, right";
        /// 60° from upright to the left: as near the joint as a housing is read.
        SixtyLeft = "sixty-left", "60° to the left";
        /// 60° from upright to the right.
        SixtyRight = "sixty-right", "60° to the right";
        /// Across the crank, the way the piston is pushed.
        Thrust = "thrust", "thrust, across the crank";
        /// Along the crank.
        Axial = "axial", "axial, along the crank";
    }
}

impl Direction {
    /// Degrees from upright, clockwise seen from the front; of a cylinder seen from
    /// above, from the way along the crank. None where a bearing is not meant to
    /// be round: near the joint its shells are thinner on purpose.
    #[must_use]
    pub const fn from_upright(self) -> Option<f64> {
        match self {
            Self::UpAndDown | Self::Axial => Some(0.0),
            Self::Across | Self::Thrust => Some(90.0),
            Self::SixtyLeft => Some(-60.0),
            Self::SixtyRight => Some(60.0),
            Self::JointLeft | Self::JointRight => None,
        }
    }
}
