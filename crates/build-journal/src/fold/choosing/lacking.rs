//! What is missing for a choice.

use assembly_core::choose::ChoiceError;
use build_plan::{At, Measure};
use thiserror::Error;

use super::super::placing::BenchSizeProblem;
use super::super::standing::Missing;

/// What is missing for a choice, as a sentence.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum Lacking {
    /// The engine is not described, or has no such parts.
    #[error("This engine has no such parts.")]
    NoSuchParts,
    /// A measure that is not there at these places, or no longer counts.
    #[error("The {} is not measured, or no longer counts: {}.", .measure.label, listed(.at))]
    NotMeasured {
        /// The measure.
        measure: &'static Measure,
        /// Where.
        at: Vec<At>,
    },
    /// Readings that cannot be used, or limits.
    #[error(transparent)]
    Of(#[from] Missing),
    /// Limits of one side only.
    #[error("The limits of the {} have one side only: the middle of two is aimed at.", .0.label)]
    OneSided(&'static Measure),
    /// Too few parts on the bench.
    #[error(
        "{wanted} {} are needed, and {} written down below.",
        .part.1,
        match here { 0 => "none is".to_owned(), 1 => "1 is".to_owned(), more => format!("{more} are") }
    )]
    TooFew {
        /// One of them and more of them, in words.
        part: (&'static str, &'static str),
        /// How many are needed.
        wanted: usize,
        /// How many there are.
        here: usize,
    },
    /// A part on the bench whose size cannot be used.
    #[error("The size of “{name}”: {problem}.")]
    Size {
        /// What is marked on it.
        name: String,
        /// Why.
        problem: BenchSizeProblem,
    },
    /// Places without the part that is in them now.
    #[error("It is not written down which {part} is in now: {}.", listed(.at))]
    WhatIsIn {
        /// One of the parts, in a word.
        part: &'static str,
        /// Where.
        at: Vec<At>,
    },
    /// No way of placing them, or too many.
    #[error("{}.", sentence(.0))]
    Choice(#[from] ChoiceError),
}

fn listed(at: &[At]) -> String {
    let all: Vec<String> = at.iter().map(ToString::to_string).collect();
    all.join(", ")
}

fn sentence(error: &ChoiceError) -> String {
    let text = error.to_string();
    let mut letters = text.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().collect::<String>() + letters.as_str())
        .unwrap_or_default()
}
