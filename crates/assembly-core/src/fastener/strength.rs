//! What a bolt's mark says of its strength.

/// What a standard prints its stresses in.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Printed {
    /// Thousand pounds a square inch.
    KilopoundsPerSquareInch,
    /// Newtons a square millimetre.
    Megapascals,
}

/// A row of a strength table, with its stresses as the standard prints them.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Strength {
    /// The mark, as the standard writes it.
    pub mark: &'static str,
    /// The standard.
    pub standard: &'static str,
    /// The least and the greatest thread diameter that it holds for, metres.
    pub diameters: (f64, f64),
    /// What the stresses are printed in.
    pub printed_in: Printed,
    /// Proof stress as printed.
    pub proof: f64,
    /// Least yield stress as printed.
    pub yields: f64,
    /// Least tensile stress as printed.
    pub tensile: f64,
}

impl Strength {
    /// A stress of this row in pascals.
    #[must_use]
    pub fn pascals(&self, printed: f64) -> f64 {
        match self.printed_in {
            Printed::KilopoundsPerSquareInch => printed * KSI,
            Printed::Megapascals => printed * 1e6,
        }
    }
}

const INCH: f64 = 0.0254;
/// A thousand pounds a square inch: 0.45359237 kg × 9.80665 m/s² ÷ (25.4 mm)².
const KSI: f64 = 6_894_757.293_168_361;

const fn inch(
    mark: &'static str,
    (from, to): (f64, f64),
    (proof, yields, tensile): (f64, f64, f64),
) -> Strength {
    Strength {
        mark,
        standard: "SAE J429",
        diameters: (from * INCH, to * INCH),
        printed_in: Printed::KilopoundsPerSquareInch,
        proof,
        yields,
        tensile,
    }
}

const fn metric(
    mark: &'static str,
    (over, to): (f64, f64),
    (proof, yields, tensile): (f64, f64, f64),
) -> Strength {
    Strength {
        mark,
        standard: "ISO 898-1",
        diameters: (over * 1e-3, to * 1e-3),
        printed_in: Printed::Megapascals,
        proof,
        yields,
        tensile,
    }
}

/// SAE J429 (as tabulated in mechanical engineering handbooks) and ISO 898-1:2013,
/// tables 3 and 5; from memory where the reference tables do not have the row.
#[rustfmt::skip]
pub static STRENGTHS: &[Strength] = &[
    inch("1", (0.25, 1.5), (33.0, 36.0, 60.0)),
    inch("2", (0.25, 0.75), (55.0, 57.0, 74.0)),
    inch("2", (0.75, 1.5), (33.0, 36.0, 60.0)),
    inch("4", (0.25, 1.5), (65.0, 100.0, 115.0)),
    inch("5", (0.25, 1.0), (85.0, 92.0, 120.0)),
    inch("5", (1.0, 1.5), (74.0, 81.0, 105.0)),
    inch("5.2", (0.25, 1.0), (85.0, 92.0, 120.0)),
    inch("7", (0.25, 1.5), (105.0, 115.0, 133.0)),
    inch("8", (0.25, 1.5), (120.0, 130.0, 150.0)),
    inch("8.2", (0.25, 1.0), (120.0, 130.0, 150.0)),
    metric("4.6", (1.6, 39.0), (225.0, 240.0, 400.0)),
    metric("4.8", (1.6, 16.0), (310.0, 340.0, 420.0)),
    metric("5.6", (1.6, 39.0), (280.0, 300.0, 500.0)),
    metric("5.8", (1.6, 24.0), (380.0, 420.0, 520.0)),
    metric("6.8", (1.6, 39.0), (440.0, 480.0, 600.0)),
    metric("8.8", (1.6, 16.0), (580.0, 640.0, 800.0)),
    metric("8.8", (16.0, 39.0), (600.0, 660.0, 830.0)),
    metric("9.8", (1.6, 16.0), (650.0, 720.0, 900.0)),
    metric("10.9", (1.6, 39.0), (830.0, 940.0, 1040.0)),
    metric("12.9", (1.6, 39.0), (970.0, 1100.0, 1220.0)),
];

/// Two sizes that were typed alike are alike.
const ALIKE: f64 = 1e-7;

/// The strength of a mark at a thread diameter, metres; `None` when the
/// standard does not know such a bolt. Where two rows meet, the size itself
/// belongs to the smaller ones.
#[must_use]
pub fn strength(standard: &str, mark: &str, diameter: f64) -> Option<&'static Strength> {
    STRENGTHS.iter().find(|row| {
        row.standard == standard
            && row.mark == mark
            && diameter >= row.diameters.0 - ALIKE
            && diameter <= row.diameters.1 + ALIKE
    })
}

/// What share of the proof load a bolt that will come off again is usually
/// tightened to (mechanical engineering handbooks).
pub const REUSED: f64 = 0.75;
/// What share of the proof load a bolt that stays is usually tightened to.
pub const PERMANENT: f64 = 0.90;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_bolt_holds_its_proof_below_its_yield_and_that_below_breaking() {
        for row in STRENGTHS {
            assert!(
                row.proof < row.yields && row.yields < row.tensile,
                "{row:?}"
            );
            assert!(row.diameters.0 < row.diameters.1);
        }
    }

    #[test]
    fn a_size_at_a_step_belongs_to_the_smaller_ones() {
        let proof = |mm: f64| strength("ISO 898-1", "8.8", mm * 1e-3).unwrap().proof;
        assert!((proof(16.0) - 580.0).abs() < 1e-9 && (proof(18.0) - 600.0).abs() < 1e-9);
        assert!(strength("ISO 898-1", "9.8", 0.020).is_none());
        assert!(strength("ISO 898-1", "5", 0.010).is_none());
    }
}
