//! Something was changed: what, where, and what that makes stale, shown before
//! it is written down.

mod choose;
mod one;
mod written;

use leptos::prelude::*;

use crate::build::Opened;
use crate::kit::piece::Piece;

/// The page: all that can be changed, or one of it.
#[must_use]
pub fn change(event: Option<&str>) -> Piece {
    let opened: Opened = expect_context();
    match event {
        None => choose::choose(opened),
        Some(event) => one::one(opened, event),
    }
}
