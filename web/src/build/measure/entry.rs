//! Typing the reading of the place in hand.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::{Kind, Unit};
use build_journal::fact::{Reading, Spot as Where};
use build_journal::fold::{ListedTool, Taken};
use build_journal::{Body, FactId};
use leptos::html::Section;
use leptos::prelude::*;

use super::order::Spot;
use super::picture::SpotPicture;
use super::places::readings_at;
use super::tool_choice::{InHand, ToolChoice};
use super::zeroing::{Zeroing, setting_words, wants_setting};
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::field::{QuantityField, read_text};
use crate::kit::section::{Fold, Sentences};

/// The reading of the place in hand: where, with what, and the number.
#[component]
pub fn Entry(
    /// The place in hand.
    #[prop(into)]
    spot: Signal<Spot>,
    /// Goes on to the next place after this one.
    go_on: Callback<Spot>,
) -> impl IntoView {
    let opened: Opened = expect_context();
    let in_hand = InHand::of(opened);
    let measure = Memo::new_with_compare(
        move |_| spot.get().measure,
        |old, new| old.map(|one| one.id) != new.map(|one| one.id),
    );
    let tool = Memo::new(move |_| in_hand.tool(measure.get()));
    let unset = Memo::new(move |_| {
        tool.get()
            .filter(|tool| wants_setting(tool) && tool.settings.is_empty())
    });
    let panel: NodeRef<Section> = NodeRef::new();
    // When what is asked changes, it is asked from the top of the panel.
    Effect::new(move |last: Option<(bool, bool)>| {
        let asked = (tool.with(Option::is_some), unset.with(Option::is_some));
        if last.is_some_and(|last| last != asked)
            && let Some(panel) = panel.get_untracked()
        {
            panel.scroll_into_view();
        }
        asked
    });
    view! {
        <section class="entry-panel" data-test="entry" node_ref=panel>
            <div class="entry-place" aria-live="polite">
                <SpotPictureOf spot />
                <p>
                    <span class="entry-what">{move || spot.get().measure.label}</span>
                    <strong class="entry-where" data-test="entry-place">
                        {move || spot.get().place.to_string()}
                    </strong>
                </p>
            </div>
            {move || match (tool.get(), unset.get()) {
                (None, _) => {
                    let measure = measure.get();
                    view! { <ToolChoice measure in_hand /> }.into_any()
                }
                (Some(_), Some(tool)) => view! { <Zeroing tool /> }.into_any(),
                (Some(_), None) => view! { <ReadingField spot in_hand go_on /> }.into_any(),
            }}
        </section>
    }
}

#[component]
fn SpotPictureOf(spot: Signal<Spot>) -> impl IntoView {
    move || view! { <SpotPicture spot=spot.get() /> }
}

/// Whether a tool's readings are what its needle shows.
fn reads_needle(tool: &ListedTool) -> bool {
    tool.settings
        .last()
        .is_some_and(|setting| setting.set.needle.is_some())
}

#[component]
fn ReadingField(spot: Signal<Spot>, in_hand: InHand, go_on: Callback<Spot>) -> impl IntoView {
    let opened: Opened = expect_context();
    let settings = settings();
    let draft =
        Memo::new(move |_| Draft::of(opened.draft(&format!("reading/{}", spot.get().name()))));
    let tool = Memo::new(move |_| in_hand.tool(spot.get().measure));
    let needle = Memo::new(move |_| tool.get().as_ref().is_some_and(reads_needle));
    let unit: Signal<&'static Unit> = Signal::derive(move || {
        let usual = if needle.get() {
            UsualUnits::FEELER
        } else {
            spot.get().measure.units
        };
        settings.units().of(Kind::Length, usual)
    });
    let label = Signal::derive(move || {
        if needle.get() {
            "Needle from zero, clockwise plus".to_owned()
        } else {
            "Reading".to_owned()
        }
    });
    let write = move |()| {
        let spot = spot.get_untracked();
        let draft = draft.get_untracked();
        let text = draft.now();
        match read_text(&text, Kind::Length, unit.get_untracked()) {
            // Nothing typed: on to the next place, this one stays open.
            None => go_on.run(spot),
            // The field says what is wrong.
            Some(Err(_)) => {}
            Some(Ok(_)) => {
                let tool = tool.get_untracked();
                let reading = Reading {
                    measure: spot.measure.id.to_owned(),
                    place: Where::Known(spot.place),
                    typed: text.trim().to_owned(),
                    unit: unit.get_untracked().symbol.to_owned(),
                    tool: tool.as_ref().map(|tool| tool.tool),
                    setting: tool
                        .as_ref()
                        .and_then(|tool| tool.settings.last())
                        .map(|setting| setting.set.setting),
                    temperature: None,
                    condition: None,
                };
                if opened.write_down(Body::Reading(reading)).is_some() {
                    draft.clear();
                    go_on.run(spot);
                }
            }
        }
    };
    let how = Memo::new_with_compare(
        move |_| spot.get().measure,
        |old, new| old.map(|one| one.id) != new.map(|one| one.id),
    );
    view! {
        <QuantityField
            name="reading"
            label
            draft
            kind=Kind::Length
            unit
            on_next=Callback::new(write)
            begin_here=true
        />
        <Here spot />
        {move || tool.get().map(|tool| view! { <ToolLine tool spot in_hand /> })}
        {move || {
            let measure = how.get();
            let lines: Vec<String> =
                measure.how.iter().chain(measure.cautions).map(|line| (*line).to_owned()).collect();
            view! { <Fold title="How to measure it"><Sentences lines /></Fold> }
        }}
    }
}

/// What was read at this place so far, each to be struck out.
#[component]
fn Here(spot: Signal<Spot>) -> impl IntoView {
    let opened: Opened = expect_context();
    let readings = Memo::new(move |_| opened.build.with(|build| readings_at(build, &spot.get())));
    move || {
        let rows: Vec<_> = readings
            .get()
            .into_iter()
            .filter(|taken| taken.struck.is_none())
            .map(|taken| view! { <ReadingRow taken /> })
            .collect();
        (!rows.is_empty()).then(|| view! { <ul class="readings-here">{rows}</ul> })
    }
}

#[component]
fn ReadingRow(taken: Taken) -> impl IntoView {
    let opened: Opened = expect_context();
    let fact: FactId = taken.fact;
    let words = match &taken.value {
        Ok(typed) => typed.to_string(),
        Err(error) => format!("{}: {error}", taken.reading.typed),
    };
    let spoken = format!("strike out {words}");
    view! {
        <li class="reading-here">
            <span>{words}</span>
            <button
                type="button"
                class="button quiet"
                aria-label=spoken
                data-test="strike-reading"
                on:click=move |_| {
                    let _ = opened.strike(fact, None);
                }
            >
                "Strike out"
            </button>
        </li>
    }
}

#[component]
fn ToolLine(tool: ListedTool, spot: Signal<Spot>, in_hand: InHand) -> impl IntoView {
    let opened: Opened = expect_context();
    let setting = tool.settings.last().map(|setting| {
        opened
            .build
            .with_untracked(|build| setting_words(build, setting))
    });
    let again = wants_setting(&tool).then(|| tool.clone());
    view! {
        <Fold title=format!("With the {}", tool.name)>
            {setting.map(|words| view! { <p>{words}</p> })}
            {again.map(|tool| view! {
                <Fold title="Set it anew">
                    <Zeroing tool=tool.clone() />
                </Fold>
            })}
            <ToolChoice measure=spot.get_untracked().measure in_hand />
        </Fold>
    }
}
