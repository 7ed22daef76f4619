//! Oils side by side: how thick each is from cold to hot.

use assembly_core::oil::viscosity::lubricant::GradeBand;
use assembly_core::oil::viscosity::{Grade, Lubricant, compare};
use assembly_core::quantity::{Kind, show, unit_or_usual};
use build_journal::fold::OilView;
use leptos::prelude::*;

use super::page::Oil;
use super::pressure::Units;
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::chart::{Axis, Chart, Look, pushed_along};
use crate::kit::piece::{El, Piece, el, note, title};
use crate::kit::section::section;
use crate::kit::words::word_field;

const GRADE_AT_MOST: usize = 20;
const USUAL: [&str; 2] = ["5W-40", "20W-50"];
/// Where the oils are compared, °C.
const COMPARED: [f64; 4] = [20.0, 60.0, 100.0, 120.0];

fn grade(draft: Draft) -> Result<Option<(String, Lubricant)>, String> {
    let text = draft.get();
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    let grade = Grade::read(text).map_err(|error| error.to_string())?;
    let band = GradeBand::of(grade).map_err(|error| error.to_string())?;
    Ok(Some((grade.to_string(), band.likely)))
}

/// The page.
pub(super) fn page(oil: Oil) -> Piece {
    let settings = settings();
    let drafts = [1, 2].map(|number| {
        let start = USUAL.get(number - 1).copied().unwrap_or_default();
        Draft::or(oil.opened.draft(&format!("oil/oils/{number}")), start)
    });
    let fields = drafts.into_iter().zip(["a", "b"]).map(|(draft, name)| {
        let wrong = move || grade(draft).err();
        word_field(
            &format!("oil-{name}"),
            "A grade to compare",
            "",
            draft,
            GRADE_AT_MOST,
            wrong,
        )
        .into()
    });
    let shown = Piece::live(move || {
        let units = Units::of(settings.units());
        oil.view.with(|view| {
            let own = own(view);
            let others = drafts.into_iter().filter_map(|draft| grade(draft).ok()?);
            let oils: Vec<(String, Lubricant)> = own.into_iter().chain(others).collect();
            if oils.is_empty() {
                return note("lead", "Type a grade.").into();
            }
            Piece::all([chart(&oils, units).piece(), table(&oils, units).into()])
        })
    });
    Piece::all([
        title("Oils side by side").into(),
        note(
            "lead",
            "Grades are bands: the line is the middle of one. The two figures of an oil's sheet say more; type them in under Pump and oil.",
        )
        .into(),
        el("div").class("pair").all(fields).into(),
        shown,
    ])
}

fn own(view: &OilView) -> Option<(String, Lubricant)> {
    let told = view.build.oil.system.as_ref().map(|known| &known.told);
    let name = told.and_then(|told| told.grade.clone());
    let name = name.map_or_else(|| "yours".to_owned(), |grade| format!("yours, {grade}"));
    Some((name, view.inputs.oil?))
}

fn chart(oils: &[(String, Lubricant)], units: Units) -> Chart {
    let (from, to) = (313.15, 403.15);
    let steps = 30_u32;
    let at = |step: u32| from + (to - from) * f64::from(step) / f64::from(steps);
    let lines: Vec<(String, Vec<(f64, f64)>)> = oils
        .iter()
        .map(|(name, oil)| {
            let line = (0..=steps).map(|step| (at(step), oil.dynamic(at(step))));
            (name.clone(), line.collect())
        })
        .collect();
    let tops = lines
        .iter()
        .flat_map(|(_, line)| line.iter().map(|(_, up)| *up));
    let up = Axis::up_to(
        "viscosity",
        unit_or_usual(Kind::DynamicViscosity, "mPa·s"),
        tops,
        1e-3,
    );
    let across = Axis {
        label: "oil temperature",
        unit: units.temperature,
        from,
        to,
    };
    let mut chart = Chart::of(
        "oils-chart",
        "How thick the oils are over their temperature.",
        across,
        up,
    );
    let looks = [Look::Whole, Look::Dashed, Look::Dotted];
    for ((name, line), look) in lines.into_iter().zip(looks) {
        chart = chart.line(name, look, line);
    }
    chart
}

fn table(oils: &[(String, Lubricant)], units: Units) -> El {
    let kelvins = COMPARED.map(|celsius| celsius + 273.15);
    let rows = compare(oils, &kelvins);
    let thick = unit_or_usual(Kind::DynamicViscosity, "mPa·s");
    let head = kelvins.map(|kelvin| {
        let shown = show(kelvin, None, units.temperature).to_string();
        el("th").text(&shown).into()
    });
    let body = rows.into_iter().map(|row| {
        let cells = row
            .viscosities
            .iter()
            .zip(&row.of_first)
            .map(|(own, part)| {
                let words = format!("{} ({:.0} %)", show(*own, None, thick).number, 100.0 * part);
                el("td").text(&words).into()
            });
        el("tr")
            .with(el("th").attr("scope", "row").text(&row.name))
            .all(cells)
            .into()
    });
    let name = "mPa·s, and as a part of the first";
    section(name).with(pushed_along(
        name,
        el("table")
            .class("numbers")
            .test("oils-table")
            .with(el("thead").with(el("tr").with(el("th").text("oil")).all(head)))
            .with(el("tbody").all(body)),
    ))
}
