//! What a reading of the gauge means: the leak behind it, and what made it so.

pub mod causes;
mod change;
pub mod inferred;
pub mod signs;

pub use causes::{Cause, Suspect, next_check, rank};
pub use change::LEAK_CHANGE;
pub use inferred::{Inferred, Meaning, Reading, infer};
pub use signs::{Sign, signs_of};
