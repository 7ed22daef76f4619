//! The builds on this device: in memory while the page is open, kept twice by
//! the browser, and told apart on the screen: what is safe, what is on its way,
//! and what is nowhere but here.

use std::collections::{BTreeMap, BTreeSet};
use std::time::Duration;

use build_journal::fact::InView;
use build_journal::storage::{Entry, Keeper, Key, PREFIX, Shelf as _, StorageError, entries};
use build_journal::{AppendError, Body, BuildId, DeviceId, Fact, FactId, Journal, Stamper};
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::StorageEvent;

use super::chance;
use super::database::{self, IndexedVault};
use super::lack::Lacks;
use super::local::{self, LocalShelf};
use super::painted::painted;
use super::space;
use crate::later::{another_tab_later, read_book_later};

const DEVICE: &str = "thoubook-setting/device";
pub(super) const KEEPER: Keeper<LocalShelf, IndexedVault> = Keeper::new(LocalShelf, IndexedVault);
/// Another tab takes builds away key by key: wait until it is done.
const ANOTHER_TAB_IS_DONE: Duration = Duration::from_millis(500);

/// How each of the two copies is.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Trouble {
    /// What is wrong with the quick copy.
    pub shelf: Option<StorageError>,
    /// What is wrong with the safe copy.
    pub vault: Option<StorageError>,
}

/// The builds on this device.
#[derive(Clone, Copy)]
pub struct Keeping {
    builds: RwSignal<BTreeMap<BuildId, RwSignal<Journal>>>,
    opened: RwSignal<bool>,
    on_the_way: RwSignal<BTreeSet<FactId>>,
    pub(super) acknowledged: RwSignal<usize>,
    pub(super) trouble: RwSignal<Trouble>,
    pub(super) lacks: StoredValue<Lacks>,
    stamper: StoredValue<Stamper>,
    device: StoredValue<DeviceId>,
    owner: StoredValue<Option<Owner>>,
    looking_again: StoredValue<bool>,
    unread: RwSignal<bool>,
    /// What the last file brought into builds that were here already.
    arrived: RwSignal<BTreeMap<BuildId, Vec<FactId>>>,
}

impl Keeping {
    /// Opens what is kept, and follows other tabs.
    #[must_use]
    pub fn open() -> Self {
        let keeping = Self {
            builds: RwSignal::new(BTreeMap::new()),
            opened: RwSignal::new(false),
            on_the_way: RwSignal::new(BTreeSet::new()),
            acknowledged: RwSignal::new(0),
            trouble: RwSignal::new(Trouble::default()),
            lacks: StoredValue::new(Lacks::default()),
            stamper: StoredValue::new(Stamper::new()),
            device: StoredValue::new(device()),
            owner: StoredValue::new(Owner::current()),
            looking_again: StoredValue::new(false),
            unread: RwSignal::new(false),
            arrived: RwSignal::new(BTreeMap::new()),
        };
        keeping.follow_other_tabs();
        spawn_local(async move {
            // What reads the book is fetched only when there is one.
            if may_be_kept().await {
                let read = read_book_later(keeping).await;
                keeping.unread.set(!read);
            }
            keeping.opened.set(true);
        });
        keeping
    }

    /// Reads both copies, shows their union, and heals what one of them lacks.
    pub(crate) async fn look(self) {
        // What comes in while this reads can't have been taken off since.
        let known: BTreeSet<BuildId> = self
            .builds
            .with_untracked(|builds| builds.keys().copied().collect());
        let found = KEEPER.open().await;
        let both_answered = found.shelf.is_none() && found.vault.is_none();
        if both_answered {
            let here: BTreeSet<BuildId> = found.opened.journals.keys().copied().collect();
            // What could not be kept anywhere is not gone: it never was there.
            let gone: BTreeSet<BuildId> = self.lacks.with_value(|lacks| {
                let gone = known.difference(&here).copied();
                gone.filter(|id| !lacks.has_nowhere(*id)).collect()
            });
            if !gone.is_empty() {
                // Taken off this device by another tab.
                self.lacks
                    .update_value(|lacks| gone.iter().for_each(|id| lacks.forget(*id)));
                self.builds
                    .update(|builds| builds.retain(|id, _| !gone.contains(id)));
            }
        }
        for journal in found.opened.journals.values() {
            let _ = self.take_in(journal);
        }
        let healed = KEEPER.heal(&found).await;
        self.lacks.update_value(|lacks| {
            lacks.shelf.note_reading(found.shelf.as_ref());
            lacks.vault.note_reading(found.vault.as_ref());
            if found.shelf.is_none() {
                // A key that could not be read is not written over.
                let unread = |key: &String| found.unread.iter().any(|(one, _)| one == key);
                let mut missing = found.opened.missing_on_shelf.clone();
                missing.retain(|entry| !unread(&entry.key));
                lacks.shelf.note(&missing, healed.shelf.map(drop));
            }
            if found.vault.is_none() {
                let missing = &found.opened.missing_in_vault;
                lacks.vault.note(missing, healed.vault.map(drop));
            }
        });
        self.show_trouble();
    }

