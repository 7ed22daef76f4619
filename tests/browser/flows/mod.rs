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
