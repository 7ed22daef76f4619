//! Which tools could settle a window, before anything is measured.

use super::instrument::{Instrument, Task};
use crate::measure::{Assessment, DangerousSide, Verdict, Window, best_chance};

/// A way to measure something, and how sure a single go at it is.
#[derive(Clone, PartialEq, Debug)]
pub struct Way {
    /// The tool that does it, or that measures the bore.
    pub tool: &'static Instrument,
    /// The tool that measures the journal, or that the first is set or read on.
    pub with: Option<&'static Instrument>,
    /// One standard deviation of the result, SI units.
    pub give_or_take: f64,
}

impl Way {
    /// What it is called.
    ///
    /// ```
    /// use assembly_core::tool::{INSTRUMENTS, Task, ways};
    /// let surest = ways(Task::RunningClearance, INSTRUMENTS).remove(0);
    /// assert_eq!(
    ///     surest.label(),
    ///     "dial bore gauge, reads tenths, set on the outside micrometer, reads tenths, \
    ///      zero proved on a standard today, that measures the other part"
    /// );
    /// ```
    #[must_use]
    pub fn label(&self) -> String {
        match self.with {
            None => self.tool.label.to_owned(),
            Some(other) if self.tool.compares => format!(
                "{}, set on the {}, that measures the other part",
                self.tool.label, other.label
            ),
            Some(other) => format!("{}, and {}", self.tool.label, other.label),
        }
    }

    /// The most favourable verdict that it could ever give.
    #[must_use]
    pub fn best(&self, window: &Window, dangerous: DangerousSide) -> Assessment {
        best_chance(self.give_or_take, window, dangerous)
    }
}

/// Every way to do this with these tools, surest first. A running clearance is
/// measured at once or as the difference of a bore and a journal; a tool without
/// a scale of its own is set on the micrometer that also measures the journal,
/// so that the micrometer's zero cancels.
#[must_use]
pub fn ways(task: Task, tools: &[&'static Instrument]) -> Vec<Way> {
    let able = |task: Task| tools.iter().copied().filter(move |tool| tool.can(task));
    let mut all: Vec<Way> = able(task)
        .filter(|tool| !tool.compares)
        .map(|tool| Way {
            tool,
            with: None,
            give_or_take: tool.deviation(0.0),
        })
        .collect();
    for tool in able(task).filter(|tool| tool.compares) {
        all.extend(able(Task::OutsideSize).map(|other| Way {
            tool,
            with: Some(other),
            give_or_take: tool.deviation(0.0).hypot(other.shared_zero),
        }));
    }
    if task == Task::RunningClearance {
        for bore in able(Task::InsideSize) {
            all.extend(able(Task::OutsideSize).map(|journal| Way {
                tool: bore,
                with: Some(journal),
                give_or_take: bore.deviation(0.0).hypot(if bore.compares {
                    journal.fresh_deviation(0.0)
                } else {
                    journal.deviation(0.0)
                }),
            }));
        }
    }
    all.sort_by(|a, b| a.give_or_take.total_cmp(&b.give_or_take));
    all
}

/// The ways that could ever say *good* against this window with a single go,
/// surest first. Empty when none could.
///
/// ```
/// use assembly_core::measure::{DangerousSide, Window};
/// use assembly_core::tool::{INSTRUMENTS, Task, which_could_settle};
///
/// // A window of 1.5 to 2.2 thou: a plastic strip could never settle it.
/// let thou = 0.0000254;
/// let window = Window::new(Some(1.5 * thou), Some(2.2 * thou)).unwrap();
/// let ways = which_could_settle(Task::RunningClearance, INSTRUMENTS, &window, DangerousSide::TooLittle);
/// assert!(ways.iter().any(|way| way.tool.id == "bore-gauge-tenths"));
/// assert!(ways.iter().all(|way| way.tool.id != "plastic-gauge-strip"));
/// ```
#[must_use]
pub fn which_could_settle(
    task: Task,
    tools: &[&'static Instrument],
    window: &Window,
    dangerous: DangerousSide,
) -> Vec<Way> {
    let mut able = ways(task, tools);
    able.retain(|way| way.best(window, dangerous).verdict == Verdict::Good);
    able
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tool::INSTRUMENTS;

    const THOU: f64 = 0.000_025_4;

    fn window(low: f64, high: f64) -> Window {
        Window::new(Some(low * THOU), Some(high * THOU)).unwrap()
    }

    #[test]
    fn a_narrow_window_leaves_the_surest_ways_and_a_wide_one_leaves_more() {
        let count = |window: &Window| {
            which_could_settle(
                Task::RunningClearance,
                INSTRUMENTS,
                window,
                DangerousSide::TooLittle,
            )
            .len()
        };
        let (narrow, wide) = (count(&window(1.5, 2.1)), count(&window(1.0, 4.0)));
        assert!(narrow > 0 && narrow < wide, "{narrow} {wide}");
        assert_eq!(count(&window(1.5, 1.6)), 0);
    }

    #[test]
    fn a_tool_set_on_the_journals_micrometer_does_not_count_that_ones_zero() {
        let clearance = ways(Task::RunningClearance, INSTRUMENTS);
        let find = |tool: &str, with: &str| {
            clearance
                .iter()
                .find(|way| way.tool.id == tool && way.with.is_some_and(|other| other.id == with))
                .unwrap()
                .give_or_take
                / THOU
        };
        // 0.15 and 0.1 of the gauge, 0.2 of the micrometer, two last digits of 0.029;
        // the micrometer's zero of 0.2 is not in it.
        let chain = find("bore-gauge-tenths", "outside-micrometer-tenths");
        assert!((chain - 0.2724).abs() < 0.001, "{chain}");
        // A caliper has a scale of its own: both zeros count.
        let caliper = find("caliper-inside", "outside-micrometer-tenths");
        assert!(caliper > (1.75_f64.powi(2) + 0.25 + 0.04 + 0.04).sqrt());
    }

    #[test]
    fn only_tools_that_are_there_are_named() {
        let strip: Vec<&'static Instrument> = INSTRUMENTS
            .iter()
            .copied()
            .filter(|tool| tool.id == "plastic-gauge-strip")
            .collect();
        let all = ways(Task::RunningClearance, &strip);
        assert_eq!(all.len(), 1);
        assert!(ways(Task::InsideSize, &strip).is_empty());
    }

    #[test]
    fn the_surest_way_comes_first() {
        for task in [Task::RunningClearance, Task::InsideSize, Task::OutsideSize] {
            let all = ways(task, INSTRUMENTS);
            assert!(
                all.windows(2)
                    .all(|pair| pair[0].give_or_take <= pair[1].give_or_take)
            );
        }
    }
}
