//! The steps of nominal size, from 0 to 500 mm (ISO 286-1:2010, tables 1 to 3,
//! from memory).

use super::tolerance_class::ToleranceError;
use crate::quantity::Si;
use uom::si::f64::Length;

/// Upper ends of the steps in millimetres: over the one before, up to and including this one.
pub(super) const STEPS: [u16; 13] = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500];

/// Upper ends of the finer steps that some deviations need.
pub(super) const FINE_STEPS: [u16; 25] = [
    3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315,
    355, 400, 450, 500,
];

/// A nominal size above nothing and up to 500 mm, kept to the nanometre so that
/// a size on the edge of a step falls into the right one.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct NominalSize {
    nanometres: u32,
}

impl NominalSize {
    /// A nominal size.
    ///
    /// # Errors
    /// [`ToleranceError::SizeOutside`] unless it is above 0 and up to 500 mm.
    pub fn new(size: Length) -> Result<Self, ToleranceError> {
        let nanometres = (size.to_si() * 1e9).round();
        if (1.0..=500e6).contains(&nanometres) {
            Ok(Self {
                // In range, so nothing is cut off.
                nanometres: nanometres as u32,
            })
        } else {
            Err(ToleranceError::SizeOutside {
                millimetres: size.to_si() * 1e3,
            })
        }
    }

    /// Whether it is at most this many millimetres.
    pub(super) const fn up_to(self, millimetres: u16) -> bool {
        self.nanometres <= millimetres as u32 * 1_000_000
    }

    /// The place of its step.
    pub(super) fn step(self) -> usize {
        place(self, &STEPS)
    }

    /// The place of its finer step.
    pub(super) fn fine_step(self) -> usize {
        place(self, &FINE_STEPS)
    }
}

fn place(size: NominalSize, ends: &[u16]) -> usize {
    ends.iter()
        .position(|end| size.up_to(*end))
        .unwrap_or(ends.len() - 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn millimetres(size: f64) -> NominalSize {
        NominalSize::new(Length::from_si(size * 1e-3)).unwrap()
    }

    #[test]
    fn a_size_on_the_edge_belongs_to_the_step_below() {
        for (place, end) in STEPS.iter().enumerate() {
            let end = f64::from(*end);
            assert_eq!(millimetres(end).step(), place, "{end}");
            if end < 500.0 {
                assert_eq!(millimetres(end + 1e-6).step(), place + 1, "{end}");
            }
        }
        for (place, end) in FINE_STEPS.iter().enumerate() {
            assert_eq!(millimetres(f64::from(*end)).fine_step(), place);
        }
    }

    #[test]
    fn sizes_outside_are_refused() {
        for size in [0.0, -1.0, 0.500_001, f64::NAN, f64::INFINITY] {
            assert!(NominalSize::new(Length::from_si(size)).is_err(), "{size}");
        }
    }
}