    /// Merges a copy of a build into what is shown. Gives the facts that were
    /// not shown before.
    fn take_in(self, journal: &Journal) -> Vec<FactId> {
        self.stamper.update_value(|stamper| {
            journal.facts().for_each(|fact| stamper.observe(fact.id()));
        });
        let known = self
            .builds
            .with_untracked(|builds| builds.get(&journal.build()).copied());
        match known {
            Some(signal) => {
                let (came_in, news) = signal.with_untracked(|known| {
                    let mut merged = known.clone();
                    // They are copies of one build: the signal was found by it.
                    let came_in = merged.merge(journal).unwrap_or_default();
                    (came_in.facts, (merged != *known).then_some(merged))
                });
                if let Some(merged) = news {
                    signal.set(merged);
                }
                came_in
            }
            None => {
                let _ = self.shown(journal.clone());
                journal.facts().map(Fact::id).collect()
            }
        }
    }

    /// A signal for a build that was not shown before. It lives as long as the page.
    fn shown(self, journal: Journal) -> RwSignal<Journal> {
        let id = journal.build();
        let signal = match self.owner.get_value() {
            Some(owner) => owner.with(|| RwSignal::new(journal)),
            None => RwSignal::new(journal),
        };
        self.builds.update(|builds| {
            builds.insert(id, signal);
        });
        signal
    }

    /// Facts that another tab puts on the shelf come in at once.
    fn follow_other_tabs(self) {
        let heard = Closure::<dyn FnMut(StorageEvent)>::new(move |event: StorageEvent| {
            let key = event.key();
            if key.as_deref().is_none_or(|key| key.starts_with(PREFIX)) {
                spawn_local(another_tab_later(self, key, event.new_value()));
            }
        });
        let listening =
            window().add_event_listener_with_callback("storage", heard.as_ref().unchecked_ref());
        if listening.is_ok() {
            heard.forget();
        }
    }

    /// Takes in what another tab put under a key, or that it took something away.
    pub(crate) fn another_tab(self, key: Option<&str>, text: Option<&str>) {
        let build = key.and_then(Key::parse).map(|key| key.build());
        if let (Some(build), Some(text)) = (build, text) {
            let mut came = Journal::new(build);
            came.take_text(text);
            let _ = self.take_in(&came);
            return;
        }
        // Wiped: a build, or with no key at all of them.
        let wiped = build.is_some() || key.is_none();
        if wiped && !self.looking_again.get_value() {
            self.looking_again.set_value(true);
            set_timeout(
                move || {
                    self.looking_again.set_value(false);
                    spawn_local(self.look());
                },
                ANOTHER_TAB_IS_DONE,
            );
        }
    }

    /// Whether the part of the page that reads the book is missing.
    #[must_use]
    pub fn is_unread(self) -> bool {
        self.unread.get()
    }

    /// Whether what is kept has been read.
    #[must_use]
    pub fn is_open(self) -> bool {
        self.opened.get()
    }

    /// The builds, followed as a list; each is followed by its own signal.
    #[must_use]
    pub fn builds(self) -> Vec<(BuildId, RwSignal<Journal>)> {
        self.builds
            .with(|builds| builds.iter().map(|(id, one)| (*id, *one)).collect())
    }

    /// One build, followed as long as it is on the list.
    #[must_use]
    pub fn build(self, id: BuildId) -> Option<RwSignal<Journal>> {
        self.builds.with(|builds| builds.get(&id).copied())
    }

    /// Whether a build is on this device; not followed.
    #[must_use]
    pub fn knows(self, id: BuildId) -> bool {
        self.builds
            .with_untracked(|builds| builds.contains_key(&id))
    }

    /// How many facts have been kept safely since the page was opened.
    #[must_use]
    pub fn acknowledged(self) -> usize {
        self.acknowledged.get()
    }

    /// How many facts are on their way to being safe.
    #[must_use]
    pub fn on_the_way(self) -> usize {
        self.on_the_way.with(BTreeSet::len)
    }

    /// What is wrong with the two copies.
    #[must_use]
    pub fn trouble(self) -> Trouble {
        self.trouble.get()
    }

