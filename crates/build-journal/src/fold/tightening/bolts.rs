//! The bolts of a group at one part: how often each was used, how long it is.

use assembly_core::measure::{Assessment, DangerousSide, Estimate, Sources, Verdict, Window};
use assembly_core::quantity::{Kind, Typed, read, unit_of, unit_or_usual};
use assembly_core::tool::{Setting, Tool};
use uom::si::f64::Length as Metres;

use super::sheet::Sheet;
use crate::fact::{BoltMeasured, BoltState};
use crate::id::FactId;

/// A length of a bolt.
#[derive(Clone, PartialEq, Debug)]
pub struct Length {
    /// The fact.
    pub fact: FactId,
    /// What was typed, read, or why it cannot be read.
    pub value: Result<Typed, String>,
    /// What it was measured with; without that nobody knows how far it is off.
    pub tool: Option<Tool>,
}

impl Length {
    pub(super) fn of(fact: FactId, made: &BoltMeasured, tool: Option<Tool>) -> Self {
        let lone =
            unit_of(Kind::Length, &made.unit).unwrap_or_else(|| unit_or_usual(Kind::Length, "in"));
        let value = read(&made.typed, Kind::Length, lone).map_err(|error| error.to_string());
        Self { fact, value, tool }
    }

    fn metres(&self) -> Option<f64> {
        self.value.as_ref().ok().map(Typed::si)
    }

    /// The length with how far it may be off; nothing without a tool.
    fn measured(&self, sources: &mut Sources) -> Option<Estimate> {
        let (tool, typed) = (self.tool.as_ref()?, self.value.as_ref().ok()?);
        // Each bolt is its own zero: readings share no setting that would matter,
        // as tools for bolts have no zero of their own.
        let setting = Setting::on_standard("bolt");
        let reading = tool.reading_typed::<Metres>(sources, &setting, typed);
        Some(reading.estimate().clone())
    }
}

/// One length less another, with how far that may be off.
fn difference(long: &Length, short: &Length) -> Option<Estimate> {
    let mut sources = Sources::new();
    let long = long.measured(&mut sources)?;
    Some(long - &short.measured(&mut sources)?)
}

/// One bolt of a group.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Bolt {
    /// How often it was pulled to the end before the last run.
    pub(super) settled: u32,
    /// It was taken new when the last run was through: it has no part in that.
    pub(super) after_the_run: bool,
    /// What stands on its bag, when it was taken new.
    pub lot: Option<String>,
    /// The fact that it was taken new.
    pub renewed: Option<FactId>,
    /// It was held against the map and is not the one that belongs there.
    pub not_as_mapped: bool,
    /// Its length before it was first tightened.
    pub first_free: Option<Length>,
    /// Its latest length with no load on it.
    pub free: Option<Length>,
    /// Its latest length when tight.
    pub tight: Option<Length>,
}

/// What is wrong with a bolt by its lengths and uses.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum BoltTrouble {
    /// It stretched less than the sheet wants, metres.
    TooLittle(f64),
    /// It stretched more than the sheet allows, metres: scrap.
    TooMuch(f64),
    /// It is not longer when tight: look at the list.
    NotLonger,
    /// Its stretch lies so near a limit that the tool cannot tell.
    StretchTooClose,
    /// It stayed longer than the sheet allows, metres: scrap.
    Set(f64),
    /// What it stayed longer by lies so near the limit that the tool cannot tell.
    SetTooClose,
    /// It has had all its uses: scrap once it comes off.
    UsedUp {
        /// How often.
        uses: u32,
        /// How often it may be.
        allowed: u32,
    },
}

impl BoltTrouble {
    /// Whether the bolt is for the scrap bin.
    #[must_use]
    pub const fn is_scrap(self) -> bool {
        matches!(self, Self::TooMuch(_) | Self::Set(_))
    }
}

impl Bolt {
    pub(super) fn measured(&mut self, length: Length, state: BoltState) {
        match state {
            BoltState::Free => {
                if self.first_free.is_none() && length.value.is_ok() {
                    self.first_free = Some(length.clone());
                }
                self.free = Some(length);
            }
            BoltState::Tight => self.tight = Some(length),
        }
    }

    /// How much longer it is tight than free, metres: both as measured last. A
    /// tight length from before the free one says nothing.
    #[must_use]
    pub fn stretch(&self) -> Option<f64> {
        let (free, tight) = self.free_and_tight()?;
        Some(tight.metres()? - free.metres()?)
    }

