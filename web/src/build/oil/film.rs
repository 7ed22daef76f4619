//! The film in the bearings: the least of it over clearance, with the own
//! clearances marked and the roughness that it has to exceed.

use assembly_core::describe::UsualUnits;
use assembly_core::oil::circuit::{BearingRow, Entry, Layout, usual};
use assembly_core::oil::film::rules::least_film_for;
use assembly_core::oil::film::running::film_over_clearance;
use assembly_core::oil::film::{Bearing, Duty, Feed};
use assembly_core::oil::viscosity::Lubricant;
use assembly_core::quantity::{Kind, Unit, show};
use build_journal::fold::{OilInputs, OilView};
use leptos::prelude::*;

use super::lacks::lacks;
use super::page::Oil;
use super::pressure::Units;
use crate::device::settings::{UnitClass, settings};
use crate::kit::chart::{Axis, Chart, Look, Mark};
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{Piece, note, title};

/// Clearances on the chart, as parts of the journal: from tighter than any bearing
/// runs to looser, and how many.
const TIGHTEST: f64 = 0.0004;
const LOOSEST: f64 = 0.002;
const POINTS: u32 = 13;

/// Pressure in a groove all round where the pump is not known, Pa: common practice.
const IN_GROOVE: f64 = 2.5e5;

const TURNS: [&str; 4] = ["1000", "2000", "4000", "6000"];

/// Which film.
#[derive(Clone, Copy)]
struct Asked {
    mains: RwSignal<bool>,
    turns: RwSignal<String>,
    hot: RwSignal<usize>,
}

/// The page.
pub(super) fn page(oil: Oil) -> Piece {
    let settings = settings();
    let asked = Asked {
        mains: RwSignal::new(true),
        turns: RwSignal::new("2000".to_owned()),
        hot: RwSignal::new(1),
    };
    let needed = Piece::live(move || oil.view.with(|view| lacks(oil, &view.inputs).into()));
    let shown = Piece::live(move || {
        let class = settings.units();
        oil.view.with(|view| shown(view, asked, class))
    });
    let which = pick(
        "film-of",
        "Which bearings",
        "",
        vec![Word::of("mains", "mains"), Word::of("rods", "rods")],
        move || if asked.mains.get() { "mains" } else { "rods" }.to_owned(),
        move |id| asked.mains.set(id == "mains"),
    );
    let turns = pick(
        "film-turns",
        "Engine speed, rpm",
        "",
        TURNS.map(|turns| Word::of(turns, turns)).to_vec(),
        move || asked.turns.get(),
        move |id| asked.turns.set(id),
    );
    let units = Units::of(settings.units());
    let oils = units.temperatures();
    let words = oils.iter().enumerate().map(|(at, kelvin)| {
        let shown = show(*kelvin, None, units.temperature).to_string();
        Word::of(at.to_string(), shown)
    });
    let hot = pick(
        "film-oil",
        "Oil that comes in",
        "",
        words.collect(),
        move || asked.hot.get().to_string(),
        move |id| asked.hot.set(id.parse().unwrap_or(1)),
    );
    Piece::all([
        title("Film in the bearings").into(),
        note(
            "lead",
            "How thin the oil gets where it is thinnest. Tighter is not always thicker: a tight bearing runs hot.",
        )
        .into(),
        needed,
        which.into(),
        turns.into(),
        hot.into(),
        shown,
    ])
}

fn shown(view: &OilView, asked: Asked, class: UnitClass) -> Piece {
    let inputs = &view.inputs;
    let (Some(layout), Some(oil)) = (&inputs.layout, &inputs.oil) else {
        return Piece::none();
    };
    let units = Units::of(class);
    let mains = asked.mains.get();
    let (row, name) = if mains {
        (&layout.mains, "main")
    } else {
        (&layout.rods, "rod")
    };
    let turns: f64 = asked.turns.get().parse().unwrap_or(2000.0);
    let duty = Duty {
        load: load(inputs, layout, mains),
        speed: units.speed.to_si(turns),
        oil_in: units
            .temperatures()
            .get(asked.hot.get())
            .copied()
            .unwrap_or(368.15),
    };
    let gap = class.clearance();
    let thin = class.of(Kind::Length, UsualUnits::of("µin", "µm"));
    drawn(row, name, &duty, oil, inputs, (gap, thin))
}

