//! Which part goes where: what is chosen, by which measures, and what another
//! part at a place makes stale.

use crate::engine::{ALWAYS, Engine, Feature, When};
use crate::event::{
    Event, LASH_SHIMS_CHANGED, MAIN_SHELLS_SWAPPED, PISTONS_MOVED, PISTONS_OR_RODS_SWAPPED,
    ROD_SHELLS_SWAPPED, RODS_MOVED,
};
use crate::measure::{
    BIG_END_BORE, BORE, MAIN_HOUSING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE,
    MAIN_SHELL_WALL, Measure, PISTON_DIAMETER, PISTON_TO_WALL, ROD_BEARING_BORE,
    ROD_JOURNAL_DIAMETER, ROD_OIL_CLEARANCE, ROD_SHELL_WALL, VALVE_LASH,
};
use crate::named::printed_by_name;
use crate::place::At;

/// Parts that are like each other, and the places they can go to.
#[derive(PartialEq)]
pub struct Choice {
    /// Stable name.
    pub id: &'static str,
    /// What is chosen, as the builder would ask it.
    pub label: &'static str,
    /// One of the parts, in a word, and more of them.
    pub part: (&'static str, &'static str),
    /// What is measured of a part that lies on the bench, in words.
    pub size: &'static str,
    /// A measure that is read with the tools that measure it.
    pub read_like: &'static Measure,
    /// The measure that comes of it; its limits decide, and its parts are the
    /// places.
    pub measure: &'static Measure,
    /// On which engines.
    pub when: When,
    /// What it goes by.
    pub by: ChosenBy,
    /// What it is to a place when it gets the part of another place.
    pub moved: &'static Event,
    /// What it is to a place when it gets a part that was on the bench.
    pub renewed: &'static Event,
    /// Warnings.
    pub cautions: &'static [&'static str],
}

printed_by_name!(Choice);

/// What a choice goes by.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum ChosenBy {
    /// Two half-shells for each journal: housing less both walls less journal.
    Shells {
        /// The bore without shells.
        housing: &'static Measure,
        /// The journal.
        journal: &'static Measure,
    },
    /// A shaft for each hole: the hole stays where it is.
    Shafts {
        /// The hole.
        hole: &'static Measure,
        /// The shaft that goes in.
        shaft: &'static Measure,
    },
    /// A hole for each shaft: the shaft stays where it is.
    Holes {
        /// The shaft.
        shaft: &'static Measure,
        /// The hole that goes on.
        hole: &'static Measure,
    },
    /// A shim for each gap: the shim that is in and the gap, less the new shim.
    Shims,
}

impl Choice {
    /// Whether a measure is what the choice is about, or one that it goes by.
    #[must_use]
    pub fn goes_by(&self, measure: &Measure) -> bool {
        let by: &[&Measure] = match self.by {
            ChosenBy::Shells { housing, journal } => &[housing, journal],
            ChosenBy::Shafts { hole, shaft } | ChosenBy::Holes { shaft, hole } => &[hole, shaft],
            ChosenBy::Shims => &[],
        };
        self.measure.id == measure.id || by.iter().any(|one| one.id == measure.id)
    }

    /// The places on an engine; none when the engine has no such parts.
    #[must_use]
    pub fn places(&self, engine: &Engine) -> Vec<At> {
        if self.when.applies_to(engine) && self.measure.when.applies_to(engine) {
            self.measure.spots.per.parts(engine)
        } else {
            Vec::new()
        }
    }
}

/// Half-shells of the mains.
pub static MAIN_SHELLS: Choice = Choice {
    id: "main-shells",
    label: "which half-shell goes in which main",
    part: ("half-shell", "half-shells"),
    size: "wall at the crown",
    read_like: &MAIN_SHELL_WALL,
    measure: &MAIN_OIL_CLEARANCE,
    when: ALWAYS,
    by: ChosenBy::Shells {
        housing: &MAIN_HOUSING_BORE,
        journal: &MAIN_JOURNAL_DIAMETER,
    },
    moved: &MAIN_SHELLS_SWAPPED,
    renewed: &MAIN_SHELLS_SWAPPED,
    cautions: &[
        "Mix only halves of one make and material, at most one step apart, all odd halves on the same side (common practice), and mark each for its place at once.",
        "Hold every half with an oil hole against its hole in the block. Then measure each bearing again with its shells in and the cap torqued: wall arithmetic is no proof.",
    ],
};

/// Half-shells of the rods.
pub static ROD_SHELLS: Choice = Choice {
    id: "rod-shells",
    label: "which half-shell goes in which rod",
    part: ("half-shell", "half-shells"),
    size: "wall at the crown",
    read_like: &ROD_SHELL_WALL,
    measure: &ROD_OIL_CLEARANCE,
    when: ALWAYS,
    by: ChosenBy::Shells {
        housing: &BIG_END_BORE,
        journal: &ROD_JOURNAL_DIAMETER,
    },
    moved: &ROD_SHELLS_SWAPPED,
    renewed: &ROD_SHELLS_SWAPPED,
    cautions: &[
        "Mix only halves of one make and material, at most one step apart, all odd halves on the same side (common practice), and mark each for its place at once.",
        "On a shared pin the chamfered edge goes to the cheek. Then measure each bearing again with its shells in and the bolts at their final stretch or torque.",
    ],
};

