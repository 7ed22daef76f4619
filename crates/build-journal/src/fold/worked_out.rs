//! What stands behind a result: the mean of each place, how it was worked out
//! with the numbers, and what would settle it.

use assembly_core::measure::{Estimate, Verdict};
use assembly_core::quantity::{Typed, Unit, show};
use assembly_core::tool::{Got, INSTRUMENTS, Settling, Task};
use build_plan::measure::{
    Found, Over, Per, ROD_BEARING_BORE, ROD_JOURNAL_DIAMETER, ROD_OIL_CLEARANCE,
};
use build_plan::{At, Direction, Measure, Place, Station};

use super::bench::Bench;
use super::build::Build;
use super::fit::Fit;
use super::readings::Taken;
use super::register::{Register, Role};

/// A place with what was read there.
#[derive(Clone, PartialEq, Debug)]
pub struct ReadAt {
    /// The place.
    pub place: Place,
    /// The readings that count, as typed.
    pub typed: Vec<Typed>,
    /// Their mean, with its errors; of a needle, the size it stands for.
    pub mean: Estimate,
}

impl Build {
    /// What was read of a measure at each place of a part, in the order of the
    /// places; readings without a give-or-take are left out.
    #[must_use]
    pub fn read_at(&self, measure: &'static Measure, at: At) -> Vec<ReadAt> {
        let readings = || self.readings.of(measure, at);
        let with_role = readings().map(|taken| (Role::Itself, taken));
        let bench = Bench::of(self);
        let register = Register::of(with_role, &bench, &self.readings);
        let mut all: Vec<ReadAt> = register
            .means(Role::Itself)
            .map(|(place, mean)| ReadAt {
                place,
                typed: readings()
                    .filter(|taken| taken.place == Some(place))
                    .filter_map(Taken::counting)
                    .cloned()
                    .collect(),
                mean: mean.estimate().clone(),
            })
            .collect();
        let order = measure.spots.on(at);
        all.sort_by_key(|one| order.iter().position(|place| *place == one.place));
        all
    }

    /// The parts of the measures that a result is worked out from.
    fn behind(&self, measure: &'static Measure, at: At) -> Vec<(&'static Measure, At)> {
        let from: Vec<&'static Measure> = if measure.id == ROD_OIL_CLEARANCE.id {
            vec![&ROD_BEARING_BORE, &ROD_JOURNAL_DIAMETER]
        } else {
            match measure.found {
                Found::Difference { of, less } => vec![of, less],
                Found::Spread { of, .. } => vec![of],
                Found::Read | Found::WorkedOut { .. } => Vec::new(),
            }
        };
        let Some(described) = &self.engine else {
            return Vec::new();
        };
        let engine = &described.engine;
        let beside = |one: &Measure| match (one.spots.per, at) {
            (Per::Crankpin, At::Rod(cylinder)) => vec![At::Crankpin(engine.crankpin_of(cylinder))],
            (per, _) if per.includes(at) => vec![at],
            (per, _) => {
                let parts = per.parts(engine).into_iter();
                parts.filter(|part| part.concerns(at, engine)).collect()
            }
        };
        from.into_iter()
            .flat_map(|one| beside(one).into_iter().map(move |part| (one, part)))
            .collect()
    }

    /// How a result was worked out, with the numbers: what was read at each
    /// place, and what was made of it. Lengths and the like in this unit; a
    /// large size in the unit it was typed in.
    #[must_use]
    pub fn workings(
        &self,
        measure: &'static Measure,
        at: At,
        (least, greatest): (&Estimate, &Estimate),
        unit: &'static Unit,
    ) -> Vec<String> {
        let behind = self.behind(measure, at);
        let own = self.read_at(measure, at);
        let from: Vec<(&'static Measure, At)> = if own.is_empty() {
            behind
        } else {
            vec![(measure, at)]
        };
        let mut lines = Vec::new();
        for (one, part) in &from {
            let several_parts = from
                .iter()
                .any(|(other, it)| other.id == one.id && it != part);
            let read = self.read_at(one, *part);
            for read in &read {
                let place = if several_parts || read.place.station.is_none() {
                    read.place.to_string()
                } else {
                    on_its_part(&read.place)
                };
                lines.push(format!("{}, {place}: {}", one.label, read_words(read)));
            }
        }
        if lines.is_empty() {
            return lines;
        }
        let say = |value: &Estimate| show(value.value(), Some(value.deviation()), unit).to_string();
        lines.push(match measure.found {
            Found::Difference { of, less } => format!(
                "least = smallest {} − largest {} = {}",
                of.label,
                less.label,
                say(least)
            ),
            Found::Spread { over, .. } => format!("{} = {}", spread_words(over), say(greatest)),
            _ if measure.id == ROD_OIL_CLEARANCE.id && own.is_empty() => format!(
                "at each side of the oil hole: bore square to the joint − largest journal; least {}",
                say(least)
            ),
            _ if least.value() == greatest.value() => format!("the mean: {}", say(least)),
            _ => format!("least {}", say(least)),
        });
        if least.value() != greatest.value() {
            lines.push(format!("greatest {}", say(greatest)));
        }
        lines
    }

    /// What would settle a result that is too close to call; nothing when it is
    /// not, or when there is no telling.
    #[must_use]
    pub fn settling(&self, fit: &Fit) -> Option<Settling> {
        if fit.standing.verdict() != Some(Verdict::TooCloseToCall) {
            return None;
        }
        let window = fit.limits.first()?.window.as_ref().ok()?;
        let (least, greatest) = fit.extent.as_ref()?;
        let got = got(fit.measure)?;
        let each = self.readings_of_each_place(fit.measure, fit.at);
        let bench = Bench::of(self);
        Settling::of(
            (least.estimate(), greatest.estimate()),
            each,
            &fit.sources,
            (window, fit.measure.dangerous),
            got,
            bench.known(),
        )
    }

    /// The least number of readings that any place behind a result has.
    fn readings_of_each_place(&self, measure: &'static Measure, at: At) -> usize {
        let own = self.read_at(measure, at);
        let all = if own.is_empty() {
            let behind = self.behind(measure, at).into_iter();
            behind
                .flat_map(|(one, part)| self.read_at(one, part))
                .collect()
        } else {
            own
        };
        all.iter().map(|one| one.typed.len()).min().unwrap_or(1)
    }
}

