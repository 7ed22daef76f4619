//! Beginning a build by describing its engine.

use assembly_core::quantity::{Kind, Unit, unit_or_usual};
use build_journal::Body;
use build_journal::fact::EngineDescribed;
use build_plan::engine::NAME_AT_MOST;
use build_plan::{Engine, EngineError, Layout};
use leptos::prelude::*;
use uom::si::f64::Angle;

use crate::device::drafts::{self, Draft};
use crate::device::keeping::keeping;
use crate::kit::field::{QuantityField, read_text};
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{Piece, button, note, row, title};
use crate::kit::toast::toast;
use crate::kit::words::word_field;
use crate::route::{self, Page, Route};

const DRAFT: &str = "new-build/";

/// What was typed of the engine.
#[derive(Clone, Copy)]
struct Typing {
    name: Draft,
    cylinders: Draft,
    layout: Draft,
    bank_angle: Draft,
    mains: Draft,
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
    fn load() -> Self {
        let of = |field: &str, start: &str| Draft::or(format!("{DRAFT}{field}"), start);
        Self {
            name: of("name", ""),
            cylinders: of("cylinders", ""),
            layout: of("layout", "inline"),
            bank_angle: of("bank-angle", "90"),
            mains: of("mains", ""),
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

/// The form that describes an engine.
#[must_use]
pub fn new_build() -> Piece {
    let keeping = keeping();
    let toast = toast();
    let typing = Typing::load();
    let tried = RwSignal::new(false);
    let engine = Memo::new(move |_| typing.engine());
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
        let Ok(engine) = engine.get_untracked() else {
            return;
        };
        let id = keeping.begin();
        match keeping.write_down(id, Body::EngineDescribed(EngineDescribed::of(&engine))) {
            Ok(_) => {
                drafts::forget(DRAFT);
                route::go(&Route::Build(id.to_string(), Page::Mains));
            }
            Err(error) => toast.say(error.to_string()),
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
    let lead = "From this come the places to measure. It can be described again later.";
    Piece::all([
        title("Describe the engine").into(),
        note("lead", lead).into(),
        name.into(),
        layout.into(),
        cylinders.piece().into(),
        Piece::when(move || typing.layout.get() == "vee", angle),
        mains.piece().into(),
        row([button("", "Begin the build", "describe-save", save).into()]).into(),
    ])
}
