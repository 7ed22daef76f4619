//! The engine map: the engine drawn from its own description, every part with
//! its verdict, and the way from there to every measure.

mod drawing;
mod one_part;
mod page;
mod place;
mod region;
mod standing;
mod whole;

pub use page::engine_map;
pub use place::Place;
pub use standing::SO_FAR;
