//! A coil spring from its wire: rate, load, stress, solid height, surge.

use std::f64::consts::PI;

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

const STRESS: (Kind, UsualUnits) = (Kind::Pressure, UsualUnits::of("ksi", "MPa"));
const RATE: (Kind, UsualUnits) = (Kind::Stiffness, UsualUnits::of("lbf/in", "N/mm"));
const FORCE: (Kind, UsualUnits) = (Kind::Force, UsualUnits::FORCE);
const SWINGS: (Kind, UsualUnits) = (Kind::RotationalSpeed, UsualUnits::of("rpm", "rpm"));

static WIRE: Input = Input::size(
    "wire",
    "wire diameter",
    (0.0002, 0.03),
    "Micrometer on the wire, not over paint.",
);
static MEAN: Input = Input::size(
    "mean-diameter",
    "mean diameter of the coils",
    (0.001, 0.3),
    "Outside of the coils less one wire.",
);
static ACTIVE: Input = Input::ratio(
    "active",
    "coils that work",
    (1.0, 40.0),
    "All coils less those that lie on their neighbours at the ends, usually two less than all.",
);
static ALL: Input = Input::ratio(
    "all",
    "all coils",
    (1.0, 44.0),
    "Counted from one end of the wire to the other.",
)
.optional();
static ENDS: Input = Input::one_of(
    "ends",
    "ends",
    &[
        Choice {
            id: "ground",
            label: "closed and ground flat",
        },
        Choice {
            id: "closed",
            label: "closed, not ground",
        },
    ],
    "A valve spring's ends are ground: they stand flat on their seats.",
);
static SHEAR: Input = Input::of(
    "shear-modulus",
    "stiffness of the wire in twist",
    STRESS,
    (1e10, 1.2e11),
    "About 79 GPa (11 500 ksi) for valve spring wire.",
);
static DENSITY: Input = Input::of(
    "density",
    "density of the wire",
    (Kind::Density, UsualUnits::of("lb/in³", "kg/m³")),
    (1000.0, 20_000.0),
    "7850 kg/m³ for steel.",
);
static FREE: Input = Input::size(
    "free",
    "free length",
    (0.002, 1.0),
    "Standing on a flat, caliper over the ends.",
)
.optional();
static HEIGHT: Input = Input::size(
    "height",
    "height it is pressed to",
    (0.001, 1.0),
    "Installed height, or installed height less lift.",
)
.optional();

/// The rate of a coil spring: shear modulus × wire⁴ ÷ (8 × mean diameter³ × coils that work).
#[must_use]
pub fn rate(shear: &Estimate, wire: &Estimate, mean: &Estimate, active: &Estimate) -> Estimate {
    shear * wire.power(4.0) / (mean.power(3.0) * active * 8.0)
}

/// How much more the inside of the coil bears than plain twist, by its index:
/// A. M. Wahl, Mechanical Springs (1963).
#[must_use]
pub fn wahl(index: &Estimate) -> Estimate {
    (index * 4.0 - 1.0) / (index * 4.0 - 4.0) + index.power(-1.0) * 0.615
}

/// The same after Bergsträsser, who leaves little out.
#[must_use]
pub fn bergstraesser(index: &Estimate) -> Estimate {
    (index * 4.0 + 2.0) / (index * 4.0 - 3.0)
}

/// The shear stress in a coil under a load, with one of those factors.
#[must_use]
pub fn stress(load: &Estimate, mean: &Estimate, wire: &Estimate, factor: &Estimate) -> Estimate {
    factor * load * mean * (8.0 / PI) / wire.power(3.0)
}

/// The wire that bears a load at a stress, for a spring of this index.
#[must_use]
pub fn wire_for(load: &Estimate, index: &Estimate, stress: &Estimate) -> Estimate {
    (wahl(index) * load * index * (8.0 / PI) / stress).root()
}

/// How many coils have to work for a rate, with this wire and index.
#[must_use]
pub fn coils_for(shear: &Estimate, wire: &Estimate, index: &Estimate, rate: &Estimate) -> Estimate {
    shear * wire / (index.power(3.0) * rate * 8.0)
}

/// The load of springs one inside the other at a height, each with its rate and
/// free length; one that stands shorter than the height gives nothing.
#[must_use]
pub fn nested_load(springs: &[(Estimate, Estimate)], height: &Estimate) -> Estimate {
    springs
        .iter()
        .filter(|(_, free)| free.value() > height.value())
        .map(|(rate, free)| rate * (free - height))
        .reduce(|sum, one| sum + one)
        .unwrap_or_default()
}

