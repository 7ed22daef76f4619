//! The build that is open: its facts, what follows from them, and a way to
//! write the next one.

use build_journal::fact::InView;
use build_journal::fold::{Build, Conflict, Folding, Preview, preview_all};
use build_journal::{Body, BuildId, Fact, FactId, Journal, fact};
use leptos::prelude::*;

use crate::device::keeping::Keeping;
use crate::kit::toast::Toast;

/// The build that is open.
#[derive(Clone, Copy)]
pub struct Opened {
    /// Which build.
    pub id: BuildId,
    /// Its facts.
    pub journal: RwSignal<Journal>,
    /// What follows from them.
    pub build: Derived,
    keeping: Keeping,
    toast: Toast,
}

/// What follows from the facts of a build. One fact more is taken in by itself:
/// a big book is not read anew for every reading.
#[derive(Clone, Copy)]
pub struct Derived(Memo<Folding>);

impl Derived {
    /// What follows from these facts, now and as they grow.
    #[must_use]
    pub fn of(journal: RwSignal<Journal>) -> Self {
        let derived = Memo::new_owning(move |last| {
            let folding = journal.with(|journal| further(last, journal));
            (folding, true)
        });
        Self(derived)
    }

    /// Reads it, and follows it.
    pub fn with<T>(self, read: impl FnOnce(&Build) -> T) -> T {
        self.0.with(|folding| read(folding.build()))
    }

    /// Follows it.
    pub fn track(self) {
        self.0.track();
    }

    /// Reads it as it is now.
    pub fn with_untracked<T>(self, read: impl FnOnce(&Build) -> T) -> T {
        self.0.with_untracked(|folding| read(folding.build()))
    }
}

/// A state with what the journal has more by now.
fn further(last: Option<Folding>, journal: &Journal) -> Folding {
    match (last, journal.facts().next_back()) {
        // A fact that came late is noticed there, and everything read anew.
        (Some(mut folding), Some(fact)) if journal.len() == folding.facts() + 1 => {
            folding.append(journal, fact);
            folding
        }
        _ => Folding::of(journal),
    }
}

impl Opened {
    /// Opens a build.
    #[must_use]
    pub fn of(id: BuildId, journal: RwSignal<Journal>, keeping: Keeping, toast: Toast) -> Self {
        Self {
            id,
            journal,
            build: Derived::of(journal),
            keeping,
            toast,
        }
    }

    /// Writes something down. A refusal is told; what was typed stays where it is.
    pub fn write_down(self, body: Body) -> Option<FactId> {
        let in_view = self.journal.with_untracked(|journal| {
            self.build
                .with_untracked(|build| build.in_view(journal, &body))
        });
        self.write_in_view(body, in_view)
    }

    /// Writes down what holds of what two devices say differently.
    pub fn settle(self, conflict: &Conflict, fact: FactId) {
        let bodies = self
            .build
            .with_untracked(|build| conflict.holds(fact, build));
        for (body, in_view) in bodies {
            let _ = self.write_in_view(body, Some(in_view));
        }
    }

    fn write_in_view(self, body: Body, in_view: Option<InView>) -> Option<FactId> {
        match self.keeping.write_in_view(self.id, (body, in_view)) {
            Ok(id) => Some(id),
            Err(error) => {
                self.toast.say(error.to_string());
                None
            }
        }
    }

    /// What would come of it if these were written down now. Nothing is.
    #[must_use]
    pub fn preview(self, bodies: &[Body]) -> Preview {
        let facts: Vec<Fact> = (bodies.iter())
            .map(|body| self.keeping.fact((body.clone(), None)))
            .collect();
        self.journal
            .with_untracked(|journal| preview_all(journal, &facts))
    }

    /// Strikes a fact out, as in a paper log. Striking a strike brings the
    /// first back.
    pub fn strike(self, fact: FactId, reason: Option<String>) -> Option<FactId> {
        self.write_down(Body::Struck(fact::Struck { fact, reason }))
    }

    /// The name of a draft of this build.
    #[must_use]
    pub fn draft(self, name: &str) -> String {
        format!("build/{}/{name}", self.id)
    }
}
