//! What a measured value with its uncertainty says about a tolerance: the
//! chance of conformity, and the decision with a guard band.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    UsualUnits,
};
use crate::measure::{Assessment, DangerousSide, Estimate, Origin, Sources, Window};
use crate::quantity::Kind;

/// How far inside the limits a value must lie to be called conforming, in
/// standard uncertainties.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum GuardBand {
    /// The expanded uncertainty with k = 2, as decisions were made by ISO 14253-1:1998.
    Expanded,
    /// 1.645: conforming with at least 95 % on the nearer side
    /// (ISO 14253-1:2017, for a tolerance much wider than the uncertainty).
    NinetyFivePercent,
}

impl GuardBand {
    /// In standard uncertainties.
    #[must_use]
    pub const fn factor(self) -> f64 {
        match self {
            Self::Expanded => 2.0,
            Self::NinetyFivePercent => 1.645,
        }
    }
}

/// What may be said of a value against a tolerance.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Decision {
    /// Proved inside.
    Conform,
    /// Neither proved inside nor proved outside.
    Indeterminate,
    /// Proved outside.
    Nonconform,
}

impl Decision {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Conform => "conform",
            Self::Indeterminate => "indeterminate",
            Self::Nonconform => "nonconform",
        }
    }
}

/// Decides with a guard band inside and outside of each limit (ISO 14253-1, 5).
///
/// ```
/// use assembly_core::measure::Window;
/// use assembly_core::metrology::conformity::{Decision, GuardBand, decide};
///
/// let tolerance = Window::new(Some(79.99), Some(80.01)).unwrap();
/// assert_eq!(decide(80.0, 0.004, &tolerance, GuardBand::Expanded), Decision::Conform);
/// assert_eq!(decide(80.005, 0.004, &tolerance, GuardBand::Expanded), Decision::Indeterminate);
/// ```
#[must_use]
pub fn decide(
    measured: f64,
    uncertainty: f64,
    tolerance: &Window,
    guard_band: GuardBand,
) -> Decision {
    let guard = guard_band.factor() * uncertainty;
    let beyond_low = tolerance.low().is_some_and(|low| measured < low - guard);
    let beyond_high = tolerance.high().is_some_and(|high| measured > high + guard);
    if beyond_low || beyond_high {
        return Decision::Nonconform;
    }
    let clear_of_low = tolerance.low().is_none_or(|low| measured >= low + guard);
    let clear_of_high = tolerance.high().is_none_or(|high| measured <= high - guard);
    if clear_of_low && clear_of_high {
        Decision::Conform
    } else {
        Decision::Indeterminate
    }
}

static LOW: Input = Input::size(
    "low",
    "least allowed",
    (-5.0, 5.0),
    "The lower limit; leave it out when there is none.",
)
.optional();
static HIGH: Input = Input::size(
    "high",
    "greatest allowed",
    (-5.0, 5.0),
    "The upper limit; leave it out when there is none.",
)
.optional();
static MEASURED: Input = Input::size(
    "measured",
    "measured",
    (-5.0, 5.0),
    "The value that was measured, corrected for everything you know.",
);
static UNCERTAINTY: Input = Input::gap(
    "uncertainty",
    "standard uncertainty",
    (0.0, 0.01),
    "One standard deviation. Leave it out to take the reading's own give-or-take.",
)
.optional();
static RULE: Input = Input::one_of(
    "rule",
    "guard band",
    &[
        Choice {
            id: "ninety-five-percent",
            label: "1.645 standard uncertainties, 95 % to the nearer side",
        },
        Choice {
            id: "expanded",
            label: "2 standard uncertainties, the expanded uncertainty",
        },
    ],
    "Which rule the order or the maker's sheet asks for; the first when it says nothing.",
);

