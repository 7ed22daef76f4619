//! What the builder knows of pump, oil and sizes, typed in.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::Kind;
use build_journal::Body;
use build_journal::fact::{Groove, OilSystem, Said};
use leptos::prelude::*;

use super::cylinder::left_empty;
use super::page::Oil;
use super::place::Place;
use super::said::{PRESSURE, SaidField, words};
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, note, row, title};
use crate::kit::section::{section, sentences};
use crate::kit::toast::{Toast, toast};
use crate::kit::words::{too_long, word_field};
use crate::route::go;

const GRADE_AT_MOST: usize = 20;
const SIZE: (Kind, UsualUnits) = (Kind::Length, UsualUnits::of("in", "mm"));
const VISCOSITY: (Kind, UsualUnits) = (Kind::KinematicViscosity, UsualUnits::of("cSt", "cSt"));
const MASS: (Kind, UsualUnits) = (Kind::Mass, UsualUnits::of("g", "g"));
const ROUGHNESS: (Kind, UsualUnits) = (Kind::Length, UsualUnits::of("µin", "µm"));

/// A field of the oil system.
struct Of {
    name: &'static str,
    label: &'static str,
    how: &'static str,
    kind: (Kind, UsualUnits),
    get: fn(&OilSystem) -> &Option<Said>,
    set: fn(&mut OilSystem) -> &mut Option<Said>,
}

macro_rules! of {
    ($field:ident, $name:literal, $label:literal, $kind:expr, $how:literal) => {
        Of {
            name: $name,
            label: $label,
            how: $how,
            kind: $kind,
            get: |system| &system.$field,
            set: |system| &mut system.$field,
        }
    };
}

static PUMP: [Of; 4] = [
    of!(
        pump_volume,
        "pump-volume",
        "Pump volume a turn",
        (Kind::Volume, UsualUnits::of("cc", "cc")),
        "From its maker, or π/4 × (tip circle² − root circle²) × width of its gears."
    ),
    of!(
        pump_ratio,
        "pump-ratio",
        "Pump turns for one of the crank",
        (Kind::Ratio, UsualUnits::NONE),
        "0.5 when the cam drives it, 1 when the crank does. Left out, it goes by the engine."
    ),
    of!(
        relief,
        "relief",
        "Relief opens at",
        PRESSURE,
        "From the maker's sheet, or by spring and plunger."
    ),
    of!(
        bypass,
        "bypass",
        "Filter bypass opens at",
        PRESSURE,
        "The difference over the filter; on its box or its maker's page."
    ),
];

static VISCOSITIES: [Of; 2] = [
    of!(
        at_40,
        "at-40",
        "Viscosity at 40 °C",
        VISCOSITY,
        "From the oil's data sheet. With both, the grade need not be guessed at."
    ),
    of!(
        at_100,
        "at-100",
        "Viscosity at 100 °C",
        VISCOSITY,
        "From the same sheet."
    ),
];

static SIZES: [Of; 5] = [
    of!(
        stroke,
        "stroke",
        "Stroke",
        SIZE,
        "Rod journals run at half of it."
    ),
    of!(
        main_journal,
        "main-journal",
        "Main journal",
        SIZE,
        "Needed only while no main journal is measured."
    ),
    of!(
        main_shell,
        "main-shell",
        "Length of a main shell",
        SIZE,
        "Caliper across its running face; the mean when one is longer."
    ),
    of!(
        rod_journal,
        "rod-journal",
        "Crankpin",
        SIZE,
        "Needed only while no crankpin is measured."
    ),
    of!(
        rod_shell,
        "rod-shell",
        "Length of a rod shell",
        SIZE,
        "Caliper across its running face."
    ),
];

/// What gas and mass need of one cylinder.
static CYLINDER: [Of; 6] = [
    of!(bore, "bore", "Bore", SIZE, "Measured, or by its sheet."),
    of!(
        rod_length,
        "rod-length",
        "Rod between its centres",
        SIZE,
        "Middle of the pin to middle of the big end."
    ),
    of!(
        up_and_down,
        "up-and-down",
        "Mass that goes up and down",
        MASS,
        "Piston, rings, pin and locks, and the rod's small end: as on the balance card."
    ),
    of!(
        round,
        "going-round",
        "Mass that goes round",
        MASS,
        "The rod's big end with its shells: as on the balance card."
    ),
    of!(
        compression_ratio,
        "compression-ratio",
        "Compression ratio",
        (Kind::Ratio, UsualUnits::NONE),
        "Worked out or by the sheet; 9 for 9 to 1."
    ),
    of!(
        peak_gas,
        "peak-gas",
        "Highest gas pressure",
        PRESSURE,
        "Left out, 3.3 times what the compression makes of the air: common practice at full throttle, spark ignition. Type it for a diesel or a blown engine."
    ),
];

static FILM: [Of; 3] = [
    of!(
        load,
        "film-load",
        "Load on a rod bearing",
        (Kind::Force, UsualUnits::FORCE),
        "If you know it. Left out, it is worked out from the cylinder below, or else taken as 25 bar on its area: common practice."
    ),
    of!(
        journal_roughness,
        "journal-roughness",
        "Roughness Rq of the journals",
        ROUGHNESS,
        "From the shop; polished about 4 to 12 µin."
    ),
    of!(
        shell_roughness,
        "shell-roughness",
        "Roughness Rq of the shells",
        ROUGHNESS,
        "From their maker; about 12 to 24 µin."
    ),
];

