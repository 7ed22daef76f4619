//! Newer versions of the page: they wait until the person wants them. The
//! service worker itself is registered before the app starts, by `start.js`.

use js_sys::{Object, Reflect};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use wasm_bindgen_futures::JsFuture;
use web_sys::{ServiceWorker, ServiceWorkerContainer, ServiceWorkerRegistration};

/// A newer version that waits for a yes.
#[derive(Clone, Copy)]
pub struct Update {
    waiting: RwSignal<Option<ServiceWorker>, LocalStorage>,
}

impl Update {
    /// Follows what the service worker finds. Where there is none, the page
    /// works as long as it is open.
    #[must_use]
    pub fn follow() -> Self {
        let waiting = RwSignal::new_local(None);
        leptos::task::spawn_local(async move {
            let Some(container) = container() else { return };
            let Ok(ready) = container.ready() else { return };
            // Never comes in private modes and on unsafe addresses.
            if let Ok(registration) = JsFuture::from(ready).await
                && let Ok(registration) = registration.dyn_into::<ServiceWorkerRegistration>()
            {
                watch(&registration, waiting);
            }
        });
        Self { waiting }
    }

    /// Whether a newer version waits.
    #[must_use]
    pub fn is_ready(self) -> bool {
        self.waiting.with(Option::is_some)
    }

    /// Not now: it waits until the page is closed.
    pub fn later(self) {
        self.waiting.set(None);
    }

    /// Lets the newer version take over and loads the page from it.
    pub fn now(self) {
        let Some(worker) = self.waiting.get_untracked() else {
            return;
        };
        if let Some(container) = container() {
            let reload = Closure::once_into_js(|| {
                let _ = window().location().reload();
            });
            container.set_oncontrollerchange(Some(reload.unchecked_ref()));
        }
        let message = Object::new();
        let _ = Reflect::set(&message, &"kind".into(), &"take-over".into());
        let _ = worker.post_message(&message);
    }
}

fn container() -> Option<ServiceWorkerContainer> {
    Reflect::get(&window().navigator(), &"serviceWorker".into())
        .ok()?
        .dyn_into()
        .ok()
}

fn watch(
    registration: &ServiceWorkerRegistration,
    waiting: RwSignal<Option<ServiceWorker>, LocalStorage>,
) {
    let look = {
        let registration = registration.clone();
        move || {
            // The very first worker of a browser has nothing to replace. That
            // is asked anew each time: a page may stay open from the first
            // visit until the next build.
            if registration.active().is_some()
                && let Some(worker) = registration.waiting()
            {
                waiting.set(Some(worker));
            }
        }
    };
    look();
    let found = {
        let registration = registration.clone();
        move || {
            let Some(installing) = registration.installing() else {
                return;
            };
            let look = look.clone();
            let changed = Closure::<dyn FnMut()>::new(look);
            installing.set_onstatechange(Some(changed.as_ref().unchecked_ref()));
            changed.forget();
        }
    };
    // It may have been found before the page got this far.
    found();
    let on_found = Closure::<dyn FnMut()>::new(found);
    registration.set_onupdatefound(Some(on_found.as_ref().unchecked_ref()));
    on_found.forget();
}
