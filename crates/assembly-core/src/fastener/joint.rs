//! A bolted joint: how stiff bolt and clamped parts are, what the bolt takes of
//! an outside load, and when the joint opens.

use std::f64::consts::PI;

use super::common::{
    DIAMETER, FORCE, FORCES, MODULUS, PITCH, SHARE, STIFFNESS, STRESS, SYSTEM, per_cent, thread,
};
use super::stretch::give_of;
use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
};
use crate::measure::Estimate;

static GRIP: Input = Input::size(
    "grip",
    "clamped thickness",
    (0.001, 0.6),
    "All that the bolt holds together, gasket compressed.",
);
/// The metals of clamped parts.
pub(super) static CLAMPED: Input = Input::one_of(
    "clamped-metal",
    "metal of the clamped parts",
    &[
        Choice {
            id: "steel",
            label: "steel",
        },
        Choice {
            id: "aluminium",
            label: "aluminium alloy",
        },
        Choice {
            id: "copper",
            label: "copper alloy",
        },
        Choice {
            id: "grey-iron",
            label: "grey cast iron",
        },
    ],
    "The softest thick part decides; a gasket is softer than all of these and is not in it.",
);
static PRELOAD_IN: Input = Input::of(
    "preload",
    "preload",
    FORCE,
    FORCES,
    "See preload from a torque or from a stretch.",
);
static OUTSIDE: Input = Input::of(
    "outside-load",
    "load that pulls the joint apart",
    FORCE,
    (0.0, 2e6),
    "On this one bolt: gas or inertia force over the number of bolts.",
);

/// Metal of clamped parts: its stiffness, pascals, and the two constants of
/// J. Wileman, M. Choudhury and I. Green, Computation of member stiffness in
/// bolted connections, ASME J. Mech. Des. 113 (1991).
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Clamped {
    /// Its name.
    pub metal: &'static str,
    /// Young's modulus.
    pub modulus: f64,
    /// Factor in front.
    pub a: f64,
    /// Factor in the exponent.
    pub b: f64,
}

/// The metals of the paper, as printed in mechanical engineering handbooks;
/// aluminium, copper and grey iron from memory.
pub static CLAMPED_METALS: &[Clamped] = &[
    Clamped {
        metal: "steel",
        modulus: 207e9,
        a: 0.787_15,
        b: 0.628_73,
    },
    Clamped {
        metal: "aluminium",
        modulus: 71e9,
        a: 0.796_70,
        b: 0.638_16,
    },
    Clamped {
        metal: "copper",
        modulus: 119e9,
        a: 0.795_68,
        b: 0.635_53,
    },
    Clamped {
        metal: "grey-iron",
        modulus: 100e9,
        a: 0.778_71,
        b: 0.616_16,
    },
    Clamped {
        metal: "general",
        modulus: 207e9,
        a: 0.789_52,
        b: 0.629_14,
    },
];

/// The metal of this name.
#[must_use]
pub fn clamped(metal: &str) -> Option<&'static Clamped> {
    CLAMPED_METALS.iter().find(|one| one.metal == metal)
}

/// Stiffness of clamped parts of one metal under a bolt of this diameter:
/// E × d × A × exp(B × d ÷ grip).
#[must_use]
pub fn clamped_stiffness(
    modulus: &Estimate,
    diameter: &Estimate,
    grip: &Estimate,
    (a, b): (f64, f64),
) -> Estimate {
    modulus * diameter * ((diameter / grip) * b).exponential() * a
}

/// Tangent of the cone's half angle of 30°.
const CONE: f64 = 0.577_350_269_189_625_8;

/// Stiffness of one frustum of the pressure cone: a hole of this diameter, a
/// thickness, the smaller face. Mechanical engineering handbooks (Shigley
/// 8-20), 30° cone.
#[must_use]
pub fn frustum(
    modulus: &Estimate,
    hole: &Estimate,
    thickness: &Estimate,
    face: &Estimate,
) -> Estimate {
    let wide = face + thickness * (2.0 * CONE);
    let ratio = ((&wide - hole) * (face + hole)) / ((&wide + hole) * (face - hole));
    modulus * hole * (CONE * PI) / ratio.logarithm()
}

/// Stiffness of clamped parts of one metal by two cones that meet in the
/// middle, under a head of one and a half diameters (Shigley 8-22).
#[must_use]
pub fn two_cones(modulus: &Estimate, diameter: &Estimate, grip: &Estimate) -> Estimate {
    let spread = grip * CONE;
    let ratio = (&spread + diameter * 0.5) * 5.0 / (&spread + diameter * 2.5);
    modulus * diameter * (CONE * PI) / (ratio.logarithm() * 2.0)
}

/// Load in the bolt of a joint that has not opened, under an outside load of
/// which it feels this share.
#[must_use]
pub fn bolt_load(preload: &Estimate, outside: &Estimate, share: &Estimate) -> Estimate {
    preload + share * outside
}

/// Stiffness of parts one behind the other.
#[must_use]
pub fn in_series(stiffnesses: &[Estimate]) -> Estimate {
    let give = stiffnesses
        .iter()
        .map(|one| one.power(-1.0))
        .reduce(|sum, one| sum + one);
    give.unwrap_or_default().power(-1.0)
}

