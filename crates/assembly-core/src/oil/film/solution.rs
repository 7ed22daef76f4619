//! The film of a bearing at an eccentricity, converged and saying how far.

use thiserror::Error;

use super::field::{Field, Figures};
use super::grid::{Boundary, Grid};
use super::long::long_bearing;

/// What is promised of every figure.
pub const WANTED_CONVERGENCE: f64 = 0.005;

/// The nets, one twice as fine as the one before, round and along half the length.
const NETS: [(usize, usize); 3] = [(20, 3), (40, 6), (80, 12)];

/// Eccentricities the net can follow.
pub const ECCENTRICITIES: (f64, f64) = (0.005, 0.98);

/// Bearings the net can follow; a longer one is taken as endless.
pub const PROPORTIONS: (f64, f64) = (0.05, 4.0);

/// Why a film cannot be worked out.
#[derive(Clone, Copy, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum FilmError {
    /// Not between centred and touching.
    #[error(
        "an eccentricity of {read} cannot be: 0 is centred and 1 touches; the film is worked out from 0.005 to 0.98"
    )]
    Eccentricity {
        /// What was read.
        read: f64,
    },
    /// No bearing has these proportions.
    #[error("a length of {read} diameters is none of a bearing: between 0.05 and endless")]
    Proportion {
        /// What was read.
        read: f64,
    },
    /// A load that presses the journal through.
    #[error(
        "the film would be thinner than a fiftieth of the clearance: no steady film carries this load with this oil, speed and clearance"
    )]
    TooMuchLoad,
    /// The numbers for the film are not positive and finite.
    #[error("{what} must be above nothing, and {read} was read")]
    NotPositive {
        /// Which number.
        what: &'static str,
        /// What was read, SI units.
        read: f64,
    },
}

/// A film with its figures.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Film {
    /// Length by diameter; infinite for the long bearing.
    pub length_over_diameter: f64,
    /// How far the journal is off the middle, by the clearance.
    pub eccentricity: f64,
    /// What it comes to.
    pub figures: Figures,
    /// By how much, as a part, the figures still changed when the net was made
    /// twice as fine and both were carried on to a net of no width.
    pub convergence: f64,
}

impl Film {
    /// Least film by radial clearance.
    #[must_use]
    pub fn least_film(&self) -> f64 {
        1.0 - self.eccentricity
    }

    /// Whether the net was fine enough for half a per cent.
    #[must_use]
    pub fn has_converged(&self) -> bool {
        self.convergence <= WANTED_CONVERGENCE
    }
}

/// Two nets, the second twice as fine, carried on to a net of no width: the error
/// goes with the square of the mesh.
fn carried_on(coarse: &Figures, fine: &Figures) -> Figures {
    fine.combined(coarse, |fine, coarse| fine + (fine - coarse) / 3.0)
}

pub(super) fn check(length_over_diameter: f64, eccentricity: f64) -> Result<(), FilmError> {
    if !(ECCENTRICITIES.0..=ECCENTRICITIES.1).contains(&eccentricity) {
        return Err(FilmError::Eccentricity { read: eccentricity });
    }
    // Not written as "shorter than", so that no number is refused, too.
    if length_over_diameter.is_nan() || length_over_diameter < PROPORTIONS.0 {
        return Err(FilmError::Proportion {
            read: length_over_diameter,
        });
    }
    Ok(())
}

/// Where the film is broken on a net twice as fine, as far as the coarse one knows.
fn twice_as_fine(broken: &[bool], along: usize) -> Vec<bool> {
    let rounds = broken.len() / along.max(1);
    let fine_row =
        |row: &[bool]| -> Vec<bool> { row.iter().flat_map(|is_broken| [*is_broken; 2]).collect() };
    let rows: Vec<Vec<bool>> = broken.chunks_exact(along).map(fine_row).collect();
    // Inner nodes only: between n meshes there are n − 1.
    (0..2 * rounds + 1)
        .filter_map(|at| rows.get((at / 2).min(rounds.saturating_sub(1))))
        .flatten()
        .copied()
        .collect()
}

