//! One readable file out, and back in.
//!
//! - [`export`]: the whole build as one JSON file, a fact a line, in an order
//!   that is the same on every device.
//! - [`import`]: the build in such a file, or a sentence that says why not.
//!
//! The JSON Schema of the file is in `schema/` of this crate.

mod error;
mod read;
mod scan;
mod write;

pub use error::ImportError;
pub use read::{FILE_AT_MOST, Imported, import};
pub use write::{export, export_over};

/// The name of the format.
pub const FORMAT_NAME: &str = "thoubook-journal";
/// The version of the file that this version writes.
pub const FILE_VERSION: u32 = 1;

#[cfg(test)]
mod tests;
