//! The order: tapped on the drawing, or proposed when the builder asks.

use assembly_core::tightening::group::Holds;
use build_journal::fact::Origin;
use build_journal::fold::tightening::Field;
use leptos::prelude::*;

use super::Describing;
use super::caps::{about_the_caps, cap_order};
use crate::build::tighten::map::{Drawing, Face, press_map};
use crate::build::tighten::typed::numbers;
use crate::kit::piece::{El, Piece, button, note, row};
use crate::kit::section::section;

/// The third step.
pub fn order(describing: Describing) -> El {
    let typing = describing.typing;
    let layout = Memo::new(move |_| describing.sheet.with(|sheet| sheet.layout.clone()));
    let drawing = Piece::live(move || {
        let drawing = layout.with(Drawing::of);
        let turned = drawing.turned.then(|| {
            note(
                "hint",
                "Drawn upright: what is left on the engine is at the top here.",
            )
        });
        let face = move |bolt: usize| face(&typing.order(), bolt);
        let map = press_map(&drawing, face, move |bolt| tap(describing, bolt));
        Piece::all([turned.into(), map.into()])
    });
    let lead = "The printed order always wins: tap the bolts one after the other as it numbers them. Without one, ask for a proposal.";
    let from = note("", "").live_text(move || {
        let own = typing.order_from.get() == Origin::CommonPractice.id();
        let words = match (typing.order().is_empty(), own) {
            (true, _) => "No order yet.",
            (false, true) => "Common practice, proposed here: not from a sheet.",
            (false, false) => "As printed, tapped by you.",
        };
        words.to_owned()
    });
    let back = button("quiet", "Take back", "order-back", move || {
        let mut order = untrack(|| typing.order());
        order.pop();
        put(describing, &order, Origin::Printed);
    });
    let none = button("quiet", "Start over", "order-none", move || {
        put(describing, &[], Origin::Printed);
    });
    let propose = Piece::when(
        move || usual(describing).is_some(),
        move || {
            button("quiet", "Propose an order", "order-propose", move || {
                if let Some(order) = untrack(|| usual(describing)) {
                    put(describing, &order, Origin::CommonPractice);
                }
            })
            .into()
        },
    );
    let caps = Piece::when(
        move || is_mains(describing),
        move || about_the_caps(describing).into(),
    );
    section("3 · The order")
        .with(note("lead", lead))
        .with(drawing)
        .with(from.test("order-from"))
        .with(caps)
        .with(row([back.into(), none.into(), propose]))
        .with(describing.wrong(Field::Order))
}

fn is_mains(describing: Describing) -> bool {
    describing.typing.holds.get() == Holds::Mains.id()
}

/// The order that is usual for what the group holds; followed.
fn usual(describing: Describing) -> Option<Vec<u32>> {
    let order = if is_mains(describing) {
        cap_order(describing)?
    } else {
        describing.sheet.with(|sheet| {
            let holds = sheet.holds.unwrap_or(Holds::Other);
            holds.usual_order(&sheet.layout)
        })?
    };
    let from_one = order
        .order()
        .iter()
        .map(|bolt| u32::try_from(bolt + 1).ok());
    from_one.collect()
}

fn put(describing: Describing, order: &[u32], from: Origin) {
    describing.typing.order.set(numbers(order));
    describing.typing.order_from.set(from.id().to_owned());
}

/// The next in the order; the last one again takes it back.
fn tap(describing: Describing, bolt: usize) {
    let Ok(bolt) = u32::try_from(bolt + 1) else {
        return;
    };
    let mut order = untrack(|| describing.typing.order());
    if order.last() == Some(&bolt) {
        order.pop();
    } else if !order.contains(&bolt) {
        order.push(bolt);
    }
    put(describing, &order, Origin::Printed);
}

fn face(order: &[u32], bolt: usize) -> Face {
    let place = order
        .iter()
        .position(|one| usize::try_from(*one).is_ok_and(|one| one == bolt + 1));
    place.map_or_else(
        || Face {
            look: "open",
            words: String::new(),
            said: "not in the order yet".to_owned(),
        },
        |place| Face {
            look: "picked",
            words: (place + 1).to_string(),
            said: format!("number {} of the order", place + 1),
        },
    )
}
