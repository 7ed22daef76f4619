//! Tonight: what a person sees on opening the garage. Where it was stopped,
//! what no longer counts, what is next in the time there is, what waits. And
//! the pages of the plan that go from there.

mod clocks;
mod next;
mod now;
mod page;
mod place;
mod plan_pages;
mod stale;
mod stopped;
mod undone;
mod waiting;
pub mod words;

pub use clocks::face;
pub use now::now;
pub use page::tonight;
pub use place::Place;
pub use plan_pages::plan_pages;
pub use undone::{InALine, cause, results, step_link, way_back};
