//! One line of the card.

use crate::measure::Window;

/// What the figures of a line are in.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum CardUnit {
    /// Inches.
    Inch,
    /// Inches for each inch of a diameter or span.
    InchPerInch,
}

/// Where a line is from.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Source {
    /// Common practice of the trade, with no source.
    CommonPractice,
    /// Common practice on which the trade does not agree: never a default.
    Disputed,
    /// A technical manual of the United States Army, in the public domain. Most
    /// of them are for truck, boat and generator diesels.
    ArmyManual(&'static str),
    /// Another printed source.
    Printed(&'static str),
}

/// A line of the card, with its figures as they are printed.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Entry {
    /// The measure it is about.
    pub id: &'static str,
    /// What is meant, at the bench.
    pub what: &'static str,
    /// Which engines or parts it holds for; nothing when for all.
    pub case: &'static str,
    /// What the figures are in.
    pub unit: CardUnit,
    /// The least, of new parts.
    pub low: Option<f64>,
    /// The greatest, of new parts.
    pub high: Option<f64>,
    /// The greatest that worn parts may have.
    pub worn: Option<f64>,
    /// The one figure to aim at, where a line has one.
    pub wanted: Option<f64>,
    /// Where it is from.
    pub source: Source,
    /// What comes of too little.
    pub too_little: &'static str,
    /// What comes of too much.
    pub too_much: &'static str,
}

const INCH: f64 = 0.0254;

impl Entry {
    /// A line without figures yet, in inches, of common practice.
    pub(super) const fn of(id: &'static str, what: &'static str) -> Self {
        Self {
            id,
            what,
            case: "",
            unit: CardUnit::Inch,
            low: None,
            high: None,
            worn: None,
            wanted: None,
            source: Source::CommonPractice,
            too_little: "",
            too_much: "",
        }
    }

    pub(super) const fn case(mut self, case: &'static str) -> Self {
        self.case = case;
        self
    }

    pub(super) const fn per_inch(mut self) -> Self {
        self.unit = CardUnit::InchPerInch;
        self
    }

    pub(super) const fn from(mut self, low: f64, high: f64) -> Self {
        self.low = Some(low);
        self.high = Some(high);
        self
    }

    pub(super) const fn at_least(mut self, low: f64) -> Self {
        self.low = Some(low);
        self
    }

    pub(super) const fn at_most(mut self, high: f64) -> Self {
        self.high = Some(high);
        self
    }

    pub(super) const fn worn_to(mut self, worn: f64) -> Self {
        self.worn = Some(worn);
        self
    }

    pub(super) const fn aim_at(mut self, wanted: f64) -> Self {
        self.wanted = Some(wanted);
        self
    }

    pub(super) const fn by(mut self, source: Source) -> Self {
        self.source = source;
        self
    }

    pub(super) const fn harm(mut self, too_little: &'static str, too_much: &'static str) -> Self {
        self.too_little = too_little;
        self.too_much = too_much;
        self
    }

    /// The window of new parts in SI units; of a line for each inch of a
    /// diameter, at this diameter. `None` when such a line gets no diameter, or
    /// when the line has no limit.
    #[must_use]
    pub fn window(&self, diameter: Option<f64>) -> Option<Window> {
        let scale = match self.unit {
            CardUnit::Inch => INCH,
            CardUnit::InchPerInch => diameter?,
        };
        let si = |figure: Option<f64>| figure.map(|figure| figure * scale);
        Window::new(si(self.low), si(self.high)).ok()
    }

    /// Whether a value may be proposed where the builder has no sheet. What is
    /// disputed may only be shown.
    #[must_use]
    pub const fn may_be_proposed(&self) -> bool {
        !matches!(self.source, Source::Disputed)
    }
}
