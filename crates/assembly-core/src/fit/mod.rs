//! The fits of an engine, one calculation a file.
