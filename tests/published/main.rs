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
//! Option<Value>` and name it in [`SUBJECTS`] with its file and topic. It sees a
//! row's question, never what is expected, so it can only work it out.

mod runner;

mod bearing_clearance;
mod fits_metrology;

use std::process::ExitCode;

use runner::Subject;

/// Which function answers which topic of which file.
const SUBJECTS: &[Subject] = &[
    Subject {
        file: "rules_of_thumb",
        topic: "bearing_clearance",
        answer: bearing_clearance::answer,
    },
    Subject {
        file: "fits_metrology",
        topic: "IT",
        answer: fits_metrology::tolerances::standard_tolerance,
    },
    Subject {
        file: "fits_metrology",
        topic: "fundamental_deviation",
        answer: fits_metrology::tolerances::fundamental_deviation,
    },
    Subject {
        file: "fits_metrology",
        topic: "fit",
        answer: fits_metrology::tolerances::fit,
    },
    Subject {
        file: "fits_metrology",
        topic: "coverage",
        answer: fits_metrology::uncertainty::coverage,
    },
    Subject {
        file: "fits_metrology",
        topic: "budget",
        answer: fits_metrology::uncertainty::budget,
    },
    Subject {
        file: "fits_metrology",
        topic: "conformity",
        answer: fits_metrology::uncertainty::conformity,
    },
    Subject {
        file: "fits_metrology",
        topic: "reference",
        answer: fits_metrology::expansion::reference,
    },
    Subject {
        file: "fits_metrology",
        topic: "CTE",
        answer: fits_metrology::expansion::metal,
    },
    Subject {
        file: "fits_metrology",
        topic: "expansion",
        answer: fits_metrology::expansion::expansion,
    },
    Subject {
        file: "fits_metrology",
        topic: "press_fit",
        answer: fits_metrology::press_fit::answer,
    },
];

fn main() -> ExitCode {
    runner::run(SUBJECTS)
}
