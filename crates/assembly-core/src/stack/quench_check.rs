//! The quick checks of deck clearance and quench.

use super::answering::{estimate, less, more};
use super::deck_and_quench::{
    ALLOY_RODS_ABSOLUTE_LEAST, ALLOY_RODS_LEAST, ALLOY_RODS_MOST, BLOCK_HEIGHT, COMPRESSION_HEIGHT,
    DECK, DECK_CLEARANCE, DECK_MEASURED, GASKET_COMPRESSED, GASKET_FREE, QUENCH, QUENCH_GAP,
    QUENCH_OVER_DECK, ROD_LENGTH, STEEL_RODS_ABSOLUTE_LEAST, STEEL_RODS_LEAST, STEEL_RODS_MOST,
    STROKE, gasket_is_compressed,
};
use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
};

static WANTED: Input = Input::gap(
    "wanted-quench",
    "quench you want",
    (0.0, 0.02),
    "To see which gasket gives it, or how much to take off the deck.",
)
.optional();
static RODS: Input = Input::one_of(
    "rods",
    "rods",
    &[
        Choice {
            id: "steel",
            label: "steel",
        },
        Choice {
            id: "alloy",
            label: "aluminium alloy",
        },
    ],
    "A magnet holds on steel. Alloy rods stretch and grow more, and need more room.",
);

const CAUTIONS: &[&str] = &[
    "Always measure before closing the engine: four parts of one or two thou each add up to three.",
    "The head's face is the quench pad when the pad is flush with it. Milling such a head does not change the quench.",
    "The piston's and the gasket's makers give the least that is allowed. Their sheet wins.",
];

/// Deck clearance and quench from the parts, as a quick check.
pub static DECK_AND_QUENCH: Calculation = Calculation {
    id: "deck-and-quench",
    title: "Deck clearance and quench from the parts",
    purpose: "Where the piston will stand at the top and how near it comes to the head, before anything is bolted together.",
    inputs: &[
        BLOCK_HEIGHT,
        STROKE,
        ROD_LENGTH,
        COMPRESSION_HEIGHT,
        GASKET_COMPRESSED,
        GASKET_FREE,
        RODS,
        WANTED,
    ],
    outputs: &[
        DECK,
        QUENCH_GAP,
        Output::gap(
            "gasket-for-quench",
            "compressed gasket for the quench you want",
        ),
        Output::size("height-for-quench", "block height for the quench you want"),
        Output::size(
            "compression-height-for-quench",
            "compression height for the quench you want",
        ),
    ],
    workings: &[
        "deck clearance = block height − (stroke / 2 + rod + compression height) = {block-height} − ({stroke} / 2 + {rod-length} + {compression-height}) = {deck-clearance-calculated}",
        "quench = deck clearance + compressed gasket = {deck-clearance-calculated} + {gasket-compressed} = {quench}",
    ],
    provenance: Provenance::Derivation("sizes along the bore's axis with the crank pin at the top"),
    cautions: CAUTIONS,
    run: |given| {
        gasket_is_compressed(given)?;
        let quench = estimate(&QUENCH, given)?;
        let answer = Answer::new()
            .with(DECK.id, estimate(&DECK_CLEARANCE, given)?)
            .with(QUENCH_GAP.id, quench.clone())
            .with_solved(
                "gasket-for-quench",
                &QUENCH,
                given,
                &GASKET_COMPRESSED,
                &WANTED,
            )?
            .with_solved("height-for-quench", &QUENCH, given, &BLOCK_HEIGHT, &WANTED)?
            .with_solved(
                "compression-height-for-quench",
                &QUENCH,
                given,
                &COMPRESSION_HEIGHT,
                &WANTED,
            )?;
        quench_finding(answer, quench.value(), given)
    },
};

/// Quench from the measured deck clearance, as a quick check.
pub static QUENCH_CHECK: Calculation = Calculation {
    id: "quench",
    title: "Quench from the measured deck clearance",
    purpose: "How near the piston comes to the head, from where it stands in the bore and the gasket.",
    inputs: &[DECK_MEASURED, GASKET_COMPRESSED, GASKET_FREE, RODS, WANTED],
    outputs: &[
        QUENCH_GAP,
        Output::gap(
            "gasket-for-quench",
            "compressed gasket for the quench you want",
        ),
        Output::gap("deck-for-quench", "deck clearance for the quench you want"),
    ],
    workings: &[
        "quench = deck clearance + compressed gasket = {deck-clearance} + {gasket-compressed} = {quench}",
    ],
    provenance: Provenance::Derivation("sizes along the bore's axis"),
    cautions: CAUTIONS,
    run: |given| {
        gasket_is_compressed(given)?;
        let quench = estimate(&QUENCH_OVER_DECK, given)?;
        let answer = Answer::new()
            .with(QUENCH_GAP.id, quench.clone())
            .with_solved(
                "gasket-for-quench",
                &QUENCH_OVER_DECK,
                given,
                &GASKET_COMPRESSED,
                &WANTED,
            )?
            .with_solved(
                "deck-for-quench",
                &QUENCH_OVER_DECK,
                given,
                &DECK_MEASURED,
                &WANTED,
            )?;
        quench_finding(answer, quench.value(), given)
    },
};

