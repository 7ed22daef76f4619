//! What is proved.

/// Limits in another unit.
mod asking;
/// A group of bolts as it really sits, and a run that is given up.
mod bolts;
/// A whole bottom end by thumb.
mod bottom_end;
/// Parts that change places, and are measured where they came to.
mod changing_places;
/// All the quick checks.
mod checks;
/// A phone and a tablet that both edit one build.
mod exchange;
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
/// Parts and machine work.
mod parts;
/// Photos.
mod photos;
/// Pictures of every screen.
mod pictures;
/// Which part goes where.
mod placing;
/// One answer without a build.
mod quick;
/// The sample engine and the map.
mod sample;
/// For everyone.
mod seeing;
/// Sizes that a sheet lists.
mod sizes;
/// A build that cannot start.
mod starting;
/// What a pull and a reading leave as it stands.
mod still;
/// The same build open twice.
mod tabs;
/// The place in a sequence of bolts.
mod tightening;
/// What is next, a step, and what a change undoes.
mod tonight;
/// The diary of a tool.
mod tools;
/// Tools tried out and told apart, slips and cold parts asked about.
mod trying;
/// Text that is no number.
mod typing;
/// Newer builds.
mod updating;
/// The parts of the page that a first visit does not load.
mod waiting;
/// From link to link through the whole app.
mod walking;
/// The tests' own eyes work.
mod watching;
/// Torque wrenches, and changing them in a run.
mod wrenches;
