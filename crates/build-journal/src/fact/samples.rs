//! Facts for tests: drawn at random, and by hand. Strategies are boxed, since
//! unions of unions kept by value outgrow the stack of a test.

use assembly_core::fit::running_clearance::NeedleSense;
use build_plan::{At, Direction, Place, Ring, Station, ValveSide};
use proptest::prelude::*;

use super::more_samples::maybe_text;
use super::*;
use crate::id::{DeviceId, FactId, SettingId, Stamper, ToolId};

/// A device for tests.
pub(crate) fn device(number: u128) -> DeviceId {
    DeviceId::from_random(number)
}

/// Writes facts one after another, as a device does.
pub(crate) struct Pen {
    stamper: Stamper,
    device: DeviceId,
    wall: u64,
    dice: u64,
}

impl Pen {
    /// The pen of a device.
    pub(crate) fn new(number: u128) -> Self {
        Self {
            stamper: Stamper::new(),
            device: device(number),
            wall: 1_750_000_000_000 + u64::try_from(number).unwrap(),
            dice: 0,
        }
    }

    /// The same device's pen in another tab.
    pub(crate) fn in_another_tab(mut self) -> Self {
        self.dice = 1 << 50;
        self
    }

    /// Lies by for so many days.
    pub(crate) const fn wait_days(&mut self, days: u64) {
        self.wall += days * 24 * 60 * 60 * 1000;
    }

    /// The next fact, a minute after the last.
    pub(crate) fn write(&mut self, body: Body) -> Fact {
        self.wall += 60_000;
        let id = self.stamper.stamp(self.wall, self.wall ^ self.dice);
        Fact::new(id, self.device, i64::try_from(self.wall).unwrap(), body)
    }

    /// The next fact, with what is in view of the same thing.
    pub(crate) fn write_in_view(&mut self, body: Body, in_view: Option<InView>) -> Fact {
        let fact = self.write(body.clone());
        Fact::in_view_of(fact.id(), self.device, fact.clock(), (body, in_view))
    }

    /// Has seen this fact.
    pub(crate) fn observe(&mut self, fact: &Fact) {
        self.stamper.observe(fact.id());
    }
}

/// The engine of the demo.
pub(crate) fn sprayer() -> Body {
    Body::EngineDescribed(EngineDescribed {
        name: "orchard sprayer".to_owned(),
        cylinders: 4,
        layout: "inline".to_owned(),
        bank_angle: None,
        mains: Some(5),
        built: Vec::new(),
    })
}

/// A reading with nothing said but the number.
pub(crate) fn reading(measure: &str, place: Place, typed: &str) -> Body {
    Body::Reading(
        Reading {
            measure: measure.to_owned(),
            place: Spot::Known(place),
            typed: typed.to_owned(),
            unit: "in".to_owned(),
            tool: None,
            setting: None,
            temperature: None,
            condition: None,
            keyed: None,
        }
        .into(),
    )
}

/// Limits of the main oil clearance, in thou.
pub(crate) fn limits(low: &str, high: &str) -> LimitsSet {
    LimitsSet {
        measure: "main-oil-clearance".to_owned(),
        place: None,
        low: Some(low.to_owned()),
        high: Some(high.to_owned()),
        unit: "thou".to_owned(),
        origin: LimitsOrigin::Sheet,
        origin_note: "page 41".to_owned(),
        replaces: Vec::new(),
    }
}

/// Any text a person, or a hostile file, may hold.
pub(crate) fn text() -> BoxedStrategy<String> {
    prop_oneof![
        "[ -~]{0,12}",
        any::<String>(),
        Just("<b>\"bold\"\u{0}\u{1f}\\\u{2028}</b>".to_owned()),
        Just("2.4483".to_owned()),
        Just("2 7/16".to_owned()),
    ]
    .boxed()
}

pub(crate) fn fact_id() -> BoxedStrategy<FactId> {
    // Few, so that facts meet.
    (0_u64..4, 0_u64..6)
        .prop_map(|(wall, random)| Stamper::new().stamp(wall, random))
        .boxed()
}

