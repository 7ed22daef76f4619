//! The sizes that parts are made in, where a sheet lists them.

use assembly_core::moves::shells::{MadeSize, row_of_sizes};
use assembly_core::quantity::{Kind, ReadError, Si, Typed, read, unit_of};
use build_plan::Measure;
use build_plan::choice::{Choice, MAIN_SHELLS, ROD_SHELLS};
use build_plan::measure::{
    BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE, PISTON_DIAMETER, ROD_JOURNAL_DIAMETER,
    ROD_OIL_CLEARANCE,
};
use thiserror::Error;
use uom::si::f64::Length;

use super::build::Build;
use crate::fact::{SizedPart, SizesListed};
use crate::id::FactId;

/// No size is farther from standard than this: such a list is a slip of the pen.
const FARTHEST: f64 = 10e-3;

/// A list that counts.
#[derive(Clone, PartialEq, Debug)]
pub struct ListedSizes {
    /// The fact.
    pub fact: FactId,
    /// What was written down.
    pub listed: SizesListed,
    /// The sizes, in the order they were typed.
    pub sizes: Vec<Typed>,
}

/// Why a list cannot be used.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum SizesProblem {
    /// A size cannot be read.
    #[error("“{text}” is no size: {why}")]
    Text {
        /// What was typed.
        text: String,
        /// Why.
        why: ReadError,
    },
    /// The unit is not known.
    #[error("the unit “{unit}” that goes with them is not known here")]
    Unit {
        /// The symbol.
        unit: String,
    },
    /// A size that nothing is made in.
    #[error("“{text}” is no size beside the standard one: type how far it is from standard")]
    Far {
        /// What was typed.
        text: String,
    },
    /// An undersize or oversize with a sign.
    #[error("“{text}” is less than nothing: type undersizes and oversizes without a sign")]
    Sign {
        /// What was typed.
        text: String,
    },
}

impl SizesListed {
    /// The sizes as quantities.
    ///
    /// # Errors
    /// The first of them that is none.
    pub fn read(&self) -> Result<Vec<Typed>, SizesProblem> {
        let short = |text: &str| text.chars().take(40).collect::<String>();
        let unit = unit_of(Kind::Length, &self.unit).ok_or_else(|| SizesProblem::Unit {
            unit: short(&self.unit),
        })?;
        let one = |text: &String| {
            let size = read(text, Kind::Length, unit).map_err(|why| SizesProblem::Text {
                text: short(text),
                why,
            })?;
            let text = short(text);
            if size.si() == 0.0 || size.si().abs() > FARTHEST {
                Err(SizesProblem::Far { text })
            } else if size.si() < 0.0 && !self.of.is_shells() {
                Err(SizesProblem::Sign { text })
            } else {
                Ok(size)
            }
        };
        self.sizes.iter().map(one).collect()
    }
}

impl SizedPart {
    /// The part that a measure is of, or whose clearance it is.
    #[must_use]
    pub fn of_measure(measure: &Measure) -> Option<Self> {
        let table: [(&Measure, Self); 6] = [
            (&MAIN_JOURNAL_DIAMETER, Self::MainJournals),
            (&ROD_JOURNAL_DIAMETER, Self::RodJournals),
            (&BORE, Self::Bores),
            (&PISTON_DIAMETER, Self::Bores),
            (&MAIN_OIL_CLEARANCE, Self::MainShells),
            (&ROD_OIL_CLEARANCE, Self::RodShells),
        ];
        let found = table.iter().find(|(one, _)| one.id == measure.id);
        found.map(|(_, part)| *part)
    }

    /// The half-shells that a choice is of.
    #[must_use]
    pub fn of_choice(choice: &Choice) -> Option<Self> {
        [
            (&MAIN_SHELLS, Self::MainShells),
            (&ROD_SHELLS, Self::RodShells),
        ]
        .iter()
        .find_map(|(one, part)| (one.id == choice.id).then_some(*part))
    }

    /// Whether these are half-shells.
    #[must_use]
    pub const fn is_shells(self) -> bool {
        matches!(self, Self::MainShells | Self::RodShells)
    }
}

