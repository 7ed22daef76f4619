//! Keeps the screen from going dark while a screen stands that is looked at with
//! both hands full.

use js_sys::{Function, Promise, Reflect};
use leptos::prelude::*;
use leptos::task::spawn_local;
use send_wrapper::SendWrapper;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

fn call(of: &JsValue, name: &str, with: Option<&str>) -> Option<JsValue> {
    let function: Function = Reflect::get(of, &name.into()).ok()?.dyn_into().ok()?;
    match with {
        Some(word) => function.call1(of, &word.into()).ok(),
        None => function.call0(of).ok(),
    }
}

/// Asks the device to stay awake until what calls this goes. Where a device cannot,
/// it goes dark as always.
pub fn stay_awake() {
    let navigator: JsValue = window().navigator().into();
    let Some(lock) = Reflect::get(&navigator, &"wakeLock".into())
        .ok()
        .filter(|lock| lock.is_object())
    else {
        return;
    };
    let Some(asked) = call(&lock, "request", Some("screen")) else {
        return;
    };
    let Ok(asked) = asked.dyn_into::<Promise>() else {
        return;
    };
    let held = SendWrapper::new(asked.clone());
    on_cleanup(move || {
        let asked = held.take();
        spawn_local(async move {
            if let Ok(sentinel) = JsFuture::from(asked).await {
                let _ = call(&sentinel, "release", None);
            }
        });
    });
    spawn_local(async move {
        // A refusal, as with a low battery, is no trouble of the build's.
        let _ = JsFuture::from(asked).await;
    });
}
