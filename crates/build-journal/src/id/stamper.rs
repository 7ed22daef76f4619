//! Makes the ids of facts on one device.

use super::fact_id::{FactId, LAST_COUNT, LAST_MILLISECOND};

/// A hybrid logical clock that makes ids of facts. It reads no clock and rolls
/// no dice: both are handed in.
///
/// ```
/// use build_journal::Stamper;
///
/// let mut stamper = Stamper::new();
/// let first = stamper.stamp(1_700_000_000_000, 42);
/// // The phone's clock is put back an hour; the order holds.
/// let second = stamper.stamp(1_699_996_400_000, 7);
/// assert!(first < second);
/// ```
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Stamper {
    milliseconds: u64,
    count: u16,
}

/// Ids later than this are not followed: 34 years before 48 bits of
/// milliseconds run out, in the year 10854. A forged id up there would
/// otherwise leave no room for the ids that come after it.
const FOLLOWED_UP_TO: u64 = LAST_MILLISECOND - (1 << 40);
/// A wall clock beyond this is taken as this, so that what it makes is followed.
const LATEST_WALL: u64 = FOLLOWED_UP_TO - (1 << 32);

impl Stamper {
    /// A clock that has seen nothing yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Takes note of a fact that exists, so that the next id comes after it. To
    /// be told of every fact when a build opens and whenever facts come in.
    pub fn observe(&mut self, id: FactId) {
        if id.milliseconds() <= FOLLOWED_UP_TO {
            let seen = (id.milliseconds(), id.count());
            (self.milliseconds, self.count) = (self.milliseconds, self.count).max(seen);
        }
    }

    /// The id of something that happens now: the wall clock's milliseconds
    /// since 1970, and 62 bits drawn at random. Later than every id made or
    /// observed before.
    pub fn stamp(&mut self, wall_milliseconds: u64, random: u64) -> FactId {
        let wall = wall_milliseconds.min(LATEST_WALL);
        if wall > self.milliseconds {
            self.milliseconds = wall;
            self.count = 0;
        } else if self.count < LAST_COUNT {
            self.count += 1;
        } else {
            // Out of counts in this millisecond: borrow the next one.
            self.milliseconds += 1;
            self.count = 0;
        }
        FactId::from_parts(self.milliseconds, self.count, random)
    }
}
