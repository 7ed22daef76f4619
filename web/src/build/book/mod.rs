//! The book: everything that was written down, as a log. Nothing is ever
//! rubbed out; a mistake is struck out.

mod aside;
mod doings;
mod log;
mod oil_words;
pub mod words;

pub use log::book;
