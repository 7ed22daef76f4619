//! Asking the shop for a number.

use assembly_core::measure::{Window, WindowError};
use assembly_core::quantity::Kind;
use build_journal::Body;
use build_journal::fact::{Spot, WorkWanted};
use build_journal::fold::ShopWork;
use build_plan::proof::Proof;
use build_plan::{Measure, Place};
use leptos::prelude::*;

use super::rows::unit_for;
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::device::settings::{Settings, settings};
use crate::kit::judged::capital;
use crate::kit::limit::{Limit, LimitField};
use crate::kit::pick::Word;
use crate::kit::piece::{El, Piece, button, el, row};
use crate::kit::select::select;
use crate::kit::toast::toast;

const ALL: &str = "all";

/// A number that is being asked for.
#[derive(Clone, Copy)]
struct Wanting {
    opened: Opened,
    settings: Settings,
    measure: Draft,
    place: Draft,
    low: LimitField,
    high: LimitField,
    tried: RwSignal<bool>,
}

/// The form; `done` closes it.
#[must_use]
pub fn wanting(opened: Opened, work: &ShopWork, done: impl Fn() + Copy + 'static) -> El {
    let settings = settings();
    let toast = toast();
    let id = work.ordered.work;
    let measures = offered(opened, work);
    let first = measures.first().map_or("", |measure| measure.id);
    let draft =
        |name: &str, start: &str| Draft::or(opened.draft(&format!("wanted/{id}/{name}")), start);
    let form = Wanting {
        opened,
        settings,
        measure: draft("measure", first),
        place: draft("place", ALL),
        low: LimitField::of_anything(draft("low", "")),
        high: LimitField::of_anything(draft("high", "")),
        tried: RwSignal::new(false),
    };
    let which = select(
        "wanted-measure",
        "Which number",
        measures
            .into_iter()
            .map(|measure| Word::of(measure.id, capital(measure.label))),
        move || form.measure.get(),
        move |id| {
            form.measure.set(id);
            form.place.set(ALL.to_owned());
        },
    );
    let kind = Memo::new(move |_| form.measure().map_or(Kind::Length, |one| one.kind));
    let numbers = Piece::live(move || {
        let kind = kind.get();
        untrack(|| {
            let unit = move || unit_for(form.measure(), settings.units());
            let low = form
                .low
                .piece("wanted-low", "At least", kind, unit, || None);
            let high = form
                .high
                .piece("wanted-high", "At most", kind, unit, move || {
                    form.wrong(kind)
                });
            el("div").class("pair").with(low).with(high).into()
        })
    });
    let write = move || {
        form.tried.set(true);
        let Some(measure) = untrack(|| form.measure()) else {
            return;
        };
        let unit = unit_for(Some(measure), untrack(|| settings.units()));
        if untrack(|| form.window(measure.kind)).is_err() {
            return;
        }
        let typed = |field: LimitField| {
            Some(field.draft.now().trim().to_owned()).filter(|text| !text.is_empty())
        };
        let wrote = opened.write_down(Body::WorkWanted(WorkWanted {
            work: id,
            measure: measure.id.to_owned(),
            place: form.part(measure).map(Spot::Known),
            low: typed(form.low),
            high: typed(form.high),
            unit: unit.symbol.to_owned(),
        }));
        if wrote.is_some() {
            form.clear();
            done();
            toast.say(format!("Asked for: {}.", measure.label));
        }
    };
    let give_up = move || {
        form.clear();
        done();
    };
    el("div")
        .class("inset")
        .test("wanting")
        .with(which)
        .with(Piece::live(move || form.places().into()))
        .with(numbers)
        .with(row([
            button("", "Ask for it", "wanted-write", write).into(),
            button("quiet", "Leave it", "wanted-leave", give_up).into(),
        ]))
}

/// What a shop can be asked for: first what this work is there to get right,
/// then all other measures of the engine.
fn offered(opened: Opened, work: &ShopWork) -> Vec<&'static Measure> {
    opened.build.with_untracked(|build| {
        let Some(described) = &build.engine else {
            return Vec::new();
        };
        let step = work.ordered.step.as_deref();
        let proved = step
            .and_then(|id| build.plan.step(id))
            .map(|step| build.plan.proves(step));
        let mut offered: Vec<&'static Measure> = Vec::new();
        let own = proved
            .into_iter()
            .flatten()
            .filter_map(|proof| match proof {
                Proof::Measure(measure) => Some(measure),
                _ => None,
            });
        for measure in own.chain(build.plan.measures(&described.engine)) {
            if offered.iter().all(|one| one.id != measure.id) {
                offered.push(measure);
            }
        }
        offered
    })
}

impl Wanting {
    fn measure(self) -> Option<&'static Measure> {
        let id = self.measure.get();
        self.opened
            .build
            .with_untracked(|build| build.plan.measure(&id))
    }

    /// The part it is asked for; none for all of them.
    fn part(self, measure: &Measure) -> Option<Place> {
        let wanted = self.place.now();
        let parts = self.opened.build.with_untracked(|build| {
            let engine = build.engine.as_ref().map(|one| &one.engine);
            engine.map_or_else(Vec::new, |engine| measure.spots.per.parts(engine))
        });
        let at = parts.into_iter().find(|at| at.to_string() == wanted)?;
        Some(Place::of(at))
    }

    fn places(self) -> Option<El> {
        let measure = self.measure()?;
        let parts = self.opened.build.with_untracked(|build| {
            let engine = build.engine.as_ref().map(|one| &one.engine);
            engine.map_or_else(Vec::new, |engine| measure.spots.per.parts(engine))
        });
        let place = self.place;
        (parts.len() > 1).then(|| {
            let all = Word::of(ALL, "On all of them");
            let each = parts
                .into_iter()
                .map(|at| Word::of(at.to_string(), capital(&at.to_string())));
            select(
                "wanted-place",
                "Where",
                std::iter::once(all).chain(each),
                move || place.get(),
                move |id| place.set(id),
            )
        })
    }

    /// The window of what is typed; `Err(None)` while a text cannot be read.
    fn window(self, kind: Kind) -> Result<Window, Option<WindowError>> {
        let unit = unit_for(self.measure(), self.settings.units());
        let side = |field: LimitField| match field.get(kind, unit) {
            Limit::None => Ok(None),
            Limit::Typed(typed) => Ok(Some(typed.si())),
            Limit::NotYet => Err(None),
        };
        let (low, high) = (side(self.low)?, side(self.high)?);
        Window::new(low, high).map_err(Some)
    }

    fn wrong(self, kind: Kind) -> Option<String> {
        match self.window(kind) {
            Err(Some(WindowError::NoLimit)) if !self.tried.get() => None,
            Err(Some(error)) => Some(error.to_string()),
            _ => None,
        }
    }

    fn clear(self) {
        for draft in [self.measure, self.place, self.low.draft, self.high.draft] {
            draft.clear();
        }
        self.tried.set(false);
    }
}
