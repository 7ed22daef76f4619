//! The bolts one by one: lengths free and tight, what each stretched, what
//! stayed, what is scrap; which are new and which are not those of their hole.

use assembly_core::describe::UsualUnits;
use assembly_core::measure::Verdict;
use assembly_core::quantity::{Kind as Quantity, Unit, show};
use build_journal::fact::{Body, BoltCompared, BoltMeasured, BoltState, BoltsRenewed, Outcome};
use build_journal::fold::tightening::{Bolt, BoltTrouble, Group, Length, Part};
use build_plan::measure::ROD_BOLT_STRETCH;
use leptos::prelude::*;

use super::begin::place_of;
use super::place::{Place, part_name};
use super::{Spot, Tighten};
use crate::build::measure::tool_choice::{InHand, tool_choice};
use crate::device::drafts::Draft;
use crate::device::settings::{Settings, settings};
use crate::kit::field::{QuantityField, read_text};
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, link, note, row, title};
use crate::kit::section::fold;
use crate::kit::verdict::{Mark, shape};

/// A length in the making.
#[derive(Clone, Copy)]
struct Measuring {
    context: Tighten,
    spot: Spot,
    settings: Settings,
    state: Draft,
    typed: Draft,
    /// The bolt that is measured, from nothing.
    bolt: RwSignal<usize>,
    /// What it is measured with.
    in_hand: InHand,
    count: usize,
}

/// The page.
pub fn lengths_page(context: Tighten, spot: Spot) -> Piece {
    let draft = |name: &str| format!("lengths/{}/{}/{name}", spot.own, part_name(spot.at));
    let group = context.group(spot.own);
    let measuring = Measuring {
        context,
        spot,
        settings: settings(),
        state: Draft::or(context.opened.draft(&draft("state")), BoltState::Free.id()),
        typed: Draft::of(context.opened.draft(&draft("typed"))),
        bolt: RwSignal::new(0),
        in_hand: InHand::of(context.opened, [&ROD_BOLT_STRETCH]),
        count: group.map_or(0, |group| group.sheet.layout.count()),
    };
    measuring.to_the_first_open();
    let to = Place::Part(spot.own.to_string(), part_name(spot.at));
    let lead = "For lengths: over both ends, at the same spots each time. Zero on each bolt by itself: bolts of one box differ by more than they stretch.";
    Piece::all([
        title("The bolts one by one").into(),
        note("lead", lead).into(),
        fold(
            "What they are measured with",
            tool_choice(&ROD_BOLT_STRETCH, measuring.in_hand),
        )
        .into(),
        measuring.with_what().into(),
        measuring.state_pick().into(),
        measuring.field().into(),
        Piece::live(move || {
            let units = measuring.unit();
            context.all.with(|all| {
                all.group(spot.own)
                    .map(|group| table(measuring, group, units))
                    .into()
            })
        }),
        row([link("quiet", &context.to(to), "To the group").into()]).into(),
    ])
}

impl Measuring {
    fn unit(self) -> &'static Unit {
        self.settings.units().of(Quantity::Length, UsualUnits::SIZE)
    }

    fn state(self) -> BoltState {
        BoltState::from_id(&self.state.get()).unwrap_or(BoltState::Free)
    }

    /// The first bolt that has no such length yet.
    fn to_the_first_open(self) {
        let state = untrack(|| self.state());
        let open = self.context.all.with_untracked(|all| {
            let part = all
                .group(self.spot.own)
                .and_then(|group| group.part(self.spot.at));
            (0..self.count).find(|bolt| {
                let bolt = part.and_then(|part| part.bolts.get(*bolt));
                bolt.is_none_or(|bolt| length(bolt, state).is_none())
            })
        });
        self.bolt.set(open.unwrap_or_default());
    }

    fn state_pick(self) -> El {
        pick(
            "bolt-state",
            "How the bolts are now",
            "",
            vec![
                Word::of(BoltState::Free.id(), "loose: free length"),
                Word::of(BoltState::Tight.id(), "tight"),
            ],
            move || self.state.get(),
            move |id| {
                self.state.set(id);
                self.to_the_first_open();
            },
        )
    }

    /// The tool in hand, in a line: without one no verdict is given.
    fn with_what(self) -> El {
        note("hint", "").test("lengths-tool").live_text(move || {
            self.in_hand.tool(&ROD_BOLT_STRETCH).map_or_else(
                || "No tool is picked: lengths are kept, and no verdict is given.".to_owned(),
                |tool| format!("Measured with: {}.", tool.name),
            )
        })
    }

    fn field(self) -> El {
        let label = move || {
            let state = match self.state() {
                BoltState::Free => "free",
                BoltState::Tight => "tight",
            };
            format!("Bolt {} of {}, {state}", self.bolt.get() + 1, self.count)
        };
        QuantityField::new(
            "bolt-measured",
            "",
            self.typed,
            Quantity::Length,
            move || self.unit(),
        )
        .live_label(label)
        .on_next(move || self.write())
        .piece()
    }

    /// What else there is to say of one bolt.
    fn about(self, at: usize, bolt: &Bolt) -> El {
        let number = u32::try_from(at + 1).unwrap_or(u32::MAX);
        let renew = button(
            "quiet",
            "New bolt",
            &format!("new-bolt-{number}"),
            move || {
                let made = BoltsRenewed {
                    group: self.spot.own,
                    place: place_of(self.spot.at),
                    bolts: vec![number],
                    lot: None,
                };
                let _ = self.context.opened.write_down(Body::BoltsRenewed(made));
            },
        )
        .attr("aria-label", &format!("bolt {number} is new"));
        let (outcome, word) = if bolt.not_as_mapped {
            (Outcome::Good, "Right one after all")
        } else {
            (Outcome::Bad, "Not the one of this hole")
        };
        let compared = button(
            "quiet",
            word,
            &format!("compare-bolt-{number}"),
            move || {
                let made = BoltCompared {
                    group: self.spot.own,
                    place: place_of(self.spot.at),
                    bolt: number,
                    outcome,
                    words: None,
                };
                let _ = self.context.opened.write_down(Body::BoltCompared(made));
            },
        )
        .attr("aria-label", &format!("bolt {number}: {word}"));
        row([renew.into(), compared.into()])
    }

    fn write(self) {
        let text = self.typed.now();
        let unit = untrack(|| self.unit());
        let step = || {
            self.bolt
                .update(|bolt| *bolt = (*bolt + 1) % self.count.max(1))
        };
        match read_text(&text, Quantity::Length, unit) {
            // Nothing typed passes this bolt over.
            None => step(),
            Some(Err(_)) => {}
            Some(Ok(_)) => {
                let made = BoltMeasured {
                    group: self.spot.own,
                    place: place_of(self.spot.at),
                    bolt: u32::try_from(self.bolt.get_untracked() + 1).unwrap_or(u32::MAX),
                    state: untrack(|| self.state()),
                    typed: text.trim().to_owned(),
                    unit: unit.symbol.to_owned(),
                    tool: untrack(|| self.in_hand.tool(&ROD_BOLT_STRETCH)).map(|tool| tool.tool),
                };
                if self
                    .context
                    .opened
                    .write_down(Body::BoltMeasured(made))
                    .is_some()
                {
                    self.typed.clear();
                    step();
                }
            }
        }
    }
}