    fn free_and_tight(&self) -> Option<(&Length, &Length)> {
        let (free, tight) = (self.free.as_ref()?, self.tight.as_ref()?);
        (tight.fact > free.fact).then_some((free, tight))
    }

    /// One standard deviation of the stretch, metres; nothing when it is not said
    /// for both lengths what they were measured with.
    #[must_use]
    pub fn stretch_give_or_take(&self) -> Option<f64> {
        let (free, tight) = self.free_and_tight()?;
        Some(difference(tight, free)?.deviation())
    }

    /// What can be said of the stretch against the sheet. Nothing without a limit,
    /// or without the tools of both lengths.
    #[must_use]
    pub fn verdict(&self, sheet: &Sheet) -> Option<Verdict> {
        let (free, tight) = self.free_and_tight()?;
        let (low, high) = sheet.stretch;
        if (low, high) == (None, None) {
            return None;
        }
        let window = Window::new(low, high).ok()?;
        let stretch = difference(tight, free)?;
        // Too little opens the cap, too much breaks the bolt: none is the milder.
        Some(Assessment::of(&stretch, &window, DangerousSide::Neither).verdict)
    }

    /// The same of what it stayed longer by.
    fn verdict_of_set(&self, sheet: &Sheet) -> Option<Verdict> {
        let (first, last) = self.first_and_last_free()?;
        let window = Window::new(None, Some(sheet.set_at_most?)).ok()?;
        let set = difference(last, first)?;
        Some(Assessment::of(&set, &window, DangerousSide::TooMuch).verdict)
    }

    /// How much longer it has stayed, metres; nothing before it was measured
    /// free a second time.
    #[must_use]
    pub fn set(&self) -> Option<f64> {
        let (first, last) = self.first_and_last_free()?;
        Some(last.metres()? - first.metres()?)
    }

    fn first_and_last_free(&self) -> Option<(&Length, &Length)> {
        let (first, last) = (self.first_free.as_ref()?, self.free.as_ref()?);
        (first.fact != last.fact).then_some((first, last))
    }

    /// What is wrong with it, the worst first; `uses` is how often it was used
    /// in all. With tools that are known only what is beyond doubt is told as
    /// wrong, and what is not as too close; without, the figures as typed warn.
    #[must_use]
    pub fn troubles(&self, sheet: &Sheet, uses: u32) -> Vec<BoltTrouble> {
        let mut troubles = Vec::new();
        troubles.extend(self.trouble_with_set(sheet));
        troubles.extend(self.trouble_with_stretch(sheet));
        if let Some(allowed) = sheet.uses_allowed().filter(|allowed| uses >= *allowed) {
            troubles.push(BoltTrouble::UsedUp { uses, allowed });
        }
        troubles
    }

    fn trouble_with_set(&self, sheet: &Sheet) -> Option<BoltTrouble> {
        let (set, most) = (self.set()?, sheet.set_at_most?);
        match self.verdict_of_set(sheet) {
            Some(Verdict::Good) => None,
            Some(Verdict::TooCloseToCall) => Some(BoltTrouble::SetTooClose),
            Some(Verdict::Bad) => Some(BoltTrouble::Set(set)),
            None => (set > most * (1.0 + ALIKE)).then_some(BoltTrouble::Set(set)),
        }
    }

    fn trouble_with_stretch(&self, sheet: &Sheet) -> Option<BoltTrouble> {
        let stretch = self.stretch()?;
        if stretch <= 0.0 {
            return Some(BoltTrouble::NotLonger);
        }
        let (low, high) = sheet.stretch;
        let as_typed = if high.is_some_and(|high| stretch > high * (1.0 + ALIKE)) {
            Some(BoltTrouble::TooMuch(stretch))
        } else if low.is_some_and(|low| stretch < low * (1.0 - ALIKE)) {
            Some(BoltTrouble::TooLittle(stretch))
        } else {
            None
        };
        match self.verdict(sheet) {
            Some(Verdict::Good) => None,
            Some(Verdict::TooCloseToCall) => Some(BoltTrouble::StretchTooClose),
            // Bad inside the window is a tool that can tell neither side.
            Some(Verdict::Bad) => Some(as_typed.unwrap_or(BoltTrouble::StretchTooClose)),
            None => as_typed,
        }
    }
}

/// A millionth is no difference: figures are compared as typed.
const ALIKE: f64 = 1e-6;
