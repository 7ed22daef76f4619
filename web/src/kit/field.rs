//! A field for a quantity, typed with the keypad or a keyboard.

use assembly_core::quantity::{Kind, ReadError, Typed, Unit, read, show, unit_of, units_of};
use leptos::html::Input;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, HtmlInputElement, ScrollIntoViewOptions, ScrollLogicalPosition};

use super::keypad::{Pad, Target, pad};
use crate::device::drafts::Draft;

/// As many unit keys as fit beside each other.
const UNIT_KEYS: usize = 5;

/// Reads a field's text; `None` while nothing is typed.
#[must_use]
pub fn read_text(text: &str, kind: Kind, unit: &'static Unit) -> Option<Result<Typed, ReadError>> {
    (!text.trim().is_empty()).then(|| read(text, kind, unit))
}

/// What a field says under itself.
#[derive(Clone, PartialEq, Eq)]
enum Says {
    Nothing,
    /// How the text was understood.
    Understood(String),
    /// What is wrong with it.
    Wrong(String),
}

/// A labelled field for one quantity.
#[component]
pub fn QuantityField(
    /// Its id on the page; once on a screen.
    #[prop(into)]
    name: String,
    /// What is asked for.
    #[prop(into)]
    label: Signal<String>,
    /// Its text.
    #[prop(into)]
    draft: Signal<Draft>,
    /// What kind of quantity.
    kind: Kind,
    /// What a lone number is taken to be.
    #[prop(into)]
    unit: Signal<&'static Unit>,
    /// How to get at the number; shown while the field is in use.
    #[prop(optional, into)]
    how: Option<String>,
    /// What else is wrong with it, when its text can be read or is missing.
    #[prop(optional, into)]
    wrong: Option<Signal<Option<String>>>,
    /// What Next does; to the next field of the screen when not said.
    #[prop(optional)]
    on_next: Option<Callback<()>>,
    /// What is read on the Next key.
    #[prop(default = "Next")]
    next_word: &'static str,
    /// Ready to type into at once.
    #[prop(optional)]
    begin_here: bool,
) -> impl IntoView {
    let pad = pad();
    let element: NodeRef<Input> = NodeRef::new();
    let left = RwSignal::new(false);
    let says = Memo::new(move |_| {
        let wrong = || wrong.and_then(|wrong| wrong.get());
        match read_text(&draft.get().get(), kind, unit.get()) {
            None => wrong().map_or(Says::Nothing, Says::Wrong),
            Some(Ok(typed)) => wrong().map_or_else(
                || understood(&typed).map_or(Says::Nothing, Says::Understood),
                Says::Wrong,
            ),
            Some(Err(error)) if error.is_unfinished() && !left.get() => Says::Nothing,
            Some(Err(error)) => Says::Wrong(error.to_string()),
        }
    });
    let next = on_next.unwrap_or_else(|| {
        Callback::new(move |()| {
            if let Some(input) = element.get_untracked() {
                to_next_field(pad, &input);
            }
        })
    });
    let next = Callback::new(move |()| {
        left.set(true);
        next.run(());
    });
    let aim = move || {
        let Some(input) = element.get_untracked() else {
            return;
        };
        left.set(false);
        pad.aim(Target {
            input,
            changed: Callback::new(move |text| {
                left.set(false);
                draft.get_untracked().set(text);
            }),
            units: unit_keys(kind),
            next,
            next_word,
        });
        // The keypad takes its place first; then the field moves out from behind it.
        request_animation_frame(move || {
            if let Some(input) = element.try_get_untracked().flatten() {
                let options = ScrollIntoViewOptions::new();
                options.set_block(ScrollLogicalPosition::Nearest);
                input.scroll_into_view_with_scroll_into_view_options(&options);
            }
        });
    };
    if begin_here {
        Effect::new(move |_| {
            if let Some(input) = element.get() {
                let _ = input.focus();
            }
        });
    }
    on_cleanup(move || {
        if let Some(Some(input)) = element.try_get_untracked() {
            pad.release(&input);
        }
    });
    let message = format!("{name}-says");
    let how_id = format!("{name}-how");
    let described = if how.is_some() {
        format!("{how_id} {message}")
    } else {
        message.clone()
    };
    view! {
        <div class="field">
            <label for=name.clone()>{move || label.get()}</label>
            <div class="field-box">
                <input
                    id=name.clone()
                    data-field="quantity"
                    data-test=format!("field-{name}")
                    type="text"
                    inputmode="none"
                    autocomplete="off"
                    autocapitalize="off"
                    spellcheck="false"
                    node_ref=element
                    aria-describedby=described
                    aria-invalid=move || if matches!(says.get(), Says::Wrong(_)) { "true" } else { "false" }
                    prop:value=move || draft.get().get()
                    on:input=move |event| {
                        left.set(false);
                        draft.get_untracked().set(event_target_value(&event));
                    }
                    on:focus=move |_| aim()
                    on:blur=move |_| left.set(true)
                    on:keydown=move |event| {
                        if event.key() == "Enter" && !event.repeat() {
                            event.prevent_default();
                            pad.next(event.time_stamp());
                        }
                    }
                />
                <span class="field-unit" aria-hidden="true">{move || unit.get().symbol}</span>
            </div>
            {how.map(|how| view! { <p class="field-how" id=how_id>{how}</p> })}
            <p class="field-says" id=message aria-live="polite" data-test=format!("says-{name}")>
                {move || match says.get() {
                    Says::Nothing => ().into_any(),
                    Says::Understood(text) => text.into_any(),
                    Says::Wrong(text) => view! { <strong class="wrong">{text}</strong> }.into_any(),
                }}
            </p>
        </div>
    }
}

