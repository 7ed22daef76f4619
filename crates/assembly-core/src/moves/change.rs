//! One thing that can be done.

use super::circumstances::Circumstances;
use super::effect::{Effect, SideEffect};
use crate::describe::Provenance;

/// Where a move is made.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Who {
    /// At the builder's own bench.
    Bench,
    /// At a machine shop.
    MachineShop,
}

/// A size that a move comes in.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Step {
    /// SI units, with sign.
    pub size: f64,
    /// What it is called: "one turn of the adjuster".
    pub words: &'static str,
}

/// The sizes that a move can have.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Sizes {
    /// The pairs of bearing halves that may be fitted instead of those fitted
    /// now. The size is the wall thickness gained, both halves together.
    Shells,
    /// Just these.
    Steps(&'static [Step]),
    /// Anything from the least to the most, set or bought to so fine a step.
    Any {
        /// The least, SI units, with sign.
        least: f64,
        /// The most.
        most: f64,
        /// The fineness.
        step: f64,
    },
    /// The part comes back at whatever was ordered.
    ToOrder,
    /// How far it goes is only known when it has been done and measured.
    NotForetold,
    /// Nothing is changed; the measuring is made surer.
    MeasureAgain,
}

/// One thing that can be done about a result, as data.
#[derive(PartialEq, Debug)]
pub struct Move {
    /// Stable name.
    pub id: &'static str,
    /// What to do, in the words of the trade.
    pub title: &'static str,
    /// How it is done, in a sentence or two.
    pub how: &'static str,
    /// What its size is the size of: "taken off the deck".
    pub size_is: &'static str,
    /// The sizes it comes in.
    pub sizes: Sizes,
    /// How far the size usually comes out off: one standard deviation, SI
    /// units. Common practice.
    pub scatter: f64,
    /// What it changes, the measures it is made for first.
    pub effects: &'static [Effect],
    /// The measures it is offered for. The others in `effects` are changed, and
    /// nobody would do it for their sake.
    pub offered_for: &'static [&'static str],
    /// Who does it.
    pub who: Who,
    /// What has to be bought for it.
    pub parts: Option<&'static str>,
    /// What to beware of.
    pub cautions: &'static [&'static str],
    /// Where the effect is from.
    pub provenance: Provenance,
}

impl Move {
    /// What it does to this measure, if anything.
    #[must_use]
    pub fn effect_on(&self, measure: &str) -> Option<&Effect> {
        self.effects.iter().find(|effect| effect.measure == measure)
    }

    /// What it does to all measures but one when it is made in this size.
    /// `None` as size: it is not known yet.
    #[must_use]
    pub fn side_effects(
        &self,
        besides: &str,
        size: Option<f64>,
        known: &Circumstances,
    ) -> Vec<SideEffect> {
        self.effects
            .iter()
            .filter(|effect| effect.measure != besides)
            .map(|effect| SideEffect {
                measure: effect.measure,
                change: size.and_then(|size| effect.sensitivity.change(size, known)),
                words: effect.sensitivity.words(),
            })
            .collect()
    }
}
