//! Pieces of the page.
//!
//! Screens are made of these and not of Leptos' view macro: that writes code
//! anew for every element, attribute and closure of the page, and a phone has
//! to fetch it all. Measured on this page it came to more than all the rest.
//! Signals, memos, effects and owners are Leptos' own. See `DEVELOPERS.md`.
//!
//! - A screen, or a part of one, is a function that gives a [`Piece`].
//! - What is said once is plain: [`El::text`], [`El::attr`], [`El::with`].
//! - What follows signals is `live`: [`El::live_text`], [`El::live_attr`],
//!   [`El::live`], [`El::when`]. It is undone when what it stands in goes.
//! - Closures are boxed as soon as they come in, so that the code behind them
//!   is there once.

use js_sys::Function;
use leptos::prelude::*;
use leptos::reactive::effect::RenderEffect;
use send_wrapper::SendWrapper;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue, throw_val};
use web_sys::{Comment, Element, Event, Node};

const SVG: &str = "http://www.w3.org/2000/svg";

/// A part of the page: an element, a text, or several of them in a row.
#[derive(Clone)]
pub struct Piece(Node);

/// An element that is being made.
#[derive(Clone)]
pub struct El(Element);

/// The tags and attributes of this crate are all written out in it, so the
/// browser has nothing to refuse. If it does, the page cannot go on.
fn made<T>(result: Result<T, JsValue>) -> T {
    result.unwrap_or_else(|error| throw_val(error))
}

/// An element of this tag.
#[must_use]
pub fn el(tag: &str) -> El {
    El(made(document().create_element(tag)))
}

/// An element of a drawing.
#[must_use]
pub fn drawn(tag: &str) -> El {
    El(made(document().create_element_ns(Some(SVG), tag)))
}

/// Keeps something for as long as what is being made stands.
fn keep<T: 'static>(value: T) {
    let _ = StoredValue::new_local(value);
}

/// Does something now and whenever a signal that it reads changes, for as long as
/// what is being made stands.
pub fn follow(run: Box<dyn FnMut(Option<()>)>) {
    keep(RenderEffect::new(run));
}

impl El {
    /// With this class.
    #[must_use]
    pub fn class(self, names: &str) -> Self {
        self.attr("class", names)
    }

    /// With this attribute.
    #[must_use]
    pub fn attr(self, name: &str, value: &str) -> Self {
        made(self.0.set_attribute(name, value));
        self
    }

    /// With this name for tests.
    #[must_use]
    pub fn test(self, name: &str) -> Self {
        self.attr("data-test", name)
    }

    /// With these words in it.
    #[must_use]
    pub fn text(self, words: &str) -> Self {
        self.put(&document().create_text_node(words));
        self
    }

    /// With this in it.
    #[must_use]
    pub fn with(self, piece: impl Into<Piece>) -> Self {
        self.put(&piece.into().0);
        self
    }

    /// With all these in it.
    #[must_use]
    pub fn all(self, pieces: impl IntoIterator<Item = Piece>) -> Self {
        for piece in pieces {
            self.put(&piece.0);
        }
        self
    }

    fn put(&self, node: &Node) {
        made(self.0.append_child(node));
    }

    /// With words that follow signals.
    #[must_use]
    pub fn live_text(self, words: impl Fn() -> String + 'static) -> Self {
        self.with(Piece::live_text(words))
    }

    /// With a part that is made anew when a signal it reads changes.
    #[must_use]
    pub fn live(self, make: impl Fn() -> Piece + 'static) -> Self {
        self.with(Piece::live(make))
    }

    /// With a part that is there while something holds.
    #[must_use]
    pub fn when(
        self,
        holds: impl Fn() -> bool + Send + Sync + 'static,
        make: impl Fn() -> Piece + 'static,
    ) -> Self {
        self.with(Piece::when(holds, make))
    }

    /// With an attribute that follows signals, and is not there while there is none.
    #[must_use]
    pub fn live_attr(
        self,
        name: &'static str,
        value: impl Fn() -> Option<String> + 'static,
    ) -> Self {
        self.attr_from(name, Box::new(value))
    }

    fn attr_from(self, name: &'static str, value: Box<dyn Fn() -> Option<String>>) -> Self {
        let element = self.0.clone();
        let mut shown: Option<String> = None;
        follow(Box::new(move |before| {
            let value = value();
            if before.is_some() && value == shown {
                return;
            }
            match &value {
                Some(value) => made(element.set_attribute(name, value)),
                None => made(element.remove_attribute(name)),
            }
            shown = value;
        }));
        self
    }

    /// With an attribute that is `true` or `false`.
    #[must_use]
    pub fn live_flag(self, name: &'static str, holds: impl Fn() -> bool + 'static) -> Self {
        self.live_attr(name, move || {
            Some(if holds() { "true" } else { "false" }.to_owned())
        })
    }

