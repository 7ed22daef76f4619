//! Which of the builder's wrenches for which lap, and the list of them.

use assembly_core::quantity::Kind as Quantity;
use build_journal::ToolId;
use build_journal::fact::{Body, Wrench, WrenchListed};
use build_journal::fold::tightening::{Choice, Field, Offered, choices, torque_unit};
use leptos::prelude::*;

use super::Describing;
use crate::build::tighten::typed::{wrench_of, wrench_text};
use crate::build::tighten::wrenches::{lies_in_short, name, scale, sentences_of_laps};
use crate::device::chance;
use crate::kit::field::read_text;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, note, row};
use crate::kit::section::sentences;

/// The wrenches to take up, as buttons; and keeping this one among them.
pub fn own_wrenches(describing: Describing) -> El {
    let offered = Memo::new(move |_| describing.offered());
    let buttons = Piece::live(move || {
        let all = offered.get();
        let buttons = all.iter().enumerate().map(|(at, one)| {
            let typed = one.typed.clone();
            let words = format!("{}, {}", name(&typed), scale(&typed));
            button(
                "quiet",
                &words,
                &format!("wrench-take-{}", at + 1),
                move || {
                    describing.take(&typed);
                },
            )
            .into()
        });
        let buttons: Vec<Piece> = buttons.collect();
        if buttons.is_empty() {
            return Piece::none();
        }
        Piece::all([
            note(
                "hint",
                "Your torque wrenches: tap the one that is used here.",
            )
            .into(),
            row(buttons).into(),
        ])
    });
    el("div").test("own-wrenches").with(buttons)
}

/// The button that puts the wrench that is typed on the list.
pub fn keep_on_the_list(describing: Describing) -> El {
    let toast = describing.toast;
    let act = move || {
        let Some(wrench) = describing
            .group
            .with_untracked(|group| group.sheet.wrench.clone())
        else {
            toast.say("Type both ends of its scale first.");
            return;
        };
        let wrong = describing
            .sheet
            .with_untracked(|sheet| sheet.held.is_none());
        if wrong {
            toast.say("Put its scale right first: what is wrong stands below it.");
            return;
        }
        let named = name(&wrench).to_lowercase();
        let listed = describing.context.all.with_untracked(|all| {
            let same = |one: &&(ToolId, Wrench)| name(&one.1).to_lowercase() == named;
            all.listed.iter().find(same).map(|(tool, _)| *tool)
        });
        let tool = listed.unwrap_or_else(|| ToolId::from_random(chance::bits()));
        let words = format!("{} is on your list.", name(&wrench));
        if describing
            .context
            .opened
            .write_down(Body::WrenchListed(WrenchListed { tool, wrench }))
            .is_some()
        {
            toast.say(words);
        }
    };
    button("quiet", "Put it on my list of wrenches", "wrench-list", act)
}

/// For each lap that is a torque, the wrench it is pulled with.
pub fn wrench_of_each_lap(describing: Describing) -> El {
    // Made anew when the choice is another one, not with each pick.
    let asked = Memo::new(move |_| {
        let offered = describing.offered();
        let adapter = describing.group.with(|group| group.sheet.adapter.clone());
        let (found, torques) = describing.sheet.with(|sheet| {
            let found = choices(sheet, adapter.as_ref(), &offered);
            let torques: Vec<String> = found
                .iter()
                .filter_map(|choice| Some(sheet.stages.get(choice.lap)?.typed.clone()))
                .collect();
            (found, torques)
        });
        (offered, found, torques)
    });
    let picks = Piece::live(move || {
        let (offered, found, torques) = asked.get();
        // One wrench is no choice.
        if offered.len() < 2 || found.is_empty() {
            return Piece::none();
        }
        let picks = found
            .iter()
            .zip(&torques)
            .filter_map(|(choice, torque)| Some(lap(describing, choice, torque, &offered)?.into()));
        let picks: Vec<Piece> = picks.collect();
        let take_best = button(
            "quiet",
            "Take the best for each lap",
            "wrenches-best",
            move || {
                for choice in &found {
                    let best = choice.best.and_then(|best| offered.get(best));
                    if let Some(best) = best {
                        describing.set_for_lap(choice.lap, Some(&best.typed));
                    }
                }
            },
        );
        Piece::all([
            note("hint", "A click wrench holds its tolerance from 20 % of its scale up; above 90 % it is hard to pull smoothly (common practice). A lap that none but another wrench has there is pulled with that one; the run says when to change.").into(),
            Piece::all(picks),
            row([take_best.into()]).into(),
        ])
    });
    let said = Piece::live(move || {
        let offered = describing.offered();
        let adapter = describing.group.with(|group| group.sheet.adapter.clone());
        let lines = describing
            .sheet
            .with(|sheet| sentences_of_laps(sheet, adapter.as_ref(), &offered));
        let (needs, fits): (Vec<_>, Vec<_>) = lines.into_iter().partition(|line| line.1);
        let words = |lines: Vec<(String, bool)>| lines.into_iter().map(|line| line.0).collect();
        let (needs, fits): (Vec<String>, Vec<String>) = (words(needs), words(fits));
        Piece::all([
            (!fits.is_empty())
                .then(|| sentences("workings", &fits).test("wrench-fits"))
                .into(),
            (!needs.is_empty())
                .then(|| sentences("findings", &needs).test("wrench-needs"))
                .into(),
        ])
    });
    el("div")
        .test("wrench-of-each-lap")
        .with(picks)
        .with(describing.wrong(Field::Wrench))
        .with(el("div").attr("role", "status").with(said))
}

