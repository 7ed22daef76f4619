//! The bolts of a group as they are drawn.

use std::cell::Cell;
use std::rc::Rc;
use std::time::Duration;

use assembly_core::tightening::layout::Layout;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, KeyboardEvent};

use crate::kit::piece::{El, drawn, el, follow};

/// From bolt to bolt on a drawing, in its own units: pixels when it is pressed.
const PITCH: f64 = 60.0;
/// How big a bolt is on it.
const RADIUS: f64 = 24.0;
/// Room at the edge, for the ring of the bolt that is next.
const EDGE: f64 = 10.0;
/// How the bolt that is next looks, by the style sheet.
pub const NEXT: &str = "next";
/// The class of a ring that is away for half a beat, and how long that is.
const BEAT: &str = "beat";
const HALF_A_BEAT: Duration = Duration::from_millis(600);
/// As many bolts as stand beside each other on a phone.
const ACROSS: f64 = 5.0;

/// Where bolts are drawn.
#[derive(Clone, PartialEq, Debug)]
pub struct Drawing {
    pub(super) places: Vec<(f64, f64)>,
    width: f64,
    height: f64,
    /// From one unit of the layout to those of the drawing.
    scale: f64,
    /// It is turned a quarter, so that it fits a phone: what was left is at the
    /// top.
    pub turned: bool,
}

impl Drawing {
    /// A drawing of a group to be pressed; turned when it is too wide for a
    /// phone.
    #[must_use]
    pub fn of(layout: &Layout) -> Self {
        let (wide, high) = layout.extent();
        Self::drawn(layout, wide >= ACROSS && wide > high)
    }

    /// A drawing of a group to be looked at, as it sits.
    #[must_use]
    pub fn as_it_sits(layout: &Layout) -> Self {
        Self::drawn(layout, false)
    }

    /// A drawing whose bolts are moved about: it stays as it is turned while they
    /// are.
    #[must_use]
    pub fn to_move(layout: &Layout, turned: bool) -> Self {
        Self::drawn(layout, turned)
    }

    /// A way on the screen as one on the layout.
    #[must_use]
    pub fn on_the_layout(&self, (right, down): (f64, f64)) -> (f64, f64) {
        let (right, down) = (right / self.scale, down / self.scale);
        if self.turned {
            (down, -right)
        } else {
            (right, down)
        }
    }

    fn drawn(layout: &Layout, turned: bool) -> Self {
        let (wide, high) = layout.extent();
        let (middle, nearest) = (layout.middle(), nearest(layout));
        // No two bolts on top of each other.
        let scale = PITCH / if nearest > 0.0 { nearest.min(1.0) } else { 1.0 };
        let (width, height) = if turned { (high, wide) } else { (wide, high) };
        let (width, height) = (width * scale + PITCH + EDGE, height * scale + PITCH + EDGE);
        let places = layout.places().iter().map(|(x, y)| {
            let (x, y) = (x - middle.0, y - middle.1);
            // Turned, not mirrored: left stays left of what looks at it.
            let (x, y) = if turned { (-y, x) } else { (x, y) };
            (
                x.mul_add(scale, width / 2.0),
                y.mul_add(scale, height / 2.0),
            )
        });
        Self {
            places: places.collect(),
            width,
            height,
            scale,
            turned,
        }
    }
}

/// How near the two nearest bolts are.
pub fn nearest(layout: &Layout) -> f64 {
    let count = layout.count();
    let pairs = (0..count).flat_map(|one| (one + 1..count).map(move |other| (one, other)));
    let apart = pairs.map(|(one, other)| layout.apart(one, other));
    apart
        .filter(|apart| *apart > 0.0)
        .min_by(f64::total_cmp)
        .unwrap_or(1.0)
}

/// What a bolt says of itself on a drawing: how it is, and the words in it.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Face {
    /// A name of the style sheet: `open`, `done`, `next`, `passed`, `picked`.
    pub look: &'static str,
    /// In the bolt.
    pub words: String,
    /// The same to be heard.
    pub said: String,
}

