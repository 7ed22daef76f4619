//! A build as it stands after an evening of measuring: the file of an engine, its
//! tools and readings, made fact by fact.

use serde_json::{Value, json};

const DEVICE: &str = "00000000-0000-4000-8000-000000000001";
/// When the evening began, in milliseconds since 1970.
const BEGAN: u64 = 1_764_006_821_888;

/// What a reading is taken with.
#[derive(Clone, Copy)]
pub enum Tool {
    Micrometer,
    Telescope,
    Blades,
}

impl Tool {
    const fn id(self) -> &'static str {
        match self {
            Self::Micrometer => "00000000-0000-4000-8000-00000000000a",
            Self::Blades => "00000000-0000-4000-8000-00000000000b",
            Self::Telescope => "00000000-0000-4000-8000-00000000000c",
        }
    }
}

/// The facts of a build so far, a minute after each other.
pub struct Prepared {
    facts: Vec<Value>,
}

impl Prepared {
    /// An engine in line, with whatever else is said of how it is built, and the
    /// tools beside it.
    pub fn engine(cylinders: u8, built: &[(&str, &str)]) -> Self {
        let mut engine = json!({ "name": "shed twin", "cylinders": cylinders, "layout": "inline" });
        for (field, word) in built {
            engine[*field] = json!(word);
        }
        let mut prepared = Self { facts: Vec::new() };
        prepared.write("engine-described", json!({ "engine": engine }));
        for (tool, instrument) in [
            (Tool::Micrometer, "outside-micrometer-proved"),
            (Tool::Blades, "feeler-blades"),
            (Tool::Telescope, "telescoping-gauge-practised"),
        ] {
            let listed = json!({ "tool": tool.id(), "name": instrument, "instrument": instrument });
            prepared.write("tool-listed", listed);
        }
        prepared
    }

    fn write(&mut self, kind: &str, said: Value) {
        let clock = BEGAN + 60_000 * u64::try_from(self.facts.len()).unwrap();
        let time = format!("{clock:012x}");
        let (first, second) = time.split_at(8);
        let mut fact = json!({
            "id": format!("{first}-{second}-7000-8000-{time}"),
            "device": DEVICE,
            "clock": clock,
            "kind": kind,
        });
        for (field, value) in said.as_object().unwrap() {
            fact[field] = value.clone();
        }
        self.facts.push(fact);
    }

    /// Limits for a measure, in millimetres.
    pub fn limits(&mut self, measure: &str, low: &str, high: &str) {
        let said = json!({
            "measure": measure, "low": low, "high": high, "unit": "mm",
            "origin": "sheet", "origin_note": "page 12",
        });
        self.write("limits-set", said);
    }

    /// A reading, in millimetres.
    pub fn read(&mut self, measure: &str, place: Value, typed: &str, tool: Tool) {
        let said = json!({
            "measure": measure, "place": place, "typed": typed, "unit": "mm", "tool": tool.id(),
        });
        self.write("reading", said);
    }

    /// A measured part on the bench, and the place it is in, if it is in one.
    pub fn on_bench(&mut self, choice: &str, (number, name): (u8, &str), size: &str, place: Value) {
        let mut said = json!({
            "part": format!("00000000-0000-4000-8000-0000000000b{number}"),
            "choice": choice, "name": name, "size": size, "unit": "mm",
            "tool": Tool::Micrometer.id(),
        });
        if !place.is_null() {
            said["place"] = place;
        }
        self.write("part-on-bench", said);
    }

    /// The file, as the app would have exported it.
    pub fn file(&self) -> String {
        let facts: Vec<String> = self.facts.iter().map(Value::to_string).collect();
        format!(
            "{{\"format\":\"thoubook-journal\",\"version\":1,\"build\":\"00000000-0000-4000-8000-0000000000dc\",\n\"facts\":[\n{}\n],\n\"set_aside\":[]}}\n",
            facts.join(",\n")
        )
    }
}
