//! One cylinder as it was told, for the load that gas and mass put on the bearings.

use assembly_core::oil::film::load::Cylinder;
use assembly_core::quantity::Kind;

use super::inputs::Told;
use crate::fact::Said;

/// Pressure in the intake with the throttle open, Pa: common practice.
const FULL_THROTTLE: f64 = 1.0e5;

impl Told<'_> {
    /// One cylinder, and what of it is missing. The peak of the gas is estimated
    /// when it was not said.
    pub(super) fn cylinder(&mut self) -> (Option<Cylinder>, Vec<&'static str>) {
        let system = self.system;
        let mut lacks = Vec::new();
        let mut need = |field, said: Option<&Said>, kind| {
            let value = self.read(field, said, kind);
            if value.is_none() {
                lacks.push(field);
            }
            value
        };
        let (length, mass) = (Kind::Length, Kind::Mass);
        let bore = need("bore", system.bore.as_ref(), length);
        // Its absence is told by the circuit already.
        let stroke = system.stroke.as_ref();
        let stroke = need("stroke", stroke, length);
        let rod = need("length of the rod", system.rod_length.as_ref(), length);
        let piston = system.up_and_down.as_ref();
        let piston = need("mass that goes up and down", piston, mass);
        let round = need("mass that goes round", system.round.as_ref(), mass);
        let ratio = system.compression_ratio.as_ref();
        let ratio = need("compression ratio", ratio, Kind::Ratio);
        let peak = self.read(
            "highest gas pressure",
            system.peak_gas.as_ref(),
            Kind::Pressure,
        );
        let mut cylinder = || {
            let (stroke, rod, ratio) = (stroke?, rod?, ratio?);
            if rod <= 0.5 * stroke {
                lacks.push("a rod longer than the throw");
                return None;
            }
            if ratio <= 1.0 {
                lacks.push("a compression ratio above one");
                return None;
            }
            Some(Cylinder {
                bore: bore?,
                stroke,
                rod,
                going_up_and_down: piston?,
                going_round: round?,
                ratio,
                peak_gas: peak,
                intake: FULL_THROTTLE,
            })
        };
        (cylinder(), lacks)
    }
}
