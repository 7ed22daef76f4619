//! How thick an oil is: against temperature, by index, by grade, by weight.

pub mod density;
pub mod error;
pub mod grade;
mod grade_check;
pub mod handbook;
pub mod index;
mod index_check;
pub mod line;
pub(crate) mod line_check;
pub mod lubricant;
mod reference_oils;

pub use density::Density;
pub use error::OilError;
pub use grade::{Grade, Summer, Winter};
pub use grade_check::{GRADE_AT_TEMPERATURE, GRADE_OF_OIL};
pub use index_check::VISCOSITY_INDEX;
pub use line::ViscosityLine;
pub use line_check::OIL_VISCOSITY;
pub use lubricant::{Lubricant, compare};
