//! What if a bearing were looser: a slider that is live.

use assembly_core::describe::UsualUnits;
use assembly_core::oil::circuit::Circuit;
use assembly_core::quantity::{Kind, Unit, show};
use build_journal::fold::OilInputs;
use leptos::prelude::*;

use super::page::Oil;
use crate::device::settings::{Settings, settings};
use crate::kit::piece::{El, Piece, button, el};
use crate::kit::section::section;

/// How far the slider goes, in steps: a little tighter, much looser.
const TIGHTEST: i32 = -4;
const LOOSEST: i32 = 12;

/// A bearing, and by how much it is supposed to be looser.
#[derive(Clone, Copy)]
pub(super) struct WhatIf {
    oil: Oil,
    settings: Settings,
    bearing: RwSignal<String>,
    steps: RwSignal<i32>,
}

impl WhatIf {
    /// Nothing supposed yet, of the main in the middle.
    pub fn of(oil: Oil) -> Self {
        let mains = oil.view.with_untracked(|view| view.build.mains.len());
        Self {
            oil,
            settings: settings(),
            bearing: RwSignal::new(format!("main {}", mains.div_ceil(2).max(1))),
            steps: RwSignal::new(0),
        }
    }

    fn unit(self) -> &'static Unit {
        self.settings.units().of(Kind::Length, UsualUnits::GAP)
    }

    /// A step: a quarter of a thou, or five micrometres; metres.
    fn by(self) -> f64 {
        let step = if self.unit().symbol == "thou" {
            0.25
        } else {
            5.0
        };
        self.unit().step_to_si(step * f64::from(self.steps.get()))
    }

    /// Whether anything is supposed.
    pub fn is_changed(self) -> bool {
        self.steps.get() != 0
    }

    /// What is supposed: "main 3 one thou looser".
    pub fn words(self) -> String {
        let by = self.by();
        let way = if by < 0.0 { "tighter" } else { "looser" };
        format!(
            "{} {} {way}",
            self.bearing.get(),
            show(by.abs(), None, self.unit())
        )
    }

    /// The circuit as supposed; `None` while there is none.
    pub fn circuit(self, inputs: &OilInputs) -> Option<Circuit> {
        let mut circuit = inputs.circuit.clone()?;
        if self.is_changed() {
            circuit.leaks = circuit.leaks.with_looser(&self.bearing.get(), self.by());
        }
        Some(circuit)
    }

    /// The slider with its bearing.
    pub fn piece(self) -> Piece {
        let names = self.oil.view.with_untracked(|view| {
            let circuit = view.inputs.circuit.as_ref();
            let leaks = circuit.map(|circuit| circuit.leaks.leaks.iter());
            let bearings = leaks.into_iter().flatten().map(|leak| leak.name.clone());
            bearings
                .filter(|name| name.starts_with("main ") || name.starts_with("rod "))
                .collect::<Vec<_>>()
        });
        let options = names
            .into_iter()
            .map(|name| el("option").attr("value", &name).text(&name).into());
        let choose = el("select")
            .attr("id", "what-if-bearing")
            .test("what-if-bearing")
            .all(options)
            .live_property("value", move || self.bearing.get().into())
            .on("change", move |event| {
                self.bearing.set(event_target_value(&event));
            });
        let slider = el("input")
            .attr("type", "range")
            .attr("id", "what-if")
            .attr("aria-label", "looser or tighter")
            .attr("min", &TIGHTEST.to_string())
            .attr("max", &LOOSEST.to_string())
            .attr("step", "1")
            .test("what-if")
            .live_property("value", move || self.steps.get().to_string().into())
            .live_attr("aria-valuetext", move || Some(self.words()))
            .on("input", move |event| {
                if let Ok(steps) = event_target_value(&event).parse::<i32>() {
                    self.steps.set(steps.clamp(TIGHTEST, LOOSEST));
                }
            });
        let step = |by: i32| {
            move || {
                self.steps
                    .update(|steps| *steps = (*steps + by).clamp(TIGHTEST, LOOSEST));
            }
        };
        let buttons: El = el("div").class("what-if-row").all([
            button("quiet", "− Tighter", "what-if-tighter", step(-1)).into(),
            slider.into(),
            button("quiet", "Looser +", "what-if-looser", step(1)).into(),
        ]);
        section("What if a bearing were looser?")
            .test("what-if-section")
            .with(
                el("div")
                    .class("field")
                    .with(el("label").attr("for", "what-if-bearing").text("Bearing"))
                    .with(choose),
            )
            .with(buttons)
            .with(
                el("p")
                    .class("what-if-says")
                    .test("what-if-says")
                    .live_text(move || {
                        if self.is_changed() {
                            self.words()
                        } else {
                            "As it is.".to_owned()
                        }
                    }),
            )
            .into()
    }
}
