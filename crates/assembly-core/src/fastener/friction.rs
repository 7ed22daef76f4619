//! Nut factors and friction classes as books print them. They differ from book
//! to book, so each stands with its source, and none is a default.

/// A nut factor: torque = nut factor × diameter × preload.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct NutFactor {
    /// The state of bolt and nut.
    pub condition: &'static str,
    /// The factor.
    pub factor: f64,
    /// Who prints it.
    pub source: &'static str,
}

/// The handbook of Budynas and Nisbett, Mechanical Engineering Design, table 8-15.
pub const DESIGN: &str = "Shigley";
/// J. H. Bickford and S. Nassar (eds), Handbook of Bolts and Bolted Joints, chapter 2, table 1.
pub const BOLTED_JOINTS: &str = "Bickford & Nassar";

const fn design(condition: &'static str, factor: f64) -> NutFactor {
    NutFactor {
        condition,
        factor,
        source: DESIGN,
    }
}

const fn joints(condition: &'static str, factor: f64) -> NutFactor {
    NutFactor {
        condition,
        factor,
        source: BOLTED_JOINTS,
    }
}

/// The factors that the two books print; the second book's rows beyond bare
/// steel, dry cadmium and dry zinc are from memory.
pub static NUT_FACTORS: &[NutFactor] = &[
    design("nonplated, black finish", 0.30),
    design("zinc-plated", 0.20),
    design("lubricated", 0.18),
    design("cadmium-plated", 0.16),
    design("with anti-seize compound", 0.12),
    design("with gripping nuts", 0.09),
    joints("bare steel", 0.20),
    joints("black oxide", 0.179),
    joints("Cd plate, dry", 0.20),
    joints("Cd plate, waxed", 0.187),
    joints("copper anti-seize", 0.132),
    joints("moly paste", 0.13),
    joints("Zn plate, dry", 0.295),
    joints("Zn plate, waxed", 0.288),
];

/// The nut factor of a condition in a book.
#[must_use]
pub fn nut_factor(source: &str, condition: &str) -> Option<f64> {
    NUT_FACTORS
        .iter()
        .find(|one| one.source == source && one.condition == condition)
        .map(|one| one.factor)
}

/// A friction class of VDI 2230 part 1: the coefficients of thread and head.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct FrictionClass {
    /// Its letter.
    pub letter: &'static str,
    /// The least coefficient.
    pub least: f64,
    /// The greatest; `None` when the class is open upward.
    pub greatest: Option<f64>,
    /// What surfaces and lubricants it is of.
    pub what: &'static str,
}

const fn class(
    letter: &'static str,
    least: f64,
    greatest: Option<f64>,
    what: &'static str,
) -> FrictionClass {
    FrictionClass {
        letter,
        least,
        greatest,
        what,
    }
}

/// VDI 2230 part 1 (2003 and 2015), table A5; A and E from memory.
pub static FRICTION_CLASSES: &[FrictionClass] = &[
    class(
        "A",
        0.04,
        Some(0.10),
        "solid lubricants, waxes and pastes on plated threads",
    ),
    class(
        "B",
        0.08,
        Some(0.16),
        "grease, oil, wax on ordinary threads",
    ),
    class("C", 0.14, Some(0.24), "as delivered with a film of oil"),
    class(
        "D",
        0.20,
        Some(0.35),
        "dry, hot-dip galvanised, or stainless with oil",
    ),
    class("E", 0.30, None, "dry stainless, aluminium"),
];

/// The class with this letter.
#[must_use]
pub fn friction_class(letter: &str) -> Option<&'static FrictionClass> {
    FRICTION_CLASSES.iter().find(|one| one.letter == letter)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_books_do_not_agree_and_are_kept_apart() {
        let zinc = (
            nut_factor(DESIGN, "zinc-plated"),
            nut_factor(BOLTED_JOINTS, "Zn plate, dry"),
        );
        assert_eq!(zinc, (Some(0.20), Some(0.295)));
        assert_eq!(nut_factor(BOLTED_JOINTS, "zinc-plated"), None);
    }

    #[test]
    fn the_classes_rise_and_overlap() {
        for pair in FRICTION_CLASSES.windows(2) {
            assert!(pair[0].least < pair[1].least);
            assert!(pair[0].greatest.unwrap() > pair[1].least);
        }
    }
}
