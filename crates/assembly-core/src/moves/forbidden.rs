//! What must never be done about a result, and why.

use crate::describe::Provenance;

/// Something that seems to help and ruins the part.
#[derive(PartialEq, Debug)]
pub struct Forbidden {
    /// Stable name.
    pub id: &'static str,
    /// What somebody may be tempted to do.
    pub title: &'static str,
    /// The measures it is tempting for.
    pub measures: &'static [&'static str],
    /// What it ruins.
    pub why: &'static str,
    /// Where this is from.
    pub provenance: Provenance,
}

/// Everything that must never be done.
pub static NEVER: &[Forbidden] = &[
    Forbidden {
        id: "file-the-cap",
        title: "File or shim a bearing cap",
        measures: &[
            "main-oil-clearance",
            "rod-oil-clearance",
            "main-crush",
            "rod-crush",
        ],
        why: "The bore goes egg-shaped and the shells lose or gain crush, so they turn or buckle. The cap is scrap for its bore until the whole line is honed again.",
        provenance: Provenance::CommonPractice,
    },
    Forbidden {
        id: "hone-the-housing-for-clearance",
        title: "Hone the housing bore to gain clearance",
        measures: &["main-oil-clearance", "rod-oil-clearance"],
        why: "A larger housing lets go of the shell: it loses crush and turns. The housing is brought to its own size, never used to set a clearance.",
        provenance: Provenance::CommonPractice,
    },
    Forbidden {
        id: "scrape-the-shells",
        title: "Scrape or sand the shells to gain clearance",
        measures: &[
            "main-oil-clearance",
            "rod-oil-clearance",
            "cam-bearing-clearance",
        ],
        why: "The overlay is thinner than what would have to come off, and the grit stays in it.",
        provenance: Provenance::CommonPractice,
    },
    Forbidden {
        id: "shim-behind-the-shell",
        title: "Put a shim or foil behind a shell",
        measures: &["main-oil-clearance", "rod-oil-clearance"],
        why: "Heat no longer leaves the shell, the wall bends at the shim's edge and the oil hole may close.",
        provenance: Provenance::CommonPractice,
    },
    Forbidden {
        id: "hammer-the-thrust",
        title: "Drive the thrust faces into line with a hammer on the crankshaft",
        measures: &["crank-end-play"],
        why: "The faces bruise and one half carries all of the thrust. Seat the halves by prying with the cap snug, then torque.",
        provenance: Provenance::CommonPractice,
    },
    Forbidden {
        id: "sand-the-cam-bearings",
        title: "Open cam bearings with steel wool or a cloth until the camshaft turns",
        measures: &["cam-bearing-clearance"],
        why: "It leaves a bearing of no known size with grit in it. A tight bearing is out of line or its bore is burred: find which one.",
        provenance: Provenance::CommonPractice,
    },
    Forbidden {
        id: "file-a-ring-at-the-face",
        title: "File a ring outwards, towards its face",
        measures: &["ring-end-gap"],
        why: "The coating chips at the face. File from the face inward, keep the ends square and take the burr off.",
        provenance: Provenance::CommonPractice,
    },
    Forbidden {
        id: "punch-the-housing",
        title: "Centre-punch or knurl a housing or the back of a shell to make it hold",
        measures: &[
            "main-crush",
            "rod-crush",
            "main-oil-clearance",
            "rod-oil-clearance",
        ],
        why: "The shell rests on a few points, bends between them and carries no heat away.",
        provenance: Provenance::CommonPractice,
    },
    Forbidden {
        id: "cut-a-split-rod-cap",
        title: "Cut the cap of a rod that was split by fracture",
        measures: &["rod-oil-clearance", "big-end-bore", "rod-crush"],
        why: "The broken faces locate the cap and fit only each other. Such a rod takes an oversize shell or is replaced.",
        provenance: Provenance::CommonPractice,
    },
    Forbidden {
        id: "pull-down-with-the-bolts",
        title: "Draw a tight hub, converter or housing up with its bolts",
        measures: &["damper-hub-interference", "converter-gap", "crank-end-play"],
        why: "Threads strip, the hub galls or the pump and the thrust bearing are crushed.",
        provenance: Provenance::CommonPractice,
    },
    Forbidden {
        id: "stack-spring-shims",
        title: "Stack shims beyond 0.060 in (1.5 mm) under a valve spring",
        measures: &["installed-height", "spring-seat-load"],
        why: "The spring no longer sits in its pocket and walks. Beyond that, look for a sunk valve or the wrong spring.",
        provenance: Provenance::CommonPractice,
    },
    Forbidden {
        id: "gasket-for-flatness",
        title: "Trust a thicker gasket to make up for a bent deck or head",
        measures: &["head-flatness", "deck-flatness"],
        why: "The gasket needs even pressure more than thickness. Make the faces flat.",
        provenance: Provenance::CommonPractice,
    },
];

/// What must never be done about this measure.
pub fn never(measure: &str) -> impl Iterator<Item = &'static Forbidden> + use<'_> {
    NEVER
        .iter()
        .filter(move |one| one.measures.contains(&measure))
}
