//! A set of facts.

use std::cmp::Reverse;
use std::collections::btree_map::Entry;
use std::collections::{BTreeMap, BTreeSet};

use thiserror::Error;

use crate::fact::{Body, Fact, Unreadable};
use crate::id::{BuildId, FactId};

/// The facts of one build, in the order they happened, and what had to be set
/// aside.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Journal {
    build: BuildId,
    facts: BTreeMap<FactId, Fact>,
    /// Those of them in a later format: asked for at every fact that is added.
    later: BTreeSet<FactId>,
    /// Text that is no fact, or the loser of a clash, with the reason.
    set_aside: BTreeMap<String, String>,
}

/// Why a fact was not taken into a journal.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[non_exhaustive]
pub enum AppendError {
    /// The build has been added to by a later version, whose facts this version
    /// does not understand.
    #[error(
        "This build was added to by a newer version of the book (format {format}). It can be read and exported here, and added to again once this device has the newer version."
    )]
    NewerFormat {
        /// The latest format in the build.
        format: u32,
    },
}

/// Two journals of different builds do not merge.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Error)]
#[error(
    "These are two different builds: {ours} and {theirs}. Only copies of one build can be merged."
)]
pub struct DifferentBuilds {
    /// The build that was to be added to.
    pub ours: BuildId,
    /// The build that was to be taken in.
    pub theirs: BuildId,
}

/// What came in by a merge.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct CameIn {
    /// Facts that were not here before, in the order they happened.
    pub facts: Vec<FactId>,
    /// How many texts were set aside that were not before.
    pub set_aside: usize,
}

const CLASH: &str = "Another text goes by the same id. Which of the two counts goes by a fixed rule, so all copies agree; this is the other one.";

impl Journal {
    /// A build with no facts yet.
    #[must_use]
    pub const fn new(build: BuildId) -> Self {
        Self {
            build,
            facts: BTreeMap::new(),
            later: BTreeSet::new(),
            set_aside: BTreeMap::new(),
        }
    }

    /// The build.
    #[must_use]
    pub const fn build(&self) -> BuildId {
        self.build
    }

    /// All facts, in the order they happened.
    pub fn facts(&self) -> impl DoubleEndedIterator<Item = &Fact> + Clone {
        self.facts.values()
    }

    /// How many facts there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.facts.len()
    }

    /// Whether there are no facts.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.facts.is_empty()
    }

    /// The fact with this id.
    #[must_use]
    pub fn get(&self, id: FactId) -> Option<&Fact> {
        self.facts.get(&id)
    }

    /// What was set aside: each text with the reason.
    pub fn set_aside(&self) -> impl Iterator<Item = (&str, &str)> + Clone {
        self.set_aside
            .iter()
            .map(|(text, reason)| (text.as_str(), reason.as_str()))
    }

    /// The latest format of any fact, when that is later than this version's.
    #[must_use]
    pub fn later_format(&self) -> Option<u32> {
        let later = self.later.iter().filter_map(|id| self.facts.get(id));
        later.filter_map(Fact::later_format).max()
    }

    /// Adds something that happened here and now.
    ///
    /// # Errors
    /// [`AppendError`] when this version must not add to the build. The fact
    /// is then not in the journal.
    pub fn append(&mut self, fact: Fact) -> Result<(), AppendError> {
        if let Some(format) = self.later_format() {
            return Err(AppendError::NewerFormat { format });
        }
        self.take(fact);
        Ok(())
    }

    /// Takes in a fact that was written before, here or elsewhere. Says whether
    /// anything is new. Of two texts with one id, one counts and the other is
    /// set aside, by a rule that does not depend on which came first.
    pub fn take(&mut self, fact: Fact) -> bool {
        let (id, is_later) = (fact.id(), fact.later_format().is_some());
        match self.facts.entry(id) {
            Entry::Vacant(empty) => {
                if is_later {
                    self.later.insert(id);
                }
                empty.insert(fact);
                true
            }
            Entry::Occupied(entry) if entry.get().text() == fact.text() => false,
            Entry::Occupied(mut entry) => {
                let loser = if rank(&fact) < rank(entry.get()) {
                    if is_later {
                        self.later.insert(id);
                    } else {
                        self.later.remove(&id);
                    }
                    entry.insert(fact)
                } else {
                    fact
                };
                self.put_aside(loser.text(), CLASH)
            }
        }
    }

    /// Takes in a text that may be a fact. What is none is set aside. Says
    /// whether anything is new.
    pub fn take_text(&mut self, text: &str) -> bool {
        match Fact::read(text) {
            Ok(fact) => self.take(fact),
            Err(reason) => self.put_aside_unreadable(text, &reason),
        }
    }

    /// Keeps a text that is no fact of this build, with the reason. Says
    /// whether it is new.
    pub fn put_aside(&mut self, text: &str, reason: &str) -> bool {
        match self.set_aside.entry(text.to_owned()) {
            Entry::Vacant(empty) => {
                empty.insert(reason.to_owned());
                true
            }
            Entry::Occupied(mut entry) => {
                // One reason is enough; the same one on every device.
                if reason < entry.get().as_str() {
                    entry.insert(reason.to_owned());
                }
                false
            }
        }
    }

    pub(crate) fn put_aside_unreadable(&mut self, text: &str, reason: &Unreadable) -> bool {
        self.put_aside(text, &reason.to_string())
    }

    /// Takes in another copy of this build.
    ///
    /// # Errors
    /// [`DifferentBuilds`] when it is a copy of another build; nothing is
    /// taken in then.
    pub fn merge(&mut self, other: &Self) -> Result<CameIn, DifferentBuilds> {
        if self.build != other.build {
            return Err(DifferentBuilds {
                ours: self.build,
                theirs: other.build,
            });
        }
        let mut came_in = CameIn::default();
        let aside_before = self.set_aside.len();
        for fact in other.facts.values() {
            let known = self.facts.contains_key(&fact.id());
            self.take(fact.clone());
            if !known {
                came_in.facts.push(fact.id());
            }
        }
        for (text, reason) in &other.set_aside {
            self.put_aside(text, reason);
        }
        came_in.set_aside = self.set_aside.len() - aside_before;
        Ok(came_in)
    }

    /// Both copies together. Commutative, associative, idempotent.
    ///
    /// # Errors
    /// [`DifferentBuilds`] when they are copies of different builds.
    pub fn union(mut self, other: &Self) -> Result<Self, DifferentBuilds> {
        self.merge(other)?;
        Ok(self)
    }
}

/// Which of two texts with one id counts: the one that can be read, then the
/// one in the later format, then the one that sorts first.
fn rank(fact: &Fact) -> (bool, Reverse<u32>, &str) {
    let unreadable = matches!(fact.body(), Body::Unreadable(_));
    let format = fact.later_format().unwrap_or(crate::fact::FORMAT);
    (unreadable, Reverse(format), fact.text())
}
