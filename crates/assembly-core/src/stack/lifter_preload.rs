//! What the preload of a hydraulic lifter becomes when anything between cam and
//! valve has been changed, and how far one turn of a rocker nut goes.
//!
//! A valve that sinks brings its tip up and adds preload; grinding the tip
//! takes it down and takes preload away. The two are easily mixed up.

use num_dual::Dual64;

use super::answering::{estimate, less, more};
use super::formula::{Formula, Number, Smooth, Stack, Term};
use super::pushrod_length::{COMMON_PRELOAD_LEAST, COMMON_PRELOAD_MOST};
use super::valve_spring::ROCKER_RATIO;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::quantity::Kind;

const CUT: (f64, f64) = (0.0, 0.005);

/// Preload before.
pub static PRELOAD_BEFORE: Input = Input::gap(
    "preload-before",
    "preload before",
    (-0.005, 0.01),
    "As it was measured with the parts of before; below nothing when there was play.",
);
static DECK_CUT: Input = Input::gap(
    "deck-cut",
    "taken off the deck",
    CUT,
    "What the shop milled off the block.",
)
.optional();
static HEAD_CUT: Input = Input::gap(
    "head-cut",
    "milled off the head",
    CUT,
    "What the shop milled off the head's face.",
)
.optional();
static GASKET_THINNER: Input = Input::gap(
    "gasket-thinner",
    "head gasket thinner by",
    (-0.004, 0.004),
    "Compressed thickness of the old gasket less that of the new one; below nothing when the new one is thicker.",
)
.optional();
static VALVE_SUNK: Input = Input::gap(
    "valve-sunk",
    "valve sunk by",
    (0.0, 0.004),
    "How far its tip came up through seat and face work.",
)
.optional();
static TIP_GROUND: Input = Input::gap(
    "tip-ground",
    "ground off the valve's tip",
    (0.0, 0.003),
    "What was taken off the end of the stem.",
)
.optional();
static PUSHROD_LONGER: Input = Input::gap(
    "pushrod-longer",
    "pushrod longer by",
    (-0.02, 0.02),
    "New length less old length; below nothing when it is shorter.",
)
.optional();
static BASE_CIRCLE_SMALLER: Input = Input::gap(
    "base-circle-smaller",
    "base circle smaller by (radius)",
    (-0.01, 0.01),
    "Radius of the old cam's heel less that of the new one.",
)
.optional();
static PEDESTAL_SHIM: Input = Input::gap(
    "pedestal-shim",
    "shims under the rocker pedestals",
    (0.0, 0.005),
    "Thickness added under the rocker's pivot.",
)
.optional();

static PRELOAD: Output = Output::gap("preload", "preload now");

/// Preload after changes.
pub static LIFTER_PRELOAD: Stack = Stack {
    id: "lifter-preload",
    title: "Lifter preload after changes",
    terms: &[
        Term::needed(&PRELOAD_BEFORE),
        Term::needed(&ROCKER_RATIO),
        Term::if_fitted(&DECK_CUT),
        Term::if_fitted(&HEAD_CUT),
        Term::if_fitted(&GASKET_THINNER),
        Term::if_fitted(&VALVE_SUNK),
        Term::if_fitted(&TIP_GROUND),
        Term::if_fitted(&PUSHROD_LONGER),
        Term::if_fitted(&BASE_CIRCLE_SMALLER),
        Term::if_fitted(&PEDESTAL_SHIM),
    ],
    result: &PRELOAD,
    formula: Formula::Smooth(Smooth {
        value: preload::<f64>,
        with_slope: preload::<Dual64>,
    }),
    proof: "A pegged lifter and an adjustable checker, one intake and one exhaust in each bank.",
};

fn preload<N: Number>(terms: &[N]) -> N {
    let &[
        before,
        ratio,
        deck,
        head,
        gasket,
        sunk,
        ground,
        pushrod,
        circle,
        shim,
    ] = terms
    else {
        return N::from(f64::NAN);
    };
    // Raising the pivot by a shim while the tip stays frees the lifter by the
    // shim and again by the shim over the ratio.
    before + deck + head + gasket + (sunk - ground) / ratio + pushrod
        - circle
        - shim * (ratio.recip() + 1.0)
}

