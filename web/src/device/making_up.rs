//! Making up for what could not be kept: tried again with the next write that
//! goes well, and told on the screen for as long as it lasts.

use build_journal::storage::{Entry, StorageError, Vault as _};
use leptos::prelude::*;

use super::keeping::{KEEPER, Keeping, Trouble};
use super::lack::make_up_shelf;
use super::local::LocalShelf;

impl Keeping {
    /// Notes how the two copies took some entries, and tries what they lack from
    /// before once more. `facts` of them were not known before.
    pub(super) async fn note_writing(
        self,
        written: &[Entry],
        facts: usize,
        shelf: Result<(), StorageError>,
        vault: Result<(), StorageError>,
    ) {
        let (shelf_works, vault_works) = (shelf.is_ok(), vault.is_ok());
        self.lacks.update_value(|lacks| {
            lacks.shelf.note(written, shelf);
            lacks.vault.note(written, vault);
            if shelf_works {
                make_up_shelf(&mut lacks.shelf, &LocalShelf);
            }
        });
        if vault_works {
            self.acknowledged.update(|count| *count += facts);
            self.make_up_vault().await;
        }
        let unread = self.lacks.with_value(|lacks| {
            (shelf_works && lacks.shelf.is_unread()) || (vault_works && lacks.vault.is_unread())
        });
        if unread {
            // It takes writes again, so it may be read again, too.
            self.look().await;
        }
        self.show_trouble();
    }

    async fn make_up_vault(self) {
        let lacking = self
            .lacks
            .with_value(|lacks| lacks.vault.entries().to_vec());
        if lacking.is_empty() {
            return;
        }
        let written = KEEPER.vault().write(&lacking).await;
        if written.is_ok() {
            self.acknowledged.update(|count| *count += lacking.len());
        }
        self.lacks
            .update_value(|lacks| lacks.vault.note(&lacking, written));
    }

    pub(super) fn show_trouble(self) {
        let now = self.lacks.with_value(|lacks| Trouble {
            shelf: lacks.shelf.trouble().cloned(),
            vault: lacks.vault.trouble().cloned(),
        });
        if self.trouble.with_untracked(|was| *was != now) {
            self.trouble.set(now);
        }
    }
}
