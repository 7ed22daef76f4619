//! The order in which things are read, written and healed.

use super::error::StorageError;
use super::key::{Key, PREFIX};
use super::lend::{Entry, Shelf, Vault};
use super::opening::{Opened, entries, open};
use crate::fact::Fact;
use crate::id::BuildId;
use crate::journal::Journal;

/// Keeps facts on a shelf and in a vault.
#[derive(Clone, Debug)]
pub struct Keeper<S, V> {
    shelf: S,
    vault: V,
}

/// What was found on opening.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Found {
    /// The builds, and what each copy lacks.
    pub opened: Opened,
    /// Why the shelf could not be read, when it could not.
    pub shelf: Option<StorageError>,
    /// Why the vault could not be read, when it could not.
    pub vault: Option<StorageError>,
    /// Keys of the shelf that could not be read, each with the reason.
    pub unread: Vec<(String, StorageError)>,
}

/// Where a fact got to.
#[derive(Clone, PartialEq, Eq, Debug)]
#[must_use]
pub struct Kept {
    /// Whether the shelf has it.
    pub shelf: Result<(), StorageError>,
    /// Whether the vault has it.
    pub vault: Result<(), StorageError>,
}

/// What healing did.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Healed {
    /// How many entries were written to the shelf, or why not all.
    pub shelf: Result<usize, StorageError>,
    /// How many entries were written to the vault, or why none.
    pub vault: Result<usize, StorageError>,
}

impl Kept {
    /// Whether it survives whatever happens next: the vault has it.
    #[must_use]
    pub const fn is_safe(&self) -> bool {
        self.vault.is_ok()
    }

    /// Whether it is nowhere but on the screen.
    #[must_use]
    pub const fn is_nowhere(&self) -> bool {
        self.vault.is_err() && self.shelf.is_err()
    }
}

impl<S: Shelf, V: Vault> Keeper<S, V> {
    /// A keeper of what the device lends.
    pub const fn new(shelf: S, vault: V) -> Self {
        Self { shelf, vault }
    }

    /// The shelf.
    pub const fn shelf(&self) -> &S {
        &self.shelf
    }

    /// The vault.
    pub const fn vault(&self) -> &V {
        &self.vault
    }

    /// Opens everything that is kept. One copy that cannot be read does not
    /// stop the other, nor one key the rest. Then [`heal`](Self::heal).
    pub async fn open(&self) -> Found {
        let (on_shelf, unread, shelf) = match self.shelf.keys(PREFIX) {
            Ok(keys) => {
                let (entries, unread) = self.read_shelf(keys);
                (entries, unread, None)
            }
            Err(error) => (Vec::new(), Vec::new(), Some(error)),
        };
        let (in_vault, vault) = match self.read_vault(PREFIX).await {
            Ok(entries) => (entries, None),
            Err(error) => (Vec::new(), Some(error)),
        };
        Found {
            opened: open(&on_shelf, &in_vault),
            shelf,
            vault,
            unread,
        }
    }

    fn read_shelf(&self, keys: Vec<String>) -> (Vec<Entry>, Vec<(String, StorageError)>) {
        let (mut entries, mut unread) = (Vec::new(), Vec::new());
        for key in keys {
            match self.shelf.read(&key) {
                Ok(Some(text)) => entries.push(Entry { key, text }),
                // Taken away since, by another tab.
                Ok(None) => {}
                Err(error) => unread.push((key, error)),
            }
        }
        (entries, unread)
    }

    async fn read_vault(&self, prefix: &str) -> Result<Vec<Entry>, StorageError> {
        match self.vault.all(prefix).await {
            Err(StorageError::Gone) => {
                self.vault.reopen().await?;
                self.vault.all(prefix).await
            }
            answer => answer,
        }
    }

    async fn write_vault(&self, entries: &[Entry]) -> Result<(), StorageError> {
        match self.vault.write(entries).await {
            Err(StorageError::Gone) => {
                self.vault.reopen().await?;
                self.vault.write(entries).await
            }
            answer => answer,
        }
    }

    /// Writes what each copy lacks. A copy that could not be read is left as it
    /// is, and so is a key that could not be read: there is no telling what
    /// would be written over.
    pub async fn heal(&self, found: &Found) -> Healed {
        let shelf = match &found.shelf {
            Some(error) => Err(error.clone()),
            None => self.heal_shelf(found),
        };
        let missing = &found.opened.missing_in_vault;
        let vault = match &found.vault {
            Some(error) => Err(error.clone()),
            None if missing.is_empty() => Ok(0),
            None => self.write_vault(missing).await.map(|()| missing.len()),
        };
        Healed { shelf, vault }
    }

    fn heal_shelf(&self, found: &Found) -> Result<usize, StorageError> {
        let mut written = 0;
        for entry in &found.opened.missing_on_shelf {
            if found.unread.iter().all(|(key, _)| *key != entry.key) {
                // What comes later may only be written once this is there.
                self.shelf.write(&entry.key, &entry.text)?;
                written += 1;
            }
        }
        Ok(written)
    }

    /// Puts a fact on the shelf, at once.
    ///
    /// # Errors
    /// [`StorageError`] when the shelf may not have it.
    pub fn put_on_shelf(&self, build: BuildId, fact: &Fact) -> Result<(), StorageError> {
        let key = Key::fact(build, fact.id()).to_string();
        self.shelf.write(&key, fact.text())
    }

    /// Puts facts in the vault: all of them or none.
    ///
    /// # Errors
    /// [`StorageError`] when the vault may not have them.
    pub async fn put_in_vault(&self, build: BuildId, facts: &[&Fact]) -> Result<(), StorageError> {
        let entries: Vec<Entry> = facts
            .iter()
            .map(|fact| Entry {
                key: Key::fact(build, fact.id()).to_string(),
                text: fact.text().to_owned(),
            })
            .collect();
        self.write_vault(&entries).await
    }

    /// Keeps a fact: on the shelf at once, then in the vault. A failure of one
    /// does not stop the other.
    pub async fn keep(&self, build: BuildId, fact: &Fact) -> Kept {
        let shelf = self.put_on_shelf(build, fact);
        let vault = self.put_in_vault(build, &[fact]).await;
        Kept { shelf, vault }
    }

    /// Keeps a whole build that came in by a file, with what is set aside in it.
    /// To the shelf goes as much as it takes.
    pub async fn keep_all(&self, journal: &Journal) -> Kept {
        let entries = entries(journal);
        let shelf = entries
            .iter()
            .try_for_each(|entry| self.shelf.write(&entry.key, &entry.text));
        let vault = self.write_vault(&entries).await;
        Kept { shelf, vault }
    }

    /// Takes a build off this device. Whatever is left by a failure comes back
    /// on the next opening: nothing is half there.
    ///
    /// # Errors
    /// [`StorageError`] when some of it may still be there.
    pub async fn forget(&self, build: BuildId) -> Result<(), StorageError> {
        let prefix = Key::prefix(build);
        let in_vault: Vec<String> = self
            .read_vault(&prefix)
            .await?
            .into_iter()
            .map(|entry| entry.key)
            .collect();
        let on_shelf = self.shelf.keys(&prefix)?;
        self.vault.remove(&in_vault).await?;
        on_shelf.iter().try_for_each(|key| self.shelf.remove(key))
    }
}
