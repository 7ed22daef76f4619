//! Bringing in a build from a file.

use build_journal::{BuildId, ImportError, Imported, Journal, bundle, fold, import};
use js_sys::Uint8Array;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Event, File, HtmlInputElement};

use super::card::name_of;
use crate::device::files;
use crate::device::keeping::{Keeping, keeping};
use crate::device::photos;
use crate::kit::dialog::dialog;
use crate::kit::piece::{Piece, button, el, link, p, row};
use crate::later::{bring_in_later, take_later};
use crate::route::{Page, Route};

/// What came of a file.
#[derive(Clone, PartialEq)]
pub enum Came {
    /// A sentence about it.
    Said(String),
    /// It brought something into a build that was here: worth a look.
    Merged(String, BuildId),
    /// It stops in the middle; this much can be saved.
    CutShort(String, Box<Journal>),
}

/// The button that takes a file, and what came of it.
#[must_use]
pub fn import_file() -> Piece {
    let keeping = keeping();
    let came = RwSignal::new(None::<Came>);
    let open = RwSignal::new(false);
    // Whether a build is here already is known only once the book is read: a
    // file that is picked before that waits for it.
    let waiting = RwSignal::new_local(None::<File>);
    Effect::new(move |_| {
        if !keeping.is_open() {
            return;
        }
        let Some(file) = waiting.get() else {
            return;
        };
        waiting.set(None);
        spawn_local(async move {
            let said = read(keeping, &file).await;
            came.set(Some(said));
            open.set(true);
        });
    });
    let picked = move |event: Event| {
        let input = event
            .target()
            .and_then(|input| input.dyn_into::<HtmlInputElement>().ok());
        if let Some(file) = input.as_ref().and_then(files::picked) {
            waiting.set(Some(file));
        }
    };
    let save_the_rest = move || {
        let Some(Came::CutShort(_, journal)) = came.get_untracked() else {
            return;
        };
        spawn_local(async move {
            let words = match bring_in_later(keeping, journal).await {
                Ok(count) => format!("{} from the file are in the book now.", lines(count)),
                Err(words) => words,
            };
            came.set(Some(Came::Said(words)));
        });
    };
    let says = move || match came.get() {
        None => Piece::none(),
        Some(Came::Said(words)) => p(&words).test("import-says").into(),
        Some(Came::Merged(words, build)) => Piece::all([
            p(&words).test("import-says").into(),
            link(
                "",
                &Route::Build(build.to_string(), Page::Merge),
                "See what came in",
            )
            .test("import-look")
            .into(),
        ]),
        Some(Came::CutShort(words, _)) => Piece::all([
            p(&words).test("import-says").into(),
            button("", "Take in what is whole", "import-rescue", save_the_rest).into(),
        ]),
    };
    let input = el("input")
        .attr("type", "file")
        .class("only-heard")
        .attr(
            "accept",
            ".json,.txt,.zip,application/json,text/plain,application/zip,image/*",
        )
        .test("import-file")
        .on("change", picked);
    let label = el("label")
        .class("button quiet file")
        .text("Bring in a file")
        .with(input);
    let answer = dialog(open, "The file", "import-dialog", move || {
        let close = button("quiet", "Close", "import-close", move || open.set(false));
        Piece::all([Piece::live(says), row([close.into()]).into()])
    });
    Piece::all([label.into(), answer.into()])
}

/// Reads a file and takes it in.
async fn read(keeping: Keeping, file: &File) -> Came {
    match JsFuture::from(file.array_buffer()).await {
        Ok(buffer) => take_later(keeping, Uint8Array::new(&buffer).to_vec()).await,
        Err(error) => Came::Said(format!("The file could not be read: {error:?}")),
    }
}

