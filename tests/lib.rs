//! Tests of the whole: against the outside world and in real browsers.
