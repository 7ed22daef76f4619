//! Units by symbol and measures by id, remembered: a build names a handful,
//! thousands of times.

use assembly_core::quantity::{Kind, Unit, unit_of};
use build_plan::Measure;
use rustc_hash::FxHashMap;

use super::plan::Plan;

/// The units that were asked for.
#[derive(Clone, Debug, Default)]
pub(super) struct Units {
    units: Vec<(Kind, String, Option<&'static Unit>)>,
    /// The measure that was read last: the next reading mostly is one of it, too.
    /// What the builder defines anew is taken in by starting over.
    last: Option<&'static Measure>,
    measures: FxHashMap<&'static str, &'static Measure>,
}

/// No build names more; a forged file does not fill the memory.
const REMEMBERED: usize = 64;

impl Units {
    /// The unit of this kind with this symbol.
    pub(super) fn find(&mut self, kind: Kind, symbol: &str) -> Option<&'static Unit> {
        let known = self
            .units
            .iter()
            .find(|(of, name, _)| *of == kind && name == symbol);
        if let Some((_, _, unit)) = known {
            return *unit;
        }
        let unit = unit_of(kind, symbol);
        if self.units.len() < REMEMBERED {
            self.units.push((kind, symbol.to_owned(), unit));
        }
        unit
    }

    /// The measure with this id.
    pub(super) fn measure(&mut self, id: &str, plan: &Plan) -> Option<&'static Measure> {
        if self.last.is_none_or(|last| last.id != id) {
            let known = self.measures.get(id).copied();
            self.last = known.or_else(|| plan.measure(id));
            if let (None, Some(found)) = (known, self.last) {
                self.measures.insert(found.id, found);
            }
        }
        self.last
    }
}

/// What is remembered does not make two states differ.
impl PartialEq for Units {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}