impl Build {
    /// What a sheet lists for these parts.
    #[must_use]
    pub fn sizes_of(&self, part: SizedPart) -> Option<&ListedSizes> {
        self.sizes.get(&part)
    }

    /// Takes in a list.
    pub(super) fn list_sizes(
        &mut self,
        fact: FactId,
        listed: &SizesListed,
    ) -> Result<(), SizesProblem> {
        let sizes = listed.read()?;
        let listed = listed.clone();
        let of = listed.of;
        self.sizes.insert(
            of,
            ListedSizes {
                fact,
                listed,
                sizes,
            },
        );
        Ok(())
    }

    fn sets(&self, part: SizedPart) -> Vec<Length> {
        let listed = self.sizes_of(part).filter(|_| part.is_shells());
        let sizes = listed.into_iter().flat_map(|one| &one.sizes);
        sizes.map(|size| Length::from_si(size.si())).collect()
    }

    /// The sizes that the half-shells of a clearance are made in, for what can be
    /// done about it; empty when no sheet lists them.
    #[must_use]
    pub fn sets_for(&self, measure: &Measure) -> Vec<Length> {
        SizedPart::of_measure(measure).map_or_else(Vec::new, |part| self.sets(part))
    }

    /// The sizes that the half-shells of a choice are made in, the standard one with
    /// them, from the thinnest on; empty when no sheet lists them.
    #[must_use]
    pub fn shell_sizes(&self, choice: &Choice) -> Vec<MadeSize> {
        let sets = SizedPart::of_choice(choice).map_or_else(Vec::new, |part| self.sets(part));
        if sets.is_empty() {
            Vec::new()
        } else {
            row_of_sizes(&sets)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fact::{Body, LimitsOrigin};
    use crate::fold::devices::two;
    use crate::fold::fold;

    fn listed(of: SizedPart, sizes: &str, unit: &str) -> SizesListed {
        SizesListed {
            of,
            sizes: SizesListed::split(sizes),
            unit: unit.to_owned(),
            origin: LimitsOrigin::Sheet,
            origin_note: "page 7".to_owned(),
        }
    }

    #[test]
    fn the_latest_list_that_can_be_read_counts() {
        let [mut phone, _] = two();
        let shells = |sizes: &str| Body::SizesListed(listed(SizedPart::MainShells, sizes, "mm"));
        assert!(phone.build().shell_sizes(&MAIN_SHELLS).is_empty());
        let first = phone.write(shells("0,025; 0,05; -0,025"));
        let row = |steps: &[i32]| {
            let build = phone.build();
            let row = build.shell_sizes(&MAIN_SHELLS);
            assert_eq!(row.iter().map(|one| one.steps).collect::<Vec<_>>(), steps);
            build.problems.len()
        };
        assert_eq!(row(&[-1, 0, 1, 2]), 0);
        phone.write(shells("0,025; much"));
        let build = phone.build();
        assert_eq!(build.sizes_of(SizedPart::MainShells).unwrap().fact, first);
        assert!(
            build.problems[0].text.contains("“much” is no size"),
            "{:?}",
            build.problems
        );
        // Rods have their own list, and moves go by that of their measure.
        assert!(build.shell_sizes(&ROD_SHELLS).is_empty());
        assert_eq!(build.sets_for(&MAIN_OIL_CLEARANCE).len(), 3);
        assert!(build.sets_for(&ROD_OIL_CLEARANCE).is_empty());
        assert_eq!(build, fold(&phone.journal));
    }

    #[test]
    fn what_is_no_size_is_said() {
        let says = |of, sizes: &str, unit: &str| {
            let problem = listed(of, sizes, unit).read().unwrap_err();
            problem.to_string()
        };
        assert!(says(SizedPart::Bores, "0", "in").contains("beside the standard one"));
        assert!(says(SizedPart::Bores, "0.25", "ell").contains("“ell”"));
        assert!(says(SizedPart::MainJournals, "-0.010", "in").contains("without a sign"));
        assert!(says(SizedPart::RodJournals, "2.4", "in").contains("how far"));
        assert!(listed(SizedPart::RodShells, "-0.001", "in").read().is_ok());
        assert_eq!(listed(SizedPart::Bores, "", "in").read().unwrap(), []);
    }
}
