//! Priming, the first hour, and what compression and leak-down say afterwards.

pub mod compression;
pub mod consumption;
pub mod first_minutes;
pub mod leak_down;
pub mod plugs;
pub mod pre_fire;
pub mod prime;
pub mod schedule;

pub use compression::COMPRESSION_SPREAD;
pub use consumption::{OIL_FILL, OIL_USED};
pub use leak_down::LEAK_DOWN;
pub use plugs::MISSING_PLUG;
pub use prime::PRIME_TEST;
pub use schedule::RUN_IN;
