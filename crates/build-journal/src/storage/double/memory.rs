//! A shelf and a vault in memory.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use super::fault::{Fault, Faults, Side};
use crate::storage::error::StorageError;
use crate::storage::lend::{Entry, Shelf, Vault};

type Texts = Rc<RefCell<BTreeMap<String, String>>>;
/// Keys in the order they were written, each with what it held before.
type Writes = Rc<RefCell<Vec<(String, Option<String>)>>>;

/// A shelf in memory. Clones are the same shelf, as two tabs have it.
#[derive(Clone, Debug, Default)]
pub struct MemoryShelf {
    texts: Texts,
    recent: Writes,
    faults: Faults,
}

/// A vault in memory. Clones are the same vault.
#[derive(Clone, Debug, Default)]
pub struct MemoryVault {
    texts: Texts,
    faults: Faults,
}

fn half(text: &str) -> String {
    text.chars().take(text.chars().count() / 2).collect()
}

impl MemoryShelf {
    /// An empty shelf on which these faults happen.
    #[must_use]
    pub fn new(faults: &Faults) -> Self {
        Self {
            faults: faults.clone(),
            ..Self::default()
        }
    }

    /// Everything on it, whatever is to go wrong.
    #[must_use]
    pub fn contents(&self) -> BTreeMap<String, String> {
        self.texts.borrow().clone()
    }

    /// Puts a text there behind the book's back.
    pub fn plant(&self, key: &str, text: &str) {
        self.texts
            .borrow_mut()
            .insert(key.to_owned(), text.to_owned());
    }

    /// Takes a text away behind the book's back.
    pub fn snatch(&self, key: &str) {
        self.texts.borrow_mut().remove(key);
    }

    /// The device crashes: the last so many writes are forgotten.
    pub fn crash(&self, forgotten: usize) {
        let mut recent = self.recent.borrow_mut();
        let mut texts = self.texts.borrow_mut();
        for _ in 0..forgotten {
            match recent.pop() {
                Some((key, Some(before))) => {
                    texts.insert(key, before);
                }
                Some((key, None)) => {
                    texts.remove(&key);
                }
                None => {}
            }
        }
        recent.clear();
    }

    fn put(&self, key: &str, text: &str) {
        let before = self
            .texts
            .borrow_mut()
            .insert(key.to_owned(), text.to_owned());
        self.recent.borrow_mut().push((key.to_owned(), before));
    }
}

impl Shelf for MemoryShelf {
    fn keys(&self, prefix: &str) -> Result<Vec<String>, StorageError> {
        let mut keys: Vec<String> = self
            .texts
            .borrow()
            .keys()
            .filter(|key| key.starts_with(prefix))
            .cloned()
            .collect();
        match self.faults.next(Side::Shelf) {
            Some(Fault::Fails(error) | Fault::DoneButFails(error)) => return Err(error),
            Some(Fault::Tears) => keys.truncate(keys.len() / 2),
            Some(Fault::Strays) => keys.push(format!("{prefix}no-such-key")),
            Some(Fault::FullFromNow) | None => {}
        }
        Ok(keys)
    }

    fn read(&self, key: &str) -> Result<Option<String>, StorageError> {
        let texts = self.texts.borrow();
        let text = texts.get(key).cloned();
        Ok(match self.faults.next(Side::Shelf) {
            Some(Fault::Fails(error) | Fault::DoneButFails(error)) => return Err(error),
            Some(Fault::Tears) => text.as_deref().map(half),
            Some(Fault::Strays) => texts
                .iter()
                .find_map(|(other, text)| (other != key).then(|| text.clone()))
                .or_else(|| Some("another program's text".to_owned())),
            Some(Fault::FullFromNow) | None => text,
        })
    }

    fn write(&self, key: &str, text: &str) -> Result<(), StorageError> {
        let fault = self.faults.next(Side::Shelf);
        if self.faults.is_full() {
            return Err(StorageError::Full);
        }
        match fault {
            Some(Fault::Fails(error)) => return Err(error),
            Some(Fault::DoneButFails(error)) => {
                self.put(key, text);
                return Err(error);
            }
            Some(Fault::Tears) => self.put(key, &half(text)),
            Some(Fault::Strays) => {}
            Some(Fault::FullFromNow) | None => self.put(key, text),
        }
        Ok(())
    }

    fn remove(&self, key: &str) -> Result<(), StorageError> {
        match self.faults.next(Side::Shelf) {
            Some(Fault::Fails(error)) => return Err(error),
            Some(Fault::DoneButFails(error)) => {
                self.snatch(key);
                return Err(error);
            }
            _ => self.snatch(key),
        }
        Ok(())
    }
}

impl MemoryVault {
    /// An empty vault in which these faults happen.
    #[must_use]
    pub fn new(faults: &Faults) -> Self {
        Self {
            faults: faults.clone(),
            ..Self::default()
        }
    }

    /// Everything in it, whatever is to go wrong.
    #[must_use]
    pub fn contents(&self) -> BTreeMap<String, String> {
        self.texts.borrow().clone()
    }

    /// Puts a text there behind the book's back.
    pub fn plant(&self, key: &str, text: &str) {
        self.texts
            .borrow_mut()
            .insert(key.to_owned(), text.to_owned());
    }

    fn change(
        &self,
        change: impl FnOnce(&mut BTreeMap<String, String>),
    ) -> Result<(), StorageError> {
        let fault = self.faults.next(Side::Vault);
        if self.faults.is_full() {
            return Err(StorageError::Full);
        }
        match fault {
            Some(Fault::Fails(error)) => Err(error),
            // A transaction is whole or not there at all.
            Some(Fault::Tears | Fault::Strays) => Err(StorageError::Failed {
                reason: "the transaction was aborted".to_owned(),
            }),
            Some(Fault::DoneButFails(error)) => {
                change(&mut self.texts.borrow_mut());
                Err(error)
            }
            Some(Fault::FullFromNow) | None => {
                change(&mut self.texts.borrow_mut());
                Ok(())
            }
        }
    }
}

impl Vault for MemoryVault {
    async fn all(&self, prefix: &str) -> Result<Vec<Entry>, StorageError> {
        let mut entries: Vec<Entry> = self
            .texts
            .borrow()
            .iter()
            .filter(|(key, _)| key.starts_with(prefix))
            .map(|(key, text)| Entry {
                key: key.clone(),
                text: text.clone(),
            })
            .collect();
        match self.faults.next(Side::Vault) {
            Some(Fault::Fails(error) | Fault::DoneButFails(error)) => return Err(error),
            Some(Fault::Tears) => {
                if let Some(last) = entries.last_mut() {
                    last.text = half(&last.text);
                }
            }
            Some(Fault::Strays) => {
                if let [first, .., last] = entries.as_mut_slice() {
                    std::mem::swap(&mut first.text, &mut last.text);
                }
            }
            Some(Fault::FullFromNow) | None => {}
        }
        Ok(entries)
    }

    async fn write(&self, entries: &[Entry]) -> Result<(), StorageError> {
        self.change(|texts| {
            for entry in entries {
                texts.insert(entry.key.clone(), entry.text.clone());
            }
        })
    }

    async fn remove(&self, keys: &[String]) -> Result<(), StorageError> {
        self.change(|texts| {
            for key in keys {
                texts.remove(key);
            }
        })
    }

    async fn reopen(&self) -> Result<(), StorageError> {
        match self.faults.next(Side::Vault) {
            Some(Fault::Fails(error) | Fault::DoneButFails(error)) => Err(error),
            _ => Ok(()),
        }
    }
}
