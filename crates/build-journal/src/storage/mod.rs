//! Keeping facts where they survive: twice, one key each.
//!
//! A fact is written to a *shelf* at once and to a *vault* as well, and it is
//! acknowledged only when the vault says that it has it. Nothing already
//! written is rewritten, unless it is broken and what it was is kept elsewhere.
//!
//! - [`Key`]: the name a fact is kept under.
//! - [`Shelf`] and [`Vault`]: what the device lends; in a browser, local
//!   storage and IndexedDB.
//! - [`open`]: both copies in, the builds out, and what each copy lacks.
//! - [`entries`]: a build as it is kept.
//! - [`Keeper`]: the order in which things are read, written and healed.
//! - [`double`]: a shelf and a vault in memory that fail on request, for tests.

pub mod double;
mod error;
mod keeper;
mod key;
mod lend;
mod opening;

pub use error::StorageError;
pub use keeper::{Found, Healed, Keeper, Kept};
pub use key::{Key, PREFIX};
pub use lend::{Entry, Shelf, Vault};
pub use opening::{Opened, entries, open};

#[cfg(test)]
mod tabs_tests;
#[cfg(test)]
mod tests;
