//! Giving a file to the person and taking one from them.

use js_sys::{Array, Uint8Array};
use leptos::prelude::document;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, HtmlAnchorElement, HtmlInputElement, Url};

/// Hands a text over as a file, into the downloads.
///
/// # Errors
/// The browser's words, when it would not.
pub fn give(name: &str, text: &str) -> Result<(), JsValue> {
    hand_over(name, "application/json", &JsValue::from_str(text))
}

/// Hands bytes over as a file, into the downloads.
///
/// # Errors
/// The browser's words, when it would not.
pub fn give_bytes(name: &str, media: &str, bytes: &[u8]) -> Result<(), JsValue> {
    hand_over(name, media, &Uint8Array::from(bytes))
}

fn hand_over(name: &str, media: &str, whole: &JsValue) -> Result<(), JsValue> {
    let options = BlobPropertyBag::new();
    options.set_type(media);
    let parts: Array = [whole].into_iter().collect();
    let blob = Blob::new_with_blob_sequence_and_options(&parts, &options)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlAnchorElement = document().create_element("a")?.dyn_into()?;
    link.set_href(&address);
    link.set_download(name);
    // Firefox follows a link only when it is part of the page.
    if let Some(body) = document().body() {
        body.append_child(&link)?;
    }
    link.click();
    link.remove();
    // The browser may still be reading: the address is given back a minute later.
    leptos::prelude::set_timeout(
        move || {
            let _ = Url::revoke_object_url(&address);
        },
        std::time::Duration::from_secs(60),
    );
    Ok(())
}

/// The file that was picked, and the field made ready for the next pick.
#[must_use]
pub fn picked(input: &HtmlInputElement) -> Option<File> {
    let file = input.files()?.get(0);
    // Without this, picking the same file again says nothing.
    input.set_value("");
    file
}

/// The file's text. Bytes that are no text become replacement characters.
///
/// # Errors
/// The browser's words, when the file cannot be read.
pub async fn text_of(file: &File) -> Result<String, String> {
    let text = JsFuture::from(file.text())
        .await
        .map_err(|error| format!("the file could not be read: {error:?}"))?;
    text.as_string()
        .ok_or_else(|| "the file holds no text".to_owned())
}
