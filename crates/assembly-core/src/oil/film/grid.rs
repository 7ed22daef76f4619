//! The net that the film is worked out on, and what each of its meshes holds.
//!
//! All lengths are made plain numbers: the film `H = 1 + ε·cos θ` by the radial
//! clearance, the way along the bearing by half its length, the pressure by
//! `6·µ·ω·(R/c)²`. Between two nodes round the journal the flow is taken as
//! constant, and then Reynolds' equation has the exact solution
//! `q = (I2 − ΔP)/I3` with `I2 = ∫dθ/H²` and `I3 = ∫dθ/H³`, both closed forms in
//! Sommerfeld's variable. So a coarse net is exact for the long bearing and
//! nearly so for others.

use std::f64::consts::PI;

/// What the film does at its ends.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Boundary {
    /// Oil is fed on the line of the widest film at no pressure, and the film
    /// breaks by Reynolds' condition (Swift and Stieber): pressure and slope
    /// vanish together. What Raimondi and Boyd worked with.
    FedAtWidest,
    /// The film begins and breaks by Reynolds' condition.
    ReynoldsAllRound,
    /// Half Sommerfeld: only the converging half carries.
    HalfSommerfeld,
}

impl Boundary {
    /// From where to where the film is looked for, radians from the widest place.
    const fn reach(self) -> (f64, f64) {
        match self {
            Self::FedAtWidest => (0.0, 2.0 * PI),
            // A quarter turn before the widest place there is never any pressure.
            Self::ReynoldsAllRound => (-0.5 * PI, 1.5 * PI),
            Self::HalfSommerfeld => (0.0, PI),
        }
    }
}

/// A row of nodes round the journal.
#[derive(Clone, Copy, Debug)]
pub(super) struct Node {
    /// Angle from the widest place, radians.
    pub angle: f64,
    /// Its share of the way round, radians.
    pub width: f64,
    /// `H³` times its share of the way round.
    pub openness: f64,
}

/// The way from one node to the next.
#[derive(Clone, Copy, Debug)]
pub(super) struct Step {
    /// Flow by the moving surface alone, with no pressure difference: `I2/I3`.
    pub carried: f64,
    /// Flow that a unit of pressure difference drives: `1/I3`.
    pub conductance: f64,
}

/// The net.
pub(super) struct Grid {
    /// Round the journal, both ends included.
    pub nodes: Vec<Node>,
    /// Between them.
    pub steps: Vec<Step>,
    /// Along half the bearing from the middle: each node's share of the length.
    pub shares: Vec<f64>,
    /// Along it: `1/ΔZ` to the next node outward; the last one is to the edge.
    pub outward: Vec<f64>,
}

/// How much the nodes crowd towards the thin film, of the eccentricity: all of
/// it would leave the wide film, where the oil comes in, too coarse.
const CROWDING: f64 = 0.88;

/// The angle whose half has the tangent of `half` stretched by √((1+e)/(1−e)).
fn stretched(angle: f64, eccentricity: f64) -> f64 {
    let half = 0.5 * angle;
    2.0 * libm::atan2(
        (1.0 + eccentricity).sqrt() * libm::sin(half),
        (1.0 - eccentricity).sqrt() * libm::cos(half),
    )
}

/// `∫dθ/H²` and `∫dθ/H³` from the widest place to an angle.
pub(super) fn film_integrals(angle: f64, eccentricity: f64) -> (f64, f64) {
    let e = eccentricity;
    let gamma = stretched(angle, -e);
    let (sine, cosine) = (libm::sin(gamma), libm::cos(gamma));
    let root = (1.0 - e * e).sqrt();
    let (cube, fifth) = (root.powi(3), root.powi(5));
    (
        (gamma - e * sine) / cube,
        (gamma - 2.0 * e * sine + 0.5 * e * e * (gamma + sine * cosine)) / fifth,
    )
}

impl Grid {
    /// A net of so many meshes round and along half the bearing.
    pub(super) fn new(eccentricity: f64, boundary: Boundary, round: usize, along: usize) -> Self {
        let crowd = CROWDING * eccentricity;
        let (from, to) = boundary.reach();
        let (from, to) = (stretched(from, -crowd), stretched(to, -crowd));
        let part = (to - from) / round as f64;
        let nodes: Vec<Node> = (0..=round)
            .map(|at| {
                let angle = stretched(from + part * at as f64, crowd);
                let film = 1.0 + eccentricity * libm::cos(angle);
                // dθ/dγ of the stretching.
                let width = part * (1.0 + crowd * libm::cos(angle)) / (1.0 - crowd * crowd).sqrt();
                Node {
                    angle,
                    width,
                    openness: film.powi(3) * width,
                }
            })
            .collect();
        let integrals: Vec<(f64, f64)> = nodes
            .iter()
            .map(|node| film_integrals(node.angle, eccentricity))
            .collect();
        let steps = integrals
            .iter()
            .zip(integrals.iter().skip(1))
            .map(|((second, third), (next_second, next_third))| {
                let conductance = 1.0 / (next_third - third);
                Step {
                    carried: (next_second - second) * conductance,
                    conductance,
                }
            })
            .collect();
        // Closer together towards the edge, where the pressure falls off.
        let place = |at: usize| libm::sin(0.5 * PI * at as f64 / along as f64);
        let outward: Vec<f64> = (0..along)
            .map(|at| 1.0 / (place(at + 1) - place(at)))
            .collect();
        let shares = (0..along)
            .map(|at| {
                let inner = if at == 0 { 0.0 } else { place(at - 1) };
                0.5 * (place(at + 1) - inner)
            })
            .collect();
        Self {
            nodes,
            steps,
            shares,
            outward,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Sommerfeld's substitution: over the full round ∫dθ/H² = 2π/(1−ε²)^1.5 and
    // ∫dθ/H³ = π(2+ε²)/(1−ε²)^2.5 (A. Cameron, Basic Lubrication Theory, long bearing).
    #[test]
    fn the_integrals_over_the_full_round() {
        for e in [0.0, 0.3, 0.8, 0.97] {
            let (second, third) = film_integrals(2.0 * PI, e);
            let less = 1.0 - e * e;
            assert!((second / (2.0 * PI / less.powf(1.5)) - 1.0).abs() < 1e-12);
            assert!((third / (PI * (2.0 + e * e) / less.powf(2.5)) - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn the_net_covers_round_and_length_once() {
        for boundary in [
            Boundary::FedAtWidest,
            Boundary::ReynoldsAllRound,
            Boundary::HalfSommerfeld,
        ] {
            let grid = Grid::new(0.9, boundary, 64, 8);
            let (from, to) = boundary.reach();
            assert!((grid.nodes[0].angle - from).abs() < 1e-12);
            assert!((grid.nodes[64].angle - to).abs() < 1e-12);
            let inner: f64 = grid.nodes[1..64].iter().map(|node| node.width).sum();
            let ends = 0.5 * (grid.nodes[0].width + grid.nodes[64].width);
            assert!(((inner + ends) / (to - from) - 1.0).abs() < 0.01);
            let length: f64 = grid.outward.iter().map(|one| 1.0 / one).sum();
            assert!((length - 1.0).abs() < 1e-12);
        }
    }
}
