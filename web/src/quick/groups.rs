//! The quick checks by what a person is holding, and how they are found by the
//! words of the trade.

use assembly_core::describe::{Calculation, calculation};

/// Quick checks that belong to the same thing in the hand.
pub struct Group {
    /// What is in the hand.
    pub title: &'static str,
    /// Words of the trade that lead here, besides those in the checks.
    words: &'static str,
    ids: &'static [&'static str],
}

impl Group {
    /// Its checks, the commonest first.
    pub fn checks(&self) -> impl Iterator<Item = &'static Calculation> {
        self.ids.iter().copied().filter_map(calculation)
    }

    /// Its checks that answer to these words: to every one of them, by its
    /// beginning. Words of the group lead to all of its checks.
    #[must_use]
    pub fn found(&self, words: &str) -> Vec<&'static Calculation> {
        let wanted: Vec<String> = split(words).collect();
        self.checks()
            .filter(|check| {
                let inputs = check.inputs.iter().map(|input| input.label);
                let own = [self.title, self.words, check.title, check.purpose];
                let known: Vec<String> = own.into_iter().chain(inputs).flat_map(split).collect();
                wanted
                    .iter()
                    .all(|word| known.iter().any(|one| one.starts_with(word.as_str())))
            })
            .collect()
    }
}

/// The words of a text, in small letters and without what stands between them.
fn split(text: &str) -> impl Iterator<Item = String> {
    text.split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
}

/// All groups, in the order they are listed.
pub static GROUPS: &[Group] = &[
    Group {
        title: "Bearings and crankshaft",
        words: "main rod big end shell half journal oil clearance tight loose thou plastic strip micrometer bore gauge crank undersize regrind",
        ids: &[
            "running-clearance",
            "running-clearance-same-micrometer",
            "running-clearance-strip",
            "clearance-rule-of-thumb",
            "clearance-from-walls",
            "shells-to-order",
            "which-shell-where",
            "shell-wall",
            "shell-crush",
            "housing-bore",
            "line-of-mains",
            "journal-shape",
            "crank-bow",
            "crank-end-float",
            "crank-end-play-from-widths",
            "rod-side-clearance",
            "rod-alignment",
            "turning-effort",
        ],
    },
    Group {
        title: "Pistons, pins and bores",
        words: "piston skirt cylinder bore hone taper oval wrist gudgeon pin oversize coating",
        ids: &[
            "piston-to-wall",
            "bore-shape",
            "bore-finish",
            "match-pistons-to-bores",
            "floating-pin",
            "pressed-pin",
            "pin-lock-float",
            "match-rods-to-pins",
            "piston-to-counterweight",
            "rod-to-cam",
        ],
    },
    Group {
        title: "Rings",
        words: "piston ring gap butt file land groove side back",
        ids: &[
            "ring-gap-rule",
            "ring-gap-after-honing",
            "ring-side-clearance",
            "ring-back-clearance",
            "ring-to-deck",
        ],
    },
    Group {
        title: "Liners",
        words: "liner sleeve wet dry flange shim protrusion stand-out",
        ids: &[
            "liner-fit",
            "liners-in-a-row",
            "liner-stand-out-from-parts",
            "liner-shims",
        ],
    },
    Group {
        title: "Block, deck, head and gasket",
        words: "deck head gasket squish quench mill skim surface warp straightedge chamber compression ratio volume",
        ids: &[
            "deck-and-quench",
            "deck-corners",
            "quench",
            "compression-ratio",
            "trapped-ratio",
            "flatness",
            "cover-step",
            "intake-after-milling",
        ],
    },
    Group {
        title: "Valves and springs",
        words: "valve guide seat stem spring installed height coil bind retainer shim margin",
        ids: &[
            "stem-in-guide",
            "guide-rock",
            "valve-seat",
            "valve-tip-heights",
            "valve-spring",
            "coil-spring",
            "valve-spring-shims",
            "bucket-shims",
            "valve-to-piston",
            "valve-to-piston-felt",
            "valve-to-piston-after",
            "valve-to-valve",
            "valve-pocket",
        ],
    },
    Group {
        title: "Camshaft, lifters and rockers",
        words: "cam lobe lift lifter tappet pushrod rocker lash preload degree timing centre",
        ids: &[
            "cam-bearing-clearance",
            "cam-float-plate",
            "cam-float-button",
            "cam-lobe",
            "lobe-centre",
            "cam-lateness",
            "tooth-out",
            "top-dead-centre",
            "lifter-in-bore",
            "valve-lash",
            "lifter-preload-after",
            "rocker-turns",
            "pushrod-length",
            "rocker-room",
        ],
    },
    Group {
        title: "Oil pump, pickup and drive",
        words: "oil pump gear rotor pickup pan sump screen relief drive distributor",
        ids: &[
            "pump-end-clearance",
            "pump-side-clearance",
            "pump-tip-clearance",
            "relief-plunger",
            "pickup-to-pan",
            "pump-drive-float",
            "distributor-depth",
            "distributor-packing",
        ],
    },
    Group {
        title: "Gears, chain, damper and flywheel",
        words: "gear chain belt sprocket backlash slack damper balancer pulley flywheel flexplate converter clutch release run-out runout dial",
        ids: &[
            "gear-backlash",
            "chain-slack",
            "damper-hub",
            "run-out",
            "converter-gap",
            "release-free-travel",
        ],
    },
    Group {
        title: "Bolts, studs and wrenches",
        words: "bolt stud nut thread torque foot-pound ftlb stretch yield angle preload clamp wrench crowfoot adapter lubricant washer",
        ids: &[
            "bolt-engagement",
            "torque-stages",
            "torque-units",
            "which-wrench",
            "wrench-with-adapter",
            "lubricant-change",
            "preload-from-torque",
            "torque-for-preload",
            "preload-two-frictions",
            "assembly-preload",
            "preload-trial",
            "bolt-stretch",
            "measured-stretch",
            "preload-from-stretch",
            "angle-to-load",
            "bolted-joint",
            "bolt-strength",
            "thread-sizes",
        ],
    },
    Group {
        title: "Oil, first fire and running in",
        words: "oil grade weight viscosity pressure film prime plug leak down compression cylinder psi break-in consumption",
        ids: &[
            "oil-pressure",
            "oil-viscosity",
            "grade-at-temperature",
            "grade-of-oil",
            "viscosity-index",
            "bearing-film",
            "prime-test",
            "missing-plug",
            "oil-fill",
            "run-in",
            "oil-used",
            "leak-change",
            "compression-spread",
            "leak-down",
        ],
    },
    Group {
        title: "Weights and balance",
        words: "scale gram weight balance bobweight match rod piston",
        ids: &["match-weights", "bobweight", "unbalance-left", "two-planes"],
    },
    Group {
        title: "Measuring tools",
        words: "micrometer dial indicator bore gauge feeler caliper zero standard error give-or-take uncertainty tolerance",
        ids: &[
            "tool-self-test",
            "zero-check",
            "indicator-lean",
            "feeler-stack",
            "size-by-warm-tool",
            "uncertainty-budget",
            "coverage-factor",
            "conformity",
        ],
    },
    Group {
        title: "Fits and heat",
        words: "fit hole shaft iso grade press interference shrink heat cold warm expansion aluminium temperature",
        ids: &[
            "limits-and-fits",
            "standard-tolerance",
            "press-fit",
            "two-metals",
            "size-at-reference-temperature",
            "clearance-at-temperature",
            "thermal-growth",
        ],
    },
];

