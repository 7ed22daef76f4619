//! The limits of the main bearings: what they are, where they come from, and
//! what common practice would say.

use assembly_core::measure::{Window, could_say_good};
use assembly_core::quantity::Kind;
use assembly_core::tool::{Instrument, Task, instrument, ways};
use build_journal::fact::{LimitsOrigin, LimitsSet};
use build_journal::fold::Limits;
use build_journal::{Body, FactId};
use build_plan::measure::MAIN_OIL_CLEARANCE;
use leptos::prelude::*;

use super::page::{Opened, opened};
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::field::{QuantityField, read_text};
use crate::kit::judged::window_words;
use crate::kit::pick::{Pick, Word};
use crate::kit::section::{Section, Sentences};
use crate::kit::toast::toast;

/// Where limits come from, in words.
#[must_use]
pub fn origin_words(limits: &Limits) -> String {
    let origin = match limits.set.origin {
        LimitsOrigin::Sheet => "from the maker's sheet",
        LimitsOrigin::PartSheet => "from the part's sheet",
        LimitsOrigin::OwnChoice => "own choice",
    };
    if limits.set.origin_note.trim().is_empty() {
        origin.to_owned()
    } else {
        format!("{origin}, {}", limits.set.origin_note)
    }
}

fn in_force(opened: Opened) -> Vec<Limits> {
    opened.build.with(|build| {
        build.limits.iter().filter(|one| one.set.measure == MAIN_OIL_CLEARANCE.id).cloned().collect()
    })
}

