//! The main bearings: all of them along the crank, and one by one.

mod bearing;
mod crank_line;
mod gauge;
mod list;
mod places;
mod verdict;

pub use bearing::Bearing;
pub use list::Mains;
