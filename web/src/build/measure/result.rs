//! What is known of one main bearing, ready to be judged and shown.

use assembly_core::describe::{Answer, Calculation};
use assembly_core::fit::running_clearance::RunningClearance;
use assembly_core::measure::Window;
use assembly_core::quantity::{Typed, Unit};
use build_journal::fold::{Build, LeftOut, MainBearing, Stale, Standing};
use build_plan::measure::{Found, MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE};
use build_plan::{At, Direction, Station};
use leptos::prelude::*;

use super::standing::Stands;
use crate::build::Opened;
use crate::device::settings::UnitClass;
use crate::kit::aside::a_frame_later;
use crate::kit::judged::{Judged, dominates, findings, live_verdict, what_to_do, window_words};
use crate::kit::number;
use crate::kit::piece::{Piece, el, note, p};
use crate::kit::section::{fold_later, section, sentences};
use crate::kit::verdict::{Mark, plate};
use crate::kit::when;
use crate::kit::workings;
use crate::quick::offered::offered;

/// A bearing's clearance as something to judge; `None` before there is one.
#[must_use]
pub fn judged(bearing: &MainBearing, unit: &'static Unit) -> Option<Judged> {
    let clearance = bearing.clearance()?;
    let window = match bearing.limits.as_slice() {
        [first, others @ ..] if others.iter().all(|one| one.window == first.window) => {
            first.window.as_ref().ok().copied()
        }
        _ => None,
    };
    Some(Judged {
        least: clearance.least.estimate().clone(),
        greatest: clearance.greatest.estimate().clone(),
        sources: (*bearing.sources).clone(),
        window,
        measure: Some(&MAIN_OIL_CLEARANCE),
        findings: bearing.findings.clone(),
        advice: match &bearing.standing {
            Standing::Judged(advice) => Some(advice.clone()),
            Standing::Open(_) => None,
        },
        sets: Vec::new(),
        unit,
    })
}

/// What is shown of a bearing.
#[derive(Clone, PartialEq)]
pub struct Shown {
    number: u8,
    unit: &'static Unit,
    /// How it stands.
    pub stands: Stands,
    /// What is missing for a verdict, in sentences.
    pub missing: Vec<String>,
    practice: Option<Window>,
    second_opinion: Option<String>,
}

impl Shown {
    /// What there is to show of this bearing.
    #[must_use]
    pub fn of(build: &Build, bearing: &MainBearing, units: UnitClass) -> Self {
        let unit = units.clearance();
        Self {
            number: bearing.main.number(),
            unit,
            stands: Stands::of(build, bearing, units),
            missing: match &bearing.standing {
                Standing::Judged(_) => Vec::new(),
                Standing::Open(missing) => missing.iter().map(ToString::to_string).collect(),
            },
            practice: bearing.common_practice,
            second_opinion: second_opinion(bearing, unit),
        }
    }
}

/// The whole result of a bearing: verdict, doubt, what to do, workings. The
/// verdict comes at once, what goes with it a frame later. A verdict that no longer
/// counts is struck through, with what made it so and when.
#[must_use]
pub fn result(opened: Opened, shown: Memo<Option<Shown>>) -> Piece {
    let of = move |stale: bool| {
        Memo::new(move |_| {
            shown.with(|shown| {
                let stands = &shown.as_ref()?.stands;
                let judged = stands.judged.clone();
                judged.filter(|_| stands.stale.is_some() == stale)
            })
        })
    };
    let (counts, was) = (of(false), of(true));
    let at_once = Piece::when(
        move || counts.with(Option::is_some),
        move || {
            let without = Memo::new(move |_| {
                shown.with(|shown| {
                    let stands = shown.as_ref().map(|shown| shown.stands.left_out.clone());
                    stands.unwrap_or_default()
                })
            });
            let without = Piece::live(move || without.with(|places| left_out(places)));
            Piece::all([live_verdict(counts), without])
        },
    );
    let no_longer = Piece::live(move || {
        was.with(|judged| {
            let judged = judged.as_ref()?;
            let stale = shown.with(|shown| shown.as_ref()?.stands.stale.clone())?;
            Some(struck_through(judged, &stale))
        })
        .into()
    });
    let later = a_frame_later(shown);
    let aside = Piece::live(move || {
        later.with(|shown| shown.as_ref().map(|shown| aside(opened, shown)).into())
    });
    Piece::all([at_once, no_longer, aside])
}

/// What goes with the verdict, or stands in its place.
fn aside(opened: Opened, shown: &Shown) -> Piece {
    let stands = &shown.stands;
    let still = (!shown.missing.is_empty())
        .then(|| section("Missing for a verdict").with(sentences("missing", &shown.missing)));
    let practice = shown.practice.map(|window| {
        let words = format!(
            ": for a journal of this size {}. The maker's sheet decides.",
            window_words(&window, shown.unit)
        );
        el("p")
            .class("tripwire")
            .test("tripwire")
            .with(el("strong").text("Common practice, not a limit"))
            .text(&words)
    });
    let passed = stands
        .passed
        .as_ref()
        .map(|reason| note("passed", &format!("Let pass as it is. Why: {reason}")).test("passed"));
    let counts = stands.judged.as_ref().filter(|_| stands.stale.is_none());
    let advice = counts.map(|judged| {
        let second = shown.second_opinion.as_ref();
        Piece::all([
            second.map(|words| p(words).test("second-opinion")).into(),
            findings(&judged.findings),
            dominates(&judged.least, &judged.sources),
            what_to_do(judged),
        ])
    });
    let (number, unit) = (shown.number, shown.unit);
    let workings = stands.judged.as_ref().map(|_| {
        fold_later("How it was worked out", move || {
            let lines = opened.build.with_untracked(|build| {
                let mut mains = build.mains.iter();
                let bearing = mains.find(|bearing| bearing.main.number() == number);
                bearing.map(|bearing| lines_of(build, bearing, unit))
            });
            sentences("workings", &lines.unwrap_or_default()).into()
        })
    });
    Piece::all([
        advice.into(),
        workings.into(),
        passed.into(),
        still.into(),
        practice.into(),
    ])
}

