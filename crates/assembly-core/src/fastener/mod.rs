//! Threaded fasteners: threads, strength, torque and preload, stretch, joints,
//! stages and wrenches, one calculation a file.
//!
//! A torque is not a preload: most of it goes into friction. So each preload
//! that comes from a torque comes as a band.

pub mod adapter;
pub mod angle_to_load;
pub mod assembly_preload;
pub mod common;
pub mod friction;
pub mod joint;
pub mod long_form;
pub mod lubricant_change;
pub mod measured_stretch;
pub mod preload_trial;
pub mod short_form;
pub mod stages;
pub mod strength;
pub mod strength_check;
pub mod stretch;
pub mod thread;
pub mod thread_check;
pub mod torque_units;
pub mod wrench;
