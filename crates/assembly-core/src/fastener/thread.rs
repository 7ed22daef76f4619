//! A thread's sizes from its diameter and pitch.

use std::f64::consts::{FRAC_PI_4, PI};

use crate::measure::Estimate;

/// Height of the sharp triangle for each pitch: half the root of three.
const TRIANGLE: f64 = 0.866_025_403_784_438_6;

/// Which standard counts the stress area.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum System {
    /// ISO 68-1, ISO 724, ISO 898-1.
    Metric,
    /// ASME B1.1.
    Inch,
}

/// A thread of 60°.
#[derive(Clone, PartialEq, Debug)]
pub struct Thread {
    diameter: Estimate,
    pitch: Estimate,
    system: System,
}

impl Thread {
    /// A thread of this outside diameter and pitch, metres; `None` when the
    /// pitch is not a part of a third of the diameter at most.
    #[must_use]
    pub fn new(diameter: Estimate, pitch: Estimate, system: System) -> Option<Self> {
        let sound = pitch.value() > 0.0 && pitch.value() * 3.0 <= diameter.value();
        sound.then_some(Self {
            diameter,
            pitch,
            system,
        })
    }

    /// A thread by its name: `M10`, `M10x1.25`, `7/16-14`, `1/2-20 UNF`,
    /// `No. 10-24`, `1 1/8-7`. A metric name without a pitch is of the coarse
    /// series (ISO 261, to M39). `None` when it is no such name.
    ///
    /// ```
    /// use assembly_core::fastener::thread::Thread;
    /// let head_bolt = Thread::named("7/16-14").unwrap();
    /// // ASME B1.1: 0.1063 in².
    /// assert!((head_bolt.stress_area().value() / 0.0254_f64.powi(2) - 0.1063).abs() < 5e-5);
    /// assert!(Thread::named("M10").is_some() && Thread::named("M10.3").is_none());
    /// ```
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        let name = name.trim();
        if let Some(metric) = name.strip_prefix(['M', 'm']) {
            let (diameter, pitch) = match metric.split_once(['x', 'X', '×']) {
                Some((diameter, pitch)) => (number(diameter)?, number(pitch)?),
                None => {
                    let diameter = number(metric)?;
                    (diameter, coarse_pitch(diameter)?)
                }
            };
            let millimetres = |value: f64| Estimate::exact(value * 1e-3);
            return Self::new(millimetres(diameter), millimetres(pitch), System::Metric);
        }
        let plain = name.split_once(" UN").map_or(name, |(plain, _)| plain);
        let (size, threads) = plain.rsplit_once('-')?;
        let inches = |value: f64| Estimate::exact(value * 0.0254);
        let threads = number(threads)?;
        if threads <= 0.0 {
            return None;
        }
        Self::new(
            inches(inch_size(size)?),
            inches(1.0 / threads),
            System::Inch,
        )
    }

    /// Outside diameter.
    #[must_use]
    pub const fn diameter(&self) -> &Estimate {
        &self.diameter
    }

    /// Pitch.
    #[must_use]
    pub const fn pitch(&self) -> &Estimate {
        &self.pitch
    }

    fn less(&self, pitches: f64) -> Estimate {
        &self.diameter - &self.pitch * pitches
    }

    /// Basic pitch diameter: outside less 3/4 of the triangle (ISO 68-1, ASME B1.1).
    #[must_use]
    pub fn pitch_diameter(&self) -> Estimate {
        self.less(0.75 * TRIANGLE)
    }

    /// Basic minor diameter of the nut thread: outside less 5/4 of the triangle.
    #[must_use]
    pub fn nut_minor_diameter(&self) -> Estimate {
        self.less(1.25 * TRIANGLE)
    }

    /// Root of the bolt's rounded thread: outside less 17/12 of the triangle
    /// (ISO 724 and DIN 13; the older external minor diameter of ASME B1.1).
    #[must_use]
    pub fn root_diameter(&self) -> Estimate {
        self.less(17.0 / 12.0 * TRIANGLE)
    }

    /// The area that carries. ISO 898-1, 9.1.6: of the mean of pitch and root
    /// diameter; ASME B1.1, appendix B: of the outside less 0.9743 pitches.
    #[must_use]
    pub fn stress_area(&self) -> Estimate {
        let carries = match self.system {
            System::Metric => (self.pitch_diameter() + self.root_diameter()) / 2.0,
            System::Inch => self.less(0.9743),
        };
        carries.square() * FRAC_PI_4
    }

    /// The area that carries as the strength tables have it: ISO 898-1 rounds it
    /// to three figures before it is multiplied with a stress.
    #[must_use]
    pub fn nominal_stress_area(&self) -> Estimate {
        let area = self.stress_area();
        if self.system == System::Inch || area.value() <= 0.0 {
            return area;
        }
        let millimetres = area.value() * 1e6;
        let step = libm::pow(10.0, libm::floor(libm::log10(millimetres)) - 2.0);
        let rounded = libm::round(millimetres / step) * step * 1e-6;
        let off = rounded - area.value();
        area + off
    }

    /// The area at the root: metric of the root diameter, inch of the outside
    /// less one and a half triangles, as the tables of minor area have it.
    #[must_use]
    pub fn root_area(&self) -> Estimate {
        let root = match self.system {
            System::Metric => self.root_diameter(),
            System::Inch => self.less(1.5 * TRIANGLE),
        };
        root.square() * FRAC_PI_4
    }

    /// The tangent of the thread's slope at its pitch diameter.
    #[must_use]
    pub fn slope(&self) -> Estimate {
        &self.pitch / (self.pitch_diameter() * PI)
    }
}