/// How a text was understood, in its own unit and in the other class of units:
/// a slip shows here before it does harm.
fn understood(typed: &Typed) -> Option<String> {
    let own = typed.unit();
    let others: &[&str] = match own.symbol {
        "in" | "thou" | "tenths" | "µin" | "ft" => &["mm"],
        "mm" | "µm" | "hundredths" | "cm" | "m" => &["in"],
        "ft-lb" | "in-lb" => &["N·m"],
        "N·m" | "kgf·m" | "kgf·cm" | "daN·m" => &["ft-lb"],
        "psi" | "ksi" => &["bar"],
        "bar" | "kPa" | "MPa" => &["psi"],
        "°F" => &["°C"],
        "°C" => &["°F"],
        _ => &[],
    };
    let mut words = vec![typed.to_string()];
    for symbol in others {
        if let Some(unit) = unit_of(own.kind, symbol) {
            words.push(show(typed.si(), None, unit).to_string());
        }
    }
    (words.len() > 1 || typed.unit_was_typed()).then(|| words.join("  =  "))
}

/// The units on the keypad for a kind.
fn unit_keys(kind: Kind) -> Vec<&'static str> {
    units_of(kind)
        .map(|unit| unit.symbol)
        .filter(|symbol| !symbol.is_empty())
        .take(UNIT_KEYS)
        .collect()
}

/// Moves to the field after this one on the screen; after the last, away from
/// all fields, so that the answer can be seen.
pub fn to_next_field(pad: Pad, from: &HtmlInputElement) {
    let Ok(fields) = document().query_selector_all("[data-field]") else {
        return;
    };
    let place = (0..fields.length()).find(|at| {
        fields
            .get(*at)
            .is_some_and(|field| field.is_same_node(Some(from)))
    });
    let following = place
        .and_then(|place| fields.get(place + 1))
        .and_then(|field| field.dyn_into::<HtmlElement>().ok());
    match following {
        Some(field) => {
            let _ = field.focus();
        }
        None => {
            let _ = from.blur();
            pad.close();
        }
    }
}

/// A labelled field for words, typed with the device's own keyboard.
#[component]
pub fn WordField(
    /// Its id on the page; once on a screen.
    #[prop(into)]
    name: String,
    /// What is asked for.
    #[prop(into)]
    label: String,
    /// Its text.
    draft: Draft,
    /// Something to know before typing.
    #[prop(optional, into)]
    hint: Option<String>,
    /// What is wrong with it.
    #[prop(optional, into)]
    wrong: Option<Signal<Option<String>>>,
    /// The most characters it may have.
    #[prop(default = 200)]
    at_most: usize,
) -> impl IntoView {
    let pad = pad();
    let message = format!("{name}-says");
    view! {
        <div class="field">
            <label for=name.clone()>{label}</label>
            {hint.map(|hint| view! { <p class="hint">{hint}</p> })}
            <input
                id=name.clone()
                data-field="words"
                data-test=format!("field-{name}")
                type="text"
                autocomplete="off"
                maxlength=at_most.to_string()
                aria-describedby=message.clone()
                prop:value=move || draft.get()
                on:input=move |event| draft.set(event_target_value(&event))
                on:focus=move |_| pad.close()
            />
            <p class="field-says" id=message aria-live="polite">
                {move || wrong.and_then(|wrong| wrong.get()).map(|text| view! {
                    <strong class="wrong">{text}</strong>
                })}
            </p>
        </div>
    }
}
