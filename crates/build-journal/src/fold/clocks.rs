//! States that do not last: primed, washed, oiled, sealant that is open.

use build_plan::At;
use build_plan::check::{Check, Lasts};
use build_plan::proof::Proof;

use super::build::Build;
use super::record::ResultAt;
use crate::fact::Outcome;
use crate::id::FactId;

const MINUTE: i64 = 60_000;
const DAY: i64 = 24 * 60 * MINUTE;
/// The clocks of two devices may differ by so much without one having been put
/// back. Ours.
const CLOCKS_DIFFER: i64 = 10 * MINUTE;

/// A state that was good and lasts for a time only.
#[derive(Clone, PartialEq, Debug)]
pub struct Clock {
    /// The check.
    pub check: &'static Check,
    /// The part.
    pub at: At,
    /// The fact that it was good.
    pub fact: FactId,
    /// When that was, by the clock of the device that wrote it: milliseconds
    /// since 1970.
    pub since: i64,
    /// When it ends; nothing when nobody said how long it lasts.
    pub ends: Option<i64>,
}

impl Clock {
    /// Whether it has run out at this moment. When the clock was put back, nobody
    /// can tell, and it does not count.
    #[must_use]
    pub fn has_run_out(&self, now: i64) -> bool {
        self.ends.is_some_and(|ends| ends <= now) || self.clock_went_back(now)
    }

    /// Whether the device's clock was put back since: the moment lies before it began.
    #[must_use]
    pub const fn clock_went_back(&self, now: i64) -> bool {
        now < self.since.saturating_sub(CLOCKS_DIFFER)
    }
}

impl Build {
    /// The states that do not last and that nothing has undone, those that end
    /// first before the others.
    #[must_use]
    pub fn clocks(&self) -> Vec<Clock> {
        let Some(engine) = self.engine.as_ref().map(|one| &one.engine) else {
            return Vec::new();
        };
        let mut clocks: Vec<Clock> = Vec::new();
        for check in self.plan.checks(engine) {
            if check.lasts == Lasts::UntilUndone {
                continue;
            }
            for at in check.per.parts(engine) {
                let Some(made) = self.record.made(check, at) else {
                    continue;
                };
                let key = ResultAt::of(Proof::Check(check), at);
                if made.outcome == Outcome::Bad || self.record.void_of(key, made.fact).is_some() {
                    continue;
                }
                let lasts = lasting(check, made.lasts.as_deref());
                clocks.push(Clock {
                    check,
                    at,
                    fact: made.fact,
                    since: made.clock,
                    ends: lasts.map(|lasts| made.clock.saturating_add(lasts)),
                });
            }
        }
        let order = |clock: &Clock| (clock.ends.is_none(), clock.ends, clock.check.id, clock.at);
        clocks.sort_unstable_by(|a, b| order(a).cmp(&order(b)));
        clocks
    }
}

/// How long a check stays good, in milliseconds: as was typed ("10 min",
/// "30 days"), else as is common. Nothing when nobody can say.
#[must_use]
pub fn lasting(check: &Check, typed: Option<&str>) -> Option<i64> {
    let (usual, lone) = match check.lasts {
        Lasts::UntilUndone => return None,
        Lasts::Days(days) => (Some(i64::from(days) * DAY), DAY),
        Lasts::AsSaid(of) => (
            None,
            if of.starts_with("minutes") {
                MINUTE
            } else {
                DAY
            },
        ),
    };
    typed.and_then(|typed| duration(typed, lone)).or(usual)
}

/// A time as typed, "10 min", "2 h", "30 days", in milliseconds; a lone number
/// is in the given unit.
pub(super) fn duration(typed: &str, lone: i64) -> Option<i64> {
    let typed = typed.trim();
    let end = typed
        .find(|letter: char| !letter.is_ascii_digit())
        .unwrap_or(typed.len());
    let (number, unit) = typed.split_at(end);
    let unit = match unit.trim().to_lowercase().as_str() {
        "" => lone,
        "min" | "minute" | "minutes" => MINUTE,
        "h" | "hour" | "hours" => 60 * MINUTE,
        "d" | "day" | "days" => DAY,
        "week" | "weeks" => 7 * DAY,
        _ => return None,
    };
    number
        .parse::<u32>()
        .ok()
        .map(|number| i64::from(number) * unit)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_reads_as_it_is_typed() {
        for (typed, is) in [
            ("10 min", Some(10 * MINUTE)),
            ("2h", Some(120 * MINUTE)),
            (" 30 days ", Some(30 * DAY)),
            ("1 week", Some(7 * DAY)),
            ("15", Some(15 * MINUTE)),
            ("soon", None),
            ("", None),
            ("-5 min", None),
            ("99999999999 min", None),
        ] {
            assert_eq!(duration(typed, MINUTE), is, "{typed}");
        }
    }
}
