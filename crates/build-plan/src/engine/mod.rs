//! An engine, described once: how many cylinders, how they lie, how many mains.
//!
//! - [`Engine`]: the description, checked.
//! - [`Layout`]: how the cylinders lie.
//! - [`Construction`]: valve gear, cam drive, liners, caps and the rest.
//! - [`Feature`] and [`When`]: what follows from that, and what applies when.
//! - [`CrankStop`]: the crank from front to rear, for drawings and lists.
//! - [`EngineError`]: what is wrong with a description, and what would be right.

mod construction;
mod crank_line;
mod description;
mod error;
mod feature;
mod layout;
mod numbering;

pub use construction::{
    CamDrive, Casting, Construction, Crankcase, Ignition, Liners, MainCaps, Numbering, Pins,
    PumpDrive, RearSeal, Rods, ValveGear,
};
pub use crank_line::CrankStop;
pub use description::{Engine, MOST_CYLINDERS, NAME_AT_MOST};
pub use error::EngineError;
pub use feature::{ALWAYS, Feature, When};
pub use layout::Layout;
