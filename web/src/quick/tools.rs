//! Which tools a quick check was done with, and what that does to its readings.

use assembly_core::describe::Calculation;
use assembly_core::measure::{Estimate, Measured, Sources};
use assembly_core::quantity::{Kind, Typed};
use assembly_core::tool::{INSTRUMENTS, Instrument, SetOn, Setting, Task, Tool, instrument, ways};
use leptos::prelude::*;
use uom::si::f64::Length;

use super::taken::{Taken, taken};
use crate::device::drafts::Draft;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{Piece, note};

/// What a tool is wanted for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Role {
    /// This task.
    For(Task),
    /// Anything of this kind of quantity.
    Of(Kind),
}

impl Role {
    fn question(self) -> String {
        match self {
            Self::For(Task::OutsideSize) => "Journal measured with".to_owned(),
            Self::For(Task::InsideSize) => "Bore measured with".to_owned(),
            Self::For(_) => "Measured with".to_owned(),
            Self::Of(kind) => format!("Each number that is {kind} was read off"),
        }
    }

    const fn name(self) -> &'static str {
        match self {
            Self::For(Task::OutsideSize) => "outside",
            Self::For(Task::InsideSize) => "inside",
            Self::For(Task::RunningClearance) => "clearance",
            Self::For(_) => "other",
            Self::Of(kind) => match kind {
                Kind::Length => "length",
                Kind::Volume => "volume",
                Kind::Angle => "angle",
                Kind::Force => "force",
                Kind::Torque => "torque",
                Kind::Pressure => "pressure",
                Kind::Temperature => "temperature",
                _ => "quantity",
            },
        }
    }

    /// The tool that most people have.
    const fn usual(self) -> &'static str {
        match self {
            Self::For(Task::OutsideSize) => "outside-micrometer-tenths",
            Self::For(Task::InsideSize) => "bore-gauge-half-thou",
            Self::For(Task::RunningClearance) => "plastic-gauge-strip",
            _ => EXACT,
        }
    }
}

/// No tool: the number counts as exact.
const EXACT: &str = "exact";
const SAME: &str = "same";
const OTHER: &str = "other";
const STANDARD: &str = "standard";

/// The tools of one check.
#[derive(Clone, Copy)]
pub struct Tools {
    roles: StoredValue<Vec<(Role, Draft)>>,
    /// Whether a needle is read, so that only gauges with a dial will do.
    needle: bool,
    set_on: Draft,
}

impl Tools {
    /// The tools that a calculation needs, as they were picked last.
    #[must_use]
    pub fn of(calculation: &'static Calculation) -> Self {
        let mut roles: Vec<(Role, Draft)> = Vec::new();
        let mut needle = false;
        for input in calculation.inputs {
            let role = match taken(calculation.id, input) {
                Taken::Read(task) | Taken::StandsAt(task) => Role::For(task),
                Taken::Needle(task) => {
                    needle = true;
                    Role::For(task)
                }
                Taken::Somehow(kind) => Role::Of(kind),
                Taken::Known => continue,
            };
            if roles.iter().all(|(known, _)| *known != role) && !offered(role, needle).is_empty() {
                let key = format!("quick-tool/{}", role.name());
                roles.push((role, Draft::or(key, role.usual())));
            }
        }
        Self {
            roles: StoredValue::new(roles),
            needle,
            set_on: Draft::or("quick-tool/set-on", SAME),
        }
    }

