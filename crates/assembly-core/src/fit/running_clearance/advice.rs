//! What to do about a running clearance: how far out it is, what makes the
//! doubt, and what would settle it.

use uom::si::f64::Length;

use super::station::RunningClearance;
use crate::measure::{
    Assessment, Blame, Cause, DangerousSide, ErrorSource, Estimate, Measured, MoreReadings, Origin,
    Sources, Verdict, Window, best_chance_when_tried, how_many_more,
};
use crate::quantity::{Shown, Si, Unit, show};
use crate::tool::{Settling, Task, Tool, Way, ways};

/// A bearing without room for oil wipes and seizes; a loose one knocks.
pub const DANGEROUS_SIDE: DangerousSide = DangerousSide::TooLittle;

/// What the numbers say to do. Values, from which a page makes its own picture;
/// [`Advice::sentences`] says them in words.
#[derive(Clone, PartialEq, Debug)]
pub struct Advice {
    /// The verdict, with its chances.
    pub assessment: Assessment,
    /// How far the least clearance is below the low limit; below zero it is above it.
    pub tight_by: Option<Measured<Length>>,
    /// How far the greatest clearance is above the high limit; below zero it is below it.
    pub loose_by: Option<Measured<Length>>,
    /// The tool or thing that makes most of the give-or-take.
    pub blame: Option<Blame>,
    /// In which way it does so mostly.
    pub cause: Option<Cause>,
    /// Whether measuring this way could ever have said good.
    pub could_say_good: bool,
    /// What more readings of the same places would do.
    pub more: MoreReadings,
    /// The ways that would settle it where it stands now, surest first. Empty
    /// when nothing has to be settled, or none of the tools would.
    pub tools: Vec<Way>,
}

/// Advises on a clearance against its window.
///
/// `readings` is how many readings of each place went into it; `tools` are the
/// tools to choose from.
///
/// ```
/// use assembly_core::fit::running_clearance::{Station, advise, from_stations};
/// use assembly_core::measure::{MoreReadings, Sources, Verdict, Window};
/// use assembly_core::quantity::unit;
/// use assembly_core::tool::{INSTRUMENTS, Setting, Tool, instrument};
///
/// let inch = 0.0254;
/// let mut sources = Sources::new();
/// let gauge = Tool::new("t", "telescoping gauge", instrument("telescoping-gauge-practised").unwrap());
/// let micrometer = Tool::new("m", "micrometer", instrument("outside-micrometer-tenths").unwrap());
/// let today = Setting::on_standard("today");
/// let station = Station {
///     bores: vec![gauge.reading(&mut sources, &today, 2.4518 * inch, 0.0001 * inch)],
///     journals: vec![micrometer.reading(&mut sources, &today, 2.4500 * inch, 0.0001 * inch)],
///     ..Station::default()
/// };
/// let clearance = from_stations(&[station]).unwrap();
/// let window = Window::new(Some(0.0015 * inch), Some(0.0030 * inch)).unwrap();
/// let advice = advise(&clearance, 1, &window, &sources, INSTRUMENTS);
/// assert_eq!(advice.assessment.verdict, Verdict::TooCloseToCall);
/// assert_eq!(advice.blame.as_ref().unwrap().label, "telescoping gauge");
/// let said = advice.sentences(unit("thou").unwrap());
/// assert_eq!(said[0], "Too close to call: 0.3 thou above the low limit, give or take 0.4 thou.");
/// ```
#[must_use]
pub fn advise<T: Clone + Into<Tool>>(
    clearance: &RunningClearance,
    readings: usize,
    window: &Window,
    sources: &Sources,
    tools: &[T],
) -> Advice {
    let (least, greatest) = (clearance.least.estimate(), clearance.greatest.estimate());
    let assessment = Assessment::judged((least, greatest), window, DANGEROUS_SIDE, sources);
    let tight_by = window.low().map(|low| exact(low) - &clearance.least);
    let loose_by = window.high().map(|high| &clearance.greatest - exact(high));
    let doubted = if assessment.above > assessment.below {
        greatest
    } else {
        least
    };
    let blame = doubted.blame(sources).into_iter().next();
    let cause = blame.as_ref().and_then(|blame| {
        doubted
            .causes(sources)
            .into_iter()
            .find(|cause| cause.label == blame.label)
    });
    let unsettled = assessment.verdict == Verdict::TooCloseToCall;
    Advice {
        assessment,
        tight_by,
        loose_by,
        blame,
        cause,
        could_say_good: best_chance_when_tried(
            doubted.deviation(),
            doubted.degrees_of_freedom(sources),
            window,
            DANGEROUS_SIDE,
        )
        .verdict
            == Verdict::Good,
        more: how_many_more((least, greatest), readings, sources, window, DANGEROUS_SIDE),
        tools: if unsettled {
            settling_ways(clearance, window, tools)
        } else {
            Vec::new()
        },
    }
}

