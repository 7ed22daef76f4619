//! How much room the browser gives, and whether it promises to keep it.

use js_sys::Reflect;
use leptos::prelude::window;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::StorageManager;

/// What the browser says about the room for this page.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Space {
    /// Bytes in use, pages and all.
    pub used: f64,
    /// Bytes there may be in all.
    pub quota: f64,
    /// Whether the browser promised not to clear it away by itself.
    pub promised: bool,
}

/// The manager, where there is one: pages that are not served safely have none.
fn manager() -> Option<StorageManager> {
    Reflect::get(&window().navigator(), &"storage".into())
        .ok()?
        .dyn_into()
        .ok()
}

/// Asks what room there is; `None` where the browser does not say.
pub async fn look() -> Option<Space> {
    let manager = manager()?;
    let estimate = JsFuture::from(manager.estimate().ok()?).await.ok()?;
    let number = |name: &str| Reflect::get(&estimate, &name.into()).ok()?.as_f64();
    Some(Space {
        used: number("usage")?,
        quota: number("quota").filter(|quota| *quota > 0.0)?,
        promised: answer(manager.persisted()).await,
    })
}

/// Asks the browser to promise that it will not clear the book away by itself.
/// Some ask the person, some decide alone, some say no.
pub async fn ask_to_keep() -> bool {
    match manager() {
        Some(manager) => answer(manager.persist()).await,
        None => false,
    }
}

async fn answer(asked: Result<js_sys::Promise, JsValue>) -> bool {
    match asked {
        Ok(promise) => JsFuture::from(promise)
            .await
            .is_ok_and(|answer| answer == JsValue::TRUE),
        Err(_) => false,
    }
}
