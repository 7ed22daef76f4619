//! A group at one part of the engine: how it stands and what can be done.

use assembly_core::tightening::retorque::Retorque;
use build_journal::fact::{Body, BoltsRenewed, Origin, Way};
use build_journal::fold::tightening::{Group, Part, Run, State};
use build_plan::caution::DEFER;
use leptos::prelude::*;

use super::begin::{begin, place_of};
use super::history::history;
use super::place::{Place, part_name};
use super::{Spot, Tighten, give_up, words, wrenches};
use crate::device::drafts::Draft;
use crate::kit::dialog::dialog;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, button, el, link, note, p, row, title};
use crate::kit::section::{fold, section, sentences};
use crate::kit::verdict::shape;
use crate::kit::words::word_field;

const LOT_AT_MOST: usize = 100;

/// The usual ones. The sheet of the maker comes first.
const CAUTIONS: &[&str] = &[
    "Never pull a torque wrench on a bolt that is tight already: back it off a quarter turn, then pull once, smoothly, at the middle of the grip.",
    "Eyes: glasses on. A bolt that breaks or a socket that slips lets go at once; pull towards you, stand firm.",
    "Blind holes dry and clean: oil under a bolt holds it up and can split the block.",
];

/// The page.
pub fn part_page(context: Tighten, spot: Spot) -> Piece {
    let lot = Draft::of(context.opened.draft(&format!("tighten/{}/lot", spot.own)));
    let giving_up = RwSignal::new(false);
    let all = Piece::live(move || {
        context.all.with(|all| match all.group(spot.own) {
            Some(group) => page(context, spot, group, (lot, giving_up)),
            None => Piece::none(),
        })
    });
    // Outside of what is made anew with each fact.
    let asked = dialog(giving_up, "Give this run up?", "giving-up", move || {
        context
            .all
            .with_untracked(|all| {
                let run = all.group(spot.own)?.part(spot.at)?.on()?;
                Some(giving_up_asked(context, run, giving_up))
            })
            .into()
    });
    Piece::all([all, asked.into()])
}

fn giving_up_asked(context: Tighten, run: &Run, open: RwSignal<bool>) -> El {
    let given = run.clone();
    let sure = button("danger", "Give it up", "give-up-sure", move || {
        if give_up::give_up(context, &given) {
            open.set(false);
        }
    });
    let back = button("", "Back", "give-up-back", move || open.set(false));
    el("div")
        .with(give_up::said(run))
        .with(row([back.into(), sure.into()]))
}

/// What the page keeps while it is made anew: what is typed of a bag of bolts,
/// and whether giving up is being asked about.
type Kept = (Draft, RwSignal<bool>);

fn page(context: Tighten, spot: Spot, group: &Group, kept: Kept) -> Piece {
    let empty = Part::default();
    let part = group.part(spot.at).unwrap_or(&empty);
    let state = part.state();
    let own = group.own.to_string();
    let describe = |words: &str| {
        link("quiet", &context.to(Place::Describe(own.clone())), words).test("describe-group")
    };
    let standing = el("p")
        .class("mark-line")
        .test("group-state")
        .attr("data-verdict", words::mark(state).name())
        .with(shape(words::mark(state)))
        .with(el("strong").text(&capital(&words::state(group, spot.at))));
    let wrong = (!group.sheet.wrong.is_empty()).then(|| {
        let lines: Vec<&str> = group
            .sheet
            .wrong
            .iter()
            .map(|one| one.text.as_str())
            .collect();
        section("Before the first tap")
            .test("sheet-wrong")
            .with(sentences("findings", &lines))
            .with(row([describe("Complete the sheet").into()]))
    });
    Piece::all([
        title(&capital(&words::name(group, spot.at))).into(),
        standing.into(),
        wrong.into(),
        against(part).into(),
        foreseen(group, state).into(),
        wrenches::before_the_first_tap(context, group, state).into(),
        before_you_pull(group, state).into(),
        next_thing(context, spot, group, part).into(),
        sheet(group).into(),
        fold(
            "Other things to do",
            others(context, spot, group, part, kept),
        )
        .into(),
        history(part).into(),
        row([
            describe("Describe it again").into(),
            link("quiet", &context.to(Place::Groups), "All groups").into(),
        ])
        .into(),
    ])
}

