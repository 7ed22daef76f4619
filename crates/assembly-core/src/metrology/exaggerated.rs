//! The shape of a journal or a bore, drawn exaggerated: how taper and roundness
//! look when their differences are many times as large as they are.

use std::f64::consts::TAU;

/// Points of an outline, all round.
const POINTS: usize = 72;
/// How far the largest difference may stick out, of the mean radius.
const STICKS_OUT: f64 = 0.2;
/// Differences are never drawn larger than this.
const MOST_TIMES: f64 = 10_000.0;
/// A part in a million is no difference: it is what is left of rounding.
const NO_DIFFERENCE: f64 = 1e-9;

/// A diameter at a station in a direction.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Diameter {
    /// Which station along the part, counted from 0.
    pub station: usize,
    /// The direction, degrees from upright, clockwise; none when it was not said.
    pub degrees: Option<f64>,
    /// The diameter, in any unit.
    pub size: f64,
}

/// A shape drawn exaggerated. Lengths are in mean radii: a perfect shape is a
/// circle of 1, and its sides lie at 1.
#[derive(Clone, PartialEq, Debug)]
pub struct Exaggerated {
    /// How many times as large as they are the differences are drawn.
    pub times: f64,
    /// The mean diameter, in the unit of the readings.
    pub mean: f64,
    /// The least and the greatest reading less the mean.
    pub off: (f64, f64),
    /// The outline at each station, x to the right and y up; empty where there
    /// are not two directions.
    pub outlines: Vec<Vec<(f64, f64)>>,
    /// How far out the side lies at each station, the mean of its readings; none
    /// where nothing was read.
    pub sides: Vec<Option<f64>>,
}

/// Draws a shape exaggerated, so that its largest difference sticks out by a
/// fifth of the radius at most; the factor is a round number. `None` without two
/// readings, or with one that is no size.
///
/// An outline goes through all readings of its station when there are two or
/// three directions, and as near by them as an oval can when there are more.
///
/// ```
/// use assembly_core::metrology::exaggerated::{Diameter, exaggerate};
///
/// let read = |station, degrees, size| Diameter { station, degrees: Some(degrees), size };
/// // Half a thou out of round at 2.45 in.
/// let drawn = exaggerate(&[read(0, 0.0, 2.4500), read(0, 90.0, 2.4495)]).unwrap();
/// assert_eq!(drawn.times, 1000.0);
/// let top = drawn.outlines[0].iter().map(|(_, y)| *y).fold(0.0, f64::max);
/// assert!((top - 1.102).abs() < 0.001);
/// ```
#[must_use]
pub fn exaggerate(readings: &[Diameter]) -> Option<Exaggerated> {
    if readings.len() < 2
        || readings
            .iter()
            .any(|one| !(one.size > 0.0 && one.size.is_finite()))
    {
        return None;
    }
    let mean = readings.iter().map(|one| one.size).sum::<f64>() / readings.len() as f64;
    let off = readings
        .iter()
        .map(|one| one.size - mean)
        .fold((0.0_f64, 0.0_f64), |(low, high), off| {
            (low.min(off), high.max(off))
        });
    let most = high_of(off) / mean;
    let times = if most < NO_DIFFERENCE {
        1.0
    } else {
        round_number(STICKS_OUT / most).min(MOST_TIMES)
    };
    let out = |size: f64| 1.0 + times * (size - mean) / mean;
    let stations = readings.iter().map(|one| one.station).max()? + 1;
    let at = |station: usize| readings.iter().filter(move |one| one.station == station);
    let sides = (0..stations)
        .map(|station| {
            let sizes: Vec<f64> = at(station).map(|one| one.size).collect();
            (!sizes.is_empty()).then(|| out(sizes.iter().sum::<f64>() / sizes.len() as f64))
        })
        .collect();
    let outlines = (0..stations)
        .map(|station| {
            let radii: Vec<(f64, f64)> = at(station)
                .filter_map(|one| Some((one.degrees?.to_radians(), out(one.size))))
                .collect();
            oval(&radii).map_or_else(Vec::new, outline)
        })
        .collect();
    Some(Exaggerated {
        times,
        mean,
        off,
        outlines,
        sides,
    })
}

