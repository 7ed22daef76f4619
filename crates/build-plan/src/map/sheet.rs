//! Places on a sheet.

use super::part::Part;

/// How wide a sheet is, in units of the drawing: what a phone has between its
/// margins, in pixels.
pub const SHEET_WIDTH: f64 = 324.0;

/// A place on a sheet, from its upper left corner.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Frame {
    /// From the left edge of the sheet.
    pub x: f64,
    /// From the upper edge of the sheet.
    pub y: f64,
    /// How wide.
    pub width: f64,
    /// How high.
    pub height: f64,
}

impl Frame {
    /// A square around a point.
    #[must_use]
    pub(super) const fn around((x, y): (f64, f64), size: f64) -> Self {
        Self {
            x: x - size / 2.0,
            y: y - size / 2.0,
            width: size,
            height: size,
        }
    }

    /// Its middle.
    #[must_use]
    pub const fn middle(&self) -> (f64, f64) {
        (self.x + self.width / 2.0, self.y + self.height / 2.0)
    }

    /// Whether it lies in another one, the edges included.
    #[must_use]
    pub fn lies_in(&self, other: &Self) -> bool {
        self.x >= other.x
            && self.y >= other.y
            && self.x + self.width <= other.x + other.width
            && self.y + self.height <= other.y + other.height
    }

    /// Whether the two share more than an edge.
    #[must_use]
    pub fn overlaps(&self, other: &Self) -> bool {
        self.x < other.x + other.width
            && other.x < self.x + self.width
            && self.y < other.y + other.height
            && other.y < self.y + self.height
    }
}

/// A part with its place on a sheet.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Spot {
    /// The part.
    pub part: Part,
    /// Where it is drawn.
    pub frame: Frame,
}