/// How a measure is got at; none for what no single tool reads.
fn got(measure: &'static Measure) -> Option<Got> {
    let can = |one: &Measure, task: Task| one.tasks().contains(&task);
    match measure.found {
        Found::Read => Some(Got::AtOnce(measure.tasks())),
        Found::Difference { of, less } => (can(of, Task::InsideSize)
            && can(less, Task::OutsideSize))
        .then_some(Got::HoleLessShaft),
        Found::Spread { of, .. } => Some(Got::Difference(of.tasks())),
        Found::WorkedOut { .. } => {
            let read = INSTRUMENTS
                .iter()
                .any(|kind| measure.tasks().iter().any(|task| kind.can(*task)));
            read.then(|| Got::AtOnce(measure.tasks()))
        }
    }
}

fn spread_words(over: Over) -> &'static str {
    match over {
        Over::Stations => "largest mean of a station − smallest",
        Over::StationsInLine => "in the direction that differs most, largest − smallest",
        Over::Directions => "at the station that differs most, largest − smallest",
        Over::Neighbours => "the largest step between two that lie side by side",
    }
}

fn on_its_part(place: &Place) -> String {
    let words = [
        place.station.map(Station::label),
        place.direction.map(Direction::label),
    ];
    let words: Vec<&str> = words.into_iter().flatten().collect();
    words.join(", ")
}

fn read_words(read: &ReadAt) -> String {
    let typed: Vec<String> = read.typed.iter().map(ToString::to_string).collect();
    let unit = read.typed.first().map(Typed::unit);
    match (typed.as_slice(), unit) {
        ([one], _) if !stands_for_another(read) => one.clone(),
        (_, Some(unit)) => {
            let mean = show(read.mean.value(), Some(read.mean.deviation()), unit);
            format!("{}; mean {mean}", typed.join(", "))
        }
        (_, None) => String::new(),
    }
}

/// Whether a reading is a needle's, so that its size is another number.
fn stands_for_another(read: &ReadAt) -> bool {
    read.typed
        .first()
        .is_some_and(|typed| (typed.si() - read.mean.value()).abs() > 1e-9)
}
