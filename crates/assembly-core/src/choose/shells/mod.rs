//! Which half-shell goes where: from the shells on the bench, for all journals
//! at once, under the mixing rule.

mod bench;
mod choice;
mod described;
mod place;
mod search;

pub use bench::{BenchHalf, Main, OddHalf, Position};
pub use choice::{Placing, ShellChoice, choose_shells};
pub use described::WHICH_SHELL_WHERE;

#[cfg(test)]
mod tests;
