//! How an engine is built, part by part: what the builder said, and what the
//! plan assumes of the rest.

use build_plan::engine::{
    CamDrive, Casting, Construction, Crankcase, Ignition, Liners, MainCaps, Numbering, Pins,
    PumpDrive, RearSeal, Rods, ValveGear,
};
use leptos::prelude::*;

use crate::device::drafts::Draft;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, note, p};
use crate::kit::section::fold;

/// Something to say about how the engine is built.
struct Field {
    /// The name it is written down by.
    id: &'static str,
    /// What is asked.
    label: &'static str,
    /// What can be said: names and labels.
    words: fn() -> Vec<(String, String)>,
    /// What is assumed when nothing is said, on an engine of this layout.
    usual: fn(layout: &str) -> String,
    /// Whether an engine of this layout is asked.
    asked: fn(layout: &str) -> bool,
}

/// A field for each of these, with the plan's own words and its own assumption.
macro_rules! fields {
    ($($id:literal, $label:literal, $words:ident, $own:ident;)+) => {
        [$(Field {
            id: $id,
            label: $label,
            words: || words_of($words::ALL.iter().map(|one| (one.id(), one.label()))),
            usual: |_| Construction::default().$own.id().to_owned(),
            asked: |_| true,
        },)+]
    };
}

static PLAIN: [Field; 11] = fields! {
    "valve_gear", "What opens the valves?", ValveGear, valve_gear;
    "cam_drive", "What turns the camshaft?", CamDrive, cam_drive;
    "block", "What is the block made of?", Casting, block;
    "heads", "What are the heads made of?", Casting, heads;
    "liners", "What do the pistons run in?", Liners, liners;
    "rear_seal", "What is the rear main seal?", RearSeal, rear_seal;
    "main_caps", "How are the main caps held?", MainCaps, main_caps;
    "rods", "How are the rod caps held?", Rods, rods;
    "pins", "How are the piston pins held?", Pins, pins;
    "pump_drive", "What turns the oil pump?", PumpDrive, pump_drive;
    "ignition", "What sets the spark off?", Ignition, ignition;
};

static OTHERS: [Field; 4] = [
    Field {
        id: "crankcase",
        label: "How does the crankcase come apart?",
        words: || words_of(Crankcase::ALL.iter().map(|one| (one.id(), one.label()))),
        usual: |layout| {
            let usual = if layout == "flat" {
                Crankcase::Halves
            } else {
                Crankcase::OnePiece
            };
            usual.id().to_owned()
        },
        asked: |_| true,
    },
    Field {
        id: "numbering",
        label: "How are the cylinders of the two banks numbered?",
        words: || words_of(Numbering::ALL.iter().map(|one| (one.id(), one.label()))),
        usual: |_| Construction::default().numbering.id().to_owned(),
        asked: |layout| layout != "inline",
    },
    Field {
        id: "intake_valves",
        label: "Intake valves in each cylinder?",
        words: counts,
        usual: |_| Construction::default().intake_valves.to_string(),
        asked: |_| true,
    },
    Field {
        id: "exhaust_valves",
        label: "Exhaust valves in each cylinder?",
        words: counts,
        usual: |_| Construction::default().exhaust_valves.to_string(),
        asked: |_| true,
    },
];

fn counts() -> Vec<(String, String)> {
    words_of([("1", "1"), ("2", "2"), ("3", "3")].into_iter())
}

fn words_of(words: impl Iterator<Item = (&'static str, &'static str)>) -> Vec<(String, String)> {
    words
        .map(|(id, label)| (id.to_owned(), label.to_owned()))
        .collect()
}

fn all() -> impl Iterator<Item = &'static Field> {
    PLAIN.iter().chain(&OTHERS)
}