const fn length(bolt: &Bolt, state: BoltState) -> Option<&Length> {
    match state {
        BoltState::Free => bolt.free.as_ref(),
        BoltState::Tight => bolt.tight.as_ref(),
    }
}

fn table(measuring: Measuring, group: &Group, unit: &'static Unit) -> El {
    let empty = Part::default();
    let part = group.part(measuring.spot.at).unwrap_or(&empty);
    let small = measuring.settings.units().clearance();
    let rows = (0..measuring.count).map(|at| {
        let none = Bolt::default();
        let bolt = part.bolts.get(at).unwrap_or(&none);
        let uses = part.uses(at);
        let troubles = bolt.troubles(&group.sheet, uses);
        let mark = match (troubles.first(), bolt.verdict(&group.sheet)) {
            _ if bolt.not_as_mapped => Mark::Bad,
            (
                Some(
                    BoltTrouble::UsedUp { .. }
                    | BoltTrouble::StretchTooClose
                    | BoltTrouble::SetTooClose,
                ),
                _,
            ) => Mark::Close,
            (Some(_), _) => Mark::Bad,
            (None, Some(Verdict::Good)) => Mark::Good,
            _ => Mark::None,
        };
        let values = [
            said("free", bolt.free.as_ref(), unit),
            said("tight", bolt.tight.as_ref(), unit),
            bolt.stretch().map(|stretch| {
                format!(
                    "stretch {}",
                    show(stretch, bolt.stretch_give_or_take(), small)
                )
            }),
            bolt.set()
                .map(|set| format!("stayed {}", show(set, None, small))),
            (uses > 0).then(|| format!("tightened to the end {uses}×")),
            bolt.lot.as_ref().map(|lot| format!("from “{lot}”")),
            (bolt.stretch().is_some() && bolt.stretch_give_or_take().is_none())
                .then(|| "no tool said, so no verdict".to_owned()),
            bolt.not_as_mapped
                .then(|| "not the bolt of this hole".to_owned()),
        ];
        let troubles = troubles.iter().map(|one| trouble(*one, small));
        let words: Vec<String> = values.into_iter().flatten().chain(troubles).collect();
        let words = if words.is_empty() {
            "nothing known yet".to_owned()
        } else {
            words.join(" · ")
        };
        el("li")
            .class("card")
            .test(&format!("length-{}", at + 1))
            .attr("data-verdict", mark.name())
            .with(
                el("p")
                    .class("mark-line")
                    .with(shape(mark))
                    .with(el("strong").text(&(at + 1).to_string()))
                    .with(el("span").text(&words)),
            )
            .with(measuring.about(at, bolt))
            .into()
    });
    el("ul").class("entries").all(rows.collect::<Vec<_>>())
}

fn said(state: &str, length: Option<&Length>, unit: &'static Unit) -> Option<String> {
    Some(match &length?.value {
        Ok(typed) if typed.unit() == unit => format!("{state} {} {}", typed.number(), unit.symbol),
        Ok(typed) => format!("{state} {typed}"),
        Err(why) => format!("{state}: {why}"),
    })
}

fn trouble(trouble: BoltTrouble, unit: &'static Unit) -> String {
    match trouble {
        BoltTrouble::TooLittle(_) => {
            "too little: loosen the pair and begin again, do not crank on the one".to_owned()
        }
        BoltTrouble::TooMuch(_) => "past its sheet: scrap it".to_owned(),
        BoltTrouble::NotLonger => {
            "not longer when tight: look whether the bolts are in order".to_owned()
        }
        BoltTrouble::StretchTooClose => {
            "too near a limit for this tool: measure again, or with a finer one".to_owned()
        }
        BoltTrouble::SetTooClose => {
            "it may have grown too much, this tool can't tell: measure again, or take a new one"
                .to_owned()
        }
        BoltTrouble::Set(set) => format!("grown for good by {}: scrap it", show(set, None, unit)),
        BoltTrouble::UsedUp { uses, allowed } => {
            format!("used {uses} of {allowed} times: new when it comes off")
        }
    }
}