fn number(text: &str) -> Option<f64> {
    let text = text.trim();
    let plain = text.chars().all(|one| one.is_ascii_digit() || one == '.');
    let value: f64 = text.parse().ok()?;
    (plain && value > 0.0).then_some(value)
}

/// `7/16`, `1 1/8`, `0.4375`, `No. 10`, inches.
fn inch_size(text: &str) -> Option<f64> {
    let text = text.trim();
    if let Some(gauge) = text.strip_prefix("No.").or_else(|| text.strip_prefix('#')) {
        // ASME B1.1: 0.060 in and 0.013 in more for each number.
        let gauge = gauge.trim();
        let number = if gauge == "0" { 0.0 } else { number(gauge)? };
        return (number <= 12.0).then_some(0.060 + 0.013 * number);
    }
    let (whole, part) = match text.split_once(' ') {
        Some((whole, part)) => (number(whole)?, part),
        None => (0.0, text),
    };
    let part = match part.split_once('/') {
        Some((over, under)) => number(over)? / number(under)?,
        None => number(part)?,
    };
    Some(whole + part)
}

/// The coarse series of ISO 261: diameter and pitch in millimetres.
const COARSE: [(f64, f64); 19] = [
    (3.0, 0.5),
    (4.0, 0.7),
    (5.0, 0.8),
    (6.0, 1.0),
    (7.0, 1.0),
    (8.0, 1.25),
    (10.0, 1.5),
    (12.0, 1.75),
    (14.0, 2.0),
    (16.0, 2.0),
    (18.0, 2.5),
    (20.0, 2.5),
    (22.0, 2.5),
    (24.0, 3.0),
    (27.0, 3.0),
    (30.0, 3.5),
    (33.0, 3.5),
    (36.0, 4.0),
    (39.0, 4.0),
];

fn coarse_pitch(diameter: f64) -> Option<f64> {
    COARSE
        .iter()
        .find_map(|(size, pitch)| ((size - diameter).abs() < 1e-9).then_some(*pitch))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    // ISO 724 table for M10: d2 9.026, D1 8.376, d3 8.160; ISO 898-1: 58.0 mm² (from memory).
    #[test]
    fn a_metric_thread_has_the_sizes_of_the_standard() {
        let thread = Thread::named("M10").unwrap();
        let mm = |one: Estimate| one.value() * 1e3;
        assert!((mm(thread.pitch_diameter()) - 9.026).abs() < 5e-4);
        assert!((mm(thread.nut_minor_diameter()) - 8.376).abs() < 5e-4);
        assert!((mm(thread.root_diameter()) - 8.160).abs() < 5e-4);
        assert!((thread.stress_area().value() * 1e6 - 58.0).abs() < 0.05);
    }

    // ISO 898-1 table 4: M6 20.1, M14 115, M27 459 mm².
    #[test]
    fn the_tables_round_the_area_to_three_figures() {
        for (name, printed) in [("M6", 20.1), ("M14", 115.0), ("M27", 459.0)] {
            let area = Thread::named(name).unwrap().nominal_stress_area().value();
            assert!((area * 1e6 - printed).abs() < 1e-9, "{name}");
        }
    }

    #[test]
    fn a_thread_is_read_by_its_name_or_not_at_all() {
        let size = |name: &str| {
            let thread = Thread::named(name)?;
            Some((thread.diameter().value(), thread.pitch().value()))
        };
        let close = |name: &str, diameter: f64, pitch: f64| {
            let (d, p) = size(name).unwrap();
            assert!(
                (d - diameter).abs() < 1e-12 && (p - pitch).abs() < 1e-12,
                "{name}"
            );
        };
        close("M8x1", 0.008, 0.001);
        close(" m12 ×1.25", 0.012, 0.00125);
        close("1/2-20 UNF", 0.0127, 0.00127);
        close("1 1/8-7", 1.125 * 0.0254, 0.0254 / 7.0);
        close("No. 10-24", 0.190 * 0.0254, 0.0254 / 24.0);
        for name in [
            "",
            "M",
            "M11",
            "M10x",
            "M10x-1",
            "M10x9",
            "7/16",
            "7/0-14",
            "a-14",
            "1/2-0",
            "No. 20-20",
            "M1e3",
        ] {
            assert!(size(name).is_none(), "{name}");
        }
    }

    proptest! {
        #[test]
        fn the_diameters_lie_in_their_order(diameter in 0.002..0.05_f64, part in 0.02..0.33_f64, inch in any::<bool>()) {
            let system = if inch { System::Inch } else { System::Metric };
            let thread = Thread::new(Estimate::exact(diameter), Estimate::exact(diameter * part), system).unwrap();
            let (root, nut, pitch) = (
                thread.root_diameter().value(),
                thread.nut_minor_diameter().value(),
                thread.pitch_diameter().value(),
            );
            prop_assert!(0.0 < root && root < nut && nut < pitch && pitch < diameter);
            prop_assert!(thread.root_area().value() < thread.stress_area().value());
        }

        #[test]
        fn no_name_makes_it_panic(name in ".{0,12}") {
            let _ = Thread::named(&name);
        }
    }
}
