//! Quick checks: any calculation, at once, with no build around it. Every form
//! is made from the calculation's own description.

mod answer;
mod check;
mod finds;
mod form;
mod groups;
mod limits;
mod list;
pub mod offered;
mod taken;
mod tools;
mod trade_words;

pub use form::{quick_check, rarer_check};
pub use list::{all_checks, quick_checks};
pub use trade_words::trade_words;
