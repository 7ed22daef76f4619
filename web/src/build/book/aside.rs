//! What was found in storage or in a file and could not be read as part of the
//! build. It is kept, shown and exported.

use build_journal::Journal;
use leptos::prelude::*;

use crate::build::Opened;
use crate::device::files;
use crate::kit::section::{Fold, Section};
use crate::kit::toast::toast;

/// Letters of a text that are shown.
const SHOWN: usize = 300;

/// The texts set aside.
#[component]
pub fn SetAside() -> impl IntoView {
    let opened: Opened = expect_context();
    let toast = toast();
    let journal = opened.journal;
    let export = move |_| {
        let all = journal.with_untracked(|journal| {
            let texts: Vec<&str> = journal.set_aside().map(|(text, _)| text).collect();
            texts.join("\n")
        });
        let done = files::give("set-aside.thoubook.txt", &all);
        toast.say(if done.is_ok() {
            "Exported to your downloads."
        } else {
            "The browser would not take the file."
        });
    };
    let any = Memo::new(move |_| journal.with(|journal| journal.set_aside().count()));
    view! {
        <Show when=move || any.get() != 0>
            <Section title="Set aside">
                <p>
                    {move || any.get()}" that could not be read. They are kept as they are and go into every export."
                </p>
                <ul class="entries" data-test="set-aside">
                    {move || journal.with(rows)}
                </ul>
                <div class="row">
                    <button type="button" class="button quiet" data-test="set-aside-export" on:click=export>
                        "Export only these"
                    </button>
                </div>
            </Section>
        </Show>
    }
}

fn rows(journal: &Journal) -> impl IntoView + use<> {
    journal
        .set_aside()
        .map(|(text, reason)| {
            let mut start: String = text.chars().take(SHOWN).collect();
            if start.len() < text.len() {
                start.push('…');
            }
            let reason = reason.to_owned();
            view! {
                <li class="card">
                    <p>{reason}</p>
                    <Fold title="The text">
                        <code class="set-aside-text">{start.clone()}</code>
                    </Fold>
                </li>
            }
        })
        .collect_view()
}