/// The places that a result does without.
#[must_use]
pub fn left_out(places: &[LeftOut]) -> Piece {
    if places.is_empty() {
        return Piece::none();
    }
    let mut lines: Vec<String> = places.iter().map(ToString::to_string).collect();
    lines
        .push("The verdict goes by the other places: it may change when they are read.".to_owned());
    sentences("left-out", &lines).test("left-out").into()
}

/// A result that was true until something changed.
fn struck_through(judged: &Judged, stale: &Stale) -> Piece {
    let when = i64::try_from(stale.by.milliseconds()).map(when::moment);
    let said = [
        vec![format!("Since {}:", when.unwrap_or_default())],
        stale.chain.clone(),
        vec!["Measure it again: the new readings take the place of the old ones.".to_owned()],
    ];
    let was = format!("{}, {}", judged.value_words(), judged.verdict_words());
    Piece::all([
        p("")
            .class("reading")
            .test("reading")
            .with(el("del").text(&was))
            .into(),
        plate(Mark::Stale, Mark::Stale.words(), &said.concat()).into(),
    ])
}

/// What was read at once, beside what bore and journal say.
fn second_opinion(bearing: &MainBearing, unit: &'static Unit) -> Option<String> {
    let (_, other) = (bearing.by_size.as_ref()?, bearing.at_once.as_ref()?);
    Some(format!(
        "The plastic strip says {}. The verdict goes by bore and journal.",
        number::text(other.least.estimate(), unit)
    ))
}

/// The workings of the clearance that the verdict goes by.
fn lines_of(build: &Build, bearing: &MainBearing, unit: &'static Unit) -> Vec<String> {
    let Found::WorkedOut {
        calculation: by_size,
        or_read_by,
        ..
    } = MAIN_OIL_CLEARANCE.found
    else {
        return Vec::new();
    };
    let (clearance, calculation) = match (&bearing.by_size, &bearing.at_once) {
        (Some(clearance), _) => (clearance, offered(by_size)),
        (None, Some(clearance)) => (clearance, or_read_by.last().and_then(|id| offered(id))),
        (None, None) => return Vec::new(),
    };
    let Some(calculation) = calculation else {
        return Vec::new();
    };
    workings::lines(
        calculation,
        &answer(clearance, calculation),
        &typed(build, bearing),
        |_| Some(unit),
    )
}

fn answer(clearance: &RunningClearance, calculation: &Calculation) -> Answer {
    let optional = [
        ("taper", &clearance.taper),
        ("journal-taper", &clearance.journal_taper),
        ("journal-out-of-round", &clearance.journal_out_of_round),
        ("bore-taper", &clearance.bore_taper),
        ("bore-out-of-round", &clearance.bore_out_of_round),
        ("eccentricity", &clearance.eccentricity),
    ];
    let answer = Answer::new()
        .with("least", clearance.least.estimate().clone())
        .with("greatest", clearance.greatest.estimate().clone())
        .with("mean", clearance.mean.estimate().clone());
    optional
        .into_iter()
        .filter(|(id, _)| calculation.output(id).is_some())
        .fold(answer, |answer, (id, value)| {
            answer.with_optional(id, value.as_ref().map(|value| value.estimate().clone()))
        })
}

/// The readings that count, under the names of the calculation's inputs.
fn typed(build: &Build, bearing: &MainBearing) -> Vec<(&'static str, Typed)> {
    let main = At::Main(bearing.main.number());
    [
        &MAIN_BEARING_BORE,
        &MAIN_JOURNAL_DIAMETER,
        &MAIN_OIL_CLEARANCE,
    ]
    .into_iter()
    .flat_map(|measure| build.readings(measure, main))
    .filter_map(|taken| {
        let (typed, measure, place) = (taken.counting()?, taken.measure?, taken.place?);
        let rear = place.station == Some(Station::Rear);
        let upright = place.direction == Some(Direction::UpAndDown);
        let name = if measure.id == MAIN_JOURNAL_DIAMETER.id {
            if rear { "journal-2" } else { "journal" }
        } else if measure.id == MAIN_BEARING_BORE.id {
            match (upright, rear) {
                (true, false) => "bore",
                (true, true) => "bore-2",
                (false, _) => "bore-near-joint",
            }
        } else {
            match place.station {
                None => "widest",
                Some(Station::Front) => "front",
                Some(_) => "rear",
            }
        };
        Some((name, typed.clone()))
    })
    .collect()
}
