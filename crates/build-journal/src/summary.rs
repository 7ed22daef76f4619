//! A build in a few lines, for the list of builds.

use build_plan::step::Step;

use crate::bundle::photos;
use crate::fact::Fact;
use crate::fold::Build;
use crate::id::FactId;
use crate::journal::Journal;

const HOUR: i64 = 60 * 60 * 1000;
/// A sitting is over when nothing was written for so long. Ours.
const SITTING_OVER: i64 = HOUR;
/// So many facts are too many to lose, whatever the clock says. Ours.
const MANY: usize = 50;

/// When a build was exported last from this device, as the device noted it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct LastExport {
    /// The moment, in milliseconds since 1970.
    pub at: i64,
    /// How many facts were in it.
    pub facts: usize,
}

/// A build in a few lines.
#[derive(Clone, PartialEq, Debug)]
pub struct Summary {
    /// What the builder calls the engine.
    pub name: Option<String>,
    /// How many facts there are.
    pub facts: usize,
    /// The last fact, and what its device's clock said.
    pub last: Option<(FactId, i64)>,
    /// The step that something was said of last.
    pub stopped_at: Option<&'static Step>,
    /// The step that is next.
    pub next: Option<&'static Step>,
    /// How many results no longer count.
    pub stale: usize,
    /// How many states have run out.
    pub run_out: usize,
    /// How many facts could not be used, or were set aside.
    pub odd: usize,
    /// How many photos there are.
    pub photos: usize,
    /// How many bytes the facts take.
    pub bytes: u64,
    /// How many bytes the photos take, as was written down.
    pub photo_bytes: u64,
    /// When it was exported last from this device.
    pub exported: Option<LastExport>,
    /// How many facts were written since.
    pub since_export: usize,
    /// Whether it is time to export: a sitting is over, or much was written.
    pub export_now: bool,
}

impl Summary {
    /// A build at this moment: milliseconds since 1970.
    #[must_use]
    pub fn of(journal: &Journal, build: &Build, now: i64, exported: Option<LastExport>) -> Self {
        let last = journal.facts().next_back();
        let since_export = journal
            .len()
            .saturating_sub(exported.map_or(0, |one| one.facts));
        let last = last.map(|fact| (fact.id(), fact.clock()));
        let over = last.is_some_and(|(_, clock)| now.saturating_sub(clock) >= SITTING_OVER);
        let outlook = build.outlook(now);
        let pictures = photos(journal);
        let texts = journal.facts().map(Fact::text);
        Self {
            name: build
                .engine
                .as_ref()
                .map(|one| one.engine.name().to_owned()),
            facts: journal.len(),
            last,
            stopped_at: build.record.last_step().map(|(_, step)| step),
            next: outlook.ready().first().map(|one| one.step),
            stale: build.stale().len(),
            run_out: (build.clocks().iter())
                .filter(|one| one.has_run_out(now))
                .count(),
            odd: build.problems.len() + journal.set_aside().count(),
            photos: pictures.len(),
            bytes: texts.map(|text| text.len() as u64).sum(),
            photo_bytes: pictures.values().map(|one| u64::from(one.bytes)).sum(),
            exported,
            since_export,
            export_now: since_export > 0 && (over || since_export >= MANY),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fact::samples::{Pen, sprayer};
    use crate::fact::{Body, Mark, Photo, StepMarked};
    use crate::fold::fold;
    use crate::id::BuildId;

    fn journal() -> Journal {
        let mut pen = Pen::new(1);
        let mut journal = Journal::new(BuildId::from_random(7));
        journal.take(pen.write(sprayer()));
        journal.take(pen.write(Body::StepMarked(StepMarked {
            step: "identify-engine".to_owned(),
            place: None,
            mark: Mark::Done,
            words: None,
        })));
        for _ in 0..2 {
            journal.take(pen.write(Body::Photo(Photo {
                hash: "ab".repeat(32),
                media: "image/jpeg".to_owned(),
                bytes: 120_000,
                step: None,
                place: None,
                words: None,
            })));
        }
        journal
    }

    fn summary(later: i64, exported: Option<usize>) -> Summary {
        let journal = journal();
        let last = journal.facts().next_back().unwrap().clock();
        let exported = exported.map(|facts| LastExport { at: last, facts });
        Summary::of(&journal, &fold(&journal), last + later, exported)
    }

    #[test]
    fn a_summary_says_where_it_stands_and_what_is_next() {
        let said = summary(0, None);
        assert_eq!(said.name.as_deref(), Some("orchard sprayer"));
        assert_eq!(said.stopped_at.map(|one| one.id), Some("identify-engine"));
        assert_eq!(said.next.map(|one| one.id), Some("drain"));
        // The same picture twice is kept once.
        assert_eq!((said.photos, said.photo_bytes), (1, 120_000));
        assert_eq!((said.facts, said.stale, said.odd), (4, 0, 0));
        let bytes: usize = journal().facts().map(|fact| fact.text().len()).sum();
        assert_eq!(said.bytes, bytes as u64);
    }

    #[test]
    fn after_a_sitting_what_is_not_exported_is_to_be_exported() {
        assert!(!summary(HOUR - 1, None).export_now, "still at it");
        assert!(summary(HOUR, None).export_now);
        assert!(summary(HOUR, Some(3)).export_now);
        assert_eq!(summary(HOUR, Some(3)).since_export, 1);
        assert!(!summary(HOUR, Some(4)).export_now);
    }
}
