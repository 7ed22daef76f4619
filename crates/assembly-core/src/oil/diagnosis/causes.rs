//! Which causes make which signs, and the cheapest check of each. Facts of the
//! trade, with no source.

use super::signs::Sign;

/// How dear a check is: with the eye, with a spanner, with parts off.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Cost {
    /// Look, listen, read, a minute.
    Look,
    /// A gauge or a tool, a quarter of an hour.
    Tool,
    /// Parts come off.
    Apart,
}

/// Something that can be wrong.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Cause {
    /// Stable name.
    pub id: &'static str,
    /// What it is.
    pub name: &'static str,
    /// Signs it makes, and how strongly each points to it, 1 to 3.
    pub signs: &'static [(Sign, u8)],
    /// What one would have seen.
    pub looks_like: &'static str,
    /// The next check.
    pub check: &'static str,
    /// What that costs.
    pub cost: Cost,
    /// Whether the engine must be stopped first.
    pub stop: bool,
}

/// A cause with how well it fits.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Suspect {
    /// What may be wrong.
    pub cause: &'static Cause,
    /// Sum of the signs that point to it.
    pub weight: u32,
    /// How many of the signs seen it explains.
    pub explains: usize,
}

use Cost::{Apart, Look, Tool};
use Sign::{
    DiffersFromDash, DryRocker, FallsAsSpeedClimbs, FallsOverDays, FineColdLowHot, FlatLow,
    FlickersInCorners, HighAndStays, KnockAtNormalPressure, LowEverywhere, LowIdleFineFast,
    NeedleSwings, NothingAtCrank, NothingDrillFree, NothingDrillHeavy, RoseAfterFilter, SlowToRise,
    SuddenlyNothingHot,
};

const fn cause(
    id: &'static str,
    name: &'static str,
    signs: &'static [(Sign, u8)],
    (looks_like, check): (&'static str, &'static str),
    (cost, stop): (Cost, bool),
) -> Cause {
    Cause {
        id,
        name,
        signs,
        looks_like,
        check,
        cost,
        stop,
    }
}

