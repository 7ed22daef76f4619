//! What every place would get and give, and accepting it.

use assembly_core::choose::shells::OddHalf;
use assembly_core::measure::{Measured, Verdict};
use assembly_core::quantity::{Kind, Si, Unit, read};
use build_journal::Body;
use build_journal::fold::{Chosen, ChosenPlace, Wishes};
use build_plan::choice::{Choice, ChosenBy};
use leptos::prelude::*;
use uom::si::f64::Length;
use web_sys::Element;

use super::words::goes;
use crate::build::Opened;
use crate::build::tonight::{results, way_back};
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::field::QuantityField;
use crate::kit::judged::{capital, window_words};
use crate::kit::number;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, note, p};
use crate::kit::section::{section, sentences};
use crate::kit::toast::toast;
use crate::kit::verdict::{Mark, shape};

/// What was chosen, and after how many facts: one fact more, and it is chosen
/// anew.
#[derive(Clone, PartialEq)]
struct Shown {
    facts: usize,
    found: Result<Chosen, Vec<String>>,
}

/// The wishes, and the button that stays under the thumb over all that lies on the
/// bench; then what comes of it, with its own button at the foot of the screen.
pub fn choosing(opened: Opened, choice: &'static Choice, bench: Piece) -> Piece {
    let draft = |name: &str| Draft::of(opened.draft(&format!("placing/{}/{name}", choice.id)));
    let (odd, sold_in) = (draft("odd"), draft("sold-in"));
    // Asked for here: a press has no context to ask.
    let settings = settings();
    let unit = move || {
        let measure = choice.measure;
        settings.units().of(measure.kind, measure.units)
    };
    let size_unit = move || {
        let measure = choice.read_like;
        settings.units().of(measure.kind, measure.units)
    };
    let wishes: Piece = match choice.by {
        ChosenBy::Shells { .. } => pick(
            "placing-odd",
            "Where the odd half of a mixed pair goes",
            "All on one side (common practice).",
            vec![
                Word::of("", "whichever side comes out better"),
                Word::of("upper", "block or rod"),
                Word::of("lower", "cap"),
            ],
            move || odd.get(),
            move |id| odd.set(id),
        )
        .into(),
        ChosenBy::Shims => QuantityField::new(
            "placing-sold-in",
            "Step that new shims are sold in",
            sold_in,
            Kind::Length,
            size_unit,
        )
        .how("Leave it empty when none can be bought. Commonly 0.05 mm, with some makers 0.025 mm.")
        .piece()
        .into(),
        _ => Piece::none(),
    };
    let shown = RwSignal::new(None::<Shown>);
    let choose = button("", "Choose", "choose", move || {
        let text = sold_in.now();
        let step = match text.trim() {
            "" => None,
            text => match read(text, Kind::Length, untrack(size_unit)) {
                Ok(typed) if typed.si() > 0.0 => Some(typed),
                // The field says what is wrong with it.
                _ => return,
            },
        };
        let wishes = Wishes {
            odd: match odd.now().as_str() {
                "upper" => OddHalf::Upper,
                "lower" => OddHalf::Lower,
                _ => OddHalf::OneSide,
            },
            sold_in: step.map(|typed| Length::from_si(typed.si())),
        };
        let found = opened
            .build
            .with_untracked(|build| build.choose(choice, wishes));
        shown.set(Some(Shown {
            facts: facts(opened),
            found: found.map_err(|missing| missing.iter().map(ToString::to_string).collect()),
        }));
    });
    let result = el("div").class("to-thumb").live(move || {
        let Some(one) = shown.get() else {
            return Piece::none();
        };
        let now = opened.journal.with(build_journal::Journal::len);
        let unit = unit();
        untrack(|| match one.found {
            _ if one.facts != now => {
                note("hint", "Something was written down since. Choose again.")
                    .test("choose-again")
                    .into()
            }
            Ok(chosen) => result(opened, &chosen, unit, shown),
            Err(missing) => section("Missing for a choice")
                .test("choice-missing")
                .attr("role", "status")
                .with(sentences("missing", &missing))
                .into(),
        })
    });
    // What was asked for begins at the top of the screen.
    let element: Element = result.element();
    Effect::new(move |_| {
        if shown.with(Option::is_some) {
            let element = element.clone();
            request_animation_frame(move || element.scroll_into_view());
        }
    });
    let asked = el("div")
        .class("to-thumb")
        .with(bench)
        .with(wishes)
        .with(thumb_bar(choose));
    Piece::all([asked.into(), result.into()])
}

