//! The builder's own measures, checks and steps, as items like those of the
//! plan.
//!
//! Everything else refers to items of the plan, which live for ever. So each
//! definition that was ever met is made into an item once and kept: a few
//! hundred bytes a definition, and the same item for the same definition.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

use assembly_core::describe::UsualUnits;
use assembly_core::measure::DangerousSide;
use assembly_core::quantity::{Kind, Unit, unit_of};
use build_plan::Measure;
use build_plan::caution::{Caution, Harm};
use build_plan::check::{Check, Lasts, Seen};
use build_plan::engine::ALWAYS;
use build_plan::measure::{Found, Per, Spots};
use build_plan::step::{By, Phase, Sitting, Step};

use crate::fact::{Danger, FastenerGroup, OwnMeasure, OwnStep};

/// An item of the builder's own.
#[derive(Clone, Copy)]
enum Item {
    Measure(&'static Measure),
    Check(&'static Check),
    Step(&'static Step),
}

static MET: Mutex<BTreeMap<String, Item>> = Mutex::new(BTreeMap::new());

/// The item of a definition, made when it is met for the first time.
fn met(definition: String, make: impl FnOnce() -> Item) -> Item {
    let mut met = MET.lock().unwrap_or_else(PoisonError::into_inner);
    *met.entry(definition).or_insert_with(make)
}

fn for_ever(text: &str) -> &'static str {
    Box::leak(text.to_owned().into_boxed_str())
}

fn name(own: crate::id::OwnId) -> String {
    format!("own:{own}")
}

/// What kinds of number a unit may be of, the likeliest first.
const KINDS: [Kind; 12] = [
    Kind::Length,
    Kind::Pressure,
    Kind::Torque,
    Kind::Force,
    Kind::Angle,
    Kind::Volume,
    Kind::Mass,
    Kind::Temperature,
    Kind::RotationalSpeed,
    Kind::Stiffness,
    Kind::Flow,
    Kind::Ratio,
];

/// What the symbol of a unit is a unit of.
fn kind_of(symbol: &str) -> Option<(Kind, &'static Unit)> {
    KINDS
        .iter()
        .find_map(|kind| Some((*kind, unit_of(*kind, symbol)?)))
}

/// On which parts; `None` when the word is not known here.
pub(super) fn per_of(word: Option<&str>) -> Option<Per> {
    word.map_or(Some(Per::Engine), Per::from_id)
}

/// The measure of a definition, or what is wrong with it.
pub(super) fn own_measure(made: &OwnMeasure) -> Result<&'static Measure, String> {
    let (kind, unit) =
        kind_of(&made.unit).ok_or_else(|| format!("the unit “{}” is not known here", made.unit))?;
    let per = per_of(made.per.as_deref()).ok_or_else(unknown_part)?;
    let definition = format!(
        "measure\n{}\n{}\n{}\n{:?}\n{:?}\n{:?}",
        made.own, made.label, unit.symbol, made.per, made.danger, made.how
    );
    let item = met(definition, || {
        Item::Measure(Box::leak(Box::new(Measure {
            id: for_ever(&name(made.own)),
            label: for_ever(&made.label),
            kind,
            units: UsualUnits {
                inch: unit.symbol,
                metric: unit.symbol,
            },
            when: ALWAYS,
            found: Found::Read,
            dangerous: match made.danger {
                None => DangerousSide::Neither,
                Some(Danger::TooLittle) => DangerousSide::TooLittle,
                Some(Danger::TooMuch) => DangerousSide::TooMuch,
            },
            spots: Spots::each(per),
            how: [made.how.as_deref().map_or("", for_ever), "", ""],
            tripwire: None,
            too_little: "",
            too_much: "",
            cautions: &[],
        })))
    });
    match item {
        Item::Measure(measure) => Ok(measure),
        Item::Check(_) | Item::Step(_) => Err("it is met as something else".to_owned()),
    }
}

/// The check that a group of fasteners is: tight, bolt by bolt.
pub(super) fn own_check(made: &FastenerGroup) -> Result<&'static Check, String> {
    let per = per_of(made.per.as_deref()).ok_or_else(unknown_part)?;
    let definition = format!(
        "check\n{}\n{}\n{:?}\n{}",
        made.own, made.label, made.per, made.bolts
    );
    let item = met(definition, || {
        let good = format!(
            "A tick for each of {} bolts at every stage, lubricant and wrench written down.",
            made.bolts
        );
        Item::Check(Box::leak(Box::new(Check {
            id: for_ever(&name(made.own)),
            label: for_ever(&made.label),
            when: ALWAYS,
            per,
            good: for_ever(&good),
            seen: Seen::Count,
            lasts: Lasts::UntilUndone,
        })))
    });
    match item {
        Item::Check(check) => Ok(check),
        Item::Measure(_) | Item::Step(_) => Err("it is met as something else".to_owned()),
    }
}

/// The step of a definition. What it needs and proves is kept in the plan.
pub(super) fn own_step(made: &OwnStep) -> Result<&'static Step, String> {
    let per = per_of(made.per.as_deref()).ok_or_else(unknown_part)?;
    let definition = format!(
        "step\n{}\n{}\n{:?}\n{:?}\n{:?}\n{:?}",
        made.own, made.label, made.per, made.minutes, made.in_one_go, made.caution
    );
    let item = met(definition, || {
        let minutes = u16::try_from(made.minutes.unwrap_or(0)).unwrap_or(u16::MAX);
        let cautions: &'static [Caution] = match &made.caution {
            None => &[],
            // Nobody said whom it harms: it is shown as the worse of the two.
            Some(text) => Box::leak(Box::new([Caution {
                harm: Harm::Person,
                text: for_ever(text),
            }])),
        };
        Item::Step(Box::leak(Box::new(Step {
            id: for_ever(&name(made.own)),
            label: for_ever(&made.label),
            phase: Phase::TrialFit,
            when: ALWAYS,
            per,
            optional: false,
            by: By::Builder,
            needs: &[],
            in_hand: &[],
            proves: &[],
            causes: &[],
            tools: &[],
            minutes: (minutes, minutes),
            sitting: match &made.in_one_go {
                None => Sitting::MayPause,
                Some(why) => Sitting::InOneGo(for_ever(why)),
            },
            cautions,
        })))
    });
    match item {
        Item::Step(step) => Ok(step),
        Item::Measure(_) | Item::Check(_) => Err("it is met as something else".to_owned()),
    }
}

fn unknown_part() -> String {
    "the sort of part is not known here".to_owned()
}
