//! Local storage: small, quick, and sometimes not there at all.

use std::cell::Cell;

use build_journal::storage::{Shelf, StorageError};
use gloo_storage::{LocalStorage, Storage as _};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{DomException, Storage};

thread_local! {
    static AVAILABLE: Cell<Option<bool>> = const { Cell::new(None) };
}

const PROBE: &str = "thoubook-probe";

/// Whether there is a local storage. Asked once: `gloo-storage` panics where
/// there is none, so nothing may touch it before.
#[must_use]
pub fn available() -> bool {
    AVAILABLE.get().unwrap_or_else(|| {
        let found = probe();
        AVAILABLE.set(Some(found));
        found
    })
}

fn probe() -> bool {
    let Some(Ok(Some(storage))) = web_sys::window().map(|window| window.local_storage()) else {
        return false;
    };
    // A full storage refuses the probe and still holds what was kept before.
    match storage.set_item(PROBE, "1") {
        Ok(()) => storage.remove_item(PROBE).is_ok(),
        Err(error) => {
            matches!(problem(&error), StorageError::Full)
                && storage.length().is_ok_and(|held| held > 0)
        }
    }
}

fn storage() -> Result<Storage, StorageError> {
    if available() {
        Ok(LocalStorage::raw())
    } else {
        Err(StorageError::Blocked)
    }
}

/// Puts a text under a key.
///
/// # Errors
/// [`StorageError`] when it is not kept.
pub fn put(key: &str, value: &str) -> Result<(), StorageError> {
    storage()?
        .set_item(key, value)
        .map_err(|error| problem(&error))
}

/// The text under a key, if there is one.
#[must_use]
pub fn get(key: &str) -> Option<String> {
    storage().ok()?.get_item(key).ok()?
}

/// Takes a key away.
pub fn remove(key: &str) {
    if let Ok(storage) = storage() {
        // What was never there is gone too.
        let _ = storage.remove_item(key);
    }
}

/// Every key that begins so.
#[must_use]
pub fn keys(prefix: &str) -> Vec<String> {
    let Ok(storage) = storage() else {
        return Vec::new();
    };
    (0..storage.length().unwrap_or(0))
        .filter_map(|at| storage.key(at).ok().flatten())
        .filter(|key| key.starts_with(prefix))
        .collect()
}

/// Every key that begins so, with its text.
#[must_use]
pub fn entries(prefix: &str) -> Vec<(String, String)> {
    keys(prefix)
        .into_iter()
        .filter_map(|key| get(&key).map(|value| (key, value)))
        .collect()
}

/// The browser's error in the words of the book.
pub(super) fn problem(error: &JsValue) -> StorageError {
    let (name, words) = match error.dyn_ref::<DomException>() {
        Some(exception) => (exception.name(), exception.message()),
        None => (String::new(), format!("{error:?}")),
    };
    match name.as_str() {
        "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED" => StorageError::Full,
        "SecurityError" => StorageError::Blocked,
        _ => StorageError::Failed { reason: words },
    }
}

/// Local storage as the shelf of the facts.
#[derive(Clone, Copy, Debug)]
pub struct LocalShelf;

impl Shelf for LocalShelf {
    fn keys(&self, prefix: &str) -> Result<Vec<String>, StorageError> {
        storage().map(|_| keys(prefix))
    }

    fn read(&self, key: &str) -> Result<Option<String>, StorageError> {
        storage()?.get_item(key).map_err(|error| problem(&error))
    }

    fn write(&self, key: &str, text: &str) -> Result<(), StorageError> {
        put(key, text)
    }

    fn remove(&self, key: &str) -> Result<(), StorageError> {
        storage()?.remove_item(key).map_err(|error| problem(&error))
    }
}

#[cfg(all(test, target_arch = "wasm32"))]
mod tests {
    use super::*;
    use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

    wasm_bindgen_test_configure!(run_in_browser);

    #[wasm_bindgen_test]
    fn what_is_put_is_found_and_what_is_removed_is_gone() {
        assert!(available());
        put("test/local/a", "{\"x\":1}").unwrap();
        put("test/local/b", "not json").unwrap();
        let mut found = entries("test/local/");
        found.sort();
        assert_eq!(found.len(), 2);
        assert_eq!(found[1], ("test/local/b".to_owned(), "not json".to_owned()));
        for key in keys("test/local/") {
            remove(&key);
        }
        assert!(keys("test/local/").is_empty());
        assert!(keys(PROBE).is_empty(), "the probe leaves nothing behind");
    }

    #[wasm_bindgen_test]
    fn a_full_storage_says_so_and_keeps_what_it_had() {
        put("test/full/kept", "still here").unwrap();
        let big = "x".repeat(1 << 20);
        let mut taken = 0;
        let refused = loop {
            match put(&format!("test/full/{taken}"), &big) {
                Ok(()) if taken < 64 => taken += 1,
                Ok(()) => panic!("64 MB went into local storage"),
                Err(error) => break error,
            }
        };
        assert_eq!(refused, StorageError::Full);
        assert_eq!(get("test/full/kept").as_deref(), Some("still here"));
        for key in keys("test/full/") {
            remove(&key);
        }
    }
}