/// The choice for one lap.
fn lap(describing: Describing, choice: &Choice, torque: &str, offered: &[Offered]) -> Option<El> {
    let field = describing.typing.field_of_stage(choice.lap)?;
    let draft = *describing.typing.stage_wrenches.get(field)?;
    let texts: Vec<String> = offered.iter().map(|one| wrench_text(&one.typed)).collect();
    let mut words = vec![Word::of("usual", "the wrench above")];
    for (at, (one, lies)) in offered.iter().zip(&choice.lies).enumerate() {
        let how = match lies {
            Ok(lies) => lies_in_short(lies),
            Err(_) => "its length is not on the list".to_owned(),
        };
        let best = if choice.best == Some(at) {
            " · best"
        } else {
            ""
        };
        let label = format!("{}: {how}{best}", name(&one.typed));
        words.push(Word::of((at + 1).to_string(), label));
    }
    let of_another = (draft.now().is_empty() || texts.contains(&draft.now()))
        .then_some(())
        .is_none();
    if of_another && let Some(kept) = wrench_of(&draft.now()) {
        words.push(Word::of("kept", name(&kept)));
    }
    let picked = {
        let texts = texts.clone();
        move || {
            let text = draft.get();
            if text.is_empty() {
                return "usual".to_owned();
            }
            let at = texts.iter().position(|one| *one == text);
            at.map_or_else(|| "kept".to_owned(), |at| (at + 1).to_string())
        }
    };
    let number = choice.lap + 1;
    let on_pick = move |id: String| match id.as_str() {
        "usual" => draft.set(String::new()),
        "kept" => {}
        at => {
            let at = at.parse::<usize>().ok().and_then(|at| at.checked_sub(1));
            if let Some(text) = at.and_then(|at| texts.get(at)) {
                draft.set(text.clone());
            }
        }
    };
    Some(pick(
        &format!("lap-wrench-{number}"),
        &format!("Lap {number}: {torque}"),
        "",
        words,
        picked,
        on_pick,
    ))
}

impl Describing {
    /// The builder's wrenches as they are known from the book; followed.
    fn offered(self) -> Vec<Offered> {
        self.context
            .all
            .with(build_journal::fold::tightening::Tightenings::wrenches)
    }

    /// Takes a wrench from the list as the one of this group. Torques that were
    /// typed without a unit keep the one they had.
    fn take(self, wrench: &Wrench) {
        let typing = self.typing;
        let unit = torque_unit(&typing.unit.now());
        if unit.symbol != wrench.unit {
            let kinds = typing.stage_kinds.now();
            let torques = kinds.chars().zip(typing.stages);
            for (_, draft) in torques.filter(|(kind, _)| *kind == 't') {
                let text = draft.now();
                let lone = read_text(&text, Quantity::Torque, unit)
                    .and_then(Result::ok)
                    .is_some_and(|typed| !typed.unit_was_typed());
                if lone {
                    draft.set(format!("{} {}", text.trim(), unit.symbol));
                }
            }
        }
        typing.wrench.set(wrench.name.clone().unwrap_or_default());
        typing.low.set(wrench.low.clone());
        typing.high.set(wrench.high.clone());
        typing.unit.set(wrench.unit.clone());
        typing.step.set(wrench.step.clone().unwrap_or_default());
        if let Some(grip) = &wrench.grip {
            typing.grip.set(grip.clone());
        }
    }

    /// Sets the wrench of a lap; the group's own where that is the one.
    fn set_for_lap(self, lap: usize, wrench: Option<&Wrench>) {
        let field = self.typing.field_of_stage(lap);
        let Some(draft) = field.and_then(|field| self.typing.stage_wrenches.get(field)) else {
            return;
        };
        let usual = self
            .group
            .with_untracked(|group| group.sheet.wrench.clone());
        let is_usual = |one: &Wrench| {
            usual
                .as_ref()
                .is_some_and(|usual| name(usual) == name(one) && scale(usual) == scale(one))
        };
        let text = wrench
            .filter(|wrench| !is_usual(wrench))
            .map_or_else(String::new, wrench_text);
        draft.set(text);
    }
}
