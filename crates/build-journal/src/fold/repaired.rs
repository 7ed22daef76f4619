//! Parts repaired to another size than the sheet's standard: what sizes there
//! are, and the limits of such a part.

use assembly_core::quantity::Typed;
use assembly_core::typing_sense::{Expectation, Sizes, Slip};
use build_plan::{At, Measure, Place};

use super::build::Build;
use super::limits::Limits;
use crate::fact::{LimitsSet, SizedPart, Spot};
use crate::id::FactId;

/// How far an ordinary part, new or worn, lies from the middle of the sheet's
/// standard size, one standard deviation: a thou and a half. An estimate of the
/// trade (common practice, no source).
const WORN: f64 = 38e-6;

/// Both limits of a sheet's standard size, as typed.
fn both(limits: &Limits) -> Option<(&Typed, &Typed)> {
    limits.window.as_ref().ok()?;
    Some((limits.low.as_ref()?, limits.high.as_ref()?))
}

impl Build {
    /// Whether a measure is of a part that is made in repair sizes, and in which: as
    /// the sheet lists them, else as is common.
    fn repair_sizes(&self, measure: &Measure, of: &Typed) -> Sizes {
        let Some(part) = SizedPart::of_measure(measure) else {
            return Sizes::Standard;
        };
        let sign = match part {
            SizedPart::MainJournals | SizedPart::RodJournals => -1.0,
            SizedPart::Bores => 1.0,
            SizedPart::MainShells | SizedPart::RodShells => return Sizes::Standard,
        };
        if let Some(listed) = self.sizes_of(part) {
            let steps = listed.sizes.iter().map(|size| sign * size.si());
            return Sizes::Listed(steps.collect());
        }
        let inch = matches!(of.unit().symbol, "in" | "thou" | "tenths" | "µin" | "ft");
        match (sign < 0.0, inch) {
            (true, true) => Sizes::InchUndersizes,
            (true, false) => Sizes::MetricUndersizes,
            (false, true) => Sizes::InchOversizes,
            (false, false) => Sizes::MetricOversizes,
        }
    }

    /// Adds to what is expected of a reading what the sheet says of the part's
    /// standard size, when it has limits for it.
    pub(super) fn expect_standard(
        &self,
        measure: &'static Measure,
        at: At,
        expected: &mut Expectation,
    ) {
        let limits = self.limits_of(measure, at);
        let Some((low, high)) = limits.first().and_then(both) else {
            return;
        };
        let half = (high.si() - low.si()) / 2.0;
        expected.nominal = Some(low.si() + half);
        expected.part_spread = WORN.hypot(half);
        expected.sizes = self.repair_sizes(measure, low);
    }

    /// The limits of a part that was repaired to another size, when a reading of it
    /// raises that question: the sheet's, moved by the step, for this part alone.
    #[must_use]
    pub fn limits_when_repaired(&self, fact: FactId) -> Option<LimitsSet> {
        let step = self.questions_of(fact).into_iter().find_map(|question| {
            let Slip::OtherSize { step } = question.slip else {
                return None;
            };
            Some(step)
        })?;
        let taken = self.reading(fact)?;
        let (measure, at) = (taken.measure?, taken.place?.at);
        let limits = self.limits_of(measure, at);
        let sheet = limits.first()?;
        let (low, high) = both(sheet)?;
        let unit = low.unit();
        let moved = |limit: &Typed| {
            let number = unit.from_si(limit.si() + step);
            let digits = digits_for(unit.step_from_si(step)).max(decimals(limit));
            format!("{number:.digits$}")
        };
        let side = if step < 0.0 { "under" } else { "over" };
        let by = unit.step_from_si(step.abs());
        let digits = digits_for(by);
        let own: Vec<FactId> = limits
            .iter()
            .filter(|one| one.set.place.is_some())
            .map(|one| one.fact)
            .collect();
        Some(LimitsSet {
            measure: measure.id.to_owned(),
            place: Some(Spot::Known(Place::of(at))),
            low: Some(moved(low)),
            high: Some(moved(high)),
            unit: unit.symbol.to_owned(),
            origin: sheet.set.origin,
            origin_note: format!(
                "{}; repaired to {by:.digits$} {} {side}size",
                sheet.set.origin_note, unit.symbol
            ),
            replaces: own,
        })
    }
}

/// As many decimals as a step needs to be written whole.
fn digits_for(step: f64) -> usize {
    (0..6_i32)
        .find(|digits| {
            let whole = step * 10_f64.powi(*digits);
            (whole - whole.round()).abs() < 1e-6
        })
        .and_then(|digits| usize::try_from(digits).ok())
        .unwrap_or(6)
}