/// Bolted joint.
pub static BOLTED_JOINT: Calculation = Calculation {
    id: "bolted-joint",
    title: "Bolted joint under load",
    purpose: "What part of a load the bolt feels, and at what load the joint opens.",
    inputs: &[
        PRELOAD_IN,
        OUTSIDE,
        GRIP,
        CLAMPED,
        super::stretch::SHANK_LENGTH,
        super::stretch::SHANK_DIAMETER,
        super::stretch::THREAD_LENGTH,
        DIAMETER,
        PITCH,
        SYSTEM,
        MODULUS,
    ],
    outputs: &[
        Output::of("bolt-stiffness", "stiffness of the bolt", STIFFNESS),
        Output::of(
            "clamped-stiffness",
            "stiffness of the clamped parts",
            STIFFNESS,
        ),
        Output::of("bolt-share", "part of the load that the bolt feels", SHARE),
        Output::of("bolt-load", "load in the bolt", FORCE),
        Output::of("bolt-stress", "stress in the bolt's thread", STRESS),
        Output::of("clamp-left", "clamping that is left", FORCE),
        Output::of("opens-at", "load at which the joint opens", FORCE),
    ],
    workings: &[
        "bolt = E ÷ (shank ÷ its area + thread ÷ its area) = {bolt-stiffness}",
        "clamped parts = E × d × A × exp(B × d ÷ grip) = {clamped-stiffness}",
        "share = bolt ÷ (bolt + clamped) = {bolt-share}; load in the bolt = {preload} + share × {outside-load} = {bolt-load}, stress {bolt-stress}",
        "clamping left = {preload} − (1 − share) × {outside-load} = {clamp-left}; opens at {preload} ÷ (1 − share) = {opens-at}",
    ],
    provenance: Provenance::Handbook(
        "mechanical engineering handbooks, bolted joints; J. Wileman, M. Choudhury and I. Green, ASME J. Mech. Des. 113 (1991)",
    ),
    cautions: &[
        "A gasket makes the joint softer: the bolt then feels more than this says, and the joint leaks before it opens.",
        "A joint that opens breaks its bolts within hours, however strong they are.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let thread = thread(given)?;
    let bolt = give_of(given)?.power(-1.0);
    let metal = clamped(given.choice(&CLAMPED)?.id).map_or((207e9, 0.787_15, 0.628_73), |one| {
        (one.modulus, one.a, one.b)
    });
    let grip = given.one(&GRIP)?;
    if grip.value() < thread.diameter().value() * 0.1 {
        return Err(CalculationError::not_possible(
            &GRIP,
            "it is less than a tenth of the bolt's diameter: the formula holds for no such joint. Type all that is clamped.",
        ));
    }
    let parts = clamped_stiffness(
        &Estimate::exact(metal.0),
        thread.diameter(),
        grip,
        (metal.1, metal.2),
    );
    let share = &bolt / (&bolt + &parts);
    let (preload, outside) = (given.one(&PRELOAD_IN)?, given.one(&OUTSIDE)?);
    let rest = &share * -1.0 + 1.0;
    let left = preload - &rest * outside;
    let opens = preload / &rest;
    let load = bolt_load(preload, outside, &share);
    let mut answer = Answer::new();
    if left.value() <= 0.0 {
        answer = answer.finding(
            Gravity::Stop,
            "The joint opens under this load: the bolt takes all of it, and hammers.",
        );
    } else {
        answer = answer.finding(
            Gravity::Note,
            format!(
                "The bolt feels {} of the load, the clamped parts the rest.",
                per_cent(share.value())
            ),
        );
    }
    Ok(answer
        .with("bolt-stress", &load / thread.stress_area())
        .with("bolt-load", load)
        .with("bolt-stiffness", bolt)
        .with("clamped-stiffness", parts)
        .with("bolt-share", share)
        .with("clamp-left", left)
        .with("opens-at", opens))
}

#[cfg(test)]
mod tests {
    use super::super::common::testing::si;
    use super::*;
    use crate::fit::readings::testing::{value, worked};

    fn rod(outside: f64) -> Answer {
        worked(
            &BOLTED_JOINT,
            &si(&[
                ("preload", 40e3),
                ("outside-load", outside),
                ("grip", 0.040),
                ("clamped-metal", 0.0),
                ("shank-length", 0.030),
                ("shank-diameter", 0.010),
                ("thread-length", 0.010),
                ("diameter", 0.010),
                ("pitch", 0.001_25),
                ("system", 0.0),
                ("modulus", 207e9),
            ]),
        )
    }

    // Shigley MED example 8-2: a steel frustum 30.8 Mlbf/in, all-steel series 9.378 of 30.8, 285.5 and 14.15.
    #[test]
    fn frusta_and_series_are_those_of_the_handbook() {
        let one = Estimate::exact;
        let stiff = frustum(&one(30.0), &one(0.5), &one(0.595), &one(0.75)).value();
        assert!((stiff - 30.8).abs() < 0.05, "{stiff}");
        let all = in_series(&[one(30.8), one(285.5), one(14.15)]).value();
        assert!((all - 9.378).abs() < 0.02, "{all}");
    }

    #[test]
    fn the_load_splits_by_stiffness_and_the_joint_opens_where_it_says() {
        let loaded = rod(20e3);
        let share = value(&loaded, "bolt-share", 1.0);
        assert!(share > 0.1 && share < 0.3, "{share}");
        let gained = value(&loaded, "bolt-load", 1.0) - 40e3;
        let lost = 40e3 - value(&loaded, "clamp-left", 1.0);
        assert!((gained + lost - 20e3).abs() < 1e-3);
        let opens = value(&loaded, "opens-at", 1.0);
        let at = rod(opens);
        assert!(value(&at, "clamp-left", 1.0).abs() < 0.1);
        assert_eq!(rod(opens + 1.0).findings()[0].gravity, Gravity::Stop);
    }
}
