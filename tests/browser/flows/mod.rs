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
/// Text that is no number.
mod typing;
/// Newer builds.
mod updating;
/// The parts of the page that a first visit does not load.
mod waiting;
/// The tests' own eyes work.
mod watching;
