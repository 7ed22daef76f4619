//! The sizes that parts are made in, as the builder's sheet lists them.

use assembly_core::quantity::Unit;
use build_journal::Body;
use build_journal::fact::{SizedPart, SizesListed};
use build_plan::Measure;
use build_plan::measure::{MAIN_SHELL_WALL, ROD_SHELL_WALL};
use leptos::prelude::*;

use super::limits::{origin_from, origin_pick, origin_words};
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::device::settings::{Settings, settings};
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, button, el, p, row};
use crate::kit::section::section;
use crate::kit::toast::{Toast, toast};
use crate::kit::words::{too_long, word_field};

const SIZES_AT_MOST: usize = 120;
const NOTE_AT_MOST: usize = 200;

/// What such a list is of, as a heading.
#[must_use]
pub const fn title_of(part: SizedPart) -> &'static str {
    match part {
        SizedPart::MainJournals => "Undersizes of the main journals",
        SizedPart::RodJournals => "Undersizes of the rod journals",
        SizedPart::Bores => "Oversizes of bores and pistons",
        SizedPart::MainShells => "Sizes of main half-shells",
        SizedPart::RodShells => "Sizes of rod half-shells",
    }
}

/// What is taken while there is no list, and how one is typed.
const fn hint(part: SizedPart) -> &'static str {
    match part {
        SizedPart::MainJournals | SizedPart::RodJournals => {
            "How far each is under standard, with semicolons between: 0.010; 0.020. Until then 0.010, 0.020 and 0.030 in, or 0.25, 0.50 and 0.75 mm, are asked about: common practice."
        }
        SizedPart::Bores => {
            "How far each is over standard, with semicolons between: 0.020; 0.030. Until then 0.010 to 0.060 in, or 0.25 to 1.00 mm, are asked about: common practice."
        }
        SizedPart::MainShells | SizedPart::RodShells => {
            "By how much a whole set closes the clearance, with semicolons between and a minus for extra clearance: 0.001; 0.002; -0.001. Until then steps of one thou are taken: common practice."
        }
    }
}

/// A list in one line, as the book tells of it.
#[must_use]
pub fn listed_words(listed: &SizesListed) -> String {
    let sizes = if listed.sizes.is_empty() {
        "none".to_owned()
    } else {
        let with_unit = |size: &String| {
            if size.chars().any(char::is_alphabetic) {
                size.clone()
            } else {
                format!("{size} {}", listed.unit)
            }
        };
        let sizes: Vec<String> = listed.sizes.iter().map(with_unit).collect();
        sizes.join("; ")
    };
    let (title, from) = (title_of(listed.of), origin_words(listed.origin));
    format!("{title}: {sizes}, from {from}, {}", listed.origin_note)
}

/// The list of these parts, and the form to write one down.
#[must_use]
pub fn listed_sizes(part: SizedPart, measure: &'static Measure) -> Piece {
    let opened: Opened = expect_context();
    let draft = |name: &str, start: &str| {
        Draft::or(opened.draft(&format!("sizes/{}/{name}", part.id())), start)
    };
    Form {
        part,
        measure,
        opened,
        settings: settings(),
        toast: toast(),
        sizes: draft("sizes", ""),
        origin: draft("origin", "sheet"),
        note: draft("note", ""),
        tried: RwSignal::new(false),
    }
    .section()
    .into()
}

#[derive(Clone, Copy)]
struct Form {
    part: SizedPart,
    /// In whose units a lone number is.
    measure: &'static Measure,
    opened: Opened,
    settings: Settings,
    toast: Toast,
    sizes: Draft,
    origin: Draft,
    note: Draft,
    tried: RwSignal<bool>,
}

