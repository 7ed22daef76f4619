//! What a move does to a measure.

use super::circumstances::Circumstances;
use crate::quantity::Si;

/// How far a measure moves when a move of a given size is made. Sizes and
/// changes are in SI units, with sign.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Sensitivity {
    /// This many times the size.
    TimesSize(f64),
    /// This many times the size times the cosine of the valve's angle to the bore.
    TimesCosineOfValveAngle(f64),
    /// This many times the size divided by the rocker ratio.
    OverRockerRatio(f64),
    /// This many times the size times the rocker ratio.
    TimesRockerRatio(f64),
    /// This many times the size times one and one over the rocker ratio: what
    /// lowering a rocker's pivot does at the lifter while the valve's tip stays.
    ThroughRockerPivot(f64),
    /// This many times the size times the valve spring's rate.
    TimesSpringRate(f64),
    /// This many times the size times the area of the bore: a volume.
    TimesBoreArea(f64),
    /// This many times the size times the area of the gasket's opening: a volume.
    TimesGasketArea(f64),
    /// The change of the compression ratio when the volume above the piston
    /// changes by this many times the size times the area of the bore.
    RatioByBoreArea(f64),
    /// The same by the area of the gasket's opening.
    RatioByGasketArea(f64),
    /// The change of the compression ratio when the volume above the piston
    /// changes by this many times the size, the size being a volume.
    RatioByVolume(f64),
    /// The camshaft's lateness in crank angle when crank and cam come nearer by
    /// this many times the size: twice the size over the wheel's pitch radius.
    CamLateness(f64),
    /// It changes, and only measuring again tells how far.
    MeasureAgain,
}

impl Sensitivity {
    /// The change that a move of this size makes; `None` when the circumstances
    /// it needs are not known, or make no sense.
    #[must_use]
    pub fn change(self, size: f64, known: &Circumstances) -> Option<f64> {
        let change = match self {
            Self::TimesSize(factor) => factor * size,
            Self::TimesCosineOfValveAngle(factor) => {
                factor * size * known.cosine_of_valve_angle()?
            }
            Self::OverRockerRatio(factor) => factor * size / known.ratio()?,
            Self::TimesRockerRatio(factor) => factor * size * known.ratio()?,
            Self::ThroughRockerPivot(factor) => factor * size * (1.0 + 1.0 / known.ratio()?),
            Self::TimesSpringRate(factor) => factor * size * known.spring_rate?,
            Self::TimesBoreArea(factor) => factor * size * Circumstances::area(known.bore)?,
            Self::TimesGasketArea(factor) => {
                factor * size * Circumstances::area(known.gasket_bore)?
            }
            Self::RatioByBoreArea(factor) => {
                ratio_change(factor * size * Circumstances::area(known.bore)?, known)?
            }
            Self::RatioByGasketArea(factor) => ratio_change(
                factor * size * Circumstances::area(known.gasket_bore)?,
                known,
            )?,
            Self::RatioByVolume(factor) => ratio_change(factor * size, known)?,
            Self::CamLateness(factor) => {
                let radius = known.cam_wheel_radius?.to_si();
                if radius <= 0.0 {
                    return None;
                }
                2.0 * factor * size / radius
            }
            Self::MeasureAgain => return None,
        };
        change.is_finite().then_some(change)
    }

    /// The effect in words, for when there is no figure: "rises by the size
    /// over the rocker ratio".
    #[must_use]
    pub fn words(self) -> String {
        let (factor, of_what) = match self {
            Self::TimesSize(factor) => (factor, "the same amount"),
            Self::TimesCosineOfValveAngle(factor) => (
                factor,
                "the same amount times the cosine of the valve's angle",
            ),
            Self::OverRockerRatio(factor) => (factor, "the same amount over the rocker ratio"),
            Self::TimesRockerRatio(factor) => (factor, "the same amount times the rocker ratio"),
            Self::ThroughRockerPivot(factor) => (
                factor,
                "the same amount times one and one over the rocker ratio",
            ),
            Self::TimesSpringRate(factor) => (factor, "the same amount times the spring's rate"),
            Self::TimesBoreArea(factor) => (factor, "the same amount times the area of the bore"),
            Self::TimesGasketArea(factor) => (
                factor,
                "the same amount times the area of the gasket's opening",
            ),
            // A ratio falls when the volume above the piston grows.
            Self::RatioByBoreArea(factor)
            | Self::RatioByGasketArea(factor)
            | Self::RatioByVolume(factor) => (-factor, "what the changed volume makes of it"),
            Self::CamLateness(factor) => {
                return format!(
                    "{} by twice the same amount over the cam wheel's pitch radius",
                    if factor < 0.0 {
                        "comes earlier"
                    } else {
                        "comes later"
                    }
                );
            }
            Self::MeasureAgain => return "changes: measure it again".to_owned(),
        };
        let way = if factor < 0.0 { "falls" } else { "rises" };
        let times = factor.abs();
        if (times - 1.0).abs() < 1e-9 || matches!(of_what, "what the changed volume makes of it") {
            format!("{way} by {of_what}")
        } else if (times - 0.5).abs() < 1e-9 {
            format!("{way} by half of {of_what}")
        } else {
            format!("{way} by {times:.2} times {of_what}")
        }
    }
}

