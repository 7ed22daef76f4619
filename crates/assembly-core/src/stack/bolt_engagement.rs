//! Bolt in a blind hole: how deep it holds, and whether it meets the bottom.

use super::answering::{estimate, less, more};
use super::formula::{Formula, Stack, Term};
use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
};

/// Diameters of thread that a steel bolt commonly has in iron or steel. Common practice.
pub const IN_IRON: f64 = 1.25;
/// Diameters of thread that a steel bolt commonly has in aluminium. Common practice.
pub const IN_ALUMINIUM: f64 = 2.0;
/// Threads that stay free below a bolt's end. Common practice.
pub const FREE_THREADS: f64 = 2.0;

/// Length of the bolt.
pub static BOLT_LENGTH: Input = Input::size(
    "bolt-length",
    "bolt length under the head",
    (0.003, 0.6),
    "From the underside of the head to the end, point included.",
);
/// What the bolt clamps.
pub static CLAMPED: Input = Input::size(
    "clamped",
    "clamped thickness",
    (0.0005, 0.55),
    "Everything between head and mating face as it will be fitted: part, gasket compressed, washer.",
);
/// Depth of the hole.
pub static HOLE_DEPTH: Input = Input::size(
    "hole-depth",
    "usable depth of the hole",
    (0.002, 0.5),
    "A bolt of the same thread run in by hand until it meets the bottom or the end of the thread, then measured.",
)
.optional();
/// Unthreaded mouth.
pub static MOUTH: Input = Input::gap(
    "mouth",
    "mouth of the hole without thread",
    (0.0, 0.03),
    "Counterbore or chamfer at the mating face; nothing when the thread starts at the face.",
)
.optional();
/// Thread diameter.
pub static DIAMETER: Input = Input::size(
    "thread-diameter",
    "thread diameter",
    (0.002, 0.08),
    "Nominal size over the threads.",
);
/// Thread pitch.
pub static PITCH: Input = Input::gap(
    "pitch",
    "thread pitch",
    (0.000_2, 0.006),
    "With a pitch gauge; 20 threads an inch are 0.050 in.",
);
static MATERIAL: Input = Input::one_of(
    "material",
    "material with the thread",
    &[
        Choice {
            id: "iron",
            label: "iron or steel",
        },
        Choice {
            id: "aluminium",
            label: "aluminium",
        },
    ],
    "A magnet holds on iron and steel.",
);

static ENGAGED: Output = Output::size("engagement", "thread that holds");
static BELOW: Output = Output::size("bottom-room", "room below the bolt's end");

/// Length of thread that holds.
pub static BOLT_ENGAGEMENT: Stack = Stack {
    id: "bolt-engagement",
    title: "Thread that holds",
    terms: &[
        Term::needed(&BOLT_LENGTH),
        Term::needed(&CLAMPED),
        Term::if_fitted(&MOUTH),
    ],
    result: &ENGAGED,
    formula: Formula::Sum(&[1.0, -1.0, -1.0]),
    proof: "Turns counted by hand from the first catch to the seat.",
};

/// Room below the bolt's end.
pub static BOLT_BOTTOM_ROOM: Stack = Stack {
    id: "bolt-bottom-room",
    title: "Room below the bolt's end",
    terms: &[
        Term::needed(&HOLE_DEPTH),
        Term::needed(&CLAMPED),
        Term::needed(&BOLT_LENGTH),
    ],
    result: &BELOW,
    formula: Formula::Sum(&[1.0, 1.0, -1.0]),
    proof: "The bolt run in by hand without the part: it has to go deeper than it will with it.",
};

