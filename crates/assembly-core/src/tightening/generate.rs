//! Orders for when no printed one is there. Common practice throughout: the
//! maker's printed pattern always wins.

use super::layout::Layout;
use super::pattern::Pattern;

/// From the middle outward along the longer way, alternating sides and rows: a
/// head, an intake, cam caps.
#[must_use]
pub fn centre_out(layout: &Layout) -> Pattern {
    let (middle, (width, height)) = (layout.middle(), layout.extent());
    by_rings(layout, |place| {
        if width >= height {
            (place.0 - middle.0).abs()
        } else {
            (place.1 - middle.1).abs()
        }
    })
}

/// From the middle outward all round, each bolt far from the last one, corners
/// last: a pan, a cover.
#[must_use]
pub fn criss_cross(layout: &Layout) -> Pattern {
    let middle = layout.middle();
    by_rings(layout, |place| {
        (place.0 - middle.0).hypot(place.1 - middle.1)
    })
}

/// Bolts of one distance after another; within one distance always the one that
/// is farthest from the last.
fn by_rings(layout: &Layout, distance: impl Fn(&(f64, f64)) -> f64) -> Pattern {
    let mut left: Vec<(usize, f64)> = layout.places().iter().map(distance).enumerate().collect();
    let alike = layout.alike();
    let mut order: Vec<usize> = Vec::with_capacity(left.len());
    while let Some(nearest) = left.iter().map(|one| one.1).min_by(f64::total_cmp) {
        let last = order.last().copied();
        let farther = |bolt: usize| last.map_or(0.0, |last| layout.apart(last, bolt));
        let mut best: Option<(usize, usize)> = None;
        for (at, (bolt, ring)) in left.iter().enumerate() {
            let in_ring = *ring <= nearest + alike;
            let better = best.is_none_or(|(_, taken)| farther(*bolt) > farther(taken) + alike);
            if in_ring && better {
                best = Some((at, *bolt));
            }
        }
        let Some((at, bolt)) = best else { break };
        left.remove(at);
        order.push(bolt);
    }
    Pattern::whole(order)
}

/// Around a circle, each bolt across from the last one: a flywheel, a damper.
#[must_use]
pub fn star(count: usize) -> Pattern {
    if count % 2 == 1 {
        // With an odd number, half way round and a bit meets every bolt once.
        let step = (count - 1) / 2;
        let order = (0..count)
            .map(|turn| if count == 1 { 0 } else { turn * step % count })
            .collect();
        return Pattern::whole(order);
    }
    let half = count / 2;
    let mut taken: Vec<usize> = Vec::with_capacity(half);
    while taken.len() < half {
        // The bolt whose pair stands farthest from all pairs that are tight.
        let room = |bolt: usize| {
            let near = |other: &usize| {
                let apart = bolt.abs_diff(*other);
                apart.min(half - apart)
            };
            taken.iter().map(near).min().unwrap_or(half)
        };
        let mut best: Option<usize> = None;
        for bolt in 0..half {
            if best.is_none_or(|taken| room(bolt) > room(taken)) {
                best = Some(bolt);
            }
        }
        let Some(bolt) = best else { break };
        taken.push(bolt);
    }
    let order = taken
        .into_iter()
        .flat_map(|bolt| [bolt, bolt + half])
        .collect();
    Pattern::whole(order)
}

/// What a bolt of a cap or of a ladder does there, in the order they are
/// tightened: inner or long ones first, side ones last.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Role {
    /// Next to the crank, or the long ones of a ladder.
    Inner,
    /// Outside of those, or the short ones of a ladder.
    Outer,
    /// Across, through the side of the block.
    Side,
}

/// One bolt of the mains.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct CapBolt {
    /// Its cap, from the front, counted from nothing.
    pub cap: usize,
    /// What it does.
    pub role: Role,
}

/// Caps from the middle out, left and right by turns, the thrust cap last of
/// all (its halves have to be aligned first); within each role all caps before
/// the next role. Bolts keep the order of the list within a cap.
#[must_use]
pub fn caps(bolts: &[CapBolt], thrust: Option<usize>) -> Pattern {
    let last = bolts.iter().map(|one| one.cap).max().unwrap_or_default();
    let mut order: Vec<usize> = (0..bolts.len()).collect();
    let rank = |bolt: &usize| {
        bolts.get(*bolt).map(|one| {
            // Twice the distance from the middle, so that it stays whole.
            let distance = (one.cap * 2).abs_diff(last);
            (Some(one.cap) == thrust, one.role, distance, one.cap)
        })
    };
    order.sort_by_key(rank);
    Pattern::whole(order)
}

/// A ladder or girdle in one casting: all long bolts, then the short ones, then
/// the side ones, each from the middle out.
#[must_use]
pub fn ladder(layout: &Layout, roles: &[Role]) -> Pattern {
    let mut order = Vec::with_capacity(layout.count());
    for role in [Role::Inner, Role::Outer, Role::Side] {
        // A bolt of no role counts as a long one.
        let of_role: Vec<usize> = (0..layout.count())
            .filter(|bolt| roles.get(*bolt).copied().unwrap_or(Role::Inner) == role)
            .collect();
        let places: Vec<(f64, f64)> = of_role
            .iter()
            .filter_map(|bolt| layout.places().get(*bolt).copied())
            .collect();
        let inner = centre_out(&Layout::at(&places));
        order.extend(inner.order().iter().filter_map(|at| of_role.get(*at)));
    }
    Pattern::whole(order)
}

/// The bolts of one cap after the other by turns, left, right: rod caps.
#[must_use]
pub fn by_turns(count: usize) -> Pattern {
    Pattern::whole((0..count).collect())
}
