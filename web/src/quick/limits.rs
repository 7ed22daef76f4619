//! The limits of a quick check, and the trade's rule of thumb beside them.

use assembly_core::describe::{Output, Provenance};
use assembly_core::measure::{Window, WindowError};
use assembly_core::quantity::Unit;
use build_plan::Measure;

use crate::device::drafts::Draft;
use crate::kit::judged::window_words;
use crate::kit::limit::{Limit, LimitField};
use crate::kit::piece::{Piece, el};

/// The two limits, as they are typed.
#[derive(Clone, Copy)]
pub struct Limits {
    output: &'static Output,
    low: LimitField,
    high: LimitField,
}

impl Limits {
    /// The limits of a running clearance or of another output, as they were left.
    #[must_use]
    pub fn of(family: &str, output: &'static Output, of_clearance: bool) -> Self {
        let field = |side: &str| {
            let draft = Draft::of(format!("quick-limits/{family}/{side}"));
            if of_clearance {
                LimitField::of(draft)
            } else {
                LimitField::of_anything(draft)
            }
        };
        Self {
            output,
            low: field("low"),
            high: field("high"),
        }
    }

    /// The window; `None` while none is typed, one cannot be read or is asked about.
    ///
    /// # Errors
    /// Two limits that make no window.
    pub fn window(self, unit: &'static Unit) -> Result<Option<Window>, WindowError> {
        let side = |limit: LimitField| match limit.get(self.output.kind, unit) {
            Limit::None => Ok(None),
            Limit::Typed(typed) => Ok(Some(typed.si())),
            Limit::NotYet => Err(()),
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

/// The fields of the limits. `size` is what a rule of thumb goes by, once it is
/// typed; SI units.
#[must_use]
pub fn limit_fields(
    limits: Limits,
    unit: impl Fn() -> &'static Unit + Copy + 'static,
    measure: Option<&'static Measure>,
    size: impl Fn() -> Option<f64> + 'static,
) -> Piece {
    let kind = limits.output.kind;
    let wrong = move || limits.window(unit()).err().map(|error| error.to_string());
    let tripwire = measure
        .and_then(|measure| measure.tripwire)
        .map(|tripwire| {
            let common = match tripwire.provenance {
                Provenance::CommonPractice => "Common practice, not a limit",
                _ => "A rule of thumb, not a limit",
            };
            let here = move || {
                let window = size().and_then(|size| tripwire.window(size).ok());
                let here = window.map(|window| format!(", here {}", window_words(&window, unit())));
                format!("{}. The maker's sheet decides.", here.unwrap_or_default())
            };
            el("p")
                .class("tripwire")
                .test("tripwire")
                .with(el("strong").text(common))
                .text(": ")
                .text(tripwire.words)
                .live_text(here)
        });
    let low = limits
        .low
        .piece("limit-low", "At least", kind, unit, || None);
    let high = limits
        .high
        .piece("limit-high", "At most", kind, unit, wrong);
    let pair = el("div").class("pair").with(low).with(high);
    Piece::all([pair.into(), tripwire.into()])
}