const fn high_of((low, high): (f64, f64)) -> f64 {
    low.abs().max(high.abs())
}

/// The largest of 1, 2, 5, 10, 20 and so on that is not above this.
fn round_number(value: f64) -> f64 {
    let decade = 10.0_f64.powf(value.log10().floor());
    let step = [5.0, 2.0]
        .into_iter()
        .find(|step| step * decade <= value * (1.0 + 1e-12))
        .unwrap_or(1.0);
    (step * decade).max(1.0)
}

/// An oval: its radius is `mean + cosine × cos 2a + sine × sin 2a`, so that it is
/// the same on opposite sides.
#[derive(Clone, Copy)]
struct Oval {
    mean: f64,
    cosine: f64,
    sine: f64,
}

fn outline(oval: Oval) -> Vec<(f64, f64)> {
    (0..POINTS)
        .map(|step| {
            let angle = TAU * step as f64 / POINTS as f64;
            let (sine, cosine) = (2.0 * angle).sin_cos();
            let radius = oval.mean + oval.cosine * cosine + oval.sine * sine;
            // From upright, clockwise.
            (radius * angle.sin(), radius * angle.cos())
        })
        .collect()
}

/// The oval of least size through radii at angles: through two of them the
/// roundest, through three the only one, of more the nearest by least squares.
fn oval(radii: &[(f64, f64)]) -> Option<Oval> {
    // Half a turn round is the same diameter.
    let same = |one: f64, other: f64| (one - other).sin().abs() <= 1e-6;
    let (first, _) = radii.first()?;
    let (second, _) = radii.iter().find(|(angle, _)| !same(*angle, *first))?;
    let third = (radii.iter()).any(|(angle, _)| !same(*angle, *first) && !same(*angle, *second));
    if !third {
        let mean_at = |wanted: f64| {
            let there: Vec<f64> = (radii.iter())
                .filter(|(angle, _)| same(*angle, wanted))
                .map(|(_, radius)| *radius)
                .collect();
            there.iter().sum::<f64>() / there.len().max(1) as f64
        };
        let (one, other) = (mean_at(*first), mean_at(*second));
        let apart = 1.0 - (2.0 * (second - first)).cos();
        let height = (one - other) / apart;
        let (sine, cosine) = (2.0 * first).sin_cos();
        return Some(Oval {
            mean: one - height,
            cosine: height * cosine,
            sine: height * sine,
        });
    }
    least_squares(radii)
}

/// The normal equations of the three numbers of an oval, by Cramer's rule.
fn least_squares(radii: &[(f64, f64)]) -> Option<Oval> {
    let mut left = [[0.0; 3]; 3];
    let mut right = [0.0; 3];
    for (angle, radius) in radii {
        let (sine, cosine) = (2.0 * angle).sin_cos();
        let row = [1.0, cosine, sine];
        for ((line, into), one) in left.iter_mut().zip(&mut right).zip(row) {
            *into += one * radius;
            for (cell, other) in line.iter_mut().zip(row) {
                *cell += one * other;
            }
        }
    }
    let whole = determinant(&left);
    if whole.abs() < 1e-9 {
        return None;
    }
    let solved = |column: usize| {
        let mut with = left;
        for (line, value) in with.iter_mut().zip(right) {
            if let Some(cell) = line.get_mut(column) {
                *cell = value;
            }
        }
        determinant(&with) / whole
    };
    Some(Oval {
        mean: solved(0),
        cosine: solved(1),
        sine: solved(2),
    })
}

