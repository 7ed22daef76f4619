//! Units by symbol, remembered: a build names a handful, thousands of times.

use assembly_core::quantity::{Kind, Unit, unit_of};

/// The units that were asked for.
#[derive(Clone, Debug, Default)]
pub(super) struct Units(Vec<(Kind, String, Option<&'static Unit>)>);

/// No build names more; a forged file does not fill the memory.
const REMEMBERED: usize = 64;

impl Units {
    /// The unit of this kind with this symbol.
    pub(super) fn find(&mut self, kind: Kind, symbol: &str) -> Option<&'static Unit> {
        let known = self
            .0
            .iter()
            .find(|(of, name, _)| *of == kind && name == symbol);
        if let Some((_, _, unit)) = known {
            return *unit;
        }
        let unit = unit_of(kind, symbol);
        if self.0.len() < REMEMBERED {
            self.0.push((kind, symbol.to_owned(), unit));
        }
        unit
    }
}

/// What is remembered does not make two states differ.
impl PartialEq for Units {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}
