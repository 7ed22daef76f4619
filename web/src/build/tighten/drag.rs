//! A drawing whose bolts are dragged to where they sit.

use std::cell::Cell;
use std::rc::Rc;

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, KeyboardEvent, PointerEvent};

use super::map::{Drawing, Face, own_face};
use crate::kit::piece::{El, el};

/// A finger that moved less than this many pixels only tapped.
const A_TAP: f64 = 8.0;

/// A way on the screen, pixels to the right and down.
pub type Way = (f64, f64);

/// The drawing: a bolt that is dragged tells `dropped` how far, one that is
/// tapped tells `tapped`.
#[must_use]
pub fn drag_map(
    drawing: &Drawing,
    face: impl Fn(usize) -> Face + Clone + Send + Sync + 'static,
    tapped: impl Fn(usize) + Clone + 'static,
    dropped: impl Fn(usize, Way) + Clone + 'static,
) -> El {
    let bolts = drawing.places.iter().enumerate().map(|(bolt, home)| {
        let by_key = tapped.clone();
        let face = own_face(bolt, face.clone());
        let made = drawing
            .bolt(bolt, face)
            .attr("role", "button")
            .attr("tabindex", "0")
            .test(&format!("move-bolt-{}", bolt + 1))
            .live_attr("aria-label", move || {
                Some(face.with(|face| format!("bolt {}: {}", bolt + 1, face.said)))
            })
            .on("keydown", move |event| {
                let key: &KeyboardEvent = event.unchecked_ref();
                if matches!(key.key().as_str(), "Enter" | " ") && !key.repeat() {
                    event.prevent_default();
                    by_key(bolt);
                }
            });
        dragged(made, bolt, *home, tapped.clone(), dropped.clone()).into()
    });
    let paper = drawing
        .full_size()
        .class("bolt-map bolt-press bolt-drag")
        .attr("role", "group")
        .attr("aria-label", "the bolts, to be moved")
        .test("bolt-drag")
        .all(bolts.collect::<Vec<_>>());
    el("div").class("bolt-scroll").with(paper)
}

/// The bolt under the finger goes with it, and is put down where it is lifted.
fn dragged(
    bolt_drawn: El,
    bolt: usize,
    home: (f64, f64),
    tapped: impl Fn(usize) + 'static,
    dropped: impl Fn(usize, Way) + 'static,
) -> El {
    let element: Element = bolt_drawn.element();
    let from: Rc<Cell<Option<Way>>> = Rc::default();
    let put = {
        let element = element.clone();
        move |(right, down): Way| {
            let (x, y) = (home.0 + right, home.1 + down);
            // An attribute of our own: never refused.
            let _ = element.set_attribute("transform", &format!("translate({x:.1} {y:.1})"));
        }
    };
    let way = |event: &Event, from: Way| {
        let pointer: &PointerEvent = event.unchecked_ref();
        (
            f64::from(pointer.client_x()) - from.0,
            f64::from(pointer.client_y()) - from.1,
        )
    };
    let down = {
        let from = Rc::clone(&from);
        move |event: Event| {
            let pointer: &PointerEvent = event.unchecked_ref();
            if pointer.is_primary() && pointer.button() == 0 {
                from.set(Some(way(&event, (0.0, 0.0))));
                // Without it a finger that leaves the bolt drops it there.
                let _ = element.set_pointer_capture(pointer.pointer_id());
            }
        }
    };
    let moved = {
        let (from, put) = (Rc::clone(&from), put.clone());
        move |event: Event| {
            if let Some(start) = from.get() {
                put(way(&event, start));
            }
        }
    };
    let up = {
        let (from, put) = (Rc::clone(&from), put.clone());
        move |event: Event| {
            let Some(start) = from.take() else { return };
            let way = way(&event, start);
            put((0.0, 0.0));
            if way.0.hypot(way.1) < A_TAP {
                tapped(bolt);
            } else {
                dropped(bolt, way);
            }
        }
    };
    let cancelled = move |_: Event| {
        from.set(None);
        put((0.0, 0.0));
    };
    bolt_drawn
        // Else the page is pushed along under the finger and takes the bolt from it:
        // the style sheet alone does not keep it from parts of a drawing.
        .on("touchstart", |event| event.prevent_default())
        .on("pointerdown", down)
        .on("pointermove", moved)
        .on("pointerup", up)
        .on("pointercancel", cancelled)
}
