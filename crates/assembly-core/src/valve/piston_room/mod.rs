//! Valve to piston: how near a valve comes to its piston around the top.
//!
//! - [`by_lift`]: worked out from the lift of the cam and the room at the top.
//! - [`by_feel`]: the valve pushed until it touches, at several crank angles.
//! - `lift_curve`: the lift between the angles at which it was read.
//! - `rods`: what rods need, and the card's lines.

pub mod by_feel;
pub mod by_lift;
mod lift_curve;
mod rods;
