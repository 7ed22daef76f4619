//! Places that a result does without: the plan asks for a reading there, and there
//! is none that counts. A verdict may rest on the others, as long as it says so.

use std::collections::BTreeSet;
use std::fmt;

use build_plan::measure::{
    MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE, ROD_BEARING_BORE,
    ROD_JOURNAL_DIAMETER, ROD_OIL_CLEARANCE,
};
use build_plan::{At, Measure, Place};

use super::build::Build;
use super::readings::Taken;

/// The places of one part that a result does without.
#[derive(Clone, PartialEq, Debug)]
pub struct LeftOut {
    /// What was not read there.
    pub measure: &'static Measure,
    /// The places without a reading that counts, in the order they are measured.
    pub places: Vec<Place>,
    /// How many places the plan asks for.
    pub of: usize,
}

impl fmt::Display for LeftOut {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let places: Vec<String> = self.places.iter().map(Place::to_string).collect();
        let (count, are) = match places.len() {
            1 => ("One".to_owned(), "is"),
            more => (more.to_string(), "are"),
        };
        write!(
            f,
            "{count} of the {} places of the {} {are} not measured: {}.",
            self.of,
            self.measure.label,
            places.join("; ")
        )
    }
}

impl Build {
    /// The places that a result does without, measure by measure of those that it
    /// goes by; none when all were read. A part that was not measured at all is no
    /// such place: what goes by it has no number, or is worked out without it.
    #[must_use]
    pub fn left_out(&self, measure: &'static Measure, at: At) -> Vec<LeftOut> {
        let behind = self.goes_by(measure, at).into_iter();
        behind
            .filter_map(|(source, part)| self.left_out_of(source, part))
            .collect()
    }

    /// What is read for a result, and at which parts.
    fn goes_by(&self, measure: &'static Measure, at: At) -> Vec<(&'static Measure, At)> {
        match at {
            At::Main(number) if measure.id == MAIN_OIL_CLEARANCE.id => {
                let main = self.mains.iter().find(|one| one.main.number() == number);
                match main {
                    Some(main) if main.by_size.is_some() => {
                        vec![(&MAIN_BEARING_BORE, at), (&MAIN_JOURNAL_DIAMETER, at)]
                    }
                    // At once, a strip is read where it is widest.
                    _ => Vec::new(),
                }
            }
            At::Rod(cylinder) if measure.id == ROD_OIL_CLEARANCE.id => {
                let rod = self.rods.iter().find(|one| one.cylinder == cylinder);
                match rod {
                    Some(rod) if rod.fit.by_size.is_some() => vec![
                        (&ROD_BEARING_BORE, at),
                        (&ROD_JOURNAL_DIAMETER, At::Crankpin(rod.crankpin)),
                    ],
                    _ => Vec::new(),
                }
            }
            _ if self.readings.any(measure, at) => vec![(measure, at)],
            _ => {
                let Some(engine) = self.engine.as_ref().map(|one| &one.engine) else {
                    return Vec::new();
                };
                let sources = measure.sources().into_iter();
                let parts = sources.flat_map(|source| {
                    let parts = source.spots.per.parts(engine).into_iter();
                    parts.map(move |part| (source, part))
                });
                parts
                    .filter(|(_, part)| part.concerns(at, engine))
                    .collect()
            }
        }
    }

    fn left_out_of(&self, measure: &'static Measure, at: At) -> Option<LeftOut> {
        let counting = |taken: &&Taken| taken.counting().is_some();
        let read: BTreeSet<Place> = (self.readings.of(measure, at))
            .filter(counting)
            .filter_map(|taken| taken.place)
            .collect();
        let asked = measure.spots.on(at);
        let of = asked.len();
        let places: Vec<Place> = asked
            .into_iter()
            .filter(|place| !read.contains(place))
            .collect();
        (!read.is_empty() && !places.is_empty()).then_some(LeftOut {
            measure,
            places,
            of,
        })
    }
}
