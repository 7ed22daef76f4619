//! Oil: how thick it is, its film, its leaks, its gauge.

mod film;
mod leak;
mod rules;
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
    Subject::of("oil", "annular_leakage", leak::annular),
    Subject::of("oil", "gallery", leak::gallery),
    Subject::of("oil", "pressure_fed", film::pressure_fed),
    Subject::of("rules_of_thumb", "oil_pressure", rules::pressure),
    Subject::of("rules_of_thumb", "compression", rules::compression),
    Subject::of("rules_of_thumb", "leakdown", rules::leak_down),
    Subject::of("journal_bearing", "RB_table", film::at_eccentricity),
    Subject::of("journal_bearing", "RB_limit", film::limits),
    Subject::of(
        "journal_bearing",
        "FD_reynolds_hmax_start",
        film::at_eccentricity,
    ),
    Subject::of("journal_bearing", "FD_variant", film::at_eccentricity),
    Subject::of("journal_bearing", "FD_long_bearing", film::at_eccentricity),
    Subject::of("journal_bearing", "ross_fluidflow", film::at_eccentricity),
    Subject::of("journal_bearing", "Ocvirk_short", film::short),
    Subject::of("journal_bearing", "ross_short", film::short),
    Subject::of("journal_bearing", "identity", film::identity),
    Subject::of("journal_bearing", "interpolation", film::interpolation),
    Subject::of("journal_bearing", "Shigley_chart", film::at_number),
    Subject::of("journal_bearing", "temp_rise_fit", film::at_number),
    Subject::of("journal_bearing", "worked", film::worked),
    Subject::of("journal_bearing", "petroff", film::centred),
    Subject::of("journal_bearing", "trumpler", film::trumpler),
];
