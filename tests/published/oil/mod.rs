//! Oil: how thick it is, its film, its leaks, its gauge.

mod viscosity;

use crate::runner::Subject;

/// The topics and what answers them.
pub const SUBJECTS: &[Subject] = &[
    Subject::of("oil", "D341", viscosity::line),
    Subject::of("oil", "D2270", viscosity::index),
    Subject::of("oil", "J300", viscosity::grade_limit),
    Subject::of("oil", "J300_grade", viscosity::grade_of),
    Subject::of("oil", "SAE_visc_fit", viscosity::handbook),
    Subject::of("oil", "density", viscosity::density),
];
