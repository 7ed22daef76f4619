//! What is proved.

/// The tests' own eyes work.
mod watching;

/// Without a signal.
mod offline;
