//! The moves for one result, the surest to land inside the window first.

use std::cmp::Ordering;

use super::change::{Move, Sizes, Who};
use super::circumstances::Circumstances;
use super::effect::{Sensitivity, SideEffect};
use super::list::moves_for;
use super::shells::{Pair, made_instead_of};
use crate::measure::{
    Assessment, DangerousSide, Estimate, Measured, Origin, Sources, Verdict, Window,
};
use crate::quantity::Si;

/// No more sizes than this are tried of a move that can have any.
const SIZES_TRIED: u32 = 2000;

/// Chances of being inside that differ by less are as good as each other; then
/// what is easier to do comes first.
const CHANCES_TOLD_APART: f64 = 50.0;

/// From this chance of landing inside, surer makes no difference at the bench.
const SURE_ENOUGH: f64 = 0.95;

/// Where a move would bring a result.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Landing {
    /// The size of the move, SI units, with sign; `None` when the part comes
    /// back as ordered.
    pub size: Option<f64>,
    /// The least value after it, SI units.
    pub least: f64,
    /// The greatest value after it, SI units. The same as the least when the
    /// result is one value.
    pub greatest: f64,
    /// One standard deviation of where it lands: the measuring of today and the
    /// usual scatter of the work together.
    pub give_or_take: f64,
    /// What could be said of it then.
    pub assessment: Assessment,
}

/// A move with what it would do.
#[derive(Clone, PartialEq, Debug)]
pub struct Ranked {
    /// What to do.
    pub what: &'static Move,
    /// In which size, in words; empty when a figure says it.
    pub words: String,
    /// Where it would land; `None` when that can only be told after other parts
    /// have been measured or something of the engine is known.
    pub landing: Option<Landing>,
    /// What it changes besides.
    pub also: Vec<SideEffect>,
}

/// The moves for a result that is one value, the surest first. A result that is
/// good needs none, so its list is empty. Moves that would not bring it nearer
/// are left out.
///
/// ```
/// use assembly_core::measure::{DangerousSide, Measured, Origin, Sources, Window};
/// use assembly_core::moves;
/// use assembly_core::quantity::Si;
/// use uom::si::f64::Length;
///
/// let inch = |size: f64| Length::from_si(size * 0.0254);
/// let mut sources = Sources::new();
/// let feel = sources.fresh("feel", Origin::Repeat);
/// let clearance = Measured::exact(inch(0.0022)).with(feel, inch(0.0001));
/// let window = Window::new(Some(0.0012 * 0.0254), Some(0.0020 * 0.0254)).unwrap();
/// let moves = moves::for_measure(
///     "main-oil-clearance",
///     &clearance,
///     &window,
///     DangerousSide::TooLittle,
/// );
/// let first = moves.first().unwrap();
/// assert_eq!(first.words, "one half-shell one thou under");
/// assert!((first.landing.unwrap().least - 0.0017 * 0.0254).abs() < 1e-9);
/// ```
#[must_use]
pub fn for_measure<Q: Si>(
    measure: &str,
    now: &Measured<Q>,
    window: &Window,
    dangerous: DangerousSide,
) -> Vec<Ranked> {
    for_extent(
        measure,
        now,
        now,
        window,
        dangerous,
        &Circumstances::default(),
    )
}

/// The same for a result with a least and a greatest value, such as the
/// clearance around one journal, and with what is known of the engine around it.
#[must_use]
pub fn for_extent<Q: Si>(
    measure: &str,
    least: &Measured<Q>,
    greatest: &Measured<Q>,
    window: &Window,
    dangerous: DangerousSide,
    known: &Circumstances,
) -> Vec<Ranked> {
    let outcome = Outcome {
        least: least.estimate(),
        greatest: greatest.estimate(),
        window,
        dangerous,
    };
    let now = outcome.assess();
    if now.verdict == Verdict::Good || !outcome.is_finite() {
        return Vec::new();
    }
    let mut ranked: Vec<Ranked> = moves_for(measure)
        .flat_map(|what| outcome.ranked(what, measure, &now, known))
        .collect();
    ranked.sort_by(|one, other| outcome.order(one, other));
    ranked
}

