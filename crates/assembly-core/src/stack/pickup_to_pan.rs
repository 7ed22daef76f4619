//! Oil pickup to pan floor: too near and it starves or sucks up the sediment,
//! too far and it draws air in a turn.

use num_dual::Dual64;
use uom::si::f64::Length;

use super::answering::{INCH, estimate, less, more};
use super::formula::{Formula, Number, Smooth, Stack, Term};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::measure::{Estimate, Measured};
use crate::quantity::Kind;

/// The least gap that is commonly set: a quarter of an inch. The pump's sheet
/// wins. Common practice.
pub const COMMONLY_LEAST: f64 = 0.25 * INCH;
/// The greatest gap that is commonly set, and one maker's advice: half an inch.
/// The pump's sheet wins. Common practice.
pub const COMMONLY_MOST: f64 = 0.5 * INCH;
/// A pickup nearer to the floor than this starves. Common practice.
pub const STARVES_BELOW: f64 = 0.19 * INCH;
/// The opening around the foot has to be at least this many times the tube's
/// area. Common practice.
pub const LEAST_CURTAIN_RATIO: f64 = 3.0;

const AREA: (Kind, UsualUnits) = (Kind::Area, UsualUnits::of("in²", "mm²"));

/// Depth of the pan.
pub static PAN_DEPTH: Input = Input::size(
    "pan-depth",
    "pan depth inside",
    (0.02, 0.5),
    "Lay a straightedge across the pan's rail and measure down to the floor where the pickup will sit.",
);
/// Compressed gasket of the pan.
pub static GASKET: Input = Input::gap(
    "pan-gasket",
    "pan gasket, compressed",
    (0.0, 0.01),
    "Measure an old gasket or one squeezed under its bolts; nothing for sealant alone.",
)
.optional();
/// Windage tray between pan and block.
pub static TRAY: Input = Input::gap(
    "tray",
    "tray clamped under the rail",
    (0.0, 0.01),
    "Thickness of a windage tray, with its second gasket, if one is clamped between block and pan.",
)
.optional();
/// How far the foot hangs below the block's rail.
pub static PICKUP_DEPTH: Input = Input::size(
    "pickup-depth",
    "pickup foot below the block's rail",
    (0.01, 0.5),
    "With the pump torqued down on its own gasket, measure from the block's rail to the lowest point of the foot.",
);
/// Circumference of the foot.
pub static FOOT_PERIMETER: Input = Input::size(
    "foot-perimeter",
    "length around the pickup foot",
    (0.03, 1.5),
    "Lay a string once around the edge of the foot where the oil goes in.",
)
.optional();
/// Bore of the tube.
pub static TUBE_BORE: Input = Input::size(
    "tube-bore",
    "bore of the pickup tube",
    (0.003, 0.1),
    "Measure inside the tube, or outside and take two walls off.",
)
.optional();
static WANTED: Input = Input::size(
    "wanted-gap",
    "gap you want",
    (0.0, 0.1),
    "From the pump's sheet, to see how far down the foot then has to hang.",
)
.optional();

static GAP: Output = Output::size("gap", "pickup to pan floor");
static RATIO: Output = Output::ratio("curtain-ratio", "opening around the foot against the tube");

/// Pickup to pan floor.
pub static PICKUP_TO_PAN: Stack = Stack {
    id: "pickup-to-pan",
    title: "Pickup to pan",
    terms: &[
        Term::needed(&PAN_DEPTH),
        Term::if_fitted(&GASKET),
        Term::if_fitted(&TRAY),
        Term::needed(&PICKUP_DEPTH),
    ],
    result: &GAP,
    formula: Formula::Sum(&[1.0, 1.0, 1.0, -1.0]),
    proof: PROOF,
};

/// The curtain around the foot against the tube's area.
pub static CURTAIN_RATIO: Stack = Stack {
    id: "pickup-curtain-ratio",
    title: "Opening around the pickup foot",
    terms: &[
        Term::needed(&PAN_DEPTH),
        Term::if_fitted(&GASKET),
        Term::if_fitted(&TRAY),
        Term::needed(&PICKUP_DEPTH),
        Term::needed(&FOOT_PERIMETER),
        Term::needed(&TUBE_BORE),
    ],
    result: &RATIO,
    formula: Formula::Smooth(Smooth {
        value: curtain_ratio::<f64>,
        with_slope: curtain_ratio::<Dual64>,
    }),
    proof: PROOF,
};