/// The film of a bearing of this length by diameter at this eccentricity.
///
/// ```
/// use assembly_core::oil::film::{Boundary, film};
/// // Raimondi and Boyd (1958), L/D 1/2, eccentricity 0.8: S 0.0923, φ 33.31°.
/// let got = film(0.5, 0.8, Boundary::FedAtWidest)?;
/// assert!((got.figures.sommerfeld / 0.0923 - 1.0).abs() < 0.01);
/// assert!((got.figures.attitude.to_degrees() / 33.31 - 1.0).abs() < 0.02);
/// assert!(got.has_converged());
/// # Ok::<(), assembly_core::oil::film::FilmError>(())
/// ```
///
/// # Errors
/// [`FilmError`] for bearings and eccentricities outside what the net follows.
pub fn film(
    length_over_diameter: f64,
    eccentricity: f64,
    boundary: Boundary,
) -> Result<Film, FilmError> {
    check(length_over_diameter, eccentricity)?;
    if length_over_diameter > PROPORTIONS.1 && boundary == Boundary::FedAtWidest {
        return Ok(Film {
            length_over_diameter: f64::INFINITY,
            eccentricity,
            figures: long_bearing(eccentricity),
            convergence: 0.0,
        });
    }
    let proportion = length_over_diameter.min(PROPORTIONS.1 * 10.0);
    let mut warm = Warm::default();
    let [coarse, middle, fine] =
        [0, 1, 2].map(|net| warm.solve(net, proportion, eccentricity, boundary));
    Ok(of_nets(
        length_over_diameter,
        eccentricity,
        [coarse, middle, fine],
    ))
}

/// The film that three nets together tell.
pub(super) fn of_nets(
    length_over_diameter: f64,
    eccentricity: f64,
    [coarse, middle, fine]: [Figures; 3],
) -> Film {
    let figures = carried_on(&middle, &fine);
    Film {
        length_over_diameter,
        eccentricity,
        // What is left is of a higher order than what was taken away, so a third of
        // the last change is more than enough.
        convergence: carried_on(&coarse, &middle).greatest_difference(&figures) / 3.0,
        figures,
    }
}

/// Where the film was broken last on each net: the next film is much like it.
#[derive(Default)]
pub(super) struct Warm {
    broken: [Vec<bool>; 3],
}

impl Warm {
    /// The figures on one of the nets.
    pub(super) fn solve(
        &mut self,
        net: usize,
        length_over_diameter: f64,
        eccentricity: f64,
        boundary: Boundary,
    ) -> Figures {
        let (round, along) = NETS.get(net).copied().unwrap_or((20, 3));
        let coarser = net
            .checked_sub(1)
            .and_then(|at| Some((self.broken.get(at)?, NETS.get(at)?.1)))
            .map(|(broken, along)| twice_as_fine(broken, along));
        let grid = Grid::new(eccentricity, boundary, round, along);
        let field = Field::new(&grid, length_over_diameter, eccentricity, boundary);
        match self.broken.get_mut(net) {
            Some(broken) => {
                if broken.is_empty() {
                    *broken = coarser.unwrap_or_default();
                }
                field.solve(broken)
            }
            None => field.solve(&mut Vec::new()),
        }
    }

    /// The two coarse nets carried on.
    pub(super) fn middling(
        &mut self,
        length_over_diameter: f64,
        eccentricity: f64,
    ) -> (Figures, Figures, Figures) {
        let boundary = Boundary::FedAtWidest;
        let coarse = self.solve(0, length_over_diameter, eccentricity, boundary);
        let middle = self.solve(1, length_over_diameter, eccentricity, boundary);
        (coarse, middle, carried_on(&coarse, &middle))
    }
}

