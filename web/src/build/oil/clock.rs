//! The time, every second, for as long as a screen stands.

use std::time::Duration;

use leptos::prelude::*;

use crate::device::chance::now;

/// Milliseconds since 1970, followed.
#[must_use]
pub(super) fn ticking() -> ReadSignal<i64> {
    let (time, set_time) = signal(now());
    let tick = move || {
        // The screen may be gone already.
        let _ = set_time.try_set(now());
    };
    if let Ok(handle) = set_interval_with_handle(tick, Duration::from_secs(1)) {
        on_cleanup(move || handle.clear());
    }
    time
}

/// Minutes and seconds: "3:05"; over an hour "1:02:05".
#[must_use]
pub(super) fn minutes(milliseconds: i64) -> String {
    let seconds = milliseconds.max(0) / 1000;
    let (hours, minutes, seconds) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
    if hours > 0 {
        format!("{hours}:{minutes:02}:{seconds:02}")
    } else {
        format!("{minutes}:{seconds:02}")
    }
}

/// How long ago, or until when, in words: "3 days", "40 minutes".
#[must_use]
pub(super) fn span(milliseconds: i64) -> String {
    let minutes = milliseconds.max(0) / 60_000;
    let (number, word) = match minutes {
        0..=119 => (minutes, "minute"),
        120..=2879 => (minutes / 60, "hour"),
        _ => (minutes / 1440, "day"),
    };
    format!("{number} {word}{}", if number == 1 { "" } else { "s" })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn time_reads_like_a_stopwatch_and_a_calendar() {
        assert_eq!(minutes(185_400), "3:05");
        assert_eq!(minutes(3_725_000), "1:02:05");
        assert_eq!(minutes(-5), "0:00");
        assert_eq!(span(60_000), "1 minute");
        assert_eq!(span(3 * 3_600_000), "3 hours");
        assert_eq!(span(14 * 86_400_000), "14 days");
    }
}
