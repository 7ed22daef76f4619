//! A press or shrink fit of two rings: what pressure, stresses, holding force
//! and heating an interference brings.
//!
//! Thick rings after Lamé, plane stress, no friction while pressing, elastic
//! throughout.

use std::f64::consts::PI;

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

/// The elastic constants of a metal.
const MODULUS: (Kind, UsualUnits) = (Kind::Pressure, UsualUnits::of("ksi", "GPa"));
const MODULI: (f64, f64) = (1e9, 5e11);
const HOW_STIFF: &str =
    "About 207 GPa (30 000 ksi) for steel, 110 for grey iron and bronze, 71 for aluminium alloys.";
const HOW_IT_NARROWS: &str =
    "About 0.29 for steel, 0.26 for grey iron, 0.33 for aluminium alloys and bronze.";

static INTERFERENCE: Input = Input::gap(
    "interference",
    "interference on the diameter",
    (0.0, 0.002),
    "Outside of the inner part less bore of the outer part, both measured at the same temperature.",
);
static DIAMETER: Input = Input::size(
    "diameter",
    "diameter of the fit",
    (0.001, 1.0),
    "Where the two parts touch.",
);
static INNER_BORE: Input = Input::size(
    "inner-bore",
    "bore of the inner part",
    (0.0, 1.0),
    "0 when the inner part is solid.",
);
static OUTSIDE: Input = Input::size(
    "outside",
    "outside diameter of the outer part",
    (0.001, 2.0),
    "The diameter of the ring that can stretch; for a thick boss take the thinnest wall.",
);
static INNER_MODULUS: Input = Input::of(
    "inner-modulus",
    "modulus of elasticity of the inner part",
    MODULUS,
    MODULI,
    HOW_STIFF,
);
static INNER_POISSON: Input = Input::ratio(
    "inner-poisson",
    "Poisson's ratio of the inner part",
    (0.0, 0.5),
    HOW_IT_NARROWS,
);
static OUTER_MODULUS: Input = Input::of(
    "outer-modulus",
    "modulus of elasticity of the outer part",
    MODULUS,
    MODULI,
    HOW_STIFF,
);
static OUTER_POISSON: Input = Input::ratio(
    "outer-poisson",
    "Poisson's ratio of the outer part",
    (0.0, 0.5),
    HOW_IT_NARROWS,
);
static FRICTION: Input = Input::ratio(
    "friction",
    "friction between the parts",
    (0.0, 1.0),
    "About 0.12 for steel pressed with oil; needed for the holding force only.",
)
.optional();
static LENGTH: Input = Input::size(
    "length",
    "length of the fit",
    (0.0, 1.0),
    "How far the parts touch along the axis; needed for the holding force only.",
)
.optional();
static EXPANSION: Input = Input::of(
    "outer-expansion",
    "expansion coefficient of the outer part",
    (Kind::Expansion, UsualUnits::EXPANSION),
    (1e-6, 4e-5),
    "About 11.4 ppm/K for grey iron, 11.5 for steel, 21 to 24 for aluminium alloys; needed for the heating only.",
)
.optional();
static SLIP: Input = Input::gap(
    "slip",
    "clearance wanted for putting together",
    (0.0, 0.002),
    "How loose the heated part shall be, so that it goes home before it cools: commonly a thou for each inch.",
)
.optional();
static ROOM: Input = Input::of(
    "room",
    "temperature of the inner part",
    (Kind::Temperature, UsualUnits::TEMPERATURE),
    (70.0, 400.0),
    "Of the room, or of the freezer when the inner part is cooled. Leave it out for 20 °C.",
)
.optional();

