//! Bores, pistons, rings, liners and the deck, one calculation a file.

pub mod ring_gap;
