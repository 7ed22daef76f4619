//! The bench: the builds on this device, how they are kept, and how to begin one.

mod builds;
mod card;
mod construction;
mod description;
mod import;
mod keep;
mod new_build;
mod room;
mod sample;
mod taking_off;
mod wipe;

pub use builds::{bench, cards};
pub use card::name_of;
pub use description::{FormWords, description};
pub use import::{Came, take};
pub use keep::keep;
pub use new_build::new_build;
pub use room::photos_words;
pub use sample::{bring_in_sample, says_sample};
