//! The way of the oil: pump, relief, filter, gallery, and every leak.

pub mod gallery;
pub mod leak;
