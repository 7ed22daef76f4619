//! Bores, pistons, rings, liners and the deck, one calculation a file.

pub mod bore_finish;
pub mod bore_shape;
pub mod deck_corners;
pub mod flatness;
pub mod liner_fit;
pub mod liners_in_a_row;
pub mod pin_lock_float;
pub mod piston_pin;
pub mod piston_to_wall;
pub mod ring_back_clearance;
pub mod ring_gap;
pub mod ring_side_clearance;
