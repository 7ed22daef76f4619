//! What is being typed of a group, and the group it comes to.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::Kind as Quantity;
use build_journal::OwnId;
use build_journal::fact::{
    Adapter, BoltLayout, FastenerGroup, FastenerSheet, Origin, StageWrench, Wrench,
};
use build_journal::fold::tightening::{Sheet, torque_unit};
use leptos::prelude::{GetValue as _, StoredValue};

use super::typed::{numbers, read_numbers, stage_kinds, with_its_unit, wrench_of, wrench_text};
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::device::settings::{Settings, settings};
use crate::kit::field::read_text;

/// As many stages as there are fields for.
pub const STAGES_AT_MOST: usize = 8;
/// As many rows as there are counters for.
pub const ROWS_AT_MOST: usize = 6;

/// The drafts of a group's description.
#[derive(Clone, Copy)]
pub struct Typing {
    pub own: OwnId,
    settings: Settings,
    pub label: Draft,
    pub holds: Draft,
    pub per: Draft,
    pub kind: Draft,
    pub thread: Draft,
    pub length: Draft,
    pub between: Draft,
    pub circle: Draft,
    pub rows: Draft,
    /// Where the bolts were dragged to: pairs of hundredths, all in a row.
    pub places: Draft,
    /// For a proposal for the mains only: what each row does, by letter.
    pub roles: Draft,
    /// For a proposal for the mains only: `caps` or `ladder`.
    pub casting: Draft,
    /// For a proposal for the mains only: the cap with the thrust, from 1.
    pub thrust: Draft,
    pub order: Draft,
    pub order_from: Draft,
    /// A letter for each stage: `t`orque, `a`ngle, `s`tretch.
    pub stage_kinds: Draft,
    pub stages: [Draft; STAGES_AT_MOST],
    pub stages_from: Draft,
    pub lubricant: Draft,
    pub under_head: Draft,
    pub wrench: Draft,
    pub low: Draft,
    pub high: Draft,
    pub unit: Draft,
    /// How far apart its marks are.
    pub step: Draft,
    /// For each stage the wrench it is pulled with, all in one text; empty for
    /// the one above.
    pub stage_wrenches: [Draft; STAGES_AT_MOST],
    /// `on` when there is an adapter on the wrench.
    pub adapter: Draft,
    pub grip: Draft,
    pub offset: Draft,
    pub turned: Draft,
    pub uses: Draft,
    pub stretch_low: Draft,
    pub stretch_high: Draft,
    pub set_at_most: Draft,
    pub source: Draft,
    /// What else makes it stale: kept from what was written before.
    stale_with: StoredValue<Vec<String>>,
}