    /// With a class that comes and goes.
    #[must_use]
    pub fn live_class(self, name: &'static str, holds: impl Fn() -> bool + 'static) -> Self {
        self.class_from(name, Box::new(holds))
    }

    fn class_from(self, name: &'static str, holds: Box<dyn Fn() -> bool>) -> Self {
        let classes = self.0.class_list();
        follow(Box::new(move |_| {
            made(classes.toggle_with_force(name, holds()));
        }));
        self
    }

    /// With a property that follows signals: what a field holds, as opposed to
    /// what it held at first.
    #[must_use]
    pub fn live_property(self, name: &'static str, value: impl Fn() -> JsValue + 'static) -> Self {
        self.property_from(name, Box::new(value))
    }

    fn property_from(self, name: &'static str, value: Box<dyn Fn() -> JsValue>) -> Self {
        let element = self.0.clone();
        follow(Box::new(move |_| {
            made(js_sys::Reflect::set(&element, &name.into(), &value()));
        }));
        self
    }

    /// Does something when something happens to it.
    #[must_use]
    pub fn on(self, what: &str, act: impl FnMut(Event) + 'static) -> Self {
        self.hear(what, Box::new(act))
    }

    fn hear(self, what: &str, act: Box<dyn FnMut(Event)>) -> Self {
        let heard = Closure::wrap(act);
        made(
            self.0
                .add_event_listener_with_callback(what, heard.as_ref().unchecked_ref()),
        );
        // The element may outlive what it stood in: a dialog tells of its closing
        // a frame later, when its screen may be gone already.
        let function: Function = heard.as_ref().unchecked_ref::<Function>().clone();
        let listening = SendWrapper::new((self.0.clone(), function));
        let what = what.to_owned();
        on_cleanup(move || {
            let (element, function) = &*listening;
            made(element.remove_event_listener_with_callback(&what, function));
        });
        keep(heard);
        self
    }

    /// Does something when it is pressed.
    #[must_use]
    pub fn click(self, mut act: impl FnMut() + 'static) -> Self {
        self.on("click", move |_| act())
    }

    /// The element itself, as what its tag makes it.
    #[must_use]
    pub fn element<T: JsCast>(&self) -> T {
        self.0.clone().unchecked_into()
    }
}

impl Piece {
    /// Nothing.
    #[must_use]
    pub fn none() -> Self {
        Self(document().create_document_fragment().into())
    }

    /// All these in a row.
    #[must_use]
    pub fn all(pieces: impl IntoIterator<Item = Self>) -> Self {
        let row = Self::none();
        for piece in pieces {
            made(row.0.append_child(&piece.0));
        }
        row
    }

    /// Words that follow signals.
    #[must_use]
    pub fn live_text(words: impl Fn() -> String + 'static) -> Self {
        Self::text_from(Box::new(words))
    }

    fn text_from(words: Box<dyn Fn() -> String>) -> Self {
        let node = document().create_text_node("");
        let piece = Self(node.clone().into());
        let mut shown = String::new();
        follow(Box::new(move |_| {
            let words = words();
            // A text that is set anew is laid out anew, the same or not.
            if words != shown {
                node.set_data(&words);
                shown = words;
            }
        }));
        piece
    }

    /// A part that is made anew when a signal it reads changes. What was live
    /// in it ends then.
    #[must_use]
    pub fn live(make: impl Fn() -> Self + 'static) -> Self {
        Self::made_by(Box::new(make))
    }

    fn made_by(make: Box<dyn Fn() -> Self>) -> Self {
        let (start, end) = (document().create_comment(""), document().create_comment(""));
        let row = Self::none();
        made(row.0.append_child(&start));
        made(row.0.append_child(&end));
        follow(Box::new(move |_| {
            let marks = SendWrapper::new((start.clone(), end.clone()));
            // What is in there goes before its handlers do: a field that has the
            // focus says so when it is taken away.
            on_cleanup(move || clear(&marks.0, &marks.1));
            let piece = make();
            if let Some(parent) = end.parent_node() {
                made(parent.insert_before(&piece.0, Some(&end)));
            }
        }));
        row
    }

    /// A part that is there while something holds; it stays as it is for as
    /// long as that does not change.
    #[must_use]
    pub fn when(
        holds: impl Fn() -> bool + Send + Sync + 'static,
        make: impl Fn() -> Self + 'static,
    ) -> Self {
        Self::while_it(Box::new(holds), Box::new(make))
    }

    fn while_it(holds: Box<dyn Fn() -> bool + Send + Sync>, make: Box<dyn Fn() -> Self>) -> Self {
        let holds = Memo::new(move |_| holds());
        Self::live(move || {
            if holds.get() {
                untrack(&make)
            } else {
                Self::none()
            }
        })
    }

