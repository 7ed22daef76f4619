//! The pressure in the film on one net, by Reynolds' equation in two dimensions.
//!
//! Where the film is broken the pressure is nothing, elsewhere it is above it.
//! Which nodes are which is found by solving, giving up nodes that pull, taking
//! back nodes that would be filled, and solving again until nothing changes:
//! the active set way, which ends with the exact answer of the net.

use std::f64::consts::PI;

use super::band::Band;
use super::grid::{Boundary, Grid};

/// Solving again this often has always been enough by far.
const MOST_ROUNDS: usize = 60;

/// What a film comes to, in plain numbers.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Figures {
    /// Sommerfeld's number `(µN/P)(R/c)²`, N in turns a second.
    pub sommerfeld: f64,
    /// From the load to the place of the least film, radians.
    pub attitude: f64,
    /// Friction coefficient by R/c.
    pub friction: f64,
    /// Oil that flows in over the widest place: `Q/(R·c·N·L)`.
    pub inflow: f64,
    /// The part of it that leaves at the edges.
    pub side_share: f64,
    /// Mean pressure by peak pressure.
    pub mean_over_peak: f64,
}

impl Figures {
    /// Every figure one: what changes nothing as a factor.
    pub(super) const ONES: Self = Self {
        sommerfeld: 1.0,
        attitude: 1.0,
        friction: 1.0,
        inflow: 1.0,
        side_share: 1.0,
        mean_over_peak: 1.0,
    };

    /// Each figure by the other's; one where the other's is nothing.
    pub(super) fn over(&self, other: &Self) -> Self {
        self.combined(
            other,
            |one, other| if other == 0.0 { 1.0 } else { one / other },
        )
    }

    /// Each figure of two films put together.
    pub(super) fn combined(&self, other: &Self, how: impl Fn(f64, f64) -> f64) -> Self {
        Self {
            sommerfeld: how(self.sommerfeld, other.sommerfeld),
            attitude: how(self.attitude, other.attitude),
            friction: how(self.friction, other.friction),
            inflow: how(self.inflow, other.inflow),
            side_share: how(self.side_share, other.side_share),
            mean_over_peak: how(self.mean_over_peak, other.mean_over_peak),
        }
    }

    /// The greatest part by which any figure differs from the other's.
    pub(super) fn greatest_difference(&self, other: &Self) -> f64 {
        let apart = |one: f64, other: f64| {
            if other == 0.0 {
                one.abs()
            } else {
                (one / other - 1.0).abs()
            }
        };
        [
            apart(self.sommerfeld, other.sommerfeld),
            apart(self.attitude, other.attitude),
            apart(self.friction, other.friction),
            apart(self.inflow, other.inflow),
            apart(self.side_share, other.side_share),
            apart(self.mean_over_peak, other.mean_over_peak),
        ]
        .into_iter()
        .fold(0.0, f64::max)
    }
}

/// Friction coefficient by R/c of a film that drags on the journal all round
/// (the identity of journal friction): `2π²S/√(1−ε²) + ε·sin φ/2`.
#[must_use]
pub fn journal_friction(sommerfeld: f64, eccentricity: f64, attitude: f64) -> f64 {
    2.0 * PI * PI * sommerfeld / (1.0 - eccentricity * eccentricity).sqrt()
        + 0.5 * eccentricity * libm::sin(attitude)
}

/// The film on one net.
pub(super) struct Field<'a> {
    grid: &'a Grid,
    /// Diameter by length, squared.
    slenderness: f64,
    eccentricity: f64,
    may_break: bool,
}

impl<'a> Field<'a> {
    pub(super) fn new(
        grid: &'a Grid,
        length_over_diameter: f64,
        eccentricity: f64,
        boundary: Boundary,
    ) -> Self {
        Self {
            grid,
            slenderness: 1.0 / (length_over_diameter * length_over_diameter),
            eccentricity,
            may_break: boundary != Boundary::HalfSommerfeld,
        }
    }

    /// Solves. Takes which nodes are broken to begin with, and leaves which are.
    pub(super) fn solve(&self, broken: &mut Vec<bool>) -> Figures {
        let along = self.grid.shares.len();
        let rows = self.grid.nodes.len().saturating_sub(2) * along;
        if broken.len() != rows {
            *broken = vec![false; rows];
        }
        let mut pressure = vec![0.0; rows];
        for _ in 0..MOST_ROUNDS {
            pressure = self.pressure(broken);
            if !self.may_break || !self.review(&pressure, broken) {
                break;
            }
        }
        self.figures(&pressure)
    }

    /// The pressure at every inner node, the broken ones held at nothing.
    fn pressure(&self, broken: &[bool]) -> Vec<f64> {
        let along = self.grid.shares.len();
        let mut right = vec![0.0; broken.len()];
        let mut band = Band::new(broken.len(), along);
        let rounds = self.rows();
        for (((row, mesh), (left, diagonal)), (value, is_broken)) in rounds
            .enumerate()
            .zip(band.rows_mut())
            .zip(right.iter_mut().zip(broken))
        {
            if *is_broken {
                *diagonal = 1.0;
                continue;
            }
            *diagonal = mesh.diagonal;
            *value = mesh.source;
            let free = |before: usize| {
                row.checked_sub(before)
                    .and_then(|at| broken.get(at))
                    .is_some_and(|is_broken| !is_broken)
            };
            if free(along)
                && let Some(entry) = left.first_mut()
            {
                *entry += -mesh.to_before;
            }
            if mesh.place > 0
                && free(1)
                && let Some(entry) = left.last_mut()
            {
                *entry += -mesh.to_inner;
            }
        }
        band.solve(&mut right);
        right
    }

