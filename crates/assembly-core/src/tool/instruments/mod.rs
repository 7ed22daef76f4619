//! The tools of the bench. All figures are estimates from common practice of
//! one standard deviation of one reading, for one careful person at home, and
//! the builder replaces them by what the own tool does.

mod gaps;
mod rest;
mod sizes;

use super::instrument::Instrument;

pub use gaps::*;
pub use rest::*;
pub use sizes::*;

/// Every kind of tool, in the order in which it is offered.
pub static INSTRUMENTS: &[&Instrument] = &[
    &OUTSIDE_MICROMETER_PROVED,
    &OUTSIDE_MICROMETER_TENTHS,
    &OUTSIDE_MICROMETER_THOU,
    &CALIPER_OUTSIDE,
    &BORE_GAUGE_TENTHS,
    &BORE_GAUGE_HALF_THOU,
    &TELESCOPING_GAUGE_PRACTISED,
    &TELESCOPING_GAUGE_NOVICE,
    &SMALL_HOLE_GAUGE,
    &CALIPER_INSIDE,
    &DEPTH_MICROMETER,
    &CALIPER_DEPTH,
    &PLASTIC_GAUGE_STRIP,
    &FEELER_BLADES,
    &DIAL_INDICATOR,
    &TEST_INDICATOR,
    &STRAIGHTEDGE_AND_FEELER,
    &CLAY_AND_CALIPER,
    &STRETCH_GAUGE,
    &MICROMETER_OVER_BOLT,
    &DEGREE_WHEEL,
    &POSITIVE_STOP,
    &BURETTE,
    &SYRINGE,
    &BENCH_SPRING_TESTER,
    &VICE_SPRING_TESTER,
    &CLICK_WRENCH_CHECKED,
    &CLICK_WRENCH_UNCHECKED,
    &ANGLE_GAUGE,
    &ANGLE_BY_EYE,
    &MECHANICAL_OIL_GAUGE,
    &DASH_OIL_SENDER,
    &INFRARED_THERMOMETER,
];

/// The tool of this id.
///
/// ```
/// use assembly_core::tool::{Task, instrument};
/// let gauge = instrument("bore-gauge-tenths").unwrap();
/// assert!(gauge.can(Task::InsideSize) && gauge.compares);
/// ```
#[must_use]
pub fn instrument(id: &str) -> Option<&'static Instrument> {
    INSTRUMENTS.iter().copied().find(|one| one.id == id)
}

/// An inch in metres.
const INCH: f64 = 0.0254;
/// A thousandth of an inch in metres.
const THOU: f64 = INCH / 1000.0;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tool::{Spread, Task};
    use std::collections::BTreeSet;

    #[test]
    fn every_tool_is_described_whole() {
        let mut ids = BTreeSet::new();
        for tool in INSTRUMENTS {
            assert!(ids.insert(tool.id), "two tools are called {}", tool.id);
            assert!(!tool.label.is_empty() && !tool.name.is_empty() && !tool.tasks.is_empty());
            assert!(tool.trap.ends_with('.'), "{}", tool.id);
            assert!(
                tool.repeat.at(1.0) > 0.0 && tool.graduation > 0.0,
                "{}",
                tool.id
            );
            assert!(tool.shared_zero >= 0.0 && tool.setting_transfer >= 0.0);
            assert!(instrument(tool.id).is_some());
            assert!(
                tool.setting_transfer == 0.0 || tool.compares,
                "{}: only a tool that is set on another carries a size over",
                tool.id
            );
        }
        assert!(instrument("cubit").is_none());
    }

    // Common practice: a micrometer's 0.1 thou and a bore gauge's 0.15 make 0.18;
    // a telescoping gauge's 0.3 and a micrometer's 0.2 make 0.36.
    #[test]
    fn the_worked_combinations_of_the_trade_come_out() {
        let feel = |tool: &Instrument| match tool.repeat {
            Spread::Always(deviation) => deviation / THOU,
            Spread::OfReading(_) => f64::NAN,
        };
        let gauge = feel(&BORE_GAUGE_TENTHS).hypot(feel(&OUTSIDE_MICROMETER_PROVED));
        assert!((gauge - 0.18).abs() < 0.005);
        let telescoping =
            feel(&TELESCOPING_GAUGE_PRACTISED).hypot(feel(&OUTSIDE_MICROMETER_TENTHS));
        assert!((telescoping - 0.36).abs() < 0.005);
    }

    #[test]
    fn every_task_has_a_tool() {
        for task in [
            Task::OutsideSize,
            Task::InsideSize,
            Task::Depth,
            Task::Gap,
            Task::Movement,
            Task::Flatness,
            Task::RunningClearance,
            Task::SqueezedGap,
            Task::Stretch,
            Task::CrankAngle,
            Task::TurnAngle,
            Task::Volume,
            Task::SpringForce,
            Task::Torque,
            Task::Pressure,
            Task::Temperature,
        ] {
            assert!(INSTRUMENTS.iter().any(|tool| tool.can(task)), "{task:?}");
        }
    }
}