/// The Lamé press fit.
pub static PRESS_FIT: Calculation = Calculation {
    id: "press-fit",
    title: "Press or shrink fit",
    purpose: "What pressure, stress and holding force an interference gives, and how hot the outer part must be to drop on.",
    inputs: &[
        INTERFERENCE,
        DIAMETER,
        INNER_BORE,
        OUTSIDE,
        INNER_MODULUS,
        INNER_POISSON,
        OUTER_MODULUS,
        OUTER_POISSON,
        FRICTION,
        LENGTH,
        EXPANSION,
        SLIP,
        ROOM,
    ],
    outputs: &[
        Output::of(
            "pressure",
            "pressure between the parts",
            (Kind::Pressure, UsualUnits::STRESS),
        ),
        Output::of(
            "hoop-outer",
            "hoop stress at the bore of the outer part",
            (Kind::Pressure, UsualUnits::STRESS),
        ),
        Output::of(
            "hoop-inner",
            "hoop stress at the outside of the inner part",
            (Kind::Pressure, UsualUnits::STRESS),
        ),
        Output::gap("closure", "how much the inner part's bore closes"),
        Output::of(
            "axial-force",
            "force to push it out",
            (Kind::Force, UsualUnits::FORCE),
        ),
        Output::of(
            "torque",
            "torque to turn it",
            (Kind::Torque, UsualUnits::TORQUE),
        ),
        Output::of(
            "heat-to",
            "temperature for putting together",
            (Kind::Temperature, UsualUnits::TEMPERATURE),
        ),
    ],
    workings: &[
        "give of the outer part = ((outside² + diameter²) ÷ (outside² − diameter²) + its Poisson's ratio) ÷ its modulus",
        "give of the inner part = ((diameter² + bore²) ÷ (diameter² − bore²) − its Poisson's ratio) ÷ its modulus",
        "pressure = interference ÷ (diameter × both gives) = {interference} ÷ ({diameter} × …) = {pressure}",
        "hoop stress outside = pressure × (outside² + diameter²) ÷ (outside² − diameter²) = {hoop-outer}",
        "hoop stress inside = −pressure × (diameter² + bore²) ÷ (diameter² − bore²) = {hoop-inner}",
        "force = π × diameter × length × friction × pressure = {axial-force}; torque = force × diameter ÷ 2 = {torque}",
        "heat to = room + (interference + slip) ÷ (coefficient × diameter) = {heat-to}",
    ],
    provenance: Provenance::Handbook(
        "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, 10th ed., eq. 3-56 and 3-57",
    ),
    cautions: &[
        "The stress must stay well below what the weaker part yields or cracks at: ask the maker's sheet. Cast iron cracks without warning.",
        "Heated parts burn and can set cleaning fluid alight. Heat evenly, in an oven or oil bath rated for it, never above what the part's temper allows.",
    ],
    run,
};

/// (a² + b²) / (a² − b²) of a ring from b to a.
fn ring(outer: &Estimate, inner: &Estimate) -> Estimate {
    let (a, b) = (outer * outer, inner * inner);
    (&a + &b) / (&a - &b)
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let interference = given.one(&INTERFERENCE)?;
    let diameter = given.one(&DIAMETER)?;
    let bore = given.one(&INNER_BORE)?;
    let outside = given.one(&OUTSIDE)?;
    // A wall of a thousandth of the diameter is thinner than any that is pressed.
    if bore.value() > 0.999 * diameter.value() {
        return Err(CalculationError::not_possible(
            &INNER_BORE,
            "leaves the inner part no wall: it must be smaller than the diameter of the fit",
        ));
    }
    if diameter.value() > 0.999 * outside.value() {
        return Err(CalculationError::not_possible(
            &OUTSIDE,
            "leaves the outer part no wall: it must be larger than the diameter of the fit",
        ));
    }
    let outer_ring = ring(outside, diameter);
    let inner_ring = ring(diameter, bore);
    let outer_give = (&outer_ring + given.one(&OUTER_POISSON)?) / given.one(&OUTER_MODULUS)?;
    let inner_modulus = given.one(&INNER_MODULUS)?;
    let inner_give = (&inner_ring - given.one(&INNER_POISSON)?) / inner_modulus;
    let pressure = interference / (diameter * (outer_give + inner_give));
    let closure = closure(&pressure, diameter, bore, inner_modulus);
    let holding = holding(given, &pressure, diameter);
    let heat_to = heat_to(given, interference, diameter);
    let answer = Answer::new()
        .with("hoop-outer", &pressure * outer_ring)
        .with("hoop-inner", &pressure * inner_ring * -1.0)
        .with("closure", closure)
        .with_optional("axial-force", holding.clone())
        .with_optional("torque", holding.map(|force| force * diameter / 2.0))
        .with_optional("heat-to", heat_to.clone())
        .with("pressure", pressure);
    Ok(match heat_to {
        // Common practice: beyond this an aluminium part's temper begins to suffer.
        Some(temperature) if temperature.value() > 273.15 + 200.0 => answer.finding(
            Gravity::Caution,
            "That is hotter than many parts bear without losing their temper. Cool the inner part as well, and ask the maker's sheet how hot it may get.",
        ),
        _ => answer,
    })
}

/// How much the inner part's bore closes, on the diameter.
fn closure(
    pressure: &Estimate,
    diameter: &Estimate,
    bore: &Estimate,
    modulus: &Estimate,
) -> Estimate {
    let square = diameter * diameter;
    let walls = &square - bore * bore;
    pressure * square * bore * 2.0 / (modulus * walls)
}

