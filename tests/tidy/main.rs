//! Keeps the picture in `DEVELOPERS.md` true: how files look, which room may
//! use which, and what a page under a strict policy may not hold.

mod files;
mod page;
mod rooms;
