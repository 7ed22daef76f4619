//! What the metals of an engine do with heat and under load.

use super::expansion::Expansion;

/// Where a value of a metal is from.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Standing {
    /// Read in a secondary printing of the named source.
    Secondary,
    /// The named source, from memory.
    Memory,
}

/// A metal by its designation, with its mean expansion coefficient.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Metal {
    /// What it is called.
    pub name: &'static str,
    /// The designations that name it, in capitals: "G1800", "356".
    pub designations: &'static [&'static str],
    /// Millionths a kelvin.
    pub expansion: Expansion,
    /// The range of temperature, where the source says one.
    pub range: Option<&'static str>,
    /// The table it is from.
    pub source: &'static str,
    /// How it came from there.
    pub standing: Standing,
}

const CALLISTER: &str = "W. D. Callister and D. G. Rethwisch, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6";
const NADCA: &str = "NADCA Product Specification Standards for Die Castings, table A-3-2";
const ASM: &str = "ASM Handbook vol. 2 and Aluminum Association data";

const fn metal(
    name: &'static str,
    designations: &'static [&'static str],
    millionths: f64,
    source: &'static str,
    standing: Standing,
) -> Metal {
    Metal {
        name,
        designations,
        expansion: Expansion::millionths(millionths),
        range: None,
        source,
        standing,
    }
}

const fn over(range: &'static str, mut metal: Metal) -> Metal {
    metal.range = Some(range);
    metal
}

use Standing::{Memory, Secondary};

/// The metals, each with its source.
pub static METALS: &[Metal] = &[
    metal(
        "grey cast iron G1800",
        &["G1800"],
        11.4,
        CALLISTER,
        Secondary,
    ),
    metal(
        "grey cast iron G3000",
        &["G3000"],
        11.4,
        CALLISTER,
        Secondary,
    ),
    metal(
        "grey cast iron G4000",
        &["G4000"],
        11.4,
        CALLISTER,
        Secondary,
    ),
    metal(
        "ductile iron 60-40-18",
        &["60-40-18"],
        11.2,
        CALLISTER,
        Memory,
    ),
    metal(
        "ductile iron 80-55-06",
        &["80-55-06"],
        10.6,
        CALLISTER,
        Secondary,
    ),
    metal("steel A36", &["A36"], 11.7, CALLISTER, Memory),
    metal("steel 1020", &["1020"], 11.7, CALLISTER, Memory),
    metal("steel 1040", &["1040"], 11.3, CALLISTER, Secondary),
    metal("steel 4140", &["4140"], 12.3, CALLISTER, Secondary),
    metal("steel 4340", &["4340"], 12.3, CALLISTER, Memory),
    metal("stainless steel 304", &["304"], 17.2, CALLISTER, Memory),
    metal("stainless steel 316", &["316"], 15.9, CALLISTER, Memory),
    metal("stainless steel 405", &["405"], 10.8, CALLISTER, Memory),
    metal("stainless steel 440A", &["440A"], 10.2, CALLISTER, Memory),
    metal(
        "stainless steel 17-7PH",
        &["17-7PH"],
        11.0,
        CALLISTER,
        Memory,
    ),
    metal("aluminium 1100", &["1100"], 23.6, CALLISTER, Memory),
    metal("aluminium 2024", &["2024"], 22.9, CALLISTER, Secondary),
    metal("aluminium 6061", &["6061"], 23.6, CALLISTER, Secondary),
    metal("aluminium 7075", &["7075"], 23.4, CALLISTER, Memory),
    metal("cast aluminium 356.0", &["356"], 21.5, CALLISTER, Memory),
    metal("copper C11000", &["C11000"], 17.0, CALLISTER, Memory),
    metal(
        "beryllium copper C17200",
        &["C17200"],
        16.7,
        CALLISTER,
        Memory,
    ),
    metal(
        "cartridge brass C26000",
        &["C26000"],
        19.9,
        CALLISTER,
        Memory,
    ),
    metal(
        "free-cutting brass C36000",
        &["C36000"],
        20.5,
        CALLISTER,
        Secondary,
    ),
    metal("copper-nickel C71500", &["C71500"], 16.2, CALLISTER, Memory),
    metal(
        "bearing bronze C93200",
        &["C93200"],
        18.0,
        CALLISTER,
        Memory,
    ),
    metal("magnesium AZ31B", &["AZ31B"], 26.0, CALLISTER, Secondary),
    metal("cast magnesium AZ91D", &["AZ91D"], 26.0, CALLISTER, Memory),
    metal(
        "titanium Ti-5Al-2.5Sn",
        &["TI-5AL-2.5SN"],
        9.4,
        CALLISTER,
        Memory,
    ),
    metal(
        "titanium Ti-6Al-4V",
        &["TI-6AL-4V"],
        8.6,
        CALLISTER,
        Secondary,
    ),
    metal("nickel 200", &["N02200"], 13.3, CALLISTER, Memory),
    metal("die-cast aluminium 360.0", &["360"], 21.0, NADCA, Secondary),
    metal("die-cast aluminium A360.0", &["A360"], 21.0, NADCA, Memory),
    metal("die-cast aluminium 380.0", &["380"], 22.0, NADCA, Secondary),
    metal(
        "die-cast aluminium A380.0",
        &["A380"],
        21.8,
        NADCA,
        Secondary,
    ),
    metal("die-cast aluminium 383.0", &["383"], 21.1, NADCA, Memory),
    metal("die-cast aluminium 384.0", &["384"], 21.0, NADCA, Secondary),
    metal("die-cast aluminium B390.0", &["B390"], 18.0, NADCA, Memory),
    metal("die-cast aluminium 413.0", &["413"], 20.4, NADCA, Memory),
    metal("die-cast aluminium A413.0", &["A413"], 21.6, NADCA, Memory),
    metal("die-cast aluminium C443.0", &["C443"], 22.0, NADCA, Memory),
    metal("die-cast aluminium 518.0", &["518"], 24.1, NADCA, Memory),
    over(
        "20 to 100 °C",
        metal(
            "high-silicon aluminium 390.0",
            &["390", "A390"],
            18.2,
            ASM,
            Secondary,
        ),
    ),
    over(
        "20 to 100 °C",
        metal("cast aluminium 319.0", &["319", "A319"], 21.5, ASM, Memory),
    ),
    over(
        "20 to 100 °C",
        metal("cast aluminium A356.0", &["A356"], 21.5, ASM, Memory),
    ),
    over(
        "20 to 100 °C",
        metal(
            "cast aluminium 332.0",
            &["332", "A332", "F332"],
            20.7,
            ASM,
            Memory,
        ),
    ),
    over(
        "20 to 100 °C",
        metal("piston alloy 4032", &["4032"], 19.4, ASM, Secondary),
    ),
    over(
        "20 to 100 °C",
        metal(
            "piston alloy 2618",
            &["2618", "2618A"],
            22.3,
            ASM,
            Secondary,
        ),
    ),
];

