//! A journal that is being written, for tests: it is taken further fact by fact, and
//! what comes of that is held against what is worked out afresh.

use build_plan::Place;

use super::{Build, Folding, fold};
use crate::fact::samples::Pen;
use crate::fact::{Body, LimitsOrigin, LimitsSet, Reading, Spot, ToolListed};
use crate::id::{BuildId, FactId, SettingId, ToolId};
use crate::journal::Journal;

/// A journal with the pen that writes it.
pub(super) struct Written {
    pub(super) pen: Pen,
    pub(super) journal: Journal,
    pub(super) folding: Folding,
}

/// What a reading is taken with: the tool, and its setting when it was said.
pub(super) type With = (u128, Option<u128>);

impl Written {
    /// A journal of this engine, with these tools on the list by their kinds.
    pub(super) fn of(engine: Body, tools: &[(u128, &str)]) -> Self {
        let journal = Journal::new(BuildId::from_random(7));
        let mut written = Self {
            pen: Pen::new(1),
            folding: Folding::of(&journal),
            journal,
        };
        written.write(engine);
        for (tool, kind) in tools {
            written.list(*tool, kind, kind, None);
        }
        written
    }

    /// Writes a fact.
    pub(super) fn write(&mut self, body: Body) -> FactId {
        let fact = self.pen.write(body);
        self.journal.take(fact.clone());
        self.folding.append(&self.journal, &fact);
        assert_eq!(self.folding.build(), &fold(&self.journal));
        fact.id()
    }

    /// Puts a tool on the list.
    pub(super) fn list(
        &mut self,
        tool: u128,
        name: &str,
        instrument: &str,
        mark: Option<&str>,
    ) -> FactId {
        self.write(Body::ToolListed(ToolListed {
            tool: ToolId::from_random(tool),
            name: name.to_owned(),
            instrument: instrument.to_owned(),
            mark: mark.map(str::to_owned),
        }))
    }

    /// Takes a reading; of a part at another temperature, when it is said.
    pub(super) fn reads(
        &mut self,
        (measure, place): (&str, Place),
        (typed, unit): (&str, &str),
        (tool, setting): With,
        temperature: Option<&str>,
    ) -> FactId {
        let reading = Reading {
            measure: measure.to_owned(),
            place: Spot::Known(place),
            typed: typed.to_owned(),
            unit: unit.to_owned(),
            tool: Some(ToolId::from_random(tool)),
            setting: setting.map(SettingId::from_random),
            temperature: temperature.map(str::to_owned),
            condition: None,
            keyed: None,
        };
        self.write(Body::Reading(reading.into()))
    }

    /// Sets limits by a sheet.
    pub(super) fn limit(
        &mut self,
        measure: &str,
        (low, high): (Option<&str>, Option<&str>),
        unit: &str,
    ) -> FactId {
        self.write(Body::LimitsSet(LimitsSet {
            measure: measure.to_owned(),
            place: None,
            low: low.map(str::to_owned),
            high: high.map(str::to_owned),
            unit: unit.to_owned(),
            origin: LimitsOrigin::Sheet,
            origin_note: "page 12".to_owned(),
            replaces: Vec::new(),
        }))
    }

    /// What follows from it.
    pub(super) const fn state(&self) -> &Build {
        self.folding.build()
    }
}

/// Makes a test's own book of such a journal.
macro_rules! book {
    ($(#[$about:meta])* $name:ident) => {
        $(#[$about])*
        pub(super) struct $name(super::written::Written);

        impl std::ops::Deref for $name {
            type Target = super::written::Written;

            fn deref(&self) -> &Self::Target {
                &self.0
            }
        }

        impl std::ops::DerefMut for $name {
            fn deref_mut(&mut self) -> &mut Self::Target {
                &mut self.0
            }
        }
    };
}

pub(super) use book;