    /// The kind of tool picked for a role, followed.
    #[must_use]
    pub fn picked(self, role: Role) -> Option<&'static Instrument> {
        let draft = self.roles.with_value(|roles| {
            roles
                .iter()
                .find_map(|(known, draft)| (*known == role).then_some(*draft))
        })?;
        let found = instrument(&draft.get());
        // A pick of a version that knew other tools counts as the usual one.
        found.or_else(|| instrument(role.usual()))
    }

    /// One standard deviation that a running clearance with these tools would
    /// have from one reading each, before anything is measured; followed.
    #[must_use]
    pub fn foreseen(self) -> Option<f64> {
        if let Some(direct) = self.picked(Role::For(Task::RunningClearance)) {
            return Some(direct.deviation(0.0));
        }
        let inside = self.picked(Role::For(Task::InsideSize))?;
        let outside = self.picked(Role::For(Task::OutsideSize))?;
        let chain = ways(Task::RunningClearance, &[inside, outside])
            .into_iter()
            .find(|way| {
                way.tool.id == inside.id && way.with.is_some_and(|with| with.id == outside.id)
            })?;
        let set_on = self.set_on.get();
        let zeros = match set_on.as_str() {
            _ if self.needle || !inside.compares || set_on == SAME => 0.0,
            // The journal's micrometer brings its zero, and so does the other one.
            OTHER => outside.shared_zero.hypot(outside.shared_zero),
            _ => outside.shared_zero,
        };
        Some(chain.give_or_take.hypot(zeros))
    }

    /// The estimate of a number that was typed. Numbers that a tool stands at
    /// look at `journals`, the readings of that tool so far.
    #[must_use]
    pub fn estimate(
        self,
        sources: &mut Sources,
        taken: Taken,
        typed: &Typed,
        journals: &[Estimate],
    ) -> Estimate {
        let role = match taken {
            Taken::Somehow(kind) => Role::Of(kind),
            _ => match taken.task() {
                Some(task) => Role::For(task),
                None => return Estimate::exact(typed.si()),
            },
        };
        let Some(instrument) = self.picked(role) else {
            return Estimate::exact(typed.si());
        };
        let tool = Tool::new(role.name(), instrument.name, instrument);
        let plain = Setting::on_standard("check");
        let outside = self.picked(Role::For(Task::OutsideSize));
        let micrometer = |key: &str| outside.map(|kind| Tool::new(key, kind.name, kind));
        let (own, another) = (micrometer("outside"), micrometer("another"));
        let set_on = self.set_on.get();
        let on = match (set_on.as_str(), &own, &another) {
            _ if !instrument.compares => SetOn::Standard,
            (SAME, Some(own), _) => SetOn::Tool(own, &plain),
            (OTHER, _, Some(another)) => SetOn::Tool(another, &plain),
            _ => SetOn::Standard,
        };
        let setting = Setting { key: "check", on };
        let measured: Measured<Length> = match taken {
            Taken::Needle(_) => tool.needle(
                sources,
                &Setting::on_standard("check"),
                typed.si(),
                typed.resolution(),
            ),
            Taken::StandsAt(_) => match journals.iter().find(|one| one.value() == typed.si()) {
                Some(journal) => {
                    let reading = Measured::<Length>::from_estimate(journal.clone());
                    Tool::still_locked_at(&reading, sources)
                }
                None => tool.standing_at(sources, &plain, typed.si(), typed.resolution()),
            },
            _ => tool.reading_typed(sources, &setting, typed),
        };
        measured.into_estimate()
    }
}

fn offered(role: Role, needle: bool) -> Vec<&'static Instrument> {
    INSTRUMENTS
        .iter()
        .copied()
        .filter(|one| match role {
            Role::For(Task::InsideSize) if needle => {
                one.can(Task::InsideSize) && one.setting_transfer > 0.0
            }
            Role::For(task) => one.can(task),
            Role::Of(kind) => one.kind == kind,
        })
        .collect()
}

/// The picks of the tools.
#[must_use]
pub fn tool_picks(tools: Tools) -> Piece {
    let roles = tools.roles.get_value();
    let picks = roles.into_iter().map(|(role, draft)| {
        let mut words: Vec<Word> = offered(role, tools.needle)
            .into_iter()
            .map(|one| Word::of(one.id, one.label))
            .collect();
        if matches!(role, Role::Of(_)) {
            words.insert(
                0,
                Word::of(EXACT, "nothing in particular: take it as exact"),
            );
        }
        if words.len() == 1 {
            return Piece::none();
        }
        let name = format!("tool-{}", role.name());
        let pick = pick(
            &name,
            &role.question(),
            "",
            words,
            move || draft.get(),
            move |id| draft.set(id),
        );
        let trap = Piece::live(move || tools.picked(role).map(|one| note("trap", one.trap)).into());
        Piece::all([pick.into(), trap])
    });
    let asks_what_it_was_set_on = move || {
        !tools.needle
            && tools.picked(Role::For(Task::OutsideSize)).is_some()
            && tools
                .picked(Role::For(Task::InsideSize))
                .is_some_and(|one| one.compares)
    };
    let set_on = Piece::when(asks_what_it_was_set_on, move || {
        let words = vec![
            Word::of(SAME, "the journal's micrometer"),
            Word::of(OTHER, "another micrometer"),
            Word::of(STANDARD, "a setting ring"),
        ];
        pick(
            "set-on",
            "What was the bore tool set or read on?",
            "On the micrometer that measured the journal, that micrometer's own error cancels.",
            words,
            move || tools.set_on.get(),
            move |id| tools.set_on.set(id),
        )
        .into()
    });
    Piece::all(picks.chain([set_on]))
}