/// Preload after changes as a quick check.
pub static PRELOAD_AFTER: Calculation = Calculation {
    id: "lifter-preload-after",
    title: "Lifter preload after milling, valve work or another cam",
    purpose: "What the preload becomes when head, deck, gasket, valve, pushrod or cam were changed.",
    inputs: &[
        PRELOAD_BEFORE,
        ROCKER_RATIO,
        DECK_CUT,
        HEAD_CUT,
        GASKET_THINNER,
        VALVE_SUNK,
        TIP_GROUND,
        PUSHROD_LONGER,
        BASE_CIRCLE_SMALLER,
        PEDESTAL_SHIM,
    ],
    outputs: &[PRELOAD, Output::gap("change", "change")],
    workings: &[
        "preload now = {preload-before} + deck {deck-cut} + head {head-cut} + gasket {gasket-thinner} + (sunk {valve-sunk} − tip ground {tip-ground}) / {rocker-ratio} + pushrod {pushrod-longer} − base circle {base-circle-smaller} − pedestal shims {pedestal-shim} × (1 + 1/{rocker-ratio}) = {preload}",
    ],
    provenance: Provenance::Derivation("rockers on fixed pivots, moving about them in proportion"),
    cautions: &[
        "For rockers that are not adjusted. With adjusters the preload is set again anyway.",
        "A hydraulic lifter bleeds down while you look: its zero moves. Check with a pegged one.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let now = estimate(&LIFTER_PRELOAD, given)?;
    let change = &now - given.one(&PRELOAD_BEFORE)?;
    let answer = if now.value() <= 0.0 {
        Answer::new().finding(
            Gravity::Stop,
            "No preload is left: the lifters rattle and the valve train hammers. Longer pushrods, or a shim less under the pedestals.",
        )
    } else if less(now.value(), COMMON_PRELOAD_LEAST) || more(now.value(), COMMON_PRELOAD_MOST) {
        Answer::new().finding(
            Gravity::Caution,
            "Common preload is 0.020 to 0.060 in (0.5 to 1.5 mm): too little pounds the plunger's lock, too much holds the valve open. The lifter's sheet wins.",
        )
    } else {
        Answer::new()
    };
    Ok(answer.with(PRELOAD.id, now).with("change", change))
}

static PITCH: Input = Input::gap(
    "pitch",
    "thread pitch of the rocker stud",
    (0.0003, 0.004),
    "One inch over the threads in an inch: 24 threads are 0.0417 in, 20 threads 0.050 in.",
);
static TURNS: Input = Input::of(
    "turns",
    "turns past no lash",
    (Kind::Angle, UsualUnits::of("turns", "turns")),
    (0.0, 5.0 * std::f64::consts::TAU),
    "How far the nut is turned down after the pushrod's play is gone.",
);
static WANTED: Input = Input::gap(
    "wanted-preload",
    "preload you want",
    (0.0, 0.006),
    "From the lifter's sheet, to see how far to turn.",
)
.optional();

/// Preload of a stud rocker by the turns of its nut.
pub static ROCKER_TURNS: Stack = Stack {
    id: "rocker-turns",
    title: "Preload by turns of the rocker nut",
    terms: &[
        Term::needed(&PITCH),
        Term::needed(&TURNS),
        Term::needed(&ROCKER_RATIO),
    ],
    result: &PRELOAD,
    formula: Formula::Smooth(Smooth {
        value: turned::<f64>,
        with_slope: turned::<Dual64>,
    }),
    proof: "An indicator on the pushrod's cup while the nut is turned, with a lifter that holds.",
};

fn turned<N: Number>(terms: &[N]) -> N {
    let &[pitch, turns, ratio] = terms else {
        return N::from(f64::NAN);
    };
    pitch * turns / std::f64::consts::TAU * (ratio.recip() + 1.0)
}

/// Turns of the rocker nut as a quick check.
pub static ROCKER_TURNS_CHECK: Calculation = Calculation {
    id: "rocker-turns",
    title: "Preload by turns of the rocker nut",
    purpose: "How far a turn of the nut presses the plunger of a hydraulic lifter with a rocker on a stud.",
    inputs: &[PITCH, TURNS, ROCKER_RATIO, WANTED],
    outputs: &[
        PRELOAD,
        Output::of(
            "turns-for-preload",
            "turns for the preload you want",
            (Kind::Angle, UsualUnits::of("turns", "turns")),
        ),
    ],
    workings: &[
        "preload = pitch × turns × (1 + 1/ratio) = {pitch} × {turns} × (1 + 1/{rocker-ratio}) = {preload}",
        "for the preload you want: {turns-for-preload}",
    ],
    provenance: Provenance::Derivation(
        "the pivot goes down by the pitch, the valve's tip stays, so the lifter's end goes down by more than the pitch",
    ),
    cautions: &[
        "The valve's spring has to hold the tip still: this counts from no lash, on the heel of the cam.",
        "Half a turn is more than most think: of 24 threads at a ratio of 1.5 it is 0.035 in (0.88 mm).",
    ],
    run: |given| {
        Answer::new()
            .with(PRELOAD.id, estimate(&ROCKER_TURNS, given)?)
            .with_solved("turns-for-preload", &ROCKER_TURNS, given, &TURNS, &WANTED)
    },
};

#[cfg(test)]
mod tests {
    use super::super::answering::INCH;
    use super::*;
    use crate::measure::Estimate;

    fn before() -> Given {
        Given::new()
            .with("preload-before", Estimate::exact(0.030 * INCH))
            .with("rocker-ratio", Estimate::exact(1.5))
    }

    fn change(given: &Given) -> f64 {
        PRELOAD_AFTER
            .answer(given)
            .unwrap()
            .get("change")
            .unwrap()
            .value()
            / INCH
    }

    // Worked by hand (common practice): head −0.010 and gasket 0.039 to 0.028
    // add 0.021; a tip raised 0.015 at a ratio of 1.5 adds 0.010.
    #[test]
    fn the_worked_changes_come_out() {
        let milled = before()
            .with("head-cut", Estimate::exact(0.010 * INCH))
            .with("gasket-thinner", Estimate::exact(0.011 * INCH));
        assert!((change(&milled) - 0.021).abs() < 1e-9);
        let sunk = before().with("valve-sunk", Estimate::exact(0.015 * INCH));
        assert!((change(&sunk) - 0.010).abs() < 1e-9);
    }

    // Sinking the valve and grinding its tip do opposite things.
    #[test]
    fn a_sunk_valve_and_a_ground_tip_are_opposites() {
        let sunk = change(&before().with("valve-sunk", Estimate::exact(0.012 * INCH)));
        let ground = change(&before().with("tip-ground", Estimate::exact(0.012 * INCH)));
        assert!(sunk > 0.0 && ground < 0.0);
        assert!((sunk + ground).abs() < 1e-12);
    }

    #[test]
    fn a_smaller_base_circle_takes_preload_and_a_longer_pushrod_gives_it_back() {
        let reground = before().with("base-circle-smaller", Estimate::exact(0.040 * INCH));
        let answer = PRELOAD_AFTER.answer(&reground).unwrap();
        assert_eq!(answer.findings().first().unwrap().gravity, Gravity::Stop);
        let longer = reground.with("pushrod-longer", Estimate::exact(0.040 * INCH));
        assert!(change(&longer).abs() < 1e-9);
    }

    // Worked by hand (common practice): 24 threads at 1.5 give 0.069 a turn.
    #[test]
    fn half_a_turn_is_not_twenty_thou() {
        let turn = std::f64::consts::TAU;
        let given = Given::new()
            .with("pitch", Estimate::exact(INCH / 24.0))
            .with("turns", Estimate::exact(turn))
            .with("rocker-ratio", Estimate::exact(1.5))
            .with("wanted-preload", Estimate::exact(0.030 * INCH));
        let answer = ROCKER_TURNS_CHECK.answer(&given).unwrap();
        let preload = answer.get("preload").unwrap().value() / INCH;
        assert!((preload - 0.0694).abs() < 1e-4);
        let turns = answer.get("turns-for-preload").unwrap().value() / turn;
        assert!((turns - 0.432).abs() < 1e-3);
    }
}
