//! Times in the words of the bench: when it was, how long it takes, how long
//! it still lasts.

use js_sys::{Date, Object, Reflect};
use wasm_bindgen::JsValue;

const SECOND: i64 = 1000;
const MINUTE: i64 = 60 * SECOND;
const HOUR: i64 = 60 * MINUTE;
const DAY: i64 = 24 * HOUR;
/// From so many minutes on, hours are easier to grasp.
const IN_HOURS: u32 = 180;

/// A moment, in milliseconds since 1970, as the device writes day and time.
#[must_use]
pub fn moment(ms: i64) -> String {
    written(ms, &[("dateStyle", "medium"), ("timeStyle", "short")])
}

/// The day of a moment, as the device writes it.
#[must_use]
pub fn day(ms: i64) -> String {
    written(ms, &[("dateStyle", "medium")])
}

fn written(ms: i64, how: &[(&str, &str)]) -> String {
    let date = Date::new(&JsValue::from_f64(ms as f64));
    if date.get_time().is_nan() {
        return "at no time known".to_owned();
    }
    let options = Object::new();
    for (name, value) in how {
        // A plain object takes any property.
        let _ = Reflect::set(&options, &(*name).into(), &(*value).into());
    }
    date.to_locale_string("default", &options).into()
}

/// How long ago something was: milliseconds.
#[must_use]
pub fn ago(ms: i64) -> String {
    if ms < MINUTE {
        "just now".to_owned()
    } else {
        format!("{} ago", long(ms))
    }
}

/// A stretch of time in its two largest units: "6 min 20 s", "2 days 4 h".
#[must_use]
pub fn lasting(ms: i64) -> String {
    let ms = ms.max(0);
    let (days, hours, minutes, seconds) = (
        ms / DAY,
        ms % DAY / HOUR,
        ms % HOUR / MINUTE,
        ms % MINUTE / SECOND,
    );
    match (days, hours, minutes) {
        (0, 0, 0) => format!("{seconds} s"),
        (0, 0, _) => format!("{minutes} min {seconds} s"),
        (0, _, _) => format!("{hours} h {minutes} min"),
        (1, _, _) => format!("1 day {hours} h"),
        _ => format!("{days} days {hours} h"),
    }
}

/// The same in its largest unit.
fn long(ms: i64) -> String {
    let one_or_more = |count: i64, unit: &str| match count {
        1 => format!("1 {unit}"),
        more => format!("{more} {unit}s"),
    };
    if ms < HOUR {
        one_or_more(ms / MINUTE, "minute")
    } else if ms < DAY {
        one_or_more(ms / HOUR, "hour")
    } else {
        one_or_more(ms / DAY, "day")
    }
}

/// How long a job takes, from and to, in minutes.
#[must_use]
pub fn takes((least, most): (u32, u32)) -> String {
    if most < IN_HOURS {
        return if least == most {
            format!("{most} minutes")
        } else {
            format!("{least} to {most} minutes")
        };
    }
    let hours = |minutes: u32| {
        let halves = (minutes + 15) / 30;
        match (halves / 2, halves % 2) {
            (0, 1) => "½".to_owned(),
            (whole, 0) => whole.to_string(),
            (whole, _) => format!("{whole}½"),
        }
    };
    let (least, most) = (hours(least), hours(most));
    if least == most {
        format!("{most} hours")
    } else {
        format!("{least} to {most} hours")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stretch_of_time_is_said_in_two_units() {
        assert_eq!(lasting(-5), "0 s");
        assert_eq!(lasting(6 * MINUTE + 20 * SECOND), "6 min 20 s");
        assert_eq!(lasting(3 * HOUR + 10 * MINUTE), "3 h 10 min");
        assert_eq!(lasting(2 * DAY + 4 * HOUR), "2 days 4 h");
        assert_eq!(ago(20 * SECOND), "just now");
        assert_eq!(ago(MINUTE), "1 minute ago");
        assert_eq!(ago(49 * HOUR), "2 days ago");
    }

    #[test]
    fn a_long_job_is_said_in_hours() {
        assert_eq!(takes((60, 120)), "60 to 120 minutes");
        assert_eq!(takes((30, 30)), "30 minutes");
        assert_eq!(takes((90, 240)), "1½ to 4 hours");
        assert_eq!(takes((30, 180)), "½ to 3 hours");
    }
}
