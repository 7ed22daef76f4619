//! Crankshaft end play from the widths of the parts.

use super::answering::{INCH, estimate, less, more};
use super::formula::{Formula, Stack, Term};
use crate::describe::{Answer, Calculation, Gravity, Input, Output, Provenance};

/// The least end play of a car engine. Common practice.
pub const COMMONLY_LEAST: f64 = 0.004 * INCH;
/// The most end play of a car engine. Common practice.
pub const COMMONLY_MOST: f64 = 0.010 * INCH;

/// Between the cheeks of the thrust journal.
pub static CHEEKS: Input = Input::size(
    "cheeks",
    "between the cheeks of the thrust journal",
    (0.005, 0.2),
    "Inside micrometer or gauge blocks between the two thrust faces of the crankshaft, four places around.",
);
/// Over the thrust faces of the shells.
pub static FLANGES: Input = Input::size(
    "flanges",
    "over the thrust faces of the shells",
    (0.005, 0.2),
    "Both halves clamped in their seat and in line, over the two flanges or washers.",
);
static WANTED: Input = Input::gap(
    "wanted-play",
    "end play you want",
    (0.0, 0.002),
    "From the maker's sheet, to see how wide the thrust has to be.",
)
.optional();
static PLAY: Output = Output::gap("end-play", "crankshaft end play");

/// End play of the crankshaft.
pub static CRANK_END_PLAY: Stack = Stack {
    id: "crank-end-play",
    title: "Crankshaft end play",
    terms: &[Term::needed(&CHEEKS), Term::needed(&FLANGES)],
    result: &PLAY,
    formula: Formula::Sum(&[1.0, -1.0]),
    proof: "An indicator on the nose, pried back and forth three times; and again with flywheel or converter bolted up.",
};

/// End play from widths, as a quick check.
pub static END_PLAY_FROM_WIDTHS: Calculation = Calculation {
    id: "crank-end-play-from-widths",
    title: "Crankshaft end play from the widths",
    purpose: "What end play the crankshaft will have, before it is laid in.",
    inputs: &[CHEEKS, FLANGES, WANTED],
    outputs: &[
        PLAY,
        Output::size(
            "flanges-for-play",
            "width over the thrust faces for the play you want",
        ),
    ],
    workings: &["end play = cheeks − flanges = {cheeks} − {flanges} = {end-play}"],
    provenance: Provenance::Derivation("sizes along the crankshaft"),
    cautions: &[
        "Two halves that are not in line take play away: seat them by prying with the cap snug.",
        "With the converter or clutch bolted up the crankshaft still has to float.",
    ],
    run: |given| {
        let play = estimate(&CRANK_END_PLAY, given)?;
        let answer = if play.value() <= 0.0 {
            Answer::new().finding(
                Gravity::Stop,
                "The shells are wider than their room: the crankshaft would be clamped.",
            )
        } else if less(play.value(), COMMONLY_LEAST) || more(play.value(), COMMONLY_MOST) {
            Answer::new().finding(
                Gravity::Caution,
                "Common for a car engine is 0.004 to 0.010 in (0.10 to 0.25 mm). Too little burns in minutes. The maker's sheet wins.",
            )
        } else {
            Answer::new()
        };
        answer.with(PLAY.id, play).with_solved(
            "flanges-for-play",
            &CRANK_END_PLAY,
            given,
            &FLANGES,
            &WANTED,
        )
    },
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::describe::Given;
    use crate::measure::Estimate;

    #[test]
    fn play_is_what_the_flanges_leave() {
        let play = |flanges: f64| {
            END_PLAY_FROM_WIDTHS
                .answer(
                    &Given::new()
                        .with("cheeks", Estimate::exact(1.2500 * INCH))
                        .with("flanges", Estimate::exact(flanges * INCH))
                        .with("wanted-play", Estimate::exact(0.006 * INCH)),
                )
                .unwrap()
        };
        let good = play(1.2440);
        assert!((good.get("end-play").unwrap().value() / INCH - 0.006).abs() < 1e-9);
        assert!(good.findings().is_empty());
        let clamped = play(1.2510);
        assert_eq!(clamped.findings()[0].gravity, Gravity::Stop);
        let width = clamped.get("flanges-for-play").unwrap().value();
        assert!((width / INCH - 1.2440).abs() < 1e-9);
    }
}
