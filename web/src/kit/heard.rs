//! What happens to the page as a whole: keys that no field takes, coming back
//! into sight.

use leptos::prelude::*;
use send_wrapper::SendWrapper;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::Event;

/// Does something when something happens to the page, for as long as what is
/// being made stands.
pub fn on_page(what: &'static str, act: impl FnMut(Event) + 'static) {
    let heard: Closure<dyn FnMut(Event)> = Closure::wrap(Box::new(act));
    let page = document();
    let listening = page.add_event_listener_with_callback(what, heard.as_ref().unchecked_ref());
    if listening.is_err() {
        return;
    }
    let held = SendWrapper::new((page, heard));
    on_cleanup(move || {
        let (page, heard) = &*held;
        let _ = page.remove_event_listener_with_callback(what, heard.as_ref().unchecked_ref());
    });
}
