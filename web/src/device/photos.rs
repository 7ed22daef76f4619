//! The photos on this device, in a database of their own, by the digest of
//! their bytes. The service worker has nothing to do with them.

use std::cell::RefCell;
use std::collections::BTreeMap;

use build_journal::fact::Photo;
use build_journal::storage::StorageError;
use build_journal::{Journal, bundle};
use idb::{
    Database, DatabaseEvent, Factory, ObjectStoreParams, Query, Transaction, TransactionMode,
};
use js_sys::{Array, Uint8Array};
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, IdbDatabase, Url};

use super::database::{completed, problem, writing};

const NAME: &str = "thoubook-photos";
const VERSION: u32 = 1;
const STORE: &str = "photos";

thread_local! {
    static HANDLE: RefCell<Option<IdbDatabase>> = const { RefCell::new(None) };
}

fn forget() {
    if let Some(handle) = HANDLE.take() {
        handle.close();
    }
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

async fn handle() -> Result<IdbDatabase, StorageError> {
    match HANDLE.with_borrow(Clone::clone) {
        Some(handle) => Ok(handle),
        None => open().await,
    }
}

/// Does something with the database; once more with a new handle when the old
/// one died while the page lay in the background.
async fn try_twice<T>(
    act: impl AsyncFn(IdbDatabase) -> Result<T, StorageError>,
) -> Result<T, StorageError> {
    match act(handle().await?).await {
        Err(StorageError::Gone) => {
            forget();
            act(open().await?).await
        }
        other => other,
    }
}

/// Keeps a photo. Done when the disk has it.
///
/// # Errors
/// [`StorageError`] when it is not kept.
pub async fn put(hash: &str, bytes: &[u8]) -> Result<(), StorageError> {
    try_twice(async |handle| {
        let transaction = writing(handle, STORE).map_err(problem)?;
        let store = Transaction::from(transaction.clone())
            .object_store(STORE)
            .map_err(problem)?;
        let value: JsValue = Uint8Array::from(bytes).into();
        store
            .put(&value, Some(&JsValue::from_str(hash)))
            .map_err(problem)?;
        completed(transaction).await
    })
    .await
}

/// A photo, when it is here.
///
/// # Errors
/// [`StorageError`] when the database can't be asked.
pub async fn get(hash: &str) -> Result<Option<Vec<u8>>, StorageError> {
    try_twice(async |handle| {
        let transaction = Database::from(handle)
            .transaction(&[STORE], TransactionMode::ReadOnly)
            .map_err(problem)?;
        let store = transaction.object_store(STORE).map_err(problem)?;
        let found = store
            .get(Query::Key(JsValue::from_str(hash)))
            .map_err(problem)?
            .await
            .map_err(problem)?;
        let bytes = found.and_then(|value| value.dyn_into::<Uint8Array>().ok());
        Ok(bytes.map(|bytes| bytes.to_vec()))
    })
    .await
}

/// The digests of all photos on this device.
///
/// # Errors
/// [`StorageError`] when the database can't be asked.
pub async fn here() -> Result<Vec<String>, StorageError> {
    try_twice(async |handle| {
        let transaction = Database::from(handle)
            .transaction(&[STORE], TransactionMode::ReadOnly)
            .map_err(problem)?;
        let store = transaction.object_store(STORE).map_err(problem)?;
        let keys = store
            .get_all_keys(None, None)
            .map_err(problem)?
            .await
            .map_err(problem)?;
        Ok(keys.iter().filter_map(JsValue::as_string).collect())
    })
    .await
}

/// Takes photos off this device.
///
/// # Errors
/// [`StorageError`] when some may still be there.
pub async fn remove(hashes: &[String]) -> Result<(), StorageError> {
    if hashes.is_empty() {
        return Ok(());
    }
    try_twice(async |handle| {
        let transaction = writing(handle, STORE).map_err(problem)?;
        let store = Transaction::from(transaction.clone())
            .object_store(STORE)
            .map_err(problem)?;
        for hash in hashes {
            store
                .delete(Query::Key(JsValue::from_str(hash)))
                .map_err(problem)?;
        }
        completed(transaction).await
    })
    .await
}

/// The photos of a build that are here, by digest.
pub async fn at_hand(journal: &Journal) -> BTreeMap<String, Vec<u8>> {
    let mut found = BTreeMap::new();
    for hash in bundle::photos(journal).into_keys() {
        // One that can't be read is as good as missing, and is told as such.
        if let Ok(Some(bytes)) = get(hash).await {
            found.insert(hash.to_owned(), bytes);
        }
    }
    found
}

/// The digests that only this one of some builds tells of.
#[must_use]
pub fn only_in(journal: &Journal, others: &[Journal]) -> Vec<String> {
    let of_others: Vec<_> = others.iter().map(bundle::photos).collect();
    bundle::photos(journal)
        .into_keys()
        .filter(|hash| !of_others.iter().any(|photos| photos.contains_key(hash)))
        .map(str::to_owned)
        .collect()
}

/// How a photo shows on the screen.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Shown {
    /// It is being looked for.
    NotYet,
    /// It is not on this device.
    Missing,
    /// The database can't be asked, for this reason.
    Refused(String),
    /// It is here, at this address within the page.
    At(String),
}

