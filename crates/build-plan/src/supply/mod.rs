//! What has to be on the bench before a step can begin, and is waited for.

/// Something that is bought, ordered or lent.
#[derive(PartialEq, Eq, Debug)]
pub struct Supply {
    /// Stable name.
    pub id: &'static str,
    /// What it is called at the bench.
    pub label: &'static str,
    /// Why it has to be there first.
    pub why: &'static str,
}

/// Pistons.
pub static PISTONS: Supply = Supply {
    id: "pistons",
    label: "pistons",
    why: "Bores are bored and honed to the pistons in hand, never to a catalogue size.",
};

/// Rings.
pub static RINGS: Supply = Supply {
    id: "rings",
    label: "rings",
    why: "The hone's finish goes by the ring set, and each ring's gap by its own bore.",
};

/// Bearing shells.
pub static SHELLS: Supply = Supply {
    id: "shells",
    label: "bearing shells",
    why: "The crank is ground to the clearance that these shells give.",
};

/// The fasteners of the final assembly.
pub static FASTENERS: Supply = Supply {
    id: "fasteners",
    label: "the final bolts or studs, and their lubricant",
    why: "They pull the bores to their shape. Bolts that are used once are kept for the last time.",
};

/// Camshaft and lifters.
pub static CAM_AND_LIFTERS: Supply = Supply {
    id: "cam-and-lifters",
    label: "camshaft, its card and new lifters",
    why: "Springs, pushrods and valve room go by the camshaft.",
};

/// The gaskets that will be fitted.
pub static GASKETS: Supply = Supply {
    id: "gaskets",
    label: "the gaskets that will be fitted",
    why: "Every stack counts with the gasket's real thickness.",
};

/// Seals.
pub static SEALS: Supply = Supply {
    id: "seals",
    label: "seals",
    why: "They have to be there when the joint is closed.",
};

/// Valve springs and what holds them.
pub static SPRINGS: Supply = Supply {
    id: "springs",
    label: "valve springs, retainers, locks and shims",
    why: "Heights are set with the parts that will be there.",
};

/// Oil and filter for the first run.
pub static FIRST_OIL: Supply = Supply {
    id: "first-oil",
    label: "oil and filter for the first run",
    why: "A flat camshaft needs the right oil from its first turn.",
};

/// A torque plate, where the bores were or will be honed with one.
pub static PLATE: Supply = Supply {
    id: "plate",
    label: "the plate that the bores are honed with",
    why: "A bore honed with a plate has its shape only with the plate on.",
};

/// All supplies.
pub static SUPPLIES: &[&Supply] = &[
    &PISTONS,
    &RINGS,
    &SHELLS,
    &FASTENERS,
    &CAM_AND_LIFTERS,
    &GASKETS,
    &SEALS,
    &SPRINGS,
    &FIRST_OIL,
    &PLATE,
];

/// The supply with this id.
#[must_use]
pub fn supply(id: &str) -> Option<&'static Supply> {
    SUPPLIES.iter().copied().find(|one| one.id == id)
}
