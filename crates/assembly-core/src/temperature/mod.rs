//! Heat at the bench: the metals of an engine as the trade knows them, with
//! how well their growth is known, and the quick check of a fit of two metals
//! measured cold or warm.
//!
//! The arithmetic itself is in [`crate::fit::temperature`].

mod bench_metal;
pub mod two_metals;

pub use bench_metal::{BENCH_METALS, BenchMetal, bench_metal};
