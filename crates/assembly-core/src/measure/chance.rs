//! How likely a true value lies below a limit.

use statrs::distribution::{ContinuousCDF, StudentsT};

use super::estimate::Estimate;

/// How the true value is spread about the measured one.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(super) enum Spread {
    /// The size of the errors is taken as known.
    Normal,
    /// It was found from a few readings: Student's distribution with so many
    /// degrees of freedom (JCGM 100:2008, G.3).
    Student(f64),
}

/// From here on Student's distribution is the normal one to a part in a million.
const AS_GOOD_AS_KNOWN: f64 = 1e5;

impl Spread {
    /// The spread for so many degrees of freedom; fewer than one count as one.
    pub(super) fn of(degrees_of_freedom: f64) -> Self {
        if degrees_of_freedom < AS_GOOD_AS_KNOWN {
            Self::Student(degrees_of_freedom.max(1.0))
        } else {
            Self::Normal
        }
    }

    /// The chance of being less than so many deviations above the middle.
    pub(super) fn below(self, deviations: f64) -> f64 {
        let student = match self {
            Self::Normal => None,
            Self::Student(degrees) => StudentsT::new(0.0, 1.0, degrees).ok(),
        };
        match student {
            Some(student) if deviations.is_finite() => student.cdf(deviations),
            _ => 0.5 * libm::erfc(-deviations / std::f64::consts::SQRT_2),
        }
    }

    /// How many deviations to stay clear of a limit so as to be on the right
    /// side of it with this chance, rounded up a little so that rounding cannot
    /// turn it round again.
    pub(super) fn clear_by(self, chance: f64) -> f64 {
        let (mut low, mut high) = (0.0_f64, 1.0_f64);
        while self.below(high) < chance && high < 1e9 {
            (low, high) = (high, high * 2.0);
        }
        // Halving sixty times leaves the last bits of a float.
        for _ in 0..60 {
            let middle = f64::midpoint(low, high);
            if self.below(middle) < chance {
                low = middle;
            } else {
                high = middle;
            }
        }
        high * (1.0 + 1e-9)
    }

    /// The chance that the true value is below a limit. An exact value is below
    /// or it is not.
    pub(super) fn chance_below(self, value: &Estimate, limit: f64) -> f64 {
        let deviation = value.deviation();
        let distance = limit - value.value();
        if deviation > 0.0 {
            self.below(distance / deviation)
        } else if distance > 0.0 {
            1.0
        } else {
            0.0
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // scipy 1.17.1, stats.t.cdf and stats.norm.cdf.
    #[test]
    fn chances_agree_with_an_outside_library() {
        for (degrees, deviations, wanted) in [
            (4.0, 1.0, 0.813_049_516_849_970_5),
            (4.0, -2.5, 0.033_383_272_405_994_07),
            (16.656, 2.0, 0.968_960_049_692_582_3),
            (f64::INFINITY, 1.0, 0.841_344_746_068_542_9),
        ] {
            let found = Spread::of(degrees).below(deviations);
            assert!((found - wanted).abs() < 1e-9, "{degrees}: {found}");
        }
    }

    #[test]
    fn few_readings_need_to_stay_farther_from_a_limit() {
        // Common table values of the 95 % point: t of 4 is 2.132, the normal one 1.645.
        assert!((Spread::of(4.0).clear_by(0.95) - 2.132).abs() < 0.001);
        assert!((Spread::Normal.clear_by(0.95) - 1.645).abs() < 0.001);
        assert!(Spread::Normal.below(Spread::Normal.clear_by(0.95)) >= 0.95);
    }
}
