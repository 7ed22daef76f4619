//! What would settle a result that is too close to call: more readings with the
//! same tool, or another one.

use super::bench::Tool;
use super::instrument::Task;
use super::ways::{Way, differences, spreads, ways};
use crate::measure::{
    Assessment, DangerousSide, ErrorSource, Estimate, MoreReadings, Origin, Sources, Verdict,
    Window, how_many_more,
};

/// How a result is got at.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Got {
    /// Read off a tool that can do one of these.
    AtOnce(&'static [Task]),
    /// A hole less the shaft in it.
    HoleLessShaft,
    /// The most that readings of one tool differ, which can do one of these: its
    /// zero drops out.
    Difference(&'static [Task]),
}

/// What would settle a result.
#[derive(Clone, PartialEq, Debug)]
pub struct Settling {
    /// What more readings would do.
    pub more: MoreReadings,
    /// The surest way with the builder's tools that would settle it where it
    /// stands now, when more readings would not.
    pub own: Option<Way>,
    /// The surest way with any tool, when none of the builder's would.
    pub other: Option<Way>,
}

impl Settling {
    /// What would settle a result with a least and a greatest, made from so many
    /// readings of each place; `None` when it is settled.
    ///
    /// ```
    /// use assembly_core::measure::{DangerousSide, Estimate, Origin, Sources, Window};
    /// use assembly_core::tool::{Got, Settling, Task, Tool};
    ///
    /// let mut sources = Sources::new();
    /// let feel = sources.fresh("feeler blades", Origin::Repeat);
    /// let gap = Estimate::exact(0.0042).with(feel, 0.0004);
    /// let window = Window::new(Some(0.004), Some(0.006)).unwrap();
    /// let own: [Tool; 0] = [];
    /// let settling = Settling::of(
    ///     (&gap, &gap), 1, &sources, (&window, DangerousSide::TooLittle), Got::AtOnce(&[Task::Gap]), &own,
    /// ).unwrap();
    /// assert!(settling.sentence().contains("more readings of each place would settle it"));
    /// ```
    #[must_use]
    pub fn of(
        (least, greatest): (&Estimate, &Estimate),
        readings: usize,
        sources: &Sources,
        (window, dangerous): (&Window, DangerousSide),
        got: Got,
        own: &[Tool],
    ) -> Option<Self> {
        let more = how_many_more((least, greatest), readings, sources, window, dangerous);
        if more == MoreReadings::NotNeeded {
            return None;
        }
        let surest = |tools: &[Tool]| {
            let mut able = match got {
                Got::AtOnce(tasks) => tasks.iter().flat_map(|task| ways(*task, tools)).collect(),
                Got::HoleLessShaft => differences(tools),
                Got::Difference(tasks) => spreads(tasks, tools),
            };
            able.retain(|way| settles(way, (least.value(), greatest.value()), window, dangerous));
            able.sort_by(|a, b| a.give_or_take.total_cmp(&b.give_or_take));
            able.into_iter().next()
        };
        let own = (more == MoreReadings::WouldNot)
            .then(|| surest(own))
            .flatten();
        let other = (more == MoreReadings::WouldNot && own.is_none())
            .then(|| {
                let all: Vec<Tool> = super::INSTRUMENTS
                    .iter()
                    .map(|kind| Tool::from(*kind))
                    .collect();
                surest(&all)
            })
            .flatten();
        Some(Self { more, own, other })
    }

    /// The same in words.
    #[must_use]
    pub fn sentence(&self) -> String {
        let readings = match self.more {
            MoreReadings::NotNeeded => return String::new(),
            MoreReadings::Would(1) => {
                return "One more reading of each place would settle it, if the mean stays where it is."
                    .to_owned();
            }
            MoreReadings::Would(more) => {
                return format!(
                    "{more} more readings of each place would settle it, if their mean stays where it is."
                );
            }
            MoreReadings::WouldNot => "More readings would not settle it.",
        };
        match (&self.own, &self.other) {
            (Some(way), _) => format!("{readings} This would: {}.", way.label()),
            (None, Some(way)) => {
                format!(
                    "{readings} None of your tools would; this one could: {}.",
                    way.label()
                )
            }
            (None, None) => format!(
                "{readings} No tool at hand would either: it lies too near the limit. Move it away from the limit, or ask a shop to measure it."
            ),
        }
    }
}

/// Whether a single go in this way would settle it, if it is what it reads now.
fn settles(
    way: &Way,
    (least, greatest): (f64, f64),
    window: &Window,
    dangerous: DangerousSide,
) -> bool {
    let mut sources = Sources::new();
    let doubt = sources.add(ErrorSource {
        label: way.label().into(),
        origin: Origin::Repeat,
        degrees_of_freedom: way.degrees_of_freedom,
    });
    let [least, greatest] =
        [least, greatest].map(|value| Estimate::exact(value).with(doubt, way.give_or_take));
    Assessment::judged((&least, &greatest), window, dangerous, &sources).verdict
        != Verdict::TooCloseToCall
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tool::instruments::{BORE_GAUGE_TENTHS, OUTSIDE_MICROMETER_PROVED};

    const THOU: f64 = 0.000_025_4;

    /// A bore less a piston, in thou, with a zero that all readings share.
    fn settling(value: f64, fresh: f64, shared: f64, got: Got, own: &[Tool]) -> Option<Settling> {
        let mut sources = Sources::new();
        let feel = sources.fresh("caliper", Origin::Repeat);
        let zero = sources.fresh("caliper", Origin::SharedZero);
        let value = Estimate::exact(value * THOU)
            .with(feel, fresh * THOU)
            .with(zero, shared * THOU);
        let window = Window::new(Some(1.5 * THOU), Some(3.0 * THOU)).unwrap();
        let judged = (&window, DangerousSide::TooLittle);
        Settling::of((&value, &value), 1, &sources, judged, got, own)
    }

    #[test]
    fn what_is_settled_needs_nothing() {
        assert_eq!(settling(2.2, 0.1, 0.1, Got::HoleLessShaft, &[]), None);
    }

    #[test]
    fn readings_that_would_do_come_before_another_tool() {
        let found = settling(1.8, 0.3, 0.0, Got::HoleLessShaft, &[]).unwrap();
        assert_eq!(found.more, MoreReadings::Would(2));
        assert_eq!((found.own, found.other), (None, None));
    }

    #[test]
    fn when_readings_would_not_the_builders_own_tools_are_named_first() {
        let own = [
            Tool::new("g", "my bore gauge", &BORE_GAUGE_TENTHS),
            Tool::new("m", "my micrometer", &OUTSIDE_MICROMETER_PROVED),
        ];
        let found = settling(2.1, 0.1, 1.0, Got::HoleLessShaft, &own).unwrap();
        assert_eq!(found.more, MoreReadings::WouldNot);
        assert_eq!(
            found.sentence(),
            "More readings would not settle it. This would: my bore gauge, set on my micrometer, that measures the other part."
        );
        let without = settling(2.1, 0.1, 1.0, Got::HoleLessShaft, &[]).unwrap();
        assert!(
            without
                .sentence()
                .contains("None of your tools would; this one could: ")
        );
        // A squeezed strip reads a clearance at once, and a bore less a piston it does not.
        assert!(
            !without.sentence().contains("strip"),
            "{}",
            without.sentence()
        );
    }

    #[test]
    fn on_the_very_limit_no_tool_would() {
        let found = settling(1.5, 0.1, 1.0, Got::AtOnce(&[Task::InsideSize]), &[]).unwrap();
        assert_eq!(found.other, None);
        assert!(
            found.sentence().contains("ask a shop"),
            "{}",
            found.sentence()
        );
    }

    #[test]
    fn of_a_difference_the_zero_of_the_tool_drops_out() {
        let micrometer = Tool::new("m", "my micrometer", &OUTSIDE_MICROMETER_PROVED);
        let way = spreads(&[Task::OutsideSize], std::slice::from_ref(&micrometer)).remove(0);
        let wanted = micrometer.fresh_deviation(0.0) * std::f64::consts::SQRT_2;
        assert!((way.give_or_take - wanted).abs() < 1e-15);
        assert_eq!(way.label(), "my micrometer");
    }
}