/// The coarsest net gives Sommerfeld's number about so much too great, as a logarithm.
pub(crate) const COARSE_IS_OFF: f64 = -0.035;

/// The figures on the coarsest net alone: some per cent off, and forty times as fast.
pub(crate) fn rough(length_over_diameter: f64, eccentricity: f64) -> Figures {
    if length_over_diameter > PROPORTIONS.1 {
        return long_bearing(eccentricity);
    }
    let [(round, along), ..] = NETS;
    let boundary = Boundary::FedAtWidest;
    let grid = Grid::new(eccentricity, boundary, round, along);
    Field::new(&grid, length_over_diameter, eccentricity, boundary).solve(&mut Vec::new())
}

#[cfg(test)]
mod tests {
    use super::*;

    // A. A. Raimondi and J. Boyd, Trans. ASLE 1 (1958), table of the full bearing.
    #[test]
    fn printed_lines_of_finite_bearings() {
        for (proportion, eccentricity, sommerfeld, degrees, friction, inflow, side) in [
            (1.0, 0.6, 0.121, 50.58, 3.22, 4.33, 0.680),
            (0.5, 0.8, 0.0923, 33.31, 3.26, 5.41, 0.874),
            (0.25, 0.6, 1.07, 46.72, 26.7, 4.99, 0.746),
        ] {
            let film = film(proportion, eccentricity, Boundary::FedAtWidest).unwrap();
            let got = film.figures;
            for (got, wanted) in [
                (got.sommerfeld, sommerfeld),
                (got.attitude.to_degrees(), degrees),
                (got.friction, friction),
                (got.inflow, inflow),
                (got.side_share, side),
            ] {
                assert!(
                    (got / wanted - 1.0).abs() < 0.02,
                    "{proportion}: {got} {wanted}"
                );
            }
            assert!(film.has_converged(), "{film:?}");
        }
    }

    // NACA Report 1157: towards no length the film is Ocvirk's.
    #[test]
    fn a_very_short_bearing_is_the_short_bearing() {
        use super::super::short::{short_attitude, short_load};
        for e in [0.2, 0.5, 0.8] {
            let got = film(0.05, e, Boundary::HalfSommerfeld).unwrap().figures;
            assert!((got.sommerfeld * 0.0025 / short_load(e) - 1.0).abs() < 0.015);
            assert!((got.attitude / short_attitude(e) - 1.0).abs() < 0.01);
        }
    }

    #[test]
    fn a_long_bearing_is_the_endless_one() {
        let long = film(f64::INFINITY, 0.7, Boundary::FedAtWidest).unwrap();
        assert_eq!(long.figures, long_bearing(0.7));
        let nearly = film(4.0, 0.7, Boundary::FedAtWidest).unwrap().figures;
        // The ends of a bearing of four diameters still leak.
        assert!(nearly.sommerfeld > long.figures.sommerfeld);
        assert!(nearly.sommerfeld < 1.35 * long.figures.sommerfeld);
    }

    #[test]
    fn every_film_in_reach_says_how_far_it_converged() {
        for proportion in [0.1, 0.4, 1.0, 2.5] {
            for e in [0.01, 0.3, 0.7, 0.9, 0.98] {
                let film = film(proportion, e, Boundary::FedAtWidest).unwrap();
                assert!(
                    film.has_converged(),
                    "{proportion} {e}: {}",
                    film.convergence
                );
            }
        }
    }

    #[test]
    fn what_no_bearing_has_is_told() {
        let of = |proportion: f64, e: f64| film(proportion, e, Boundary::FedAtWidest);
        for e in [0.0, 1.0, -0.3, f64::NAN] {
            assert!(matches!(of(1.0, e), Err(FilmError::Eccentricity { .. })));
        }
        for proportion in [0.0, -1.0, f64::NAN] {
            assert!(matches!(
                of(proportion, 0.5),
                Err(FilmError::Proportion { .. })
            ));
        }
    }
}
