//! Leak-down: how much of the air put into a cylinder it lets go.
//!
//! Air goes in through an orifice at a known pressure; what is left behind the
//! orifice tells the leak. The orifice decides the figure, so testers with other
//! orifices do not compare.

use std::f64::consts::PI;

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::oil::inputs::{PRESSURE, SHARE};
use crate::quantity::Kind;

const FORCE: (Kind, UsualUnits) = (Kind::Force, UsualUnits::FORCE);
const INCH: f64 = 0.0254;
const AIR: f64 = 101_325.0;

/// A band of leak-down, as parts of the supply.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Band {
    /// Stable name.
    pub id: &'static str,
    /// What it is called.
    pub label: &'static str,
    /// From.
    pub from: f64,
    /// To.
    pub to: f64,
}

/// Bands of car engines, warm: common practice, no source.
pub static BANDS: [Band; 5] = [
    Band {
        id: "race_fresh",
        label: "as a fresh race engine",
        from: 0.0,
        to: 0.05,
    },
    Band {
        id: "good_street",
        label: "good",
        from: 0.05,
        to: 0.10,
    },
    Band {
        id: "serviceable",
        label: "serviceable: note it and look again",
        from: 0.10,
        to: 0.20,
    },
    Band {
        id: "investigate",
        label: "find out where it goes",
        from: 0.20,
        to: 0.30,
    },
    Band {
        id: "fault",
        label: "something is wrong",
        from: 0.30,
        to: 1.0,
    },
];

/// Bores from here on have the wide orifice: 5.00 in (FAA AC 43.13-1B, chapter 8,
/// paragraph 8-14).
const WIDE_FROM: f64 = 5.0 * INCH;

/// The orifice for a bore, m (the same): 0.040 in under 5.00 in, 0.060 in from there.
#[must_use]
pub fn orifice_for(bore: f64) -> f64 {
    if bore < WIDE_FROM {
        0.040 * INCH
    } else {
        0.060 * INCH
    }
}

/// What a warm aircraft cylinder must hold of its supply, as a part: 60 of 80 psi
/// (common practice after the same).
pub const AIRCRAFT_HOLDS: f64 = 0.75;

/// The hole that leaks as much as the orifice lets in: its diameter, m. Both flow
/// freely when the pressure falls by half or more over each, else as the root of
/// the difference; the leak goes from cylinder to air.
#[must_use]
pub fn leak_hole(supply: f64, cylinder: f64, orifice: f64) -> f64 {
    let flow = |up: f64, down: f64| {
        // Air through a sharp hole: choked under 0.528 of the pressure before it.
        let ratio = (down / up).clamp(0.528, 1.0);
        let (a, b) = (libm::pow(ratio, 1.0 / 1.4), libm::pow(ratio, 0.4 / 1.4));
        up * a * (1.0 - b).max(0.0).sqrt()
    };
    let in_flow = flow(supply + AIR, cylinder + AIR);
    let out_flow = flow(cylinder + AIR, AIR);
    if out_flow > 0.0 {
        orifice * (in_flow / out_flow).sqrt()
    } else {
        f64::INFINITY
    }
}

static SUPPLY: Input = Input::of(
    "supply",
    "supply",
    PRESSURE,
    (1e5, 1.2e6),
    "First gauge, while air flows; usually 80 or 100 psi.",
);
static HELD: Input = Input::of(
    "held",
    "cylinder",
    PRESSURE,
    (0.0, 1.2e6),
    "Second gauge, piston at the top of its firing stroke, both valves shut.",
);
static BORE: Input = Input::size(
    "bore",
    "bore",
    (0.02, 0.4),
    "For the orifice and the force on the piston.",
);
static ORIFICE: Input = Input::size(
    "orifice",
    "orifice of the tester",
    (1e-4, 6e-3),
    "From its maker; left out, 0.040 in under a 5 in bore and 0.060 in from there.",
)
.optional();

