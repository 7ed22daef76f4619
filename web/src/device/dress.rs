//! The style sheet of the pages that arrive later. The page names it in a link
//! that a browser does not follow; here it becomes one that it does.

use std::cell::RefCell;
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
    /// The sheet on its way, or arrived: one for all who wait. A browser tells of
    /// its arrival once.
    static COMING: RefCell<Option<Promise>> = const { RefCell::new(None) };
}

/// Asks for the sheet at once, and tells whether it is here when it is known. If
/// it can't be fetched, it may be asked for again.
pub fn later() -> impl Future<Output = bool> + 'static {
    let coming = document().get_element_by_id(LINK).map(|link| {
        let promise =
            COMING.with_borrow_mut(|coming| coming.get_or_insert_with(|| follow(&link)).clone());
        (promise, link)
    });
    async move {
        if let Some((promise, link)) = coming
            && JsFuture::from(promise).await.is_err()
        {
            COMING.set(None);
            let _ = link.set_attribute("rel", "later");
            return false;
        }
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