fn exact(si: f64) -> Measured<Length> {
    Measured::exact(Length::from_si(si))
}

/// The ways that would settle the verdict if the clearance is what it reads now.
fn settling_ways<T: Clone + Into<Tool>>(
    clearance: &RunningClearance,
    window: &Window,
    tools: &[T],
) -> Vec<Way> {
    let mut able = ways(Task::RunningClearance, tools);
    able.retain(|way| {
        let mut sources = Sources::new();
        let doubt = sources.add(ErrorSource {
            label: way.label().into(),
            origin: Origin::Repeat,
            degrees_of_freedom: way.degrees_of_freedom,
        });
        let [least, greatest] = [&clearance.least, &clearance.greatest]
            .map(|value| Estimate::exact(value.estimate().value()).with(doubt, way.give_or_take));
        Assessment::judged((&least, &greatest), window, DANGEROUS_SIDE, &sources).verdict
            != Verdict::TooCloseToCall
    });
    able
}

impl Advice {
    /// The advice in words, the most important first, lengths in this unit.
    #[must_use]
    pub fn sentences(&self, unit: &'static Unit) -> Vec<String> {
        let mut said = self.where_it_stands(unit);
        if self.assessment.verdict == Verdict::TooCloseToCall {
            said.extend(self.what_makes_the_doubt());
            said.push(self.what_would_settle_it());
        }
        said
    }

    fn where_it_stands(&self, unit: &'static Unit) -> Vec<String> {
        let size = |value: &Measured<Length>| {
            show(
                value.estimate().value().abs(),
                Some(value.estimate().deviation()),
                unit,
            )
        };
        let tight = self
            .tight_by
            .as_ref()
            .map(|by| (by, "tight", "above the low limit"));
        let loose = self
            .loose_by
            .as_ref()
            .map(|by| (by, "loose", "below the high limit"));
        let sides: Vec<_> = [tight, loose].into_iter().flatten().collect();
        if self.assessment.verdict == Verdict::Bad {
            return sides
                .iter()
                .filter(|(by, ..)| by.estimate().value() > 0.0)
                .map(|(by, word, _)| format!("{} by {}.", capital(word), size(by)))
                .collect();
        }
        let Some((by, word, inside)) = sides
            .into_iter()
            .max_by(|a, b| a.0.estimate().value().total_cmp(&b.0.estimate().value()))
        else {
            return Vec::new();
        };
        let shown = size(by);
        let number = Shown {
            give_or_take: None,
            ..shown.clone()
        };
        let place = if by.estimate().value() > 0.0 {
            format!("{number} {word}")
        } else {
            format!("{number} {inside}")
        };
        let verdict = match self.assessment.verdict {
            Verdict::Good => "Good",
            Verdict::TooCloseToCall | Verdict::Bad => "Too close to call",
        };
        let doubt = shown.give_or_take.map_or_else(String::new, |doubt| {
            let doubt = Shown {
                number: doubt,
                ..number
            };
            format!(", give or take {doubt}")
        });
        vec![format!("{verdict}: {place}{doubt}.")]
    }

    fn what_makes_the_doubt(&self) -> Option<String> {
        let (blame, cause) = (self.blame.as_ref()?, self.cause.as_ref()?);
        Some(format!(
            "The {} makes {:.0} % of the give-or-take, most of it by its {}.",
            blame.label,
            blame.of_variance * 100.0,
            cause.origin.word()
        ))
    }

    fn what_would_settle_it(&self) -> String {
        let settling = Settling {
            more: self.more,
            own: self.tools.first().cloned(),
            other: None,
        };
        settling.sentence()
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().chain(letters).collect())
        .unwrap_or_default()
}

#[cfg(test)]
mod tests;
