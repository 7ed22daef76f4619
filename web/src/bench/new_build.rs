//! Beginning a build by describing its engine.

use assembly_core::quantity::{Kind, Unit, unit_or_usual};
use build_journal::Body;
use build_journal::fact::EngineDescribed;
use build_plan::{Engine, EngineError, Layout};
use leptos::prelude::*;
use uom::si::f64::Angle;

use crate::device::drafts::{self, Draft};
use crate::device::keeping::keeping;
use crate::kit::field::{QuantityField, WordField, read_text};
use crate::kit::pick::{Pick, Word};
use crate::kit::toast::toast;
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
#[component]
pub fn NewBuild() -> impl IntoView {
    let keeping = keeping();
    let toast = toast();
    let typing = Typing::load();
    let tried = RwSignal::new(false);
    let engine = Memo::new(move |_| typing.engine());
    let wrong = move |field: &'static str| {
        Signal::derive(move || {
            // Nothing is scolded before the button was pressed.
            let not_yet = engine.get().err().filter(|_| tried.get())?;
            match not_yet {
                NotYet::Field(at, words) => (at == field).then_some(words),
                NotYet::Engine(error) => (error.field() == field).then(|| error.to_string()),
            }
        })
    };
    let save = move |_| {
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
    let count: Signal<&'static Unit> = Signal::derive(count_unit);
    let degrees: Signal<&'static Unit> = Signal::derive(|| unit_or_usual(Kind::Angle, "°"));
    let mains_label = Signal::derive(move || match typing.usual_mains() {
        Some(usual) => format!("Main bearings (usually {usual}: leave empty if so)"),
        None => "Main bearings (empty: the usual number)".to_owned(),
    });
    view! {
        <h1>"Describe the engine"</h1>
        <p class="lead">"From this come the places to measure. It can be described again later."</p>
        <WordField
            name="name"
            label="Name"
            hint="What you call it, such as the machine it came from."
            draft=typing.name
            at_most=120
            wrong=wrong("name")
        />
        <Pick
            name="layout"
            label="Layout"
            words=vec![Word::of("inline", "inline"), Word::of("vee", "vee"), Word::of("flat", "flat")]
            picked=Signal::derive(move || typing.layout.get())
            on_pick=Callback::new(move |id| typing.layout.set(id))
        />
        <QuantityField
            name="cylinders"
            label="Cylinders"
            draft=typing.cylinders
            kind=Kind::Count
            unit=count
            wrong=wrong("cylinders")
        />
        <Show when=move || typing.layout.get() == "vee">
            <QuantityField
                name="bank-angle"
                label="Bank angle"
                draft=typing.bank_angle
                kind=Kind::Angle
                unit=degrees
                wrong=wrong("bank_angle")
            />
        </Show>
        <QuantityField
            name="mains"
            label=mains_label
            draft=typing.mains
            kind=Kind::Count
            unit=count
            wrong=wrong("mains")
            how="Count the main caps: the crank on your bench decides."
            next_word="Done"
        />
        <div class="row">
            <button type="button" class="button" data-test="describe-save" on:click=save>
                "Begin the build"
            </button>
        </div>
    }
}
