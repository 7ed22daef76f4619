//! How an instrument makes its figures, and the sizes a part is made in.

use crate::quantity::Unit;
use crate::tool::Instrument;

/// How an instrument makes its figures. It decides which slips are possible.
/// The turns are those of the common instruments (common practice, no source).
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub enum Scale {
    /// Figures that are typed as they stand, or nothing is known of the tool.
    #[default]
    Plain,
    /// A thimble: whole turns are read off the sleeve, and one is easily missed.
    Thimble {
        /// What one turn of the thimble moves the spindle, metres.
        turn: f64,
        /// How much the next frame size differs, metres.
        frame: f64,
    },
    /// A dial beside a bar: whole turns are read off the bar.
    Dial {
        /// What one turn of the needle is, metres.
        turn: f64,
    },
    /// A needle that shows a difference to a setting, with a sign.
    Needle,
}

impl Scale {
    /// An inch micrometer: 0.025 in a turn, frames an inch apart.
    pub const INCH_THIMBLE: Self = Self::Thimble {
        turn: 0.000_635,
        frame: 0.0254,
    };
    /// A metric micrometer: 0.5 mm a turn, frames 25 mm apart.
    pub const METRIC_THIMBLE: Self = Self::Thimble {
        turn: 0.0005,
        frame: 0.025,
    };
    /// An inch dial caliper: 0.100 in a turn.
    pub const INCH_DIAL: Self = Self::Dial { turn: 0.002_54 };
    /// A metric dial caliper: 1 mm a turn.
    pub const METRIC_DIAL: Self = Self::Dial { turn: 0.001 };

    /// The scale of an instrument that is read in this unit: a micrometer read
    /// in thou has an inch thimble.
    ///
    /// ```
    /// use assembly_core::{quantity::unit, tool::instrument, typing_sense::Scale};
    /// let micrometer = instrument("outside-micrometer-tenths").unwrap();
    /// assert_eq!(Scale::of(micrometer, unit("in").unwrap()), Scale::INCH_THIMBLE);
    /// assert_eq!(Scale::of(micrometer, unit("mm").unwrap()), Scale::METRIC_THIMBLE);
    /// ```
    #[must_use]
    pub fn of(instrument: &Instrument, unit: &Unit) -> Self {
        let inch = matches!(unit.symbol, "in" | "thou" | "tenths" | "µin" | "ft");
        let id = instrument.id;
        // These are felt in the hole, then read on a micrometer.
        let on_micrometer = ["micrometer", "telescoping", "small-hole"];
        let by_needle = ["bore-gauge", "indicator", "stretch-gauge"];
        if on_micrometer.iter().any(|part| id.contains(part)) {
            if inch {
                Self::INCH_THIMBLE
            } else {
                Self::METRIC_THIMBLE
            }
        } else if id.contains("caliper") {
            if inch {
                Self::INCH_DIAL
            } else {
                Self::METRIC_DIAL
            }
        } else if by_needle.iter().any(|part| id.contains(part)) {
            Self::Needle
        } else {
            Self::Plain
        }
    }
}

/// The sizes beside the standard one that a part is repaired to.
#[derive(Clone, PartialEq, Debug, Default)]
pub enum Sizes {
    /// The standard size only, or nothing is known.
    #[default]
    Standard,
    /// Journals: 0.010, 0.020 and 0.030 in under.
    InchUndersizes,
    /// Journals: 0.25, 0.50 and 0.75 mm under.
    MetricUndersizes,
    /// Bores: 0.010, 0.020, 0.030, 0.040 and 0.060 in over.
    InchOversizes,
    /// Bores: 0.25, 0.50, 0.75 and 1.00 mm over.
    MetricOversizes,
    /// What the sheet itself lists: steps from the standard size, metres, with sign.
    Listed(Vec<f64>),
}

impl Sizes {
    /// The steps from the standard size, metres. Those that no sheet listed are
    /// common practice, no source.
    #[must_use]
    pub fn steps(&self) -> &[f64] {
        match self {
            Self::Standard => &[],
            Self::InchUndersizes => &[-0.000_254, -0.000_508, -0.000_762],
            Self::MetricUndersizes => &[-0.000_25, -0.000_5, -0.000_75],
            Self::InchOversizes => &[0.000_254, 0.000_508, 0.000_762, 0.001_016, 0.001_524],
            Self::MetricOversizes => &[0.000_25, 0.000_5, 0.000_75, 0.001],
            Self::Listed(steps) => steps,
        }
    }
}

/// How far a size is from standard, in metres, as boxes and sheets say it: metric
/// where it goes in steps of 0.05 mm, else in whole thous, else as comes out shorter.
#[must_use]
pub fn size_words(step: f64) -> String {
    let size = step.abs();
    let is_whole = |parts: f64| (parts - parts.round()).abs() < 1e-6;
    let (hundredths, tenths) = (size * 1e5, size / 0.0254 * 1e4);
    let metric = is_whole(hundredths / 5.0);
    if !metric && is_whole(tenths / 10.0) {
        format!("{:.3} in", size / 0.0254)
    } else if metric || is_whole(hundredths) {
        format!("{:.2} mm", size * 1e3)
    } else if is_whole(tenths) {
        format!("{:.4} in", size / 0.0254)
    } else {
        format!("{:.3} mm", size * 1e3)
    }
}

#[cfg(test)]
mod tests {
    use super::size_words;

    #[test]
    fn sizes_are_said_as_their_sheets_say_them() {
        for (step, words) in [
            (-0.000_25, "0.25 mm"),
            (0.001, "1.00 mm"),
            (0.025e-3, "0.025 mm"),
            (-0.010 * 0.0254, "0.010 in"),
            (0.050 * 0.0254, "0.050 in"),
            (0.0005 * 0.0254, "0.0005 in"),
            (0.01e-3, "0.01 mm"),
            (0.125e-3, "0.125 mm"),
        ] {
            assert_eq!(size_words(step), words);
        }
    }
}
