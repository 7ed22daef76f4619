//! What a file brought into a build that was here already, and what two devices
//! say differently: shown side by side, decided by a person.

mod came_in;
mod conflict;
mod page;
mod words;

pub use page::{merge_page, to_settle};
