//! Every measure of the engine: the list of them, the round over all parts of
//! one, how each stands, and its limits.

mod all_limits;
mod limits;
mod list;
mod part;
mod parts;
mod place;
mod result;
mod shape;
mod standing;
mod strip;
mod walk;

pub use all_limits::all_limits;
pub use limits::round_limits;
pub use list::list;
pub use part::round;
pub use place::Place;
pub use shape::drawn_shape;
pub use standing::{Stands, stands};
pub use walk::parts as parts_of;
