//! Valves, guides, seats, lifters and the camshaft's own fits, one calculation
//! a file.

pub mod cam_bearing;
pub mod cam_lobe;
pub mod coil_spring;
pub mod guide_rock;
pub mod lash;
pub mod lifter_in_bore;
pub mod piston_room;
pub mod rocker_room;
pub mod seat;
pub mod stem_in_guide;
pub mod tip_heights;
pub mod valve_to_valve;
