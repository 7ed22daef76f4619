//! Short forms for the inputs and outputs that most descriptions are made of.

use super::calculation::{Choice, Input, Output, Takes, UsualUnits};
use crate::quantity::Kind;

impl UsualUnits {
    /// Of a part's size.
    pub const SIZE: Self = Self::of("in", "mm");
    /// Of a gap, a clearance, a taper.
    pub const GAP: Self = Self::of("thou", "µm");
    /// Of a gap that is felt with a blade and said in hundredths.
    pub const FEELER: Self = Self::of("thou", "mm");
    /// Of a plain number.
    pub const NONE: Self = Self::of("", "");
    /// Of a share of the whole.
    pub const SHARE: Self = Self::of("%", "%");
    /// Of a force.
    pub const FORCE: Self = Self::of("lbf", "N");
    /// Of a stress in a part.
    pub const STRESS: Self = Self::of("psi", "MPa");
    /// Of a torque.
    pub const TORQUE: Self = Self::of("ft-lb", "N·m");
    /// Of a temperature.
    pub const TEMPERATURE: Self = Self::of("°F", "°C");
    /// Of an expansion coefficient.
    pub const EXPANSION: Self = Self::of("ppm/°F", "ppm/K");

    /// These two.
    #[must_use]
    pub const fn of(inch: &'static str, metric: &'static str) -> Self {
        Self { inch, metric }
    }
}

impl Input {
    /// One value of any kind.
    #[must_use]
    pub const fn of(
        id: &'static str,
        label: &'static str,
        (kind, units): (Kind, UsualUnits),
        sane: (f64, f64),
        how: &'static str,
    ) -> Self {
        Self {
            id,
            label,
            kind,
            units,
            sane,
            takes: Takes::One,
            how,
        }
    }

    /// A part's size.
    #[must_use]
    pub const fn size(
        id: &'static str,
        label: &'static str,
        sane: (f64, f64),
        how: &'static str,
    ) -> Self {
        Self::of(id, label, (Kind::Length, UsualUnits::SIZE), sane, how)
    }

    /// A small length: a gap, a reading of an indicator.
    #[must_use]
    pub const fn gap(
        id: &'static str,
        label: &'static str,
        sane: (f64, f64),
        how: &'static str,
    ) -> Self {
        Self::of(id, label, (Kind::Length, UsualUnits::FEELER), sane, how)
    }

    /// A plain number.
    #[must_use]
    pub const fn ratio(
        id: &'static str,
        label: &'static str,
        sane: (f64, f64),
        how: &'static str,
    ) -> Self {
        Self::of(id, label, (Kind::Ratio, UsualUnits::NONE), sane, how)
    }

    /// One of some words.
    #[must_use]
    pub const fn one_of(
        id: &'static str,
        label: &'static str,
        choices: &'static [Choice],
        how: &'static str,
    ) -> Self {
        let last = choices.len().saturating_sub(1) as f64;
        let mut input = Self::of(id, label, (Kind::Count, UsualUnits::NONE), (0.0, last), how);
        input.takes = Takes::OneOf(choices);
        input
    }

    /// The same, taking this many.
    #[must_use]
    pub const fn taking(mut self, takes: Takes) -> Self {
        self.takes = takes;
        self
    }

    /// The same, but it may be left out.
    #[must_use]
    pub const fn optional(self) -> Self {
        self.taking(Takes::Optional)
    }

    /// The same, but one or more of it.
    #[must_use]
    pub const fn one_or_more(self) -> Self {
        self.taking(Takes::OneOrMore)
    }
}

impl Output {
    /// A value of any kind.
    #[must_use]
    pub const fn of(
        id: &'static str,
        label: &'static str,
        (kind, units): (Kind, UsualUnits),
    ) -> Self {
        Self {
            id,
            label,
            kind,
            units,
        }
    }

    /// A part's size.
    #[must_use]
    pub const fn size(id: &'static str, label: &'static str) -> Self {
        Self::of(id, label, (Kind::Length, UsualUnits::SIZE))
    }

    /// A small length.
    #[must_use]
    pub const fn gap(id: &'static str, label: &'static str) -> Self {
        Self::of(id, label, (Kind::Length, UsualUnits::GAP))
    }

    /// A plain number.
    #[must_use]
    pub const fn ratio(id: &'static str, label: &'static str) -> Self {
        Self::of(id, label, (Kind::Ratio, UsualUnits::NONE))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::describe::{Answer, Calculation, CalculationError, Given, Provenance};
    use crate::measure::Estimate;

    static METAL: Input = Input::one_of(
        "metal",
        "metal",
        &[
            Choice {
                id: "iron",
                label: "cast iron",
            },
            Choice {
                id: "alloy",
                label: "aluminium alloy",
            },
        ],
        "Look whether a magnet holds.",
    );
    static PICK: Calculation = Calculation {
        id: "pick",
        title: "pick",
        purpose: "a test",
        inputs: &[METAL],
        outputs: &[],
        workings: &[],
        provenance: Provenance::CommonPractice,
        cautions: &[],
        run: |given| given.choice(&METAL).map(|_| Answer::new()),
    };

    #[test]
    fn a_word_is_chosen_by_its_place_and_nothing_else() {
        let pick = |at: f64| Given::new().with("metal", Estimate::exact(at));
        assert_eq!(pick(1.0).choice(&METAL).unwrap().id, "alloy");
        assert!(PICK.answer(&pick(0.0)).is_ok());
        for wrong in [2.0, -1.0, 0.5] {
            let error = PICK.answer(&pick(wrong)).unwrap_err();
            assert_eq!(error.field(), Some("metal"));
            assert!(error.to_string().contains("cast iron, aluminium alloy"));
        }
        assert!(matches!(
            PICK.answer(&Given::new()),
            Err(CalculationError::Missing { .. })
        ));
    }
}
