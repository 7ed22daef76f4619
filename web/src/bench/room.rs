//! How much room there is, and whether the browser promises to keep it.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::device::keeping::keeping;
use crate::device::space::{self, Space};

/// The room for the book, as far as the browser says.
#[component]
pub fn Room() -> impl IntoView {
    let keeping = keeping();
    let found = RwSignal::new(None::<Space>);
    let look = move || {
        spawn_local(async move {
            let space = space::look().await;
            // The bench may have been left meanwhile.
            let _ = found.try_set(space);
        });
    };
    // Looked at again when something has been kept.
    Effect::new(move |_| {
        let _ = keeping.acknowledged();
        look();
    });
    let ask = move |_| {
        spawn_local(async move {
            let _ = space::ask_to_keep().await;
            look();
        });
    };
    move || {
        found.get().map(|space| {
            let part = (space.used / space.quota).clamp(0.0, 1.0);
            let width = format!("{:.2}", (part * 100.0).max(0.5));
            view! {
                <section class="section" data-test="room">
                    <h2>"Room"</h2>
                    <p>
                        {size(space.used)}" of "{size(space.quota)}" that this browser gives are in use, page and all."
                    </p>
                    <svg class="share-bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
                        <rect width=width height="4" />
                    </svg>
                    {if space.promised {
                        view! { <p>"The browser promises not to clear it away by itself."</p> }.into_any()
                    } else {
                        view! {
                            <p>"The browser may clear it away when room gets short: export now and then."</p>
                            <div class="row">
                                <button type="button" class="button quiet" data-test="ask-to-keep" on:click=ask>
                                    "Ask it to keep the book"
                                </button>
                            </div>
                        }
                        .into_any()
                    }}
                </section>
            }
        })
    }
}

/// A number of bytes as people say it.
fn size(bytes: f64) -> String {
    if bytes < 1e9 {
        format!("{:.1} MB", bytes / 1e6)
    } else {
        format!("{:.0} GB", bytes / 1e9)
    }
}
