//! The list of quick checks.

use super::offered::OFFERED;
use crate::kit::piece::{Piece, el, note, title};
use crate::route::Route;

/// Every quick check, one link each.
#[must_use]
pub fn quick_checks() -> Piece {
    let links = OFFERED.iter().map(|one| {
        let to = Route::QuickCheck(one.id.to_owned()).to_string();
        let link = el("a")
            .class("entry")
            .attr("href", &to)
            .test(&format!("check-{}", one.id))
            .with(el("strong").text(one.title))
            .with(el("span").text(one.purpose));
        el("li").with(link).into()
    });
    Piece::all([
        title("Quick checks").into(),
        note(
            "lead",
            "One answer, worked out as you type. Nothing is written into a build.",
        )
        .into(),
        el("ul").class("entries").all(links).into(),
    ])
}