/// Leak-down.
pub static LEAK_DOWN: Calculation = Calculation {
    id: "leak-down",
    title: "Leak-down",
    purpose: "How much of the air a cylinder lets go, and where to listen.",
    inputs: &[SUPPLY, HELD, BORE, ORIFICE],
    outputs: &[
        Output::of("leak", "leak-down", SHARE),
        Output::of("force", "force on the piston", FORCE),
        Output::gap("orifice-meant", "orifice meant for this bore"),
        Output::gap("hole", "as large as a hole of"),
    ],
    workings: &[
        "leak-down = 1 − cylinder / supply = 1 − {held} / {supply} = {leak}",
        "force = {held} × π/4 × {bore}² = {force}: the crank has to be held",
        "through the orifice flows what leaks: a hole of {hole}",
    ],
    provenance: Provenance::Handbook(
        "FAA AC 43.13-1B, chapter 8, paragraph 8-14 (orifices); bands are common practice",
    ),
    cautions: &[
        "The air turns the crank: lock it, take the wrench off, keep hands out of the fan. A hundred psi push on a 4 in bore with 1257 lbf.",
        "Compare only readings of one tester, warm with warm.",
        "Listen: intake, exhaust, oil filler, radiator, the neighbour's plug hole.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (supply, held, bore) = (given.one(&SUPPLY)?, given.one(&HELD)?, given.one(&BORE)?);
    if held.value() > supply.value() {
        return Err(CalculationError::not_possible(
            &HELD,
            "more than the supply: the two gauges are swapped, or one of them is off",
        ));
    }
    let leak = Estimate::exact(1.0) - held / supply;
    let force = held * bore.square() * &Estimate::exact(PI / 4.0);
    let meant = orifice_for(bore.value());
    let orifice = given.optional(ORIFICE.id).map_or(meant, Estimate::value);
    let hole = leak_hole(supply.value(), held.value(), orifice);
    let band = BANDS
        .iter()
        .rev()
        .find(|band| leak.value() >= band.from - 1e-12);
    let mut answer = Answer::new();
    if let Some(band) = band {
        let gravity = if band.from >= 0.2 {
            Gravity::Caution
        } else {
            Gravity::Note
        };
        answer = answer.finding(
            gravity,
            format!(
                "{:.0} % is {} for a warm car engine.",
                leak.value() * 100.0,
                band.label
            ),
        );
    }
    if (orifice / meant - 1.0).abs() > 0.1 {
        answer = answer.finding(
            Gravity::Note,
            "This is not the orifice of the aircraft rule for the bore: its limits do not hold for this tester.",
        );
    } else if held.value() < AIRCRAFT_HOLDS * supply.value() {
        answer = answer.finding(
            Gravity::Caution,
            "An aircraft cylinder that holds less than three quarters warm has to be looked into.",
        );
    }
    Ok(answer
        .with("leak", leak)
        .with("force", force)
        .with("orifice-meant", Estimate::exact(meant))
        .with_optional("hole", hole.is_finite().then(|| Estimate::exact(hole))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, refused, says, value, worked};

    const PSI: f64 = 6_894.757_293_168_36;

    fn asked(held: f64, bore_inch: f64) -> Given {
        given(PSI, &[("supply", &[100.0]), ("held", &[held])])
            .with("bore", Estimate::exact(bore_inch * INCH))
    }

    // Common practice: a hundred psi on a 4 in bore push with 1257 lbf.
    #[test]
    fn force_leak_and_band() {
        let answer = worked(&LEAK_DOWN, &asked(100.0, 4.0));
        assert!((value(&answer, "force", 4.448_221_615) - 1256.6).abs() < 0.1);
        assert_eq!(value(&answer, "leak", 1.0), 0.0);
        assert!(says(&worked(&LEAK_DOWN, &asked(92.0, 4.0)), "8 % is good"));
        assert!(says(
            &worked(&LEAK_DOWN, &asked(60.0, 4.0)),
            "something is wrong"
        ));
        assert_eq!(refused(&LEAK_DOWN, &asked(101.0, 4.0)), Some("held"));
    }

    // FAA AC 43.13-1B, paragraph 8-14.
    #[test]
    fn orifices_by_bore() {
        assert_eq!(orifice_for(4.99 * INCH), 0.040 * INCH);
        assert_eq!(orifice_for(5.00 * INCH), 0.060 * INCH);
        let wrong = asked(90.0, 4.0).with("orifice", Estimate::exact(0.002));
        assert!(says(&worked(&LEAK_DOWN, &wrong), "not the orifice"));
    }

    #[test]
    fn a_leak_as_large_as_the_orifice() {
        // With both choked, the flows go with the pressures before them.
        let (supply, held) = (9e5, 3.5e5);
        let hole = leak_hole(supply, held, 1e-3);
        let wanted = ((supply + AIR) / (held + AIR)).sqrt() * 1e-3;
        assert!((hole / wanted - 1.0).abs() < 1e-9);
        assert!(leak_hole(supply, 8.9e5, 1e-3) < 0.5e-3);
        assert_eq!(leak_hole(supply, 0.0, 1e-3), f64::INFINITY);
    }
}
