//! What was found in storage or in a file and could not be read as part of the
//! build. It is kept, shown and exported.

use build_journal::Journal;
use leptos::prelude::*;

use crate::build::Opened;
use crate::device::files;
use crate::kit::piece::{Piece, button, el, p, row};
use crate::kit::section::{fold, section};
use crate::kit::toast::toast;

/// Letters of a text that are shown.
const SHOWN: usize = 300;

/// The texts set aside.
#[must_use]
pub fn set_aside() -> Piece {
    let opened: Opened = expect_context();
    let toast = toast();
    let journal = opened.journal;
    let count = move || journal.with(|journal| journal.set_aside().count());
    let export = move || {
        let all = journal.with_untracked(|journal| {
            let texts: Vec<&str> = journal.set_aside().map(|(text, _)| text).collect();
            texts.join("\n")
        });
        let done = files::give("set-aside.thoubook.txt", &all);
        toast.say(match done {
            Ok(()) => "Exported to your downloads.",
            Err(_) => "The browser would not take the file.",
        });
    };
    Piece::when(
        move || count() != 0,
        move || {
            let words = move || {
                format!(
                    "{} that could not be read. They are kept as they are and go into every export.",
                    count()
                )
            };
            let list = el("ul")
                .class("entries")
                .test("set-aside")
                .live(move || journal.with(rows));
            section("Set aside")
                .with(el("p").live_text(words))
                .with(list)
                .with(row([button(
                    "quiet",
                    "Export only these",
                    "set-aside-export",
                    export,
                )
                .into()]))
                .into()
        },
    )
}

fn rows(journal: &Journal) -> Piece {
    Piece::all(journal.set_aside().map(|(text, reason)| {
        let mut start: String = text.chars().take(SHOWN).collect();
        if start.len() < text.len() {
            start.push('…');
        }
        let text = el("code").class("set-aside-text").text(&start);
        el("li")
            .class("card")
            .with(p(reason))
            .with(fold("The text", text))
            .into()
    }))
}
