//! What is known of a reading before it is typed, as a probability density.

use super::{Scale, Sizes};

/// What is known of a reading before it is typed. All numbers are SI units; what
/// is not known stays empty or zero.
///
/// The nearest knowledge counts most: readings of the same place, then the
/// place's reading before, then the places beside it, then the standard size.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Expectation {
    /// The standard size.
    pub nominal: Option<f64>,
    /// How far ordinary parts, new or worn, lie from the standard size: one
    /// standard deviation.
    pub part_spread: f64,
    /// The other sizes the part may have been repaired to.
    pub sizes: Sizes,
    /// Readings of the same measure at other places of the engine.
    pub neighbours: Vec<f64>,
    /// How far ordinary places differ from each other: one standard deviation.
    pub place_spread: f64,
    /// The place's last reading from an earlier sitting.
    pub previous: Option<f64>,
    /// How much the place may honestly have changed since: one standard deviation.
    pub change_spread: f64,
    /// Other readings of this place in this sitting.
    pub repeats: Vec<f64>,
    /// How far one reading of the instrument may be off: one standard deviation.
    pub reading_spread: f64,
    /// How the instrument makes its figures.
    pub scale: Scale,
}

/// One piece of knowledge: about where the reading should lie.
struct Belief {
    centre: f64,
    spread: f64,
    /// How surely it rules, given that it is there.
    trust: f64,
}

/// How surely each kind of knowledge rules; the rest goes to the next kind.
/// Estimates of the trade (common practice, no source).
const TRUST_REPEAT: f64 = 0.97;
const TRUST_PREVIOUS: f64 = 0.93;
const TRUST_NEIGHBOURS: f64 = 0.90;
/// The last kind has nothing behind it.
const TRUST_NOMINAL: f64 = 1.0;
/// The share of readings that spread wider than they should, and how much wider.
const CARELESS: (f64, f64) = (0.10, 4.0);
/// The share of parts that are like nothing expected.
const STRANGE: f64 = 0.005;

impl Expectation {
    /// The density of an honest reading at a value, per SI unit. `step` is the
    /// last digit's step: nothing is known more finely than it.
    pub(super) fn density(&self, value: f64, step: f64) -> f64 {
        let beliefs = self.beliefs(step);
        let Some(first) = beliefs.first() else {
            // Nothing known: every value is as good as any other.
            return 1.0;
        };
        // A part like nothing expected: anywhere about its own size.
        let width = first.centre.abs().max(50.0 * first.spread);
        let away = (value - first.centre) / width;
        let anywhere = 1.0 / (std::f64::consts::PI * width * (1.0 + away * away));
        (1.0 - STRANGE) * fitting(&beliefs, value) + STRANGE * anywhere
    }

    /// The density of a reading that fits what is known: parts like nothing
    /// expected are left out. A slip explains a reading only when it leads there.
    pub(super) fn fitting_density(&self, value: f64, step: f64) -> f64 {
        fitting(&self.beliefs(step), value)
    }

    /// The density of a reading of a part repaired to another size.
    pub(super) fn density_at_size(&self, value: f64, step: f64, size: f64) -> f64 {
        self.nominal.map_or(0.0, |nominal| {
            normal(value, nominal + size, self.spread(self.part_spread, step))
        })
    }

    /// Whether anything is known at all.
    pub(super) fn is_empty(&self) -> bool {
        self.beliefs(0.0).is_empty()
    }

    /// Nearest first.
    fn beliefs(&self, step: f64) -> Vec<Belief> {
        let mut beliefs = Vec::new();
        let shrink = |readings: &[f64]| (1.0 + 1.0 / readings.len() as f64).sqrt();
        if let Some(centre) = median(&self.repeats) {
            beliefs.push(Belief {
                centre,
                spread: self.spread(0.0, step) * shrink(&self.repeats),
                // Two earlier readings are rarely both wrong.
                trust: 1.0 - (1.0 - TRUST_REPEAT) / self.repeats.len() as f64,
            });
        }
        if let Some(centre) = self.previous {
            let change = self.change_spread.hypot(self.reading_spread);
            beliefs.push(Belief {
                centre,
                spread: self.spread(change, step),
                trust: TRUST_PREVIOUS,
            });
        }
        if let Some(centre) = median(&self.neighbours) {
            beliefs.push(Belief {
                centre,
                spread: self.spread(self.place_spread, step) * shrink(&self.neighbours),
                trust: TRUST_NEIGHBOURS,
            });
        }
        if let Some(centre) = self.nominal {
            beliefs.push(Belief {
                centre,
                spread: self.spread(self.part_spread, step),
                trust: TRUST_NOMINAL,
            });
        }
        beliefs.retain(|belief| belief.centre.is_finite() && belief.spread > 0.0);
        beliefs
    }

    /// One reading's spread together with another cause and the rounding to a step.
    fn spread(&self, other: f64, step: f64) -> f64 {
        let rounding = step / 12.0_f64.sqrt();
        self.reading_spread.hypot(other).hypot(rounding)
    }
}

/// Each belief rules as far as it is trusted, the last one over all that is left.
fn fitting(beliefs: &[Belief], value: f64) -> f64 {
    let (share, wider) = CARELESS;
    let mut left = 1.0;
    let mut sum = 0.0;
    for (index, belief) in beliefs.iter().enumerate() {
        let near = normal(value, belief.centre, belief.spread);
        let far = normal(value, belief.centre, belief.spread * wider);
        let is_last = index + 1 == beliefs.len();
        let weight = if is_last { left } else { left * belief.trust };
        sum += weight * ((1.0 - share) * near + share * far);
        left -= weight;
    }
    sum
}

fn normal(value: f64, centre: f64, spread: f64) -> f64 {
    let away = (value - centre) / spread;
    libm::exp(-0.5 * away * away) / (spread * (2.0 * std::f64::consts::PI).sqrt())
}

/// The middle of some readings: one slip among them doesn't move it far.
fn median(readings: &[f64]) -> Option<f64> {
    let mut sorted: Vec<f64> = readings
        .iter()
        .copied()
        .filter(|one| one.is_finite())
        .collect();
    sorted.sort_unstable_by(f64::total_cmp);
    let upper = *sorted.get(sorted.len() / 2)?;
    let lower = *sorted.get(sorted.len().saturating_sub(1) / 2)?;
    Some(lower + (upper - lower) / 2.0)
}
