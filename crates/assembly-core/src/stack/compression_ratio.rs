//! Compression ratio: the volume above the piston at the bottom against that
//! at the top.

use num_dual::Dual64;

use super::answering::{estimate, less};
use super::deck_and_quench::{
    DECK_MEASURED, GASKET_COMPRESSED, GASKET_FREE, STROKE, gasket_is_compressed,
};
use super::formula::{Formula, Number, Smooth, Stack, Term};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::quantity::Kind;

const VOLUME: (Kind, UsualUnits) = (Kind::Volume, UsualUnits::of("cc", "cc"));
const LITRE: f64 = 1e-3;

/// Bore.
pub static BORE: Input = Input::size(
    "bore",
    "bore",
    (0.02, 0.6),
    "Measured across the crankshaft, or the size ordered from the shop.",
);
/// Chamber in the head.
pub static CHAMBER: Input = Input::of(
    "chamber",
    "chamber in the head",
    VOLUME,
    (1e-6, 10.0 * LITRE),
    "Valves and plug in, a clear plate greased on, filled from a burette without a bubble.",
);
/// Dish or dome of the piston.
pub static DISH: Input = Input::of(
    "dish",
    "dish of the piston (dish +, dome −)",
    VOLUME,
    (-2.0 * LITRE, 10.0 * LITRE),
    "From the piston's sheet, valve pockets counted in; a dome counts negative.",
);
/// Opening of the head gasket.
pub static GASKET_BORE: Input = Input::size(
    "gasket-bore",
    "bore of the gasket's opening",
    (0.02, 0.65),
    "Across the fire ring; it is larger than the bore.",
);
static WANTED: Input = Input::ratio(
    "wanted-ratio",
    "ratio you want",
    (2.0, 40.0),
    "To see which chamber, gasket or deck gives it.",
)
.optional();

static RATIO: Output = Output::ratio("ratio", "compression ratio");
static CLEARANCE: Output = Output::of("clearance-volume", "volume at the top", VOLUME);
static SWEPT: Output = Output::of("swept", "volume swept by one piston", VOLUME);

const PARTS: [Term; 7] = [
    Term::needed(&BORE),
    Term::needed(&STROKE),
    Term::needed(&CHAMBER),
    Term::needed(&DISH),
    Term::needed(&GASKET_BORE),
    Term::needed(&GASKET_COMPRESSED),
    Term::needed(&DECK_MEASURED),
];
const PROOF: &str = "Fluid from a burette through the plug hole, the engine tilted so that the plug hole is highest, piston at the top and both valves shut.";

/// Compression ratio.
pub static COMPRESSION_RATIO: Stack = Stack {
    id: "compression-ratio",
    title: "Compression ratio",
    terms: &PARTS,
    result: &RATIO,
    formula: Formula::Smooth(Smooth {
        value: ratio::<f64>,
        with_slope: ratio::<Dual64>,
    }),
    proof: PROOF,
};

/// The volume left above the piston at the top.
pub static CLEARANCE_VOLUME: Stack = Stack {
    id: "clearance-volume",
    title: "Volume above the piston at the top",
    terms: &PARTS,
    result: &CLEARANCE,
    formula: Formula::Smooth(Smooth {
        value: clearance::<f64>,
        with_slope: clearance::<Dual64>,
    }),
    proof: PROOF,
};

/// The volume that one piston sweeps.
pub static SWEPT_VOLUME: Stack = Stack {
    id: "swept-volume",
    title: "Volume swept by one piston",
    terms: &[Term::needed(&BORE), Term::needed(&STROKE)],
    result: &SWEPT,
    formula: Formula::Smooth(Smooth {
        value: swept::<f64>,
        with_slope: swept::<Dual64>,
    }),
    proof: "Bore and stroke measured.",
};

fn cylinder<N: Number>(bore: N, height: N) -> N {
    bore * bore * height * std::f64::consts::FRAC_PI_4
}

fn swept<N: Number>(terms: &[N]) -> N {
    let &[bore, stroke] = terms else {
        return N::from(f64::NAN);
    };
    cylinder(bore, stroke)
}

