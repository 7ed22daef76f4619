//! What is proved.

/// Limits in another unit.
mod asking;
/// All the quick checks.
mod checks;
/// Files: one's own, and everything that is not.
mod importing;
/// Two copies on one device.
mod keeping;
/// The keypad.
mod keys;
/// The browser killed.
mod killed;
/// The whole way of five main bearings.
mod mains;
/// Without a signal.
mod offline;
/// The oil, and the first fire.
mod oil;
/// Pictures of every screen.
mod pictures;
/// One answer without a build.
mod quick;
/// For everyone.
mod seeing;
/// A build that cannot start.
mod starting;
/// The same build open twice.
mod tabs;
/// What is next, a step, and what a change undoes.
mod tonight;
/// Text that is no number.
mod typing;
/// Newer builds.
mod updating;
/// What was not opened yet.
mod waiting;
/// The tests' own eyes work.
mod watching;
