//! Parts that were measured cold or warm: the question whether to bring a fit of
//! two metals to 20 °C, and what was answered.

use assembly_core::quantity::{Si, Unit, show};
use build_journal::Body;
use build_journal::fact::{WarmthAnswer, WarmthSettled};
use build_journal::fold::FitWarmth;
use build_plan::{At, MEASURES, Measure};
use leptos::prelude::*;

use crate::build::Opened;
use crate::device::settings::settings;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, button, el, note, p};

/// What there is to say of the temperature of the fits that a measure at a part
/// belongs to: itself, or those that go by it.
#[must_use]
pub fn warmth(
    measure: &'static Measure,
    at: impl Fn() -> Option<At> + Copy + Send + Sync + 'static,
) -> Piece {
    let opened: Opened = expect_context();
    let settings = settings();
    let fits = MEASURES.iter().copied().filter(move |fit| {
        fit.two_metals()
            .is_some_and(|(outer, inner)| [fit.id, outer.id, inner.id].contains(&measure.id))
    });
    let pieces = fits.map(|fit| {
        let found = Memo::new(move |_| {
            let at = at()?;
            opened.build.with(|build| build.warmth_of(fit, at))
        });
        Piece::live(move || {
            let unit = settings.units().of(fit.kind, fit.units);
            let said = found.with(|found| said(opened, fit, found.as_ref()?, unit));
            said.into()
        })
    });
    Piece::all(pieces)
}

fn said(
    opened: Opened,
    fit: &'static Measure,
    found: &FitWarmth,
    unit: &'static Unit,
) -> Option<El> {
    let settle = move |answer: WarmthAnswer| {
        let _ = opened.write_down(Body::WarmthSettled(WarmthSettled {
            measure: fit.id.to_owned(),
            answer,
        }));
    };
    let adds = show(
        found.correction.value().to_si(),
        Some(found.correction.give_or_take().to_si()),
        unit,
    );
    if let Some(settled) = &found.settled {
        let words = match settled.answer {
            WarmthAnswer::ToReference => format!(
                "Read at {} and brought to 20 °C: that adds {adds} to the {}.",
                found.at, fit.label
            ),
            WarmthAnswer::AsRead => format!(
                "Read at {} and left as read. At 20 °C {adds} would come to the {}.",
                found.at, fit.label
            ),
        };
        let fact = settled.fact;
        let again = button("quiet", "Ask again", "warmth-again", move || {
            let _ = opened.strike(fact, None);
        });
        return Some(
            el("div")
                .class("reading-here")
                .test("warmth-settled")
                .with(note("hint", &words))
                .with(again),
        );
    }
    let warning = found.warning.as_ref()?;
    let (outer, inner) = found.metals;
    let take = button("", "Bring it to 20 °C", "warmth-take", move || {
        settle(WarmthAnswer::ToReference);
    });
    let keep = button("quiet", "Leave it as read", "warmth-keep", move || {
        settle(WarmthAnswer::AsRead);
    });
    Some(
        el("div")
            .class("notice notice-caution asked")
            .attr("role", "status")
            .test("warmth-asked")
            .with(el("div").class("pair").with(take).with(keep))
            .with(p(&format!(
                "Read at {}: {}.",
                found.at,
                warning.text
            )))
            .with(p(&format!(
                "{} around {}: at 20 °C, where sheets hold, {adds} comes to the {}. How much metals grow is common practice; the answer is for all parts of the {}.",
                capital(outer.label),
                inner.label,
                fit.label,
                fit.label
            ))),
    )
}
