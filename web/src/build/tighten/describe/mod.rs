//! Describing a group of fasteners from the builder's sheet, step by step. What
//! is wrong is told at its step, at once, and nothing is made up.

mod arrange;
mod bolts;
mod caps;
mod laps;
mod order;
mod stages;
mod what;
mod with_what;

use build_journal::OwnId;
use build_journal::fact::{Body, FastenerGroup};
use build_journal::fold::tightening::{Field, Sheet};
use leptos::prelude::*;

use super::Tighten;
use super::place::Place;
use super::typing::Typing;
use crate::device::chance;
use crate::kit::piece::{El, Piece, button, el, link, note, row, title};
use crate::kit::section::section;
use crate::kit::toast::{Toast, toast};
use crate::kit::words::too_long;
use crate::route;

/// Letters of a group's name that are kept.
const NAME_AT_MOST: usize = 60;
/// Letters of any other text that are kept.
const TEXT_AT_MOST: usize = 120;

/// A description in the making.
#[derive(Clone, Copy)]
struct Describing {
    context: Tighten,
    typing: Typing,
    group: Memo<FastenerGroup>,
    sheet: Memo<Sheet>,
    tried: RwSignal<bool>,
    toast: Toast,
}

/// The page: of a new group, or of one that is described again.
pub fn describe(context: Tighten, own: Option<OwnId>) -> Piece {
    let was = own.and_then(|own| context.group(own));
    let name = own.map_or_else(|| "new".to_owned(), |own| own.to_string());
    let id = own.unwrap_or_else(|| OwnId::from_random(chance::bits()));
    let made = was.as_ref().map(|was| &was.made);
    let sheet = was.as_ref().map(|was| &*was.sheet);
    let typing = Typing::load(context.opened, id, &name, made, sheet);
    let group = Memo::new(move |_| typing.group());
    let describing = Describing {
        context,
        typing,
        group,
        sheet: Memo::new(move |_| group.with(Sheet::of)),
        tried: RwSignal::new(false),
        toast: toast(),
    };
    let lead = "Everything comes from your own sheet. What it does not say stays empty; the run says what is missing before the first tap.";
    Piece::all([
        title(if own.is_some() {
            "Describe it again"
        } else {
            "Describe a group"
        })
        .into(),
        note("lead", lead).into(),
        what::what(describing).into(),
        bolts::bolts(describing).into(),
        order::order(describing).into(),
        stages::stages(describing).into(),
        with_what::with_what(describing).into(),
        describing.end().into(),
    ])
}

impl Describing {
    /// What is wrong with a part of the sheet, in its place. Before anything
    /// was typed there it is what to do, not a scolding.
    fn wrong(self, field: Field) -> Piece {
        Piece::live(move || {
            let lines: Vec<String> = self
                .sheet
                .with(|sheet| sheet.wrong_with(field).map(str::to_owned).collect());
            let lines = lines.iter().map(|line| {
                note("wrong", line)
                    .test(&format!("wrong-{field:?}").to_lowercase())
                    .into()
            });
            el("div")
                .attr("role", "status")
                .all(lines.collect::<Vec<_>>())
                .into()
        })
    }

    fn name_wrong(self) -> Option<String> {
        let empty = self.group.with(|group| group.label.is_empty());
        (self.tried.get() && empty).then(|| "Give it a name, such as head, left.".to_owned())
    }

    /// The end of the page: what is still in the way of a run, and keeping it.
    fn end(self) -> El {
        let state = Piece::live(move || {
            let left = self.sheet.with(|sheet| sheet.wrong.len());
            let words = match left {
                0 => "The sheet is whole: a run may begin.".to_owned(),
                1 => "One thing is missing or wrong, marked above. It can be kept as it is and completed later; a run begins when it is right.".to_owned(),
                left => format!("{left} things are missing or wrong, marked above. It can be kept as it is and completed later; a run begins when it is right."),
            };
            note("", &words).test("sheet-state").into()
        });
        let keep = button("", "Keep this group", "group-save", move || self.keep());
        let back = link(
            "quiet",
            &self.context.to(Place::Groups),
            "Back to the groups",
        );
        section("6 · Keep it")
            .with(state)
            .with(row([keep.into(), back.into()]))
    }

    fn keep(self) {
        self.tried.set(true);
        let group = self.group.get_untracked();
        if group.label.is_empty() || too_long(&group.label, NAME_AT_MOST).is_some() {
            self.toast.say("Give it a name first, at the top.");
            return;
        }
        let (own, per) = (group.own, group.per.clone());
        if self
            .context
            .opened
            .write_down(Body::FastenerGroup(group))
            .is_some()
        {
            self.typing.clear();
            let to = match per {
                None => Place::Part(own.to_string(), "engine".to_owned()),
                Some(_) => Place::Groups,
            };
            route::go(&self.context.to(to));
        }
    }
}
