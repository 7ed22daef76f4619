//! The limits of a quick check, and the trade's rule of thumb beside them.

use assembly_core::describe::{Output, Provenance};
use assembly_core::measure::{Window, WindowError};
use assembly_core::quantity::Unit;
use build_plan::Measure;
use leptos::prelude::*;

use crate::device::drafts::Draft;
use crate::kit::field::{QuantityField, read_text};
use crate::kit::judged::window_words;

/// The two limits, as they are typed.
#[derive(Clone, Copy)]
pub struct Limits {
    output: &'static Output,
    low: Draft,
    high: Draft,
}

impl Limits {
    /// The limits of an output, as they were left.
    #[must_use]
    pub fn of(family: &str, output: &'static Output) -> Self {
        Self {
            output,
            low: Draft::of(format!("quick-limits/{family}/low")),
            high: Draft::of(format!("quick-limits/{family}/high")),
        }
    }

    /// The window; `None` while none is typed or one cannot be read.
    ///
    /// # Errors
    /// Two limits that make no window.
    pub fn window(self, unit: &'static Unit) -> Result<Option<Window>, WindowError> {
        let side = |draft: Draft| match read_text(&draft.get(), self.output.kind, unit) {
            None => Ok(None),
            Some(Ok(typed)) => Ok(Some(typed.si())),
            Some(Err(_)) => Err(()),
        };
        let (Ok(low), Ok(high)) = (side(self.low), side(self.high)) else {
            return Ok(None);
        };
        match Window::new(low, high) {
            Ok(window) => Ok(Some(window)),
            Err(WindowError::NoLimit) => Ok(None),
            Err(error) => Err(error),
        }
    }
}

/// The fields of the limits.
#[component]
pub fn LimitFields(
    /// The limits.
    limits: Limits,
    /// The unit of a lone number.
    #[prop(into)]
    unit: Signal<&'static Unit>,
    /// What the trade knows of it.
    measure: Option<&'static Measure>,
    /// The size that a rule of thumb goes by, once it is typed; SI units.
    #[prop(into)]
    size: Signal<Option<f64>>,
) -> impl IntoView {
    let kind = limits.output.kind;
    let wrong = Signal::derive(move || {
        limits
            .window(unit.get())
            .err()
            .map(|error| error.to_string())
    });
    let tripwire = measure
        .and_then(|measure| measure.tripwire)
        .map(|tripwire| {
            let common = match tripwire.provenance {
                Provenance::CommonPractice => "Common practice, not a limit",
                _ => "A rule of thumb, not a limit",
            };
            view! {
                <p class="tripwire" data-test="tripwire">
                    <strong>{common}</strong>": "{tripwire.words}
                    {move || {
                        let window = size.get().and_then(|size| tripwire.window(size).ok())?;
                        Some(format!(", here {}", window_words(&window, unit.get())))
                    }}
                    ". The maker's sheet decides."
                </p>
            }
        });
    view! {
        <div class="pair">
            <QuantityField name="limit-low" label="At least" draft=limits.low kind unit />
            <QuantityField name="limit-high" label="At most" draft=limits.high kind unit wrong />
        </div>
        {tripwire}
    }
}
