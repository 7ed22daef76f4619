//! Bringing in a build from a file.

use build_journal::{ImportError, Imported, Journal, import};
use js_sys::Uint8Array;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Event, File, HtmlInputElement};

use crate::device::files;
use crate::device::keeping::{Keeping, keeping};
use crate::kit::dialog::dialog;
use crate::kit::piece::{Piece, button, el, p, row};
use crate::later::{bring_in_later, take_later};

/// What came of a file.
#[derive(Clone, PartialEq)]
pub enum Came {
    /// A sentence about it.
    Said(String),
    /// It stops in the middle; this much can be saved.
    CutShort(String, Box<Journal>),
}

/// The button that takes a file, and what came of it.
#[must_use]
pub fn import_file() -> Piece {
    let keeping = keeping();
    let came = RwSignal::new(None::<Came>);
    let open = RwSignal::new(false);
    let picked = move |event: Event| {
        let input = event
            .target()
            .and_then(|input| input.dyn_into::<HtmlInputElement>().ok());
        let Some(file) = input.as_ref().and_then(files::picked) else {
            return;
        };
        spawn_local(async move {
            let said = read(keeping, &file).await;
            came.set(Some(said));
            open.set(true);
        });
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
        Some(Came::CutShort(words, _)) => Piece::all([
            p(&words).test("import-says").into(),
            button("", "Take in what is whole", "import-rescue", save_the_rest).into(),
        ]),
    };
    let input = el("input")
        .attr("type", "file")
        .class("only-heard")
        .attr("accept", ".json,.txt,application/json,text/plain")
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

/// Takes in what stands in a file.
pub async fn take(keeping: Keeping, bytes: Vec<u8>) -> Came {
    match import(&bytes) {
        Ok(imported) => Came::Said(told(keeping, &imported).await),
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

async fn told(keeping: Keeping, imported: &Imported) -> String {
    let journal = &imported.journal;
    let new_here = keeping.knows(journal.build());
    let count = keeping.bring_in(journal).await;
    let mut words = match (new_here, count) {
        (false, count) => format!("The build is on this device now: {}.", lines(count)),
        (true, 0) => "Everything in the file was here already: nothing has changed.".to_owned(),
        (true, count) => format!("{} came in that were not here before.", lines(count)),
    };
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
    words
}

fn lines(count: usize) -> String {
    match count {
        1 => "One line".to_owned(),
        count => format!("{count} lines"),
    }
}
