//! What was chosen: how it stands, how far its places lie from each other, and
//! how it is written down.

use std::sync::Arc;

use assembly_core::measure::{Assessment, Measured, Sources, Verdict, Window};
use assembly_core::quantity::Si;
use build_plan::choice::Choice;
use build_plan::{At, Place};

use super::super::build::Build;
use super::super::register::Value;
use crate::fact::{PartsPlaced, PlacedPart, Spot};
use crate::id::PartId;

/// Which part goes where.
#[derive(Clone, PartialEq, Debug)]
pub struct Chosen {
    /// The choice.
    pub choice: &'static Choice,
    /// What goes where, place by place.
    pub places: Vec<ChosenPlace>,
    /// The limits it was held against; their middle is aimed at.
    pub window: Window,
    /// The causes of error behind it.
    pub sources: Arc<Sources>,
    /// Parts whose size is the box's and was not measured, by their names: what
    /// they give has no verdict.
    pub not_measured: Vec<String>,
}

/// What goes to a place.
#[derive(Clone, PartialEq, Debug)]
pub struct ChosenPlace {
    /// The place.
    pub at: At,
    /// The part.
    pub part: ChosenPart,
    /// What it gives there: the least that the readings say.
    pub gives: Value,
    /// How that stands against the limits; none when a size was not measured.
    pub said: Option<Assessment>,
    /// What can be said of it. A size that was not measured makes nothing good; but
    /// where the box itself leaves no room, the part does not go in.
    pub verdict: Option<Verdict>,
}

/// A part that goes to a place.
#[derive(Clone, PartialEq, Debug)]
pub enum ChosenPart {
    /// What is there stays there.
    Stays,
    /// What was measured at another place.
    Of(At),
    /// A part off the bench, with what is marked on it.
    OnBench(PartId, String),
    /// Two half-shells: the one in block or rod, and the one in the cap.
    Halves([(PartId, String); 2]),
    /// One that has to be bought, of this size, m.
    Bought(f64),
}

/// How far what the places give lies apart.
#[derive(Clone, PartialEq, Debug)]
pub struct Span {
    /// The least of them.
    pub least: Value,
    /// The greatest of them.
    pub greatest: Value,
    /// From the one to the other; what both share of their errors is not in it.
    pub apart: Value,
}

impl Chosen {
    /// From the least that a place gives to the greatest; none without a place.
    #[must_use]
    pub fn span(&self) -> Option<Span> {
        let values: Vec<Value> = self.places.iter().map(|one| one.gives.clone()).collect();
        let (least, greatest) = (Measured::least(&values)?, Measured::greatest(&values)?);
        Some(Span {
            least: least.clone(),
            greatest: greatest.clone(),
            apart: greatest - least,
        })
    }
}

impl ChosenPlace {
    pub(super) fn new(
        at: At,
        part: ChosenPart,
        gives: Value,
        said: Option<Assessment>,
        window: &Window,
    ) -> Self {
        // Where room is wanted and none is left.
        let no_room = window.low().is_some_and(|low| low > 0.0) && gives.value().to_si() <= 0.0;
        let by_the_box = no_room.then_some(Verdict::Bad);
        Self {
            at,
            part,
            gives,
            verdict: said.map(|said| said.verdict).or(by_the_box),
            said,
        }
    }
}

