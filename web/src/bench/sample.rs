//! The sample engine: brought in by one tap, and taken off by one.

use build_journal::sample::{SAMPLE, is_sample};
use build_journal::{BuildId, import};
use js_sys::Uint8Array;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::Response;

use super::taking_off::take_off;
use crate::build::map::Place;
use crate::device::exports::exports;
use crate::device::keeping::{Keeping, keeping};
use crate::kit::piece::{El, Piece, button, note};
use crate::kit::toast::toast;
use crate::later::sample_later;
use crate::route::{self, Page, Route};

/// A file of the page, which the service worker has kept.
const FILE: &str = "./sample-engine.json";
const NOT_HERE: &str =
    "The sample is not on this device yet and can't be fetched now. Try again with a signal.";

/// The button that brings the sample in, as long as it is not here.
#[must_use]
pub fn sample_button() -> Piece {
    let keeping = keeping();
    let toast = toast();
    let fetching = RwSignal::new(false);
    let bring = move || {
        // A second tap while the first is at work does nothing.
        if fetching.get_untracked() {
            return;
        }
        fetching.set(true);
        spawn_local(async move {
            let came = sample_later(keeping).await;
            let _ = fetching.try_set(false);
            match came {
                Ok(()) => route::go(&Route::Build(SAMPLE.to_string(), Page::Map(Place::Whole))),
                Err(words) => toast.say(words),
            }
        });
    };
    Piece::when(
        move || keeping.is_open() && keeping.build(SAMPLE).is_none(),
        move || button("quiet", "A sample engine to play with", "sample", bring).into(),
    )
}

/// Fetches the sample and keeps it.
///
/// # Errors
/// A sentence, when it can't be fetched or is not what it should be.
pub async fn bring_in_sample(keeping: Keeping) -> Result<(), String> {
    let bytes = fetched().await.map_err(|_| NOT_HERE.to_owned())?;
    let imported = import(&bytes).map_err(|error| error.to_string())?;
    if !is_sample(imported.journal.build()) {
        return Err(NOT_HERE.to_owned());
    }
    let _ = keeping.bring_in(&imported.journal).await;
    Ok(())
}

async fn fetched() -> Result<Vec<u8>, JsValue> {
    let answer = JsFuture::from(window().fetch_with_str(FILE)).await?;
    let answer: Response = answer.dyn_into()?;
    if !answer.ok() {
        return Err(JsValue::from(answer.status()));
    }
    let buffer = JsFuture::from(answer.array_buffer()?).await?;
    Ok(Uint8Array::new(&buffer).to_vec())
}

/// Says that a build is the sample; nothing of any other.
#[must_use]
pub fn says_sample(build: BuildId) -> Option<El> {
    let words = "A sample: its numbers are invented.";
    is_sample(build).then(|| note("sample-says", words).test("sample-says"))
}

/// The button that takes the sample off, and all that was done to it.
#[must_use]
pub fn remove_sample() -> El {
    let (keeping, exports, toast) = (keeping(), exports(), toast());
    button("quiet", "Remove the sample", "sample-remove", move || {
        spawn_local(async move {
            match take_off(keeping, exports, SAMPLE).await {
                Ok(()) => toast.say("The sample is gone from this device."),
                Err(error) => toast.say(format!("Not all of it could be removed. {error}")),
            }
        });
    })
}
