//! The inputs that most calculations of fasteners share.

use std::f64::consts::FRAC_PI_4;

use super::thread::{System, Thread};
use crate::describe::{CalculationError, Choice, Given, Input, UsualUnits};
use crate::measure::Estimate;
use crate::quantity::Kind;

/// Kind and units of a force.
pub(super) const FORCE: (Kind, UsualUnits) = (Kind::Force, UsualUnits::FORCE);
/// Kind and units of a torque.
pub(super) const TORQUE: (Kind, UsualUnits) = (Kind::Torque, UsualUnits::TORQUE);
/// Kind and units of a stress.
pub(super) const STRESS: (Kind, UsualUnits) = (Kind::Pressure, UsualUnits::of("ksi", "MPa"));
/// Kind and units of an angle.
pub(super) const ANGLE: (Kind, UsualUnits) = (Kind::Angle, UsualUnits::of("°", "°"));
/// Kind and units of a share of the whole.
pub(super) const SHARE: (Kind, UsualUnits) = (Kind::Ratio, UsualUnits::SHARE);
/// Kind and units of an area.
pub(super) const AREA: (Kind, UsualUnits) = (Kind::Area, UsualUnits::of("in²", "mm²"));
/// Kind and units of a stiffness.
pub(super) const STIFFNESS: (Kind, UsualUnits) =
    (Kind::Stiffness, UsualUnits::of("lbf/in", "kN/mm"));

/// Torques of an engine's fasteners.
pub(super) const TORQUES: (f64, f64) = (0.05, 3000.0);
/// Forces in an engine's fasteners.
pub(super) const FORCES: (f64, f64) = (10.0, 2e6);

/// Outside diameter of the thread.
pub(super) static DIAMETER: Input = Input::size(
    "diameter",
    "thread diameter",
    (0.0015, 0.08),
    "Nominal size over the threads: 10 mm for M10, 0.4375 in for 7/16.",
);
/// Pitch of the thread.
pub(super) static PITCH: Input = Input::gap(
    "pitch",
    "thread pitch",
    (0.000_2, 0.008),
    "From one thread to the next, with a pitch gauge; 20 threads an inch are 0.050 in.",
);
/// Which standard the thread is of.
pub(super) static SYSTEM: Input = Input::one_of(
    "system",
    "thread",
    &[
        Choice {
            id: "metric",
            label: "metric",
        },
        Choice {
            id: "inch",
            label: "inch, unified",
        },
    ],
    "The two count the area that carries a little differently.",
);
/// Young's modulus of the bolt.
pub(super) static MODULUS: Input = Input::of(
    "modulus",
    "stiffness of the bolt's metal",
    STRESS,
    (5e10, 3e11),
    "About 207 GPa (30 000 ksi) for steel, 114 GPa for titanium.",
);
/// Nut factor.
pub(super) static NUT_FACTOR: Input = Input::ratio(
    "nut-factor",
    "nut factor",
    (0.05, 0.6),
    "From the lubricant's or the bolt's sheet. Common: 0.20 to 0.25 dry, 0.15 to 0.18 oiled, 0.10 to 0.14 with a moly paste; it scatters widely.",
);
/// Proof stress.
pub(super) static PROOF: Input = Input::of(
    "proof-stress",
    "proof stress of the bolt",
    STRESS,
    (5e7, 3e9),
    "By the marks on its head, see the strength of a bolt; from its sheet for a special bolt. Leave it out when you have neither.",
)
.optional();

/// The thread that was given.
pub(super) fn thread(given: &Given) -> Result<Thread, CalculationError> {
    let system = match given.choice(&SYSTEM)?.id {
        "inch" => System::Inch,
        _ => System::Metric,
    };
    Thread::new(
        given.one(&DIAMETER)?.clone(),
        given.one(&PITCH)?.clone(),
        system,
    )
    .ok_or_else(|| {
        CalculationError::not_possible(
            &PITCH,
            "it is more than a third of the thread's diameter. Type the distance from one thread to the next, not the threads an inch.",
        )
    })
}

/// The area of a round of this diameter.
pub(super) fn round(diameter: &Estimate) -> Estimate {
    diameter.square() * FRAC_PI_4
}

/// A share in whole per cent, for a sentence.
pub(super) fn per_cent(share: f64) -> String {
    format!("{:.0} %", share * 100.0)
}

#[cfg(test)]
pub(super) mod testing {
    //! For the tests of fasteners: inputs each in its own SI value.

    use crate::describe::Given;
    use crate::measure::Estimate;

    /// Given values in SI units.
    pub(in crate::fastener) fn si(values: &[(&'static str, f64)]) -> Given {
        values.iter().fold(Given::new(), |given, (id, value)| {
            given.with(id, Estimate::exact(*value))
        })
    }
}
