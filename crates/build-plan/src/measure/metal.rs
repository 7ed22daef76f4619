//! What metal a measured part is of, where two metals meet in a fit.

use assembly_core::temperature::{BenchMetal, bench_metal};

use super::{BORE, MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE, Measure};
use super::{PISTON_DIAMETER, PISTON_TO_WALL};
use crate::engine::{Casting, Engine, Liners};

/// The outer part of a fit and the inner one, each by the measure of its size.
pub type Pair = (&'static Measure, &'static Measure);

impl Measure {
    /// The metal of the part that this is a size of, as far as the engine's
    /// description tells it. A shell follows the housing that it is pressed into; a
    /// crank of iron grows almost like one of steel; a piston is taken for a forged
    /// one (common practice: a cast one grows somewhat less).
    #[must_use]
    pub fn metal(&self, engine: &Engine) -> Option<&'static BenchMetal> {
        let built = engine.construction();
        let of_block = match built.block {
            Casting::Iron => "grey-iron",
            Casting::Alloy => "cast-aluminium",
        };
        let id = if self.id == MAIN_JOURNAL_DIAMETER.id {
            "steel"
        } else if self.id == MAIN_BEARING_BORE.id {
            of_block
        } else if self.id == BORE.id {
            match built.liners {
                Liners::ParentBore => of_block,
                Liners::CastInAlloy => "cast-aluminium",
                _ => "grey-iron",
            }
        } else if self.id == PISTON_DIAMETER.id {
            "forged-piston"
        } else {
            return None;
        };
        bench_metal(id)
    }

    /// The sizes of the two parts that this fit is the difference of, when they are
    /// of two metals that heat may part.
    #[must_use]
    pub fn two_metals(&self) -> Option<Pair> {
        if self.id == MAIN_OIL_CLEARANCE.id {
            Some((&MAIN_BEARING_BORE, &MAIN_JOURNAL_DIAMETER))
        } else if self.id == PISTON_TO_WALL.id {
            Some((&BORE, &PISTON_DIAMETER))
        } else {
            None
        }
    }
}