pub(super) fn clearance<N: Number>(terms: &[N]) -> N {
    let &[bore, _, chamber, dish, gasket_bore, gasket, deck] = terms else {
        return N::from(f64::NAN);
    };
    chamber + dish + cylinder(gasket_bore, gasket) + cylinder(bore, deck)
}

/// No number when no volume is left at the top.
fn ratio<N: Number>(terms: &[N]) -> N {
    let &[bore, stroke, ..] = terms else {
        return N::from(f64::NAN);
    };
    let at_top = clearance(terms);
    if at_top <= 0.0 {
        return N::from(f64::NAN);
    }
    (cylinder(bore, stroke) + at_top) / at_top
}

/// Compression ratio as a quick check.
pub static COMPRESSION_RATIO_CHECK: Calculation = Calculation {
    id: "compression-ratio",
    title: "Compression ratio",
    purpose: "How hard the charge is squeezed, from bore, stroke and the volumes at the top.",
    inputs: &[
        BORE,
        STROKE,
        CHAMBER,
        DISH,
        GASKET_BORE,
        GASKET_COMPRESSED,
        GASKET_FREE,
        DECK_MEASURED,
        WANTED,
    ],
    outputs: &[
        RATIO,
        SWEPT,
        CLEARANCE,
        Output::of(
            "chamber-for-ratio",
            "chamber for the ratio you want",
            VOLUME,
        ),
        Output::of("dish-for-ratio", "dish for the ratio you want", VOLUME),
        Output::gap(
            "gasket-for-ratio",
            "compressed gasket for the ratio you want",
        ),
        Output::gap("deck-for-ratio", "deck clearance for the ratio you want"),
    ],
    workings: &[
        "swept = π/4 × bore² × stroke = π/4 × {bore}² × {stroke} = {swept}",
        "volume at the top = chamber + dish + gasket + deck = {chamber} + {dish} + π/4 × {gasket-bore}² × {gasket-compressed} + π/4 × {bore}² × {deck-clearance} = {clearance-volume}",
        "ratio = (swept + volume at the top) / volume at the top = ({swept} + {clearance-volume}) / {clearance-volume} = {ratio}",
    ],
    provenance: Provenance::Derivation("volumes of cylinders"),
    cautions: &[
        "Milling a head takes volume from the chamber: fill it again instead of guessing.",
        "The ring of space beside the top land is left out; it lowers the ratio by a tenth or so.",
        "Which ratio an engine bears depends on fuel, camshaft and chamber: ask the maker of the pistons.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    gasket_is_compressed(given)?;
    if given.one(&GASKET_BORE)?.value() < given.one(&BORE)?.value() * 0.9 {
        return Err(CalculationError::not_possible(
            &GASKET_BORE,
            "it is much smaller than the bore, so the gasket would stand into the cylinder. Measure across the opening's fire ring.",
        ));
    }
    let at_top = estimate(&CLEARANCE_VOLUME, given)?;
    let swept = estimate(&SWEPT_VOLUME, given)?;
    // Less than a hundredth of the swept volume is no engine but a slip of sign.
    if less(at_top.value(), swept.value() * 0.01) {
        return Err(CalculationError::not_possible(
            &CHAMBER,
            "hardly any volume is left above the piston. Check the signs: a dish and a piston in the hole add volume, a dome and a piston out of the block take it.",
        ));
    }
    let mut answer = Answer::new()
        .with(RATIO.id, estimate(&COMPRESSION_RATIO, given)?)
        .with(SWEPT.id, swept)
        .with(CLEARANCE.id, at_top);
    for (output, term) in [
        ("chamber-for-ratio", &CHAMBER),
        ("dish-for-ratio", &DISH),
        ("gasket-for-ratio", &GASKET_COMPRESSED),
        ("deck-for-ratio", &DECK_MEASURED),
    ] {
        answer = answer.with_solved(output, &COMPRESSION_RATIO, given, term, &WANTED)?;
    }
    Ok(
        answer.finding(
            Gravity::Note,
            "The quench does not follow from the ratio: check the deck clearance and the gasket for it.",
        ),
    )
}

#[cfg(test)]
mod tests {
    use super::super::answering::INCH;
    use super::*;
    use crate::measure::{Estimate, Origin, Sources};
    use crate::stack::StackUp;

    fn engine(deck: f64, gasket: f64) -> Given {
        Given::new()
            .with("bore", Estimate::exact(4.03 * INCH))
            .with("stroke", Estimate::exact(3.48 * INCH))
            .with("chamber", Estimate::exact(64e-6))
            .with("dish", Estimate::exact(5e-6))
            .with("gasket-bore", Estimate::exact(4.1 * INCH))
            .with("gasket-compressed", Estimate::exact(gasket * INCH))
            .with("deck-clearance", Estimate::exact(deck * INCH))
    }

    fn ratio_of(given: &Given) -> f64 {
        COMPRESSION_RATIO_CHECK
            .answer(given)
            .unwrap()
            .get("ratio")
            .unwrap()
            .value()
    }

    // Worked by hand (common practice): bore 4.03, stroke 3.48, chamber 64 cc,
    // dish 5 cc, gasket opening 4.1.
    #[test]
    fn the_worked_ratios_come_out() {
        for (deck, gasket, ratio) in [
            (0.025, 0.040, 9.78),
            (0.005, 0.040, 10.24),
            (0.005, 0.028, 10.56),
        ] {
            assert!((ratio_of(&engine(deck, gasket)) - ratio).abs() < 0.005);
        }
    }

    // A dome and a piston out of the block take volume away.
    #[test]
    fn signs_of_dish_and_deck() {
        let flat = ratio_of(&engine(0.0, 0.040));
        assert!(ratio_of(&engine(0.010, 0.040)) < flat);
        assert!(ratio_of(&engine(-0.010, 0.040)) > flat);
    }

    #[test]
    fn the_wanted_ratio_is_solved_and_gives_it_again() {
        let given = engine(0.025, 0.040).with("wanted-ratio", Estimate::exact(10.0));
        let answer = COMPRESSION_RATIO_CHECK.answer(&given).unwrap();
        let chamber = answer.get("chamber-for-ratio").unwrap().value();
        let swept = answer.get("swept").unwrap().value();
        let before = answer.get("clearance-volume").unwrap().value();
        // The volume at the top has to be the swept one over the ratio less one.
        assert!((before - 64e-6 + chamber - swept / 9.0).abs() < 1e-12);
        let gasket = answer.get("gasket-for-ratio").unwrap().value();
        assert!((ratio_of(&engine(0.025, gasket / INCH)) - 10.0).abs() < 1e-9);
    }

    #[test]
    fn first_order_and_draws_agree_where_the_errors_are_small() {
        let mut sources = Sources::new();
        let burette = sources.fresh("burette", Origin::Repeat);
        let given = Given::new()
            .with("bore", Estimate::exact(4.03 * INCH))
            .with("stroke", Estimate::exact(3.48 * INCH))
            .with("chamber", Estimate::exact(64e-6).with(burette, 0.4e-6))
            .with("dish", Estimate::exact(5e-6))
            .with("gasket-bore", Estimate::exact(4.1 * INCH))
            .with("gasket-compressed", Estimate::exact(0.040 * INCH))
            .with("deck-clearance", Estimate::exact(0.025 * INCH));
        let stack_up = StackUp::from_given(&COMPRESSION_RATIO, &given).unwrap();
        let first_order = stack_up.estimate().unwrap().deviation();
        let drawn = stack_up.monte_carlo(100_000, 11).unwrap().deviation();
        assert!((drawn / first_order - 1.0).abs() < 0.02);
        // By hand: ratio − 1 over the volume at the top.
        assert!((first_order - 8.78 / 82.9e-6 * 0.4e-6).abs() < 0.0005);
    }

    #[test]
    fn no_volume_at_the_top_names_the_signs() {
        let dome = Given::new()
            .with("bore", Estimate::exact(4.03 * INCH))
            .with("stroke", Estimate::exact(3.48 * INCH))
            .with("chamber", Estimate::exact(30e-6))
            .with("dish", Estimate::exact(-60e-6))
            .with("gasket-bore", Estimate::exact(4.1 * INCH))
            .with("gasket-compressed", Estimate::exact(0.040 * INCH))
            .with("deck-clearance", Estimate::exact(0.0));
        let error = COMPRESSION_RATIO_CHECK.answer(&dome).unwrap_err();
        assert_eq!(error.field(), Some("chamber"));
        assert!(error.to_string().contains("signs"));
    }
}
