//! What is proved.

/// The tests' own eyes work.
mod watching;

/// Without a signal.
mod offline;

/// Newer builds.
mod updating;

/// One answer without a build.
mod quick;

/// Text that is no number.
mod typing;

/// Files: one's own, and everything that is not.
mod importing;

/// Two copies on one device.
mod keeping;