/// The one thing to do next, as the big button.
fn next_thing(context: Tighten, spot: Spot, group: &Group, part: &Part) -> Option<El> {
    if part.on().is_some() {
        let to = Place::Run(group.own.to_string(), part_name(spot.at));
        return Some(link("big", &context.to(to), "Go on with the run").test("run-open"));
    }
    let ready = group.sheet.plan().is_some();
    let word = match part.state() {
        State::NotYet | State::Loose => "Begin tightening",
        State::Tight | State::NoCredit => {
            let to = Place::Run(group.own.to_string(), part_name(spot.at));
            let words = "Its end: credit and stripes";
            return Some(link("quiet", &context.to(to), words).test("run-open"));
        }
        State::GivenUp => return ready.then(|| loosen_first(context, spot, part)),
        State::On | State::ToBeSaid => return None,
    };
    ready.then(|| {
        button("big", word, "run-begin", move || {
            begin(context, spot, Way::Tighten)
        })
    })
}

/// After a run was given up: what to do with the bolts, and the way there.
fn loosen_first(context: Tighten, spot: Spot, part: &Part) -> El {
    let run = part.runs.last();
    let lines = run.map(give_up::costs).unwrap_or_default();
    let fact = run.map(|run| run.fact);
    let all_loose = button(
        "quiet",
        "They are all loose already",
        "all-loose",
        move || {
            if let Some(run) = fact {
                give_up::are_all_loose(context, run);
            }
        },
    );
    section("First")
        .test("given-up")
        .with(sentences("findings", &lines))
        .with(button(
            "big",
            "Loosen them: reverse order, in stages, cold",
            "run-loosen-first",
            move || begin(context, spot, Way::Loosen),
        ))
        .with(row([all_loose.into()]))
}

fn against(part: &Part) -> Option<El> {
    let run = part
        .runs
        .last()
        .filter(|run| !run.is_on() && !run.left && !run.against.is_empty())?;
    let lines: Vec<String> = (run.against.iter())
        .map(|one| capital(&one.to_string()))
        .collect();
    Some(
        section("Why it does not count")
            .test("no-credit")
            .with(sentences("findings", &lines)),
    )
}

/// What stands against a run before its first tap.
fn foreseen(group: &Group, state: State) -> Option<El> {
    if !matches!(state, State::NotYet | State::Loose) {
        return None;
    }
    let lines: Vec<String> = (group.sheet.foreseen().iter())
        .map(|one| capital(&one.to_string()))
        .collect();
    (!lines.is_empty()).then(|| {
        section("It can be tightened, but would not count")
            .test("foreseen")
            .with(sentences("findings", &lines))
    })
}

fn sheet(group: &Group) -> El {
    let (made, sheet) = (&group.made, &group.sheet);
    let said = |text: &Option<String>| {
        let text = text
            .as_deref()
            .map(str::trim)
            .filter(|text| !text.is_empty());
        text.unwrap_or("not written down").to_owned()
    };
    let from = |origin: Option<Origin>| match origin {
        Some(Origin::CommonPractice) => " (common practice, not from a sheet)",
        _ => "",
    };
    let size = [&made.sheet.thread, &made.sheet.length, &made.size];
    let size: Vec<&str> = size.into_iter().flatten().map(String::as_str).collect();
    let stages: Vec<String> = (sheet.stages.iter())
        .enumerate()
        .map(
            |(lap, stage)| match stage.on_the_wrench(sheet.unit_of(lap)) {
                Some((number, unit)) => format!("{number} {unit}"),
                None => stage.typed.clone(),
            },
        )
        .collect();
    let order: Vec<String> = sheet
        .order
        .iter()
        .map(|bolt| (bolt + 1).to_string())
        .collect();
    let wrench = made.sheet.wrench.as_ref().map_or_else(
        || "not written down".to_owned(),
        |wrench| {
            let name = wrench.name.as_deref().unwrap_or("wrench");
            format!("{name}, {} to {} {}", wrench.low, wrench.high, wrench.unit)
        },
    );
    let kind = sheet.kind.map_or("not said", |kind| kind.label());
    let mut lines = vec![
        format!("{} bolts: {kind}. {}", made.bolts, size.join(", ")),
        format!(
            "Stages: {}{}",
            stages.join(" · "),
            from(made.sheet.stages_from)
        ),
        format!("Order: {}{}", order.join(" "), from(made.sheet.order_from)),
        format!(
            "On the threads: {}. Under the heads: {}.",
            said(&made.lubricant),
            said(&made.sheet.under_head)
        ),
        format!("Wrench: {wrench}"),
    ];
    lines.extend(sheet.others.iter().map(|(lap, held)| {
        let name = wrenches::name(&held.typed);
        format!(
            "Lap {} with {name}, {}",
            lap + 1,
            wrenches::scale(&held.typed)
        )
    }));
    lines.extend(made.sheet.adapter.as_ref().map(|one| {
        let (grip, offset, turned) = (&one.wrench_length, &one.length, &one.turned);
        format!(
            "Adapter on it: {offset} long, turned {turned}; the wrench {grip} from grip to drive"
        )
    }));
    lines.extend(made.source.as_ref().map(|source| format!("From: {source}")));
    section("By the sheet")
        .test("group-sheet")
        .with(sentences("workings", &lines))
}

