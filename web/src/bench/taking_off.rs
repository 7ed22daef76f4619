//! Taking a build off this device: its facts, both copies of them, its photos,
//! its drafts, and the note of when it was exported.

use build_journal::storage::StorageError;
use build_journal::{BuildId, Journal};
use leptos::prelude::*;

use crate::device::exports::Exports;
use crate::device::keeping::Keeping;
use crate::device::photos;

/// Takes a build off this device. A photo that another build tells of stays.
///
/// # Errors
/// [`StorageError`] when some of it may still be there.
pub async fn take_off(keeping: Keeping, exports: Exports, id: BuildId) -> Result<(), StorageError> {
    let (own, others): (Vec<_>, Vec<_>) = untrack(|| keeping.builds())
        .into_iter()
        .partition(|(other, _)| *other == id);
    let journals = |builds: Vec<(BuildId, RwSignal<Journal>)>| -> Vec<Journal> {
        let journals = builds.into_iter();
        journals
            .map(|(_, journal)| journal.get_untracked())
            .collect()
    };
    let others = journals(others);
    let gone: Vec<String> = journals(own)
        .iter()
        .flat_map(|journal| photos::only_in(journal, &others))
        .collect();
    keeping.forget(id).await?;
    exports.forget(id);
    photos::remove(&gone).await
}
