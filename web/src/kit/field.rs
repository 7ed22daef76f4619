//! A field for a quantity, typed with the keypad or a keyboard.

use std::rc::Rc;

use assembly_core::quantity::{Kind, ReadError, Typed, Unit, read, show, unit_of, units_of};
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use wasm_bindgen::JsCast;
use web_sys::{
    HtmlElement, HtmlInputElement, KeyboardEvent, ScrollIntoViewOptions, ScrollLogicalPosition,
};

use super::keypad::{Pad, Target, pad};
use super::piece::{El, el, note};
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

impl Says {
    const fn is_wrong(&self) -> bool {
        matches!(self, Self::Wrong(_))
    }

    fn words(self) -> String {
        match self {
            Self::Nothing => String::new(),
            Self::Understood(words) | Self::Wrong(words) => words,
        }
    }
}

/// Words on what a text means, for texts that mean more than they read.
type Meaning = Rc<dyn Fn(&str) -> Option<String>>;

/// A labelled field for one quantity.
pub struct QuantityField {
    name: String,
    label: Rc<dyn Fn() -> String>,
    draft: Rc<dyn Fn() -> Draft>,
    kind: Kind,
    unit: Rc<dyn Fn() -> &'static Unit>,
    how: Option<String>,
    wrong: Option<Rc<dyn Fn() -> Option<String>>>,
    meaning: Option<Meaning>,
    on_next: Option<Rc<dyn Fn()>>,
    next_word: &'static str,
    begin_here: bool,
}

impl QuantityField {
    /// A field: its id on the page (once on a screen), what is asked for, its
    /// text, its kind, and what a lone number is taken to be.
    #[must_use]
    pub fn new(
        name: impl Into<String>,
        label: impl Into<String>,
        draft: Draft,
        kind: Kind,
        unit: impl Fn() -> &'static Unit + 'static,
    ) -> Self {
        let label = label.into();
        Self {
            name: name.into(),
            label: Rc::new(move || label.clone()),
            draft: Rc::new(move || draft),
            kind,
            unit: Rc::new(unit),
            how: None,
            wrong: None,
            meaning: None,
            on_next: None,
            next_word: "Next",
            begin_here: false,
        }
    }

    /// With a label that follows signals.
    #[must_use]
    pub fn live_label(mut self, label: impl Fn() -> String + 'static) -> Self {
        self.label = Rc::new(label);
        self
    }

    /// With a text that is another one from time to time.
    #[must_use]
    pub fn live_draft(mut self, draft: impl Fn() -> Draft + 'static) -> Self {
        self.draft = Rc::new(draft);
        self
    }

    /// With how to get at the number; shown while the field is in use.
    #[must_use]
    pub fn how(mut self, how: impl Into<String>) -> Self {
        self.how = Some(how.into());
        self
    }

    /// With what else may be wrong with it, when its text can be read or is missing.
    #[must_use]
    pub fn wrong(mut self, wrong: impl Fn() -> Option<String> + 'static) -> Self {
        self.wrong = Some(Rc::new(wrong));
        self
    }

    /// With words for texts that mean more than they read, such as the last
    /// digits of a number.
    #[must_use]
    pub fn meaning(mut self, meaning: impl Fn(&str) -> Option<String> + 'static) -> Self {
        self.meaning = Some(Rc::new(meaning));
        self
    }

    /// With what Next does; without, it goes to the next field of the screen.
    #[must_use]
    pub fn on_next(mut self, next: impl Fn() + 'static) -> Self {
        self.on_next = Some(Rc::new(next));
        self
    }

    /// With another word on the Next key.
    #[must_use]
    pub const fn next_word(mut self, word: &'static str) -> Self {
        self.next_word = word;
        self
    }

    /// Ready to type into as soon as it is there.
    #[must_use]
    pub const fn begin_here(mut self) -> Self {
        self.begin_here = true;
        self
    }

