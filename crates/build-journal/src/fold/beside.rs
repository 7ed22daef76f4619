//! What stands beside a reading: the readings of its place and of the places
//! around. From these the last digits get their meaning and a slip its question.

use assembly_core::quantity::{Kind, Typed, Unit, last_digits};
use assembly_core::tool::Tool;
use assembly_core::typing_sense::{Expectation, Question, Scale, questions};
use build_plan::{Measure, Place};

use super::build::Build;
use super::readings::Taken;
use super::tools::ListedTool;
use crate::fact::Reading;
use crate::id::{FactId, SettingId, ToolId};

/// How far ordinary places of one measure lie apart, one standard deviation, for
/// sizes: two thou. An estimate of the trade (common practice, no source).
const PLACES_APART: f64 = 50e-6;
/// How far one place changes between two sittings, by wear, polish or honing:
/// one thou. An estimate of the trade (common practice, no source).
const CHANGES_BY: f64 = 25e-6;
/// Below this a length is a gap or a clearance and not a size, metres.
const A_SIZE: f64 = 5e-3;
/// Gaps differ by this share of themselves. An estimate of the trade (common
/// practice, no source).
const GAPS_DIFFER: f64 = 0.3;
/// How far a reading is off when nothing is known of the tool, metres.
const UNKNOWN_TOOL: f64 = 5e-6;

/// The readings around a place that are read in the same way: a needle's
/// deviations stand beside those of the same setting only, whole sizes beside
/// whole sizes.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Beside {
    /// Readings of the place itself that count, oldest first.
    pub here: Vec<Typed>,
    /// The place's last reading that no longer counts.
    pub was: Option<Typed>,
    /// Readings at other places of the engine that count, oldest first.
    pub others: Vec<(Place, Typed)>,
    /// The limits of the measure, low and high, as typed.
    pub limits: Vec<Typed>,
}

impl Beside {
    /// What the last digits of a reading mean here; see
    /// [`last_digits`](fn@last_digits). The place's own reading says it, else the
    /// latest of the others, else its reading from before, else its limits.
    #[must_use]
    pub fn meaning(&self, text: &str, lone: &'static Unit) -> Vec<Typed> {
        let others = self.others.iter().rev().map(|(_, typed)| typed);
        let near = self.here.iter().rev().chain(others);
        let mut near = near.chain(&self.was).chain(&self.limits);
        near.find_map(|near| {
            let meant = last_digits(text, near, lone);
            (!meant.is_empty()).then_some(meant)
        })
        .unwrap_or_default()
    }
}

impl Build {
    /// What stands beside a reading that is about to be taken at a place, with
    /// this setting of a tool, or none.
    #[must_use]
    pub fn beside(
        &self,
        measure: &'static Measure,
        place: Place,
        set: (Option<ToolId>, Option<SettingId>),
    ) -> Beside {
        self.beside_all_but(None, measure, place, set)
    }

    fn beside_all_but(
        &self,
        left_out: Option<FactId>,
        measure: &'static Measure,
        place: Place,
        set: (Option<ToolId>, Option<SettingId>),
    ) -> Beside {
        let mut beside = Beside::default();
        let Some(described) = &self.engine else {
            return beside;
        };
        let needle = self.needle(set);
        let parts = measure.spots.per.parts(&described.engine);
        let mut all: Vec<&Taken> = parts
            .into_iter()
            .flat_map(|at| self.readings(measure, at))
            .filter(|taken| Some(taken.fact) != left_out)
            .filter(|taken| self.needle((taken.reading.tool, taken.reading.setting)) == needle)
            .collect();
        all.sort_unstable_by_key(|taken| taken.fact);
        for taken in all {
            let (Some(typed), Some(at)) = (taken.counting(), taken.place) else {
                continue;
            };
            match (at == place, self.still_counts(taken)) {
                (true, true) => beside.here.push(typed.clone()),
                (true, false) => beside.was = Some(typed.clone()),
                (false, true) => beside.others.push((at, typed.clone())),
                (false, false) => {}
            }
        }
        if needle.is_none() {
            let limits = self.limits_of(measure, place.at).into_iter();
            let both = limits.flat_map(|one| [one.low, one.high]);
            beside.limits = both.flatten().collect();
        }
        beside
    }

    /// The setting whose needle is read, when one is.
    fn needle(&self, (tool, setting): (Option<ToolId>, Option<SettingId>)) -> Option<SettingId> {
        let listed = self.tools.iter().find(|one| Some(one.tool) == tool)?;
        let set = listed.setting(setting?)?;
        set.set.needle.map(|_| set.set.setting)
    }

    /// The questions that a reading raises by what stands beside it, the
    /// likeliest first. None for a reading that is struck out or not of a length,
    /// and none where too little is known. Nothing follows from them by itself.
    #[must_use]
    pub fn questions_of(&self, fact: FactId) -> Vec<Question> {
        self.asked(fact).unwrap_or_default()
    }

    fn asked(&self, fact: FactId) -> Option<Vec<Question>> {
        let taken = self.reading(fact)?;
        let (typed, place) = (taken.counting()?, taken.place?);
        let measure = taken.measure.filter(|one| one.kind == Kind::Length)?;
        let set = (taken.reading.tool, taken.reading.setting);
        let beside = self.beside_all_but(Some(fact), measure, place, set);
        let mut expected = self.expected(beside, typed, &taken.reading);
        if self.needle(set).is_none() {
            self.expect_standard(measure, place.at, &mut expected);
        }
        Some(questions(typed, &expected))
    }

    fn expected(&self, beside: Beside, typed: &Typed, reading: &Reading) -> Expectation {
        let si = |readings: &[Typed]| readings.iter().map(Typed::si).collect::<Vec<f64>>();
        let others: Vec<f64> = beside.others.iter().map(|(_, typed)| typed.si()).collect();
        let largest = |list: &[f64]| list.iter().fold(0.0_f64, |most, one| most.max(one.abs()));
        let needle = self.needle((reading.tool, reading.setting)).is_some();
        let around = largest(&others);
        let places_apart = if around < A_SIZE && !needle {
            (GAPS_DIFFER * around).min(PLACES_APART)
        } else {
            PLACES_APART
        };
        let tool = self.tools.iter().find(|one| Some(one.tool) == reading.tool);
        let tool = tool.and_then(ListedTool::known);
        let kind = tool.as_ref().map(Tool::instrument);
        let scale = match kind {
            _ if needle => Scale::Needle,
            // A gauge that compares is read whole on whatever it is set on.
            Some(kind) => match Scale::of(kind, typed.unit()) {
                Scale::Needle => Scale::Plain,
                scale => scale,
            },
            None => Scale::Plain,
        };
        Expectation {
            neighbours: others,
            place_spread: places_apart,
            previous: beside.was.map(|typed| typed.si()),
            change_spread: CHANGES_BY,
            repeats: si(&beside.here),
            reading_spread: tool.map_or(UNKNOWN_TOOL, |tool| tool.deviation(typed.si())),
            scale,
            ..Expectation::default()
        }
    }
}