impl Typing {
    /// What was typed before, else what the group says already.
    pub fn load(
        opened: Opened,
        own: OwnId,
        name: &str,
        was: Option<&FastenerGroup>,
        sheet: Option<&Sheet>,
    ) -> Self {
        let draft = |field: &str, start: Option<&str>| {
            let name = opened.draft(&format!("group/{name}/{field}"));
            Draft::or(name, start.unwrap_or_default())
        };
        let of =
            |field: &str, get: fn(&FastenerGroup) -> Option<&str>| draft(field, was.and_then(get));
        let usual = |field: &str, get: fn(&FastenerGroup) -> Option<&str>, usual: &str| {
            draft(field, Some(was.and_then(get).unwrap_or(usual)))
        };
        let rows = was.and_then(|was| match &was.sheet.layout {
            Some(BoltLayout::Rows(rows)) => Some(numbers(rows)),
            Some(BoltLayout::Circle(_)) => None,
            _ => Some(was.bolts.to_string()),
        });
        let circle = was.and_then(|was| match was.sheet.layout {
            Some(BoltLayout::Circle(count)) => Some(count.to_string()),
            _ => None,
        });
        let order = was.map(|was| numbers(&was.sheet.order));
        let places = was.map(|was| numbers(was.sheet.places.as_flattened()));
        let adapter = was.and_then(|was| was.sheet.adapter.as_ref());
        let of_adapter = |field: &str, get: fn(&Adapter) -> &str| draft(field, adapter.map(get));
        let kinds = was.map(|was| stage_kinds(was, sheet));
        let uses = was
            .and_then(|was| was.sheet.uses_allowed)
            .map(|uses| uses.to_string());
        Self {
            own,
            settings: settings(),
            label: of("label", |was| Some(&was.label)),
            holds: usual("holds", |was| was.sheet.holds.as_deref(), "head"),
            per: usual("per", |was| was.per.as_deref(), "engine"),
            kind: of("kind", |was| was.sheet.fastener.as_deref()),
            thread: of("thread", |was| {
                was.sheet.thread.as_deref().or(was.size.as_deref())
            }),
            length: of("length", |was| was.sheet.length.as_deref()),
            between: of("between", |was| was.sheet.between.as_deref()),
            circle: draft("circle", circle.as_deref()),
            rows: draft("rows", Some(rows.as_deref().unwrap_or("5 5"))),
            places: draft("places", places.as_deref()),
            roles: draft("roles", None),
            casting: draft("casting", None),
            thrust: draft("thrust", None),
            order: draft("order", order.as_deref()),
            order_from: usual(
                "order-from",
                |was| was.sheet.order_from.map(Origin::id),
                "printed",
            ),
            stage_kinds: draft("stage-kinds", Some(kinds.as_deref().unwrap_or("t"))),
            stages: std::array::from_fn(|at| {
                let typed = was.and_then(|was| was.stages.get(at));
                draft(&format!("stage-{}", at + 1), typed.map(String::as_str))
            }),
            stages_from: usual(
                "stages-from",
                |was| was.sheet.stages_from.map(Origin::id),
                "printed",
            ),
            lubricant: of("lubricant", |was| was.lubricant.as_deref()),
            under_head: of("under-head", |was| was.sheet.under_head.as_deref()),
            wrench: of("wrench", |was| was.sheet.wrench.as_ref()?.name.as_deref()),
            low: of("low", |was| {
                was.sheet.wrench.as_ref().map(|one| one.low.as_str())
            }),
            high: of("high", |was| {
                was.sheet.wrench.as_ref().map(|one| one.high.as_str())
            }),
            unit: usual(
                "unit",
                |was| was.sheet.wrench.as_ref().map(|one| one.unit.as_str()),
                "ft-lb",
            ),
            step: of("step", |was| was.sheet.wrench.as_ref()?.step.as_deref()),
            stage_wrenches: std::array::from_fn(|at| {
                let others = was.map_or(&[][..], |was| &was.sheet.stage_wrenches);
                let own = others
                    .iter()
                    .find(|one| usize::try_from(one.stage).is_ok_and(|stage| stage == at + 1));
                let text = own.map(|own| wrench_text(&own.wrench));
                draft(&format!("stage-wrench-{}", at + 1), text.as_deref())
            }),
            adapter: draft("adapter", adapter.map(|_| "on")),
            grip: of_adapter("grip", |one| &one.wrench_length),
            offset: of_adapter("offset", |one| &one.length),
            turned: of_adapter("turned", |one| &one.turned),
            uses: draft("uses", uses.as_deref()),
            stretch_low: of("stretch-low", |was| was.sheet.stretch_low.as_deref()),
            stretch_high: of("stretch-high", |was| was.sheet.stretch_high.as_deref()),
            set_at_most: of("set-at-most", |was| was.sheet.set_at_most.as_deref()),
            stale_with: StoredValue::new(was.map(|was| was.stale_with.clone()).unwrap_or_default()),
            source: of("source", |was| was.source.as_deref()),
        }
    }

    /// Other bolts than were drawn: an order over those, and where they were
    /// dragged to, are none.
    pub fn no_longer_drawn(self) {
        self.order.set(String::new());
        self.places.set(String::new());
    }

    /// The rows as counts; followed.
    pub fn counts(self) -> Vec<u32> {
        read_numbers(&self.rows.get())
    }

    /// The layout as it is drawn; followed.
    pub fn layout(self) -> BoltLayout {
        match self.circle.get().trim().parse() {
            Ok(count) => BoltLayout::Circle(count),
            Err(_) => BoltLayout::Rows(self.counts()),
        }
    }

    /// How many bolts; followed.
    pub fn bolts(self) -> u32 {
        match self.layout() {
            BoltLayout::Circle(count) => count,
            BoltLayout::Rows(rows) => rows.iter().sum(),
            BoltLayout::Unknown(_) => 0,
        }
    }

    /// Where the bolts were dragged to; none while they sit as counted. Followed.
    pub fn places(self) -> Vec<[i32; 2]> {
        let numbers: Vec<i32> = read_numbers(&self.places.get());
        let (pairs, _) = numbers.as_chunks();
        pairs.to_vec()
    }

    /// The adapter as typed; followed.
    fn adapter(self) -> Option<Adapter> {
        let on = self.adapter.get() == "on";
        let size = self
            .settings
            .units()
            .of(Quantity::Length, UsualUnits::SIZE)
            .symbol;
        let length = |draft: Draft| with_its_unit(Quantity::Length, size, &draft.get());
        on.then(|| Adapter {
            wrench_length: length(self.grip),
            length: length(self.offset),
            turned: with_its_unit(Quantity::Angle, "°", &self.turned.get()),
        })
    }

    /// The order so far, bolts from 1; followed.
    pub fn order(self) -> Vec<u32> {
        read_numbers(&self.order.get())
    }

