//! How much oil goes in, and how much of it is burned.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    UsualUnits,
};
use crate::measure::Estimate;
use crate::oil::inputs::SHARE;
use crate::oil::running_in::first_minutes::Trend;
use crate::quantity::Kind;

const VOLUME: (Kind, UsualUnits) = (Kind::Volume, UsualUnits::of("US qt", "L"));
const LITRE: f64 = 1e-3;

static PAN: Input = Input::of(
    "pan",
    "pan to its full mark",
    VOLUME,
    (0.1 * LITRE, 60.0 * LITRE),
    "From the maker's sheet, or filled and marked on the stick before fitting.",
);
static OTHERS: Input = Input::of(
    "others",
    "filter, cooler, lines, each",
    VOLUME,
    (0.0, 20.0 * LITRE),
    "Fill them with a measuring can; nothing for a small filter already counted in the pan's figure.",
)
.taking(Takes::Any);
static LEFT_IN: Input = Input::of(
    "left-in",
    "oil already in it",
    VOLUME,
    (0.0, 20.0 * LITRE),
    "What priming put in, or what a drain leaves; nothing in a dry engine.",
)
.optional();

/// How much to fill.
pub static OIL_FILL: Calculation = Calculation {
    id: "oil-fill",
    title: "Oil to fill",
    purpose: "How much oil goes into the engine.",
    inputs: &[PAN, OTHERS, LEFT_IN],
    outputs: &[Output::of("fill", "oil to fill", VOLUME)],
    workings: &["pan {pan} + filter, cooler, lines − what is in it {left-in} = {fill}"],
    provenance: Provenance::Derivation("adding up"),
    cautions: &[
        "Run it for a minute, wait, and read the stick: the stick wins. Overfull oil is whipped to foam.",
        "Hot oil burns; run it with the doors open only, hands off belts and fan; an engine on stands can fall.",
    ],
    run: run_fill,
};

fn run_fill(given: &Given) -> Result<Answer, CalculationError> {
    let whole = given
        .several(OTHERS.id)
        .iter()
        .fold(given.one(&PAN)?.clone(), |sum, one| sum + one);
    let nothing = Estimate::exact(0.0);
    let left = given.optional(LEFT_IN.id).unwrap_or(&nothing);
    if left.value() > whole.value() {
        return Err(CalculationError::not_possible(
            &LEFT_IN,
            "more is in it than it holds: drain it and begin afresh",
        ));
    }
    Ok(Answer::new().with("fill", whole - left))
}

static ADDED: Input = Input::of(
    "added",
    "oil added to come back to the mark",
    VOLUME,
    (0.0, 20.0 * LITRE),
    "Level ground, engine warm, five minutes after stopping, both times alike.",
);
static FUEL: Input = Input::of(
    "fuel",
    "fuel burned meanwhile",
    (Kind::Volume, UsualUnits::of("L", "L")),
    (1.0 * LITRE, 5000.0 * LITRE),
    "From the pump's slips.",
);

/// From here on a run-in engine burns more than most: a half per cent of its fuel;
/// common practice.
pub const MUCH: f64 = 0.005;

/// Oil burned.
pub static OIL_USED: Calculation = Calculation {
    id: "oil-used",
    title: "Oil used",
    purpose: "How much oil the engine burns, by its fuel.",
    inputs: &[ADDED, FUEL],
    outputs: &[Output::of("share", "oil by fuel", SHARE)],
    workings: &["oil by fuel = {added} / {fuel} = {share}"],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "New rings use more for the first hours: what counts is whether it falls from one filling to the next.",
        "A level that rises is fuel or water in the oil: stop and find it.",
    ],
    run: run_used,
};

fn run_used(given: &Given) -> Result<Answer, CalculationError> {
    let share = given.one(&ADDED)? / given.one(&FUEL)?;
    let answer = Answer::new();
    let answer = if share.value() > 2.0 * MUCH {
        answer.finding(
            Gravity::Caution,
            "Over one per cent of the fuel: leaks first, then guides and seals (blue when the throttle shuts), then rings (blue all the time).",
        )
    } else if share.value() > MUCH {
        answer.finding(
            Gravity::Note,
            "More than most run-in engines use. Compare with the next filling.",
        )
    } else {
        answer
    };
    Ok(answer.with("share", share))
}

/// What the log says of the oil's level.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Level {
    /// Filled to the mark from empty, at this reading of the meter.
    Filled(f64),
    /// Brought back to the mark at this reading of the meter, with so much, m³.
    Added(f64, f64),
    /// Drained, or added to without a number: what was in it is not known.
    Drained,
}