fn holding(given: &Given, pressure: &Estimate, diameter: &Estimate) -> Option<Estimate> {
    let friction = given.optional(FRICTION.id)?;
    let length = given.optional(LENGTH.id)?;
    Some(pressure * friction * length * diameter * PI)
}

fn heat_to(given: &Given, interference: &Estimate, diameter: &Estimate) -> Option<Estimate> {
    let expansion = given.optional(EXPANSION.id)?;
    let slip = given
        .optional(SLIP.id)
        .cloned()
        .unwrap_or_else(|| Estimate::exact(0.0));
    let room = given
        .optional(ROOM.id)
        .cloned()
        .unwrap_or_else(|| Estimate::exact(super::expansion::REFERENCE_TEMPERATURE));
    Some(room + (interference + slip) / (expansion * diameter))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{Origin, Sources};

    fn pin_in_a_rod() -> Given {
        [
            ("interference", 0.02e-3),
            ("diameter", 0.022),
            ("inner-bore", 0.0),
            ("outside", 0.034),
            ("inner-modulus", 207e9),
            ("inner-poisson", 0.292),
            ("outer-modulus", 207e9),
            ("outer-poisson", 0.292),
        ]
        .into_iter()
        .fold(Given::new(), |given, (id, value)| {
            given.with(id, Estimate::exact(value))
        })
    }

    // Equal metals, solid inner part: p = E δ (D² − d²) / (2 d D²), by hand.
    #[test]
    fn equal_metals_reduce_to_the_short_formula() {
        let answer = PRESS_FIT.answer(&pin_in_a_rod()).unwrap();
        let by_hand = 207e9 * 0.02e-3 * (0.034_f64.powi(2) - 0.022_f64.powi(2))
            / (2.0 * 0.022 * 0.034_f64.powi(2));
        let pressure = answer.get("pressure").unwrap().value();
        assert!((pressure / by_hand - 1.0).abs() < 1e-12);
        assert!((answer.get("hoop-inner").unwrap().value() + pressure).abs() < 1e-3);
        assert_eq!(answer.get("closure").unwrap().value(), 0.0);
        assert!(answer.get("torque").is_none());
    }

    #[test]
    fn the_outer_part_is_heated_until_the_wanted_clearance_is_there() {
        let given = pin_in_a_rod()
            .with("outer-expansion", Estimate::exact(11.5e-6))
            .with("slip", Estimate::exact(0.025e-3));
        let answer = PRESS_FIT.answer(&given).unwrap();
        let hot = answer.get("heat-to").unwrap().value();
        let grown = 0.022 * 11.5e-6 * (hot - 293.15);
        assert!((grown - 0.045e-3).abs() < 1e-12);
    }

    #[test]
    fn doubt_in_the_interference_is_doubt_in_the_pressure() {
        let mut sources = Sources::new();
        let feel = sources.fresh("feel", Origin::Repeat);
        let mut given = Given::new();
        for (id, value) in [
            ("diameter", 0.022),
            ("inner-bore", 0.012),
            ("outside", 0.034),
            ("inner-modulus", 207e9),
            ("inner-poisson", 0.292),
            ("outer-modulus", 207e9),
            ("outer-poisson", 0.292),
        ] {
            given.push(id, Estimate::exact(value));
        }
        given.push("interference", Estimate::exact(20e-6).with(feel, 5e-6));
        let answer = PRESS_FIT.answer(&given).unwrap();
        let pressure = answer.get("pressure").unwrap();
        assert!((pressure.deviation() / pressure.value() - 0.25).abs() < 1e-12);
        // The bore never closes by more than the interference it was pressed in with.
        let closure = answer.get("closure").unwrap().value();
        assert!(closure > 0.0 && closure < 20e-6);
    }

    #[test]
    fn parts_without_a_wall_are_named() {
        let no_wall = |id: &'static str, value: f64| {
            let mut given = Given::new();
            for (other, usual) in [
                ("interference", 1e-5),
                ("diameter", 0.022),
                ("inner-bore", 0.0),
                ("outside", 0.034),
                ("inner-modulus", 207e9),
                ("inner-poisson", 0.292),
                ("outer-modulus", 207e9),
                ("outer-poisson", 0.292),
            ] {
                given.push(
                    other,
                    Estimate::exact(if other == id { value } else { usual }),
                );
            }
            PRESS_FIT.answer(&given).unwrap_err()
        };
        assert_eq!(no_wall("inner-bore", 0.022).field(), Some("inner-bore"));
        assert_eq!(no_wall("outside", 0.021).field(), Some("outside"));
    }
}
