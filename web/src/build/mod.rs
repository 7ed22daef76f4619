//! One build: its pages, over one state that is worked out from its facts.

pub mod book;
pub mod measure;
mod opened;
mod pages;
pub mod round;
pub mod tighten;

pub use opened::Opened;
pub use pages::build_pages;
