//! Measured values: how far each may be off and because of what, and what can
//! honestly be said of it against a window.

mod arithmetic;
mod assessment;
mod cause;
mod chance;
mod estimate;
mod functions;
mod measured;
mod more_readings;
mod second_order;
mod shape;
mod source;
mod window;

pub use assessment::{Assessment, Verdict, best_chance, best_chance_when_tried, could_say_good};
pub use cause::{Blame, Cause};
pub use estimate::{Estimate, Share};
pub use measured::Measured;
pub use more_readings::{MOST_READINGS, MoreReadings, how_many_more};
pub use second_order::deviation_to_second_order;
pub use shape::Shape;
pub use source::{ErrorSource, Origin, SourceId, Sources};
pub use window::{DangerousSide, Window, WindowError};
