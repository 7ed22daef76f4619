//! Answers the topics of `fits_metrology`.

pub mod expansion;
pub mod press_fit;
pub mod tolerances;
pub mod uncertainty;

use crate::runner::Subject;

const FILE: &str = "fits_metrology";

/// The topics and what answers them.
pub const SUBJECTS: &[Subject] = &[
    Subject::of(FILE, "IT", tolerances::standard_tolerance),
    Subject::of(
        FILE,
        "fundamental_deviation",
        tolerances::fundamental_deviation,
    ),
    Subject::of(FILE, "fit", tolerances::fit),
    Subject::of(FILE, "coverage", uncertainty::coverage),
    Subject::of(FILE, "budget", uncertainty::budget),
    Subject::of(FILE, "conformity", uncertainty::conformity),
    Subject::of(FILE, "reference", expansion::reference),
    Subject::of(FILE, "CTE", expansion::metal),
    Subject::of(FILE, "expansion", expansion::expansion),
    Subject::of(FILE, "press_fit", press_fit::answer),
];
