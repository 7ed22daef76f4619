//! What the pistons of a layout shake the engine with: forces and couples once
//! and twice a turn, without counterweights.

/// One cylinder of a layout.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Cylinder {
    /// Angle of its crankpin, radians in the sense the crank turns.
    pub pin: f64,
    /// Angle of its bore from upright, radians in the same sense.
    pub bore: f64,
    /// Where it sits along the crank, from the middle, any unit.
    pub at: f64,
}

/// The greatest shaking of a layout. Forces in units of mass × throw × angular
/// speed² (the second order times throw ÷ rod length besides), couples in that
/// times the unit of length along the crank.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Shaking {
    /// Force once a turn.
    pub primary_force: f64,
    /// Force twice a turn.
    pub secondary_force: f64,
    /// Couple once a turn.
    pub primary_couple: f64,
    /// Couple twice a turn.
    pub secondary_couple: f64,
}

/// The greatest length, over a turn, of the sum of the cylinders' cosines along
/// their bores, each times a weight.
///
/// The tip of that sum goes round an ellipse: with the phasors of both
/// directions, half the sum and half the difference of two circles that turn
/// against each other. The longer half axis is the sum of their radii.
fn greatest(cylinders: &[Cylinder], order: f64, weight: impl Fn(&Cylinder) -> f64) -> f64 {
    let mut with = (0.0, 0.0);
    let mut against = (0.0, 0.0);
    for cylinder in cylinders {
        // cos(order × (turn − its top)) along its bore.
        let phase = order * (cylinder.bore - cylinder.pin);
        let half = weight(cylinder) / 2.0;
        let (forward, back) = (cylinder.bore - phase, cylinder.bore + phase);
        with.0 += half * libm::cos(forward);
        with.1 += half * libm::sin(forward);
        against.0 += half * libm::cos(back);
        against.1 += half * libm::sin(back);
    }
    let radius = |circle: (f64, f64)| circle.0.hypot(circle.1);
    radius(with) + radius(against)
}

/// The greatest shaking of a layout.
#[must_use]
pub fn shaking(cylinders: &[Cylinder]) -> Shaking {
    Shaking {
        primary_force: greatest(cylinders, 1.0, |_| 1.0),
        secondary_force: greatest(cylinders, 2.0, |_| 1.0),
        primary_couple: greatest(cylinders, 1.0, |one| one.at),
        secondary_couple: greatest(cylinders, 2.0, |one| one.at),
    }
}

#[cfg(test)]
mod tests {
    use std::f64::consts::{FRAC_PI_4, PI};

    use super::*;

    fn inline(pins: &[f64]) -> Vec<Cylinder> {
        let middle = (pins.len() as f64 - 1.0) / 2.0;
        pins.iter()
            .enumerate()
            .map(|(at, pin)| Cylinder {
                pin: pin.to_radians(),
                bore: 0.0,
                at: at as f64 - middle,
            })
            .collect()
    }

    fn near(got: f64, wanted: f64) {
        assert!((got - wanted).abs() < 1e-9, "{got} {wanted}");
    }

    // Facts of every textbook: a flat four-throw crank shakes twice a turn with
    // four pistons, an inline six not at all.
    #[test]
    fn an_inline_four_shakes_twice_a_turn_and_an_inline_six_never() {
        let four = shaking(&inline(&[0.0, 180.0, 180.0, 0.0]));
        near(four.primary_force, 0.0);
        near(four.secondary_force, 4.0);
        near(four.primary_couple, 0.0);
        let six = shaking(&inline(&[0.0, 120.0, 240.0, 240.0, 120.0, 0.0]));
        for one in [
            six.primary_force,
            six.secondary_force,
            six.primary_couple,
            six.secondary_couple,
        ] {
            near(one, 0.0);
        }
    }

    // A right-angled twin on one pin: a steady force of one piston that goes round.
    #[test]
    fn a_right_angled_twin_is_one_turning_weight() {
        let twin = [-FRAC_PI_4, FRAC_PI_4].map(|bore| Cylinder {
            pin: 0.0,
            bore,
            at: 0.0,
        });
        near(shaking(&twin).primary_force, 1.0);
    }

    /// The ellipse against walking round the turn.
    #[test]
    fn the_long_axis_is_what_a_walk_round_the_turn_finds() {
        let odd: Vec<Cylinder> = [(0.3, 0.2, -1.0), (2.0, -0.7, 0.4), (4.1, 0.9, 1.3)]
            .iter()
            .map(|(pin, bore, at)| Cylinder {
                pin: *pin,
                bore: *bore,
                at: *at,
            })
            .collect();
        let got = shaking(&odd);
        for (order, greatest) in [(1.0, got.primary_couple), (2.0, got.secondary_couple)] {
            let walked = (0..20_000)
                .map(|step| {
                    let turn = f64::from(step) / 20_000.0 * 2.0 * PI;
                    let (x, y) = odd.iter().fold((0.0, 0.0), |sum, one| {
                        let push = one.at * (order * (turn + one.pin - one.bore)).cos();
                        (sum.0 + push * one.bore.cos(), sum.1 + push * one.bore.sin())
                    });
                    x.hypot(y)
                })
                .fold(0.0, f64::max);
            assert!((walked - greatest).abs() < 1e-6, "{walked} {greatest}");
        }
    }
}
