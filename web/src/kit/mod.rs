//! The controls that screens are made of.

pub mod aside;
pub mod chart;
pub mod day;
pub mod dialog;
pub mod field;
pub mod heard;
pub mod judged;
pub mod keypad;
pub mod keys;
pub mod limit;
pub mod number;
pub mod pick;
pub mod piece;
pub mod scale;
pub mod section;
pub mod select;
pub mod toast;
pub mod verdict;
pub mod when;
pub mod words;
pub mod workings;
