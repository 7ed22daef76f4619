//! One build: its pages, over one state that is worked out from its facts.

pub mod book;
pub mod change;
pub mod engine;
pub mod map;
pub mod measure;
pub mod merge;
pub mod oil;
mod opened;
mod pages;
pub mod parts;
pub mod placing;
pub mod round;
pub mod shop;
pub mod step;
pub mod tighten;
pub mod tonight;

pub use opened::Opened;
pub use pages::build_pages;
