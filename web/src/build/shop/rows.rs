//! The numbers of one piece of work, ready to be shown beside each other.

use assembly_core::quantity::{Kind, Typed, Unit, unit_of, unit_or_usual};
use build_journal::fact::Spot;
use build_journal::fold::{Build, Returned, ShopWork, SideBySide};
use build_journal::{FactId, WorkId};
use build_plan::{At, Measure};

use crate::device::settings::UnitClass;
use crate::kit::number;
use crate::kit::verdict::Mark;

/// A number that came back from the shop.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Back {
    /// The fact.
    pub fact: FactId,
    /// The number as the shop wrote it, with its unit.
    pub words: String,
    /// Whether it is inside what was wanted, when that can be said.
    pub within: Option<bool>,
    /// Why it can't be read.
    pub problem: Option<String>,
}

/// One number of one part: wanted, received, measured at home.
#[derive(Clone, PartialEq, Debug)]
pub struct Row {
    /// The measure.
    pub measure: &'static Measure,
    /// The part.
    pub at: At,
    /// What is wanted.
    pub wanted: String,
    /// The unit that a lone number is in.
    pub unit: &'static Unit,
    /// What came back.
    pub back: Vec<Back>,
    /// What was measured at home since it was ordered, and how that stands.
    pub home: Option<(String, Mark)>,
    /// Whether the shop and home contradict each other.
    pub apart: bool,
}

impl Row {
    /// Which number of which part.
    #[must_use]
    pub fn title(&self) -> String {
        match self.at {
            At::Engine => self.measure.label.to_owned(),
            at => format!("{}, {at}", self.measure.label),
        }
    }

    /// A name for drafts.
    #[must_use]
    pub fn name(&self) -> String {
        format!("{}/{}", self.measure.id, self.at)
    }

    /// The place, as a fact holds it.
    #[must_use]
    pub fn spot(&self) -> Spot {
        Spot::Known(build_plan::Place::of(self.at))
    }

    fn of(build: &Build, side: &SideBySide, class: UnitClass) -> Self {
        let measure = side.measure;
        let wanted = &side.line.wanted;
        let unit = unit_of(measure.kind, &wanted.set.unit)
            .unwrap_or_else(|| class.of(measure.kind, measure.units));
        let home = side.own.as_ref().and_then(|assessment| {
            let (least, greatest) = build.fit(measure, side.at)?.extent.as_ref()?;
            let say = |value| number::text(value, unit);
            let words = if least == greatest {
                say(least.estimate())
            } else {
                format!("{} to {}", say(least.estimate()), say(greatest.estimate()))
            };
            Some((words, Mark::from(assessment.verdict)))
        });
        Self {
            measure,
            at: side.at,
            wanted: match &wanted.window {
                Ok(_) => wanted_words(wanted.low.as_ref(), wanted.high.as_ref()),
                Err(problem) => problem.to_string(),
            },
            unit,
            back: side.returned.iter().map(|one| back(one)).collect(),
            home,
            apart: side.apart == Some(true),
        }
    }
}

/// What is wanted, as it was typed.
fn wanted_words(low: Option<&Typed>, high: Option<&Typed>) -> String {
    match (low, high) {
        (Some(low), Some(high)) if low.unit() == high.unit() => {
            format!("{} to {high}", low.number())
        }
        (Some(low), Some(high)) => format!("{low} to {high}"),
        (Some(low), None) => format!("at least {low}"),
        (None, Some(high)) => format!("at most {high}"),
        (None, None) => "nothing that can be read".to_owned(),
    }
}

/// A number that came back, in words.
#[must_use]
pub fn back(returned: &Returned) -> Back {
    let as_written = &returned.as_written;
    Back {
        fact: returned.fact,
        words: match &returned.value {
            Ok(typed) => typed.to_string(),
            Err(_) => as_written.typed.clone(),
        },
        within: returned.within,
        problem: returned.value.as_ref().err().map(ToString::to_string),
    }
}

/// All the numbers of a piece of work, part by part.
#[must_use]
pub fn rows(build: &Build, work: WorkId, class: UnitClass) -> Vec<Row> {
    let of = |work: &ShopWork| {
        let sides = build.side_by_side(work);
        sides
            .iter()
            .map(|side| Row::of(build, side, class))
            .collect()
    };
    find(build, work).map(of).unwrap_or_default()
}

/// A piece of work.
#[must_use]
pub fn find(build: &Build, work: WorkId) -> Option<&ShopWork> {
    build
        .bought
        .work
        .iter()
        .find(|one| one.ordered.work == work)
}

/// The unit of a class of units for numbers of a measure.
#[must_use]
pub fn unit_for(measure: Option<&'static Measure>, class: UnitClass) -> &'static Unit {
    measure.map_or_else(
        || unit_or_usual(Kind::Length, "mm"),
        |measure| class.of(measure.kind, measure.units),
    )
}