/// Coil spring.
pub static COIL_SPRING: Calculation = Calculation {
    id: "coil-spring",
    title: "Coil spring from its wire",
    purpose: "The rate, load, stress, solid height and surge of a spring that nobody has a sheet for.",
    inputs: &[WIRE, MEAN, ACTIVE, ALL, ENDS, SHEAR, DENSITY, FREE, HEIGHT],
    outputs: &[
        Output::of("rate", "spring rate", RATE),
        Output::ratio("index", "spring index"),
        Output::of("load", "load at that height", FORCE),
        Output::of("stress", "shear stress at that height", STRESS),
        Output::size("solid", "solid height"),
        Output::of(
            "mass",
            "mass of the coils that work",
            (Kind::Mass, UsualUnits::of("g", "g")),
        ),
        Output::of("surge", "speed of its own swing, both ends held", SWINGS),
    ],
    workings: &[
        "rate = G × d⁴ ÷ (8 × D³ × coils) = {shear-modulus} × {wire}⁴ ÷ (8 × {mean-diameter}³ × {active}) = {rate}",
        "index = D ÷ d = {index}; load = rate × ({free} − {height}) = {load}; stress by Wahl's factor = {stress}",
        "solid = all coils × wire, one wire more when the ends are not ground = {all} × {wire} = {solid}",
        "mass = π² ÷ 4 × d² × D × coils × {density} = {mass}; swing = ½ √(rate ÷ mass) = {surge}",
    ],
    provenance: Provenance::Handbook(
        "mechanical engineering handbooks, helical compression springs; A. M. Wahl, Mechanical Springs (1963)",
    ),
    cautions: &[
        "A tester on the spring itself beats the wire: coils that work are never quite a number.",
        "Springs under load fly: eye guard on, and never lean over the compressor.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (wire, mean, active) = (given.one(&WIRE)?, given.one(&MEAN)?, given.one(&ACTIVE)?);
    let index = mean / wire;
    if index.value() < 2.0 {
        return Err(CalculationError::not_possible(
            &MEAN,
            "no spring is wound so tight: the mean diameter is at least twice the wire. Type the outside of the coils less one wire.",
        ));
    }
    let all = given.optional(ALL.id);
    if all.is_some_and(|all| all.value() < active.value()) {
        return Err(CalculationError::not_possible(
            &ALL,
            "there are fewer coils than coils that work: count again from one end of the wire to the other",
        ));
    }
    let rate = rate(given.one(&SHEAR)?, wire, mean, active);
    let mass = wire.square() * mean * active * given.one(&DENSITY)? * (PI * PI / 4.0);
    let surge = (&rate / &mass).root() * PI;
    let mut answer = Answer::new();
    let more = if given.choice(&ENDS)?.id == "closed" {
        1.0
    } else {
        0.0
    };
    let solid = all.map(|all| (all + more) * wire);
    let height = given.optional(HEIGHT.id);
    if let (Some(solid), Some(height)) = (&solid, height)
        && height.value() <= solid.value()
    {
        answer = answer.finding(
            Gravity::Stop,
            "At this height the coils lie on each other: the spring binds and breaks the train.",
        );
    }
    if let (Some(free), Some(height)) = (given.optional(FREE.id), height) {
        let load = &rate * (free - height);
        if load.value() <= 0.0 {
            return Err(CalculationError::not_possible(
                &HEIGHT,
                "it is not less than the free length: there is no load",
            ));
        }
        answer = answer
            .with("stress", stress(&load, mean, wire, &wahl(&index)))
            .with("load", load);
    }
    Ok(answer
        .with("rate", rate)
        .with("index", index)
        .with_optional("solid", solid)
        .with("mass", mass)
        .with("surge", surge))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{refused, says, value, worked};

    fn spring(height: f64) -> Given {
        [
            ("wire", 0.005),
            ("mean-diameter", 0.030),
            ("active", 6.5),
            ("all", 8.5),
            ("ends", 0.0),
            ("shear-modulus", 78.5e9),
            ("density", 7850.0),
            ("free", 0.0605),
            ("height", height),
        ]
        .into_iter()
        .fold(Given::new(), |given, (id, value)| {
            given.with(id, Estimate::exact(value))
        })
    }

    // Worked by a plain formula (Shigley MED eq. 10-9, 10-25): 34.94 N/mm, 304.2 Hz,
    // 349.4 N with 10 mm pressed.
    #[test]
    fn a_spring_has_the_rate_of_its_wire() {
        let answer = worked(&COIL_SPRING, &spring(0.0505));
        assert!((value(&answer, "rate", 1e3) - 34.9448).abs() < 1e-3);
        assert!((value(&answer, "load", 1.0) - 349.448).abs() < 1e-2);
        assert!((value(&answer, "surge", 2.0 * PI) - 304.172).abs() < 1e-2);
        assert!((value(&answer, "solid", 1e-3) - 42.5).abs() < 1e-6);
        assert!(answer.findings().is_empty());
        assert!(says(&worked(&COIL_SPRING, &spring(0.0420)), "binds"));
        assert_eq!(refused(&COIL_SPRING, &spring(0.0610)), Some("height"));
    }

    #[test]
    fn the_wire_and_the_coils_for_a_spring_give_that_spring_again() {
        let one = Estimate::exact;
        let (shear, index, wanted) = (one(78.5e9), one(7.0), one(40e3));
        let wire = wire_for(&one(500.0), &index, &one(400e6));
        let mean = &wire * &index;
        let stressed = stress(&one(500.0), &mean, &wire, &wahl(&index)).value();
        assert!((stressed / 400e6 - 1.0).abs() < 1e-12);
        let active = coils_for(&shear, &wire, &index, &wanted);
        assert!((rate(&shear, &wire, &mean, &active).value() / 40e3 - 1.0).abs() < 1e-12);
    }

    #[test]
    fn an_inner_spring_that_stands_lower_gives_nothing_yet() {
        let one = Estimate::exact;
        let springs = [(one(35e3), one(0.050)), (one(12e3), one(0.044))];
        assert!((nested_load(&springs, &one(0.046)).value() - 140.0).abs() < 1e-9);
        assert!((nested_load(&springs, &one(0.040)).value() - 398.0).abs() < 1e-9);
    }
}