/// Rods to pins.
pub static RODS_TO_PINS: Choice = Choice {
    id: "rods",
    label: "which rod goes on which pin",
    part: ("rod", "rods"),
    size: "bore with its shells in, square to the joint",
    read_like: &ROD_BEARING_BORE,
    measure: &ROD_OIL_CLEARANCE,
    when: ALWAYS,
    by: ChosenBy::Holes {
        shaft: &ROD_JOURNAL_DIAMETER,
        hole: &ROD_BEARING_BORE,
    },
    moved: &RODS_MOVED,
    renewed: &RODS_MOVED,
    cautions: &[
        "Used rods have worn to their own pins and pistons: keep those together. Rods that were balanced with their pistons move with them.",
        "Each cap stays on its own rod, the same way round.",
    ],
};

/// Pistons to bores.
pub static PISTONS_TO_BORES: Choice = Choice {
    id: "pistons",
    label: "which piston goes in which bore",
    part: ("piston", "pistons"),
    size: "diameter at its gauge height",
    read_like: &PISTON_DIAMETER,
    measure: &PISTON_TO_WALL,
    when: ALWAYS,
    by: ChosenBy::Shafts {
        hole: &BORE,
        shaft: &PISTON_DIAMETER,
    },
    moved: &PISTONS_MOVED,
    renewed: &PISTONS_OR_RODS_SWAPPED,
    cautions: &[
        "Pistons that were weighed or balanced with their rods move with them. Mark each for its cylinder at once.",
        "Mind pistons that are made for one bank or one side only.",
    ],
};

/// Lash shims to valves.
pub static LASH_SHIMS: Choice = Choice {
    id: "lash-shims",
    label: "which lash shim goes to which valve",
    part: ("shim", "shims"),
    size: "thickness",
    read_like: &PISTON_DIAMETER,
    measure: &VALVE_LASH,
    when: When::with(&[Feature::SetLash, Feature::Buckets]),
    by: ChosenBy::Shims,
    moved: &LASH_SHIMS_CHANGED,
    renewed: &LASH_SHIMS_CHANGED,
    cautions: &[
        "Turn the engine by hand and measure every lash again before it is started: too little lash burns an exhaust valve.",
    ],
};

/// Every choice there is.
pub static CHOICES: &[&Choice] = &[
    &MAIN_SHELLS,
    &ROD_SHELLS,
    &RODS_TO_PINS,
    &PISTONS_TO_BORES,
    &LASH_SHIMS,
];

/// The choice with this id.
#[must_use]
pub fn choice(id: &str) -> Option<&'static Choice> {
    CHOICES.iter().copied().find(|one| one.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Layout;
    use crate::proof::Proof;

    #[test]
    fn every_choice_is_found_by_its_id() {
        for one in CHOICES {
            assert_eq!(choice(one.id), Some(*one));
        }
        assert_eq!(choice("gudgeon-left"), None);
    }

    #[test]
    fn another_part_makes_stale_what_the_choice_is_about_or_what_it_comes_of() {
        for one in CHOICES {
            let from: Vec<&Measure> = one.measure.sources();
            for event in [one.moved, one.renewed] {
                let about = |proof: &Proof| match proof {
                    Proof::Measure(measure) => {
                        measure.id == one.measure.id || from.iter().any(|it| it.id == measure.id)
                    }
                    _ => false,
                };
                assert!(event.voids.iter().any(about), "{} by {}", one.id, event.id);
            }
        }
    }

    #[test]
    fn a_choice_is_reached_from_all_that_it_goes_by() {
        for measure in [
            &MAIN_OIL_CLEARANCE,
            &MAIN_HOUSING_BORE,
            &MAIN_JOURNAL_DIAMETER,
        ] {
            assert!(MAIN_SHELLS.goes_by(measure), "{}", measure.id);
        }
        assert!(!MAIN_SHELLS.goes_by(&BORE));
        assert!(LASH_SHIMS.goes_by(&VALVE_LASH));
    }

    #[test]
    fn a_four_in_line_has_five_mains_and_four_bores_to_choose_for() {
        let engine = Engine::new("orchard sprayer", 4, Layout::Inline, None).unwrap();
        assert_eq!(MAIN_SHELLS.places(&engine).len(), 5);
        assert_eq!(PISTONS_TO_BORES.places(&engine).len(), 4);
        // It has pushrods: nothing to shim.
        assert_eq!(LASH_SHIMS.places(&engine), []);
    }
}
