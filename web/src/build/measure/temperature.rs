//! How warm part and tool are: said once for a round, written with each reading.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::{Kind, Typed, Unit};
use leptos::prelude::*;

use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::device::settings::{Settings, settings};
use crate::kit::field::{QuantityField, read_text};
use crate::kit::piece::{Piece, el};

/// Sizes are meant at 20 °C: ISO 1, standard reference temperature (from memory).
const HOW: &str = "Optional. Sizes are meant at 20 °C (68 °F). Let part and tool lie side by side until both are as warm as the room, and type how warm that is. It goes with every reading until you change it.";

/// The temperature of part and tool, in force until it is changed.
#[derive(Clone, Copy)]
pub struct Warmth {
    draft: Draft,
    settings: Settings,
}

impl Warmth {
    /// What is in force in this build.
    #[must_use]
    pub fn of(opened: Opened) -> Self {
        let draft = Draft::of(opened.draft("part-temperature"));
        Self {
            draft,
            settings: settings(),
        }
    }

    fn unit(self) -> &'static Unit {
        self.settings
            .units()
            .of(Kind::Temperature, UsualUnits::TEMPERATURE)
    }

    fn read(self, text: &str) -> Option<Typed> {
        read_text(text, Kind::Temperature, self.unit())?.ok()
    }

    /// What is written with a reading: the number with its unit, when one was
    /// typed and can be read.
    #[must_use]
    pub fn now(self) -> Option<String> {
        untrack(|| self.read(&self.draft.get()).map(|typed| typed.to_string()))
    }

    /// The field, folded up behind what it says.
    #[must_use]
    pub fn piece(self) -> Piece {
        let title = move || match self.read(&self.draft.get()) {
            Some(typed) => format!("Part and tool at {typed}"),
            None => "Temperature of part and tool".to_owned(),
        };
        let field = QuantityField::new(
            "part-temperature",
            "Part and tool",
            self.draft,
            Kind::Temperature,
            move || self.unit(),
        )
        .how(HOW);
        el("details")
            .class("fold")
            .test("temperature")
            .with(el("summary").live_text(title))
            .with(el("div").class("fold-inside").with(field.piece()))
            .into()
    }
}
