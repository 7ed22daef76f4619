//! The film in the bearings: the least of it over clearance, with the own
//! clearances marked and the roughness that it has to exceed.

use assembly_core::describe::UsualUnits;
use assembly_core::oil::circuit::{BearingRow, Entry, Layout, usual};
use assembly_core::oil::film::load::{LoadOverCycle, MAIN_BY_ROD};
use assembly_core::oil::film::rules::least_film_for;
use assembly_core::oil::film::running::film_over_clearance;
use assembly_core::oil::film::{Bearing, Duty, Feed};
use assembly_core::oil::viscosity::Lubricant;
use assembly_core::quantity::{Kind, Unit, show};
use build_journal::fold::{OilInputs, OilView};
use leptos::prelude::*;

use super::cylinder;
use super::lacks::{Wanted, lacks};
use super::page::Oil;
use super::pressure::Units;
use crate::device::settings::{UnitClass, settings};
use crate::kit::chart::{Axis, Chart, Look, Mark};
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, note, title};

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
    load: RwSignal<LoadFrom>,
}

/// Where the load comes from.
#[derive(Clone, Copy, PartialEq, Eq)]
enum LoadFrom {
    /// Typed by the builder.
    Typed,
    /// Gas and mass of the described cylinder at the speed that is picked.
    Worked,
    /// What is common.
    Usual,
}

impl LoadFrom {
    const ALL: [Self; 3] = [Self::Worked, Self::Typed, Self::Usual];

    const fn id(self) -> &'static str {
        match self {
            Self::Typed => "typed",
            Self::Worked => "worked",
            Self::Usual => "usual",
        }
    }

    const fn label(self) -> &'static str {
        match self {
            Self::Typed => "as I typed it",
            Self::Worked => "gas and mass at this speed",
            Self::Usual => "25 bar on its area",
        }
    }

    /// The best there is of what is known.
    const fn of(inputs: &OilInputs) -> Self {
        if inputs.load.is_some() {
            Self::Typed
        } else if inputs.cylinder.is_some() {
            Self::Worked
        } else {
            Self::Usual
        }
    }
}

/// A load, and the greatest of the cycle where it is worked out.
#[derive(Clone, Copy)]
struct Pressed {
    mean: f64,
    greatest: Option<LoadOverCycle>,
}

/// The page.
pub(super) fn page(oil: Oil) -> Piece {
    let settings = settings();
    let asked = Asked {
        mains: RwSignal::new(true),
        turns: RwSignal::new("2000".to_owned()),
        hot: RwSignal::new(1),
        load: RwSignal::new(oil.view.with_untracked(|view| LoadFrom::of(&view.inputs))),
    };
    let needed = Piece::live(move || {
        oil.view
            .with(|view| lacks(oil, &view.inputs, Wanted::Film).into())
    });
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
    let load = pick(
        "film-load-from",
        "Load on the bearing",
        "",
        LoadFrom::ALL
            .map(|from| Word::of(from.id(), from.label()))
            .to_vec(),
        move || asked.load.get().id().to_owned(),
        move |id| {
            let picked = LoadFrom::ALL.into_iter().find(|from| from.id() == id);
            asked.load.set(picked.unwrap_or(LoadFrom::Usual));
        },
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
        load.into(),
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
    let speed = units.speed.to_si(turns);
    let from = asked.load.get();
    let pressed = match pressed(inputs, layout, mains, (from, speed)) {
        Ok(pressed) => pressed,
        Err(lacks) => {
            let words = format!("Not known yet: {lacks}. Type it under Pump and oil.");
            return note("notice notice-note", &words)
                .test("film-load-lacks")
                .into();
        }
    };
    let duty = Duty {
        load: pressed.mean,
        speed,
        oil_in: units
            .temperatures()
            .get(asked.hot.get())
            .copied()
            .unwrap_or(368.15),
    };
    let gap = class.clearance();
    let thin = class.of(Kind::Length, UsualUnits::of("µin", "µm"));
    let force = class.of(Kind::Force, UsualUnits::FORCE);
    let by_numbers = (from == LoadFrom::Worked)
        .then(|| cylinder::numbers(inputs, class))
        .flatten();
    Piece::all([
        load_words(pressed, from, force).into(),
        by_numbers.into(),
        drawn(row, name, (&duty, pressed), oil, inputs, (gap, thin)),
    ])
}

/// The load on a bearing, or what is not known of it.
fn pressed(
    inputs: &OilInputs,
    layout: &Layout,
    mains: bool,
    (from, speed): (LoadFrom, f64),
) -> Result<Pressed, String> {
    let steady = |mean: f64| Pressed {
        mean,
        greatest: None,
    };
    match from {
        LoadFrom::Usual => {
            let row = if mains { &layout.mains } else { &layout.rods };
            Ok(steady(usual::load(row)))
        }
        LoadFrom::Typed => {
            let typed = inputs.load.ok_or("the load on a rod bearing")?;
            Ok(steady(if mains { MAIN_BY_ROD * typed } else { typed }))
        }
        LoadFrom::Worked => {
            let lacks = || inputs.cylinder_lacks.join(", ");
            let cylinder = inputs.cylinder.as_ref().ok_or_else(lacks)?;
            let load = if mains {
                cylinder.main_load(speed)
            } else {
                cylinder.rod_load(speed)
            };
            Ok(Pressed {
                mean: load.mean,
                greatest: Some(load),
            })
        }
    }
}

/// The load in a sentence, with where it comes from.
fn load_words(pressed: Pressed, from: LoadFrom, unit: &'static Unit) -> El {
    let said = |load: f64| show(load, None, unit).to_string();
    let mean = said(pressed.mean);
    let words = match (from, pressed.greatest) {
        (_, Some(load)) => {
            let gas = if load.gas_estimated {
                " The peak of the gas is estimated: common practice, full throttle."
            } else {
                ""
            };
            format!(
                "By gas and mass: {mean} on the mean of two turns, {} at most, {:.0}° after the top of the firing stroke.{gas} Slider-crank and a plain four-stroke cycle; a main as half of two rods, without counterweights.",
                said(load.greatest),
                load.greatest_at
            )
        }
        (LoadFrom::Typed, None) => format!("As you typed it: {mean}."),
        (_, None) => format!(
            "25 bar on the bearing's area, {mean}: common practice, a mean of an engine at work."
        ),
    };
    note("hint", &words).test("film-load")
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
    (duty, pressed): (&Duty, Pressed),
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
    let at_most = pressed.greatest.map(|load| {
        let hardest = Duty {
            load: load.greatest,
            ..*duty
        };
        let films = film_over_clearance(&bearing, &hardest, oil, &clearances);
        clearances
            .iter()
            .zip(&films)
            .filter_map(|(clearance, film)| Some((*clearance, film.as_ref().ok()?.least_film)))
            .collect::<Vec<_>>()
    });
    if let Some(points) = at_most.filter(|points| !points.is_empty()) {
        chart = chart.line("if the greatest load stood still", Look::Dashed, points);
    }
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
    let squeezed = pressed.greatest.map(|_| {
        note(
            "hint",
            "The greatest load lasts a moment: oil that has to be squeezed out first carries more than the dashed line. The truth lies between the two.",
        )
    });
    Piece::all([
        chart.piece(),
        none_marked.into(),
        no_rough.into(),
        squeezed.into(),
        note("hint", "Solved to half a per cent by Reynolds' equation with its heat; a real bearing bends and is scratched. The maker's clearances win.").into(),
    ])
}
