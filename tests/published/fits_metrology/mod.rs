//! Answers the topics of `fits_metrology`.

pub mod expansion;
pub mod press_fit;
pub mod tolerances;
pub mod uncertainty;
