//! What is not safe, loudly, while the run goes on from memory.

use leptos::prelude::*;

use super::Running;
use crate::bench::name_of;
use crate::device::exports::exports;
use crate::device::keeping::keeping;
use crate::kit::piece::{El, Piece, button, el, p};
use crate::kit::toast::toast;

/// A line across the screen while a copy of the book cannot be written.
pub fn trouble(running: Running) -> Piece {
    let keeping = keeping();
    Piece::live(move || {
        let trouble = keeping.trouble();
        match (trouble.shelf, trouble.vault) {
            (None, None) => Piece::none(),
            (Some(why), None) => line(
                running,
                "caution",
                &format!("One of the two copies can't be written. {why} The other has every pull."),
            )
            .into(),
            (shelf, Some(why)) => {
                let nowhere = if shelf.is_some() {
                    "on this screen only"
                } else {
                    "not safe yet"
                };
                let words = format!(
                    "The pulls are {nowhere}. {why} Go on: nothing is lost while this page is open. Export before you close it."
                );
                line(running, "danger", &words).into()
            }
        }
    })
}

fn line(running: Running, tone: &str, words: &str) -> El {
    let (exports, toast) = (exports(), toast());
    let opened = running.context.opened;
    let export = button("quiet", "Export", "run-export", move || {
        let name = opened.build.with_untracked(name_of);
        let done = opened
            .journal
            .with_untracked(|journal| exports.export(journal, &name));
        toast.say(
            done.err()
                .unwrap_or_else(|| "Exported to your downloads.".to_owned()),
        );
    });
    el("div")
        .class(&format!("notice notice-{tone} run-trouble"))
        .attr("role", "alert")
        .test("run-trouble")
        .with(p(words))
        .with(export)
}
