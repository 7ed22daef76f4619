//! The map of an engine: where its parts lie on a drawing, front at the top.
//!
//! - [`Part`]: a position on the map, with its name and the measures it has.
//! - [`Region`]: a stretch of the engine that is looked at by itself.
//! - [`overview`]: the whole engine on one sheet that a phone shows at once.
//! - [`zoomed`]: one region, each of its parts as large as a thumb in a glove.
//!
//! Positions only: what is known of a part, and how it is drawn, is not here. A
//! unit of the drawing is a pixel of a phone when the sheet is as wide as that.

mod overview;
mod part;
mod region;
mod sheet;
mod zoomed;

pub use overview::{Drawn, Overview, leaning, overview};
pub use part::Part;
pub use region::Region;
pub use sheet::{Frame, SHEET_WIDTH, Spot};
pub use zoomed::{Heading, Zoomed, zoomed};

#[cfg(test)]
mod tests;
