//! What happened in a tightening, as lines of the book.

use build_journal::fact::{Body, BoltState, RunMark, RunMarked, Spot};

use super::words;

/// A fact of a tightening as one line; nothing for the others. What a person
/// typed is cut by who shows it.
#[must_use]
pub fn in_the_log(body: &Body) -> Option<String> {
    Some(match body {
        Body::FastenerGroup(made) => {
            format!(
                "Group of {} bolts: {}, {}",
                made.bolts,
                made.label,
                made.stages.join(", ")
            )
        }
        Body::RunBegun(made) => {
            format!("{}: begun{}", words::way(made.way), at(made.place.as_ref()))
        }
        Body::RunOpened(_) => "The run was opened anew".to_owned(),
        Body::BoltPulled(made) => format!("Bolt {} pulled, lap {}", made.bolt, made.lap),
        Body::RunMarked(made) => marked(made),
        Body::BoltsRenewed(made) => {
            let which: Vec<String> = made.bolts.iter().map(u32::to_string).collect();
            let which = if which.is_empty() {
                "all".to_owned()
            } else {
                which.join(", ")
            };
            let lot = made
                .lot
                .as_ref()
                .map(|lot| format!(", “{lot}”"))
                .unwrap_or_default();
            format!("New bolts: {which}{lot}{}", at(made.place.as_ref()))
        }
        Body::BoltMeasured(made) => {
            let state = match made.state {
                BoltState::Free => "free",
                BoltState::Tight => "tight",
            };
            format!(
                "Bolt {} {state}: {} {}{}",
                made.bolt,
                made.typed,
                made.unit,
                at(made.place.as_ref())
            )
        }
        Body::BoltCompared(made) => {
            format!(
                "Bolt {} held against its map: {}",
                made.bolt,
                made.outcome.id()
            )
        }
        Body::SealantPutOn(made) => {
            let what = made.what.as_deref().unwrap_or("sealant");
            format!("Put on: {what}, to be closed within {}", made.close_by)
        }
        Body::WrenchListed(made) => {
            let wrench = &made.wrench;
            let name = wrench.name.as_deref().unwrap_or("torque wrench");
            format!(
                "On the list of wrenches: {name}, {} to {} {}",
                wrench.low, wrench.high, wrench.unit
            )
        }
        Body::JointClosed(_) => "The joint was closed".to_owned(),
        _ => return None,
    })
}

fn marked(made: &RunMarked) -> String {
    let number = |number: Option<u32>| number.map_or_else(String::new, |one| format!(" {one}"));
    match made.mark {
        RunMark::TakenBack => "The last pull was taken back".to_owned(),
        RunMark::Interrupted => "The run was interrupted".to_owned(),
        RunMark::Confirmed => "Confirmed: what is ticked is so".to_owned(),
        RunMark::LapRestarted => format!("Lap{} begun again", number(made.lap)),
        RunMark::BackedOff => "All backed off".to_owned(),
        RunMark::StripeSeen => format!("Stripe of bolt{} seen", number(made.bolt)),
        RunMark::Left => "The run was given up".to_owned(),
    }
}

fn at(place: Option<&Spot>) -> String {
    match place.and_then(Spot::place) {
        Some(place) => format!(", {place}"),
        None => String::new(),
    }
}
