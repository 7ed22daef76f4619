//! The bolts that are tightened together, and what is wrong with a group
//! before its first tap.

use std::collections::BTreeMap;

use thiserror::Error;

use super::generate::{by_turns, centre_out, criss_cross, star};
use super::layout::Layout;
use super::pattern::{Pattern, PatternError};
use super::wrenches::Wrench;
use crate::fastener::adapter::Adapter;
use crate::fastener::stages::{Stage, StageError, check, equal_steps};
use crate::fastener::wrench::{Place, Scale, ScaleError};

/// What a group holds.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Holds {
    /// A cylinder head.
    Head,
    /// An intake manifold.
    Intake,
    /// The caps of an overhead camshaft.
    CamCaps,
    /// The caps of rods.
    Rods,
    /// An oil pan.
    Pan,
    /// A cover.
    Cover,
    /// A flywheel or flexplate.
    Flywheel,
    /// A damper or pulley.
    Damper,
    /// The caps of the mains. Their order follows from what each bolt does; see
    /// [`caps`](super::generate::caps) and [`ladder`](super::generate::ladder).
    Mains,
    /// Something else.
    Other,
}

impl Holds {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::Mains,
        Self::Rods,
        Self::Head,
        Self::CamCaps,
        Self::Intake,
        Self::Pan,
        Self::Cover,
        Self::Flywheel,
        Self::Damper,
        Self::Other,
    ];

    /// Stable name.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Mains => "mains",
            Self::Rods => "rods",
            Self::Head => "head",
            Self::CamCaps => "cam-caps",
            Self::Intake => "intake",
            Self::Pan => "pan",
            Self::Cover => "cover",
            Self::Flywheel => "flywheel",
            Self::Damper => "damper",
            Self::Other => "other",
        }
    }

    /// What it is called at the bench.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Mains => "main caps",
            Self::Rods => "rod caps",
            Self::Head => "cylinder head",
            Self::CamCaps => "cam caps",
            Self::Intake => "intake",
            Self::Pan => "oil pan",
            Self::Cover => "cover",
            Self::Flywheel => "flywheel or flexplate",
            Self::Damper => "damper",
            Self::Other => "something else",
        }
    }

    /// The one of this name.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.id() == id)
    }

    /// The order that is common practice for such a group, when the builder has
    /// no printed one and asks. `None` where the drawing alone does not say.
    #[must_use]
    pub fn usual_order(self, layout: &Layout) -> Option<Pattern> {
        if layout.count() == 0 {
            return None;
        }
        match self {
            Self::Head | Self::Intake | Self::CamCaps => Some(centre_out(layout)),
            Self::Pan | Self::Cover => Some(criss_cross(layout)),
            Self::Flywheel | Self::Damper => Some(across(layout)),
            Self::Rods => Some(by_turns(layout.count())),
            Self::Mains | Self::Other => None,
        }
    }
}

/// A star over bolts that lie around the middle of a drawing in any numbering.
fn across(layout: &Layout) -> Pattern {
    let middle = layout.middle();
    let angle = |bolt: &usize| {
        layout.places().get(*bolt).map_or(0.0, |place| {
            libm::atan2(place.0 - middle.0, place.1 - middle.1)
        })
    };
    let mut around: Vec<usize> = (0..layout.count()).collect();
    around.sort_by(|one, other| angle(one).total_cmp(&angle(other)));
    // Begins at the first bolt, wherever that lies.
    let first = around
        .iter()
        .position(|bolt| *bolt == 0)
        .unwrap_or_default();
    around.rotate_left(first);
    let order = star(around.len());
    Pattern::whole(
        order
            .order()
            .iter()
            .filter_map(|at| around.get(*at).copied())
            .collect(),
    )
}

/// Stages to a final torque that are common practice, when the sheet has none
/// and the builder asks: three equal steps, and a last lap at the final torque
/// for the bolts that their neighbours relaxed.
#[must_use]
pub fn usual_stages(last: f64) -> Vec<Stage> {
    let mut stages = equal_steps(last, 3);
    stages.push(Stage::Torque(last));
    stages
}