impl Form {
    fn unit(self) -> &'static Unit {
        let units = self.settings.units();
        units.of(self.measure.kind, self.measure.units)
    }

    fn typed(self) -> SizesListed {
        SizesListed {
            of: self.part,
            sizes: SizesListed::split(&self.sizes.get()),
            unit: self.unit().symbol.to_owned(),
            origin: origin_from(&self.origin.get()),
            origin_note: self.note.get().trim().to_owned(),
        }
    }

    fn sizes_wrong(self) -> Option<String> {
        let typed = self.typed();
        if typed.sizes.is_empty() {
            return (self.tried.get()).then(|| "Type the sizes that are listed.".to_owned());
        }
        let said = typed.read().err().map(|problem| problem.to_string())?;
        Some(format!("{}.", capital(&said)))
    }

    fn note_wrong(self) -> Option<String> {
        (self.tried.get() && self.note.get().trim().is_empty())
            .then(|| "Say which sheet and page, or why this choice.".to_owned())
    }

    fn section(self) -> El {
        let now = Piece::live(move || {
            self.opened
                .build
                .with(|build| {
                    let listed = build.sizes_of(self.part)?;
                    let fact = listed.fact;
                    let strike = button("quiet", "Strike out", "strike-sizes", move || {
                        let _ = self.opened.strike(fact, None);
                    });
                    let words = listed_words(&listed.listed);
                    Some(
                        el("div")
                            .class("card")
                            .test("listed-sizes")
                            .with(p(&words))
                            .with(row([strike.into()])),
                    )
                })
                .into()
        });
        let sizes = word_field(
            "sizes",
            "The sizes beside the standard one",
            hint(self.part),
            self.sizes,
            SIZES_AT_MOST,
            move || self.sizes_wrong(),
        );
        let unit = el("p")
            .class("hint")
            .live_text(move || format!("A number without a unit is in {}.", self.unit().symbol));
        let note = word_field(
            "sizes-note",
            "Which sheet and page, or why",
            "",
            self.note,
            NOTE_AT_MOST,
            move || self.note_wrong(),
        );
        let save = button("", "Write these sizes down", "sizes-save", move || {
            self.save()
        });
        section(title_of(self.part))
            .test("sizes")
            .with(now)
            .with(sizes)
            .with(unit)
            .with(origin_pick("sizes-origin", self.origin))
            .with(note)
            .with(row([save.into()]))
    }

    fn save(self) {
        self.tried.set(true);
        let listed = untrack(|| self.typed());
        if untrack(|| self.sizes_wrong().or_else(|| self.note_wrong())).is_some()
            || too_long(&self.sizes.now(), SIZES_AT_MOST).is_some()
            || too_long(&listed.origin_note, NOTE_AT_MOST).is_some()
        {
            return;
        }
        if self.opened.write_down(Body::SizesListed(listed)).is_some() {
            self.sizes.clear();
            self.note.clear();
            self.tried.set(false);
            self.toast.say("The sizes are written down.");
        }
    }
}

/// The measure in whose units sizes are typed: those of half-shells in the units of
/// their walls, since a clearance is said in finer ones.
#[must_use]
pub fn measure_of_sizes(measure: &'static Measure) -> &'static Measure {
    match SizedPart::of_measure(measure) {
        Some(SizedPart::MainShells) => &MAIN_SHELL_WALL,
        Some(SizedPart::RodShells) => &ROD_SHELL_WALL,
        _ => measure,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fact::LimitsOrigin;

    #[test]
    fn a_list_is_told_in_one_line_with_where_it_comes_from() {
        let mut listed = SizesListed {
            of: SizedPart::MainJournals,
            sizes: SizesListed::split("0.010; 0.5 mm"),
            unit: "in".to_owned(),
            origin: LimitsOrigin::PartSheet,
            origin_note: "page 7".to_owned(),
        };
        assert_eq!(
            listed_words(&listed),
            "Undersizes of the main journals: 0.010 in; 0.5 mm, from the sheet of the part, page 7"
        );
        listed.sizes.clear();
        assert!(listed_words(&listed).contains("journals: none, from"));
    }
}
