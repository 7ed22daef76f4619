//! Valve lash: what a hot lash is when the engine is cold, and how far a valve
//! is off.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    length_text,
};
use crate::measure::Estimate;

const THOU: f64 = 0.001 * 0.0254;
const LASHES: (f64, f64) = (0.0, 0.003);

static HOT: Input = Input::gap(
    "hot",
    "hot lash on the sheet",
    LASHES,
    "From the cam's or the engine's sheet, said for a hot engine.",
);
static METALS: Input = Input::one_of(
    "metals",
    "block and head",
    &[
        Choice {
            id: "iron-iron",
            label: "iron block, iron head",
        },
        Choice {
            id: "iron-alloy",
            label: "iron block, aluminium head",
        },
        Choice {
            id: "alloy-alloy",
            label: "aluminium block, aluminium head",
        },
    ],
    "An aluminium block and head grow away from the pushrods.",
);
static READ: Input = Input::gap(
    "read",
    "lash as it is now, cold",
    LASHES,
    "On the round part of its cam, blade between tip and rocker or bucket and cam. Leave it out to know the figure only.",
)
.optional();

/// How much more the lash is cold than hot, for pushrod engines. Common practice.
const IRON_IRON: f64 = 2.0 * THOU;
const IRON_ALLOY: f64 = -6.0 * THOU;
const ALLOY_ALLOY: f64 = -12.0 * THOU;

/// Lash.
pub static VALVE_LASH: Calculation = Calculation {
    id: "valve-lash",
    title: "Valve lash, cold for hot",
    purpose: "What lash to set cold when the sheet says it hot, and how far a valve is off.",
    inputs: &[HOT, METALS, READ],
    outputs: &[
        Output::gap("cold", "lash to set cold"),
        Output::gap("off", "more than that now"),
    ],
    workings: &[
        "cold = hot + what the metals make of it = {hot} + … = {cold}",
        "off = {read} − {cold} = {off}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "This is a start for the first fire only. Set the lash hot as the sheet says, once the engine is warm through.",
        "Too little lash burns a valve. A lash that opens by some thou on one valve alone is a lobe going: stop and look.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let hot = given.one(&HOT)?;
    let more = match given.choice(&METALS)?.id {
        "iron-iron" => IRON_IRON,
        "iron-alloy" => IRON_ALLOY,
        _ => ALLOY_ALLOY,
    };
    let cold = hot + more;
    if cold.value() < 0.0 {
        return Err(CalculationError::not_possible(
            &HOT,
            format!(
                "{} hot leaves no lash at all cold with these metals: set it hot, or ask the cam's maker",
                length_text(hot.value())
            ),
        ));
    }
    let off = given.optional(READ.id).map(|read| read - &cold);
    let answer = match off.as_ref().map(Estimate::value) {
        Some(off) if off < -0.5 * THOU => Answer::new().finding(
            Gravity::Caution,
            "Tighter than it should be: the valve may not close when hot.",
        ),
        _ => Answer::new(),
    };
    Ok(answer.with("cold", cold).with_optional("off", off))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, refused, says, value, worked};

    fn lash(hot: f64, metals: f64, read: f64) -> Given {
        given(THOU, &[("hot", &[hot]), ("read", &[read])]).with("metals", Estimate::exact(metals))
    }

    // Common practice: iron on iron +2 thou cold, aluminium head −6, all aluminium −12.
    #[test]
    fn the_metals_decide_what_a_hot_lash_is_cold() {
        for (metals, cold) in [(0.0, 22.0), (1.0, 14.0), (2.0, 8.0)] {
            let answer = worked(&VALVE_LASH, &lash(20.0, metals, 14.0));
            assert_eq!(value(&answer, "cold", THOU), cold);
            assert_eq!(value(&answer, "off", THOU), 14.0 - cold);
        }
        assert!(says(
            &worked(&VALVE_LASH, &lash(20.0, 0.0, 14.0)),
            "may not close"
        ));
        assert_eq!(refused(&VALVE_LASH, &lash(10.0, 2.0, 0.0)), Some("hot"));
    }
}
