//! Taking a build off this device, with the export offered first.

use build_journal::{BuildId, Journal};
use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::device::exports::exports;
use crate::device::keeping::keeping;
use crate::kit::dialog::Dialog;
use crate::kit::toast::toast;

/// The question before a build is wiped.
#[component]
pub fn Wipe(
    /// Which build.
    id: BuildId,
    /// Its facts.
    journal: RwSignal<Journal>,
    /// Its name.
    name: Signal<String>,
    /// Whether the question is asked.
    open: RwSignal<bool>,
) -> impl IntoView {
    let keeping = keeping();
    let exports = exports();
    let toast = toast();
    let export = move |_| {
        let done = journal.with_untracked(|journal| exports.export(journal, &name.get_untracked()));
        toast.say(
            done.err()
                .unwrap_or_else(|| "Exported to your downloads.".to_owned()),
        );
    };
    let wipe = move |_| {
        open.set(false);
        spawn_local(async move {
            match keeping.forget(id).await {
                Ok(()) => toast.say("Wiped off this device."),
                Err(error) => toast.say(format!("Not all of it could be wiped. {error}")),
            }
        });
    };
    view! {
        <Dialog open title="Wipe this build off this device?" test="wipe-dialog">
            <p>
                <strong>{move || name.get()}</strong>": "
                {move || journal.with(Journal::len)}" lines. They are gone for good from this device; a file that you exported stays."
            </p>
            <p data-test="wipe-exported">{move || journal.with(|journal| exports.words(journal))}</p>
            <div class="row">
                <button type="button" class="button" data-test="wipe-export" on:click=export>"Export first"</button>
                <button type="button" class="button danger" data-test="wipe-confirm" on:click=wipe>"Wipe it"</button>
                <button type="button" class="button quiet" data-test="wipe-keep" on:click=move |_| open.set(false)>"Keep it"</button>
            </div>
        </Dialog>
    }
}