/// The drawing, to be looked at: how each bolt is by a name of the style sheet,
/// and what all of it says in words. A pull changes two bolts: the others are
/// left as they stand.
#[must_use]
pub fn map(
    drawing: &Drawing,
    looks: impl Fn() -> Vec<&'static str> + 'static,
    says: impl Fn() -> String + 'static,
) -> El {
    let bolts: Vec<El> = (0..drawing.places.len())
        .map(|bolt| drawing.bare(bolt).with(number().text(&name(bolt))))
        .collect();
    let elements: Rc<[Element]> = bolts.iter().map(El::element).collect();
    let next = beat(&elements);
    let mut shown: Vec<&'static str> = Vec::new();
    follow(Box::new(move |_| {
        let looks = looks();
        for (at, (element, look)) in elements.iter().zip(&looks).enumerate() {
            if shown.get(at) != Some(look) {
                // The tag and its attributes are written out here.
                let _ = element.set_attribute("data-look", look);
                let _ = element.class_list().remove_1(BEAT);
            }
        }
        next.set(looks.iter().position(|look| *look == NEXT));
        shown = looks;
    }));
    drawing
        .paper()
        .class("bolt-map")
        .attr("role", "img")
        .test("bolt-map")
        .live_attr("aria-label", move || Some(says()))
        .all(bolts.into_iter().map(Into::into))
}

/// The ring of the bolt that is next comes and goes. An animation of the style
/// sheet would have the page drawn anew sixty times a second for it, while the
/// phone stands by the engine for an hour. Where less motion is wished for, the
/// style sheet has the ring stay.
fn beat(bolts: &Rc<[Element]>) -> Rc<Cell<Option<usize>>> {
    let next = Rc::new(Cell::new(None));
    let (bolts, now) = (Rc::clone(bolts), Rc::clone(&next));
    let turn = move || {
        if let Some(bolt) = now.get().and_then(|at: usize| bolts.get(at)) {
            let _ = bolt.class_list().toggle(BEAT);
        }
    };
    if let Ok(beating) = set_interval_with_handle(turn, HALF_A_BEAT) {
        on_cleanup(move || beating.clear());
    }
    next
}

/// The drawing to press on: each bolt is a button where it sits, as large as a
/// thumb.
#[must_use]
pub fn press_map(
    drawing: &Drawing,
    face: impl Fn(usize) -> Face + Clone + Send + Sync + 'static,
    act: impl Fn(usize) + Clone + 'static,
) -> El {
    let bolts = (0..drawing.places.len()).map(|bolt| {
        let (act, key_act) = (act.clone(), act.clone());
        let face = own_face(bolt, face.clone());
        drawing
            .bolt(bolt, face)
            .attr("role", "button")
            .attr("tabindex", "0")
            .test(&format!("bolt-{}", bolt + 1))
            .live_attr("aria-label", move || {
                Some(face.with(|face| format!("bolt {}: {}", bolt + 1, face.said)))
            })
            .click(move || act(bolt))
            .on("keydown", move |event| {
                let key: &KeyboardEvent = event.unchecked_ref();
                if matches!(key.key().as_str(), "Enter" | " ") && !key.repeat() {
                    event.prevent_default();
                    key_act(bolt);
                }
            })
            .into()
    });
    let paper = drawing
        .full_size()
        .class("bolt-map bolt-press")
        .attr("role", "group")
        .attr("aria-label", "the bolts as they sit")
        .test("bolt-press")
        .all(bolts.collect::<Vec<_>>());
    el("div").class("bolt-scroll").with(paper)
}

/// The face of one bolt: what has not changed of it is not drawn anew.
pub(super) fn own_face(
    bolt: usize,
    face: impl Fn(usize) -> Face + Send + Sync + 'static,
) -> Memo<Face> {
    Memo::new(move |_| face(bolt))
}

/// What a thumb meets of a bolt: a square as wide as the way to the next.
fn thumb() -> El {
    let (corner, side) = ((-PITCH / 2.0).to_string(), PITCH.to_string());
    drawn("rect")
        .class("bolt-thumb")
        .attr("x", &corner)
        .attr("y", &corner)
        .attr("width", &side)
        .attr("height", &side)
}

