//! The torque wrenches at the bench: where a torque lies on each, how near to
//! one of its marks, and which to take for a lap.

use crate::fastener::adapter::Adapter;
use crate::fastener::wrench::{FROM, Place, Scale, UP_TO};

/// What is set between two marks may be off by this share of it and still be as
/// good as the wrench itself: 4 % is the deviation that ISO 6789 allows a click
/// wrench above 10 N·m. From memory.
pub const FINE: f64 = 0.04;

/// A torque wrench as it is used.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Wrench {
    scale: Scale,
    step: Option<f64>,
    adapter: Option<Adapter>,
}

/// How a torque lies on a wrench.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Lies {
    /// In which part of its scale.
    pub place: Place,
    /// What the wrench is set to, newton metres: the torque itself but for an
    /// adapter.
    pub set: f64,
    /// What it is set to, as a share of its highest mark.
    pub share: f64,
    /// How far the nearest mark is from what it is set to, as a share of that;
    /// none when the distance of its marks is not known.
    pub off_mark: Option<f64>,
}

impl Lies {
    /// Whether its marks are too far apart to set this torque by.
    #[must_use]
    pub fn is_coarse(&self) -> bool {
        self.off_mark.is_some_and(|off| off > FINE)
    }
}

impl Wrench {
    /// A wrench with the distance of its marks in newton metres, when it is
    /// known, and what is on it. A distance that is none is taken as not known.
    #[must_use]
    pub fn new(scale: Scale, step: Option<f64>, adapter: Option<Adapter>) -> Self {
        Self {
            scale,
            step: step.filter(|step| step.is_finite() && *step > 0.0),
            adapter,
        }
    }

    /// How this torque at the bolt lies on it. Its marks are counted from the
    /// lowest.
    #[must_use]
    pub fn lies(&self, torque: f64) -> Lies {
        let set = (self.adapter).map_or(torque, |adapter| adapter.set_for(torque));
        let off_mark = self.step.map(|step| {
            let marks = (set - self.scale.low()) / step;
            let off = (marks - libm::round(marks)).abs() * step / set;
            if off.is_finite() { off } else { 0.0 }
        });
        Lies {
            place: self.scale.place(set),
            set,
            share: set / self.scale.high(),
            off_mark,
        }
    }
}

/// The wrench to take for a torque, counted from nothing: one that has it in its
/// useful band and can be set to it by its marks, nearest to the middle of the
/// band; else one with coarse marks, else one that has it high, else low.
/// `None` when none can be set to it.
///
/// ```
/// use assembly_core::fastener::wrench::Scale;
/// use assembly_core::tightening::wrenches::{Wrench, best};
/// let [long, short] = [(40.0, 200.0), (5.0, 25.0)]
///     .map(|(low, high)| Wrench::new(Scale::new(low, high).unwrap(), None, None));
/// assert_eq!(best(20.0, &[long, short]), Some(1));
/// assert_eq!(best(120.0, &[long, short]), Some(0));
/// assert_eq!(best(300.0, &[long, short]), None);
/// ```
#[must_use]
pub fn best(torque: f64, wrenches: &[Wrench]) -> Option<usize> {
    let middle = f64::midpoint(FROM, UP_TO);
    let ranked = wrenches.iter().enumerate().filter_map(|(at, wrench)| {
        let lies = wrench.lies(torque);
        let rank = match lies.place {
            Place::Useful => u8::from(lies.is_coarse()),
            Place::High => 2,
            Place::TooLow => 3,
            Place::OffTheScale => return None,
        };
        Some((rank, (lies.share - middle).abs(), at))
    });
    ranked
        .min_by(|one, other| one.0.cmp(&other.0).then(one.1.total_cmp(&other.1)))
        .map(|(_, _, at)| at)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn wrench(low: f64, high: f64, step: Option<f64>) -> Wrench {
        Wrench::new(Scale::new(low, high).unwrap(), step, None)
    }

    #[test]
    fn of_two_useful_ones_the_one_whose_marks_it_can_be_set_by_is_taken() {
        // 33 on marks 10 apart from 20: 3 from the mark, a share of 3 ÷ 33.
        let coarse = wrench(20.0, 60.0, Some(10.0));
        let lies = coarse.lies(33.0);
        assert!((lies.off_mark.unwrap() - 3.0 / 33.0).abs() < 1e-12 && lies.is_coarse());
        let fine = wrench(30.0, 150.0, Some(1.0));
        assert_eq!(best(33.0, &[coarse, fine]), Some(1));
        // On a mark the first is nearer to the middle of its scale.
        assert!(!coarse.lies(30.0).is_coarse());
        assert_eq!(best(30.0, &[coarse, fine]), Some(0));
        // Marks that nobody counted are no reason against it.
        assert_eq!(best(33.0, &[wrench(20.0, 60.0, None), fine]), Some(0));
        assert_eq!(wrench(20.0, 60.0, Some(0.0)).lies(33.0).off_mark, None);
    }

    #[test]
    fn an_adapter_counts_by_what_is_set() {
        // The crowfoot points back: 60 at the bolt is 240 on the wrench.
        let back = Adapter::new(1.0, 0.75, std::f64::consts::PI).unwrap();
        let bent = Wrench::new(Scale::new(40.0, 200.0).unwrap(), None, Some(back));
        let lies = bent.lies(60.0);
        assert_eq!(lies.place, Place::OffTheScale);
        assert!((lies.set - 240.0).abs() < 1e-9 && (lies.share - 1.2).abs() < 1e-9);
        assert_eq!(best(60.0, &[bent]), None);
    }

    proptest! {
        #[test]
        fn one_that_fits_is_never_passed_over_for_one_that_does_not(
            torque in 1.0..300.0_f64,
            all in prop::collection::vec((5.0..400.0_f64, prop::option::of(0.1..20.0_f64)), 1..6),
        ) {
            let all: Vec<Wrench> = all
                .into_iter()
                .map(|(high, step)| wrench(high / 20.0, high, step))
                .collect();
            let fits = |one: &Wrench| {
                let lies = one.lies(torque);
                lies.place == Place::Useful && !lies.is_coarse()
            };
            let can = |one: &Wrench| one.lies(torque).place != Place::OffTheScale;
            match best(torque, &all) {
                Some(at) => {
                    prop_assert!(can(&all[at]));
                    prop_assert!(fits(&all[at]) || !all.iter().any(fits));
                }
                None => prop_assert!(!all.iter().any(can)),
            }
        }
    }
}