    /// What is said of the text: worked out once for all that shows it.
    fn says(&self, left: RwSignal<bool>) -> Memo<Says> {
        let (draft, kind, unit) = (Rc::clone(&self.draft), self.kind, Rc::clone(&self.unit));
        let (wrong, meaning) = (self.wrong.clone(), self.meaning.clone());
        let says = SendWrapper::new(move || {
            let text = draft().get();
            if let Some(words) = meaning.as_ref().and_then(|meaning| meaning(&text)) {
                return Says::Understood(words);
            }
            let wrong = || wrong.as_ref().and_then(|wrong| wrong());
            match read_text(&text, kind, unit()) {
                None => wrong().map_or(Says::Nothing, Says::Wrong),
                Some(Ok(typed)) => wrong().map_or_else(
                    || understood(&typed).map_or(Says::Nothing, Says::Understood),
                    Says::Wrong,
                ),
                Some(Err(error)) if error.is_unfinished() && !left.get() => Says::Nothing,
                Some(Err(error)) => Says::Wrong(error.to_string()),
            }
        });
        Memo::new(move |_| says())
    }

    /// The field.
    #[must_use]
    pub fn piece(self) -> El {
        let pad = pad();
        let left = RwSignal::new(false);
        let says = self.says(left);
        let is_wrong = move || says.with(Says::is_wrong);
        let (message, how_id) = (format!("{}-says", self.name), format!("{}-how", self.name));
        let described = match self.how {
            Some(_) => format!("{how_id} {message}"),
            None => message.clone(),
        };
        let typed = {
            let draft = Rc::clone(&self.draft);
            move |text: String| {
                left.set(false);
                pad.note_typing();
                untrack(|| draft()).set(text);
            }
        };
        let (shown, keyed) = (Rc::clone(&self.draft), typed.clone());
        let input = el("input")
            .attr("id", &self.name)
            .attr("data-field", "quantity")
            .test(&format!("field-{}", self.name))
            .attr("type", "text")
            .attr("inputmode", "none")
            .attr("autocomplete", "off")
            .attr("autocapitalize", "off")
            .attr("spellcheck", "false")
            .attr("aria-describedby", &described)
            .live_flag("aria-invalid", is_wrong)
            .live_property("value", move || shown().get().into())
            .on("input", move |event| keyed(event_target_value(&event)))
            .on("blur", move |_| left.set(true))
            .on("keydown", move |event| {
                let key: KeyboardEvent = event.unchecked_into();
                if key.key() == "Enter" && !key.repeat() {
                    key.prevent_default();
                    pad.next(key.time_stamp());
                }
            });
        let element: HtmlInputElement = input.element();
        let next = {
            let element = element.clone();
            let own = self.on_next.clone();
            Rc::new(move || {
                left.set(true);
                match &own {
                    Some(next) => next(),
                    None => to_next_field(pad, &element),
                }
            })
        };
        let target = Target {
            input: element.clone(),
            changed: Rc::new(typed),
            units: unit_keys(self.kind),
            next,
            next_word: self.next_word,
        };
        let input = input.on("focus", move |_| {
            left.set(false);
            pad.aim(target.clone());
            move_into_view(&target.input);
        });
        let held = SendWrapper::new(element.clone());
        on_cleanup(move || pad.release(&held));
        if self.begin_here {
            request_animation_frame(move || {
                let _ = element.focus();
            });
        }
        let (label, unit) = (self.label, self.unit);
        el("div")
            .class("field")
            .with(
                el("label")
                    .attr("for", &self.name)
                    .live_text(move || label()),
            )
            .with(
                el("div").class("field-box").with(input).with(
                    el("span")
                        .class("field-unit")
                        .attr("aria-hidden", "true")
                        .live_text(move || unit().symbol.to_owned()),
                ),
            )
            .with(
                self.how
                    .map(|how| note("field-how", &how).attr("id", &how_id)),
            )
            .with(
                el("p")
                    .class("field-says")
                    .attr("id", &message)
                    .attr("aria-live", "polite")
                    .test(&format!("says-{}", self.name))
                    .live_class("wrong", is_wrong)
                    .live_text(move || says.get().words()),
            )
    }
}

/// The keypad takes its place first; then the field moves out from behind it.
fn move_into_view(input: &HtmlInputElement) {
    let input = input.clone();
    request_animation_frame(move || {
        let options = ScrollIntoViewOptions::new();
        options.set_block(ScrollLogicalPosition::Nearest);
        input.scroll_into_view_with_scroll_into_view_options(&options);
    });
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
