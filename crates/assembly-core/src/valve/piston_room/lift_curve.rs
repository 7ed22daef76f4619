//! The lift of a valve between the crank angles at which it was read.

/// A curve through readings that does not swing over between them: cubic
/// pieces with the slopes of F. N. Fritsch and J. Butland, A method for
/// constructing local monotone piecewise cubic interpolants, SIAM J. Sci. Stat.
/// Comput. 5 (1984).
pub(super) struct LiftCurve {
    /// Angle, lift, slope; the angles rise.
    knots: Vec<(f64, f64, f64)>,
}

impl LiftCurve {
    /// A curve through pairs of angle and lift, whose angles must rise.
    pub(super) fn through(pairs: &[(f64, f64)]) -> Self {
        let secants: Vec<(f64, f64)> = pairs
            .iter()
            .zip(pairs.iter().skip(1))
            .map(|(from, to)| (to.0 - from.0, (to.1 - from.1) / (to.0 - from.0)))
            .collect();
        let knots = pairs
            .iter()
            .enumerate()
            .map(|(at, (angle, lift))| {
                let before = at.checked_sub(1).and_then(|before| secants.get(before));
                (*angle, *lift, slope_between(before, secants.get(at)))
            })
            .collect();
        Self { knots }
    }

    /// The lift at an angle; beyond the readings that of the nearest one.
    pub(super) fn at(&self, angle: f64) -> f64 {
        let after = self.knots.partition_point(|knot| knot.0 < angle);
        let before = after
            .checked_sub(1)
            .and_then(|before| self.knots.get(before));
        match (before, self.knots.get(after)) {
            (Some(from), Some(to)) => between(*from, *to, angle),
            (Some(end), None) | (None, Some(end)) => end.1,
            (None, None) => f64::NAN,
        }
    }
}

/// The slope at a reading from the straight lines to its neighbours, each with
/// the width of its step.
fn slope_between(before: Option<&(f64, f64)>, after: Option<&(f64, f64)>) -> f64 {
    match (before, after) {
        (Some((left, down)), Some((right, up))) if down * up > 0.0 => {
            let (first, second) = (left + 2.0 * right, 2.0 * left + right);
            (first + second) / (first / down + second / up)
        }
        // A crest or a trough.
        (Some(_), Some(_)) | (None, None) => 0.0,
        (Some(only), None) | (None, Some(only)) => only.1,
    }
}

fn between(from: (f64, f64, f64), to: (f64, f64, f64), angle: f64) -> f64 {
    let width = to.0 - from.0;
    let part = (angle - from.0) / width;
    let (square, cube) = (part * part, part * part * part);
    let rise = 3.0 * square - 2.0 * cube;
    from.1 * (1.0 - rise)
        + to.1 * rise
        + width * (from.2 * (cube - 2.0 * square + part) + to.2 * (cube - square))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn the_curve_meets_its_readings_and_stays_between_neighbours(
            steps in prop::collection::vec((0.01..0.2_f64, 0.0..0.01_f64), 1..12), part in 0.0..1.0_f64,
        ) {
            let mut angle = -0.3;
            let pairs: Vec<(f64, f64)> = steps
                .iter()
                .map(|(step, lift)| {
                    angle += step;
                    (angle, *lift)
                })
                .collect();
            let curve = LiftCurve::through(&pairs);
            for (angle, lift) in &pairs {
                prop_assert!((curve.at(*angle) - lift).abs() < 1e-14);
            }
            for pair in pairs.windows(2) {
                let lift = curve.at(pair[0].0 + part * (pair[1].0 - pair[0].0));
                let (low, high) = (pair[0].1.min(pair[1].1), pair[0].1.max(pair[1].1));
                prop_assert!(lift >= low - 1e-12 && lift <= high + 1e-12);
            }
        }
    }

    #[test]
    fn a_smooth_lift_read_every_two_degrees_is_met_within_a_hundredth_of_a_thou() {
        let lift = |angle: f64| 0.003 * (1.0 + (angle * 1.5).sin());
        let pairs: Vec<(f64, f64)> = (-10..=10_i32)
            .map(|at| {
                (
                    f64::from(at) * 2.0_f64.to_radians(),
                    lift(f64::from(at) * 2.0_f64.to_radians()),
                )
            })
            .collect();
        let curve = LiftCurve::through(&pairs);
        for at in -300..300_i32 {
            let angle = f64::from(at) / 1000.0;
            assert!(
                (curve.at(angle) - lift(angle)).abs() < 0.01 * 0.0254e-3,
                "{angle}"
            );
        }
    }
}
