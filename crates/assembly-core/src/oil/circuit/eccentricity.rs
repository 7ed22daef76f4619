//! How far off the middle a bearing runs, looked up instead of worked out: one
//! table for each length by diameter, made once.

use crate::oil::film::{COARSE_IS_OFF, ECCENTRICITIES, PROPORTIONS, rough};

/// Films in a table, evenly spread on a scale that makes the curve nearly straight.
const FILMS: usize = 12;

/// Eccentricity and attitude against Sommerfeld's number, for one proportion.
#[derive(Clone, PartialEq, Debug)]
pub struct FilmTable {
    length_over_diameter: f64,
    /// Logarithm of the number, falling; the scale; attitude.
    rows: Vec<(f64, f64, f64)>,
}

/// Where a journal stands.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Place {
    /// Off the middle, by the clearance.
    pub eccentricity: f64,
    /// Angle from the load to the least film, radians.
    pub attitude: f64,
}

fn scale(e: f64) -> f64 {
    libm::log(e) - 2.0 * libm::log(1.0 - e)
}

impl FilmTable {
    /// The table of one proportion. Proportions that no film is known for give an
    /// empty table, which takes every journal as centred.
    #[must_use]
    pub fn new(length_over_diameter: f64) -> Self {
        let (low, high) = (scale(0.02), scale(ECCENTRICITIES.1));
        let rows = (0..FILMS)
            .filter(|_| length_over_diameter >= PROPORTIONS.0)
            .map(|at| {
                let here = low + (high - low) * at as f64 / (FILMS - 1) as f64;
                let x = libm::exp(here);
                let e = 2.0 * x / (2.0 * x + 1.0 + (4.0 * x + 1.0).sqrt());
                let e = e.min(ECCENTRICITIES.1);
                // The coarsest net, set right by what it is usually off: within a
                // per cent, and the leak hardly feels that.
                let figures = rough(length_over_diameter, e);
                let number = libm::log(figures.sommerfeld) + COARSE_IS_OFF;
                (number, here, figures.attitude)
            })
            .collect();
        Self {
            length_over_diameter,
            rows,
        }
    }

    /// The proportion it is for.
    #[must_use]
    pub const fn length_over_diameter(&self) -> f64 {
        self.length_over_diameter
    }

    /// Where the journal stands at this Sommerfeld number; the ends hold beyond.
    #[must_use]
    pub fn at(&self, sommerfeld: f64) -> Place {
        let wanted = libm::log(sommerfeld.max(1e-300));
        let after = self.rows.partition_point(|(log, _, _)| *log > wanted);
        let low = self.rows.get(after.saturating_sub(1));
        let high = self.rows.get(after).or(low);
        let (Some((x0, s0, a0)), Some((x1, s1, a1))) = (low, high) else {
            return Place {
                eccentricity: 0.0,
                attitude: 0.0,
            };
        };
        let part = if x0 == x1 {
            0.0
        } else {
            ((wanted - x0) / (x1 - x0)).clamp(0.0, 1.0)
        };
        let x = libm::exp(s0 + part * (s1 - s0));
        Place {
            eccentricity: 2.0 * x / (2.0 * x + 1.0 + (4.0 * x + 1.0).sqrt()),
            attitude: a0 + part * (a1 - a0),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::oil::film::film_at;

    #[test]
    fn the_table_says_what_the_film_says() {
        let table = FilmTable::new(0.35);
        for number in [4.0, 0.8, 0.12, 0.02] {
            let film = film_at(0.35, number).unwrap();
            let got = table.at(number);
            assert!(
                (got.eccentricity - film.eccentricity).abs() < 0.01,
                "{number}"
            );
            assert!(
                (got.attitude - film.figures.attitude).abs() < 0.03,
                "{number}"
            );
        }
        assert!(table.at(0.0).eccentricity > 0.97);
        assert!(table.at(1e9).eccentricity < 0.03);
        assert_eq!(FilmTable::new(-1.0).at(1.0).eccentricity, 0.0);
    }
}