    /// Whether any node had to change sides.
    fn review(&self, pressure: &[f64], broken: &mut [bool]) -> bool {
        let along = self.grid.shares.len();
        let mut changed = false;
        let at = |place: Option<usize>| {
            place
                .and_then(|at| pressure.get(at))
                .copied()
                .unwrap_or(0.0)
        };
        for ((row, mesh), is_broken) in self.rows().enumerate().zip(broken) {
            let here = at(Some(row));
            let breaks = if *is_broken {
                let inner = if mesh.place > 0 {
                    at(row.checked_sub(1))
                } else {
                    0.0
                };
                let outer = if mesh.place + 1 < along {
                    at(Some(row + 1))
                } else {
                    0.0
                };
                let pushed = mesh.source
                    + mesh.to_before * at(row.checked_sub(along))
                    + mesh.to_after * at(Some(row + along))
                    + mesh.to_inner * inner
                    + mesh.to_outer * outer;
                pushed <= 0.0
            } else {
                here < 0.0
            };
            changed |= breaks != *is_broken;
            *is_broken = breaks;
        }
        changed
    }

    /// The equation of every inner node, round after round.
    fn rows(&self) -> impl Iterator<Item = Mesh> {
        let grid = self.grid;
        let rounds = grid
            .nodes
            .iter()
            .skip(1)
            .zip(grid.steps.iter().zip(grid.steps.iter().skip(1)));
        let slenderness = self.slenderness;
        rounds.flat_map(move |(node, (before, after))| {
            let sideways = slenderness * node.openness;
            let inner = std::iter::once(&0.0).chain(&grid.outward);
            grid.shares
                .iter()
                .zip(inner.zip(&grid.outward))
                .enumerate()
                .map(move |(place, (share, (inner, outer)))| {
                    let (to_before, to_after) =
                        (share * before.conductance, share * after.conductance);
                    let (to_inner, to_outer) = (sideways * inner, sideways * outer);
                    Mesh {
                        place,
                        to_before,
                        to_after,
                        to_inner,
                        to_outer,
                        diagonal: to_before + to_after + to_inner + to_outer,
                        source: share * (before.carried - after.carried),
                    }
                })
        })
    }

    fn figures(&self, pressure: &[f64]) -> Figures {
        let grid = self.grid;
        let along = grid.shares.len().max(1);
        let edge = grid.outward.last().copied().unwrap_or(0.0) * self.slenderness;
        let (mut towards, mut across, mut side) = (0.0, 0.0, 0.0);
        let mut middles = Vec::with_capacity(grid.nodes.len());
        for (node, row) in grid.nodes.iter().skip(1).zip(pressure.chunks_exact(along)) {
            let mean: f64 = row
                .iter()
                .zip(&grid.shares)
                .map(|(p, share)| p * share)
                .sum();
            towards -= mean * node.width * libm::cos(node.angle);
            across += mean * node.width * libm::sin(node.angle);
            side += edge * node.openness * row.last().copied().unwrap_or(0.0);
            middles.push(row.first().copied().unwrap_or(0.0));
        }
        // Half the half-mesh at the feed, where the pressure rises from nothing.
        let first = pressure.get(..along).unwrap_or_default();
        let near_feed = grid.nodes.first().map_or(0.0, |node| 0.125 * node.openness)
            * edge
            * first.last().copied().unwrap_or(0.0);
        let entering: f64 = first
            .iter()
            .zip(&grid.shares)
            .map(|(p, share)| {
                grid.steps
                    .first()
                    .map_or(0.0, |step| share * (step.carried - step.conductance * p))
            })
            .sum();
        // The shares leave out half a mesh at the edge, where no pressure hinders.
        let at_edge = 1.0 - grid.shares.iter().sum::<f64>();
        let bare = grid
            .steps
            .first()
            .map_or(0.0, |step| at_edge * step.carried);
        let inflow = PI * (entering + bare + near_feed);
        let load = 0.5 * towards.hypot(across);
        let sommerfeld = 1.0 / (12.0 * PI * load);
        let attitude = libm::atan2(across, towards);
        Figures {
            sommerfeld,
            attitude,
            friction: journal_friction(sommerfeld, self.eccentricity, attitude),
            inflow,
            side_share: PI * (side + near_feed) / inflow,
            mean_over_peak: load / peak(&middles),
        }
    }
}

/// The top of the parabola through the greatest number and its neighbours.
fn peak(row: &[f64]) -> f64 {
    let top = row
        .iter()
        .enumerate()
        .max_by(|(_, a), (_, b)| a.total_cmp(b))
        .map_or(0, |(at, _)| at);
    let at = |place: Option<usize>| place.and_then(|at| row.get(at)).copied().unwrap_or(0.0);
    let (before, here, after) = (at(top.checked_sub(1)), at(Some(top)), at(Some(top + 1)));
    let bend = before - 2.0 * here + after;
    let slope = 0.5 * (after - before);
    if bend < 0.0 {
        here - 0.5 * slope * slope / bend
    } else {
        here
    }
}

/// The equation of one node: what each neighbour's pressure counts in it.
struct Mesh {
    place: usize,
    to_before: f64,
    to_after: f64,
    to_inner: f64,
    to_outer: f64,
    diagonal: f64,
    source: f64,
}
