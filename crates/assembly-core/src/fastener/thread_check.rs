//! The sizes of a thread and the area that carries.

use super::common::{ANGLE, AREA, DIAMETER, PITCH, SYSTEM, thread};
use crate::describe::{Answer, Calculation, CalculationError, Given, Output, Provenance};

/// Thread sizes.
pub static THREAD_SIZES: Calculation = Calculation {
    id: "thread-sizes",
    title: "Thread sizes and stress area",
    purpose: "The diameters of a thread and the area that carries the load.",
    inputs: &[DIAMETER, PITCH, SYSTEM],
    outputs: &[
        Output::of("stress-area", "area that carries", AREA),
        Output::of("root-area", "area at the root", AREA),
        Output::size("pitch-diameter", "pitch diameter"),
        Output::size("root-diameter", "root of the bolt's thread"),
        Output::size("nut-minor-diameter", "minor diameter of the nut's thread"),
        Output::of("slope", "slope of the thread", ANGLE),
    ],
    workings: &[
        "triangle H = pitch × √3 ÷ 2, pitch {pitch}, outside {diameter}",
        "pitch diameter = outside − 3/4 H = {pitch-diameter}; nut minor = outside − 5/4 H = {nut-minor-diameter}; root = outside − 17/12 H = {root-diameter}",
        "area that carries: metric π/4 × (mean of pitch and root diameter)², inch π/4 × (outside − 0.9743 pitch)² = {stress-area}",
        "area at the root: metric of the root diameter, inch of outside − 3/2 H = {root-area}",
        "slope = arctan(pitch ÷ (π × pitch diameter)) = {slope}",
    ],
    provenance: Provenance::Standard(
        "ISO 68-1, ISO 724, ISO 898-1 clause 9.1.6; ASME B1.1 basic profile and appendix B",
    ),
    cautions: &[
        "Chase a thread, do not tap it: a tap takes metal away that should carry.",
        "Metric and inch bolts that almost fit each other strip: check with a nut run all the way on by hand.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let thread = thread(given)?;
    Ok(Answer::new()
        .with("stress-area", thread.stress_area())
        .with("root-area", thread.root_area())
        .with("pitch-diameter", thread.pitch_diameter())
        .with("root-diameter", thread.root_diameter())
        .with("nut-minor-diameter", thread.nut_minor_diameter())
        .with("slope", thread.slope().arc_tangent()))
}

#[cfg(test)]
mod tests {
    use super::super::common::testing::si;
    use super::*;
    use crate::fit::readings::testing::{refused, value, worked};

    // ASME B1.1 for 3/8-16: stress area 0.0775 in², minor area 0.0678 in².
    #[test]
    fn an_inch_thread_has_the_areas_of_the_table() {
        let inch = 0.0254;
        let given = si(&[
            ("diameter", 0.375 * inch),
            ("pitch", inch / 16.0),
            ("system", 1.0),
        ]);
        let answer = worked(&THREAD_SIZES, &given);
        assert!((value(&answer, "stress-area", inch * inch) - 0.0775).abs() < 5e-5);
        assert!((value(&answer, "root-area", inch * inch) - 0.0678).abs() < 5e-5);
    }

    #[test]
    fn threads_an_inch_typed_as_a_pitch_are_told() {
        let given = si(&[("diameter", 0.005), ("pitch", 0.002), ("system", 0.0)]);
        assert_eq!(refused(&THREAD_SIZES, &given), Some("pitch"));
    }
}
