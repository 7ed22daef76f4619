//! The parts list: what is wanted, ordered, here, checked and fitted.

mod card;
mod form;
mod list;
mod moving;
mod place;
mod totals;
mod words;

pub use list::parts_page;
pub use moving::promise;
pub use place::Place;
pub use words::promised_words;
