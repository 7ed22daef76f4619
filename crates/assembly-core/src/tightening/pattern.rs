//! An order in which bolts are tightened.

use thiserror::Error;

/// An order that has every bolt of its group once.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub struct Pattern {
    order: Vec<usize>,
}

/// What is wrong with an order. Bolts are counted from one in the sentences.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[non_exhaustive]
pub enum PatternError {
    /// The group has no bolts.
    #[error("the group has no bolts: say how many there are")]
    NoBolts,
    /// A bolt is there twice.
    #[error("bolt {} is in the order twice, at {} and {}: tap each bolt once", bolt + 1, first + 1, again + 1)]
    Repeated {
        /// The bolt.
        bolt: usize,
        /// Where it came first.
        first: usize,
        /// Where it came again.
        again: usize,
    },
    /// A bolt is not of this group.
    #[error("the order names bolt {}, and the group has {count}: look at the number", bolt.saturating_add(1))]
    NotThere {
        /// The bolt.
        bolt: usize,
        /// How many there are.
        count: usize,
    },
    /// Bolts are missing.
    #[error(
        "the order misses bolt {}: every bolt has to come once",
        listed(missing)
    )]
    Misses {
        /// Those that are missing.
        missing: Vec<usize>,
    },
}

fn listed(bolts: &[usize]) -> String {
    let words: Vec<String> = bolts.iter().map(|bolt| (bolt + 1).to_string()).collect();
    words.join(", ")
}

impl Pattern {
    /// An order for a group of so many bolts.
    ///
    /// # Errors
    /// What is wrong with it: a bolt that is missing, repeated or not there.
    ///
    /// ```
    /// use assembly_core::tightening::pattern::{Pattern, PatternError};
    /// assert!(Pattern::new(vec![1, 0, 2], 3).is_ok());
    /// assert_eq!(
    ///     Pattern::new(vec![1, 0], 3),
    ///     Err(PatternError::Misses { missing: vec![2] })
    /// );
    /// ```
    pub fn new(order: Vec<usize>, count: usize) -> Result<Self, PatternError> {
        if count == 0 {
            return Err(PatternError::NoBolts);
        }
        let mut came: Vec<Option<usize>> = vec![None; count];
        for (at, bolt) in order.iter().enumerate() {
            match came.get_mut(*bolt) {
                None => return Err(PatternError::NotThere { bolt: *bolt, count }),
                Some(Some(first)) => {
                    return Err(PatternError::Repeated {
                        bolt: *bolt,
                        first: *first,
                        again: at,
                    });
                }
                Some(place) => *place = Some(at),
            }
        }
        let missing: Vec<usize> = came
            .iter()
            .enumerate()
            .filter_map(|(bolt, place)| place.is_none().then_some(bolt))
            .collect();
        if missing.is_empty() {
            Ok(Self { order })
        } else {
            Err(PatternError::Misses { missing })
        }
    }

    /// An order that is known to be whole.
    pub(super) const fn whole(order: Vec<usize>) -> Self {
        Self { order }
    }

    /// The bolts in their order.
    #[must_use]
    pub fn order(&self) -> &[usize] {
        &self.order
    }

    /// How many bolts.
    #[must_use]
    pub fn count(&self) -> usize {
        self.order.len()
    }

    /// The order for loosening: the other way round, in stages, cold.
    #[must_use]
    pub fn for_loosening(&self) -> Self {
        Self {
            order: self.order.iter().rev().copied().collect(),
        }
    }
}
