//! Deck clearance and quench: where the piston stands at the top, and how far
//! it then is from the head.
//!
//! Deck clearance counts from the deck downwards: a piston in the hole is
//! positive, one that stands out of the block negative.

use super::answering::INCH;
use super::formula::{Formula, Stack, Term};
use crate::describe::{CalculationError, Given, Input, Output};

/// The least quench commonly run with steel rods. Common practice.
pub const STEEL_RODS_LEAST: f64 = 0.035 * INCH;
/// The greatest quench that still quenches, with steel rods. Common practice.
pub const STEEL_RODS_MOST: f64 = 0.045 * INCH;
/// The very least with steel rods, for tight racing engines. Common practice.
pub const STEEL_RODS_ABSOLUTE_LEAST: f64 = 0.030 * INCH;
/// The very least with alloy rods. Common practice.
pub const ALLOY_RODS_ABSOLUTE_LEAST: f64 = 0.050 * INCH;
/// The least quench commonly run with alloy rods. Common practice.
pub const ALLOY_RODS_LEAST: f64 = 0.055 * INCH;
/// The greatest quench commonly run with alloy rods. Common practice.
pub const ALLOY_RODS_MOST: f64 = 0.065 * INCH;

/// Height of the block from crank line to deck.
pub static BLOCK_HEIGHT: Input = Input::size(
    "block-height",
    "block height, crank line to deck",
    (0.05, 1.5),
    "From the shop that decked the block, or measured from the main bore with half the bore added.",
);
/// Stroke.
pub static STROKE: Input = Input::size(
    "stroke",
    "stroke",
    (0.02, 0.6),
    "From the sheet, or the difference of the piston's height between top and bottom, read over the pin.",
);
/// Rod length.
pub static ROD_LENGTH: Input = Input::size(
    "rod-length",
    "rod length, centre to centre",
    (0.04, 1.2),
    "Gap between the two bores plus half of each bore.",
);
/// Compression height of the piston.
pub static COMPRESSION_HEIGHT: Input = Input::size(
    "compression-height",
    "compression height, pin centre to crown",
    (0.01, 0.3),
    "From the top of the pin bore to the flat of the crown plus half the pin bore.",
);
/// The gasket under its bolts.
pub static GASKET_COMPRESSED: Input = Input::gap(
    "gasket-compressed",
    "head gasket, compressed",
    (0.0, 0.008),
    "What the gasket's maker gives for a torqued head, or a gasket of the same kind measured after use; not the free thickness out of the packet.",
);
/// The gasket out of the packet.
pub static GASKET_FREE: Input = Input::gap(
    "gasket-free",
    "head gasket, free",
    (0.0, 0.01),
    "As it comes out of the packet; only to check that the compressed thickness is not this one.",
)
.optional();
/// Deck clearance as measured.
pub static DECK_MEASURED: Input = Input::gap(
    "deck-clearance",
    "deck clearance (in the hole +, out of the block −)",
    (-0.01, 0.05),
    "Zero a bridge on the deck, swing the piston through the top, read over the pin and take the highest; off the pin, take the mean of thrust and other side.",
);
pub(super) static DECK: Output = Output::gap(
    "deck-clearance-calculated",
    "deck clearance (in the hole +)",
);
pub(super) static QUENCH_GAP: Output = Output::gap("quench", "quench, piston to head");

/// Deck clearance from the sizes of the parts.
pub static DECK_CLEARANCE: Stack = Stack {
    id: "deck-clearance",
    title: "Deck clearance",
    terms: &[
        Term::needed(&BLOCK_HEIGHT),
        Term::needed(&STROKE),
        Term::needed(&ROD_LENGTH),
        Term::needed(&COMPRESSION_HEIGHT),
    ],
    result: &DECK,
    formula: Formula::Sum(&[1.0, -0.5, -1.0, -1.0]),
    proof: "A bridge and an indicator over the pin at true top dead centre, at the four corners of the block.",
};

/// Quench from the sizes of the parts.
pub static QUENCH: Stack = Stack {
    id: "quench",
    title: "Quench",
    terms: &[
        Term::needed(&BLOCK_HEIGHT),
        Term::needed(&STROKE),
        Term::needed(&ROD_LENGTH),
        Term::needed(&COMPRESSION_HEIGHT),
        Term::needed(&GASKET_COMPRESSED),
    ],
    result: &QUENCH_GAP,
    formula: Formula::Sum(&[1.0, -0.5, -1.0, -1.0, 1.0]),
    proof: PROOF,
};

/// Quench over a deck clearance that was measured.
pub static QUENCH_OVER_DECK: Stack = Stack {
    id: "quench-over-deck",
    title: "Quench from the measured deck clearance",
    terms: &[
        Term::needed(&DECK_MEASURED),
        Term::needed(&GASKET_COMPRESSED),
    ],
    result: &QUENCH_GAP,
    formula: Formula::Sum(&[1.0, 1.0]),
    proof: PROOF,
};

const PROOF: &str = "Soft solder or clay on the crown, over the pin on both sides, the head on with its real gasket and full torque, once through the top, and the solder measured.";

/// A gasket under its bolts is thinner than out of the packet.
pub(super) fn gasket_is_compressed(given: &Given) -> Result<(), CalculationError> {
    let (Some(compressed), Some(free)) = (
        given.optional(GASKET_COMPRESSED.id),
        given.optional(GASKET_FREE.id),
    ) else {
        return Ok(());
    };
    if compressed.value() >= free.value() && free.value() > 0.0 {
        return Err(CalculationError::not_possible(
            &GASKET_COMPRESSED,
            "it is not thinner than the free gasket. Use the thickness under torqued bolts from the gasket's sheet, or measure a used one.",
        ));
    }
    Ok(())
}