#[cfg(test)]
mod tests {
    use super::*;
    use assembly_core::describe::CALCULATIONS;

    fn ids(words: &str) -> Vec<&'static str> {
        GROUPS
            .iter()
            .flat_map(|group| group.found(words))
            .map(|check| check.id)
            .collect()
    }

    #[test]
    fn every_calculation_stands_in_one_group_and_no_other_does() {
        for one in CALCULATIONS {
            let times = GROUPS.iter().filter(|group| group.ids.contains(&one.id));
            assert_eq!(times.count(), 1, "{}", one.id);
        }
        let named: usize = GROUPS.iter().map(|group| group.ids.len()).sum();
        assert_eq!(named, CALCULATIONS.len());
    }

    #[test]
    fn the_words_of_the_trade_lead_to_their_checks() {
        assert!(ids("crush").contains(&"shell-crush"));
        assert!(ids("ring gap").contains(&"ring-gap-rule"));
        assert!(ids("Thou").contains(&"running-clearance"));
        assert!(ids("coil bind").contains(&"valve-spring"));
        assert!(ids("squish").contains(&"quench"));
        assert!(ids("crowfoot").contains(&"wrench-with-adapter"));
        assert!(ids("big end").contains(&"running-clearance"));
        assert!(ids("gearbox ratio of the moon").is_empty());
    }

    #[test]
    fn no_words_lead_to_everything() {
        assert_eq!(ids("  ").len(), CALCULATIONS.len());
    }
}
