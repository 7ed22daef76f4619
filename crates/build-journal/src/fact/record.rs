//! A fact.

use std::borrow::Cow;
use std::sync::Arc;

use super::body::{Body, UnknownKind, UnreadableKind};
use super::compact::compact;
use super::fields::Fields;
use super::in_view::InView;
use super::kinds;
use super::unreadable::Unreadable;
use super::write::Line;
use crate::id::{DeviceId, FactId};

/// The format of facts that this version writes. A fact in a later format says
/// so in a field `format`; without one it is in format 1.
pub const FORMAT: u32 = 1;

/// One thing that happened, and the text it is kept as.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Fact {
    id: FactId,
    device: DeviceId,
    clock: i64,
    body: Body,
    in_view: Option<Box<InView>>,
    /// Shared, like the reading in the body: copies of a build are made often.
    text: Arc<str>,
}

impl Fact {
    /// Something that happens now. `clock` is what the device's wall clock
    /// says: milliseconds since 1970, right or wrong.
    ///
    /// A body that was read as unknown or unreadable is written with its kind
    /// alone: such facts are handed on as they are, not made anew.
    #[must_use]
    pub fn new(id: FactId, device: DeviceId, clock: i64, body: Body) -> Self {
        Self::in_view_of(id, device, clock, (body, None))
    }

    /// The same, with what the device had in view of the same thing. It is left
    /// away where facts of the kind do not say it; see [`InView::goes_with`].
    #[must_use]
    pub fn in_view_of(
        id: FactId,
        device: DeviceId,
        clock: i64,
        (body, in_view): (Body, Option<InView>),
    ) -> Self {
        let in_view = in_view.filter(|_| InView::goes_with(&body));
        let line = Line::new()
            .id("id", id)
            .id("device", device)
            .whole("clock", clock);
        let mut line = kinds::write(line, &body);
        if let Some(in_view) = &in_view {
            line = in_view.write(line);
        }
        Self {
            id,
            device,
            clock,
            body,
            in_view: in_view.map(Box::new),
            text: line.end().into(),
        }
    }

    /// The fact in a JSON text. Fields that this version does not know are
    /// kept; so are kinds it does not know.
    ///
    /// # Errors
    /// [`Unreadable`] when there is no telling which fact it is: the text is
    /// not JSON, or has no proper `id`, `device`, `clock` and `kind`.
    pub fn read(text: &str) -> Result<Self, Unreadable> {
        // Read as it will be kept: blanks between its parts must not matter.
        // But first it has to be JSON as it stands: 1 2 is not 12.
        let spread = text;
        let text = compact(spread);
        if matches!(text, Cow::Owned(_)) {
            Fields::read(spread)?;
        }
        let fields = Fields::read(&text)?;
        let id = fields.id("id", "the id of a fact, a UUID of version 7", FactId::parse)?;
        let device = fields.id("device", "the id of a device, a UUID", DeviceId::parse)?;
        let clock = fields.whole("clock", "milliseconds since 1970, a whole number")?;
        let kind = fields.text("kind", "the kind of the fact, a word")?;
        let format = fields
            .optional_count("format", "the format's number")?
            .unwrap_or(FORMAT);
        let (body, in_view) = if format > FORMAT {
            (Body::Unknown(UnknownKind { kind, format }), None)
        } else {
            said((kind, format), &fields)
        };
        Ok(Self {
            id,
            device,
            clock,
            body,
            in_view: in_view.map(Box::new),
            text: text.into(),
        })
    }

    /// Its id.
    #[must_use]
    pub const fn id(&self) -> FactId {
        self.id
    }

    /// The device it was written on.
    #[must_use]
    pub const fn device(&self) -> DeviceId {
        self.device
    }

    /// What the device's wall clock said: milliseconds since 1970.
    #[must_use]
    pub const fn clock(&self) -> i64 {
        self.clock
    }

    /// What happened.
    #[must_use]
    pub const fn body(&self) -> &Body {
        &self.body
    }

    /// What the device had in view of the same thing; `None` when that is not
    /// said, as in facts of the first version: such a fact goes for one that had
    /// everything before it in view.
    #[must_use]
    pub fn in_view(&self) -> Option<&InView> {
        self.in_view.as_deref()
    }

    /// The JSON text, on one line: what is stored and exported.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The format it is in, when that is later than this version's.
    #[must_use]
    pub const fn later_format(&self) -> Option<u32> {
        match &self.body {
            Body::Unknown(unknown) if unknown.format > FORMAT => Some(unknown.format),
            _ => None,
        }
    }
}

/// What a fact says, as far as this version knows it.
fn said((kind, format): (String, u32), fields: &Fields) -> (Body, Option<InView>) {
    let Some(read) = kinds::read(&kind, fields) else {
        return (Body::Unknown(UnknownKind { kind, format }), None);
    };
    let both = read.and_then(|body| {
        let in_view = InView::read(&body, fields)?;
        Ok((body, in_view))
    });
    both.unwrap_or_else(|reason| (Body::Unreadable(UnreadableKind { kind, reason }), None))
}