/// Bolt in a hole as a quick check.
pub static BOLT_CHECK: Calculation = Calculation {
    id: "bolt-engagement",
    title: "Bolt length and hole depth",
    purpose: "Whether a bolt holds in enough thread and clamps before it meets the bottom of its hole.",
    inputs: &[
        BOLT_LENGTH,
        CLAMPED,
        HOLE_DEPTH,
        MOUTH,
        DIAMETER,
        PITCH,
        MATERIAL,
    ],
    outputs: &[
        ENGAGED,
        Output::ratio("diameters", "thread that holds, in diameters"),
        BELOW,
        Output::ratio("threads-free", "threads free below the end"),
    ],
    workings: &[
        "thread that holds = bolt − clamped − mouth = {bolt-length} − {clamped} − {mouth} = {engagement}",
        "in diameters = {engagement} / {thread-diameter} = {diameters}",
        "room below = hole − (bolt − clamped) = {hole-depth} − ({bolt-length} − {clamped}) = {bottom-room}",
        "threads free = {bottom-room} / {pitch} = {threads-free}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "A bolt that meets the bottom feels tight and clamps nothing; a long one can break into a cylinder or jam the cam wheel.",
        "Oil in a blind hole splits the casting when the bolt goes in: blow it dry with eye guard on.",
        "Keep every bolt with its hole: three lengths in one cover are usual.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let engaged = estimate(&BOLT_ENGAGEMENT, given)?;
    let pitch = given.one(&PITCH)?;
    let diameter = given.one(&DIAMETER)?;
    if more(pitch.value(), diameter.value() * 0.5) {
        return Err(CalculationError::not_possible(
            &PITCH,
            "it is more than half of the thread's diameter. Type the distance from one thread to the next.",
        ));
    }
    if engaged.value() <= 0.0 {
        return Err(CalculationError::not_possible(
            &BOLT_LENGTH,
            "the bolt does not reach the thread through what it clamps. It has to be longer, or the clamped thickness is wrong.",
        ));
    }
    let diameters = &engaged / diameter;
    let (least, words) = if given.choice(&MATERIAL)?.id == "aluminium" {
        (IN_ALUMINIUM, "2 diameters in aluminium")
    } else {
        (IN_IRON, "1 1/4 diameters in iron or steel")
    };
    let mut answer = Answer::new();
    if less(diameters.value(), 1.0) {
        answer = answer.finding(
            Gravity::Stop,
            format!("Less than one diameter of thread holds; common practice is {words}. The thread would tear out."),
        );
    } else if less(diameters.value(), least) {
        answer = answer.finding(
            Gravity::Caution,
            format!("Less thread holds than the common {words}. The maker's sheet wins."),
        );
    }
    if given.optional(HOLE_DEPTH.id).is_some() {
        let below = estimate(&BOLT_BOTTOM_ROOM, given)?;
        let threads = &below / pitch;
        if below.value() <= 0.0 {
            answer = answer.finding(
                Gravity::Stop,
                "The bolt meets the bottom of its hole before it clamps.",
            );
        } else if less(threads.value(), FREE_THREADS) {
            answer = answer.finding(
                Gravity::Caution,
                "Fewer than two threads stay free below the bolt's end: a thinner washer or gasket would let it meet the bottom.",
            );
        }
        answer = answer.with(BELOW.id, below).with("threads-free", threads);
    } else {
        answer = answer.finding(
            Gravity::Note,
            "Measure the hole's depth too if it is blind.",
        );
    }
    Ok(answer
        .with(ENGAGED.id, engaged)
        .with("diameters", diameters))
}

#[cfg(test)]
mod tests {
    use super::super::answering::INCH;
    use super::*;
    use crate::measure::Estimate;

    fn bolt(length: f64, material: f64) -> Given {
        Given::new()
            .with("bolt-length", Estimate::exact(length * INCH))
            .with("clamped", Estimate::exact(0.500 * INCH))
            .with("hole-depth", Estimate::exact(1.000 * INCH))
            .with("thread-diameter", Estimate::exact(0.375 * INCH))
            .with("pitch", Estimate::exact(INCH / 16.0))
            .with("material", Estimate::exact(material))
    }

    fn gravities(given: &Given) -> Vec<Gravity> {
        let answer = BOLT_CHECK.answer(given).unwrap();
        answer.findings().iter().map(|one| one.gravity).collect()
    }

    #[test]
    fn a_long_bolt_that_meets_the_bottom_is_a_stop() {
        assert!(gravities(&bolt(1.250, 0.0)).is_empty());
        assert_eq!(gravities(&bolt(1.500, 0.0)), [Gravity::Stop]);
        assert_eq!(gravities(&bolt(1.450, 0.0)), [Gravity::Caution]);
    }

    #[test]
    fn aluminium_wants_more_thread_than_iron() {
        assert!(gravities(&bolt(1.000, 0.0)).is_empty());
        assert_eq!(gravities(&bolt(1.000, 1.0)), [Gravity::Caution]);
        assert_eq!(gravities(&bolt(0.800, 0.0)), [Gravity::Stop]);
    }

    #[test]
    fn threads_and_diameters_are_counted() {
        let answer = BOLT_CHECK.answer(&bolt(1.250, 0.0)).unwrap();
        assert!((answer.get("diameters").unwrap().value() - 2.0).abs() < 1e-9);
        assert!((answer.get("threads-free").unwrap().value() - 4.0).abs() < 1e-9);
    }

    #[test]
    fn a_bolt_that_does_not_reach_is_named() {
        let error = BOLT_CHECK.answer(&bolt(0.450, 0.0)).unwrap_err();
        assert_eq!(error.field(), Some("bolt-length"));
    }
}