/// The metal that a text names by its designation: "steel 4140", "A380.0-F".
/// The temper behind a dash and the ".0" of a casting alloy do not count.
///
/// ```
/// use assembly_core::metrology::metal::named;
///
/// let iron = named("gray cast iron G3000").unwrap();
/// assert!((iron.expansion.per_kelvin() - 11.4e-6).abs() < 1e-18);
/// assert!(named("cheese").is_none());
/// ```
#[must_use]
pub fn named(text: &str) -> Option<&'static Metal> {
    let words: Vec<String> = text
        .split(|c: char| c.is_whitespace() || c == ',' || c == '(' || c == ')')
        .map(|word| word.to_ascii_uppercase())
        .collect();
    METALS.iter().find(|metal| {
        metal.designations.iter().any(|designation| {
            words.iter().any(|word| {
                word == designation
                    || word.split('-').next().map(without_point_nought) == Some(*designation)
            })
        })
    })
}

fn without_point_nought(word: &str) -> &str {
    word.strip_suffix(".0").unwrap_or(word)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_metal_is_found_by_its_own_name_and_by_no_other() {
        let mut seen = BTreeSet::new();
        for metal in METALS {
            for designation in metal.designations {
                assert!(seen.insert(designation), "{designation} twice");
                assert_eq!(named(&format!("some alloy {designation}")), Some(metal));
            }
        }
    }

    #[test]
    fn a_temper_does_not_hide_the_alloy() {
        assert_eq!(
            named("aluminium A380.0-F").unwrap().name,
            "die-cast aluminium A380.0"
        );
        assert_eq!(named("A356-T6").unwrap().name, "cast aluminium A356.0");
        assert!(named("").is_none());
        assert!(named("-").is_none());
    }

    #[test]
    fn every_coefficient_is_one_of_a_metal() {
        for metal in METALS {
            let value = metal.expansion.per_kelvin();
            assert!((8e-6..27e-6).contains(&value), "{}", metal.name);
        }
    }
}