/// Takes in what stands in a file: a build, a build with its photos, or one
/// photo that a build here tells of.
pub async fn take(keeping: Keeping, bytes: Vec<u8>) -> Came {
    if bundle::is_bundle(&bytes) {
        return match bundle::unpack(&bytes) {
            Ok(unpacked) => {
                let photos = take_photos(&unpacked).await;
                told(keeping, &unpacked.imported, photos).await
            }
            Err(error) => Came::Said(error.to_string()),
        };
    }
    if let Some(words) = lone_photo(keeping, &bytes).await {
        return Came::Said(words);
    }
    match import(&bytes) {
        Ok(imported) => told(keeping, &imported, String::new()).await,
        Err(ImportError::CutShort {
            rescued: Some(rescued),
            line,
            column,
        }) if !rescued.journal.is_empty() => {
            let journal = Box::new(rescued.journal.clone());
            let error = ImportError::CutShort {
                line,
                column,
                rescued: Some(rescued),
            };
            Came::CutShort(error.to_string(), journal)
        }
        Err(error) => Came::Said(error.to_string()),
    }
}

/// Keeps the photos of a bundle, and says how that went.
async fn take_photos(unpacked: &bundle::Unpacked<'_>) -> String {
    let mut words = String::new();
    let (mut kept, mut trouble) = (0, None);
    for (hash, bytes) in &unpacked.photos {
        match photos::put(hash, bytes).await {
            Ok(()) => kept += 1,
            Err(error) => trouble = Some(error),
        }
    }
    match kept {
        0 => {}
        1 => words.push_str(" One photo came with it."),
        more => words.push_str(&format!(" {more} photos came with it.")),
    }
    if let Some(trouble) = trouble {
        let lost = unpacked.photos.len() - kept;
        words.push_str(&format!(
            " {lost} of its photos could not be kept. {trouble}"
        ));
    }
    match unpacked.missing.len() {
        0 => {}
        1 => words.push_str(" One photo is told of and is not in the file."),
        more => words.push_str(&format!(
            " {more} photos are told of and are not in the file."
        )),
    }
    match unpacked.strange.len() {
        0 => {}
        1 => words.push_str(" One thing in the file is no photo of this build and was left out."),
        more => words.push_str(&format!(
            " {more} things in the file are no photos of this build and were left out."
        )),
    }
    words
}

/// A picture by itself: kept when a build here tells of it. `None` when none does.
async fn lone_photo(keeping: Keeping, bytes: &[u8]) -> Option<String> {
    let hash = bundle::digest(bytes);
    let build = untrack(|| keeping.builds())
        .into_iter()
        .find_map(|(_, journal)| {
            journal.with_untracked(|journal| {
                bundle::photos(journal)
                    .contains_key(hash.as_str())
                    .then(|| name_of(&fold(journal)))
            })
        })?;
    Some(match photos::put(&hash, bytes).await {
        Ok(()) => format!("This is a photo of {build}. It is in its place now."),
        Err(error) => format!("This is a photo of {build}, and it could not be kept. {error}"),
    })
}

async fn told(keeping: Keeping, imported: &Imported, photos: String) -> Came {
    let journal = &imported.journal;
    let was_here = keeping.knows(journal.build());
    let count = keeping.bring_in(journal).await;
    let mut words = match (was_here, count) {
        (false, count) => format!("The build is on this device now: {}.", lines(count)),
        (true, 0) => "Everything in the file was here already: nothing has changed.".to_owned(),
        (true, count) => format!("{} came in that were not here before.", lines(count)),
    };
    words.push_str(&photos);
    if imported.doubles > 0 {
        words.push_str(&format!(
            " {} stood in the file twice.",
            lines(imported.doubles)
        ));
    }
    let aside = journal.set_aside().count();
    if aside > 0 {
        words.push_str(&format!(
            " {} could not be read and {} set aside; the book of the build shows them.",
            lines(aside),
            if aside == 1 { "is" } else { "are" }
        ));
    }
    if was_here && count > 0 {
        Came::Merged(words, journal.build())
    } else {
        Came::Said(words)
    }
}

fn lines(count: usize) -> String {
    match count {
        1 => "One line".to_owned(),
        count => format!("{count} lines"),
    }
}
