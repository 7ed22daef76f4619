//! The id of a fact: when it happened, in an order that holds.

use std::fmt;

use thiserror::Error;
use uuid::Uuid;

use super::names::{start_of, uuid};

/// Names a fact and places it in time: a UUID of version 7 (RFC 9562) whose
/// first 48 bits are the milliseconds and whose next 12 are the counter of a
/// hybrid logical clock (RFC 9562, 6.2), the remaining 62 random. Ids sort in
/// the order in which one device wrote them, whatever its wall clock did, and
/// after everything the device had seen of other devices.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FactId(Uuid);

/// Why a text does not name a fact.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum NotAFactId {
    /// Not written as an id at all.
    #[error("“{read}” is not an id: it would be 32 hexadecimal digits in five groups")]
    NotAnId {
        /// The start of what was read.
        read: String,
    },
    /// An id of another sort, which does not say when.
    #[error("{read} does not say when it was made: a fact's id is of version 7")]
    OtherVersion {
        /// What was read.
        read: String,
    },
}

/// Milliseconds take 48 bits.
pub(super) const LAST_MILLISECOND: u64 = (1 << 48) - 1;
/// The counter takes 12 bits.
pub(super) const LAST_COUNT: u16 = (1 << 12) - 1;

impl FactId {
    /// The id written like this.
    ///
    /// # Errors
    /// [`NotAFactId`] says what it is instead.
    pub fn parse(text: &str) -> Result<Self, NotAFactId> {
        let id = uuid(text).ok_or_else(|| NotAFactId::NotAnId {
            read: start_of(text),
        })?;
        if id.get_version_num() == 7 && id.get_variant() == uuid::Variant::RFC4122 {
            Ok(Self(id))
        } else {
            Err(NotAFactId::OtherVersion {
                read: text.to_owned(),
            })
        }
    }

    /// Puts an id together. Only the low 48, 12 and 62 bits of the three count.
    pub(super) const fn from_parts(milliseconds: u64, count: u16, random: u64) -> Self {
        let high = (milliseconds & LAST_MILLISECOND) << 16 | 0x7000 | (count & LAST_COUNT) as u64;
        let low = 0x8000_0000_0000_0000 | random & 0x3fff_ffff_ffff_ffff;
        Self(Uuid::from_u64_pair(high, low))
    }

    /// Milliseconds since 1970 of the hybrid logical clock. Close to the wall
    /// clock when that was right, ahead of it when it had jumped back.
    #[must_use]
    pub const fn milliseconds(self) -> u64 {
        self.0.as_u64_pair().0 >> 16
    }

    /// The counter that parts facts of one millisecond.
    #[must_use]
    pub const fn count(self) -> u16 {
        (self.0.as_u64_pair().0 & LAST_COUNT as u64) as u16
    }
}

impl fmt::Display for FactId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.as_hyphenated().fmt(f)
    }
}

impl fmt::Debug for FactId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}