/// All causes.
#[rustfmt::skip]
pub static CAUSES: [Cause; 27] = [
    cause("drive-missing", "pump drive missing or too short", &[(NothingDrillFree, 3), (NothingAtCrank, 2)],
        ("The drill spins as if in air.", "Pull the drill and look whether the drive reaches the pump."), (Tool, true)),
    cause("wrong-rotation", "drill turns the wrong way", &[(NothingDrillFree, 3)],
        ("The drill turns easily and the filter stays dry.", "Compare with the distributor gear's way round; reverse the drill."), (Look, false)),
    cause("pickup-air", "pickup draws air", &[(NothingDrillFree, 2), (NeedleSwings, 2), (FallsAsSpeedClimbs, 2)],
        ("Pressure comes and goes, oil foams.", "Level first; then the pickup's seal and press fit."), (Apart, true)),
    cause("relief-open", "relief stuck open", &[(NothingDrillFree, 1), (FlatLow, 3), (LowEverywhere, 1)],
        ("The same low value at every speed.", "Pull the plunger: a chip, a score, a weak spring."), (Tool, true)),
    cause("gauge-line", "gauge, sender or its line", &[(NothingDrillHeavy, 3), (DiffersFromDash, 3), (FlatLow, 1), (LowEverywhere, 1), (HighAndStays, 1)],
        ("The drill works hard, oil comes up, the gauge says nothing.", "Put a mechanical gauge on another port."), (Tool, false)),
    cause("feed-plugged", "a passage is plugged", &[(NothingDrillHeavy, 2), (HighAndStays, 2), (DryRocker, 1)],
        ("The pump labours, one end stays dry.", "Prime with the covers off and see which rockers stay dry."), (Tool, true)),
    cause("drive-slipped", "drive slipped or pin sheared", &[(NothingAtCrank, 3), (SuddenlyNothingHot, 2)],
        ("Priming by drill was fine, by the engine there is nothing.", "Crank by hand and watch whether the distributor turns."), (Look, true)),
    cause("bearings-loose", "bearings loose or worn all through", &[(LowIdleFineFast, 3), (LowEverywhere, 2), (FineColdLowHot, 3)],
        ("Low when hot and slow, fair when fast.", "Pairs of pressure and oil temperature against the record of the clearances."), (Look, false)),
    cause("oil-thin", "oil thin or hot", &[(LowIdleFineFast, 2), (FineColdLowHot, 2), (LowEverywhere, 1)],
        ("Follows the oil's temperature and nothing else.", "Read the oil's temperature; smell the stick for fuel; look at the can."), (Look, false)),
    cause("idle-low", "idle set low", &[(LowIdleFineFast, 1)],
        ("A hundred turns more bring it up.", "Read the speed with a second instrument."), (Look, false)),
    cause("rod-clearance", "rod bearing much too loose", &[(FallsAsSpeedClimbs, 3), (KnockAtNormalPressure, 1)],
        ("The faster, the lower: the crank throws the oil out there.", "Listen with a stethoscope, shorting one plug after the other."), (Tool, true)),
    cause("starving", "pickup starved: too near the pan, level low", &[(FallsAsSpeedClimbs, 2), (FlickersInCorners, 2)],
        ("Fine until the speed is held.", "Level on the stick; then the gap from pickup to pan."), (Look, true)),
    cause("aeration", "oil foams: overfull, or whipped by the crank", &[(FallsAsSpeedClimbs, 2), (NeedleSwings, 2)],
        ("Bubbles on the stick after a stop.", "Look at level and foam on the stick."), (Look, false)),
    cause("plug-missing", "gallery plug left out", &[(LowEverywhere, 3), (NothingDrillFree, 1)],
        ("From the first prime on, at all speeds by the same ratio.", "Count the plugs against the map; prime with the covers off and look where it pours."), (Apart, true)),
    cause("internal-leak", "cam bearing, lifter bore or pump cover leaks", &[(LowEverywhere, 2), (LowIdleFineFast, 1)],
        ("Like loose bearings, though these measure well.", "Prime with the covers off and look where it pours."), (Apart, true)),
    cause("relief-shut", "relief stuck shut or spring too stiff", &[(HighAndStays, 3)],
        ("High, hot as well as cold.", "Pull the plunger; measure the spring."), (Tool, false)),
    cause("oil-cold", "oil cold or too thick", &[(HighAndStays, 2)],
        ("Comes down as the oil warms.", "Warm it and read again with the oil's temperature."), (Look, false)),
    cause("cam-bearing-hole", "cam bearing's hole does not meet the block's", &[(DryRocker, 3)],
        ("A whole bank or a row stays dry.", "Prime that bank slowly, turning the crank a quarter at a time."), (Tool, true)),
    cause("pushrod-feed", "pushrod, lifter or gasket hole blocked", &[(DryRocker, 2)],
        ("One rocker dry, its neighbours wet.", "Swap the pushrod with a wet neighbour's; look at the gasket's holes."), (Tool, true)),
    cause("pickup-off", "pickup fell off or pump drive broke", &[(SuddenlyNothingHot, 3), (FlickersInCorners, 1)],
        ("From good to nothing within a second.", "Stop. Do not start again before the pan is off."), (Apart, true)),
    cause("baffle", "pickup height, baffle or level", &[(FlickersInCorners, 3)],
        ("Only when the oil is thrown to one side.", "Level on the stick; then pickup to pan and baffle."), (Look, false)),
    cause("relief-worn", "relief worn in its bore", &[(NeedleSwings, 2), (FlatLow, 1)],
        ("The needle hunts near the relief's pressure.", "Pull the plunger and feel for play."), (Tool, false)),
    cause("piston-or-plate", "piston, or bolts of the flexplate", &[(KnockAtNormalPressure, 2)],
        ("The knock follows the speed and the pressure stays.", "Short one plug after the other; torque the plate's bolts."), (Tool, true)),
    cause("rod-tight", "rod bearing with a tight or high spot", &[(KnockAtNormalPressure, 2)],
        ("A knock that changes when its plug is shorted.", "Stethoscope low on the block; shells out if it stays."), (Tool, true)),
    cause("dilution", "fuel in the oil", &[(FallsOverDays, 3), (FineColdLowHot, 1)],
        ("The level rises by itself and smells.", "Smell and drip the stick on paper."), (Look, false)),
    cause("shedding", "a bearing wears, or the filter collapses", &[(FallsOverDays, 3), (KnockAtNormalPressure, 1)],
        ("Glitter in the drained oil.", "Cut the filter open and look at its folds."), (Tool, true)),
    cause("filter-valves", "old filter's bypass was open, or its drain-back valve leaks", &[(RoseAfterFilter, 3), (SlowToRise, 3)],
        ("Better with another filter.", "Fit another filter and time the rise."), (Tool, false)),
];

