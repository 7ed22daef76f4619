//! Names without a meaning of their own: builds, devices, tools, settings.

use std::fmt;

use thiserror::Error;
use uuid::Uuid;

/// Why a text is not an id.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[error("“{read}” is not an id: it would be 32 hexadecimal digits in five groups")]
pub struct NotAnId {
    /// The start of what was read.
    pub read: String,
}

/// Reads the usual hyphenated form only, so that an id has one spelling but for case.
pub(super) fn uuid(text: &str) -> Option<Uuid> {
    if text.len() == 36 {
        Uuid::try_parse(text).ok()
    } else {
        None
    }
}

pub(super) fn start_of(text: &str) -> String {
    const SHOWN: usize = 40;
    let mut letters = text.chars();
    let mut start: String = letters.by_ref().take(SHOWN).collect();
    if letters.next().is_some() {
        start.push('…');
    }
    start
}

macro_rules! id {
    ($(#[$meaning:meta])* $name:ident) => {
        $(#[$meaning])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
        pub struct $name(Uuid);

        impl $name {
            /// An id from 122 bits that the caller drew at random (RFC 9562, version 4).
            #[must_use]
            pub const fn from_random(bits: u128) -> Self {
                Self(uuid::Builder::from_random_bytes(bits.to_be_bytes()).into_uuid())
            }

            /// The id written like this.
            ///
            /// # Errors
            /// [`NotAnId`] when it is not written as an id.
            pub fn parse(text: &str) -> Result<Self, NotAnId> {
                uuid(text).map(Self).ok_or_else(|| NotAnId {
                    read: start_of(text),
                })
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.as_hyphenated().fmt(f)
            }
        }
    };
}

id!(
    /// Names a build: one engine being rebuilt once.
    BuildId
);
id!(
    /// Names a device, or a browser profile on it, that facts are written on.
    DeviceId
);
id!(
    /// Names a measuring tool.
    ToolId
);
id!(
    /// Names something that the builder added to the plan.
    OwnId
);
id!(
    /// Names a sitting at a tightening: one screen that one pair of hands works on.
    SittingId
);
id!(
    /// Names a part on the parts list.
    PartId
);
id!(
    /// Names a piece of machine work.
    WorkId
);
id!(
    /// Names one setting of a tool: from setting it until it is set again. All
    /// readings of one setting share its zero error.
    SettingId
);