/// The mean load on a bearing: as typed, else as is common.
fn load(inputs: &OilInputs, layout: &Layout, mains: bool) -> f64 {
    let (main, rod) = (usual::load(&layout.mains), usual::load(&layout.rods));
    match inputs.load {
        Some(typed) if mains => typed * assembly_core::oil::film::load::MAIN_BY_ROD,
        Some(typed) => typed,
        None if mains => main,
        None => rod,
    }
}

/// Does it between two marks of the browser's clock, for `cargo xtask report`.
fn timed<T>(work: impl FnOnce() -> T) -> T {
    let clock = window().performance();
    let mark = |name: &str| {
        if let Some(clock) = &clock {
            // Without marks there is nothing to report, and the page is the same.
            let _ = clock.mark(name);
        }
    };
    mark("thoubook-films-begin");
    let made = work();
    mark("thoubook-films-end");
    made
}

fn drawn(
    row: &BearingRow,
    name: &str,
    duty: &Duty,
    oil: &Lubricant,
    inputs: &OilInputs,
    (gap, thin): (&'static Unit, &'static Unit),
) -> Piece {
    let step = (LOOSEST - TIGHTEST) / f64::from(POINTS - 1);
    let clearances: Vec<f64> = (0..POINTS)
        .map(|at| row.diameter * (TIGHTEST + step * f64::from(at)))
        .collect();
    let (land, feed) = match row.entry {
        Entry::FullGroove(width) => (0.5 * (row.length - width), Feed::Groove(IN_GROOVE)),
        Entry::HalfGroove(_) | Entry::Hole(_) => (row.length, Feed::Hole),
    };
    let bearing = Bearing {
        diameter: row.diameter,
        land,
        clearance: row.diameter * TIGHTEST,
        feed,
    };
    let films = timed(|| film_over_clearance(&bearing, duty, oil, &clearances));
    let points: Vec<(f64, f64)> = clearances
        .iter()
        .zip(&films)
        .filter_map(|(clearance, film)| Some((*clearance, film.as_ref().ok()?.least_film)))
        .collect();
    if points.is_empty() {
        let why = films.into_iter().find_map(Result::err);
        let why = why.map(|error| error.to_string()).unwrap_or_default();
        return note(
            "notice notice-caution",
            &format!("No film carries this: {why}."),
        )
        .into();
    }
    let rough = inputs
        .roughness
        .map(|(journal, shell)| least_film_for(journal, shell));
    let tops = points.iter().map(|(_, film)| *film).chain(rough);
    let up = Axis::up_to("least film", thin, tops, 1e-6);
    let across = Axis {
        label: "oil clearance",
        unit: gap,
        from: row.diameter * TIGHTEST,
        to: row.diameter * LOOSEST,
    };
    let says = format!(
        "Least film over oil clearance, {name} bearings at {} newtons.",
        duty.load.round()
    );
    let mut chart =
        Chart::of("film-chart", says, across, up).line("least film", Look::Whole, points);
    let own = row.clearances.iter().enumerate();
    chart.uprights = own
        .filter_map(|(at, clearance)| {
            let clearance = clearance.as_ref()?;
            Some(Mark {
                at: clearance.value(),
                name: format!("{name} {}", at + 1),
            })
        })
        .collect();
    chart.levels = rough
        .map(|least| Mark {
            at: least,
            name: "three times the roughness".to_owned(),
        })
        .into_iter()
        .collect();
    let none_marked = chart.uprights.is_empty().then(|| {
        note(
            "hint",
            &format!("No {name} is measured yet, so none is marked."),
        )
    });
    let no_rough = rough.is_none().then(|| {
        note(
            "hint",
            "With the roughness of journal and shell, the least film that keeps them apart is drawn in.",
        )
    });
    let estimated = inputs.load.is_none().then(|| {
        note(
            "hint",
            "The load is 25 bar on the bearing's area: common practice, a mean of an engine at work. Type yours under Pump and oil.",
        )
    });
    Piece::all([
        chart.piece(),
        none_marked.into(),
        no_rough.into(),
        estimated.into(),
        note("hint", "Solved to half a per cent by Reynolds' equation with its heat; a real bearing bends and is scratched. The maker's clearances win.").into(),
    ])
}
