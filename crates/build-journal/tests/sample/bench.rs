//! The hand that writes the sample: always the same ids, at always the same
//! times of three invented evenings.

use build_journal::fact::{Body, Reading, SetOn, Spot, ToolListed, ToolSet};
use build_journal::{DeviceId, Fact, FactId, Journal, SettingId, Stamper, ToolId, sample};
use build_plan::Place;

/// The first evening, 14 March 2026, 17:40 UTC, in milliseconds since 1970.
const FIRST_EVENING: i64 = 1_773_510_000_000;
const DAY: i64 = 24 * 60 * 60 * 1000;

/// The tools on the bench of the sample.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Tool {
    SmallMicrometer,
    LargeMicrometer,
    SmallBoreGauge,
    LargeBoreGauge,
    Feeler,
    Dial,
    TestIndicator,
    Depth,
    Straightedge,
    Caliper,
    SpringTester,
    Burette,
    Clay,
}

/// Every tool with its name and its sort, and what it is set at: nothing where
/// there is nothing to set.
const TOOLS: &[(Tool, &str, &str, Option<&str>)] = &[
    (
        Tool::SmallMicrometer,
        "2 to 3 inch micrometer",
        "outside-micrometer-proved",
        Some("2.0000"),
    ),
    (
        Tool::LargeMicrometer,
        "3 to 4 inch micrometer",
        "outside-micrometer-proved",
        Some("3.0000"),
    ),
    (
        Tool::SmallBoreGauge,
        "small bore gauge",
        "bore-gauge-tenths",
        Some("2.4500"),
    ),
    (
        Tool::LargeBoreGauge,
        "large bore gauge",
        "bore-gauge-tenths",
        Some("3.5000"),
    ),
    (Tool::Feeler, "feeler blades", "feeler-blades", None),
    (Tool::Dial, "dial indicator", "dial-indicator", None),
    (
        Tool::TestIndicator,
        "test indicator",
        "test-indicator",
        None,
    ),
    (Tool::Depth, "depth micrometer", "depth-micrometer", None),
    (
        Tool::Straightedge,
        "straightedge",
        "straightedge-and-feeler",
        None,
    ),
    (Tool::Caliper, "caliper", "caliper-inside", None),
    (
        Tool::SpringTester,
        "spring tester",
        "bench-spring-tester",
        None,
    ),
    (Tool::Burette, "burette", "burette", None),
    (Tool::Clay, "clay", "clay-and-caliper", None),
];

impl Tool {
    pub fn id(self) -> ToolId {
        ToolId::from_random(drawn(0x7001, self as u64))
    }

    fn setting(self) -> SettingId {
        SettingId::from_random(drawn(0x5e7, self as u64))
    }

    fn is_set(self) -> bool {
        TOOLS
            .iter()
            .any(|(tool, .., set_at)| *tool == self && set_at.is_some())
    }

    /// The micrometer that it is zeroed in.
    fn set_in(self) -> SetOn {
        match self {
            Self::SmallBoreGauge => SetOn::Tool(Self::SmallMicrometer.id()),
            Self::LargeBoreGauge => SetOn::Tool(Self::LargeMicrometer.id()),
            _ => SetOn::Standard,
        }
    }
}

/// Bits that look drawn and are the same every time (splitmix64).
pub fn drawn(what: u64, number: u64) -> u128 {
    let mut state = what.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ number;
    let mut next = || {
        state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = state;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^ (bits >> 31)
    };
    u128::from(next()) << 64 | u128::from(next())
}

/// Writes facts, one after the other.
pub struct Pen {
    pub journal: Journal,
    stamper: Stamper,
    clock: i64,
    evening: i64,
}

impl Pen {
    pub fn new() -> Self {
        Self {
            journal: Journal::new(sample::SAMPLE),
            stamper: Stamper::new(),
            clock: FIRST_EVENING,
            evening: 0,
        }
    }

    /// The next evening begins.
    pub fn next_evening(&mut self) {
        self.evening += 1;
        self.clock = FIRST_EVENING + self.evening * DAY;
    }

    pub fn write(&mut self, body: Body) -> FactId {
        // Half a minute from line to line, give or take.
        let number = u64::try_from(self.journal.len()).unwrap();
        self.clock += 20_000 + i64::try_from(drawn(0xc10c, number) % 15_000).unwrap();
        let wall = u64::try_from(self.clock).unwrap();
        let random = u64::try_from(drawn(0xfac7, number) >> 64).unwrap();
        let id = self.stamper.stamp(wall, random);
        let device = DeviceId::from_random(drawn(0xde7, 1));
        let fact = Fact::new(id, device, self.clock, body);
        self.journal.append(fact).unwrap();
        id
    }

    /// Lists every tool and sets those that are set.
    pub fn lay_out_the_tools(&mut self) {
        for (tool, name, instrument, _) in TOOLS {
            self.write(Body::ToolListed(ToolListed {
                tool: tool.id(),
                name: (*name).to_owned(),
                instrument: (*instrument).to_owned(),
                mark: None,
            }));
        }
        for (tool, .., set_at) in TOOLS {
            let Some(set_at) = set_at else { continue };
            self.write(Body::ToolSet(ToolSet {
                tool: tool.id(),
                setting: tool.setting(),
                set_on: tool.set_in(),
                set_at: Some((*set_at).to_owned()),
                unit: Some("in".to_owned()),
                locked_at: None,
                needle: None,
            }));
        }
    }

    pub fn read(&mut self, measure: &str, place: Place, typed: String, unit: &str, tool: Tool) {
        self.write(Body::Reading(
            Reading {
                measure: measure.to_owned(),
                place: Spot::Known(place),
                typed,
                unit: unit.to_owned(),
                tool: Some(tool.id()),
                setting: tool.is_set().then(|| tool.setting()),
                temperature: Some("66 °F".to_owned()),
                condition: None,
                keyed: None,
            }
            .into(),
        ));
    }
}
