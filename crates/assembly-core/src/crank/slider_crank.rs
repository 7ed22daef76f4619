//! How a piston moves with the crank: throw, rod and pin offset, exactly.

/// A crank throw with its rod. Lengths in metres, angles in radians from where
/// the throw points along the bore, in running direction.
///
/// With the throw r, the rod l and the offset e of the bore's axis toward the
/// side that the throw moves to, the pin stands
/// x = r·cos θ + √(l² − (r·sin θ − e)²) above the crank's axis.
///
/// ```
/// use assembly_core::crank::slider_crank::SliderCrank;
/// let crank = SliderCrank::new(0.040, 0.120, 0.0).unwrap();
/// assert!((crank.pin_height(0.0) - 0.160).abs() < 1e-15);
/// assert!((crank.drop(std::f64::consts::PI) - 0.080).abs() < 1e-15);
/// ```
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct SliderCrank {
    throw: f64,
    rod: f64,
    offset: f64,
}

impl SliderCrank {
    /// A throw with its rod; `None` when the rod could not swing all the way
    /// round: it has to be longer than throw and offset together.
    #[must_use]
    pub fn new(throw: f64, rod: f64, offset: f64) -> Option<Self> {
        let sound = throw > 0.0 && rod > throw + offset.abs() && rod.is_finite();
        sound.then_some(Self { throw, rod, offset })
    }

    /// Height of the pin above the crank's axis.
    #[must_use]
    pub fn pin_height(&self, angle: f64) -> f64 {
        self.throw * libm::cos(angle) + self.upright(angle)
    }

    /// How far the pin stands below its highest place.
    #[must_use]
    pub fn drop(&self, angle: f64) -> f64 {
        self.reach(self.rod + self.throw) - self.pin_height(angle)
    }

    /// How the height moves with the angle, metres a radian: times the angular
    /// speed it is the piston's speed upward.
    #[must_use]
    pub fn slope(&self, angle: f64) -> f64 {
        let side = self.side(angle);
        -self.throw * (libm::sin(angle) + side * libm::cos(angle) / self.upright(angle))
    }

    /// How the slope moves with the angle, metres a radian squared: times the
    /// angular speed squared it is the piston's acceleration upward.
    #[must_use]
    pub fn curvature(&self, angle: f64) -> f64 {
        let (sine, cosine) = (libm::sin(angle), libm::cos(angle));
        let (side, upright) = (self.side(angle), self.upright(angle));
        let swing = self.throw * cosine;
        let bent = side * side * swing * swing / (upright * upright);
        -self.throw * cosine - (swing * swing - side * self.throw * sine + bent) / upright
    }

    /// The pin's whole travel: a little more than two throws when the pin is offset.
    #[must_use]
    pub fn stroke(&self) -> f64 {
        self.reach(self.rod + self.throw) - self.reach(self.rod - self.throw)
    }

    /// The angle at which the pin is highest.
    #[must_use]
    pub fn angle_at_top(&self) -> f64 {
        libm::asin(self.offset / (self.rod + self.throw))
    }

    /// The angle at which the pin is lowest.
    #[must_use]
    pub fn angle_at_bottom(&self) -> f64 {
        std::f64::consts::PI + libm::asin(self.offset / (self.rod - self.throw))
    }

    /// The angle after the top at which the piston is fastest, going down: where
    /// the curvature is nothing. Halved until the last bit.
    #[must_use]
    pub fn fastest_angle(&self) -> f64 {
        let (mut before, mut after) = (self.angle_at_top(), self.angle_at_bottom());
        for _ in 0..60 {
            let middle = f64::midpoint(before, after);
            if self.curvature(middle) < 0.0 {
                before = middle;
            } else {
                after = middle;
            }
        }
        f64::midpoint(before, after)
    }

    /// How far the crankpin stands to the side of the bore's axis.
    fn side(&self, angle: f64) -> f64 {
        self.throw * libm::sin(angle) - self.offset
    }

    /// The rod's height, big end to small end, as it stands.
    fn upright(&self, angle: f64) -> f64 {
        self.third(self.rod, self.side(angle))
    }

    fn reach(&self, length: f64) -> f64 {
        self.third(length, self.offset)
    }

    #[expect(clippy::unused_self, reason = "reads as a property of the triangle")]
    fn third(&self, long: f64, side: f64) -> f64 {
        libm::sqrt((long - side) * (long + side))
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    // Worked by hand for a throw of 1.74 in and a rod of 5.70 in.
    #[test]
    fn the_drop_near_the_top_is_that_of_the_books() {
        let crank = SliderCrank::new(1.74, 5.70, 0.0).unwrap();
        for (degrees, drop, within) in [
            (1.0_f64, 0.000_35, 5e-6),
            (5.0, 0.0086, 5e-5),
            (10.0, 0.0345, 6e-5),
            (15.0, 0.0771, 5e-5),
            (20.0, 0.136, 5e-4),
        ] {
            let got = crank.drop(degrees.to_radians());
            assert!((got - drop).abs() < within, "{degrees}: {got}");
        }
    }

    #[test]
    fn a_rod_too_short_to_swing_is_none() {
        assert!(SliderCrank::new(0.05, 0.05, 0.0).is_none());
        assert!(SliderCrank::new(0.05, 0.055, 0.01).is_none());
        assert!(SliderCrank::new(0.0, 0.1, 0.0).is_none());
        assert!(SliderCrank::new(0.05, f64::NAN, 0.0).is_none());
    }

    proptest! {
        #[test]
        fn slope_and_curvature_are_the_derivatives(
            throw in 0.02..0.08_f64, ratio in 1.3..3.0_f64, side in -0.1..0.1_f64, angle in -6.0..6.0_f64,
        ) {
            let crank = SliderCrank::new(throw, throw * 2.0 * ratio, throw * side).unwrap();
            let step = 1e-5;
            let slope = (crank.pin_height(angle + step) - crank.pin_height(angle - step)) / (2.0 * step);
            prop_assert!((slope - crank.slope(angle)).abs() < 1e-8);
            let bend = (crank.slope(angle + step) - crank.slope(angle - step)) / (2.0 * step);
            prop_assert!((bend - crank.curvature(angle)).abs() < 1e-8);
            // Nothing is higher than the top or lower than the bottom.
            prop_assert!(crank.drop(angle) >= -1e-15 && crank.drop(angle) <= crank.stroke() + 1e-15);
            prop_assert!(crank.slope(angle).abs() <= crank.slope(crank.fastest_angle()).abs() * 1.2);
        }
    }
}
