//! The rounds of the sample: what each measure reads, and its invented limits.

use build_journal::fact::{Body, LimitsOrigin, LimitsSet};
use build_plan::{At, Direction, Engine, Place, measure};

use super::bench::{Pen, Tool};

/// One round: what it reads, by how much its readings differ, and its limits.
pub struct Round {
    pub measure: &'static str,
    tool: Tool,
    unit: &'static str,
    nominal: f64,
    step: f64,
    digits: usize,
    /// The least and the greatest that the invented sheet allows.
    limits: Option<(Option<&'static str>, Option<&'static str>)>,
    /// Where in the invented sheet they stand.
    note: &'static str,
}

macro_rules! rounds {
    ($($measure:literal $tool:ident $unit:literal $nominal:literal $step:literal $digits:literal, $low:expr, $high:expr, $note:literal;)+) => {
        &[$(Round {
            measure: $measure,
            tool: Tool::$tool,
            unit: $unit,
            nominal: $nominal,
            step: $step,
            digits: $digits,
            limits: limits($low, $high),
            note: $note,
        },)+]
    };
}

const NONE: Option<&str> = None;

const fn limits(
    low: Option<&'static str>,
    high: Option<&'static str>,
) -> Option<(Option<&'static str>, Option<&'static str>)> {
    match (low, high) {
        (None, None) => None,
        both => Some(both),
    }
}

/// The rounds in the order they were gone. All numbers are invented.
pub static ROUNDS: &[Round] = rounds! {
    "main-journal-diameter" SmallMicrometer "in" 2.4483 0.0001 4, NONE, NONE, "";
    "main-housing-bore" SmallBoreGauge "in" 2.6175 0.0001 4, Some("2.6168"), Some("2.6182"), "engine sheet, page 12";
    "main-bearing-bore" SmallBoreGauge "in" 2.4507 0.0001 4, NONE, NONE, "";
    "crank-bow" TestIndicator "thou" 0.5 0.5 1, NONE, Some("2.5"), "engine sheet, page 12";
    "crank-end-play" Dial "thou" 6.0 0.0 1, Some("3"), Some("9"), "engine sheet, page 13";
    "rod-journal-diameter" SmallMicrometer "in" 2.0988 0.0001 4, NONE, NONE, "";
    "big-end-bore" SmallBoreGauge "in" 2.2247 0.0001 4, Some("2.2240"), Some("2.2254"), "rod sheet, page 2";
    "rod-bearing-bore" SmallBoreGauge "in" 2.1009 0.0001 4, NONE, NONE, "";
    "rod-side-clearance" Feeler "in" 0.012 0.001 3, Some("0.006"), Some("0.020"), "engine sheet, page 14";
    "piston-diameter" LargeMicrometer "in" 3.4970 0.0001 4, NONE, NONE, "";
    "ring-side-clearance" Feeler "thou" 3.0 0.0 1, Some("1.5"), Some("5"), "ring sheet, page 1";
    "bore" LargeBoreGauge "in" 3.5010 0.0001 4, NONE, NONE, "";
    "ring-end-gap" Feeler "in" 0.016 0.001 3, Some("0.012"), Some("0.022"), "ring sheet, page 1";
    "liner-stand-out" Depth "thou" 4.5 0.3 1, Some("2.5"), Some("6.5"), "engine sheet, page 15";
    "deck-flatness" Straightedge "thou" 1.0 0.5 1, NONE, Some("4"), "engine sheet, page 15";
    "head-flatness" Straightedge "thou" 1.0 0.5 1, NONE, Some("4"), "engine sheet, page 18";
    "chamber-volume" Burette "cc" 62.0 0.2 1, Some("60.5"), Some("63.5"), "engine sheet, page 18";
    "cam-bearing-clearance" TestIndicator "thou" 2.5 0.5 1, Some("1"), Some("4.5"), "engine sheet, page 16";
    "cam-end-float" Dial "thou" 5.0 0.0 1, Some("2"), Some("9"), "engine sheet, page 16";
    "cam-run-out" TestIndicator "thou" 0.5 0.0 1, NONE, Some("2"), "engine sheet, page 16";
    "lobe-lift" Dial "in" 0.275 0.001 3, Some("0.270"), Some("0.280"), "cam sheet, page 1";
    "timing-gear-backlash" Dial "thou" 4.0 0.0 1, Some("1.5"), Some("7"), "engine sheet, page 17";
    "stem-guide-intake" TestIndicator "thou" 1.5 0.5 1, Some("0.5"), Some("3.5"), "engine sheet, page 19";
    "stem-guide-exhaust" TestIndicator "thou" 2.0 0.5 1, Some("1"), Some("4"), "engine sheet, page 19";
    "seat-run-out" TestIndicator "thou" 0.5 0.5 1, NONE, Some("2.5"), "engine sheet, page 19";
    "installed-height" Caliper "in" 1.640 0.001 3, Some("1.630"), Some("1.650"), "engine sheet, page 20";
    "spring-seat-load" SpringTester "lbf" 60.0 1.0 0, Some("51"), Some("69"), "spring sheet, page 1";
    "spring-open-load" SpringTester "lbf" 140.0 2.0 0, Some("120"), Some("160"), "spring sheet, page 1";
    "pump-end-clearance" Feeler "thou" 3.0 0.0 1, Some("1.5"), Some("5"), "engine sheet, page 22";
    "pump-gear-to-body" Feeler "thou" 4.0 0.0 1, Some("2"), Some("6"), "engine sheet, page 22";
    "pump-cover-wear" Feeler "thou" 1.0 0.0 1, NONE, Some("3"), "engine sheet, page 22";
    "pickup-to-pan" Clay "in" 0.375 0.005 3, Some("0.25"), Some("0.50"), "engine sheet, page 22";
    "flywheel-run-out" Dial "thou" 3.0 0.0 1, NONE, Some("8"), "engine sheet, page 23";
};

