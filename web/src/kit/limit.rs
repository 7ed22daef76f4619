//! A field for a limit of a clearance. Figures that belong to another unit are
//! asked about before they count.

use assembly_core::quantity::{Kind, Typed, Unit};
use assembly_core::typing_sense::{Doubt, doubt_of_clearance};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

use super::field::{QuantityField, read_text};
use super::piece::{El, Piece, button, el, note, row};
use crate::device::drafts::Draft;

/// What is typed into a limit's field.
#[derive(Clone, PartialEq, Debug)]
pub enum Limit {
    /// Nothing.
    None,
    /// A limit.
    Typed(Typed),
    /// Not to be used yet: it can't be read, or a question about it is open.
    NotYet,
}

/// A limit that is being typed.
#[derive(Clone, Copy)]
pub struct LimitField {
    /// Its text.
    pub draft: Draft,
    /// The text that was said to be meant as it stands, with its lone unit.
    meant: RwSignal<Option<(String, &'static str)>>,
    /// Nothing is asked while it is being typed.
    typing: RwSignal<bool>,
    /// Whether it is a limit of a running clearance: only there is it known
    /// what is unlikely.
    of_clearance: bool,
}

impl LimitField {
    /// The limit of a running clearance with this text.
    #[must_use]
    pub fn of(draft: Draft) -> Self {
        Self {
            of_clearance: true,
            draft,
            meant: RwSignal::new(None),
            typing: RwSignal::new(false),
        }
    }

    /// A limit of anything else: nothing is asked about it.
    #[must_use]
    pub fn of_anything(draft: Draft) -> Self {
        Self {
            of_clearance: false,
            ..Self::of(draft)
        }
    }

    /// What is typed, followed.
    #[must_use]
    pub fn get(self, kind: Kind, unit: &'static Unit) -> Limit {
        match read_text(&self.draft.get(), kind, unit) {
            None => Limit::None,
            Some(Ok(_)) if self.doubt(kind, unit).is_some() => Limit::NotYet,
            Some(Ok(typed)) => Limit::Typed(typed),
            Some(Err(_)) => Limit::NotYet,
        }
    }

    fn doubt(self, kind: Kind, unit: &'static Unit) -> Option<Doubt> {
        let text = self.draft.get();
        let is_meant = |meant: &Option<(String, &str)>| {
            meant
                .as_ref()
                .is_some_and(|(meant, lone)| *meant == text && *lone == unit.symbol)
        };
        if !self.of_clearance || kind != Kind::Length || self.meant.with(is_meant) {
            return None;
        }
        doubt_of_clearance(&read_text(&text, kind, unit)?.ok()?)
    }

    /// Asks what is to be asked, even while it is being typed.
    pub fn insist(self) {
        self.typing.set(false);
    }

    /// The field with the question under it. `wrong` says what else is wrong.
    #[must_use]
    pub fn piece(
        self,
        name: &str,
        label: &str,
        kind: Kind,
        unit: impl Fn() -> &'static Unit + Copy + 'static,
        wrong: impl Fn() -> Option<String> + 'static,
    ) -> El {
        let field = QuantityField::new(name, label, self.draft, kind, unit).wrong(wrong);
        let test = format!("doubt-{name}");
        let question = Piece::live(move || {
            let doubt = self.doubt(kind, unit()).filter(|_| !self.typing.get());
            doubt.map(|doubt| self.question(&doubt, &test, unit)).into()
        });
        el("div")
            .class("limit")
            .with(field.piece())
            .with(el("div").attr("aria-live", "polite").with(question))
            .on("focusin", move |event| {
                // An answer that takes the focus must not take itself away.
                let target = event.target();
                if target.is_some_and(|target| target.is_instance_of::<HtmlInputElement>()) {
                    self.typing.set(true);
                }
            })
            .on("focusout", move |_| self.typing.set(false))
    }

    fn question(
        self,
        doubt: &Doubt,
        test: &str,
        unit: impl Fn() -> &'static Unit + Copy + 'static,
    ) -> El {
        let others = doubt.meant.iter().map(|meant| {
            let text = meant.to_string();
            let test = format!("{test}-{}", meant.unit().symbol);
            let words = text.clone();
            button("", &words, &test, move || self.draft.set(text.clone())).into()
        });
        let keep = button(
            "quiet",
            &format!("Keep {}", doubt.typed),
            &format!("{test}-keep"),
            move || {
                let lone = untrack(unit).symbol;
                self.meant.set(Some((self.draft.now(), lone)));
            },
        );
        el("div")
            .class("doubt")
            .test(test)
            .with(note("wrong", &doubt.to_string()))
            .with(row(others).with(keep))
    }
}
