//! What can't be, whatever was typed. Each check takes measured values, so that
//! the instruments' errors are allowed for before anything is called impossible.

use std::f64::consts::PI;
use std::fmt;

use uom::si::f64::Length;

use crate::measure::Measured;
use crate::quantity::{Si, Unit, show};

/// What is broken.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
#[non_exhaustive]
pub enum Rule {
    /// A worn journal does not grow.
    JournalGrew,
    /// A worn bore does not shrink.
    BoreShrank,
    /// A bearing shell has to fit between housing and journal.
    ShellTooThick,
    /// One ring has the larger gap in the larger bore.
    RingGapAgainstBore,
}

/// Measured values that can't all be right.
#[derive(Clone, PartialEq, Debug)]
pub struct Impossible {
    /// What is broken.
    pub rule: Rule,
    /// By how much.
    pub by: Measured<Length>,
}

/// How many standard deviations beyond the possible count: an honest pair of
/// readings lands there once in a hundred times at most.
const BEYOND: f64 = 2.33;

impl Impossible {
    fn when_positive(rule: Rule, by: Measured<Length>) -> Option<Self> {
        let (value, spread) = (by.value().to_si(), by.give_or_take().to_si());
        (value > BEYOND * spread && value > 0.0).then_some(Self { rule, by })
    }

    /// What is broken and what to look at, in a sentence.
    ///
    /// ```
    /// use assembly_core::{measure::Measured, quantity::{unit, Si}, typing_sense::impossible};
    /// let inch = unit("in").unwrap();
    /// let size = |number| Measured::exact(Si::from_si(inch.to_si(number)));
    /// let grown = impossible::journal_grew(&size(2.4483), &size(2.4493)).unwrap();
    /// assert_eq!(
    ///     grown.sentence(unit("thou").unwrap()),
    ///     "The journal now reads 1.0 thou larger than before. Wear and polishing only make it \
    ///      smaller: is one of the two readings wrong, or has the journal been built up?"
    /// );
    /// ```
    #[must_use]
    pub fn sentence(&self, unit: &'static Unit) -> String {
        let spread = self.by.give_or_take().to_si();
        let by = show(self.by.value().to_si(), Some(spread), unit);
        match self.rule {
            Rule::JournalGrew => format!(
                "The journal now reads {by} larger than before. Wear and polishing only make it \
                 smaller: is one of the two readings wrong, or has the journal been built up?"
            ),
            Rule::BoreShrank => format!(
                "The bore now reads {by} smaller than before. Wear and honing only make it \
                 larger: is one of the two readings wrong, or has it been sleeved?"
            ),
            Rule::ShellTooThick => format!(
                "The shell reads {by} thicker than half the room between housing and journal. It \
                 could not go in: is one of the three readings wrong, or is it a shell for \
                 another size?"
            ),
            Rule::RingGapAgainstBore => format!(
                "The ring's gap reads {by} larger in the smaller bore than in the larger one. The \
                 same ring opens in a larger bore: is a reading wrong, or was it another ring?"
            ),
        }
    }
}

impl fmt::Display for Rule {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::JournalGrew => "a worn journal doesn't grow",
            Self::BoreShrank => "a worn bore doesn't shrink",
            Self::ShellTooThick => "a shell has to fit between housing and journal",
            Self::RingGapAgainstBore => "the same ring gapes wider in a larger bore",
        })
    }
}

/// A journal that reads larger than it did, with no building-up in between.
#[must_use]
pub fn journal_grew(before: &Measured<Length>, now: &Measured<Length>) -> Option<Impossible> {
    Impossible::when_positive(Rule::JournalGrew, now - before)
}

/// A bore that reads smaller than it did, with no sleeve put in between. Both in
/// the same condition: plate, caps and fasteners as they were.
#[must_use]
pub fn bore_shrank(before: &Measured<Length>, now: &Measured<Length>) -> Option<Impossible> {
    Impossible::when_positive(Rule::BoreShrank, before - now)
}

/// A shell wall of more than half of housing bore less journal.
#[must_use]
pub fn shell_too_thick(
    housing: &Measured<Length>,
    journal: &Measured<Length>,
    wall: &Measured<Length>,
) -> Option<Impossible> {
    let room = (housing - journal) * 0.5;
    Impossible::when_positive(Rule::ShellTooThick, wall - room)
}

/// One ring tried in two bores, as (bore, gap). Its gap grows by π times the
/// difference of the bores (geometry of the circumference), so it is never
/// larger in the smaller bore.
#[must_use]
pub fn ring_gap_against_bore(
    one: (&Measured<Length>, &Measured<Length>),
    other: (&Measured<Length>, &Measured<Length>),
) -> Option<Impossible> {
    let (small, large) = if one.0.value() <= other.0.value() {
        (one, other)
    } else {
        (other, one)
    };
    let against = small.1 - large.1;
    // Bores that differ by less than their give-or-take may be the other way round.
    let should_grow = (large.0 - small.0) * PI;
    let miss = &against + &should_grow;
    let named = Impossible::when_positive(Rule::RingGapAgainstBore, against)?;
    Impossible::when_positive(Rule::RingGapAgainstBore, miss).map(|_| named)
}
