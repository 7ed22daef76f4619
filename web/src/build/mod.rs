//! The pages of one build: its main bearings, their limits, the tools, and the
//! book of everything written down.