/// The page of the limits.
#[component]
pub fn LimitsPage() -> impl IntoView {
    let opened = opened();
    let settings = settings();
    let key = format!("build/{}/limits", opened.id);
    let low = Draft::of(format!("{key}/low"));
    let high = Draft::of(format!("{key}/high"));
    let origin = Draft::or(format!("{key}/origin"), "sheet");
    let note = Draft::of(format!("{key}/note"));
    let kind = Kind::Length;
    let unit = Signal::derive(move || settings.units().of(kind, MAIN_OIL_CLEARANCE.units));
    // `Err` holds what is wrong; the text of a field that cannot be read says so itself.
    let window = move || -> Result<Option<Window>, String> {
        let read = |draft: Draft| match read_text(&draft.get(), kind, unit.get()) {
            None => Ok(None),
            Some(Ok(typed)) => Ok(Some(typed.si())),
            Some(Err(error)) => Err(error.to_string()),
        };
        let (low, high) = (read(low)?, read(high)?);
        if low.is_none() && high.is_none() {
            return Ok(None);
        }
        Window::new(low, high).map(Some).map_err(|error| error.to_string())
    };
    let wrong = Signal::derive(move || {
        let readable = |draft: Draft| !matches!(read_text(&draft.get(), kind, unit.get()), Some(Err(_)));
        if readable(low) && readable(high) { window().err() } else { None }
    });
    let save = move || match untrack(window) {
        Ok(Some(_)) => {
            let text = |draft: Draft| Some(draft.now()).filter(|text| !text.trim().is_empty());
            let written = opened.write_down(Body::LimitsSet(LimitsSet {
                measure: MAIN_OIL_CLEARANCE.id.to_owned(),
                place: None,
                low: text(low),
                high: text(high),
                unit: unit.get_untracked().symbol.to_owned(),
                origin: match origin.now().as_str() {
                    "part-sheet" => LimitsOrigin::PartSheet,
                    "own-choice" => LimitsOrigin::OwnChoice,
                    _ => LimitsOrigin::Sheet,
                },
                origin_note: note.now(),
                replaces: untrack(|| in_force(opened)).iter().filter(|one| one.set.place.is_none()).map(|one| one.fact).collect::<Vec<FactId>>(),
            }));
            if written.is_some() {
                for draft in [low, high, note] {
                    draft.clear();
                }
                toast().say("The limits hold from now on.");
            }
        }
        Ok(None) => toast().say("Type a low limit, a high limit, or both."),
        Err(error) => toast().say(error),
    };
    let rows = move || {
        let unit = unit.get();
        let limits = in_force(opened);
        let conflict = limits.iter().filter(|one| one.set.place.is_none()).count() > 1;
        view! {
            {conflict.then(|| view! {
                <p class="notice notice-caution" role="alert" data-test="limits-conflict">
                    "Two devices set limits without knowing of each other. Type the ones that hold once more, below."
                </p>
            })}
            <ul class="sentences" data-test="limits-in-force">
                {limits.iter().map(|one| {
                    let typed = [&one.set.low, &one.set.high]
                        .map(|text| text.clone().unwrap_or_else(|| "–".to_owned()))
                        .join(" to ");
                    let window = one.window.as_ref().map_or_else(ToString::to_string, |window| window_words(window, unit));
                    view! { <li>{window}" ("{origin_words(one)}"; typed "{typed}", lone numbers in "{one.set.unit.clone()}")"</li> }
                }).collect_view()}
            </ul>
            {limits.is_empty().then(|| view! { <p class="hint">"None yet."</p> })}
        }
    };
    let coarse = move || {
        let window = match window() {
            Ok(Some(window)) => window,
            _ => in_force(opened).first()?.window.as_ref().ok().copied()?,
        };
        too_coarse(opened, &window).then(|| view! {
            <p class="notice notice-caution" data-test="too-coarse">
                "None of the tools on this build's list could ever say good against these limits, however the part turns out. Before measuring, get a surer one, or zero the bore gauge in the journal's own micrometer."
            </p>
        })
    };
    let practice = MAIN_OIL_CLEARANCE.tripwire.as_ref().map(|wire| {
        view! {
            <p class="tripwire" data-test="tripwire">
                <strong>"Common practice, not a limit"</strong>": "{wire.words}". The maker's sheet decides."
            </p>
        }
    });
    view! {
        <h1>"Limits of the main bearings"</h1>
        <Section title="In force">{rows}</Section>
        <Section title="Set them">
            <div class="pair">
                <QuantityField name="limits-low" label="At least" draft=low kind unit />
                <QuantityField name="limits-high" label="At most" draft=high kind unit wrong />
            </div>
            {practice}
            {coarse}
            <Pick
                name="limits-origin"
                label="They come from"
                words=vec![
                    Word::of("sheet", "the maker's sheet"),
                    Word::of("part-sheet", "the part's sheet"),
                    Word::of("own-choice", "my own choice"),
                ]
                picked=Signal::derive(move || origin.get())
                on_pick=Callback::new(move |id| origin.set(id))
            />
            <div class="field">
                <label for="limits-note">"Which sheet and page, or why"</label>
                <div class="field-box">
                    <input
                        id="limits-note"
                        type="text"
                        data-test="limits-note"
                        autocomplete="off"
                        prop:value=move || note.get()
                        on:input=move |event| note.set(event_target_value(&event))
                    />
                </div>
            </div>
            <p><button type="button" class="button" data-test="limits-save" on:click=move |_| save()>"These hold"</button></p>
        </Section>
        <Section title="What goes wrong">
            <Sentences lines=[MAIN_OIL_CLEARANCE.too_little, MAIN_OIL_CLEARANCE.too_much].map(str::to_owned).to_vec() />
        </Section>
    }
}

/// Whether no way to measure it with the listed tools could ever say good.
fn too_coarse(opened: Opened, window: &Window) -> bool {
    let kinds: Vec<&'static Instrument> = opened.build.with(|build| {
        build.tools.iter().filter_map(|tool| instrument(&tool.instrument)).collect()
    });
    let ways = ways(Task::RunningClearance, &kinds);
    !ways.is_empty()
        && ways
            .iter()
            .all(|way| !could_say_good(way.give_or_take, window, MAIN_OIL_CLEARANCE.dangerous))
}
