//! The mains: what each row of bolts does, and which cap takes the thrust. Asked
//! only to propose an order; the printed one needs none of it.

use assembly_core::tightening::generate::{CapBolt, Role, caps, ladder};
use assembly_core::tightening::pattern::Pattern;
use leptos::prelude::*;

use super::Describing;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece};
use crate::kit::section::section;

const ROLES: [(char, &str, Role); 3] = [
    ('i', "inner or long", Role::Inner),
    ('o', "outer or short", Role::Outer),
    ('s', "through the side", Role::Side),
];

/// What has to be known for a proposal.
pub fn about_the_caps(describing: Describing) -> El {
    let typing = describing.typing;
    let casting = pick(
        "casting",
        "The caps",
        "",
        vec![
            Word::of("caps", "each by itself"),
            Word::of("ladder", "one ladder or girdle"),
        ],
        move || {
            let ladder = typing.casting.get() == "ladder";
            if ladder { "ladder" } else { "caps" }.to_owned()
        },
        move |id| typing.casting.set(id),
    );
    let rows = Piece::live(move || {
        let rows = typing.counts().len();
        Piece::all((0..rows).map(|row| role(describing, row).into()))
    });
    let thrust = Piece::live(move || {
        let caps = typing.counts().first().copied().unwrap_or_default();
        let mut words = vec![Word::of("", "not said")];
        words.extend((1..=caps).map(|cap| Word::of(cap.to_string(), cap.to_string())));
        pick(
            "thrust",
            "The cap with the thrust bearing, from the left",
            "It is tightened last, once its halves are aligned.",
            words,
            move || typing.thrust.get(),
            move |id| typing.thrust.set(id),
        )
        .into()
    });
    section("For a proposal")
        .with(casting)
        .with(rows)
        .with(thrust)
}

fn role(describing: Describing, row: usize) -> El {
    let roles = describing.typing.roles;
    pick(
        &format!("role-{}", row + 1),
        &format!("Row {}", row + 1),
        "",
        ROLES.map(|(id, label, _)| Word::of(id, label)).to_vec(),
        move || letter(&roles.get(), row).to_string(),
        move |id| {
            let typed = roles.now();
            let rows = typed.chars().count().max(row + 1);
            let new = (0..rows).map(|at| {
                let picked = id.chars().next().filter(|_| at == row);
                picked.unwrap_or_else(|| letter(&typed, at))
            });
            roles.set(new.collect());
        },
    )
}

fn letter(roles: &str, row: usize) -> char {
    roles.chars().nth(row).unwrap_or('i')
}

fn role_of(letter: char) -> Role {
    let mut known = ROLES.iter();
    known
        .find_map(|(id, _, role)| (*id == letter).then_some(*role))
        .unwrap_or(Role::Inner)
}

/// The order that is common practice for such caps; `None` while the rows are
/// not of one length. Followed.
pub fn cap_order(describing: Describing) -> Option<Pattern> {
    let typing = describing.typing;
    let rows = typing.counts();
    let count = *rows.first()?;
    if count == 0 || rows.iter().any(|row| *row != count) {
        return None;
    }
    let roles = typing.roles.get();
    let caps_in_a_row = usize::try_from(count).ok()?;
    let bolts: Vec<CapBolt> = (0..rows.len())
        .flat_map(|row| {
            let role = role_of(letter(&roles, row));
            (0..caps_in_a_row).map(move |cap| CapBolt { cap, role })
        })
        .collect();
    if typing.casting.get() == "ladder" {
        let roles: Vec<Role> = bolts.iter().map(|bolt| bolt.role).collect();
        return describing
            .sheet
            .with(|sheet| Some(ladder(&sheet.layout, &roles)));
    }
    let thrust = typing.thrust.get().parse::<usize>().ok();
    Some(caps(&bolts, thrust.and_then(|cap| cap.checked_sub(1))))
}
