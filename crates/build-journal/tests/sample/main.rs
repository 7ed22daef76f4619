//! The sample engine: the file that the page offers to play with is what is
//! made here, and it says exactly what it is meant to say.
//!
//! All of it is invented: no engine of these sizes is known to us. The sizes are
//! such as the trade has for an engine of this kind; the limits are made up with
//! them. `THOUBOOK_WRITE_SAMPLE=1 cargo test -p build-journal --test sample`
//! writes the file anew.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

mod bench;
mod book;
mod oil;
mod rounds;
mod verdicts;