/// The causes that fit the signs, likeliest first; of equal ones the one that is
/// cheapest to check.
#[must_use]
pub fn rank(signs: &[Sign]) -> Vec<Suspect> {
    let mut suspects: Vec<Suspect> = CAUSES
        .iter()
        .filter_map(|cause| {
            let fitting = cause.signs.iter().filter(|(sign, _)| signs.contains(sign));
            let (weight, explains) = fitting.fold((0, 0), |(weight, explains), (_, one)| {
                (weight + u32::from(*one), explains + 1)
            });
            (explains > 0).then_some(Suspect {
                cause,
                weight,
                explains,
            })
        })
        .collect();
    suspects.sort_by(|a, b| {
        b.weight
            .cmp(&a.weight)
            .then(b.explains.cmp(&a.explains))
            .then(a.cause.cost.cmp(&b.cause.cost))
    });
    suspects
}

/// Of the first suspects the cheapest check that would part them: what to do next.
#[must_use]
pub fn next_check(suspects: &[Suspect]) -> Option<&Suspect> {
    let best = suspects.first()?.weight;
    suspects
        .iter()
        .filter(|one| one.weight + 1 >= best)
        .min_by_key(|one| one.cause.cost)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_sign_has_a_cause_and_every_cause_a_sign() {
        for sign in Sign::ALL {
            assert!(!rank(&[sign]).is_empty(), "{}", sign.words());
        }
        for (at, cause) in CAUSES.iter().enumerate() {
            assert!(!cause.signs.is_empty() && !cause.check.is_empty());
            assert!(CAUSES[at + 1..].iter().all(|other| other.id != cause.id));
        }
        assert!(rank(&[]).is_empty());
    }

    // Common practice: symptom, first suspect.
    #[test]
    fn first_suspects_of_the_trade() {
        for (sign, id) in [
            (LowIdleFineFast, "bearings-loose"),
            (FallsAsSpeedClimbs, "rod-clearance"),
            (LowEverywhere, "plug-missing"),
            (FlatLow, "relief-open"),
            (HighAndStays, "relief-shut"),
            (SuddenlyNothingHot, "pickup-off"),
            (NothingAtCrank, "drive-slipped"),
            (NothingDrillHeavy, "gauge-line"),
            (SlowToRise, "filter-valves"),
        ] {
            assert_eq!(rank(&[sign])[0].cause.id, id);
        }
    }

    #[test]
    fn two_signs_together_point_more_sharply() {
        let both = rank(&[FallsAsSpeedClimbs, FlickersInCorners]);
        assert_eq!(both[0].cause.id, "starving");
        assert_eq!(both[0].explains, 2);
        // Of those that fit nearly as well, what only needs a look comes first.
        let low = rank(&[LowEverywhere]);
        let next = next_check(&low).unwrap();
        assert!(next.cause.cost == Look, "{next:?}");
    }
}
