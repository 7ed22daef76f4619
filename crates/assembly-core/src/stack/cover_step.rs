//! Front cover against the deck: on an engine whose head gasket runs over the
//! cover's top edge, the two have to be level.

use super::answering::{INCH, estimate, more};
use super::formula::{Formula, Stack, Term};
use crate::describe::{Answer, Calculation, Gravity, Input, Output, Provenance};

/// The most step that a head gasket is commonly asked to bridge. Common practice.
pub const MOST_STEP: f64 = 0.002 * INCH;

static COVER: Input = Input::size(
    "cover-height",
    "height of the cover",
    (0.02, 0.8),
    "From its dowels or lower face to its top edge.",
);
static SEAT: Input = Input::gap(
    "cover-offset",
    "its seat above the block's datum",
    (-0.01, 0.01),
    "How much higher its dowels or lower face sit than the face from which the block was measured; often nothing.",
)
.optional();
static BLOCK: Input = Input::size(
    "deck-height",
    "deck above the same datum",
    (0.02, 0.8),
    "From the same face to the deck at its front edge, after decking.",
);
static STEP: Output = Output::gap("step", "cover above the deck");

/// Step from deck to cover.
pub static COVER_STEP: Stack = Stack {
    id: "cover-step",
    title: "Front cover against the deck",
    terms: &[
        Term::needed(&COVER),
        Term::if_fitted(&SEAT),
        Term::needed(&BLOCK),
    ],
    result: &STEP,
    formula: Formula::Sum(&[1.0, 1.0, -1.0]),
    proof: "The cover torqued on and a straightedge across deck and cover, with a blade.",
};

/// Step from deck to cover as a quick check.
pub static COVER_STEP_CHECK: Calculation = Calculation {
    id: "cover-step",
    title: "Front cover against the deck",
    purpose: "Whether the front cover is level with the deck, so that the head gasket seals over the joint.",
    inputs: &[COVER, SEAT, BLOCK],
    outputs: &[STEP],
    workings: &[
        "step = cover + its seat − deck = {cover-height} + {cover-offset} − {deck-height} = {step}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Best milled together with the block, bolted on. Never level it by bending or by sealant.",
    ],
    run: |given| {
        let step = estimate(&COVER_STEP, given)?;
        let answer = if more(step.value().abs(), MOST_STEP) {
            Answer::new().finding(
                Gravity::Stop,
                if step.value() > 0.0 {
                    "The cover stands out of the deck: it holds the head up beside it. Have cover and block milled together."
                } else {
                    "The cover lies below the deck: oil or coolant leaks at the joint. It takes another cover or a block milled with it."
                },
            )
        } else {
            Answer::new()
        };
        Ok(answer.with(STEP.id, step))
    },
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::describe::Given;
    use crate::measure::Estimate;

    #[test]
    fn a_cut_deck_leaves_the_cover_standing_out() {
        let step = |deck: f64| {
            COVER_STEP_CHECK
                .answer(
                    &Given::new()
                        .with("cover-height", Estimate::exact(8.000 * INCH))
                        .with("deck-height", Estimate::exact(deck * INCH)),
                )
                .unwrap()
        };
        assert!(step(8.001).findings().is_empty());
        let cut = step(7.990);
        assert!((cut.get("step").unwrap().value() / INCH - 0.010).abs() < 1e-9);
        assert!(cut.findings()[0].text.contains("stands out"));
        assert!(step(8.010).findings()[0].text.contains("below the deck"));
    }
}
