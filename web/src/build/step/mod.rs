//! The steps: all of them by stage, and one with everything the trade knows of
//! it, what was said of it, and what can be said of it now.

mod ask;
mod checks;
mod doing;
mod list;
mod measures;
mod needs;
mod notes;
mod page;
mod state;
mod waive;

pub use ask::{Ask, Words};
pub use list::steps;
pub use page::step_page;