/// What was said so far of how the engine is built.
#[derive(Clone, Copy)]
pub struct Built {
    said: StoredValue<Vec<(&'static str, Draft)>>,
    layout: Draft,
}

impl Built {
    /// What was said before, under names that begin so; `from` is what stands
    /// in the book already.
    #[must_use]
    pub fn load(prefix: &str, layout: Draft, from: &[(&'static str, String)]) -> Self {
        let start = |id: &str| {
            let said = from.iter().find(|(field, _)| *field == id);
            said.map_or("", |(_, word)| word.as_str())
        };
        let drafts = all().map(|field| {
            let name = format!("{prefix}built/{}", field.id);
            (field.id, Draft::or(name, start(field.id)))
        });
        Self {
            said: StoredValue::new(drafts.collect()),
            layout,
        }
    }

    fn draft(self, id: &str) -> Option<Draft> {
        self.said.with_value(|said| {
            let found = said.iter().find(|(field, _)| *field == id);
            found.map(|(_, draft)| *draft)
        })
    }

    /// What was said, a word for each field; what was not said is not in it.
    #[must_use]
    pub fn words(self) -> Vec<(&'static str, String)> {
        let layout = self.layout.get();
        let asked = all().filter(|field| (field.asked)(&layout));
        asked
            .filter_map(|field| Some((field.id, self.draft(field.id)?.get())))
            .filter(|(_, word)| !word.is_empty())
            .collect()
    }

    /// The part of the form that asks for it, shut until it is wanted.
    #[must_use]
    pub fn form(self, open: bool) -> El {
        let fields = all().map(|field| self.field(field));
        let lead = "What you don't say is assumed, so that the plan can begin. Each assumption is said below its question: check it when you get there, and say it here.";
        let inside = Piece::all([p(lead).into(), Piece::all(fields)]);
        let count = el("p").class("hint").test("assumed").live_text(move || {
            let layout = self.layout.get();
            let asked = all().filter(|field| (field.asked)(&layout)).count();
            match asked - self.words().len() {
                0 => "Nothing about how it is built is assumed.".to_owned(),
                1 => "One thing about how it is built is assumed.".to_owned(),
                more => format!("{more} things about how it is built are assumed."),
            }
        });
        let fold = fold("How it is built", inside).test("how-built");
        let fold = if open { fold.attr("open", "") } else { fold };
        el("div").class("built").with(count).with(fold)
    }

    fn field(self, field: &'static Field) -> Piece {
        let Some(draft) = self.draft(field.id) else {
            return Piece::none();
        };
        let layout = self.layout;
        Piece::when(
            move || (field.asked)(&layout.get()),
            move || {
                let words = (field.words)();
                let labels = words.clone();
                let choice = pick(
                    field.id,
                    field.label,
                    "",
                    words
                        .into_iter()
                        .map(|(id, label)| Word::of(id, label))
                        .collect(),
                    move || draft.get(),
                    move |id| draft.set(id),
                );
                let says = note("hint", "")
                    .test(&format!("assumed-{}", field.id))
                    .live_text(move || {
                        if !draft.get().is_empty() {
                            return String::new();
                        }
                        let usual = (field.usual)(&layout.get());
                        let label = labels.iter().find(|(id, _)| *id == usual);
                        let label = label.map_or("", |(_, label)| label.as_str());
                        format!("Assumed until you say: {label}. To be checked.")
                    });
                let forget = Piece::when(
                    move || !draft.get().is_empty(),
                    move || {
                        button(
                            "quiet",
                            "Not sure",
                            &format!("unsay-{}", field.id),
                            move || {
                                draft.set(String::new());
                            },
                        )
                        .attr("aria-label", &format!("not sure: {}", field.label))
                        .into()
                    },
                );
                el("div")
                    .class("built-field")
                    .with(choice)
                    .with(says)
                    .with(forget)
                    .into()
            },
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fact::EngineDescribed;

    /// Every word that is offered can be written down and read back, and what is
    /// said to be assumed is what the plan assumes.
    #[test]
    fn what_is_offered_is_what_the_plan_knows() {
        for layout in ["inline", "flat"] {
            for field in all() {
                let described = |built: Vec<(&'static str, String)>| EngineDescribed {
                    name: "orchard sprayer".to_owned(),
                    cylinders: 4,
                    layout: layout.to_owned(),
                    bank_angle: None,
                    mains: None,
                    built,
                };
                let words = (field.words)();
                assert!(words.len() > 1, "{}", field.id);
                for (id, _) in &words {
                    let said = described(vec![(field.id, id.clone())]);
                    assert!(said.construction().1.is_empty(), "{} {id}", field.id);
                }
                let usual = (field.usual)(layout);
                assert!(words.iter().any(|(id, _)| *id == usual), "{}", field.id);
                let silent = described(Vec::new()).engine().unwrap();
                let said = described(vec![(field.id, usual)]).engine().unwrap();
                assert_eq!(silent.crankcase(), said.crankcase());
                let mut own = *said.construction();
                own.crankcase = silent.construction().crankcase;
                assert_eq!(own, *silent.construction(), "{}", field.id);
            }
        }
    }
}
