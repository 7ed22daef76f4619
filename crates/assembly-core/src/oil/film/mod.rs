//! The film of oil between journal and bearing.

mod balance;
mod band;
mod check;
pub mod field;
mod grid;
pub mod load;
pub mod long;
pub mod rules;
pub mod running;
pub mod short;
mod solution;

pub use balance::{Care, balance, film_at};
pub use check::BEARING_FILM;
pub use field::Figures;
pub use grid::Boundary;
pub use running::{Bearing, Duty, Feed, RunningFilm, run_bearing};
pub(crate) use solution::{COARSE_IS_OFF, rough};
pub use solution::{ECCENTRICITIES, Film, FilmError, PROPORTIONS, WANTED_CONVERGENCE, film};