fn quench_finding(answer: Answer, quench: f64, given: &Given) -> Result<Answer, CalculationError> {
    let alloy = given.choice(&RODS)?.id == "alloy";
    let (stop, least, most, words) = if alloy {
        (
            ALLOY_RODS_ABSOLUTE_LEAST,
            ALLOY_RODS_LEAST,
            ALLOY_RODS_MOST,
            "0.055 to 0.065 in (1.4 to 1.65 mm) with alloy rods",
        )
    } else {
        (
            STEEL_RODS_ABSOLUTE_LEAST,
            STEEL_RODS_LEAST,
            STEEL_RODS_MOST,
            "0.035 to 0.045 in (0.9 to 1.15 mm) with steel rods",
        )
    };
    Ok(if quench <= 0.0 {
        answer.finding(Gravity::Stop, "The piston would hit the head.")
    } else if less(quench, stop) {
        answer.finding(
            Gravity::Stop,
            format!("Rods stretch and pistons rock: the piston can hit the head. Common practice is {words}."),
        )
    } else if less(quench, least) {
        answer.finding(
            Gravity::Caution,
            format!("Less than the common {words}: only with the makers' consent."),
        )
    } else if more(quench, most) {
        answer.finding(
            Gravity::Note,
            format!("More than the common {words}: the charge is squeezed less and knocks sooner."),
        )
    } else {
        answer.finding(Gravity::Note, format!("Within the common {words}."))
    })
}

#[cfg(test)]
mod tests {
    use super::super::answering::INCH;
    use super::*;
    use crate::measure::Estimate;

    fn parts() -> Given {
        Given::new()
            .with("block-height", Estimate::exact(9.025 * INCH))
            .with("stroke", Estimate::exact(3.480 * INCH))
            .with("rod-length", Estimate::exact(5.700 * INCH))
            .with("compression-height", Estimate::exact(1.560 * INCH))
            .with("gasket-compressed", Estimate::exact(0.040 * INCH))
            .with("rods", Estimate::exact(0.0))
    }

    fn measured(deck: f64, gasket: f64) -> Given {
        Given::new()
            .with("deck-clearance", Estimate::exact(deck * INCH))
            .with("gasket-compressed", Estimate::exact(gasket * INCH))
            .with("rods", Estimate::exact(0.0))
    }

    // Worked by hand (common practice): 9.025 − (1.740 + 5.700 + 1.560) = 0.025,
    // and 0.040 of gasket makes 0.065.
    #[test]
    fn deck_and_quench_of_the_worked_block() {
        let answer = DECK_AND_QUENCH.answer(&parts()).unwrap();
        let thou = |id: &str| answer.get(id).unwrap().value() / INCH * 1e3;
        assert!((thou("deck-clearance-calculated") - 25.0).abs() < 1e-9);
        assert!((thou("quench") - 65.0).abs() < 1e-9);
    }

    #[test]
    fn the_wanted_quench_is_solved_for_gasket_deck_and_piston() {
        let given = parts().with("wanted-quench", Estimate::exact(0.040 * INCH));
        let answer = DECK_AND_QUENCH.answer(&given).unwrap();
        let inch = |id: &str| answer.get(id).unwrap().value() / INCH;
        assert!((inch("gasket-for-quench") - 0.015).abs() < 1e-9);
        assert!((inch("height-for-quench") - 9.000).abs() < 1e-9);
        assert!((inch("compression-height-for-quench") - 1.585).abs() < 1e-9);
        // 0.020 would need a gasket of less than nothing.
        let given = parts().with("wanted-quench", Estimate::exact(0.020 * INCH));
        let answer = DECK_AND_QUENCH.answer(&given).unwrap();
        assert!(answer.get("gasket-for-quench").is_none());
        assert!(
            answer
                .findings()
                .iter()
                .any(|one| one.text.starts_with("No head gasket, compressed between"))
        );
    }

    // A piston that stands out of the block comes nearer to the head.
    #[test]
    fn out_of_the_block_is_negative() {
        let quench = |deck: f64| {
            QUENCH_CHECK
                .answer(&measured(deck, 0.040))
                .unwrap()
                .get("quench")
                .unwrap()
                .value()
                / INCH
        };
        assert!((quench(-0.005) - 0.035).abs() < 1e-9);
        assert!((quench(0.005) - 0.045).abs() < 1e-9);
    }

    #[test]
    fn a_free_gasket_gives_no_quench() {
        let free_only = Given::new()
            .with("deck-clearance", Estimate::exact(0.005 * INCH))
            .with("gasket-free", Estimate::exact(0.048 * INCH))
            .with("rods", Estimate::exact(0.0));
        let error = QUENCH_CHECK.answer(&free_only).unwrap_err();
        assert_eq!(error.field(), Some("gasket-compressed"));
        assert!(error.to_string().contains("not the free thickness"));

        let the_same = measured(0.005, 0.048).with("gasket-free", Estimate::exact(0.048 * INCH));
        let error = QUENCH_CHECK.answer(&the_same).unwrap_err();
        assert_eq!(error.field(), Some("gasket-compressed"));
        assert!(matches!(error, CalculationError::NotPossible { .. }));
    }

    #[test]
    fn alloy_rods_need_more_room() {
        let steel = QUENCH_CHECK.answer(&measured(0.0, 0.045)).unwrap();
        assert!(
            steel
                .findings()
                .iter()
                .all(|one| one.gravity == Gravity::Note)
        );
        for (gasket, gravity) in [
            (0.045, Gravity::Stop),
            (0.052, Gravity::Caution),
            (0.060, Gravity::Note),
        ] {
            let given = Given::new()
                .with("deck-clearance", Estimate::exact(0.0))
                .with("gasket-compressed", Estimate::exact(gasket * INCH))
                .with("rods", Estimate::exact(1.0));
            let alloy = QUENCH_CHECK.answer(&given).unwrap();
            assert_eq!(alloy.findings().first().unwrap().gravity, gravity);
        }
    }
}
