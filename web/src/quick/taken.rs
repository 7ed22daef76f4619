//! How each input of a calculation is come by: which tool reads it, so that it
//! brings that tool's errors along.

use assembly_core::describe::Input;
use assembly_core::quantity::Kind;
use assembly_core::tool::Task;

/// How a number is come by.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Taken {
    /// Read off a tool that does this.
    Read(Task),
    /// A needle's distance from its zero, on a tool that does this.
    Needle(Task),
    /// What a tool that does this stands at while another is zeroed on it.
    StandsAt(Task),
    /// Read off something for this kind of quantity, nobody knows what.
    Somehow(Kind),
    /// Known, counted or chosen.
    Known,
}

impl Taken {
    /// The task, when it is known.
    #[must_use]
    pub const fn task(self) -> Option<Task> {
        match self {
            Self::Read(task) | Self::Needle(task) | Self::StandsAt(task) => Some(task),
            Self::Somehow(_) | Self::Known => None,
        }
    }
}

/// How an input of a calculation is come by.
#[must_use]
pub fn taken(calculation: &str, input: &Input) -> Taken {
    use Taken::{Known, Needle, Read, Somehow, StandsAt};
    match (calculation, input.id) {
        ("running-clearance", "bore" | "bore-2" | "bore-near-joint") => Read(Task::InsideSize),
        ("running-clearance", "journal" | "journal-2") => Read(Task::OutsideSize),
        ("running-clearance-same-micrometer", "set-at") => StandsAt(Task::OutsideSize),
        ("running-clearance-same-micrometer", "needle") => Needle(Task::InsideSize),
        ("running-clearance-same-micrometer", "journal") => Read(Task::OutsideSize),
        ("running-clearance-strip", _) => Read(Task::RunningClearance),
        _ => match input.kind {
            Kind::Length
            | Kind::Volume
            | Kind::Angle
            | Kind::Force
            | Kind::Torque
            | Kind::Pressure
            | Kind::Temperature => Somehow(input.kind),
            _ => Known,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use assembly_core::describe::CALCULATIONS;
    use assembly_core::quantity::unit_of;

    #[test]
    fn every_described_unit_is_one_that_exists() {
        for calculation in CALCULATIONS {
            let inputs = calculation
                .inputs
                .iter()
                .map(|one| (one.id, one.kind, one.units));
            let outputs = calculation
                .outputs
                .iter()
                .map(|one| (one.id, one.kind, one.units));
            for (id, kind, units) in inputs.chain(outputs) {
                for symbol in [units.inch, units.metric] {
                    assert!(
                        unit_of(kind, symbol).is_some(),
                        "{} {id}: no unit {symbol:?} of {kind}",
                        calculation.id
                    );
                }
            }
        }
    }

    #[test]
    fn every_reading_of_a_running_clearance_brings_a_tool_along() {
        for calculation in CALCULATIONS {
            if calculation.id.starts_with("running-clearance") {
                for input in calculation.inputs {
                    let known = input.id == "needle-sense";
                    assert_eq!(
                        taken(calculation.id, input).task().is_none(),
                        known,
                        "{}",
                        input.id
                    );
                }
            }
        }
    }
}
