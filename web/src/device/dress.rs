//! The style sheet of the pages that arrive later. The page names it in a link
//! that a browser does not follow; here it becomes one that it does.

use std::cell::Cell;
use std::future::Future;

use js_sys::Promise;
use leptos::prelude::document;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;
use web_sys::Element;

/// The link of the page, put there by `cargo xtask build`. Without it the page
/// has all of its styles already.
const LINK: &str = "later-style";

thread_local! {
    /// Whether the sheet has arrived.
    static HERE: Cell<bool> = const { Cell::new(false) };
}

/// Asks for the sheet at once, and tells whether it is here when it is known. If
/// it can't be fetched, it may be asked for again.
pub fn later() -> impl Future<Output = bool> + 'static {
    let coming = document()
        .get_element_by_id(LINK)
        .filter(|_| !HERE.get())
        .map(|link| (follow(&link), link));
    async move {
        if let Some((coming, link)) = coming
            && JsFuture::from(coming).await.is_err()
        {
            let _ = link.set_attribute("rel", "later");
            return false;
        }
        HERE.set(true);
        true
    }
}

/// Has the browser follow the link.
fn follow(link: &Element) -> Promise {
    Promise::new(&mut |arrived, failed| {
        let heard = link
            .add_event_listener_with_callback("load", &arrived)
            .and_then(|()| link.add_event_listener_with_callback("error", &failed))
            .and_then(|()| link.set_attribute("rel", "stylesheet"));
        if let Err(cause) = heard {
            let _ = failed.call1(&JsValue::UNDEFINED, &cause);
        }
    })
}
