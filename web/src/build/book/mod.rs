//! The book: everything that was written down, as a log. Nothing is ever
//! rubbed out; a mistake is struck out.

mod aside;
mod bought;
mod doings;
mod filter;
mod log;
mod oil_words;
mod photos;
mod sort;
pub mod words;

pub use log::{book, time};
pub use photos::photo_strip;
pub use sort::Sort;
pub use words::of as words_of;
