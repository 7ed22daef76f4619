//! IndexedDB: the copy that survives a killed browser.
//!
//! One store of texts by key. A write counts as done only when its transaction
//! has completed. A handle that died while the page lay in the background shows
//! as [`StorageError::Gone`]; whoever asked opens it again and asks once more.

use std::cell::RefCell;
use std::future::IntoFuture;

use build_journal::storage::{Entry, StorageError, Vault};
use idb::{
    Database, DatabaseEvent, Factory, KeyRange, ObjectStoreParams, Query, Transaction,
    TransactionMode,
};
use js_sys::{Array, Function, Object, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{IdbDatabase, IdbTransaction};

const NAME: &str = "thoubook";
const VERSION: u32 = 1;
const STORE: &str = "facts";

/// The browser's error in the words of the book. The crate wraps it in many
/// ways; its name is in all of them.
pub(super) fn problem(error: idb::Error) -> StorageError {
    let words = error.to_string();
    let has = |names: &[&str]| names.iter().any(|name| words.contains(name));
    if has(&["QuotaExceeded"]) {
        StorageError::Full
    } else if has(&["SecurityError"]) || matches!(error, idb::Error::IndexedDbNotFound(_)) {
        StorageError::Blocked
    } else if has(&[
        "InvalidState",
        "UnknownError",
        "AbortError",
        "TransactionInactive",
    ]) {
        StorageError::Gone
    } else {
        StorageError::Failed { reason: words }
    }
}

/// Whether the database may be there. Asking makes none; a browser that doesn't
/// say leaves it open.
pub async fn may_be_there() -> bool {
    let Some(found) = databases().await else {
        return true;
    };
    found
        .iter()
        .any(|one| Reflect::get(&one, &"name".into()).is_ok_and(|name| name == NAME))
}

/// All databases of this page, as the browser lists them.
async fn databases() -> Option<Array> {
    let factory = Reflect::get(&js_sys::global(), &"indexedDB".into()).ok()?;
    let list: Function = Reflect::get(&factory, &"databases".into())
        .ok()?
        .dyn_into()
        .ok()?;
    let promise: Promise = list.call0(&factory).ok()?.dyn_into().ok()?;
    JsFuture::from(promise).await.ok()?.dyn_into().ok()
}

thread_local! {
    static HANDLE: RefCell<Option<IdbDatabase>> = const { RefCell::new(None) };
}

async fn open() -> Result<IdbDatabase, StorageError> {
    let mut request = Factory::new()
        .and_then(|factory| factory.open(NAME, Some(VERSION)))
        .map_err(problem)?;
    request.on_upgrade_needed(|event| {
        // A store that cannot be made shows as a failing transaction later.
        if let Ok(database) = event.database() {
            let _ = database.create_object_store(STORE, ObjectStoreParams::new());
        }
    });
    let mut database = request.await.map_err(problem)?;
    // A newer version of the page in another tab must not wait for this one.
    database.on_version_change(|_| forget());
    database.on_close(|_| forget());
    database.forget_callbacks();
    let handle = IdbDatabase::from(database);
    HANDLE.set(Some(handle.clone()));
    Ok(handle)
}

fn forget() {
    if let Some(handle) = HANDLE.take() {
        handle.close();
    }
}

async fn handle() -> Result<IdbDatabase, StorageError> {
    match HANDLE.with_borrow(Clone::clone) {
        Some(handle) => Ok(handle),
        None => open().await,
    }
}

/// IndexedDB as the vault of the facts.
#[derive(Clone, Copy, Debug)]
pub struct IndexedVault;

impl Vault for IndexedVault {
    async fn all(&self, prefix: &str) -> Result<Vec<Entry>, StorageError> {
        read(handle().await?, prefix).await.map_err(problem)
    }

    async fn write(&self, entries: &[Entry]) -> Result<(), StorageError> {
        let transaction = writing(handle().await?, STORE).map_err(problem)?;
        let store = Transaction::from(transaction.clone())
            .object_store(STORE)
            .map_err(problem)?;
        for entry in entries {
            let key = JsValue::from_str(&entry.key);
            store
                .put(&JsValue::from_str(&entry.text), Some(&key))
                .map_err(problem)?;
        }
        completed(transaction).await
    }

    async fn remove(&self, keys: &[String]) -> Result<(), StorageError> {
        let transaction = writing(handle().await?, STORE).map_err(problem)?;
        let store = Transaction::from(transaction.clone())
            .object_store(STORE)
            .map_err(problem)?;
        for key in keys {
            store.delete(Query::Key(key.into())).map_err(problem)?;
        }
        completed(transaction).await
    }

    async fn reopen(&self) -> Result<(), StorageError> {
        forget();
        open().await.map(drop)
    }
}

/// Waits for the end of a transaction. It is heard by two functions of the
/// browser's own: whatever it tells later finds nothing of ours that is gone.
pub(super) async fn completed(transaction: IdbTransaction) -> Result<(), StorageError> {
    let end = Promise::new(&mut |completed, aborted| {
        transaction.set_oncomplete(Some(&completed));
        transaction.set_onabort(Some(&aborted));
    });
    JsFuture::from(end).await.map(drop).map_err(|_| {
        // The transaction itself knows why it failed.
        transaction.error().map_or(StorageError::Gone, |cause| {
            problem(idb::Error::DomException(cause))
        })
    })
}

async fn read(handle: IdbDatabase, prefix: &str) -> Result<Vec<Entry>, idb::Error> {
    let transaction = Database::from(handle).transaction(&[STORE], TransactionMode::ReadOnly)?;
    let store = transaction.object_store(STORE)?;
    let after = format!("{prefix}\u{ffff}");
    let range = || KeyRange::bound(&prefix.into(), &after.as_str().into(), None, None);
    // Both are asked for before either is awaited, so that the transaction does
    // not end in between and no answer comes unheard.
    let keys = store
        .get_all_keys(Some(Query::KeyRange(range()?)), None)?
        .into_future();
    let values = store
        .get_all(Some(Query::KeyRange(range()?)), None)?
        .into_future();
    let (keys, values) = (keys.await?, values.await?);
    Ok(keys
        .iter()
        .zip(values)
        .filter_map(|(key, value)| {
            Some(Entry {
                key: key.as_string()?,
                text: value.as_string()?,
            })
        })
        .collect())
}

/// A writing transaction that tells of its end only when the disk has it,
/// where the browser knows how; an ordinary one elsewhere.
pub(super) fn writing(handle: IdbDatabase, store: &str) -> Result<IdbTransaction, idb::Error> {
    if let Some(strict) = strict_transaction(&handle, store) {
        return Ok(strict);
    }
    Database::from(handle)
        .transaction(&[store], TransactionMode::ReadWrite)
        .map(Into::into)
}

fn strict_transaction(handle: &IdbDatabase, store: &str) -> Option<IdbTransaction> {
    let begin: Function = Reflect::get(handle, &"transaction".into())
        .ok()?
        .dyn_into()
        .ok()?;
    let options = Object::new();
    Reflect::set(&options, &"durability".into(), &"strict".into()).ok()?;
    let arguments: [JsValue; 3] = [store.into(), "readwrite".into(), options.into()];
    begin
        .apply(handle, &arguments.iter().collect::<Array>())
        .ok()?
        .dyn_into()
        .ok()
}

#[cfg(all(test, target_arch = "wasm32"))]
mod tests {
    use super::*;
    use build_journal::storage::Keeper;
    use build_journal::{BuildId, DeviceId, Fact, Stamper, fact};
    use wasm_bindgen_test::wasm_bindgen_test;

    use crate::device::local::{self, LocalShelf};

    fn entry(key: &str, text: &str) -> Entry {
        Entry {
            key: key.to_owned(),
            text: text.to_owned(),
        }
    }

    #[wasm_bindgen_test]
    async fn a_database_that_is_there_is_seen() {
        open().await.unwrap();
        assert!(may_be_there().await);
    }

    #[wasm_bindgen_test]
    async fn what_is_put_comes_back_by_the_beginning_of_its_key() {
        let vault = IndexedVault;
        let two = [entry("test/one/a", "1"), entry("test/one/b", "zwei µm")];
        vault.write(&two).await.unwrap();
        vault.write(&[entry("test/other", "x")]).await.unwrap();
        assert_eq!(vault.all("test/one/").await.unwrap(), two);
        let keys = two.map(|entry| entry.key);
        vault.remove(&keys).await.unwrap();
        assert!(vault.all("test/one/").await.unwrap().is_empty());
        vault.remove(&["test/other".to_owned()]).await.unwrap();
    }

    #[wasm_bindgen_test]
    async fn a_handle_that_died_is_opened_again_and_the_fact_is_kept() {
        let keeper = Keeper::new(LocalShelf, IndexedVault);
        let build = BuildId::from_random(7);
        let mut stamper = Stamper::new();
        let mut note = |text: &str| {
            let body = fact::Body::Note(fact::Note {
                text: text.to_owned(),
                place: None,
                step: None,
            });
            let id = stamper.stamp(1_700_000_000_000, 1);
            Fact::new(id, DeviceId::from_random(1), 1_700_000_000_000, body)
        };
        assert!(keeper.keep(build, &note("before")).await.is_safe());
        // What a browser does behind our back: closed, and nobody told.
        HANDLE.with_borrow(|handle| handle.as_ref().unwrap().close());
        assert!(keeper.keep(build, &note("after")).await.is_safe());
        HANDLE.with_borrow(|handle| handle.as_ref().unwrap().close());
        let found = keeper.open().await;
        assert_eq!(found.opened.journals.get(&build).unwrap().len(), 2);
        keeper.forget(build).await.unwrap();
    }

    #[wasm_bindgen_test]
    async fn what_one_copy_lost_the_other_gives_back() {
        let keeper = Keeper::new(LocalShelf, IndexedVault);
        let build = BuildId::from_random(8);
        let body = fact::Body::Note(fact::Note {
            text: "kept".to_owned(),
            place: None,
            step: None,
        });
        let id = Stamper::new().stamp(1_700_000_000_000, 2);
        let fact = Fact::new(id, DeviceId::from_random(1), 1_700_000_000_000, body);
        assert!(keeper.keep(build, &fact).await.is_safe());
        for key in local::keys(&format!("thoubook/{build}/")) {
            local::remove(&key);
        }
        let found = keeper.open().await;
        let healed = keeper.heal(&found).await;
        assert_eq!(healed.shelf, Ok(1));
        assert_eq!(local::keys(&format!("thoubook/{build}/")).len(), 1);
        keeper.forget(build).await.unwrap();
        assert!(local::keys(&format!("thoubook/{build}/")).is_empty());
    }
}