/// Looks for a photo to be shown for as long as what is being made stands.
#[must_use]
pub fn show(photo: &Photo) -> RwSignal<Shown> {
    let shown = RwSignal::new(Shown::NotYet);
    let (hash, media) = (photo.hash.clone(), photo.media.clone());
    spawn_local(async move {
        let now = match get(&hash).await {
            Ok(None) => Shown::Missing,
            Err(error) => Shown::Refused(error.to_string()),
            Ok(Some(bytes)) => match address_of(&bytes, &media) {
                Ok(address) => Shown::At(address),
                Err(_) => Shown::Refused("The browser would not take it.".to_owned()),
            },
        };
        if let Some(Shown::At(address)) = shown.try_set(now) {
            // Nobody is there to see it any more.
            let _ = Url::revoke_object_url(&address);
        }
    });
    on_cleanup(move || {
        if let Some(Shown::At(address)) = shown.try_get_untracked() {
            let _ = Url::revoke_object_url(&address);
        }
    });
    shown
}

/// The kinds of pictures that are shown: a forged file must not name another.
const MEDIA: [&str; 3] = ["image/jpeg", "image/png", "image/webp"];

fn address_of(bytes: &[u8], media: &str) -> Result<String, JsValue> {
    let options = BlobPropertyBag::new();
    let known = MEDIA.iter().find(|one| **one == media);
    options.set_type(known.copied().unwrap_or("application/octet-stream"));
    let parts: Array = [Uint8Array::from(bytes)].iter().collect();
    let blob = Blob::new_with_u8_array_sequence_and_options(&parts, &options)?;
    Url::create_object_url_with_blob(&blob)
}

#[cfg(all(test, target_arch = "wasm32"))]
mod tests {
    use super::*;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    async fn a_photo_comes_back_byte_for_byte_and_goes_when_it_is_taken_off() {
        let bytes: Vec<u8> = (0..=255).collect();
        put("test-photo", &bytes).await.unwrap();
        assert_eq!(get("test-photo").await.unwrap(), Some(bytes));
        assert!(here().await.unwrap().contains(&"test-photo".to_owned()));
        remove(&["test-photo".to_owned()]).await.unwrap();
        assert_eq!(get("test-photo").await.unwrap(), None);
        assert_eq!(get("never there").await.unwrap(), None);
    }

    #[wasm_bindgen_test]
    async fn a_handle_that_died_is_opened_again() {
        put("test-died", &[1, 2]).await.unwrap();
        HANDLE.with_borrow(|handle| handle.as_ref().unwrap().close());
        assert_eq!(get("test-died").await.unwrap(), Some(vec![1, 2]));
        remove(&["test-died".to_owned()]).await.unwrap();
    }
}