impl Drawing {
    fn paper(&self) -> El {
        let view = format!("0 0 {:.1} {:.1}", self.width, self.height);
        drawn("svg").attr("viewBox", &view)
    }

    /// A paper that is never drawn smaller than it is: what is wider than the
    /// screen is pushed along.
    pub(super) fn full_size(&self) -> El {
        self.paper()
            .attr("width", &format!("{:.0}", self.width))
            .attr("height", &format!("{:.0}", self.height))
    }

    pub(super) fn bolt(&self, bolt: usize, face: Memo<Face>) -> El {
        self.bare(bolt)
            .live_attr("data-look", move || {
                Some(face.with(|face| face.look.to_owned()))
            })
            .with(number().live_text(move || face.with(|face| face.words.clone())))
    }

    /// A bolt without what is written in it.
    fn bare(&self, bolt: usize) -> El {
        let (x, y) = self.places.get(bolt).copied().unwrap_or_default();
        drawn("g")
            .class("bolt")
            .attr("transform", &format!("translate({x:.1} {y:.1})"))
            .attr("data-bolt", &name(bolt))
            .with(thumb())
            .with(drawn("circle").attr("r", &RADIUS.to_string()))
            .with(hexagon())
    }
}

fn name(bolt: usize) -> String {
    (bolt + 1).to_string()
}

/// What is written in a bolt.
fn number() -> El {
    drawn("text")
        .attr("text-anchor", "middle")
        .attr("dy", "0.36em")
}

/// A bolt that is done is drawn with its hexagon, one that is not as a circle:
/// told apart without colour.
fn hexagon() -> El {
    drawn("path")
        .class("bolt-head")
        .attr("d", "M-12 -21L12 -21L24 0L12 21L-12 21L-24 0Z")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wide_head_is_turned_and_not_mirrored() {
        let drawing = Drawing::of(&Layout::grid(2, 9));
        assert!(drawing.turned && drawing.height > drawing.width);
        // The first bolt of the first row was at the left and at the top: turned
        // clockwise it is at the top and at the right.
        let (first, below) = (drawing.places[0], drawing.places[9]);
        assert!(first.1 < 36.0 && first.0 > below.0, "{first:?} {below:?}");
        assert!(!Drawing::of(&Layout::grid(3, 4)).turned);
        assert!(!Drawing::as_it_sits(&Layout::grid(2, 9)).turned);
    }

    #[test]
    fn a_way_on_the_screen_is_one_on_the_layout() {
        let upright = Drawing::to_move(&Layout::grid(2, 9), true);
        let as_it_sits = Drawing::to_move(&Layout::grid(2, 9), false);
        for (drawing, way) in [(&upright, (-1.0, 2.0)), (&as_it_sits, (2.0, 1.0))] {
            // What a bolt that moved by two to the right and one down moves by.
            let mut places = Layout::grid(2, 9).places().to_vec();
            places[4] = (places[4].0 + 2.0, places[4].1 + 1.0);
            let back = drawing.on_the_layout((way.0 * PITCH, way.1 * PITCH));
            assert!(
                (back.0 - 2.0).abs() < 1e-9 && (back.1 - 1.0).abs() < 1e-9,
                "{back:?}"
            );
            let moved = Drawing::to_move(&Layout::at(&places), drawing.turned);
            let by = |at: usize| {
                (
                    moved.places[at].0 - drawing.places[at].0,
                    moved.places[at].1 - drawing.places[at].1,
                )
            };
            let (own, other) = (by(4), by(0));
            assert!((own.0 - other.0 - way.0 * PITCH).abs() < 1e-6);
            assert!((own.1 - other.1 - way.1 * PITCH).abs() < 1e-6);
        }
    }

    #[test]
    fn bolts_do_not_lie_on_each_other() {
        for layout in [
            Layout::circle(12),
            Layout::rows(&[5, 6]),
            Layout::grid(1, 1),
        ] {
            let drawing = Drawing::of(&layout);
            let drawn = Layout::at(&drawing.places);
            assert!(
                layout.count() == 1 || nearest(&drawn) > 2.0 * RADIUS,
                "{drawing:?}"
            );
        }
        assert_eq!(Drawing::of(&Layout::default()).places, []);
    }
}
