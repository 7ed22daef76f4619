//! Stack-ups: sizes of several parts that add up to one that matters, each as
//! data with its formula, worked out four ways and turned round for any part.
//!
//! - [`Stack`], [`Term`], [`Formula`]: a stack as data; [`STACKS`] lists them all.
//! - [`StackUp`]: a stack with values: result, worst case, root of the sum of
//!   squares, many random draws, and what one part has to be for a wanted result.
//! - one file for every stack, with its quick check.

mod answering;
mod formula;
mod monte_carlo;
mod solve;
mod stack_up;
mod term_value;

pub mod after_milling;
pub mod bearing_walls;
pub mod bolt_engagement;
pub mod cam_end_float;
pub mod cam_lateness;
pub mod compression_ratio;
pub mod converter_gap;
pub mod cover_step;
pub mod crank_end_play;
pub mod deck_and_quench;
pub mod distributor_depth;
pub mod lifter_preload;
pub mod liner_stand_out;
pub mod moving_room;
pub mod pickup_to_pan;
pub mod pump_drive;
pub mod pushrod_length;
pub mod quench_check;
pub mod tooth_out;
pub mod trapped_ratio;
pub mod valve_spring;
pub mod valve_spring_check;

#[cfg(test)]
mod tests;

pub use after_milling::{PORTS_DOWN, PORTS_INWARD, VALVE_ROOM};
pub use bearing_walls::BEARING_WALLS;
pub use bolt_engagement::{BOLT_BOTTOM_ROOM, BOLT_ENGAGEMENT};
pub use cam_end_float::{CAM_FLOAT_BUTTON, CAM_FLOAT_PLATE};
pub use cam_lateness::CAM_LATENESS;
pub use compression_ratio::{CLEARANCE_VOLUME, COMPRESSION_RATIO, SWEPT_VOLUME};
pub use converter_gap::{CONVERTER_GAP, RELEASE_TRAVEL};
pub use cover_step::COVER_STEP;
pub use crank_end_play::CRANK_END_PLAY;
pub use deck_and_quench::{DECK_CLEARANCE, QUENCH, QUENCH_OVER_DECK};
pub use distributor_depth::DISTRIBUTOR_FLOAT;
pub use formula::{Formula, Number, Smooth, Stack, Term};
pub use lifter_preload::{LIFTER_PRELOAD, ROCKER_TURNS};
pub use liner_stand_out::LINER_STAND_OUT;
pub use monte_carlo::{Drawn, MOST_DRAWS};
pub use moving_room::{PISTON_TO_COUNTERWEIGHT, RING_TO_DECK, ROD_TO_CAM, VALVE_POCKET};
pub use pickup_to_pan::{CURTAIN_RATIO, PICKUP_TO_PAN};
pub use pump_drive::PUMP_DRIVE_FLOAT;
pub use pushrod_length::{PUSHROD_HYDRAULIC, PUSHROD_SOLID};
pub use solve::SolveError;
pub use stack_up::{Extent, StackUp};
pub use term_value::TermValue;
pub use tooth_out::TOOTH_OUT;
pub use trapped_ratio::TRAPPED_RATIO;
pub use valve_spring::{
    BIND_MARGIN, OPEN_LOAD, RETAINER_TO_SEAL, SEAT_LOAD, SPRING_HEIGHT, VALVE_LIFT,
};

/// Every stack there is. To add one, write its file and name it here.
pub static STACKS: &[&Stack] = &[
    &PORTS_DOWN,
    &PORTS_INWARD,
    &VALVE_ROOM,
    &BEARING_WALLS,
    &BOLT_BOTTOM_ROOM,
    &BOLT_ENGAGEMENT,
    &CAM_FLOAT_BUTTON,
    &CAM_FLOAT_PLATE,
    &CAM_LATENESS,
    &CLEARANCE_VOLUME,
    &COMPRESSION_RATIO,
    &SWEPT_VOLUME,
    &CONVERTER_GAP,
    &RELEASE_TRAVEL,
    &COVER_STEP,
    &CRANK_END_PLAY,
    &DECK_CLEARANCE,
    &QUENCH,
    &QUENCH_OVER_DECK,
    &DISTRIBUTOR_FLOAT,
    &LINER_STAND_OUT,
    &PISTON_TO_COUNTERWEIGHT,
    &RING_TO_DECK,
    &ROD_TO_CAM,
    &VALVE_POCKET,
    &CURTAIN_RATIO,
    &PICKUP_TO_PAN,
    &PUMP_DRIVE_FLOAT,
    &PUSHROD_HYDRAULIC,
    &PUSHROD_SOLID,
    &ROCKER_TURNS,
    &LIFTER_PRELOAD,
    &TOOTH_OUT,
    &TRAPPED_RATIO,
    &BIND_MARGIN,
    &OPEN_LOAD,
    &RETAINER_TO_SEAL,
    &SEAT_LOAD,
    &SPRING_HEIGHT,
    &VALVE_LIFT,
];

/// The stack with this id.
#[must_use]
pub fn stack(id: &str) -> Option<&'static Stack> {
    STACKS.iter().copied().find(|one| one.id == id)
}
