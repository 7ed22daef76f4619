//! A limit of a clearance that no clearance can have: most likely its figures
//! are in another unit.

use std::fmt;
use std::ops::RangeInclusive;

use super::candidates::in_other_units;
use crate::quantity::Typed;

/// Where limits of clearances lie in engines of the bench, metres: 0.08 thou to
/// 20 thou. Ours, and wide: it is there to catch units that were mixed up.
const LIMITS: RangeInclusive<f64> = 0.000_002..=0.000_5;

/// A limit that looks like a slip.
#[derive(Clone, PartialEq, Debug)]
pub struct Doubt {
    /// What was typed.
    pub typed: Typed,
    /// The same figures in the units that they are mixed up with, where that
    /// makes a limit. There may be none.
    pub meant: Vec<Typed>,
}

/// The doubt that a limit of a clearance raises; `None` when it is ordinary.
/// Nothing at all is an ordinary limit: a fit may be let go down to none.
///
/// ```
/// use assembly_core::quantity::{read, unit, Kind};
/// use assembly_core::typing_sense::doubt_of_clearance;
/// let thou = unit("thou").unwrap();
/// let typed = read("0.0015", Kind::Length, thou).unwrap();
/// let doubt = doubt_of_clearance(&typed).unwrap();
/// assert_eq!(doubt.meant[0].to_string(), "0.0015 in");
///
/// let ordinary = read("1.5", Kind::Length, thou).unwrap();
/// assert_eq!(doubt_of_clearance(&ordinary), None);
/// ```
#[must_use]
pub fn doubt_of_clearance(typed: &Typed) -> Option<Doubt> {
    let size = typed.si().abs();
    if size == 0.0 || LIMITS.contains(&size) {
        return None;
    }
    Some(Doubt {
        typed: typed.clone(),
        meant: in_other_units(typed)
            .filter(|other| LIMITS.contains(&other.si().abs()))
            .collect(),
    })
}

/// The doubt as a question.
impl fmt::Display for Doubt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let size = if self.typed.si().abs() < *LIMITS.start() {
            "smaller"
        } else {
            "larger"
        };
        write!(
            f,
            "{} is {size} than the limits of clearances are. What is meant?",
            self.typed
        )
    }
}
