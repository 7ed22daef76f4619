//! Running in: how fast and how long, by what rides on the cam.
//!
//! Minutes in the band add up across interruptions; a run-in that was stopped is
//! gone on with, not begun again.

use std::f64::consts::PI;

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    Takes, UsualUnits,
};
use crate::fit::readings::same_count;
use crate::measure::Estimate;
use crate::oil::inputs::{COUNT, TURNING};
use crate::quantity::Kind;

const TURN: f64 = PI / 30.0;

/// What rides on the cam.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum ValveGear {
    /// Flat or slightly domed tappets, which wear in on their lobes.
    FlatTappet,
    /// Rollers.
    Roller,
    /// An overhead cam on buckets or followers that slide.
    OverheadSliding,
}

/// A run-in. Speeds in rad/s.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Schedule {
    /// Between these speeds, changing all the while.
    pub band: (f64, f64),
    /// So many minutes in it.
    pub minutes: f64,
    /// Whether idling before that does harm.
    pub never_idle: bool,
    /// A note often enough: every so many minutes.
    pub log_every: f64,
}

impl ValveGear {
    /// Its run-in. Common practice; the cam maker's sheet wins.
    #[must_use]
    pub const fn schedule(self) -> Schedule {
        match self {
            Self::FlatTappet => Schedule {
                band: (1800.0 * TURN, 2500.0 * TURN),
                minutes: 20.0,
                never_idle: true,
                log_every: 2.0,
            },
            Self::Roller => Schedule {
                band: (1200.0 * TURN, 1500.0 * TURN),
                minutes: 20.0,
                never_idle: false,
                log_every: 2.0,
            },
            Self::OverheadSliding => Schedule {
                band: (1500.0 * TURN, 2000.0 * TURN),
                minutes: 20.0,
                never_idle: true,
                log_every: 2.0,
            },
        }
    }
}

/// A stretch of running: speed in rad/s and minutes.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Stretch {
    /// Speed.
    pub speed: f64,
    /// How long.
    pub minutes: f64,
}

/// What is done of a run-in.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Progress {
    /// Minutes in the band.
    pub in_band: f64,
    /// Minutes below it.
    pub below: f64,
    /// Minutes above it.
    pub above: f64,
    /// Minutes in the band still to go.
    pub to_go: f64,
}

impl Schedule {
    /// Adds up stretches of running, in whatever order and however interrupted.
    #[must_use]
    pub fn progress(&self, stretches: &[Stretch]) -> Progress {
        let (mut in_band, mut below, mut above) = (0.0, 0.0, 0.0);
        // A speed on the band's edge must not fall out by a rounding.
        let slack = 1e-9 * self.band.1;
        for stretch in stretches {
            if stretch.speed < self.band.0 - slack {
                below += stretch.minutes;
            } else if stretch.speed > self.band.1 + slack {
                above += stretch.minutes;
            } else {
                in_band += stretch.minutes;
            }
        }
        Progress {
            in_band,
            below,
            above,
            to_go: (self.minutes - in_band).max(0.0),
        }
    }
}

static GEAR: Input = Input::one_of(
    "gear",
    "on the cam rides",
    &[
        Choice {
            id: "flat",
            label: "a flat tappet",
        },
        Choice {
            id: "roller",
            label: "a roller",
        },
        Choice {
            id: "overhead",
            label: "a bucket or follower under an overhead cam",
        },
    ],
    "Look at what touches the lobe.",
);
static SPEEDS: Input = Input::of(
    "speeds",
    "speed of each stretch",
    (Kind::RotationalSpeed, UsualUnits::of("rpm", "rpm")),
    (10.0, 1200.0),
    "As noted, a line each.",
)
.taking(Takes::Any);
static MINUTES: Input = Input::of(
    "minutes",
    "minutes of each stretch",
    (Kind::Count, UsualUnits::NONE),
    (0.0, 600.0),
    "As many as there are speeds.",
)
.taking(Takes::Any);

/// Run-in.
pub static RUN_IN: Calculation = Calculation {
    id: "run-in",
    title: "Running in",
    purpose: "How fast, how long, and how much of it is still to go.",
    inputs: &[GEAR, SPEEDS, MINUTES],
    outputs: &[
        Output::of("from", "from", TURNING),
        Output::of("to", "to", TURNING),
        Output::of("done", "minutes done in the band", COUNT),
        Output::of("to-go", "minutes to go", COUNT),
        Output::of("below", "minutes below the band", COUNT),
        Output::of("above", "minutes above it", COUNT),
    ],
    workings: &[
        "between {from} and {to}, changing all the while",
        "minutes in the band add up across stops: {done} done, {to-go} to go; {below} below, {above} above it",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Fire extinguisher in reach; doors open, exhaust gas kills; hands, hair and sleeves away from belts and fan; hot oil and coolant burn.",
        "Stop at once: pressure under 10 psi or suddenly a third less, coolant over 110 °C, a knock that follows the speed, any fuel leak, oil and water mixed. Stopping is always right.",
        "The cam maker's sheet wins.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let gear = match given.choice(&GEAR)?.id {
        "flat" => ValveGear::FlatTappet,
        "roller" => ValveGear::Roller,
        _ => ValveGear::OverheadSliding,
    };
    same_count(given, &SPEEDS, &MINUTES)?;
    let schedule = gear.schedule();
    let stretches: Vec<Stretch> = given
        .several(SPEEDS.id)
        .iter()
        .zip(given.several(MINUTES.id))
        .map(|(speed, minutes)| Stretch {
            speed: speed.value(),
            minutes: minutes.value(),
        })
        .collect();
    let progress = schedule.progress(&stretches);
    let exact = Estimate::exact;
    let mut answer = Answer::new()
        .with("from", exact(schedule.band.0))
        .with("to", exact(schedule.band.1))
        .with("done", exact(progress.in_band))
        .with("to-go", exact(progress.to_go))
        .with("below", exact(progress.below))
        .with("above", exact(progress.above));
    if schedule.never_idle {
        answer = answer.finding(
            Gravity::Note,
            "Straight to the band when it fires, and no idling before the minutes are done: slow lobes are wiped lobes.",
        );
        if progress.below > 1.0 && progress.to_go > 0.0 {
            answer = answer.finding(
                Gravity::Caution,
                "It ran below the band for more than a minute: listen for one valve that grows louder, and check lash before going on.",
            );
        }
    }
    Ok(answer)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, refused, says, value, worked};

    #[test]
    fn minutes_add_up_across_stops() {
        let asked = given(1.0, &[("gear", &[0.0]), ("minutes", &[6.0, 5.0, 3.0])]);
        let asked = [2000.0, 1800.0, 800.0].iter().fold(asked, |asked, turns| {
            asked.with("speeds", Estimate::exact(turns * TURN))
        });
        let answer = worked(&RUN_IN, &asked);
        assert_eq!(value(&answer, "done", 1.0), 11.0);
        assert_eq!(value(&answer, "to-go", 1.0), 9.0);
        assert_eq!(value(&answer, "below", 1.0), 3.0);
        assert!(says(&answer, "below the band"));
    }

    #[test]
    fn nothing_run_yet_and_lists_that_do_not_match() {
        let answer = worked(&RUN_IN, &given(1.0, &[("gear", &[1.0])]));
        assert_eq!(value(&answer, "to-go", 1.0), 20.0);
        let odd = given(
            1.0,
            &[
                ("gear", &[1.0]),
                ("speeds", &[150.0]),
                ("minutes", &[1.0, 2.0]),
            ],
        );
        assert_eq!(refused(&RUN_IN, &odd), Some("minutes"));
    }
}
