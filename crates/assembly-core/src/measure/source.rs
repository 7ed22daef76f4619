//! The causes of measuring error, each with a name and an identity.

use std::collections::BTreeMap;
use std::sync::Arc;

/// The identity of one cause of error. Two values that carry the same id share
/// that error, so it cancels in their difference when it should.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct SourceId(u32);

/// What sort of cause it is. It decides what more readings can do about it:
/// only [`Origin::Repeat`] and [`Origin::Rounding`] shrink with their number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
#[non_exhaustive]
pub enum Origin {
    /// Feel and reading, fresh in every reading.
    Repeat,
    /// The digits that were not typed, fresh in every reading.
    Rounding,
    /// A tool's zero, shared by all readings of one setting.
    SharedZero,
    /// Carrying a size from one tool to another, shared by all readings of one setting.
    SettingTransfer,
    /// A tool that may stand crooked, shared by all readings of one set-up.
    Alignment,
    /// A temperature that is not known well enough.
    Temperature,
    /// An expansion coefficient or another handbook value.
    Handbook,
    /// Given with its uncertainty from outside, as on a certificate.
    Stated,
}

impl Origin {
    /// The word for it in a sentence: the bore gauge's *feel*.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Repeat => "feel",
            Self::Rounding => "last digit",
            Self::SharedZero => "zero",
            Self::SettingTransfer => "setting",
            Self::Alignment => "lean",
            Self::Temperature => "temperature",
            Self::Handbook => "book value",
            Self::Stated => "stated doubt",
        }
    }
}

/// One cause of error, as it is told to a person.
#[derive(Clone, PartialEq, Debug)]
pub struct ErrorSource {
    /// What the error comes from, in the words of the bench: "bore gauge". What
    /// sort of error it is says [`Self::origin`]: together "the bore gauge's feel".
    pub label: Arc<str>,
    /// What sort of cause.
    pub origin: Origin,
    /// Degrees of freedom of the estimate of its size (GUM G.4); infinite when it is taken as known.
    pub degrees_of_freedom: f64,
}

/// The register of causes of error behind a set of values.
///
/// A cause that several values share is looked up by a key, such as the tool
/// and its setting; a cause of one reading alone is made [fresh](Self::fresh).
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Sources {
    all: Vec<ErrorSource>,
    by_key: BTreeMap<String, SourceId>,
    /// Of the settings of tools, sorted by what they are looked up by.
    by_setting: Vec<(Origin, Box<str>, Box<str>, SourceId)>,
}

impl Sources {
    /// An empty register.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Makes room for so many causes more.
    pub fn reserve(&mut self, more: usize) {
        self.all.reserve(more);
    }

    /// A cause that no other value shares.
    pub fn fresh(&mut self, label: impl Into<Arc<str>>, origin: Origin) -> SourceId {
        self.add(ErrorSource {
            label: label.into(),
            origin,
            degrees_of_freedom: f64::INFINITY,
        })
    }

    /// The cause known by this key, made when it is met for the first time.
    pub fn shared(&mut self, key: &str, label: impl Into<Arc<str>>, origin: Origin) -> SourceId {
        if let Some(id) = self.by_key.get(key) {
            return *id;
        }
        let id = self.fresh(label, origin);
        self.by_key.insert(key.to_owned(), id);
        id
    }

    /// The cause of this sort that all readings of one setting of one tool share,
    /// by the keys of both. Each reading asks for it, so it is looked up by what
    /// is there, without a key of its own.
    pub fn of_setting(
        &mut self,
        (tool, setting): (&str, &str),
        label: &Arc<str>,
        origin: Origin,
    ) -> SourceId {
        let found = self.by_setting.binary_search_by(|(of, one, key, _)| {
            (*of, &**one, &**key).cmp(&(origin, tool, setting))
        });
        let at = match found.map(|at| self.by_setting.get(at)) {
            Ok(Some((_, _, _, id))) => return *id,
            Ok(None) => self.by_setting.len(),
            Err(at) => at,
        };
        let id = self.fresh(Arc::clone(label), origin);
        let made = (origin, tool.into(), setting.into(), id);
        self.by_setting.insert(at, made);
        id
    }

    /// Adds a cause with everything said about it.
    pub fn add(&mut self, source: ErrorSource) -> SourceId {
        // More than 2^32 causes cannot be held in memory; the last id would repeat.
        let id = SourceId(u32::try_from(self.all.len()).unwrap_or(u32::MAX));
        self.all.push(source);
        id
    }

    /// The cause behind an id; `None` when the id is of another register.
    #[must_use]
    pub fn get(&self, id: SourceId) -> Option<&ErrorSource> {
        self.all.get(id.0 as usize)
    }
}
