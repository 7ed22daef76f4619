//! The description of an engine, as it is being typed: for a new build, and to
//! describe it further later.

use assembly_core::quantity::{Kind, Unit, unit_or_usual};
use build_journal::fact::EngineDescribed;
use build_plan::engine::NAME_AT_MOST;
use build_plan::{Engine, EngineError, Layout};
use leptos::prelude::*;
use uom::si::f64::Angle;

use super::construction::Built;
use crate::device::drafts::Draft;
use crate::kit::field::{QuantityField, read_text};
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{Piece, button, note, row};
use crate::kit::words::word_field;

/// What was typed of the engine.
#[derive(Clone, Copy)]
struct Typing {
    name: Draft,
    cylinders: Draft,
    layout: Draft,
    bank_angle: Draft,
    mains: Draft,
    built: Built,
}

/// Why what was typed is no engine yet.
#[derive(Clone, PartialEq)]
enum NotYet {
    /// This field cannot be read or is empty; it says so itself once touched.
    Field(&'static str, String),
    /// The engine is not possible.
    Engine(EngineError),
}

impl Typing {
    fn load(prefix: &str, from: Option<&EngineDescribed>) -> Self {
        let start = |of: fn(&EngineDescribed) -> String, else_: &str| {
            from.map_or_else(|| else_.to_owned(), of)
        };
        let draft = |field: &str, start: String| Draft::or(format!("{prefix}{field}"), &start);
        let layout = draft("layout", start(|it| it.layout.clone(), "inline"));
        let mains = |it: &EngineDescribed| it.mains.map_or_else(String::new, |it| it.to_string());
        let angle = |it: &EngineDescribed| it.bank_angle.clone().unwrap_or_else(|| "90".to_owned());
        Self {
            name: draft("name", start(|it| it.name.clone(), "")),
            cylinders: draft("cylinders", start(|it| it.cylinders.to_string(), "")),
            layout,
            bank_angle: draft("bank-angle", start(angle, "90")),
            mains: draft("mains", start(mains, "")),
            built: Built::load(prefix, layout, from.map_or(&[][..], |it| &it.built)),
        }
    }

    fn layout(self) -> Result<Layout, NotYet> {
        match self.layout.get().as_str() {
            "vee" => {
                let degrees = unit_or_usual(Kind::Angle, "°");
                match read_text(&self.bank_angle.get(), Kind::Angle, degrees) {
                    Some(Ok(angle)) => Ok(Layout::Vee {
                        bank_angle: angle.quantity::<Angle>(),
                    }),
                    Some(Err(error)) => Err(NotYet::Field("bank_angle", error.to_string())),
                    None => Err(NotYet::Field(
                        "bank_angle",
                        "Type the angle between the banks, such as 90°.".to_owned(),
                    )),
                }
            }
            "flat" => Ok(Layout::Flat),
            _ => Ok(Layout::Inline),
        }
    }

    fn count(text: &str, field: &'static str) -> Result<Option<u32>, NotYet> {
        match read_text(text, Kind::Count, count_unit()) {
            None => Ok(None),
            // A count is whole and not below none; one too large for any engine is told as such.
            Some(Ok(typed)) => Ok(Some(typed.si() as u32)),
            Some(Err(error)) => Err(NotYet::Field(field, error.to_string())),
        }
    }

    fn engine(self) -> Result<Engine, NotYet> {
        let layout = self.layout()?;
        let cylinders = Self::count(&self.cylinders.get(), "cylinders")?.ok_or_else(|| {
            NotYet::Field(
                "cylinders",
                "Type how many cylinders it has, such as 4.".to_owned(),
            )
        })?;
        let mains = Self::count(&self.mains.get(), "mains")?;
        Engine::new(&self.name.get(), cylinders, layout, mains).map_err(NotYet::Engine)
    }

    /// What is written down: the engine, and of how it is built only what was
    /// said. What is assumed is no fact.
    fn described(self) -> Result<EngineDescribed, NotYet> {
        let mut described = EngineDescribed::of(&self.engine()?);
        described.built = self.built.words();
        described
            .engine()
            .map(|_| described)
            .map_err(|problem| NotYet::Field("built", problem.to_string()))
    }

    /// How many mains such an engine usually has, once that can be told.
    fn usual_mains(self) -> Option<u8> {
        let cylinders = Self::count(&self.cylinders.get(), "cylinders").ok()??;
        let layout = self.layout().ok()?;
        let engine = Engine::new("any", cylinders, layout, None).ok()?;
        Some(engine.number_of_mains())
    }
}

fn count_unit() -> &'static Unit {
    unit_or_usual(Kind::Count, "")
}

/// What differs between describing an engine first and later.
#[derive(Clone, Copy)]
pub struct FormWords {
    /// What the button says.
    pub save: &'static str,
    /// Whether it is open how the engine is built.
    pub built_open: bool,
}

/// The form that describes an engine; `from` is what stands in the book already.
/// What is typed is handed over to `done` when it is an engine.
#[must_use]
pub fn description(
    prefix: &str,
    from: Option<&EngineDescribed>,
    words: FormWords,
    done: impl Fn(EngineDescribed) + 'static,
) -> Piece {
    let typing = Typing::load(prefix, from);
    let tried = RwSignal::new(false);
    let engine = Memo::new(move |_| typing.described());
    let wrong = move |field: &'static str| {
        move || {
            // Nothing is scolded before the button was pressed.
            let not_yet = engine.get().err().filter(|_| tried.get())?;
            match not_yet {
                NotYet::Field(at, words) => (at == field).then_some(words),
                NotYet::Engine(error) => (error.field() == field).then(|| error.to_string()),
            }
        }
    };
    let save = move || {
        tried.set(true);
        if let Ok(described) = engine.get_untracked() {
            done(described);
        }
    };
    let layouts = ["inline", "vee", "flat"]
        .map(|id| Word::of(id, id))
        .to_vec();
    let layout = pick(
        "layout",
        "Layout",
        "",
        layouts,
        move || typing.layout.get(),
        move |id| typing.layout.set(id),
    );
    let name = word_field(
        "name",
        "Name",
        "What you call it, such as the machine it came from.",
        typing.name,
        NAME_AT_MOST,
        wrong("name"),
    );
    let cylinders = QuantityField::new(
        "cylinders",
        "Cylinders",
        typing.cylinders,
        Kind::Count,
        count_unit,
    )
    .wrong(wrong("cylinders"));
    let angle = move || {
        let degrees = || unit_or_usual(Kind::Angle, "°");
        QuantityField::new(
            "bank-angle",
            "Bank angle",
            typing.bank_angle,
            Kind::Angle,
            degrees,
        )
        .wrong(wrong("bank_angle"))
        .piece()
        .into()
    };
    let mains = QuantityField::new("mains", "", typing.mains, Kind::Count, count_unit)
        .live_label(move || match typing.usual_mains() {
            Some(usual) => format!("Main bearings (usually {usual}: leave empty if so)"),
            None => "Main bearings (empty: the usual number)".to_owned(),
        })
        .wrong(wrong("mains"))
        .how("Count the main caps: the crank on your bench decides.")
        .next_word("Done");
    let built_wrong = note("wrong", "").live_text(move || wrong("built")().unwrap_or_default());
    Piece::all([
        name.into(),
        layout.into(),
        cylinders.piece().into(),
        Piece::when(move || typing.layout.get() == "vee", angle),
        mains.piece().into(),
        typing.built.form(words.built_open).into(),
        built_wrong.into(),
        row([button("", words.save, "describe-save", save).into()]).into(),
    ])
}
