//! What is known of a kind of measuring tool.

use crate::quantity::Kind;

/// What a tool can be asked to measure.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug)]
#[non_exhaustive]
pub enum Task {
    /// A size from outside: a journal, a skirt, a shell's wall.
    OutsideSize,
    /// A size from inside: a bore.
    InsideSize,
    /// A depth or a step: deck to piston, liner stand-out.
    Depth,
    /// A gap that a blade fits: ring gap, side clearance.
    Gap,
    /// A movement: end float, run-out, lift.
    Movement,
    /// How flat a face is.
    Flatness,
    /// A running clearance at once, without bore and journal.
    RunningClearance,
    /// A clearance that is squeezed into something soft: valve to piston, pickup to pan.
    SqueezedGap,
    /// How much a bolt gets longer.
    Stretch,
    /// Crank or cam angle.
    CrankAngle,
    /// Turning a fastener by an angle.
    TurnAngle,
    /// A volume of liquid.
    Volume,
    /// A spring's force.
    SpringForce,
    /// A tightening torque.
    Torque,
    /// Oil pressure.
    Pressure,
    /// A part's temperature.
    Temperature,
}

/// How far one reading strays, as one standard deviation.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Spread {
    /// The same at every reading, SI units.
    Always(f64),
    /// So much of the reading.
    OfReading(f64),
}

impl Spread {
    /// One standard deviation of a reading of this value, SI units.
    #[must_use]
    pub const fn at(self, value: f64) -> f64 {
        match self {
            Self::Always(deviation) => deviation,
            Self::OfReading(part) => part * value.abs(),
        }
    }
}

/// A kind of measuring tool in the hands of one careful person at home.
///
/// The figures are estimates from common practice, of one standard deviation
/// each and without a source. They are there to start from: a builder replaces
/// them by what the own tool does.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Instrument {
    /// Stable name.
    pub id: &'static str,
    /// What it is called at the bench, in full.
    pub label: &'static str,
    /// Its short name inside a sentence, without an article.
    pub name: &'static str,
    /// What kind of quantity it reads.
    pub kind: Kind,
    /// What it can be asked to measure.
    pub tasks: &'static [Task],
    /// Feel and reading: fresh in every reading.
    pub repeat: Spread,
    /// Its zero: shared by all readings of one setting. SI units.
    pub shared_zero: f64,
    /// Carrying a size into it: shared by all readings of one setting. SI units.
    pub setting_transfer: f64,
    /// The finest step of its scale, SI units.
    pub graduation: f64,
    /// Whether it has no scale of its own for sizes, so that it is set or read
    /// on another tool and takes that tool's zero error along.
    pub compares: bool,
    /// The way it usually fools people.
    pub trap: &'static str,
}

impl Instrument {
    /// Whether it can be asked this.
    #[must_use]
    pub fn can(&self, task: Task) -> bool {
        self.tasks.contains(&task)
    }

    /// What is fresh in each reading of this value: feel and the last digit.
    #[must_use]
    pub fn fresh_deviation(&self, value: f64) -> f64 {
        self.repeat
            .at(value)
            .hypot(rounding_deviation(self.graduation))
    }

    /// One standard deviation of a single reading of this value, all of the
    /// tool's own causes together.
    #[must_use]
    pub fn deviation(&self, value: f64) -> f64 {
        self.fresh_deviation(value)
            .hypot(self.shared_zero)
            .hypot(self.setting_transfer)
    }
}

/// One standard deviation of not knowing more digits than a step of this size:
/// anything within the step is as likely (JCGM 100:2008, 4.3.7).
#[must_use]
pub fn rounding_deviation(step: f64) -> f64 {
    step.abs() / libm::sqrt(12.0)
}