/// The cautions, open while they are needed.
fn before_you_pull(group: &Group, state: State) -> El {
    let folded = fold("Before you pull", cautions(group)).test("before-you-pull");
    match state {
        State::NotYet | State::Loose => folded.attr("open", ""),
        _ => folded,
    }
}

fn cautions(group: &Group) -> Piece {
    // What is special about these bolts first.
    let of_kind = group.sheet.kind.and_then(|kind| kind.caution());
    let lines: Vec<&str> = of_kind
        .into_iter()
        .chain(CAUTIONS.iter().copied())
        .collect();
    Piece::all([sentences("findings", &lines).into(), p(DEFER).into()])
}

/// What is done more rarely.
fn others(context: Tighten, spot: Spot, group: &Group, part: &Part, kept: Kept) -> Piece {
    let (lot, giving_up) = kept;
    let whole = group.sheet.plan();
    let was_tight = part.runs.iter().any(|run| run.is_through());
    let give_up = part.on().map(|_| {
        button("quiet", "Give this run up", "give-up", move || {
            giving_up.set(true)
        })
    });
    let loosen = (whole.is_some() && !part.runs.is_empty()).then(|| {
        let words = "Loosen: reverse order, in stages, cold";
        button("quiet", words, "run-loosen", move || {
            begin(context, spot, Way::Loosen)
        })
    });
    let tighten = (whole.is_some() && was_tight && part.on().is_none()).then(|| {
        let words = "Tighten anew from the first lap";
        button("quiet", words, "run-anew", move || {
            begin(context, spot, Way::Tighten)
        })
    });
    let retorque = group.sheet.retorque();
    let may = !matches!(retorque, None | Some(Retorque::Never));
    let again = whole
        .and_then(|plan| plan.once_more())
        .filter(|_| may && part.state() == State::Tight)
        .map(|_| {
            let words = "Tighten once more, as a lap of its own";
            button("quiet", words, "run-again", move || {
                begin(context, spot, Way::Again)
            })
        });
    let after_heat = retorque.map(|one| p(&format!("After it was hot: {}", one.sentence())));
    let uses: Vec<u32> = (0..group.sheet.layout.count())
        .map(|bolt| part.uses(bolt))
        .collect();
    let most = uses.iter().max().copied().unwrap_or_default();
    let allowed = group
        .sheet
        .uses_allowed()
        .map_or_else(String::new, |allowed| {
            format!(" The sheet or the kind of bolt allows {allowed}.")
        });
    let used = note(
        "hint",
        &format!("Uses of the bolt used most: {most}.{allowed}"),
    );
    let renew = move || {
        let text = lot.now().trim().to_owned();
        let made = BoltsRenewed {
            group: spot.own,
            place: place_of(spot.at),
            bolts: Vec::new(),
            lot: Some(text).filter(|text| !text.is_empty()),
        };
        if context
            .opened
            .write_down(Body::BoltsRenewed(made))
            .is_some()
        {
            lot.clear();
        }
    };
    let bag = word_field(
        "lot",
        "What stands on the bag",
        "",
        lot,
        LOT_AT_MOST,
        || None,
    );
    let (own, name) = (spot.own.to_string(), part_name(spot.at));
    let lengths = Place::Lengths(own.clone(), name.clone());
    let sealant = Place::Sealant(own, name);
    Piece::all([
        row([
            link("quiet", &context.to(lengths), "The bolts one by one")
                .test("to-lengths")
                .into(),
            link("quiet", &context.to(sealant), "Sealant clock")
                .test("to-sealant")
                .into(),
        ])
        .into(),
        row([loosen.into(), tighten.into(), again.into(), give_up.into()]).into(),
        after_heat.into(),
        used.test("uses").into(),
        bag.into(),
        row([button("quiet", "All bolts are new", "bolts-renewed", renew).into()]).into(),
    ])
}
