//! Taking a build off this device, with the export offered first.

use build_journal::{BuildId, Journal};
use leptos::prelude::*;
use leptos::task::spawn_local;

use super::taking_off::take_off;
use crate::device::exports::exports;
use crate::device::keeping::keeping;
use crate::kit::dialog::dialog;
use crate::kit::piece::{El, Piece, button, el, row};
use crate::kit::toast::toast;

/// The question before a build is wiped.
#[must_use]
pub fn wipe(
    id: BuildId,
    journal: RwSignal<Journal>,
    name: impl Fn() -> String + Copy + 'static,
    open: RwSignal<bool>,
) -> El {
    let keeping = keeping();
    let exports = exports();
    let toast = toast();
    dialog(
        open,
        "Wipe this build off this device?",
        "wipe-dialog",
        move || {
            let export = move || {
                exports.hand_over(journal, untrack(name), toast);
            };
            let wipe = move || {
                open.set(false);
                spawn_local(async move {
                    match take_off(keeping, exports, id).await {
                        Ok(()) => toast.say("Wiped off this device."),
                        Err(error) => toast.say(format!("Not all of it could be wiped. {error}")),
                    }
                });
            };
            let what = el("p").with(el("strong").live_text(name)).live_text(move || {
            format!(
                ": {} lines. They are gone for good from this device; a file that you exported stays.",
                journal.with(Journal::len)
            )
        });
            let exported = el("p")
                .test("wipe-exported")
                .live_text(move || journal.with(|journal| exports.words(journal)));
            let choices = row([
                button("", "Export first", "wipe-export", export).into(),
                button("danger", "Wipe it", "wipe-confirm", wipe).into(),
                button("quiet", "Keep it", "wipe-keep", move || open.set(false)).into(),
            ]);
            Piece::all([what.into(), exported.into(), choices.into()])
        },
    )
}
