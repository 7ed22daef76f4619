//! Compression and leak-down are measures of the plan, too: what is written down
//! beside the engine proves them, and one reading is the truth for both.

use build_plan::measure::{COMPRESSION_PRESSURE, LEAK_DOWN};
use build_plan::{At, Place};

use super::book::OilBook;
use super::number::Number;
use crate::fact::{Body, BoreState, Fact, LeakDownRead, Reading, Said, Spot};
use crate::id::FactId;
use assembly_core::quantity::Kind;

/// What a fact of the oil is as a reading of the plan; `None` when it is none.
///
/// Compression with oil on the piston is a test of its own and proves nothing.
pub(in super::super) fn as_reading(fact: &Fact) -> Option<Reading> {
    match fact.body() {
        Body::CompressionRead(made) if made.state == BoreState::Dry => {
            reading(COMPRESSION_PRESSURE.id, &made.place, made.pressure.clone())
        }
        Body::LeakDownRead(made) => reading(LEAK_DOWN.id, &made.place, leak(made)?),
        _ => None,
    }
}

fn reading(measure: &str, place: &Spot, said: Said) -> Option<Reading> {
    let known = matches!(
        place.place(),
        Some(Place {
            at: At::Cylinder(_),
            ..
        })
    );
    known.then(|| Reading {
        measure: measure.to_owned(),
        place: place.clone(),
        typed: said.typed,
        unit: said.unit,
        tool: None,
        setting: None,
        temperature: None,
        condition: None,
        keyed: None,
    })
}

/// The leak as a part of the supply, to a tenth of a per cent: finer than any
/// gauge.
fn leak(made: &LeakDownRead) -> Option<Said> {
    let si = |said: &Said| Number::of(said, Kind::Pressure).0.si();
    let (supply, held) = (si(&made.supply)?, si(&made.held)?);
    let possible = supply > 0.0 && (0.0..=supply).contains(&held);
    possible.then(|| Said {
        typed: format!("{:.1}", 100.0 * (1.0 - held / supply)),
        unit: "%".to_owned(),
    })
}

impl OilBook {
    /// Whether a fact is a reading of the plan that was written down here.
    pub(in super::super) fn has_read(&self, fact: FactId) -> bool {
        let compression = self.compression.iter().any(|one| one.fact == fact);
        compression || self.leak_downs.iter().any(|one| one.fact == fact)
    }
}
