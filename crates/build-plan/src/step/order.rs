//! The steps of an engine in an order they can be done in.

use std::collections::BTreeSet;

use thiserror::Error;

use super::STEPS;
use super::shape::{Step, Strength};
use crate::engine::Engine;

/// Steps that wait for each other, so that none of them can ever be done.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[error("these steps wait for each other: {}", ids.join(", "))]
pub struct Stuck {
    /// Their ids.
    pub ids: Vec<&'static str>,
}

/// The steps that apply to an engine, each after all it needs, hard and soft,
/// and otherwise in the order of the job.
///
/// # Errors
/// [`Stuck`] names the steps that wait for each other. The tests prove that
/// there are none.
pub fn in_order(engine: &Engine) -> Result<Vec<&'static Step>, Stuck> {
    in_order_of(engine, Strength::Soft)
}

/// The same, looking only at needs of at least this strength.
pub(super) fn in_order_of(engine: &Engine, weakest: Strength) -> Result<Vec<&'static Step>, Stuck> {
    let mut left: Vec<&'static Step> = STEPS
        .iter()
        .copied()
        .filter(|step| step.when.applies_to(engine))
        .collect();
    let mut done: BTreeSet<&'static str> = BTreeSet::new();
    let mut order = Vec::with_capacity(left.len());
    while !left.is_empty() {
        let ready = left.iter().position(|step| {
            step.needs_on(engine)
                .filter(|need| need.strength <= weakest)
                .all(|need| done.contains(need.step.id))
        });
        match ready {
            Some(at) => {
                let step = left.remove(at);
                done.insert(step.id);
                order.push(step);
            }
            None => {
                return Err(Stuck {
                    ids: left.iter().map(|step| step.id).collect(),
                });
            }
        }
    }
    Ok(order)
}