/// A line of a sheet: what, at least, at most, in which unit, and where it stands.
type Line = (
    &'static str,
    Option<&'static str>,
    Option<&'static str>,
    &'static str,
    &'static str,
);

/// What has limits and is worked out from the rounds.
const WORKED_OUT: &[Line] = &[
    (
        "main-oil-clearance",
        Some("1.8"),
        Some("3.2"),
        "thou",
        "engine sheet, page 12",
    ),
    (
        "rod-oil-clearance",
        Some("1.2"),
        Some("3.0"),
        "thou",
        "engine sheet, page 14",
    ),
    (
        "main-journal-taper",
        None,
        Some("1"),
        "thou",
        "engine sheet, page 12",
    ),
    (
        "main-journal-out-of-round",
        None,
        Some("1"),
        "thou",
        "engine sheet, page 12",
    ),
    (
        "rod-journal-taper",
        None,
        Some("1"),
        "thou",
        "engine sheet, page 14",
    ),
    (
        "rod-journal-out-of-round",
        None,
        Some("1"),
        "thou",
        "engine sheet, page 14",
    ),
    (
        "big-end-out-of-round",
        None,
        Some("1"),
        "thou",
        "rod sheet, page 2",
    ),
    (
        "bore-taper",
        None,
        Some("1"),
        "thou",
        "engine sheet, page 15",
    ),
    (
        "bore-out-of-round",
        None,
        Some("1"),
        "thou",
        "engine sheet, page 15",
    ),
    (
        "piston-to-wall",
        Some("3"),
        Some("5.5"),
        "thou",
        "piston sheet, page 1",
    ),
    (
        "liner-step",
        None,
        Some("3"),
        "thou",
        "engine sheet, page 15",
    ),
];

/// Types every limit off the invented sheets.
pub fn type_the_limits(pen: &mut Pen) {
    let own = ROUNDS.iter().filter_map(|round| {
        let (low, high) = round.limits?;
        Some((round.measure, low, high, round.unit, round.note))
    });
    for (measure, low, high, unit, note) in own.chain(WORKED_OUT.iter().copied()) {
        pen.write(Body::LimitsSet(LimitsSet {
            measure: measure.to_owned(),
            place: None,
            low: low.map(str::to_owned),
            high: high.map(str::to_owned),
            unit: unit.to_owned(),
            origin: if note.starts_with("engine") {
                LimitsOrigin::Sheet
            } else {
                LimitsOrigin::PartSheet
            },
            origin_note: note.to_owned(),
            replaces: Vec::new(),
        }));
    }
}

impl Round {
    /// Goes the round.
    pub fn go(&self, pen: &mut Pen, engine: &Engine) {
        let known = measure(self.measure).unwrap();
        let places = known.places(engine);
        assert!(!places.is_empty(), "{}", self.measure);
        let mut nth = 0;
        for place in places {
            if self.is_left_out(place) {
                continue;
            }
            // Up a step, down a step: as parts differ, and hands.
            let steps = [0.0, 0.0, 1.0, 0.0, 0.0, 0.0, -1.0, 0.0, 1.0][nth % 9];
            nth += 1;
            let value = self.nominal + steps * self.step + self.own(place);
            let typed = format!("{value:.*}", self.digits);
            pen.read(self.measure, place, typed, self.unit, self.tool);
        }
    }

    /// The ring gaps of cylinder 3 wait until it is measured again.
    fn is_left_out(&self, place: Place) -> bool {
        self.measure == "ring-end-gap" && place.at.cylinder() == Some(3)
    }

    /// What is peculiar to a place.
    fn own(&self, place: Place) -> f64 {
        match (self.measure, place.at, place.direction) {
            // Shells are thinner towards the joint on purpose.
            (
                "main-bearing-bore" | "rod-bearing-bore",
                _,
                Some(Direction::JointLeft | Direction::JointRight),
            ) => 0.0006,
            // Main 2 sits at the edge of its limits, main 4 is tight.
            ("main-bearing-bore", At::Main(2), _) => -0.0005,
            ("main-bearing-bore", At::Main(4), _) => -0.0013,
            _ => 0.0,
        }
    }
}
