//! Quantities: what kind a number is, and the text it comes from and goes to.

mod kind;
mod si;

pub use kind::Kind;
pub use si::Si;
