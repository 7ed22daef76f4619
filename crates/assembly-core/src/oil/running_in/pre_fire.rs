//! The list before the key is turned. Common practice.

/// One thing to be seen to.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Item {
    /// Stable name.
    pub id: &'static str,
    /// What has to be so.
    pub text: &'static str,
    /// Whether the engine must not be fired without it.
    pub hard: bool,
    /// What it saves from.
    pub because: &'static str,
}

const fn hard(id: &'static str, text: &'static str, because: &'static str) -> Item {
    Item {
        id,
        text,
        hard: true,
        because,
    }
}

const fn soft(id: &'static str, text: &'static str, because: &'static str) -> Item {
    Item {
        id,
        text,
        hard: false,
        because,
    }
}

/// All of it.
#[rustfmt::skip]
pub static PRE_FIRE: [Item; 22] = [
    hard("extinguisher", "fire extinguisher in reach", "fuel and sparks meet today for the first time"),
    hard("air", "doors open, exhaust led outside", "exhaust gas kills without a smell"),
    hard("helper", "a helper at the switch", "two hands cannot watch and stop"),
    hard("chocked", "wheels chocked, out of gear", "it may drive off"),
    hard("clear", "hands, hair, sleeves and tools away from belts and fan; tools and rags counted", "rotating parts take what they get"),
    hard("fuel", "fuel fresh, lines tight under pressure with the engine off", "a leak found by flame is found too late"),
    hard("oil", "oil level, filter and kind of oil right; flat tappets: run-in oil", "lobes wipe in minutes"),
    hard("plugs", "as many gallery and core plugs back in as came out", "one left out takes all the pressure there is"),
    hard("primed", "primed within two weeks, pressure seen, nothing opened since", "dry bearings go in seconds"),
    hard("rockers", "oil seen at every rocker", "a dry rocker tells of a blocked way"),
    hard("coolant", "coolant full and bled, heater on", "air pockets crack heads"),
    hard("number-one", "compression stroke of the first cylinder confirmed", "half a turn out it cranks until the lobes are wiped"),
    hard("timing", "timing set so that it fires at once", "long cranking wipes lobes"),
    hard("order", "firing order and rotation checked", "it spits fire through the intake"),
    hard("throttle", "throttle opens and shuts by itself", "it runs away"),
    hard("gauge", "oil pressure gauge mechanical and proven", "a dead sender looks like a dead pump"),
    hard("off", "the switch that stops it is known and tried", "stopping is always right"),
    soft("battery", "battery charged, grounds on", "slow cranking wipes lobes"),
    soft("fan", "fan proved, belts tight", "the first run is a long one"),
    soft("filter", "air filter on", "a nut goes in once"),
    soft("gasket", "exhaust gasket in, nothing that burns near it", "new paint smokes and hides a fire"),
    soft("at-hand", "spare hose, water, timing light, paper and clock at hand", "nobody runs for them while it runs"),
];

/// The hard ones that are not among these names: what still forbids to fire.
#[must_use]
pub fn still_forbids(done: &[&str]) -> Vec<&'static Item> {
    PRE_FIRE
        .iter()
        .filter(|item| item.hard && !done.contains(&item.id))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fire_gas_turning_parts_and_oil_are_hard() {
        for id in [
            "extinguisher",
            "air",
            "clear",
            "fuel",
            "primed",
            "rockers",
            "off",
        ] {
            assert!(
                PRE_FIRE.iter().any(|item| item.id == id && item.hard),
                "{id}"
            );
        }
        for (at, item) in PRE_FIRE.iter().enumerate() {
            assert!(PRE_FIRE[at + 1..].iter().all(|other| other.id != item.id));
        }
    }

    #[test]
    fn only_when_all_hard_ones_are_done_nothing_forbids() {
        let hard: Vec<&str> = PRE_FIRE
            .iter()
            .filter(|item| item.hard)
            .map(|item| item.id)
            .collect();
        assert!(still_forbids(&hard).is_empty());
        assert_eq!(still_forbids(&hard[1..])[0].id, hard[0]);
        assert_eq!(still_forbids(&[]).len(), hard.len());
    }
}
