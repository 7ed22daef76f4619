//! An axis: from where to where, in which unit, and its ticks.

use assembly_core::quantity::Unit;

/// More ticks than this run into each other on a phone.
const MOST_TICKS: f64 = 7.0;

/// An axis. Its ends are SI.
#[derive(Clone, Copy, Debug)]
pub struct Axis {
    /// What is along it.
    pub label: &'static str,
    /// The unit of its numbers.
    pub unit: &'static Unit,
    /// Where it begins.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
}

impl Axis {
    /// From nothing to somewhat above the greatest of these. What is no number is
    /// passed over.
    #[must_use]
    pub fn up_to(
        label: &'static str,
        unit: &'static Unit,
        all: impl Iterator<Item = f64>,
        at_least: f64,
    ) -> Self {
        let top = all.filter(|one| one.is_finite()).fold(at_least, f64::max);
        Self {
            label,
            unit,
            from: 0.0,
            to: 1.05 * top,
        }
    }

    /// Where a value lies, from 0 at the beginning to 1 at the end; what lies beyond
    /// an end is put on it.
    #[must_use]
    pub fn part(&self, value: f64) -> f64 {
        let part = (value - self.from) / (self.to - self.from);
        if part.is_finite() {
            part.clamp(0.0, 1.0)
        } else {
            0.0
        }
    }

    /// Ticks at round numbers of the unit: where, and what is written there.
    #[must_use]
    pub fn ticks(&self) -> Vec<(f64, String)> {
        let (from, to) = (self.unit.from_si(self.from), self.unit.from_si(self.to));
        let span = to - from;
        if !(span > 0.0 && span.is_finite()) {
            return Vec::new();
        }
        let raw = span / MOST_TICKS;
        let decade = 10_f64.powf(raw.log10().floor());
        let step = [1.0, 2.0, 5.0, 10.0]
            .map(|times| times * decade)
            .into_iter()
            .find(|step| *step >= raw * 0.999)
            .unwrap_or(10.0 * decade);
        let digits = if step >= 0.999 {
            0
        } else {
            (-step.log10().floor()) as usize
        };
        let first = (from / step - 1e-9).ceil();
        let count = ((to / step + 1e-9).floor() - first).clamp(0.0, 20.0) as usize;
        (0..=count)
            .map(|at| (first + at as f64) * step)
            .map(|number| (self.unit.to_si(number), format!("{number:.digits$}")))
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use assembly_core::quantity::unit;

    fn axis(symbol: &str, from: f64, to: f64) -> Axis {
        let unit = unit(symbol).unwrap();
        Axis {
            label: "",
            unit,
            from: unit.to_si(from),
            to: unit.to_si(to),
        }
    }

    #[test]
    fn ticks_stand_on_round_numbers_and_are_few() {
        for (symbol, from, to, first, second) in [
            ("psi", 0.0, 63.0, "0", "10"),
            ("bar", 0.0, 4.4, "0", "1"),
            ("rpm", 500.0, 6000.0, "1000", "2000"),
            ("thou", 0.9, 4.2, "1.0", "1.5"),
            ("µm", 0.0, 6.0, "0", "1"),
        ] {
            let ticks = axis(symbol, from, to).ticks();
            assert!((3..=9).contains(&ticks.len()), "{symbol} {ticks:?}");
            assert_eq!(ticks[0].1, first, "{symbol}");
            assert_eq!(ticks[1].1, second, "{symbol}");
        }
    }

    #[test]
    fn what_lies_beyond_is_put_on_the_edge_and_nothing_is_lost_in_nothing() {
        let axis = axis("psi", 0.0, 60.0);
        assert_eq!(axis.part(-1.0), 0.0);
        assert_eq!(axis.part(1e9), 1.0);
        assert_eq!(axis.part(f64::NAN), 0.0);
        let flat = Axis { to: 0.0, ..axis };
        assert!(flat.ticks().is_empty());
        assert_eq!(flat.part(3.0), 0.0);
    }
}