/// Something that is wrong before the first tap.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum NotReady {
    /// The order.
    #[error(transparent)]
    Order(#[from] PatternError),
    /// The stages.
    #[error(transparent)]
    Stages(#[from] StageError),
    /// The wrench's scale.
    #[error(transparent)]
    Wrench(#[from] ScaleError),
    /// The wrench cannot be set to a stage.
    #[error("lap {} is off the scale of this wrench: take another one", lap + 1)]
    OffTheScale {
        /// The lap.
        lap: usize,
    },
}

/// Everything that is wrong with a group before its first tap; nothing when it
/// may begin. The wrench's scale is its lowest and highest mark; with an adapter
/// on it, what it is set to has to lie on its scale. Laps that are pulled with
/// another wrench, counted from nothing, are held against that one.
#[must_use]
pub fn before_the_first_tap(
    order: &[usize],
    bolts: usize,
    stages: &[Stage],
    wrench: Option<(f64, f64)>,
    adapter: Option<Adapter>,
    others: &BTreeMap<usize, Wrench>,
) -> Vec<NotReady> {
    let mut wrong = Vec::new();
    wrong.extend(
        Pattern::new(order.to_vec(), bolts)
            .err()
            .map(NotReady::from),
    );
    wrong.extend(check(stages).err().map(NotReady::from));
    let usual = match wrench.map(|(low, high)| Scale::new(low, high)).transpose() {
        Ok(scale) => scale.map(|scale| Wrench::new(scale, None, adapter)),
        Err(error) => {
            wrong.push(error.into());
            None
        }
    };
    let off = stages.iter().enumerate().filter(|(lap, stage)| {
        let wrench = others.get(lap).copied().or(usual);
        matches!((stage, wrench), (Stage::Torque(torque), Some(wrench))
            if wrench.lies(*torque).place == Place::OffTheScale)
    });
    wrong.extend(off.map(|(lap, _)| NotReady::OffTheScale { lap }));
    wrong
}

#[cfg(test)]
mod tests {
    use super::*;

    fn none() -> BTreeMap<usize, Wrench> {
        BTreeMap::new()
    }

    #[test]
    fn a_lap_is_held_against_the_wrench_it_is_pulled_with() {
        let stages = [Stage::Torque(10.0), Stage::Torque(60.0)];
        let long = Some((20.0, 150.0));
        let off = |others: &BTreeMap<usize, Wrench>| {
            before_the_first_tap(&[0], 1, &stages, long, None, others)
        };
        assert_eq!(off(&none()), [NotReady::OffTheScale { lap: 0 }]);
        let short = Scale::new(2.0, 25.0).map(|scale| Wrench::new(scale, None, None));
        let short = short.expect("a scale");
        assert!(off(&BTreeMap::from([(0, short)])).is_empty());
        assert_eq!(
            off(&BTreeMap::from([(0, short), (1, short)])),
            [NotReady::OffTheScale { lap: 1 }]
        );
    }

    #[test]
    fn everything_that_is_wrong_is_told_at_once_and_before_the_first_tap() {
        let stages = [Stage::Torque(60.0), Stage::Torque(30.0)];
        let wrong =
            before_the_first_tap(&[0, 0, 1], 3, &stages, Some((150.0, 20.0)), None, &none());
        let words: Vec<String> = wrong.iter().map(ToString::to_string).collect();
        assert_eq!(words.len(), 3, "{words:?}");
        assert!(words[0].contains("twice"));
        assert!(words[1].contains("torques go up"));
        assert!(words[2].contains("swap them"));
        let low = before_the_first_tap(
            &[1, 0],
            2,
            &[Stage::Torque(10.0)],
            Some((20.0, 150.0)),
            None,
            &none(),
        );
        assert_eq!(low, [NotReady::OffTheScale { lap: 0 }]);
        assert!(
            before_the_first_tap(
                &[1, 0],
                2,
                &usual_stages(60.0),
                Some((10.0, 80.0)),
                None,
                &none()
            )
            .is_empty()
        );
        // Set to 140 for 70 at the bolt: within the torque's own numbers, off the scale.
        let back = Adapter::new(10.0, 5.0, std::f64::consts::PI).ok();
        let seventy = [Stage::Torque(70.0)];
        assert!(
            before_the_first_tap(&[0], 1, &seventy, Some((10.0, 120.0)), None, &none()).is_empty()
        );
        assert_eq!(
            before_the_first_tap(&[0], 1, &seventy, Some((10.0, 120.0)), back, &none()),
            [NotReady::OffTheScale { lap: 0 }]
        );
    }

    #[test]
    fn a_wheel_drawn_in_any_numbering_is_tightened_across() {
        // Five bolts, numbered so that neighbours on the circle are 1-3-5-2-4.
        let circle = Layout::circle(5);
        let around = [0, 2, 4, 1, 3];
        let mut places = vec![(0.0, 0.0); 5];
        for (at, bolt) in around.iter().enumerate() {
            places[*bolt] = circle.places()[at];
        }
        let order = Holds::Flywheel.usual_order(&Layout::at(&places)).unwrap();
        // Across on the circle: places 0, 2, 4, 1, 3 of it.
        assert_eq!(order.order(), [0, 4, 3, 2, 1]);
    }

    #[test]
    fn each_group_has_its_usual_order_or_says_that_it_needs_more() {
        let layout = Layout::grid(2, 4);
        for holds in Holds::ALL {
            assert_eq!(Holds::from_id(holds.id()), Some(holds));
            let order = holds.usual_order(&layout);
            let needs_more = matches!(holds, Holds::Mains | Holds::Other);
            assert_eq!(order.is_none(), needs_more, "{holds:?}");
            if let Some(order) = order {
                assert!(Pattern::new(order.order().to_vec(), 8).is_ok());
            }
            assert!(holds.usual_order(&Layout::default()).is_none());
        }
    }

    #[test]
    fn the_usual_stages_end_with_a_lap_that_catches_relaxed_bolts() {
        let stages = usual_stages(90.0);
        assert_eq!(stages.len(), 4);
        assert_eq!(stages[2..], [Stage::Torque(90.0), Stage::Torque(90.0)]);
        assert!(check(&stages).is_ok());
    }
}
