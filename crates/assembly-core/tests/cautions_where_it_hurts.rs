//! Work of tightening and oil that can hurt says so where it is worked out.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use assembly_core::describe::calculation;

/// Every calculation after which a person pulls at a bolt, opens something hot or
/// under pressure, or stands by a running engine, and what it has to warn of.
const HURTS: &[(&str, &[&str])] = &[
    ("angle-to-load", &["used once", "back right off"]),
    ("assembly-preload", &["past its yield", "glasses"]),
    ("measured-stretch", &["breaks", "glasses"]),
    ("preload-trial", &["used up", "glasses"]),
    ("torque-stages", &["already tight"]),
    ("wrench-with-adapter", &["middle of the grip"]),
    ("which-wrench", &["inch-pounds"]),
    ("torque-units", &["twelve times too much"]),
    ("lubricant-change", &["Do not tighten"]),
    ("bolt-strength", &["Never replace", "Never mix"]),
    (
        "oil-pressure",
        &["Hot oil burns", "belts and fan", "doors open"],
    ),
    (
        "leak-change",
        &["Hot oil burns", "belts and fan", "doors open"],
    ),
    ("oil-viscosity", &["Hot oil burns", "running engine"]),
    ("oil-fill", &["Hot oil burns", "doors open", "can fall"]),
    ("prime-test", &["goggles", "wrist"]),
    ("relief-plunger", &["goggles"]),
    ("compression-spread", &["Fuel and spark off", "fingers"]),
    ("leak-down", &["lock it", "fan"]),
    (
        "run-in",
        &[
            "extinguisher",
            "exhaust gas kills",
            "belts and fan",
            "hot oil",
            "Stopping is always right",
        ],
    ),
];

#[test]
fn what_can_hurt_is_said_where_it_is_worked_out() {
    for (id, words) in HURTS {
        let one = calculation(id).unwrap_or_else(|| panic!("no calculation {id}"));
        let all = one.cautions.join(" ");
        for word in *words {
            assert!(all.contains(word), "{id} does not say {word:?}: {all}");
        }
    }
}

#[test]
fn nothing_of_tightening_and_oil_is_without_a_caution() {
    let of_these = [
        "torque",
        "bolt",
        "stretch",
        "preload",
        "wrench",
        "oil",
        "prime",
        "leak",
        "run-in",
        "compression-spread",
        "pump",
        "relief",
        "missing-plug",
    ];
    let mut seen = 0;
    for one in assembly_core::describe::CALCULATIONS {
        if of_these.iter().any(|word| one.id.contains(word)) {
            seen += 1;
            assert!(!one.cautions.is_empty(), "{} has no caution", one.id);
        }
    }
    assert!(seen > 20, "{seen}");
}
