//! What went wrong, as a sentence for the person at the terminal.

use std::fmt;

/// A sentence that says what could not be done and, where it is known, what
/// would help.
#[derive(Debug)]
pub struct Problem(String);

/// The result of anything in the yard that can fail.
pub type Outcome<T> = Result<T, Problem>;

impl Problem {
    /// A problem in these words.
    pub fn new(words: impl Into<String>) -> Self {
        Self(words.into())
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// Says what was being done when something below it failed.
pub trait While<T> {
    /// Puts "`what` could not be done: cause" together.
    fn during(self, what: impl fmt::Display) -> Outcome<T>;
}

impl<T, E: fmt::Display> While<T> for Result<T, E> {
    fn during(self, what: impl fmt::Display) -> Outcome<T> {
        self.map_err(|cause| Problem(format!("{what}: {cause}")))
    }
}
