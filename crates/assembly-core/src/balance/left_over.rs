//! How much unbalance may be left, and what a counterweight leaves over.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

static SPEED: Input = Input::of(
    "speed",
    "highest speed",
    (Kind::RotationalSpeed, UsualUnits::of("rpm", "rpm")),
    (1.0, 3000.0),
    "The highest that the engine will turn.",
);
static MASS: Input = Input::of(
    "mass",
    "mass of the turning part",
    (Kind::Mass, UsualUnits::of("lb", "kg")),
    (0.1, 1000.0),
    "The crank with all that is bolted to it while it is balanced.",
);
static GRADE: Input = Input::ratio(
    "grade",
    "balance grade G",
    (0.1, 100.0),
    "In millimetres a second; ISO 21940-11 names G 16 for crank drives of some engines, balancers of cars commonly aim at 2.5 to 6.3.",
);
static RADIUS: Input = Input::size(
    "radius",
    "radius at which metal is taken or added",
    (0.005, 0.5),
    "From the crank's axis to the middle of the drilling.",
);

/// What may be left over: grade ÷ angular speed × mass, kilogram metres, from a
/// grade in metres a second.
#[must_use]
pub fn may_be_left(grade: &Estimate, speed: &Estimate, mass: &Estimate) -> Estimate {
    grade / speed * mass
}

/// The force of a weight going round: mass × radius × angular speed².
#[must_use]
pub fn turning_force(mass: &Estimate, radius: &Estimate, speed: &Estimate) -> Estimate {
    mass * radius * speed.square()
}

/// The weight at a radius that balances what turns and a share of what goes to
/// and fro at a throw.
#[must_use]
pub fn counterweight(
    turning: &Estimate,
    to_and_fro: (&Estimate, &Estimate),
    throw: &Estimate,
    radius: &Estimate,
) -> Estimate {
    let (mass, share) = to_and_fro;
    (turning + mass * share) * throw / radius
}

/// The force left over of a mass going to and fro, of which a share is
/// balanced, at a crank angle: along the bore (1 − share) × cos, across it
/// share × sin.
#[must_use]
pub fn left_over_force(
    to_and_fro: (&Estimate, &Estimate),
    throw: &Estimate,
    speed: &Estimate,
    angle: &Estimate,
) -> Estimate {
    let (mass, share) = to_and_fro;
    let along = (share * -1.0 + 1.0) * angle.cosine();
    let across = share * angle.sine();
    turning_force(mass, throw, speed) * along.third_side(&across)
}

/// Permissible unbalance.
pub static UNBALANCE_LEFT: Calculation = Calculation {
    id: "unbalance-left",
    title: "Unbalance that may be left",
    purpose: "How much weight at a radius a balance grade leaves over.",
    inputs: &[GRADE, SPEED, MASS, RADIUS],
    outputs: &[
        Output::gap("off-centre", "centre of gravity off by, at most"),
        Output::of(
            "weight",
            "weight at that radius",
            (Kind::Mass, UsualUnits::of("g", "g")),
        ),
        Output::of(
            "force",
            "force that it makes",
            (Kind::Force, UsualUnits::FORCE),
        ),
    ],
    workings: &[
        "off centre = grade ÷ angular speed = {grade} mm/s ÷ {speed} = {off-centre}",
        "weight = off centre × mass ÷ radius = {off-centre} × {mass} ÷ {radius} = {weight}, force {force}",
    ],
    provenance: Provenance::Standard("ISO 21940-11, permissible residual unbalance"),
    cautions: &["A balance is of these very parts. Swap one and it is void."],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (speed, mass, radius) = (given.one(&SPEED)?, given.one(&MASS)?, given.one(&RADIUS)?);
    let grade = given.one(&GRADE)? / 1000.0;
    let left = may_be_left(&grade, speed, mass);
    let weight = &left / radius;
    Ok(Answer::new()
        .with("off-centre", &grade / speed)
        .with("force", turning_force(&weight, radius, speed))
        .with("weight", weight))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{value, worked};

    // ISO 21940-11: G 6.3 at 6000 a minute is 10 µm off; 22 kg: 220.6 g·mm.
    #[test]
    fn a_grade_is_an_offset_at_a_speed() {
        let given = [
            ("grade", 6.3),
            ("speed", 628.318_530_717_958_6),
            ("mass", 22.0),
            ("radius", 0.08),
        ]
        .into_iter()
        .fold(Given::new(), |given, (id, value)| {
            given.with(id, Estimate::exact(value))
        });
        let answer = worked(&UNBALANCE_LEFT, &given);
        assert!((value(&answer, "off-centre", 1e-6) - 10.027).abs() < 0.001);
        assert!((value(&answer, "weight", 1e-3) * 80.0 - 220.5888).abs() < 0.001);
    }

    #[test]
    fn a_half_balanced_weight_is_left_half_at_every_angle() {
        let one = Estimate::exact;
        let at = |angle: f64| {
            left_over_force((&one(1.0), &one(0.5)), &one(0.05), &one(100.0), &one(angle)).value()
        };
        for angle in [0.0, 0.7, 1.57, 3.0] {
            assert!((at(angle) - 250.0).abs() < 1e-9);
        }
    }
}
