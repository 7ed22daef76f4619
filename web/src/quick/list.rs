//! The list of quick checks: the one that is asked for most on top, the others
//! by what a person is holding.

use assembly_core::describe::Calculation;

use super::groups::{GROUPS, Group};
use super::offered::OFFERED;
use crate::device::drafts::Draft;
use crate::kit::piece::{El, Piece, el, note, title};
use crate::kit::section::{fold, section};
use crate::kit::words::word_field;
use crate::later::all_checks_later;
use crate::route::Route;

/// Words to find a check by: more is no word of the trade.
const WORDS_AT_MOST: usize = 60;

/// Every quick check.
#[must_use]
pub fn quick_checks() -> Piece {
    let first = OFFERED.iter().map(|one| entry(one, "check").into());
    Piece::all([
        title("Quick checks").into(),
        note(
            "lead",
            "One answer, worked out as you type. Nothing is written into a build unless you keep it.",
        )
        .into(),
        section("Oil clearance of a bearing")
            .with(el("ul").class("entries").all(first))
            .into(),
        all_checks_later(),
    ])
}

/// All checks by what is in the hand, with a field to find one.
#[must_use]
pub fn all_checks() -> Piece {
    let words = Draft::of("quick-find");
    let field = word_field(
        "find-check",
        "Find a check",
        "By a word of the trade, such as gap, crush, lash or leak.",
        words,
        WORDS_AT_MOST,
        || None,
    );
    let found = Piece::live(move || groups(&words.get()));
    section("By what you are holding")
        .with(field)
        .with(found)
        .into()
}

fn groups(words: &str) -> Piece {
    let searching = !words.trim().is_empty();
    let found: Vec<(&Group, Vec<&'static Calculation>)> = GROUPS
        .iter()
        .map(|group| (group, group.found(words)))
        .filter(|(_, checks)| !checks.is_empty())
        .collect();
    let count: usize = found.iter().map(|(_, checks)| checks.len()).sum();
    let says = match count {
        0 => "No check answers to that. Try a shorter word, or fewer.".to_owned(),
        1 => "1 check".to_owned(),
        count => format!("{count} checks"),
    };
    let folds = found.into_iter().map(|(group, checks)| {
        let entries = checks.into_iter().map(|one| entry(one, "found").into());
        let list = el("ul").class("entries").all(entries);
        let part = fold(group.title, list);
        if searching {
            part.attr("open", "").into()
        } else {
            part.into()
        }
    });
    Piece::all([
        note("hint", &says)
            .attr("role", "status")
            .test("found-count")
            .into(),
        Piece::all(folds),
    ])
}

fn entry(check: &'static Calculation, test: &str) -> El {
    let to = Route::QuickCheck(check.id.to_owned()).to_string();
    let link = el("a")
        .class("entry")
        .attr("href", &to)
        .test(&format!("{test}-{}", check.id))
        .with(el("strong").text(check.title))
        .with(el("span").text(check.purpose));
    el("li").with(link)
}