    /// Begins a build.
    #[must_use]
    pub fn begin(self) -> BuildId {
        let id = BuildId::from_random(chance::bits());
        let _ = self.shown(Journal::new(id));
        spawn_local(async {
            // Asked for once there is something worth keeping. A no is shown
            // where the room is shown.
            let _ = space::ask_to_keep().await;
        });
        id
    }

    /// Something as it would be written down now, to see what would come of it.
    #[must_use]
    pub fn fact(self, body: (Body, Option<InView>)) -> Fact {
        let clock = chance::now();
        let mut id = None;
        self.stamper.update_value(|stamper| {
            let wall = u64::try_from(clock).unwrap_or_default();
            id = Some(stamper.stamp(wall, chance::bits() as u64));
        });
        let id = id.unwrap_or_else(|| Stamper::new().stamp(0, chance::bits() as u64));
        Fact::in_view_of(id, self.device.get_value(), clock, body)
    }

    /// Writes something down: on the screen and on the shelf at once, in the
    /// vault as soon as it is there.
    ///
    /// # Errors
    /// [`AppendError`] when this build must not be written to by this version.
    pub fn write_down(self, build: BuildId, body: Body) -> Result<FactId, AppendError> {
        self.write_in_view(build, (body, None))
    }

    /// The same, with what was in view of the same thing.
    ///
    /// # Errors
    /// [`AppendError`] when this build must not be written to by this version.
    pub fn write_in_view(
        self,
        build: BuildId,
        body: (Body, Option<InView>),
    ) -> Result<FactId, AppendError> {
        let fact = self.fact(body);
        let id = fact.id();
        let known = self
            .builds
            .with_untracked(|builds| builds.get(&build).copied());
        let signal = known.unwrap_or_else(|| self.shown(Journal::new(build)));
        let mut appended = Ok(());
        signal.update(|journal| appended = journal.append(fact.clone()));
        appended?;
        let shelf = KEEPER.put_on_shelf(build, &fact);
        self.on_the_way.update(|facts| {
            facts.insert(id);
        });
        spawn_local(async move {
            // The shelf has it; the vault may have it a frame later.
            painted().await;
            let vault = KEEPER.put_in_vault(build, &[&fact]).await;
            self.on_the_way.update(|facts| {
                facts.remove(&id);
            });
            let key = Key::fact(build, id).to_string();
            let text = fact.text().to_owned();
            self.note_writing(&[Entry { key, text }], 1, shelf, vault)
                .await;
        });
        Ok(id)
    }

    /// Takes in a build from a file and keeps it. Gives the number of facts
    /// that were not here before.
    pub async fn bring_in(self, journal: &Journal) -> usize {
        let known = self.knows(journal.build());
        let facts = self.take_in(journal);
        let came_in = facts.len();
        if known {
            self.arrived.update(|arrived| {
                arrived.insert(journal.build(), facts);
            });
        }
        let kept = KEEPER.keep_all(journal).await;
        self.note_writing(&entries(journal), came_in, kept.shelf, kept.vault)
            .await;
        came_in
    }

    /// What the last file brought into a build that was here already, followed;
    /// `None` when none came since the page was opened.
    #[must_use]
    pub fn arrived(self, build: BuildId) -> Option<Vec<FactId>> {
        self.arrived.with(|arrived| arrived.get(&build).cloned())
    }

    /// The name of this device.
    #[must_use]
    pub fn device(self) -> DeviceId {
        self.device.get_value()
    }

    /// Takes a build off this device.
    ///
    /// # Errors
    /// [`StorageError`] when some of it may still be there.
    pub async fn forget(self, build: BuildId) -> Result<(), StorageError> {
        KEEPER.forget(build).await?;
        self.lacks.update_value(|lacks| lacks.forget(build));
        self.show_trouble();
        self.builds.update(|builds| {
            builds.remove(&build);
        });
        super::drafts::forget(&format!("build/{build}/"));
        Ok(())
    }
}

/// Whether anything may be kept on this device: not when both places say that
/// they hold nothing. A place that can't be asked may hold something.
async fn may_be_kept() -> bool {
    !LocalShelf.keys(PREFIX).is_ok_and(|keys| keys.is_empty()) || database::may_be_there().await
}

/// The name of this device, made up when the page is first used on it.
fn device() -> DeviceId {
    local::get(DEVICE)
        .and_then(|text| DeviceId::parse(&text).ok())
        .unwrap_or_else(|| {
            let id = DeviceId::from_random(chance::bits());
            // Where nothing is kept, each visit is a device of its own.
            let _ = local::put(DEVICE, &id.to_string());
            id
        })
}

/// The builds on this device.
#[must_use]
pub fn keeping() -> Keeping {
    expect_context()
}
