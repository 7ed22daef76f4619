//! Numbers with their unit and give-or-take, set so that digits line up.

use assembly_core::measure::Estimate;
use assembly_core::quantity::{Unit, show};
use leptos::prelude::*;

/// A result with its give-or-take: `2.10 ± 0.18 thou`.
#[component]
pub fn Value(
    /// The value.
    value: Estimate,
    /// The unit to say it in.
    unit: &'static Unit,
) -> impl IntoView {
    let deviation = value.deviation();
    let shown = show(value.value(), (deviation > 0.0).then_some(deviation), unit);
    view! {
        <span class="result">
            <span class="result-number">{shown.number}</span>
            {shown
                .give_or_take
                .map(|spread| view! {
                    <span class="result-spread">
                        <span aria-hidden="true">" ± "</span>
                        <span class="only-heard">" give or take "</span>
                        {spread}
                    </span>
                })}
            <span class="result-unit">" "{shown.unit.symbol}</span>
        </span>
    }
}

/// A value with its give-or-take as plain text.
#[must_use]
pub fn text(value: &Estimate, unit: &'static Unit) -> String {
    let deviation = value.deviation();
    show(value.value(), (deviation > 0.0).then_some(deviation), unit).to_string()
}
