//! How likely the values within two limits are, when only the limits are known.

/// The shape of a distribution between two limits.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Shape {
    /// Any value is as likely as any other: a last digit, a tolerance.
    Rectangular,
    /// The middle is likelier than the ends.
    Triangular,
    /// The ends are likelier than the middle: a temperature that swings.
    ArcSine,
}

impl Shape {
    /// The standard deviation of a value that lies within so much to either side
    /// (JCGM 100:2008, 4.3.7 and 4.3.9; the swing: example H.1.3.4).
    ///
    /// ```
    /// use assembly_core::measure::Shape;
    /// assert!((Shape::Rectangular.deviation(3.0) - 3.0_f64.sqrt()).abs() < 1e-15);
    /// ```
    #[must_use]
    pub fn deviation(self, half_width: f64) -> f64 {
        let variances: f64 = match self {
            Self::Rectangular => 3.0,
            Self::Triangular => 6.0,
            Self::ArcSine => 2.0,
        };
        half_width.abs() / variances.sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The mean square of many values taken evenly from the shape.
    fn mean_square(place: impl Fn(f64) -> f64) -> f64 {
        let count = 200_000;
        let sum: f64 = (0..count)
            .map(|i| place((f64::from(i) + 0.5) / f64::from(count)).powi(2))
            .sum();
        sum / f64::from(count)
    }

    #[test]
    fn deviations_are_those_of_the_shapes() {
        let half_width = 2.0;
        let rectangular = mean_square(|part| half_width * (2.0 * part - 1.0));
        let triangular = mean_square(|part| {
            let side = (2.0 * part - 1.0).signum();
            let out = if part < 0.5 { part } else { 1.0 - part };
            side * half_width * (1.0 - (2.0 * out).sqrt())
        });
        let swing = mean_square(|part| half_width * (std::f64::consts::TAU * part).sin());
        for (shape, wanted) in [
            (Shape::Rectangular, rectangular),
            (Shape::Triangular, triangular),
            (Shape::ArcSine, swing),
        ] {
            let found = shape.deviation(half_width).powi(2);
            assert!((found / wanted - 1.0).abs() < 1e-3, "{shape:?}");
        }
    }
}