    /// The stages that something is typed for, as they are kept; followed.
    pub fn stages(self) -> Vec<String> {
        let kinds = self.stage_kinds.get();
        let typed = kinds.chars().zip(self.stages);
        let typed = typed.map(|(kind, draft)| match kind {
            'a' => with_its_unit(Quantity::Angle, "°", &draft.get()),
            's' => with_its_unit(Quantity::Length, "in", &draft.get()),
            _ => draft.get().trim().to_owned(),
        });
        typed.filter(|text| !text.is_empty()).collect()
    }

    /// The field that a stage is typed in: fields that are empty are no stage.
    /// Both from nothing; followed.
    pub fn field_of_stage(self, stage: usize) -> Option<usize> {
        let kinds = self.stage_kinds.get().chars().count();
        let typed = self.stages.iter().take(kinds).enumerate();
        typed
            .filter(|(_, draft)| !draft.get().trim().is_empty())
            .map(|(field, _)| field)
            .nth(stage)
    }

    /// The stages with a wrench of their own; followed.
    fn stage_wrenches(self) -> Vec<StageWrench> {
        let kinds = self.stage_kinds.get();
        let typed = kinds.chars().zip(self.stages).zip(self.stage_wrenches);
        let typed = typed.filter(|((_, stage), _)| !stage.get().trim().is_empty());
        (1..)
            .zip(typed)
            .filter(|(_, ((kind, _), _))| *kind == 't')
            .filter_map(|(stage, (_, draft))| {
                let wrench = wrench_of(&draft.get())?;
                Some(StageWrench { stage, wrench })
            })
            .collect()
    }

    /// The group as typed; followed.
    pub fn group(self) -> FastenerGroup {
        let text =
            |draft: Draft| Some(draft.get().trim().to_owned()).filter(|text| !text.is_empty());
        let (low, high) = (text(self.low), text(self.high));
        let wrench = (low.is_some() || high.is_some()).then(|| Wrench {
            name: text(self.wrench),
            low: low.unwrap_or_default(),
            high: high.unwrap_or_default(),
            unit: self.unit.get(),
            step: text(self.step),
            grip: (self.adapter().map(|adapter| adapter.wrench_length))
                .filter(|grip| !grip.is_empty()),
        });
        let origin = |draft: Draft| Origin::from_id(&draft.get());
        let order = self.order();
        FastenerGroup {
            own: self.own,
            label: text(self.label).unwrap_or_default(),
            per: text(self.per).filter(|per| per != "engine"),
            bolts: self.bolts(),
            size: None,
            lubricant: text(self.lubricant),
            stages: self.in_the_wrenchs_unit(wrench.is_some()),
            source: text(self.source),
            stale_with: self.stale_with.get_value(),
            sheet: Box::new(FastenerSheet {
                holds: text(self.holds),
                fastener: text(self.kind),
                thread: text(self.thread),
                length: text(self.length),
                under_head: text(self.under_head),
                wrench,
                stage_wrenches: self.stage_wrenches(),
                adapter: self.adapter(),
                layout: Some(self.layout()),
                places: self.places(),
                order_from: origin(self.order_from).filter(|_| !order.is_empty()),
                order,
                stages_from: origin(self.stages_from),
                between: text(self.between),
                uses_allowed: text(self.uses).and_then(|text| text.parse().ok()),
                stretch_low: text(self.stretch_low),
                stretch_high: text(self.stretch_high),
                set_at_most: text(self.set_at_most),
            }),
        }
    }

    /// Without a wrench in the description, a lone number has to say its unit.
    fn in_the_wrenchs_unit(self, has_a_wrench: bool) -> Vec<String> {
        let unit = torque_unit(&self.unit.get());
        let mut stages = self.stages();
        for stage in stages.iter_mut().filter(|_| !has_a_wrench) {
            let lone = read_text(stage, Quantity::Torque, unit)
                .and_then(Result::ok)
                .is_some_and(|typed| !typed.unit_was_typed());
            if lone {
                stage.push(' ');
                stage.push_str(unit.symbol);
            }
        }
        stages
    }

    /// Forgets what was typed: it is written down now.
    pub fn clear(self) {
        let drafts = [
            self.label,
            self.holds,
            self.per,
            self.kind,
            self.thread,
            self.length,
            self.between,
            self.circle,
            self.rows,
            self.places,
            self.roles,
            self.casting,
            self.thrust,
            self.order,
            self.order_from,
            self.stage_kinds,
            self.stages_from,
            self.lubricant,
            self.under_head,
            self.wrench,
            self.low,
            self.high,
            self.unit,
            self.step,
            self.adapter,
            self.grip,
            self.offset,
            self.turned,
            self.uses,
            self.stretch_low,
            self.stretch_high,
            self.set_at_most,
            self.source,
        ];
        drafts
            .into_iter()
            .chain(self.stages)
            .chain(self.stage_wrenches)
            .for_each(Draft::clear);
    }
}