/// The new compression ratio less the old one, for a change of the volume above the piston.
fn ratio_change(volume_change: f64, known: &Circumstances) -> Option<f64> {
    let swept = known.swept?.to_si();
    let before = known.clearance_volume?.to_si();
    let after = before + volume_change;
    (swept > 0.0 && before > 0.0 && after > 0.0).then(|| swept / after - swept / before)
}

/// One measure that a move changes.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Effect {
    /// The measure, by its trade name: `main-oil-clearance`.
    pub measure: &'static str,
    /// How far it moves.
    pub sensitivity: Sensitivity,
}

/// What a move of a certain size does to a measure besides the one it is made for.
#[derive(Clone, PartialEq, Debug)]
pub struct SideEffect {
    /// The measure, by its trade name.
    pub measure: &'static str,
    /// The change, SI units, with sign; `None` when it can't be foretold or
    /// something of the engine is not known.
    pub change: Option<f64>,
    /// The change in words.
    pub words: String,
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::f64::{Angle, Length, Volume};

    const INCH: f64 = 0.0254;

    fn engine() -> Circumstances {
        Circumstances {
            bore: Some(Length::from_si(4.03 * INCH)),
            gasket_bore: Some(Length::from_si(4.1 * INCH)),
            swept: Some(Volume::from_si(727.4e-6)),
            clearance_volume: Some(Volume::from_si(80e-6)),
            valve_angle: Some(Angle::from_si(20f64.to_radians())),
            rocker_ratio: Some(1.5),
            spring_rate: Some(52_538.0),
            cam_wheel_radius: Some(Length::from_si(2.0 * INCH)),
            ..Circumstances::default()
        }
    }

    // Worked by hand (common practice): 4.03 bore and 0.020 off the deck is
    // 4.2 cc; a 4.1 gasket opening and 0.010 is 2.16 cc.
    #[test]
    fn areas_turn_thickness_into_volume() {
        let deck = Sensitivity::TimesBoreArea(-1.0)
            .change(0.020 * INCH, &engine())
            .unwrap();
        assert!((deck + 4.18e-6).abs() < 0.01e-6);
        let gasket = Sensitivity::TimesGasketArea(-1.0)
            .change(0.010 * INCH, &engine())
            .unwrap();
        assert!((gasket + 2.16e-6).abs() < 0.01e-6);
    }

    // Worked by hand (common practice): 2 in pitch radius and 0.020 nearer is
    // 1.15 degrees of crank late.
    #[test]
    fn a_cam_wheel_brought_nearer_runs_late() {
        let late = Sensitivity::CamLateness(1.0)
            .change(0.020 * INCH, &engine())
            .unwrap();
        assert!((late.to_degrees() - 1.146).abs() < 0.001);
    }

    #[test]
    fn a_smaller_chamber_raises_the_ratio_exactly() {
        let change = Sensitivity::RatioByVolume(1.0)
            .change(-8e-6, &engine())
            .unwrap();
        assert!((change - (727.4 / 72.0 - 727.4 / 80.0)).abs() < 1e-9);
        // More than the whole chamber cannot be taken away.
        assert_eq!(
            Sensitivity::RatioByVolume(1.0).change(-80e-6, &engine()),
            None
        );
    }

    #[test]
    fn what_is_not_known_gives_no_figure_but_words() {
        let nothing = Circumstances::default();
        let effect = Sensitivity::OverRockerRatio(1.0);
        assert_eq!(effect.change(1e-3, &nothing), None);
        assert_eq!(
            effect.words(),
            "rises by the same amount over the rocker ratio"
        );
        assert_eq!(
            Sensitivity::TimesSize(-0.5).words(),
            "falls by half of the same amount"
        );
        let no_rocker = Circumstances {
            rocker_ratio: Some(0.0),
            ..Circumstances::default()
        };
        assert_eq!(effect.change(1e-3, &no_rocker), None);
    }
}
