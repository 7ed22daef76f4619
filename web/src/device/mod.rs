//! What the browser lends: storage, settings, files, the service worker. Each
//! file asks the browser for one thing and takes no for an answer.

pub mod chance;
pub mod database;
pub mod drafts;
pub mod dress;
pub mod exports;
pub mod files;
pub mod headset;
pub mod keeping;
pub mod lack;
pub mod local;
mod making_up;
pub mod painted;
pub mod photos;
pub mod picture;
pub mod senses;
pub mod settings;
pub mod space;
pub mod update;
