//! A main bearing's position along the crank.

/// A main bearing, counted from the front of the engine from 1. The front is
/// the end opposite the flywheel, however the engine sits in its machine.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Main {
    number: u8,
    of: u8,
}

impl Main {
    pub(crate) const fn new(number: u8, of: u8) -> Option<Self> {
        if number >= 1 && number <= of {
            Some(Self { number, of })
        } else {
            None
        }
    }

    /// Its number from the front, from 1.
    #[must_use]
    pub const fn number(self) -> u8 {
        self.number
    }

    /// How many mains the engine has.
    #[must_use]
    pub const fn of(self) -> u8 {
        self.of
    }

    /// Whether it is the front one.
    #[must_use]
    pub const fn is_front(self) -> bool {
        self.number == 1
    }

    /// Whether it is the rear one, at the flywheel.
    #[must_use]
    pub const fn is_rear(self) -> bool {
        self.number == self.of
    }

    /// Its name at the bench: "main 3 of 5".
    #[must_use]
    pub fn label(self) -> String {
        format!("main {} of {}", self.number, self.of)
    }
}
