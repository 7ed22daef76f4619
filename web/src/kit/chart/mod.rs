//! Small charts of our own: lines over two axes, with bands, spots and marks, and
//! the same numbers as a table.
//!
//! No chart crate that draws in the page holds its size (see `DEVELOPERS.md`). Lines
//! are told apart by their dashes and by the name at their end, not by colour, so
//! that they can be read in the sun, by anybody, and on paper.

mod axis;
mod drawing;
mod table;

pub use axis::Axis;
pub use table::pushed_along;

use std::cell::RefCell;
use std::collections::BTreeSet;

use web_sys::Element;

use super::piece::{El, Piece, el};
use super::section::fold;

/// How a line is drawn.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Look {
    /// Thick and whole.
    Whole,
    /// Long dashes.
    Dashed,
    /// Dots.
    Dotted,
    /// Thin: a rule to hold the others against.
    Rule,
}

impl Look {
    const fn class(self) -> &'static str {
        match self {
            Self::Whole => "chart-line chart-whole",
            Self::Dashed => "chart-line chart-dashed",
            Self::Dotted => "chart-line chart-dotted",
            Self::Rule => "chart-line chart-rule",
        }
    }
}

/// A line. All numbers are SI.
#[derive(Clone, Debug)]
pub struct Line {
    /// What it is called, at its end, in the legend and over its column.
    pub name: String,
    /// How it is drawn.
    pub look: Look,
    /// From left to right.
    pub points: Vec<(f64, f64)>,
    /// How far it may be off at each point, up and down; none where nothing is said.
    pub give_or_take: Vec<f64>,
    /// What it cannot exceed, whatever it may be off: a valve opens there.
    pub at_most: Option<f64>,
}

/// Something that was read: a spot on the chart.
#[derive(Clone, Debug)]
pub struct Spot {
    /// Across.
    pub x: f64,
    /// Up.
    pub y: f64,
    /// What it is.
    pub name: String,
}

/// A mark across the whole chart, upright or level.
#[derive(Clone, Debug)]
pub struct Mark {
    /// Where.
    pub at: f64,
    /// What stands there.
    pub name: String,
}

/// A chart.
#[derive(Clone, Debug)]
pub struct Chart {
    /// Name for tests.
    pub test: &'static str,
    /// What it shows, in a sentence, for those who cannot see it.
    pub says: String,
    /// Across.
    pub x: Axis,
    /// Up.
    pub y: Axis,
    /// The lines.
    pub lines: Vec<Line>,
    /// The spots.
    pub spots: Vec<Spot>,
    /// What the spots are, for the legend.
    pub spots_are: &'static str,
    /// Upright marks.
    pub uprights: Vec<Mark>,
    /// Level marks.
    pub levels: Vec<Mark>,
}

impl Chart {
    /// A chart with nothing on it.
    #[must_use]
    pub fn of(test: &'static str, says: impl Into<String>, x: Axis, y: Axis) -> Self {
        Self {
            test,
            says: says.into(),
            x,
            y,
            lines: Vec::new(),
            spots: Vec::new(),
            spots_are: "",
            uprights: Vec::new(),
            levels: Vec::new(),
        }
    }

    /// With a line.
    #[must_use]
    pub fn line(mut self, name: impl Into<String>, look: Look, points: Vec<(f64, f64)>) -> Self {
        self.lines.push(Line {
            name: name.into(),
            look,
            points,
            give_or_take: Vec::new(),
            at_most: None,
        });
        self
    }

    /// The last line may be off by so much at each point.
    #[must_use]
    pub fn give_or_take(mut self, each: Vec<f64>) -> Self {
        if let Some(line) = self.lines.last_mut() {
            line.give_or_take = each;
        }
        self
    }

    /// The band of the last line ends here.
    #[must_use]
    pub fn at_most(mut self, top: f64) -> Self {
        if let Some(line) = self.lines.last_mut() {
            line.at_most = Some(top);
        }
        self
    }

    /// The drawing with its legend, and the table that opens beside it.
    #[must_use]
    pub fn piece(&self) -> Piece {
        el("figure")
            .class("chart")
            .test(self.test)
            .with(drawing::drawing(self))
            .with(drawing::legend(self))
            .with(self.numbers())
            .into()
    }

    /// The table in its fold. Once opened it stays open when the chart is drawn
    /// anew, as it is at each step of a slider beside it.
    fn numbers(&self) -> El {
        let name = self.test;
        let folded = fold("The numbers", table::table(self)).test(&format!("{name}-numbers"));
        let element: Element = folded.element();
        let folded = folded.on("toggle", move |_| {
            let open = element.has_attribute("open");
            OPENED.with_borrow_mut(|opened| {
                if open {
                    opened.insert(name);
                } else {
                    opened.remove(name);
                }
            });
        });
        if OPENED.with_borrow(|opened| opened.contains(name)) {
            folded.attr("open", "")
        } else {
            folded
        }
    }
}

thread_local! {
    /// Charts whose table is open, for as long as the page is.
    static OPENED: RefCell<BTreeSet<&'static str>> = const { RefCell::new(BTreeSet::new()) };
}

#[cfg(all(test, target_arch = "wasm32"))]
mod tests {
    use assembly_core::quantity::Kind;
    use assembly_core::quantity::unit_or_usual;
    use leptos::prelude::{Owner, document};
    use wasm_bindgen::JsCast;
    use wasm_bindgen_test::wasm_bindgen_test;

    use super::*;

    fn next_turn() -> wasm_bindgen_futures::JsFuture {
        let mut after = |go: js_sys::Function, _: js_sys::Function| {
            let window = leptos::prelude::window();
            window
                .set_timeout_with_callback_and_timeout_and_arguments_0(&go, 50)
                .unwrap();
        };
        wasm_bindgen_futures::JsFuture::from(js_sys::Promise::new(&mut after))
    }

    #[wasm_bindgen_test]
    async fn a_table_that_was_opened_is_open_in_the_chart_drawn_anew() {
        let owner = Owner::new();
        let shown = || {
            let axis = Axis {
                label: "",
                unit: unit_or_usual(Kind::Ratio, "%"),
                from: 0.0,
                to: 1.0,
            };
            owner.with(|| Chart::of("drawn-anew", "", axis, axis).piece().show());
            let all = document()
                .query_selector_all("[data-test=drawn-anew-numbers]")
                .unwrap();
            let last: Element = all.item(all.length() - 1).unwrap().unchecked_into();
            last
        };
        let first = shown();
        assert!(!first.has_attribute("open"));
        first.set_attribute("open", "").unwrap();
        next_turn().await.unwrap();
        let second = shown();
        assert!(second.has_attribute("open"));
        second.remove_attribute("open").unwrap();
        next_turn().await.unwrap();
        assert!(!shown().has_attribute("open"));
        owner.cleanup();
    }
}
