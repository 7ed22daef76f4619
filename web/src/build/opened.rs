//! The build that is open: its facts, what follows from them, and a way to
//! write the next one.

use build_journal::fold::{Build, Preview, preview_all};
use build_journal::{Body, BuildId, Fact, FactId, Journal, fact, fold};
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
    pub build: Memo<Build>,
    keeping: Keeping,
    toast: Toast,
}

impl Opened {
    /// Opens a build.
    #[must_use]
    pub fn of(id: BuildId, journal: RwSignal<Journal>, keeping: Keeping, toast: Toast) -> Self {
        Self {
            id,
            journal,
            build: Memo::new(move |_| journal.with(fold)),
            keeping,
            toast,
        }
    }

    /// Writes something down. A refusal is told; what was typed stays where it is.
    pub fn write_down(self, body: Body) -> Option<FactId> {
        match self.keeping.write_down(self.id, body) {
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
            .map(|body| self.keeping.fact(body.clone()))
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