/// A button at the foot of the screen, for as long as what it is about is there.
fn thumb_bar(button: El) -> El {
    el("div").class("thumb-bar").with(button)
}

fn facts(opened: Opened) -> usize {
    opened.journal.with_untracked(build_journal::Journal::len)
}

fn result(
    opened: Opened,
    chosen: &Chosen,
    unit: &'static Unit,
    shown: RwSignal<Option<Shown>>,
) -> Piece {
    let rows = chosen
        .places
        .iter()
        .map(|one| place_row(chosen, one, unit).into());
    let all = el("ul").class("strip").test("chosen").all(rows);
    let against = p(&summary(chosen, unit))
        .test("chosen-summary")
        .attr("role", "status");
    let by_the_box = (!chosen.not_measured.is_empty()).then(|| {
        note(
            "notice notice-caution",
            &format!(
                "No verdict: the size of {} is the box's and was not measured.",
                quoted(&chosen.not_measured)
            ),
        )
        .test("by-the-box")
    });
    let body = Body::PartsPlaced(opened.build.with_untracked(|build| {
        let words = |one: &ChosenPlace| {
            let what = goes(chosen.choice, &one.part, unit);
            (what, number::text(one.gives.estimate(), unit))
        };
        build.accepted(chosen, words)
    }));
    let preview = opened.preview(std::slice::from_ref(&body));
    let undone = (!preview.stale.is_empty()).then(|| {
        section("What it undoes")
            .test("placing-undoes")
            .with(results(&preview.stale))
            .with(way_back(opened, &preview.way_back))
    });
    let toast = toast();
    let accept = button(
        "",
        "That is what goes where: write it down",
        "accept",
        move || {
            if opened.write_down(body.clone()).is_some() {
                shown.set(None);
                toast.say("Written down. Mark every part for its place at once.");
            }
        },
    );
    let found = section("What would go where").with(against).with(all);
    Piece::all([
        found.with(by_the_box).into(),
        undone.into(),
        thumb_bar(accept).into(),
    ])
}

fn quoted(names: &[String]) -> String {
    let all: Vec<String> = names.iter().map(|name| format!("“{name}”")).collect();
    all.join(", ")
}

/// How well it comes out, in a sentence.
fn summary(chosen: &Chosen, unit: &'static Unit) -> String {
    let Some(span) = chosen.span() else {
        return String::new();
    };
    let say = |value: &Measured<Length>| number::text(value.estimate(), unit);
    let limits = window_words(&chosen.window, unit);
    if chosen.places.len() == 1 {
        return format!("Against {limits}: {}.", say(&span.least));
    }
    format!(
        "Against {limits}: from {} to {}, {} apart.",
        say(&span.least),
        say(&span.greatest),
        say(&span.apart)
    )
}

fn place_row(chosen: &Chosen, one: &ChosenPlace, unit: &'static Unit) -> El {
    let mark = match one.verdict {
        Some(Verdict::Good) => Mark::Good,
        Some(Verdict::TooCloseToCall) => Mark::Close,
        Some(Verdict::Bad) => Mark::Bad,
        None => Mark::None,
    };
    let verdict = if mark == Mark::None {
        "no verdict"
    } else {
        mark.words()
    };
    let words = el("span")
        .class("strip-words")
        .with(el("strong").text(&capital(&one.at.to_string())))
        .with(el("span").text(&goes(chosen.choice, &one.part, unit)))
        .with(
            el("span")
                .class("strip-value")
                .text(&number::text(one.gives.estimate(), unit)),
        )
        .with(el("span").class("strip-says").text(verdict));
    el("li").with(
        el("div")
            .class("strip-row")
            .test("chosen-place")
            .attr("data-verdict", mark.name())
            .with(shape(mark))
            .with(words),
    )
}
