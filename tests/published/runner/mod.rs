//! Reads the tables, asks the subjects, compares, prints.

mod compare;
mod report;
mod row;
mod table;
mod units;

pub use report::run;
pub use row::{Row, Value};

/// A topic of a file and the function that answers it.
#[derive(Clone, Copy)]
pub struct Subject {
    /// The file's name without its ending.
    pub file: &'static str,
    /// The topic.
    pub topic: &'static str,
    /// Works a row out; `None` when this quantity has no calculation yet.
    pub answer: fn(&Row) -> Option<Value>,
}

impl Subject {
    /// This topic of this file is answered by this function.
    pub const fn of(
        file: &'static str,
        topic: &'static str,
        answer: fn(&Row) -> Option<Value>,
    ) -> Self {
        Self {
            file,
            topic,
            answer,
        }
    }
}