fn at() -> BoxedStrategy<At> {
    let few = 0_u8..8;
    let ring = prop::sample::select(Ring::ALL);
    let side = prop::sample::select(ValveSide::ALL);
    prop_oneof![
        6 => few.clone().prop_map(At::Main),
        1 => few.clone().prop_map(At::Crankpin),
        1 => few.clone().prop_map(At::Rod),
        1 => few.clone().prop_map(At::Cylinder),
        1 => (few.clone(), ring).prop_map(|(cylinder, ring)| At::Ring { cylinder, ring }),
        1 => (few.clone(), side, few.clone())
            .prop_map(|(cylinder, side, number)| At::Valve { cylinder, side, number }),
        1 => (few.clone(), few.clone())
            .prop_map(|(camshaft, bearing)| At::CamBearing { camshaft, bearing }),
        1 => few.clone().prop_map(At::Camshaft),
        1 => few.prop_map(At::Bank),
        1 => Just(At::Engine),
    ]
    .boxed()
}

fn place() -> BoxedStrategy<Place> {
    (
        at(),
        prop::option::of(prop::sample::select(Station::ALL)),
        prop::option::of(prop::sample::select(Direction::ALL)),
    )
        .prop_map(|(at, station, direction)| Place {
            at,
            station,
            direction,
        })
        .boxed()
}

pub(crate) fn spot() -> BoxedStrategy<Spot> {
    prop_oneof![
        4 => place().prop_map(Spot::Known),
        1 => text().prop_map(|text| Spot::Unknown(Line::new().text("elsewhere", &text).end())),
    ]
    .boxed()
}

pub(crate) fn measure() -> BoxedStrategy<String> {
    prop_oneof![
        Just("main-journal-diameter".to_owned()),
        Just("main-bearing-bore".to_owned()),
        Just("main-oil-clearance".to_owned()),
        text(),
    ]
    .boxed()
}

pub(crate) fn unit() -> BoxedStrategy<String> {
    prop_oneof![
        Just("in".to_owned()),
        Just("mm".to_owned()),
        Just("psi".to_owned()),
        text()
    ]
    .boxed()
}

/// A number as people type it, near a main bearing of 2.5 in.
pub(crate) fn typed() -> BoxedStrategy<String> {
    prop_oneof![
        (24_900_u32..25_100).prop_map(|tenths| format!(
            "{}.{:04}",
            tenths / 10_000,
            tenths % 10_000
        )),
        text()
    ]
    .boxed()
}

pub(crate) fn tool() -> BoxedStrategy<ToolId> {
    (0_u128..3).prop_map(ToolId::from_random).boxed()
}

fn instrument() -> BoxedStrategy<String> {
    prop_oneof![
        Just("outside-micrometer-tenths".to_owned()),
        Just("bore-gauge-tenths".to_owned()),
        Just("plastic-gauge-strip".to_owned()),
        text(),
    ]
    .boxed()
}

fn setting() -> BoxedStrategy<SettingId> {
    (0_u128..3).prop_map(SettingId::from_random).boxed()
}

fn a_reading() -> BoxedStrategy<Reading> {
    (
        (measure(), spot(), typed(), unit()),
        (
            prop::option::of(tool()),
            prop::option::of(setting()),
            prop::option::of(text()),
            prop::option::of(text()),
            prop::option::of(typed()),
        ),
    )
        .prop_map(
            |((measure, place, typed, unit), (tool, setting, temperature, condition, keyed))| {
                Reading {
                    measure,
                    place,
                    typed,
                    unit,
                    tool,
                    setting,
                    temperature,
                    condition,
                    keyed,
                }
            },
        )
        .boxed()
}

fn built() -> BoxedStrategy<Vec<(&'static str, String)>> {
    let word = |field: &'static str, known: &'static str| {
        prop_oneof![
            2 => Just(None),
            1 => Just(Some((field, known.to_owned()))),
            1 => text().prop_map(move |text| Some((field, text))),
        ]
    };
    (
        word("valve_gear", "overhead-bucket"),
        word("liners", "wet-top-flange"),
        word("crankcase", "halves"),
        word("intake_valves", "2"),
    )
        .prop_map(|(a, b, c, d)| [a, b, c, d].into_iter().flatten().collect())
        .boxed()
}

fn engine() -> BoxedStrategy<EngineDescribed> {
    (
        text(),
        0_u32..20,
        prop_oneof![Just("inline"), Just("vee"), Just("flat"), Just("heap")],
        prop::option::of(prop_oneof![Just("90°".to_owned()), text()]),
        prop::option::of(0_u32..20),
        built(),
    )
        .prop_map(
            |(name, cylinders, layout, bank_angle, mains, built)| EngineDescribed {
                name,
                cylinders,
                layout: layout.to_owned(),
                bank_angle,
                mains,
                built,
            },
        )
        .boxed()
}

