//! Numbers with their unit and give-or-take, set so that digits line up.

use assembly_core::measure::Estimate;
use assembly_core::quantity::{Shown, Unit, show};

use super::piece::{El, el};

fn shown(value: &Estimate, unit: &'static Unit) -> Shown {
    let deviation = value.deviation();
    show(value.value(), (deviation > 0.0).then_some(deviation), unit)
}

/// A result with its give-or-take: `2.10 ± 0.18 thou`.
#[must_use]
pub fn value(value: &Estimate, unit: &'static Unit) -> El {
    let shown = shown(value, unit);
    let spread = shown.give_or_take.map(|spread| {
        el("span")
            .class("result-spread")
            .with(el("span").attr("aria-hidden", "true").text(" ± "))
            .with(el("span").class("only-heard").text(" give or take "))
            .text(&spread)
    });
    el("span")
        .class("result")
        .text(&shown.number)
        .with(spread)
        .text(" ")
        .text(shown.unit.symbol)
}

/// A value with its give-or-take as plain text.
#[must_use]
pub fn text(value: &Estimate, unit: &'static Unit) -> String {
    shown(value, unit).to_string()
}