fn decimals(typed: &Typed) -> usize {
    typed
        .number()
        .split_once('.')
        .map_or(0, |(_, part)| part.len())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fact::samples::{Pen, reading, sprayer};
    use crate::fact::{Body, LimitsOrigin, SizesListed, Struck};
    use crate::fold::fold;
    use crate::id::BuildId;
    use crate::journal::Journal;
    use build_plan::measure::MAIN_JOURNAL_DIAMETER;
    use build_plan::{Direction, Station};

    struct Book(Pen, Journal);

    impl Book {
        fn with_sheet(low: &str, high: &str, unit: &str) -> Self {
            let mut book = Self(Pen::new(1), Journal::new(BuildId::from_random(7)));
            book.write(sprayer());
            book.write(Body::LimitsSet(LimitsSet {
                measure: MAIN_JOURNAL_DIAMETER.id.to_owned(),
                place: None,
                low: Some(low.to_owned()),
                high: Some(high.to_owned()),
                unit: unit.to_owned(),
                origin: LimitsOrigin::Sheet,
                origin_note: "page 4".to_owned(),
                replaces: Vec::new(),
            }));
            book
        }

        fn write(&mut self, body: Body) -> FactId {
            let fact = self.0.write(body);
            let id = fact.id();
            self.1.take(fact);
            id
        }

        fn journal(&mut self, main: u8, typed: &str) -> FactId {
            let place = Place::main(main)
                .station(Station::Front)
                .direction(Direction::UpAndDown);
            self.write(reading(MAIN_JOURNAL_DIAMETER.id, place, typed))
        }

        fn build(&self) -> Build {
            fold(&self.1)
        }
    }

    #[test]
    fn a_journal_ten_under_is_asked_about_and_gets_limits_of_its_own() {
        let mut book = Book::with_sheet("2.4480", "2.4490", "in");
        let under = book.journal(2, "2.4384");
        let build = book.build();
        let asked = build.questions_of(under);
        assert_eq!(asked[0].slip, Slip::OtherSize { step: -0.000_254 });
        assert!(asked[0].to_string().contains("0.010 in undersize"));
        let limits = build.limits_when_repaired(under).unwrap();
        assert_eq!(limits.low.as_deref(), Some("2.4380"));
        assert_eq!(limits.high.as_deref(), Some("2.4390"));
        assert_eq!(limits.origin_note, "page 4; repaired to 0.01 in undersize");
        book.write(Body::LimitsSet(limits));
        let build = book.build();
        assert_eq!(build.questions_of(under), [], "it was answered");
        assert_eq!(
            build.limits_of(&MAIN_JOURNAL_DIAMETER, At::Main(2)).len(),
            1
        );
        let mut other = Book::with_sheet("2.4480", "2.4490", "in");
        let ordinary = other.journal(1, "2.4483");
        assert_eq!(other.build().questions_of(ordinary), []);
        // The others go by the sheet as before.
        assert_eq!(
            build.limits_of(&MAIN_JOURNAL_DIAMETER, At::Main(1)).len(),
            1
        );
        assert!(build.problems.is_empty());
    }

    #[test]
    fn the_sizes_that_the_sheet_lists_are_asked_about_and_no_others() {
        let mut book = Book::with_sheet("2.4480", "2.4490", "in");
        let common = book.journal(2, "2.4384");
        assert!(book.build().limits_when_repaired(common).is_some());
        book.write(Body::SizesListed(SizesListed {
            of: SizedPart::MainJournals,
            sizes: SizesListed::split("0.016; 0.032"),
            unit: "in".to_owned(),
            origin: LimitsOrigin::Sheet,
            origin_note: "page 4".to_owned(),
        }));
        let build = book.build();
        assert_eq!(build.limits_when_repaired(common), None);
        book.write(Body::Struck(Struck {
            fact: common,
            reason: None,
        }));
        let listed = book.journal(3, "2.4324");
        let build = book.build();
        let asked = build.questions_of(listed);
        assert!(
            asked[0].to_string().contains("0.016 in undersize"),
            "{}",
            asked[0]
        );
        let limits = build.limits_when_repaired(listed).unwrap();
        assert_eq!(limits.low.as_deref(), Some("2.4320"));
        assert_eq!(limits.high.as_deref(), Some("2.4330"));
    }

    #[test]
    fn a_metric_sheet_has_metric_sizes() {
        let mut book = Book::with_sheet("62,18", "62,20", "mm");
        let under = book.journal(1, "61.94 mm");
        let limits = book.build().limits_when_repaired(under).unwrap();
        assert_eq!(limits.low.as_deref(), Some("61.93"));
        assert_eq!(limits.high.as_deref(), Some("61.95"));
        assert!(limits.origin_note.ends_with("0.25 mm undersize"));
    }

    #[test]
    fn without_a_sheet_or_with_one_limit_nothing_is_asked() {
        let mut book = Book::with_sheet("2.4480", "", "in");
        let under = book.journal(1, "2.4384");
        assert_eq!(book.build().limits_when_repaired(under), None);
    }
}