const PROOF: &str = "A ball of clay on the foot, the pan on with its real gasket and six bolts, off again, and the clay measured at three points. They also tell whether the foot is parallel to the floor.";

fn curtain_ratio<N: Number>(terms: &[N]) -> N {
    let &[pan, gasket, tray, pickup, perimeter, tube] = terms else {
        return N::from(f64::NAN);
    };
    perimeter * (pan + gasket + tray - pickup) / (tube * tube * std::f64::consts::FRAC_PI_4)
}

/// The gap between pickup foot and pan floor: pan depth, gasket and tray
/// together, less how far the foot hangs below the rail.
///
/// ```
/// use assembly_core::measure::Measured;
/// use assembly_core::quantity::Si;
/// use assembly_core::stack::pickup_to_pan::pickup_to_pan;
/// use uom::si::f64::Length;
///
/// let inch = |size: f64| Measured::exact(Length::from_si(size * 0.0254));
/// let gap = pickup_to_pan(&inch(7.375), &inch(0.0), &inch(0.0), &inch(7.0));
/// assert!((gap.value().to_si() - 0.375 * 0.0254).abs() < 1e-12);
/// ```
#[must_use]
pub fn pickup_to_pan(
    pan_depth: &Measured<Length>,
    gasket: &Measured<Length>,
    tray: &Measured<Length>,
    pickup_depth: &Measured<Length>,
) -> Measured<Length> {
    pan_depth.clone() + gasket.clone() + tray.clone() - pickup_depth.clone()
}