pub(crate) fn a_limits() -> BoxedStrategy<LimitsSet> {
    (
        measure(),
        prop::option::of(spot()),
        prop::option::of(typed()),
        prop::option::of(typed()),
        unit(),
        prop::sample::select(vec![
            LimitsOrigin::Sheet,
            LimitsOrigin::PartSheet,
            LimitsOrigin::OwnChoice,
        ]),
        text(),
        prop::collection::vec(fact_id(), 0..3),
    )
        .prop_map(
            |(measure, place, low, high, unit, origin, origin_note, replaces)| LimitsSet {
                measure,
                place,
                low,
                high,
                unit,
                origin,
                origin_note,
                replaces,
            },
        )
        .boxed()
}

fn tool_set() -> BoxedStrategy<ToolSet> {
    (
        tool(),
        setting(),
        prop::option::of(tool()),
        prop::option::of(typed()),
        prop::option::of(unit()),
        prop::option::of(fact_id()),
        prop::option::of(prop::sample::select(vec![
            NeedleSense::ClockwiseIsSmaller,
            NeedleSense::ClockwiseIsLarger,
        ])),
    )
        .prop_map(
            |(tool, setting, on, set_at, unit, locked_at, needle)| ToolSet {
                tool,
                setting,
                set_on: on.map_or(SetOn::Standard, SetOn::Tool),
                set_at,
                unit,
                locked_at,
                needle,
            },
        )
        .boxed()
}

/// Any body that can be written anew.
pub(crate) fn body() -> BoxedStrategy<Body> {
    prop_oneof![
        2 => engine().prop_map(Body::EngineDescribed),
        1 => (tool(), text(), instrument(), maybe_text()).prop_map(
            |(tool, name, instrument, mark)| {
                Body::ToolListed(ToolListed { tool, name, instrument, mark })
            }
        ),
        1 => tool_set().prop_map(Body::ToolSet),
        6 => a_reading().prop_map(|one| Body::Reading(one.into())),
        2 => a_limits().prop_map(Body::LimitsSet),
        2 => (fact_id(), prop::option::of(text()))
            .prop_map(|(fact, reason)| Body::Struck(Struck { fact, reason })),
        1 => (text(), prop::option::of(spot()), prop::option::of(text()))
            .prop_map(|(text, place, step)| Body::Note(Note { text, place, step })),
        8 => super::more_samples::more(),
        4 => super::oil_samples::oil(),
    ]
    .boxed()
}

/// Any fact that can be written anew.
pub(crate) fn fact() -> BoxedStrategy<Fact> {
    (
        fact_id(),
        0_u128..3,
        any::<i64>(),
        body(),
        prop::option::of(in_view()),
    )
        .prop_map(|(id, number, clock, body, in_view)| {
            Fact::in_view_of(id, device(number), clock, (body, in_view))
        })
        .boxed()
}

/// What a device may have had in view, or a hostile file may say.
pub(crate) fn in_view() -> BoxedStrategy<InView> {
    (prop::collection::vec(fact_id(), 0..4), any::<bool>())
        .prop_map(|(replaces, settles)| InView { replaces, settles })
        .boxed()
}

/// The text of a fact of a later version, with kinds and fields unknown here.
pub(crate) fn foreign_fact_text() -> BoxedStrategy<String> {
    (fact(), text(), text(), 0_u8..4).prop_map(|(fact, name, value, sort)| {
        let mut field = String::new();
        super::write::push_string(&mut field, &format!("x{name}"));
        field.push(':');
        super::write::push_string(&mut field, &value);
        let open = fact.text().trim_end_matches('}');
        let nested = fact.text().len() - open.len();
        match sort {
            0 => format!("{open}{},{field}}}", "}".repeat(nested - 1)),
            1 => format!(
                "{{\"id\":\"{}\",\"device\":\"{}\",\"clock\":0,\"kind\":\"of-tomorrow\",{field}}}",
                fact.id(),
                fact.device()
            ),
            2 => format!(
                "{{\"id\":\"{}\",\"device\":\"{}\",\"clock\":0,\"kind\":\"reading\",{field}}}",
                fact.id(),
                fact.device()
            ),
            _ => format!(
                "{{\"format\":7,\"id\":\"{}\",\"device\":\"{}\",\"clock\":0,\"kind\":\"reading\",{field}}}",
                fact.id(),
                fact.device()
            ),
        }
    }).boxed()
}
