//! A field whose text goes into a fact as it was typed, with its unit.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::{Kind, Unit};
use build_journal::fact::Said;
use leptos::prelude::*;

use crate::device::drafts::Draft;
use crate::device::settings::{Settings, settings};
use crate::kit::field::{QuantityField, read_text};

/// Units that numbers beside an engine are usually in.
pub(super) const PRESSURE: (Kind, UsualUnits) = (Kind::Pressure, UsualUnits::of("psi", "bar"));
/// Of oil, coolant and air.
pub(super) const TEMPERATURE: (Kind, UsualUnits) = (Kind::Temperature, UsualUnits::of("°F", "°C"));
/// Of the crank.
pub(super) const SPEED: (Kind, UsualUnits) = (Kind::RotationalSpeed, UsualUnits::of("rpm", "rpm"));

/// A field that is being typed into.
#[derive(Clone, Copy)]
pub(super) struct SaidField {
    draft: Draft,
    kind: Kind,
    usual: UsualUnits,
    settings: Settings,
    tried: RwSignal<bool>,
}

impl SaidField {
    /// A field of a kind with the text that is kept of it.
    pub fn of(draft: Draft, (kind, usual): (Kind, UsualUnits)) -> Self {
        Self {
            draft,
            kind,
            usual,
            settings: settings(),
            tried: RwSignal::new(false),
        }
    }

    fn unit(self) -> &'static Unit {
        self.settings.units().of(self.kind, self.usual)
    }

    /// The field itself, which may be given more.
    pub fn field(self, name: &str, label: &str, needed: bool) -> QuantityField {
        QuantityField::new(name, label, self.draft, self.kind, move || self.unit()).wrong(
            move || {
                let empty = self.draft.get().trim().is_empty();
                (needed && empty && self.tried.get()).then(|| "This one is needed.".to_owned())
            },
        )
    }

    /// What was typed: `Ok(None)` while nothing is, `Err` while it cannot be read.
    pub fn now(self) -> Result<Option<Said>, ()> {
        self.tried.set(true);
        let text = self.draft.now();
        let unit = untrack(|| self.unit());
        match read_text(&text, self.kind, unit) {
            None => Ok(None),
            Some(Ok(_)) => Ok(Some(Said {
                typed: text.trim().to_owned(),
                unit: unit.symbol.to_owned(),
            })),
            Some(Err(_)) => Err(()),
        }
    }

    /// Empties it: what was typed is written down.
    pub fn clear(self) {
        self.draft.clear();
        self.tried.set(false);
    }
}

/// What was said, as one text that reads the same whatever the field's unit is.
pub(super) fn words(said: &Said) -> String {
    let own_unit = said
        .typed
        .chars()
        .any(|sign| sign.is_alphabetic() || matches!(sign, '"' | '″' | '°' | '%' | 'µ'));
    if own_unit || said.unit.is_empty() {
        said.typed.clone()
    } else {
        format!("{} {}", said.typed, said.unit)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_said_has_its_unit_once() {
        let of = |typed: &str, unit: &str| {
            words(&Said {
                typed: typed.to_owned(),
                unit: unit.to_owned(),
            })
        };
        assert_eq!(of("55", "psi"), "55 psi");
        assert_eq!(of("3.8 bar", "psi"), "3.8 bar");
        assert_eq!(of("0.5", ""), "0.5");
    }
}
