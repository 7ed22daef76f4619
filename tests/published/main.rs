//! The calculations against values from outside the project.
//!
//! Reads every table of `tests/reference`, or of the folder that the
//! environment variable `ASSEMBLY_REFERENCE_DIR` names, and prints for each file
//! and topic one line:
//!
//! ```text
//! reference FILE TOPIC: rows N, passed P, failed F, unanswered U
//! ```
//!
//! Every row that fails is named with what was expected and what came out. A
//! row that fails fails the test; a row that nothing answers yet does not.
//!
//! To answer a topic, write a file with a function `answer(&Row) ->
//! Option<Value>`, list it as a [`Subject`] with its file and topic, and name the
//! list in [`SUBJECTS`]. A function sees a row's question, never what is
//! expected, so it can only work it out.

mod runner;

mod assignment;
mod balance;
mod bearing_clearance;
mod compression;
mod fasteners;
mod fits_metrology;
mod gum;
mod limits_card;
mod oil;
mod piston_motion;
mod propagation;
mod springs;
mod unit_conversions;

use std::process::ExitCode;

use runner::Subject;

/// Which function answers which topic of which file, a list a subject.
const SUBJECTS: &[&[Subject]] = &[
    assignment::SUBJECTS,
    balance::SUBJECTS,
    bearing_clearance::SUBJECTS,
    compression::SUBJECTS,
    fasteners::SUBJECTS,
    fits_metrology::SUBJECTS,
    gum::SUBJECTS,
    limits_card::SUBJECTS,
    oil::SUBJECTS,
    piston_motion::SUBJECTS,
    propagation::SUBJECTS,
    springs::SUBJECTS,
    unit_conversions::SUBJECTS,
];

fn main() -> ExitCode {
    runner::run(SUBJECTS)
}
