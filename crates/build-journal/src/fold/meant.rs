//! Which parts of the engine a fact means, and the words for what it cannot mean.

use build_plan::proof::Proof;
use build_plan::{At, Engine};

use crate::fact::Spot;

/// The parts that are meant, and whether each is meant as a whole.
pub(super) fn parts(
    proof: Proof,
    spot: Option<&Spot>,
    engine: &Engine,
) -> Result<(Vec<At>, bool), String> {
    if !proof.when().applies_to(engine) {
        return Err(format!("“{}” is not for this engine.", proof.label()));
    }
    let all = proof.per().parts(engine);
    let Some(spot) = spot else {
        return Ok((all, true));
    };
    let place = (spot.place().filter(|place| place.exists_on(engine)))
        .ok_or("It is said of a place that this engine does not have.")?;
    if all.contains(&place.at) {
        return Ok((vec![place.at], true));
    }
    let concerned: Vec<At> = all
        .into_iter()
        .filter(|at| at.concerns(place.at, engine))
        .collect();
    // A bank is all its cylinders; the whole engine is not one of them.
    let whole = place.at == At::Engine || concerned.iter().all(|at| at.cylinder().is_some());
    Ok((concerned, whole))
}

/// What is said of a part of something that is one whole.
pub(super) fn of_the_whole(label: &str) -> String {
    format!("“{label}” is of another part than it was said of, so it does not count.")
}

/// An id that this version does not know.
pub(super) fn unknown(sort: &str, id: &str) -> String {
    let id: String = id.chars().take(60).collect();
    format!("The {sort} “{id}” is not known here.")
}
