//! The page: screens over the build journal, laid out by what a person sees.
//!
//! Screens are thin: they read what is derived and append facts. No arithmetic
//! of the trade is in here.
//!
//! - [`app`]: the frame around every screen.
//! - [`route`]: which screen the address asks for.
//! - [`bench`]: the builds on this device.
//! - [`build`]: one build: measuring it, and its book.
//! - [`quick`]: checks that need no build.
//! - [`later`]: what arrives when it is first opened.
//! - [`kit`]: the controls that screens are made of.
//! - [`device`]: what the browser lends.

#![cfg_attr(
    test,
    allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::indexing_slicing,
        clippy::panic
    )
)]

pub mod app;
pub mod bench;
pub mod build;
pub mod device;
pub mod kit;
pub mod later;
pub mod quick;
pub mod route;
