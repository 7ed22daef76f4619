//! What the device lends: a shelf and a vault.

use std::future::Future;

use super::error::StorageError;

/// A key and the text kept under it.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct Entry {
    /// The key, as [`Key`](super::Key) writes it.
    pub key: String,
    /// The text.
    pub text: String,
}

/// Quick storage that answers at once, but may forget the last seconds when
/// the device crashes. In a browser: local storage.
pub trait Shelf {
    /// All keys that begin like this.
    ///
    /// # Errors
    /// [`StorageError`] when the shelf cannot be read at all.
    fn keys(&self, prefix: &str) -> Result<Vec<String>, StorageError>;

    /// The text under a key, if there is one.
    ///
    /// # Errors
    /// [`StorageError`] when this key cannot be read now.
    fn read(&self, key: &str) -> Result<Option<String>, StorageError>;

    /// Puts a text under a key.
    ///
    /// # Errors
    /// [`StorageError`] when it may not be there.
    fn write(&self, key: &str, text: &str) -> Result<(), StorageError>;

    /// Takes a key away; one that is not there is fine.
    ///
    /// # Errors
    /// [`StorageError`] when it may still be there.
    fn remove(&self, key: &str) -> Result<(), StorageError>;
}

/// Storage that takes its time and keeps what it said it has. In a browser:
/// IndexedDB. A write is one transaction: all of it or nothing, and `Ok` only
/// once the transaction has completed.
pub trait Vault {
    /// All entries whose keys begin like this.
    ///
    /// # Errors
    /// [`StorageError`] when the vault cannot be read.
    fn all(&self, prefix: &str) -> impl Future<Output = Result<Vec<Entry>, StorageError>>;

    /// Puts all these in, in one transaction.
    ///
    /// # Errors
    /// [`StorageError`] when they may not be there.
    fn write(&self, entries: &[Entry]) -> impl Future<Output = Result<(), StorageError>>;

    /// Takes these keys away, in one transaction.
    ///
    /// # Errors
    /// [`StorageError`] when they may still be there.
    fn remove(&self, keys: &[String]) -> impl Future<Output = Result<(), StorageError>>;

    /// Opens the connection anew, after [`StorageError::Gone`].
    ///
    /// # Errors
    /// [`StorageError`] when that does not help.
    fn reopen(&self) -> impl Future<Output = Result<(), StorageError>>;
}
