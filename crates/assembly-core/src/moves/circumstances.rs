//! What has to be known of the engine before some effects can be worked out.

use uom::si::f64::{Angle, Length, Volume};

use super::shells::Pair;
use crate::quantity::Si;

/// What is known of the engine around a result. Everything may be unknown; an
/// effect that needs it is then told in words, without a figure.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Circumstances {
    /// The two bearing halves fitted now. Unknown is taken as two standard halves.
    pub shells: Option<Pair>,
    /// The sizes that sets of half-shells are made in, by how far a whole set closes
    /// the clearance of a standard one; less than nothing for extra clearance. When
    /// none is known, what is common practice.
    pub sets: Vec<Length>,
    /// The cylinder's bore.
    pub bore: Option<Length>,
    /// The bore of the head gasket's opening.
    pub gasket_bore: Option<Length>,
    /// The volume that one piston sweeps.
    pub swept: Option<Volume>,
    /// The volume left above one piston at the top.
    pub clearance_volume: Option<Volume>,
    /// The angle between the valve stem and the bore.
    pub valve_angle: Option<Angle>,
    /// Valve movement for each unit of lifter movement.
    pub rocker_ratio: Option<f64>,
    /// The valve spring's rate, newtons a metre.
    pub spring_rate: Option<f64>,
    /// Half the pitch diameter of the camshaft's chain or belt wheel.
    pub cam_wheel_radius: Option<Length>,
}

impl Circumstances {
    pub(super) fn cosine_of_valve_angle(&self) -> Option<f64> {
        self.valve_angle.map(|angle| angle.to_si().cos())
    }

    /// The area of a circle of this bore, square metres.
    pub(super) fn area(bore: Option<Length>) -> Option<f64> {
        bore.map(|bore| std::f64::consts::FRAC_PI_4 * bore.to_si() * bore.to_si())
    }

    /// The rocker's ratio, when it is one that a rocker can have.
    pub(super) fn ratio(&self) -> Option<f64> {
        self.rocker_ratio.filter(|ratio| *ratio > 0.0)
    }
}
