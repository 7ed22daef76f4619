//! Threads, strength, torque, preload, stretch and joints.

mod loads;
mod strengths;
mod threads;
mod torques;

use crate::runner::Subject;

const FILE: &str = "fasteners";

/// The topics and what answers them.
pub const SUBJECTS: &[Subject] = &[
    Subject::of(FILE, "stress_area", threads::answer),
    Subject::of(FILE, "thread_geometry", threads::answer),
    Subject::of(FILE, "grade_inch", strengths::grade_inch),
    Subject::of(FILE, "class_metric", strengths::class_metric),
    Subject::of(FILE, "iso898_load", strengths::load),
    Subject::of(FILE, "nut_factor", torques::nut_factor_of),
    Subject::of(FILE, "vdi_friction", torques::friction),
    Subject::of(FILE, "torque", torques::torque),
    Subject::of(FILE, "scatter", torques::scatter),
    Subject::of(FILE, "vdi_assembly", torques::assembly),
    Subject::of(FILE, "stretch", loads::stretch),
    Subject::of(FILE, "joint", loads::joint),
    Subject::of("rules_of_thumb", "torque_stages", torques::stages),
];