/// Chance of conformity and decision.
pub static CONFORMITY: Calculation = Calculation {
    id: "conformity",
    title: "Inside the tolerance or not",
    purpose: "How likely a measured size lies inside its tolerance, and what may be claimed to the shop that made it.",
    inputs: &[LOW, HIGH, MEASURED, UNCERTAINTY, RULE],
    outputs: &[
        Output::of(
            "inside",
            "chance of lying inside",
            (Kind::Ratio, UsualUnits::SHARE),
        ),
        Output::of(
            "below",
            "chance of lying below",
            (Kind::Ratio, UsualUnits::SHARE),
        ),
        Output::of(
            "above",
            "chance of lying above",
            (Kind::Ratio, UsualUnits::SHARE),
        ),
        Output::gap("guard", "guard band"),
    ],
    workings: &[
        "the true size is taken as normal about {measured} with the standard uncertainty {uncertainty}",
        "chance of lying from {low} to {high} = {inside}",
        "conforming is proved from {guard} inside the limits, nonconforming from {guard} outside",
    ],
    provenance: Provenance::Standard("JCGM 106:2012, 7; ISO 14253-1:2017, 5"),
    cautions: &[
        "Between the guard bands neither you nor the shop has proved anything: measure better before you argue.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let limit = |input: &'static Input| given.optional(input.id).map(Estimate::value);
    let tolerance = Window::new(limit(&LOW), limit(&HIGH))
        .map_err(|error| CalculationError::not_possible(&LOW, error.to_string()))?;
    let reading = given.one(&MEASURED)?;
    let uncertainty = limit(&UNCERTAINTY).unwrap_or_else(|| reading.deviation());
    let rule = match given.choice(&RULE)?.id {
        "expanded" => GuardBand::Expanded,
        _ => GuardBand::NinetyFivePercent,
    };
    let value = Estimate::exact(reading.value())
        .with(Sources::new().fresh("stated", Origin::Stated), uncertainty);
    let chances = Assessment::of(&value, &tolerance, DangerousSide::Neither);
    let decision = decide(reading.value(), uncertainty, &tolerance, rule);
    let (gravity, words) = match decision {
        Decision::Conform => (Gravity::Note, "Proved inside the tolerance."),
        Decision::Indeterminate => (
            Gravity::Caution,
            "Neither proved inside nor proved outside. A better tool or more readings could settle it.",
        ),
        Decision::Nonconform => (Gravity::Stop, "Proved outside the tolerance."),
    };
    Ok(Answer::new()
        .with("inside", Estimate::exact(chances.inside))
        .with("below", Estimate::exact(chances.below))
        .with("above", Estimate::exact(chances.above))
        .with("guard", Estimate::exact(rule.factor() * uncertainty))
        .finding(gravity, words))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_decision_is_as_sure_as_its_guard_band() {
        let tolerance = Window::new(Some(0.0), Some(20.0)).unwrap();
        let said = |measured| decide(measured, 1.0, &tolerance, GuardBand::NinetyFivePercent);
        assert_eq!(said(-1.7), Decision::Nonconform);
        assert_eq!(said(-1.6), Decision::Indeterminate);
        assert_eq!(said(1.6), Decision::Indeterminate);
        assert_eq!(said(1.7), Decision::Conform);
        assert_eq!(said(18.3), Decision::Conform);
        assert_eq!(said(21.7), Decision::Nonconform);
    }

    #[test]
    fn one_limit_is_enough() {
        let given = Given::new()
            .with("low", Estimate::exact(0.010))
            .with("measured", Estimate::exact(0.011))
            .with("uncertainty", Estimate::exact(0.0001))
            .with("rule", Estimate::exact(1.0));
        let answer = CONFORMITY.answer(&given).unwrap();
        assert!(answer.get("inside").unwrap().value() > 0.999_999);
        assert!((answer.get("guard").unwrap().value() - 0.0002).abs() < 1e-15);
        assert_eq!(answer.findings()[0].gravity, Gravity::Note);
    }

    #[test]
    fn no_limit_at_all_is_told() {
        let given = Given::new()
            .with("measured", Estimate::exact(0.011))
            .with("rule", Estimate::exact(0.0));
        assert_eq!(CONFORMITY.answer(&given).unwrap_err().field(), Some("low"));
    }
}
