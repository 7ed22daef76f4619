//! How much room there is, and whether the browser promises to keep it.

use std::collections::BTreeMap;

use build_journal::bundle;
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::device::keeping::{Keeping, keeping};
use crate::device::photos;
use crate::device::space::{self, Space};
use crate::kit::judged::share_bar;
use crate::kit::piece::{Piece, button, p, row};
use crate::kit::section::section;
use crate::later::photos_words_later;

/// The room for the book, as far as the browser says.
#[must_use]
pub fn room() -> Piece {
    let keeping = keeping();
    let found = RwSignal::new(None::<Space>);
    let photos = RwSignal::new(None::<String>);
    let look = move || {
        spawn_local(async move {
            let space = space::look().await;
            // The bench may have been left meanwhile.
            let _ = found.try_set(space);
            // Without a build there are none, and nothing to count them with.
            if untrack(|| !keeping.builds().is_empty()) {
                let _ = photos.try_set(photos_words_later(keeping).await);
            }
        });
    };
    // Looked at again when something has been kept.
    Effect::new(move |_| {
        let _ = keeping.acknowledged();
        look();
    });
    let ask = move || {
        spawn_local(async move {
            let _ = space::ask_to_keep().await;
            look();
        });
    };
    Piece::live(move || {
        let photos = photos.get().map(|words| p(&words).test("room-photos"));
        let Some(space) = found.get() else {
            // A browser that does not say how much room there is has photos all
            // the same.
            return photos
                .map(|words| section("Room").test("room").with(words))
                .into();
        };
        let used = format!(
            "{} of {} that this browser gives are in use, page and all.",
            size(space.used),
            size(space.quota)
        );
        section("Room")
            .test("room")
            .with(p(&used))
            .with(share_bar(space.used / space.quota))
            .with(photos)
            .with(promise(space.promised, ask))
            .into()
    })
}

fn promise(promised: bool, ask: impl FnMut() + 'static) -> Piece {
    if promised {
        return p("The browser promises not to clear it away by itself.").into();
    }
    Piece::all([
        p("The browser may clear it away when room gets short: export now and then.").into(),
        row([button("quiet", "Ask it to keep the book", "ask-to-keep", ask).into()]).into(),
    ])
}

/// How many photos are here and what they take; nothing while no build has any.
pub async fn photos_words(keeping: Keeping) -> Option<String> {
    let mut told = BTreeMap::new();
    for (_, journal) in untrack(|| keeping.builds()) {
        journal.with_untracked(|journal| {
            for (hash, photo) in bundle::photos(journal) {
                told.insert(hash.to_owned(), f64::from(photo.bytes));
            }
        });
    }
    if told.is_empty() {
        return None;
    }
    let here = photos::here().await.ok()?;
    let found: Vec<f64> = here.iter().filter_map(|hash| told.remove(hash)).collect();
    let mut words = format!("Photos: {}, {}.", found.len(), size(found.iter().sum()));
    match told.len() {
        0 => {}
        1 => words.push_str(" One more is told of and is not on this device."),
        more => words.push_str(&format!(
            " {more} more are told of and are not on this device."
        )),
    }
    Some(words)
}

/// A number of bytes as people say it.
fn size(bytes: f64) -> String {
    if bytes < 1e9 {
        format!("{:.1} MB", bytes / 1e6)
    } else {
        format!("{:.0} GB", bytes / 1e9)
    }
}
