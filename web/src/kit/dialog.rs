//! A question that has to be answered before anything else.

use leptos::html::Dialog as DialogElement;
use leptos::prelude::*;

/// A modal dialog, shown while `open` is true. Escape closes it.
#[component]
pub fn Dialog(
    /// Whether it is shown.
    open: RwSignal<bool>,
    /// What it is about.
    #[prop(into)]
    title: String,
    /// Its name for tests.
    test: &'static str,
    children: ChildrenFn,
) -> impl IntoView {
    let element: NodeRef<DialogElement> = NodeRef::new();
    Effect::new(move |_| {
        let Some(dialog) = element.get() else { return };
        if open.get() {
            // Shown already is what was wanted.
            let _ = dialog.show_modal();
        } else if dialog.open() {
            dialog.close();
        }
    });
    let heading = format!("{test}-title");
    let named_by = heading.clone();
    view! {
        <dialog
            class="dialog"
            node_ref=element
            aria-labelledby=named_by
            data-test=test
            on:close=move |_| open.set(false)
        >
            <h2 id=heading>{title}</h2>
            {move || open.get().then(|| children())}
        </dialog>
    }
}