/// A result and what it is held against.
struct Outcome<'a> {
    least: &'a Estimate,
    greatest: &'a Estimate,
    window: &'a Window,
    dangerous: DangerousSide,
}

impl Outcome<'_> {
    fn is_finite(&self) -> bool {
        [self.least, self.greatest]
            .iter()
            .all(|one| one.value().is_finite() && one.deviation().is_finite())
    }

    fn assess(&self) -> Assessment {
        Assessment::of_extent(self.least, self.greatest, self.window, self.dangerous)
    }

    fn ranked(
        &self,
        what: &'static Move,
        measure: &str,
        now: &Assessment,
        known: &Circumstances,
    ) -> Vec<Ranked> {
        let Some(effect) = what.effect_on(measure) else {
            return Vec::new();
        };
        let entry = |words: String, landing: Option<Landing>| Ranked {
            what,
            words,
            landing,
            also: what.side_effects(measure, landing.and_then(|one| one.size), known),
        };
        let helps = |landing: &Landing| landing.assessment.inside > now.inside + 1e-6;
        match what.sizes {
            Sizes::MeasureAgain => {
                let undecided = now.verdict == Verdict::TooCloseToCall;
                undecided
                    .then(|| entry(String::new(), None))
                    .into_iter()
                    .collect()
            }
            Sizes::NotForetold => vec![entry(String::new(), None)],
            Sizes::ToOrder => vec![entry(String::new(), self.as_ordered(what.scatter))],
            Sizes::Shells => {
                let fitted = known.shells.clone().unwrap_or_else(Pair::standard);
                made_instead_of(&fitted, &known.sets)
                    .into_iter()
                    .filter_map(|pair| {
                        let landing = self.land(what, effect.sensitivity, pair.wall_gain, known)?;
                        helps(&landing).then(|| entry(pair.words, Some(landing)))
                    })
                    .collect()
            }
            Sizes::Steps(steps) => steps
                .iter()
                .filter_map(|step| {
                    let landing = self.land(what, effect.sensitivity, step.size, known)?;
                    helps(&landing).then(|| entry(step.words.to_owned(), Some(landing)))
                })
                .collect(),
            Sizes::Any { least, most, step } => {
                let landings: Vec<Landing> = sizes(least, most, step)
                    .filter_map(|size| self.land(what, effect.sensitivity, size, known))
                    .collect();
                if landings.is_empty() {
                    // Something of the engine is not known: told without a figure.
                    return vec![entry(String::new(), None)];
                }
                landings
                    .into_iter()
                    .filter(helps)
                    .min_by(|one, other| self.better(one, other))
                    .map(|landing| entry(String::new(), Some(landing)))
                    .into_iter()
                    .collect()
            }
        }
    }

    /// Where a move of this size lands.
    fn land(
        &self,
        what: &Move,
        sensitivity: Sensitivity,
        size: f64,
        known: &Circumstances,
    ) -> Option<Landing> {
        let change = sensitivity.change(size, known)?;
        // The work's own scatter, through the same effect, to first order.
        let wider = sensitivity
            .change(size + what.scatter, known)
            .unwrap_or(change);
        Some(self.landing(Some(size), |value| value + change, wider - change))
    }

    /// A part made to order comes back at the best place in the window.
    fn as_ordered(&self, scatter: f64) -> Option<Landing> {
        let clear = 2.0 * scatter;
        let place = match (self.window.low(), self.window.high()) {
            (Some(low), Some(high)) => match self.dangerous {
                DangerousSide::Neither => f64::midpoint(low, high),
                DangerousSide::TooLittle => f64::midpoint(low, high).max(low + clear),
                DangerousSide::TooMuch => f64::midpoint(low, high).min(high - clear),
            },
            (Some(low), None) => low + clear,
            (None, Some(high)) => high - clear,
            (None, None) => return None,
        };
        Some(self.landing_with(None, place, place, scatter, scatter))
    }

    fn landing(&self, size: Option<f64>, moved: impl Fn(f64) -> f64, scatter: f64) -> Landing {
        let give_or_take = |one: &Estimate| one.deviation().hypot(scatter);
        self.landing_with(
            size,
            moved(self.least.value()),
            moved(self.greatest.value()),
            give_or_take(self.least),
            give_or_take(self.greatest),
        )
    }

    fn landing_with(
        &self,
        size: Option<f64>,
        least: f64,
        greatest: f64,
        least_give_or_take: f64,
        greatest_give_or_take: f64,
    ) -> Landing {
        // The assessment looks only at how wide each value is, so one cause of
        // that width stands for all of them.
        let whole = Sources::new().fresh("measuring and work", Origin::Stated);
        let wide = |value: f64, width: f64| Estimate::exact(value).with(whole, width);
        Landing {
            size,
            least,
            greatest,
            give_or_take: least_give_or_take.max(greatest_give_or_take),
            assessment: Assessment::of_extent(
                &wide(least, least_give_or_take),
                &wide(greatest, greatest_give_or_take),
                self.window,
                self.dangerous,
            ),
        }
    }

    /// The better of two sizes of one move: surer, then nearer the middle of
    /// the window, or, when one side is open, the smaller one.
    fn better(&self, one: &Landing, other: &Landing) -> Ordering {
        let off = |landing: &Landing| match (self.window.low(), self.window.high()) {
            (Some(low), Some(high)) => {
                (f64::midpoint(landing.least, landing.greatest) - f64::midpoint(low, high)).abs()
            }
            _ => landing.size.unwrap_or_default().abs(),
        };
        verdict_rank(one)
            .cmp(&verdict_rank(other))
            .then(chance_rank(one).cmp(&chance_rank(other)))
            .then(off(one).total_cmp(&off(other)))
    }

    fn order(&self, one: &Ranked, other: &Ranked) -> Ordering {
        let by_landing = |ranked: &Ranked| match &ranked.landing {
            Some(landing) => (verdict_rank(landing), chance_rank(landing)),
            // Measuring again comes first; what can't be foretold comes after
            // what is likely and before what is hopeless.
            None if ranked.what.sizes == Sizes::MeasureAgain => (-1, 0),
            None => (2, 0),
        };
        let by_ease = |ranked: &Ranked| {
            (
                ranked.what.who == Who::MachineShop,
                ranked.what.parts.is_some(),
            )
        };
        let by_size = |ranked: &Ranked| {
            ranked
                .landing
                .and_then(|landing| landing.size)
                .map_or(f64::INFINITY, f64::abs)
        };
        by_landing(one)
            .cmp(&by_landing(other))
            .then(by_ease(one).cmp(&by_ease(other)))
            .then(by_size(one).total_cmp(&by_size(other)))
    }
}

fn verdict_rank(landing: &Landing) -> i32 {
    match landing.assessment.verdict {
        Verdict::Good => 0,
        Verdict::TooCloseToCall => 1,
        Verdict::Bad => 3,
    }
}

/// Smaller is surer, in steps that are worth telling apart.
#[expect(
    clippy::cast_possible_truncation,
    reason = "a chance times fifty is a small whole number"
)]
fn chance_rank(landing: &Landing) -> i32 {
    -((landing.assessment.inside.min(SURE_ENOUGH) * CHANCES_TOLD_APART).round() as i32)
}

/// The sizes from the least to the most, at most [`SIZES_TRIED`] of them,
/// nothing (which changes nothing) left out.
fn sizes(least: f64, most: f64, step: f64) -> impl Iterator<Item = f64> {
    let count = ((most - least) / step)
        .round()
        .clamp(0.0, f64::from(SIZES_TRIED));
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped to a small whole number just above"
    )]
    let count = count as u32;
    (0..=count)
        .map(move |at| least + (most - least) * f64::from(at) / f64::from(count.max(1)))
        .filter(move |size| size.abs() > step * 0.5)
}
