//! The error of an indicator that leans: a stem that does not stand in the
//! direction of the movement travels farther than the part does.

use uom::si::f64::{Angle, Length};

use crate::describe::{Answer, Calculation, Gravity, Input, Output, Provenance, UsualUnits};
use crate::measure::{Measured, Origin, Sources};
use crate::quantity::{Kind, Si};

/// The movement of the part, from what an indicator leaning by this angle read:
/// movement = reading × cos(lean).
///
/// The lever of a test indicator leans by its angle to the face in the same way.
#[must_use]
pub fn movement(reading: &Measured<Length>, lean: &Measured<Angle>) -> Measured<Length> {
    Measured::from_estimate(reading.estimate() * lean.estimate().cosine())
}

/// A reading of an indicator that was set up square as well as one can see, and
/// may lean up to so much to any side. The reading is then too large by a sixth
/// of the square of that angle on average, which is taken off; what is left of
/// the doubt is shared by all readings of the set-up.
///
/// Of a lean θ anywhere within ±a, to second order: the error θ²/2 has the mean
/// a²/6 and the standard deviation a²/√45.
///
/// ```
/// use assembly_core::measure::{Measured, Sources};
/// use assembly_core::quantity::Si;
/// use assembly_core::tool::squared_by_eye;
/// use uom::si::f64::{Angle, Length};
///
/// let mut sources = Sources::new();
/// let read = Measured::exact(Length::from_si(0.010));
/// let eye = Angle::from_si(5.0_f64.to_radians());
/// let lift = squared_by_eye(&read, eye, "set-up 1", &mut sources);
/// // 10 mm of valve lift read with a stem within 5 degrees: 13 µm off on average.
/// assert!((0.010 - lift.value().to_si() - 12.7e-6).abs() < 0.1e-6);
/// ```
#[must_use]
pub fn squared_by_eye(
    reading: &Measured<Length>,
    within: Angle,
    setup: &str,
    sources: &mut Sources,
) -> Measured<Length> {
    let square = within.to_si().powi(2);
    let lean = sources.shared(&format!("lean|{setup}"), "indicator", Origin::Alignment);
    let doubt = reading.value().to_si() * square / 45.0_f64.sqrt();
    (reading.clone() * (1.0 - square / 6.0)).with(lean, Length::from_si(doubt))
}

static READING: Input = Input::gap(
    "reading",
    "indicator reading",
    (-0.1, 0.1),
    "What the needle moved, turns counted.",
);

/// Beyond this an indicator slips rather than reads.
const MOST_LEAN: f64 = std::f64::consts::FRAC_PI_3;

static LEAN: Input = Input::of(
    "lean",
    "lean of the stem",
    (Kind::Angle, UsualUnits::of("°", "°")),
    (0.0, MOST_LEAN),
    "The angle between the stem and the movement; of a lever indicator the angle between the lever and the face.",
);

/// What a part moved, read with an indicator that leans.
pub static INDICATOR_LEAN: Calculation = Calculation {
    id: "indicator-lean",
    title: "Indicator that leans",
    purpose: "What a part really moved when the indicator could not stand in line with it.",
    inputs: &[READING, LEAN],
    outputs: &[
        Output::gap("movement", "movement of the part"),
        Output::gap("error", "reads too large by"),
    ],
    workings: &[
        "movement = reading × cos(lean) = {reading} × cos({lean}) = {movement}",
        "error = reading − movement = {error}",
    ],
    provenance: Provenance::Derivation("projection of the stem on the movement"),
    cautions: &["Better to stand the indicator square than to correct for it."],
    run: |given| {
        let reading = given.one(&READING)?;
        let lean = given.one(&LEAN)?;
        let movement = reading * lean.cosine();
        let answer = Answer::new()
            .with("error", reading - &movement)
            .with("movement", movement);
        Ok(if lean.value() > SURE_LEAN {
            answer.finding(
                Gravity::Caution,
                "At such a lean a degree more or less counts for much: stand the indicator straighter.",
            )
        } else {
            answer
        })
    },
};

/// Up to here a degree more or less changes the reading by half a percent.
const SURE_LEAN: f64 = 0.3;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::describe::Given;
    use crate::measure::{Estimate, deviation_to_second_order};

    fn length(si: f64) -> Measured<Length> {
        Measured::exact(Length::from_si(si))
    }

    // cos 10° = 0.98481: a lean of ten degrees makes 1.5 %.
    #[test]
    fn a_leaning_stem_reads_large() {
        let lean = Measured::exact(Angle::from_si(10.0_f64.to_radians()));
        let moved = movement(&length(0.010), &lean);
        assert!((moved.value().to_si() - 0.009_848_1).abs() < 1e-7);
    }

    #[test]
    fn what_is_squared_by_eye_agrees_with_many_drawn_leans() {
        let (read, within) = (0.012, 8.0_f64.to_radians());
        let mut sources = Sources::new();
        let found = squared_by_eye(&length(read), Angle::from_si(within), "a", &mut sources);
        let count = 100_000;
        let leans =
            (0..count).map(|i| within * (2.0 * (f64::from(i) + 0.5) / f64::from(count) - 1.0));
        let moved: Vec<f64> = leans.map(|lean| read * lean.cos()).collect();
        let mean = moved.iter().sum::<f64>() / f64::from(count);
        let variance = moved.iter().map(|one| (one - mean).powi(2)).sum::<f64>() / f64::from(count);
        assert!((found.value().to_si() - mean).abs() < 1e-3 * (read - mean));
        assert!((found.give_or_take().to_si() / variance.sqrt() - 1.0).abs() < 0.01);
    }

    #[test]
    fn first_order_alone_would_see_no_error_in_a_lean_about_nothing() {
        let lean = Measured::exact(Angle::from_si(0.0)).with(
            Sources::new().fresh("lean", Origin::Alignment),
            Angle::from_si(0.05),
        );
        assert_eq!(movement(&length(0.01), &lean).give_or_take().to_si(), 0.0);
        let second = deviation_to_second_order(|at| 0.01 * at[0].cos(), &[(0.0, 0.05)]);
        assert!(second > 1e-5);
    }

    #[test]
    fn readings_of_one_set_up_share_its_lean() {
        let mut sources = Sources::new();
        let within = Angle::from_si(0.1);
        let one = squared_by_eye(&length(0.01), within, "a", &mut sources);
        let two = squared_by_eye(&length(0.01), within, "a", &mut sources);
        let three = squared_by_eye(&length(0.01), within, "b", &mut sources);
        assert_eq!((&one - &two).give_or_take().to_si(), 0.0);
        assert!((&one - &three).give_or_take().to_si() > 0.0);
    }

    #[test]
    fn a_big_lean_is_told() {
        let given = |degrees: f64| {
            Given::new()
                .with("reading", Estimate::exact(0.01))
                .with("lean", Estimate::exact(degrees.to_radians()))
        };
        assert!(
            INDICATOR_LEAN
                .answer(&given(5.0))
                .unwrap()
                .findings()
                .is_empty()
        );
        assert_eq!(
            INDICATOR_LEAN
                .answer(&given(40.0))
                .unwrap()
                .findings()
                .len(),
            1
        );
    }
}
