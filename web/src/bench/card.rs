//! One build on the bench.

use build_journal::{Build, BuildId, Journal, fold};
use leptos::prelude::*;

use super::wipe::Wipe;
use crate::device::exports::exports;
use crate::kit::toast::toast;
use crate::kit::verdict::{Mark, MarkShape};
use crate::route::{Page, Route};

/// A build: its name opens it; export and wipe stand beside.
#[component]
pub fn BuildCard(
    /// Which build.
    id: BuildId,
    /// Its facts.
    journal: RwSignal<Journal>,
) -> impl IntoView {
    let build = Memo::new(move |_| journal.with(fold));
    let name = Signal::derive(move || build.with(name_of));
    let exports = exports();
    let toast = toast();
    let wiping = RwSignal::new(false);
    let to = Route::Build(id.to_string(), Page::Mains).to_string();
    view! {
        <li class="card" data-test="build" data-build=id.to_string()>
            <a class="entry" href=to data-test="build-link">
                <strong>{move || name.get()}</strong>
                <span>{move || build.with(engine_words)}</span>
                {move || build.with(tally)}
            </a>
            <p class="hint" data-test="exported">
                {move || journal.with(|journal| exports.words(journal))}
            </p>
            <div class="row">
                <button
                    type="button"
                    class="button quiet"
                    data-test="export"
                    aria-label=move || format!("export {}", name.get())
                    on:click=move |_| {
                        let done = journal.with_untracked(|journal| {
                            exports.export(journal, &name.get_untracked())
                        });
                        toast.say(done.err().unwrap_or_else(|| "Exported to your downloads.".to_owned()));
                    }
                >
                    "Export"
                </button>
                <button
                    type="button"
                    class="button quiet"
                    data-test="wipe"
                    aria-label=move || format!("wipe {} off this device", name.get())
                    on:click=move |_| wiping.set(true)
                >
                    "Wipe…"
                </button>
            </div>
            <Wipe id journal name open=wiping />
        </li>
    }
}

/// What the builder calls it.
pub fn name_of(build: &Build) -> String {
    build.engine.as_ref().map_or_else(
        || "An engine not described yet".to_owned(),
        |one| one.engine.name().to_owned(),
    )
}

fn engine_words(build: &Build) -> String {
    build.engine.as_ref().map_or_else(String::new, |described| {
        let engine = &described.engine;
        let cylinders = match engine.cylinders() {
            1 => "one cylinder".to_owned(),
            more => format!("{more} cylinders"),
        };
        format!(
            "{}, {cylinders}, {} mains",
            engine.layout(),
            engine.number_of_mains()
        )
    })
}

/// How many bearings stand how.
fn tally(build: &Build) -> impl IntoView + use<> {
    let marks: Vec<Mark> = build
        .mains
        .iter()
        .map(|bearing| bearing.standing.verdict().map_or(Mark::None, Mark::from))
        .collect();
    let counts = [Mark::Good, Mark::Close, Mark::Bad, Mark::None]
        .into_iter()
        .filter_map(|mark| {
            let count = marks.iter().filter(|one| **one == mark).count();
            (count > 0).then(|| {
                view! {
                    <span class="tally-one"><MarkShape mark />{count}" "{mark.words()}</span>
                }
            })
        })
        .collect_view();
    view! { <span class="tally">{counts}</span> }
}
