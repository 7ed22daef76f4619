//! Which tools could settle a window, before anything is measured.

use super::bench::Tool;
use super::instrument::{Instrument, Task};
use crate::measure::{Assessment, DangerousSide, Verdict, Window, best_chance_when_tried};

/// A way to measure something, and how sure a single go at it is.
#[derive(Clone, PartialEq, Debug)]
pub struct Way {
    /// The kind of tool that does it, or that measures the bore.
    pub tool: &'static Instrument,
    /// The kind of tool that measures the journal, or that the first is set or read on.
    pub with: Option<&'static Instrument>,
    /// One standard deviation of the result, SI units.
    pub give_or_take: f64,
    /// How well that is known: infinite unless a tool was tried out.
    pub degrees_of_freedom: f64,
    label: String,
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
    pub fn label(&self) -> &str {
        &self.label
    }

    /// The most favourable verdict that it could ever give.
    #[must_use]
    pub fn best(&self, window: &Window, dangerous: DangerousSide) -> Assessment {
        best_chance_when_tried(
            self.give_or_take,
            self.degrees_of_freedom,
            window,
            dangerous,
        )
    }

    fn of(tool: &Tool, with: Option<&Tool>, joined: &str, others: f64) -> Self {
        let own = tool.deviation(0.0);
        let give_or_take = own.hypot(others);
        let known =
            |tool: &Tool| (tool.repeat_at(0.0) / give_or_take).powi(4) / tool.degrees_of_freedom();
        // Welch and Satterthwaite (JCGM 100:2008, G.4.1).
        let sum = known(tool) + with.map_or(0.0, known);
        Self {
            tool: tool.instrument(),
            with: with.map(Tool::instrument),
            give_or_take,
            degrees_of_freedom: if sum > 0.0 { 1.0 / sum } else { f64::INFINITY },
            label: with.map_or_else(
                || tool.label().to_owned(),
                |other| {
                    joined
                        .replace("{}", &with_article(other))
                        .replace("[]", tool.label())
                },
            ),
        }
    }
}

/// "the outside micrometer …" of a kind of tool; an own tool by its bare name.
fn with_article(tool: &Tool) -> String {
    let label = tool.label();
    if label == tool.name() {
        label.to_owned()
    } else {
        format!("the {label}")
    }
}

/// Every way to do this with these tools, surest first. A running clearance is
/// measured at once or as the difference of a bore and a journal; a tool without
/// a scale of its own is set on the micrometer that also measures the journal,
/// so that the micrometer's zero cancels.
///
/// The tools are kinds of tool, or the builder's own [`Tool`]s.
#[must_use]
pub fn ways<T: Clone + Into<Tool>>(task: Task, tools: &[T]) -> Vec<Way> {
    let tools: Vec<Tool> = tools.iter().cloned().map(Into::into).collect();
    let able = |task: Task| tools.iter().filter(move |tool| tool.instrument().can(task));
    let mut all: Vec<Way> = able(task)
        .filter(|tool| !tool.instrument().compares)
        .map(|tool| Way::of(tool, None, "", 0.0))
        .collect();
    for tool in able(task).filter(|tool| tool.instrument().compares) {
        all.extend(
            able(Task::OutsideSize)
                .map(|other| Way::of(tool, Some(other), "[], set on {}", other.shared_zero())),
        );
    }
    if task == Task::RunningClearance {
        all.extend(differences(&tools));
    }
    all.sort_by(|a, b| a.give_or_take.total_cmp(&b.give_or_take));
    all
}

/// Every way to measure a hole and the shaft in it, the one less the other.
pub(super) fn differences(tools: &[Tool]) -> Vec<Way> {
    let able = |task: Task| tools.iter().filter(move |tool| tool.instrument().can(task));
    let mut all = Vec::new();
    for bore in able(Task::InsideSize) {
        all.extend(able(Task::OutsideSize).map(|journal| {
            if bore.instrument().compares {
                let joined = "[], set on {}, that measures the other part";
                Way::of(bore, Some(journal), joined, journal.fresh_deviation(0.0))
            } else {
                Way::of(bore, Some(journal), "[], and {}", journal.deviation(0.0))
            }
        }));
    }
    all
}

/// Every way to compare two readings of one tool: its zero drops out.
pub(super) fn spreads(tasks: &[Task], tools: &[Tool]) -> Vec<Way> {
    let able = |tool: &&Tool| tasks.iter().any(|task| tool.instrument().can(*task));
    let twice = std::f64::consts::SQRT_2;
    (tools.iter().filter(able))
        .map(|tool| Way {
            tool: tool.instrument(),
            with: None,
            give_or_take: tool.fresh_deviation(0.0) * twice,
            degrees_of_freedom: tool.degrees_of_freedom(),
            label: tool.label().to_owned(),
        })
        .collect()
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
pub fn which_could_settle<T: Clone + Into<Tool>>(
    task: Task,
    tools: &[T],
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
    use crate::tool::instruments::{BORE_GAUGE_TENTHS, OUTSIDE_MICROMETER_PROVED};

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
    fn a_tool_that_was_tried_out_counts_with_what_it_showed() {
        let tried = |degrees: f64| {
            let gauge = Tool::new("g", "my bore gauge", &BORE_GAUGE_TENTHS)
                .with_repeat(0.2 * THOU, degrees);
            [
                gauge,
                Tool::new("m", "my micrometer", &OUTSIDE_MICROMETER_PROVED),
            ]
        };
        let way = |degrees: f64| ways(Task::RunningClearance, &tried(degrees)).remove(0);
        assert_eq!(
            way(4.0).label(),
            "my bore gauge, set on my micrometer, that measures the other part"
        );
        // Known from five readings, it needs a wider window than known for sure.
        let settles = |degrees: f64| {
            let window = window(1.5, 2.25);
            !which_could_settle(
                Task::RunningClearance,
                &tried(degrees),
                &window,
                DangerousSide::TooLittle,
            )
            .is_empty()
        };
        assert!(settles(f64::INFINITY) && !settles(2.0));
        assert!(way(4.0).degrees_of_freedom > 4.0);
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