/// Oil that went between two times at the mark.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Used {
    /// How much, m³.
    pub oil: f64,
    /// Over how much of the meter.
    pub over: f64,
}

impl Used {
    /// How much for one of the meter.
    #[must_use]
    pub fn rate(&self) -> f64 {
        self.oil / self.over
    }
}

/// What was used from one time at the mark to the next, with the place in the log
/// that ended it. A meter that stands or runs back begins afresh.
///
/// ```
/// use assembly_core::oil::running_in::consumption::{Level, used_between};
/// let log = [Level::Filled(1000.0), Level::Added(1500.0, 0.5e-3)];
/// let used = used_between(&log);
/// assert_eq!(used[0].0, 1);
/// assert_eq!(used[0].1.rate(), 1e-6);
/// ```
#[must_use]
pub fn used_between(log: &[Level]) -> Vec<(usize, Used)> {
    let mut at_mark = None;
    let mut all = Vec::new();
    for (at, level) in log.iter().enumerate() {
        match *level {
            Level::Drained => at_mark = None,
            Level::Filled(meter) => at_mark = Some(meter),
            Level::Added(meter, oil) => {
                if let Some(over) = at_mark.map(|since| meter - since)
                    && over > 0.0
                {
                    all.push((at, Used { oil, over }));
                }
                at_mark = Some(meter);
            }
        }
    }
    all
}

/// Oil used by the meter that grew by this part since the least: a leak, rings or
/// guides. Ours: new rings fall, so growing is what counts.
pub const USE_GREW: f64 = 0.5;

/// Oil used over time, for one of the meter each; `None` of fewer than two. It falls
/// while rings bed in, so it is held against the least there was.
#[must_use]
pub fn used_trend(rates: &[f64]) -> Option<Trend> {
    let least = rates.iter().copied().fold(f64::INFINITY, f64::min);
    let (first, last) = (*rates.first()?, *rates.last()?);
    (rates.len() > 1).then_some(Trend {
        change: last - first,
        alarm: last > least && last >= least * (1.0 + USE_GREW) * (1.0 - 1e-9),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, refused, says, value, worked};

    #[test]
    fn what_goes_in() {
        let asked = given(
            LITRE,
            &[
                ("pan", &[4.0]),
                ("others", &[0.7, 0.3]),
                ("left-in", &[0.5]),
            ],
        );
        assert_eq!(value(&worked(&OIL_FILL, &asked), "fill", LITRE), 4.5);
        let odd = given(LITRE, &[("pan", &[4.0]), ("left-in", &[5.0])]);
        assert_eq!(refused(&OIL_FILL, &odd), Some("left-in"));
    }

    #[test]
    fn what_is_burned() {
        let share = |oil: f64| {
            worked(
                &OIL_USED,
                &given(LITRE, &[("added", &[oil]), ("fuel", &[100.0])]),
            )
        };
        assert!(share(0.2).findings().is_empty());
        assert_eq!(value(&share(0.2), "share", 1.0), 0.002);
        assert!(says(&share(0.7), "next filling"));
        assert!(says(&share(1.5), "leaks first"));
    }

    #[test]
    fn what_is_used_goes_from_mark_to_mark() {
        let log = [
            Level::Added(900.0, 1e-3),
            Level::Filled(1000.0),
            Level::Added(1500.0, 0.5e-3),
            Level::Added(2500.0, 0.4e-3),
            // The meter was changed: nothing follows from it.
            Level::Added(10.0, 0.4e-3),
            Level::Drained,
            Level::Added(400.0, 0.1e-3),
            Level::Added(600.0, 0.3e-3),
        ];
        let used = used_between(&log);
        let places: Vec<usize> = used.iter().map(|(at, _)| *at).collect();
        assert_eq!(places, [2, 3, 7]);
        let rates: Vec<f64> = used.iter().map(|(_, used)| used.rate() * 1e6).collect();
        for (rate, wanted) in rates.iter().zip([1.0, 0.4, 1.5]) {
            assert!((rate - wanted).abs() < 1e-9, "{rates:?}");
        }
    }

    #[test]
    fn more_than_half_more_than_the_least_is_an_alarm() {
        assert_eq!(used_trend(&[1.0]), None);
        assert!(!used_trend(&[3.0, 1.0, 1.4]).unwrap().alarm, "it fell");
        assert!(used_trend(&[3.0, 1.0, 1.5]).unwrap().alarm);
        assert!(!used_trend(&[0.0, 0.0]).unwrap().alarm);
        assert!(used_trend(&[0.0, 0.1]).unwrap().alarm);
    }
}
