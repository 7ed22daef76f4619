//! Machine work: what was wanted, what the shop wrote, what was measured at home.

use std::sync::Arc;

use assembly_core::measure::Assessment;
use build_plan::{At, Measure};

use super::bought::{Returned, ShopWork, WorkLine};
use super::build::Build;
use super::conflicts::APART;

/// One number of machine work at one part.
#[derive(Clone, PartialEq, Debug)]
pub struct SideBySide<'a> {
    /// The measure.
    pub measure: &'static Measure,
    /// The part.
    pub at: At,
    /// What was wanted.
    pub line: &'a WorkLine,
    /// The numbers that the shop gave back for this part.
    pub returned: Vec<&'a Returned>,
    /// How the readings taken since it was ordered stand against what was
    /// wanted, with the errors of their tool; nothing when there are none.
    pub own: Option<Assessment>,
    /// Whether the shop and the readings at home contradict each other: a number
    /// that came back lies further off than twice their give-or-take. Nothing
    /// when there is nothing to compare.
    pub apart: Option<bool>,
}

impl Build {
    /// Every number that was wanted, part by part: wanted, received, measured.
    #[must_use]
    pub fn side_by_side<'a>(&self, work: &'a ShopWork) -> Vec<SideBySide<'a>> {
        let Some(engine) = self.engine.as_ref().map(|one| &one.engine) else {
            return Vec::new();
        };
        let mut rows: Vec<SideBySide<'a>> = Vec::new();
        for line in &work.lines {
            let Some(measure) = line.measure else {
                continue;
            };
            let only = line.wanted.place().map(|place| place.at);
            let own_line = |at: At| {
                let of = |other: &WorkLine| other.wanted.place().map(|place| place.at);
                let mut lines = work.lines.iter();
                lines.any(|other| other.measure == line.measure && of(other) == Some(at))
            };
            for at in measure.spots.per.parts(engine) {
                let meant = match only {
                    Some(only) => only == at,
                    // A part that has a line of its own is not asked for twice.
                    None => line.wanted.set.place.is_none() && !own_line(at),
                };
                if !meant {
                    continue;
                }
                let here = |one: &&Returned| one.place().is_some_and(|place| place.at == at);
                let returned: Vec<&Returned> = line.returned.iter().filter(here).collect();
                let own = self.own_assessment(measure, at, line);
                rows.push(SideBySide {
                    measure,
                    at,
                    line,
                    apart: (own.is_some())
                        .then(|| self.is_apart(measure, at, &returned))
                        .flatten(),
                    returned,
                    own,
                });
            }
        }
        rows.sort_unstable_by_key(|row| (row.measure.id, row.at));
        rows
    }

    fn own_assessment(
        &self,
        measure: &'static Measure,
        at: At,
        line: &WorkLine,
    ) -> Option<Assessment> {
        let window = line.wanted.window.as_ref().ok()?;
        // What is worked out, as a taper is, goes by the readings behind it.
        let of = |measure: &Measure| self.latest.get(&(measure.id, at));
        let behind = measure.sources();
        let latest = of(measure)
            .into_iter()
            .chain(behind.into_iter().filter_map(of));
        let latest = latest.max()?;
        if *latest < line.wanted.fact || self.doubted.contains_key(latest) {
            return None;
        }
        let fit = self.fit(measure, at)?;
        let (least, greatest) = fit.extent.as_ref()?;
        Some(Assessment::judged(
            (least.estimate(), greatest.estimate()),
            window,
            measure.dangerous,
            &Arc::clone(&fit.sources),
        ))
    }

    /// Whether a number of the shop's lies outside of what was measured at home
    /// by more than twice the give-or-take of that. The shop's own is not known.
    fn is_apart(&self, measure: &Measure, at: At, returned: &[&Returned]) -> Option<bool> {
        let (least, greatest) = self.fit(measure, at)?.extent.as_ref()?;
        let (least, greatest) = (least.estimate(), greatest.estimate());
        let low = least.value() - APART * least.deviation();
        let high = greatest.value() + APART * greatest.deviation();
        let mut read = (returned.iter()).filter_map(|one| Some(one.value.as_ref().ok()?.si()));
        let first = read.next()?;
        Some(
            std::iter::once(first)
                .chain(read)
                .any(|one| one < low || one > high),
        )
    }
}
