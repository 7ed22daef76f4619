//! The pages of one build.
//!
//! - `page`: opens the build, and what all its pages have in common.
//! - `mains`: the main bearings, all of them and one by one.
//! - `limits`: what the main bearings have to keep to, and where that comes from.
//! - `tools`: what things are measured with.
//! - `book`: everything that was written down.

mod book;
mod limits;
mod mains;
mod page;
mod tools;

pub use page::BuildPage;