impl Build {
    /// A choice as it is written down when it is accepted; `words` says what goes
    /// to a place, and what it gives there.
    #[must_use]
    pub fn accepted(
        &self,
        chosen: &Chosen,
        words: impl Fn(&ChosenPlace) -> (String, String),
    ) -> PartsPlaced {
        let spot = |at: At| Spot::Known(Place::of(at));
        let sits = |at: At| {
            let part = self.places.sits_at(chosen.choice, at);
            part.map(|part| part.listed.part).into_iter().collect()
        };
        let placed = chosen.places.iter().map(|one| {
            let (parts, from): (Vec<PartId>, Option<At>) = match &one.part {
                ChosenPart::Stays => (sits(one.at), Some(one.at)),
                ChosenPart::Of(at) => (sits(*at), Some(*at)),
                ChosenPart::OnBench(part, _) => (vec![*part], None),
                ChosenPart::Halves(halves) => {
                    (halves.iter().map(|(part, _)| *part).collect(), None)
                }
                ChosenPart::Bought(_) => (Vec::new(), None),
            };
            let (what, gives) = words(one);
            PlacedPart {
                place: spot(one.at),
                what,
                parts,
                from: from.map(spot),
                gives: Some(gives),
            }
        });
        PartsPlaced {
            choice: chosen.choice.id.to_owned(),
            placed: placed.collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use assembly_core::measure::{DangerousSide, Origin};
    use build_plan::choice::MAIN_SHELLS;
    use uom::si::f64::Length;
    use uom::si::length::micrometer;

    fn micrometres(size: f64) -> Length {
        Length::new::<micrometer>(size)
    }

    fn window(low: f64, high: f64) -> Window {
        Window::new(Some(low), Some(high)).unwrap()
    }

    /// The mains of these clearances, read with one micrometer that is as much as
    /// three micrometres off, and each with two of its own.
    fn chosen(clearances: &[f64]) -> Chosen {
        let mut sources = Sources::new();
        let tool = sources.fresh("micrometer", Origin::SharedZero);
        let window = window(30e-6, 50e-6);
        let places = (1..).zip(clearances).map(|(main, clearance)| {
            let own = sources.fresh("feel", Origin::Repeat);
            let gives = Measured::exact(micrometres(*clearance))
                .with(tool, micrometres(3.0))
                .with(own, micrometres(2.0));
            ChosenPlace::new(At::Main(main), ChosenPart::Stays, gives, None, &window)
        });
        let places = places.collect();
        Chosen {
            choice: &MAIN_SHELLS,
            places,
            window,
            sources: sources.into(),
            not_measured: Vec::new(),
        }
    }

    #[test]
    fn the_span_goes_from_the_least_to_the_greatest_without_what_both_share() {
        let span = chosen(&[41.0, 36.0, 44.0]).span().unwrap();
        let close = |one: Length, other: f64| (one - micrometres(other)).to_si().abs() < 1e-12;
        assert!(close(span.least.value(), 36.0) && close(span.greatest.value(), 44.0));
        assert!(close(span.apart.value(), 8.0), "{:?}", span.apart);
        // The micrometer is off by the same in both: 2 and 2 by squares are left.
        let own = 8.0_f64.sqrt();
        assert!(close(span.apart.give_or_take(), own), "{:?}", span.apart);
        assert!(close(span.least.give_or_take(), 13.0_f64.sqrt()));
    }

    #[test]
    fn one_place_is_not_apart_from_itself_and_no_place_spans_nothing() {
        let span = chosen(&[41.0]).span().unwrap();
        assert_eq!(span.least, span.greatest);
        assert_eq!(
            (span.apart.value(), span.apart.give_or_take()),
            Default::default()
        );
        assert_eq!(chosen(&[]).span(), None);
    }

    #[test]
    fn what_was_not_measured_is_never_good_but_bad_where_no_room_is_left() {
        let verdicts = |clearances: &[f64]| -> Vec<Option<Verdict>> {
            let all = chosen(clearances).places;
            all.iter().map(|one| one.verdict).collect()
        };
        let bad = Some(Verdict::Bad);
        assert_eq!(verdicts(&[40.0, 1.0, 0.0, -5.0]), [None, None, bad, bad]);
        // Where the limits themselves want it tight, being tight is no fault.
        let gives = Measured::exact(micrometres(-5.0));
        let tight = window(-20e-6, 0.0);
        let one = ChosenPlace::new(At::Main(1), ChosenPart::Stays, gives, None, &tight);
        assert_eq!(one.verdict, None);
    }

    #[test]
    fn what_was_measured_is_judged_by_its_chances_alone() {
        let window = window(30e-6, 50e-6);
        let gives = Measured::exact(micrometres(40.0));
        let value = gives.estimate();
        let danger = DangerousSide::TooLittle;
        let said = Assessment::judged((value, value), &window, danger, &Sources::new());
        let one = ChosenPlace::new(At::Main(1), ChosenPart::Stays, gives, Some(said), &window);
        assert_eq!((one.verdict, one.said), (Some(Verdict::Good), Some(said)));
    }
}
