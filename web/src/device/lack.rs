//! What the two copies lack of what is written down. A good write says nothing
//! of an earlier bad one: trouble is over when nothing is lacking.

use build_journal::BuildId;
use build_journal::storage::{Entry, Key, Shelf, StorageError};

/// What each copy lacks.
#[derive(Clone, Debug, Default)]
pub struct Lacks {
    /// The quick copy.
    pub shelf: Lack,
    /// The safe copy.
    pub vault: Lack,
}

impl Lacks {
    /// Whether something of a build is in neither copy.
    #[must_use]
    pub fn has_nowhere(&self, build: BuildId) -> bool {
        let prefix = Key::prefix(build);
        self.shelf.entries.iter().any(|one| {
            one.key.starts_with(&prefix)
                && self.vault.entries.iter().any(|other| other.key == one.key)
        })
    }

    /// A build was taken off this device: nothing of it is to come back.
    pub fn forget(&mut self, build: BuildId) {
        self.shelf.forget(build);
        self.vault.forget(build);
    }
}

/// What one copy lacks, and why.
#[derive(Clone, Debug, Default)]
pub struct Lack {
    /// In the order to write them.
    entries: Vec<Entry>,
    /// The copy could not be read, so nobody knows what else it lacks.
    unread: bool,
    trouble: Option<StorageError>,
}

impl Lack {
    /// Notes how writing some entries went.
    pub fn note(&mut self, entries: &[Entry], written: Result<(), StorageError>) {
        let others = |one: &Entry| entries.iter().all(|entry| entry.key != one.key);
        self.entries.retain(others);
        if let Err(error) = written {
            self.entries.extend_from_slice(entries);
            self.trouble = Some(error);
        }
    }

    /// Notes how reading the whole copy went.
    pub fn note_reading(&mut self, error: Option<&StorageError>) {
        self.unread = error.is_some();
        if let Some(error) = error {
            self.trouble = Some(error.clone());
        }
    }

    /// What is wrong with the copy, for as long as it lacks something.
    #[must_use]
    pub fn trouble(&self) -> Option<&StorageError> {
        let lacking = self.unread || !self.entries.is_empty();
        self.trouble.as_ref().filter(|_| lacking)
    }

    /// What is known to be lacking.
    #[must_use]
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// Whether the copy has to be read before it is known what it lacks.
    #[must_use]
    pub const fn is_unread(&self) -> bool {
        self.unread
    }

    fn forget(&mut self, build: BuildId) {
        let prefix = Key::prefix(build);
        self.entries.retain(|entry| !entry.key.starts_with(&prefix));
    }
}

/// Puts what a shelf lacks there, as far as it takes it.
pub fn make_up_shelf(lack: &mut Lack, shelf: &impl Shelf) {
    for entry in lack.entries.clone() {
        match shelf.write(&entry.key, &entry.text) {
            Ok(()) => lack.note(&[entry], Ok(())),
            Err(error) => {
                // The ones behind it keep their places in the row.
                lack.trouble = Some(error);
                return;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::storage::double::{Fault, Faults, MemoryShelf};

    fn entry(key: &str) -> Entry {
        Entry {
            key: key.to_owned(),
            text: format!("text of {key}"),
        }
    }

    #[test]
    fn a_good_write_does_not_hide_an_earlier_bad_one() {
        let mut lack = Lack::default();
        lack.note(&[entry("a")], Err(StorageError::Full));
        lack.note(&[entry("b")], Ok(()));
        assert_eq!(lack.trouble(), Some(&StorageError::Full));
        assert_eq!(lack.entries(), [entry("a")]);
        lack.note(&[entry("a")], Ok(()));
        assert_eq!(lack.trouble(), None);
    }

    #[test]
    fn a_copy_that_could_not_be_read_stays_in_trouble_until_it_is() {
        let mut lack = Lack::default();
        lack.note_reading(Some(&StorageError::Gone));
        lack.note(&[entry("a")], Ok(()));
        assert_eq!(lack.trouble(), Some(&StorageError::Gone));
        lack.note_reading(None);
        assert_eq!(lack.trouble(), None);
    }

    #[test]
    fn a_shelf_with_room_again_gets_what_it_lacks_in_order() {
        let mut lack = Lack::default();
        lack.note(&[entry("a"), entry("b")], Err(StorageError::Full));
        // The second write of the first round fails.
        let faults = Faults::at(1, Fault::Fails(StorageError::Full));
        let shelf = MemoryShelf::new(&faults);
        make_up_shelf(&mut lack, &shelf);
        assert_eq!(lack.entries(), [entry("b")]);
        assert_eq!(lack.trouble(), Some(&StorageError::Full));
        make_up_shelf(&mut lack, &shelf);
        assert_eq!(lack.trouble(), None);
        assert_eq!(shelf.contents().len(), 2);
    }

    #[test]
    fn nothing_of_a_build_that_was_wiped_is_written_again() {
        let (wiped, kept) = (BuildId::from_random(1), BuildId::from_random(2));
        let of = |build| entry(&format!("{}fact", Key::prefix(build)));
        let mut lacks = Lacks::default();
        let both = [of(wiped), of(kept)];
        lacks.vault.note(&both, Err(StorageError::Full));
        assert!(!lacks.has_nowhere(wiped), "the shelf has it");
        lacks.shelf.note(&both, Err(StorageError::Full));
        assert!(lacks.has_nowhere(wiped));
        lacks.forget(wiped);
        assert!(!lacks.has_nowhere(wiped));
        assert_eq!(lacks.shelf.entries(), [of(kept)]);
        assert_eq!(lacks.vault.entries(), [of(kept)]);
    }
}