const fn determinant(m: &[[f64; 3]; 3]) -> f64 {
    let [[a, b, c], [d, e, f], [g, h, i]] = *m;
    a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(station: usize, degrees: f64, size: f64) -> Diameter {
        Diameter {
            station,
            degrees: Some(degrees),
            size,
        }
    }

    /// The radius of an outline this many degrees from upright.
    fn radius(drawn: &Exaggerated, station: usize, degrees: usize) -> f64 {
        let (x, y) = drawn.outlines[station][degrees * POINTS / 360];
        x.hypot(y)
    }

    #[test]
    fn an_outline_goes_through_its_readings() {
        // A housing of 60 mm, read upright and 60° to each side.
        let readings = [
            read(0, 0.0, 60.010),
            read(0, 60.0, 60.000),
            read(0, -60.0, 59.996),
        ];
        let drawn = exaggerate(&readings).unwrap();
        for (degrees, reading) in [(0, readings[0]), (60, readings[1]), (300, readings[2])] {
            let wanted = 1.0 + drawn.times * (reading.size - drawn.mean) / drawn.mean;
            assert!(
                (radius(&drawn, 0, degrees) - wanted).abs() < 1e-9,
                "{degrees}"
            );
            // The other end of the same diameter.
            let opposite = (degrees + 180) % 360;
            assert!(
                (radius(&drawn, 0, opposite) - wanted).abs() < 1e-9,
                "{degrees}"
            );
        }
    }

    #[test]
    fn two_directions_make_an_oval_with_its_axes_there() {
        let drawn = exaggerate(&[read(0, 0.0, 50.0), read(0, 90.0, 50.02)]).unwrap();
        assert_eq!(drawn.times, 1000.0);
        // 0.01 of 50.01 either way, 1000 times.
        assert!((radius(&drawn, 0, 90) - 1.2).abs() < 1e-3);
        assert!((radius(&drawn, 0, 0) - 0.8).abs() < 1e-3);
        assert!((radius(&drawn, 0, 45) - 1.0).abs() < 1e-9);
    }

    #[test]
    fn taper_is_in_the_sides_and_a_station_left_out_has_none() {
        let drawn = exaggerate(&[read(0, 0.0, 92.00), read(2, 0.0, 92.04)]).unwrap();
        assert!(drawn.sides[0].unwrap() < 1.0 && drawn.sides[2].unwrap() > 1.0);
        assert_eq!(drawn.sides[1], None);
        // One direction is no outline.
        assert!(drawn.outlines.iter().all(Vec::is_empty));
        assert!((drawn.off.1 - 0.02).abs() < 1e-9);
    }

    #[test]
    fn the_factor_is_round_and_keeps_the_largest_difference_within_a_fifth() {
        for part in [1e-6, 3e-6, 7e-5, 4e-4, 1.9e-3] {
            let drawn = exaggerate(&[read(0, 0.0, 1.0 - part), read(0, 90.0, 1.0 + part)]).unwrap();
            let out = radius(&drawn, 0, 90) - 1.0;
            assert!(out <= STICKS_OUT + 1e-9, "{part} sticks out {out}");
            let digits = drawn.times / 10.0_f64.powf(drawn.times.log10().floor());
            assert!(
                [1.0, 2.0, 5.0].iter().any(|it| (digits - it).abs() < 1e-9),
                "{}",
                drawn.times
            );
        }
    }

    #[test]
    fn what_is_perfect_is_drawn_as_it_is_and_what_is_no_size_not_at_all() {
        let drawn = exaggerate(&[read(0, 0.0, 50.0), read(0, 90.0, 50.0)]).unwrap();
        assert_eq!(drawn.times, 1.0);
        assert!((radius(&drawn, 0, 30) - 1.0).abs() < 1e-12);
        for wrong in [f64::NAN, f64::INFINITY, 0.0, -1.0] {
            assert_eq!(
                exaggerate(&[read(0, 0.0, 50.0), read(0, 90.0, wrong)]),
                None
            );
        }
        assert_eq!(exaggerate(&[read(0, 0.0, 50.0)]), None);
        assert_eq!(exaggerate(&[]), None);
    }

    #[test]
    fn more_than_three_directions_are_met_as_well_as_an_oval_can() {
        let all = [0.0, 45.0, 90.0, 135.0].map(|angle: f64| {
            // An oval that leans by 20°, of which all four readings are.
            read(
                0,
                angle,
                50.0 + 0.01 * (2.0 * (angle - 20.0).to_radians()).cos(),
            )
        });
        let drawn = exaggerate(&all).unwrap();
        let wanted = 1.0 + drawn.times * 0.01 / 50.0;
        assert!((radius(&drawn, 0, 20) - wanted).abs() < 1e-9);
    }
}