/// The form while it is open.
#[derive(Clone, Copy)]
struct Form {
    oil: Oil,
    toast: Toast,
    fields: StoredValue<Vec<(&'static Of, SaidField)>>,
    grade: Draft,
    groove: Draft,
}

impl Form {
    fn load(oil: Oil) -> Self {
        let known = oil.view.with_untracked(|view| {
            let known = view.build.oil.system.as_ref();
            known.map(|known| known.told.clone()).unwrap_or_default()
        });
        let draft = |name: &str, start: &str| {
            Draft::or(oil.opened.draft(&format!("oil/system/{name}")), start)
        };
        let all = PUMP.iter().chain(&VISCOSITIES).chain(&SIZES);
        let all = all.chain(&FILM).chain(&CYLINDER);
        let fields = all.map(|of| {
            let start = (of.get)(&known).as_ref().map(words).unwrap_or_default();
            (of, SaidField::of(draft(of.name, &start), of.kind))
        });
        Self {
            oil,
            toast: toast(),
            fields: StoredValue::new(fields.collect()),
            grade: draft("grade", known.grade.as_deref().unwrap_or_default()),
            groove: draft("groove", known.groove.unwrap_or(Groove::Upper).id()),
        }
    }

    fn part(self, of: &'static [Of]) -> Vec<Piece> {
        self.fields.with_value(|all| {
            all.iter()
                .filter(|(one, _)| of.iter().any(|mine| mine.name == one.name))
                .map(|(one, field)| {
                    let field = field.field(one.name, one.label, false);
                    field.how(one.how).piece().into()
                })
                .collect()
        })
    }

    fn grade_wrong(self) -> Option<String> {
        let text = self.grade.get();
        let text = text.trim();
        if text.is_empty() {
            return None;
        }
        assembly_core::oil::viscosity::Grade::read(text)
            .err()
            .map(|error| error.to_string())
    }

    fn save(self) {
        let mut system = self.oil.view.with_untracked(|view| {
            let known = view.build.oil.system.as_ref();
            known.map(|known| known.told.clone()).unwrap_or_default()
        });
        let mut wrong = false;
        self.fields.with_value(|all| {
            for (of, field) in all {
                match field.now() {
                    Ok(said) => *(of.set)(&mut system) = said,
                    Err(()) => wrong = true,
                }
            }
        });
        let grade = self.grade.now().trim().to_owned();
        if wrong
            || too_long(&grade, GRADE_AT_MOST).is_some()
            || untrack(|| self.grade_wrong()).is_some()
        {
            self.toast
                .say("Something can't be read: look at the fields.");
            return;
        }
        system.grade = (!grade.is_empty()).then_some(grade);
        system.groove = Groove::from_id(&self.groove.now());
        let wrote = self
            .oil
            .opened
            .write_down(Body::OilSystem(Box::new(system)));
        if wrote.is_some() {
            crate::device::drafts::forget(&self.oil.opened.draft("oil/system/"));
            go(&self.oil.route(Place::Pressure));
        }
    }

    fn groove_pick(self) -> El {
        let words = vec![
            Word::of(Groove::Upper.id(), "upper half"),
            Word::of(Groove::AllRound.id(), "all round"),
            Word::of(Groove::None.id(), "none, a hole"),
        ];
        pick(
            "groove",
            "Groove of the main shells",
            "",
            words,
            move || self.groove.get(),
            move |id| self.groove.set(id),
        )
    }
}

/// What the fields of the cylinder are when they stay empty.
fn measured(oil: Oil) -> Piece {
    let settings = settings();
    Piece::live(move || {
        let class = settings.units();
        let known = oil.view.with(|view| view.inputs.measured);
        let bore = left_empty(known.bore.as_ref(), class).map(|words| format!("Bore. {words}"));
        let rod = left_empty(known.rod.as_ref(), class)
            .map(|words| format!("Rod between its centres. {words}"));
        let lines: Vec<String> = [bore, rod].into_iter().flatten().collect();
        let lines = (!lines.is_empty()).then(|| sentences("workings", &lines));
        Piece::all([
            note("hint", "Bore and rods are taken from what you measured; what you type here wins. Stroke, masses and ratio are typed: the plan has no measure of them.").into(),
            lines.map(|lines| lines.test("cylinder-measured")).into(),
        ])
    })
}

/// The page.
pub(super) fn page(oil: Oil) -> Piece {
    let form = Form::load(oil);
    let grade = word_field(
        "grade",
        "Grade on the can",
        "Such as 10W-30",
        form.grade,
        GRADE_AT_MOST,
        move || form.grade_wrong(),
    );
    let save = button("", "Write it down", "oil-system-save", move || form.save());
    Piece::all([
        title("Pump, oil and sizes").into(),
        note(
            "lead",
            "Only what you know. The clearances come from what you measured; what is left out is estimated and said so. The maker's sheet wins.",
        )
        .into(),
        section("Pump").all(form.part(&PUMP)).into(),
        section("Oil").with(grade).all(form.part(&VISCOSITIES)).into(),
        section("Sizes")
            .all(form.part(&SIZES))
            .with(form.groove_pick())
            .into(),
        section("For the film").all(form.part(&FILM)).into(),
        section("For the load of gas and mass")
            .with(measured(oil))
            .all(form.part(&CYLINDER))
            .into(),
        el("div").class("go").with(row([save.into()])).into(),
    ])
}