    /// Puts it into the page, behind all that is there.
    pub fn show(self) {
        if let Some(body) = document().body() {
            made(body.append_child(&self.0));
        }
    }
}

/// Takes away all that stands between two marks.
fn clear(start: &Comment, end: &Comment) {
    let Some(parent) = end.parent_node() else {
        return;
    };
    while let Some(old) = start
        .next_sibling()
        .filter(|old| !old.is_same_node(Some(end)))
    {
        made(parent.remove_child(&old));
    }
}

impl From<El> for Piece {
    fn from(el: El) -> Self {
        Self(el.0.into())
    }
}

impl From<Option<Self>> for Piece {
    fn from(piece: Option<Self>) -> Self {
        piece.unwrap_or_else(Self::none)
    }
}

impl From<Option<El>> for Piece {
    fn from(el: Option<El>) -> Self {
        el.map(Self::from).into()
    }
}

/// A paragraph.
#[must_use]
pub fn p(words: &str) -> El {
    el("p").text(words)
}

/// A paragraph of a class.
#[must_use]
pub fn note(class: &str, words: &str) -> El {
    p(words).class(class)
}

/// The heading of a screen.
#[must_use]
pub fn title(words: &str) -> El {
    el("h1").text(words)
}

/// A row of controls.
#[must_use]
pub fn row(pieces: impl IntoIterator<Item = Piece>) -> El {
    el("div").class("row").all(pieces)
}

/// A button: `""`, `quiet` or `danger`.
#[must_use]
pub fn button(kind: &str, words: &str, test: &str, act: impl FnMut() + 'static) -> El {
    el("button")
        .attr("type", "button")
        .class(&format!("button {kind}"))
        .test(test)
        .text(words)
        .click(act)
}

/// A link that looks like a button: `""` or `quiet`.
#[must_use]
pub fn link(kind: &str, to: &crate::route::Route, words: &str) -> El {
    el("a")
        .class(&format!("button {kind}"))
        .attr("href", &to.to_string())
        .text(words)
}

#[cfg(all(test, target_arch = "wasm32"))]
mod tests {
    use std::cell::Cell;
    use std::rc::Rc;

    use super::*;
    use leptos::task::tick;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn an_element_that_outlives_what_it_stood_in_is_heard_no_more() {
        // What fails in a listener is told to the window and to nobody else.
        let failed = Rc::new(Cell::new(0));
        let count = Rc::clone(&failed);
        let on_error = Closure::<dyn FnMut()>::new(move || count.set(count.get() + 1));
        window().set_onerror(Some(on_error.as_ref().unchecked_ref()));

        let heard = Rc::new(Cell::new(0));
        let owner = Owner::new();
        let button: web_sys::HtmlElement = owner.with(|| {
            let count = Rc::clone(&heard);
            button("", "Press", "press", move || count.set(count.get() + 1)).element()
        });
        button.click();
        assert_eq!(heard.get(), 1);
        owner.cleanup();
        button.click();
        window().set_onerror(None);
        assert_eq!((heard.get(), failed.get()), (1, 0));
    }

    /// Counts what is changed of an element from now on.
    fn watched(element: &Element) -> impl Fn() -> f64 {
        let watch = Function::new_with_args(
            "element",
            "let count = 0;
            const watch = new MutationObserver((all) => count += all.length);
            watch.observe(element, { attributes: true, characterData: true, subtree: true });
            return () => count += watch.takeRecords().length;",
        );
        let count = watch.call1(&JsValue::UNDEFINED, element).unwrap();
        let count: Function = count.unchecked_into();
        move || {
            let count = count.call0(&JsValue::UNDEFINED).unwrap();
            count.as_f64().unwrap()
        }
    }

    #[wasm_bindgen_test]
    async fn what_is_said_again_is_left_as_it_stands() {
        // It is Leptos' own way in that sets up what runs effects.
        leptos::mount::mount_to_body(|| ());
        let owner = Owner::new();
        let (line, thou): (Element, _) = owner.with(|| {
            let thou = RwSignal::new(2);
            let is_tight = move || thou.get() < 2;
            let line = el("p")
                .live_flag("data-tight", is_tight)
                .live_attr("data-why", move || is_tight().then(|| "tight".to_owned()))
                .live_text(move || if is_tight() { "tight" } else { "good" }.to_owned());
            (line.element(), thou)
        });
        let changed = watched(&line);
        thou.set(3);
        tick().await;
        assert_eq!(changed(), 0.0, "good is good");
        thou.set(1);
        tick().await;
        assert_eq!(changed(), 3.0);
        assert_eq!(line.get_attribute("data-why").as_deref(), Some("tight"));
        assert_eq!(line.text_content().as_deref(), Some("tight"));
        owner.cleanup();
    }
}