/// Pickup to pan as a quick check.
pub static PICKUP_CHECK: Calculation = Calculation {
    id: "pickup-to-pan",
    title: "Pickup to pan",
    purpose: "How far the oil pickup hangs above the pan floor, and whether oil can get under it.",
    inputs: &[
        PAN_DEPTH,
        GASKET,
        TRAY,
        PICKUP_DEPTH,
        FOOT_PERIMETER,
        TUBE_BORE,
        WANTED,
    ],
    outputs: &[
        GAP,
        Output::of("curtain-area", "opening around the foot", AREA),
        Output::of("tube-area", "area of the tube", AREA),
        RATIO,
        Output::size(
            "pickup-depth-for-gap",
            "foot below the rail for the gap you want",
        ),
    ],
    workings: &[
        "gap = pan depth + gasket + tray − foot below rail = {pan-depth} + {pan-gasket} + {tray} − {pickup-depth} = {gap}",
        "opening around the foot = length around it × gap = {foot-perimeter} × {gap} = {curtain-area}",
        "area of the tube = π/4 × {tube-bore}² = {tube-area}",
        "opening against tube = {curtain-area} / {tube-area} = {curtain-ratio}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "The pump's own sheet wins over any common figure. Then prove it with clay, the real gasket and six bolts.",
        "Take the relief spring out before welding or brazing a pickup or its brace, and check that the pump's body is still square.",
        "Whenever pump, pickup, pan, tray or gasket is changed: measure again, and prime again.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let gap = estimate(&PICKUP_TO_PAN, given)?;
    let mut answer = Answer::new().with(GAP.id, gap.clone()).with_solved(
        "pickup-depth-for-gap",
        &PICKUP_TO_PAN,
        given,
        &PICKUP_DEPTH,
        &WANTED,
    )?;
    answer = gap_finding(answer, gap.value());
    if gap.value() <= 0.0 {
        return Ok(answer);
    }
    let perimeter = given.optional(FOOT_PERIMETER.id);
    let tube = given.optional(TUBE_BORE.id);
    answer = answer
        .with_optional("curtain-area", perimeter.map(|around| around * &gap))
        .with_optional("tube-area", tube.map(area));
    if perimeter.is_some() && tube.is_some() {
        let ratio = estimate(&CURTAIN_RATIO, given)?;
        answer = ratio_finding(answer, ratio.value()).with(RATIO.id, ratio);
    }
    Ok(answer)
}

fn area(bore: &Estimate) -> Estimate {
    bore * bore * std::f64::consts::FRAC_PI_4
}

fn gap_finding(answer: Answer, gap: f64) -> Answer {
    if gap <= 0.0 {
        answer.finding(
            Gravity::Stop,
            "The foot would stand on the pan floor: the pan does not go on, or its floor seals the pickup off.",
        )
    } else if less(gap, STARVES_BELOW) {
        answer.finding(
            Gravity::Caution,
            "Nearer than about 3/16 in (4.8 mm) the pump starves and takes up sediment. Common practice is 1/4 to 1/2 in (6 to 13 mm); the pump's sheet wins.",
        )
    } else if less(gap, COMMONLY_LEAST) {
        answer.finding(
            Gravity::Caution,
            "Less than the common 1/4 in (6 mm): see what the pump's sheet says.",
        )
    } else if more(gap, COMMONLY_MOST) {
        answer.finding(
            Gravity::Caution,
            "More than the common 1/2 in (13 mm): the pickup may draw air when braking or turning. See what the pump's sheet says.",
        )
    } else {
        answer.finding(
            Gravity::Note,
            "Within the common 1/4 to 1/2 in (6 to 13 mm). The pump's sheet wins.",
        )
    }
}

fn ratio_finding(answer: Answer, ratio: f64) -> Answer {
    if less(ratio, 1.0) {
        answer.finding(
            Gravity::Stop,
            format!("The opening around the foot is only {ratio:.1} times the tube: the pump cannot fill."),
        )
    } else if less(ratio, LEAST_CURTAIN_RATIO) {
        answer.finding(
            Gravity::Caution,
            format!("The opening around the foot is {ratio:.1} times the tube. Commonly it is at least 3 times: lift the pickup or use a larger foot."),
        )
    } else {
        answer
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn given(pan: f64, pickup: f64) -> Given {
        Given::new()
            .with("pan-depth", Estimate::exact(pan * INCH))
            .with("pickup-depth", Estimate::exact(pickup * INCH))
    }

    // Worked by hand (common practice): 7 3/8 less 7 is 3/8.
    #[test]
    fn the_gap_is_pan_less_pickup() {
        let answer = PICKUP_CHECK.answer(&given(7.375, 7.0)).unwrap();
        assert!((answer.get("gap").unwrap().value() - 0.375 * INCH).abs() < 1e-12);
    }

    // Worked by hand (common practice): a 0.75 in tube has 0.44 in², 9 in around
    // at 1/4 in is 2.25 in², five times as much.
    #[test]
    fn the_curtain_is_held_against_the_tube() {
        let with_foot = given(7.25, 7.0)
            .with("foot-perimeter", Estimate::exact(9.0 * INCH))
            .with("tube-bore", Estimate::exact(0.75 * INCH));
        let answer = PICKUP_CHECK.answer(&with_foot).unwrap();
        let square_inch = INCH * INCH;
        assert!((answer.get("tube-area").unwrap().value() / square_inch - 0.4418).abs() < 1e-4);
        assert!((answer.get("curtain-area").unwrap().value() / square_inch - 2.25).abs() < 1e-9);
        assert!((answer.get("curtain-ratio").unwrap().value() - 5.093).abs() < 1e-3);
        assert!(
            answer
                .findings()
                .iter()
                .all(|one| one.gravity == Gravity::Note)
        );

        let small_foot = given(7.25, 7.0)
            .with("foot-perimeter", Estimate::exact(4.0 * INCH))
            .with("tube-bore", Estimate::exact(0.75 * INCH));
        let answer = PICKUP_CHECK.answer(&small_foot).unwrap();
        assert!(
            answer
                .findings()
                .iter()
                .any(|one| one.text.contains("2.3 times"))
        );
    }

    #[test]
    fn gasket_and_tray_lift_the_block_off_the_pan() {
        let lifted = given(7.25, 7.1)
            .with("pan-gasket", Estimate::exact(0.060 * INCH))
            .with("tray", Estimate::exact(0.040 * INCH));
        let answer = PICKUP_CHECK.answer(&lifted).unwrap();
        assert!((answer.get("gap").unwrap().value() - 0.25 * INCH).abs() < 1e-12);
    }

    #[test]
    fn a_foot_on_the_floor_is_a_stop() {
        let answer = PICKUP_CHECK.answer(&given(7.0, 7.0)).unwrap();
        assert!(
            answer
                .findings()
                .iter()
                .any(|one| one.gravity == Gravity::Stop)
        );
    }

    #[test]
    fn the_wanted_gap_tells_how_far_the_foot_hangs() {
        let wanted = given(7.375, 7.2).with("wanted-gap", Estimate::exact(0.3 * INCH));
        let answer = PICKUP_CHECK.answer(&wanted).unwrap();
        let hangs = answer.get("pickup-depth-for-gap").unwrap();
        assert!((hangs.value() - 7.075 * INCH).abs() < 1e-12);
    }
}
