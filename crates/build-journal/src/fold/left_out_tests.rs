//! A verdict without some of its places says so.

use super::*;
use crate::fact::samples::{Pen, limits, reading, sprayer};
use crate::fact::{Body, Struck, ToolListed};
use crate::id::{BuildId, FactId, ToolId};
use crate::journal::Journal;
use assembly_core::measure::Verdict;
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE};
use build_plan::{At, Measure, Place};

struct Bench {
    journal: Journal,
    pen: Pen,
}

impl Bench {
    fn new() -> Self {
        let mut bench = Self {
            journal: Journal::new(BuildId::from_random(1)),
            pen: Pen::new(1),
        };
        bench.write(sprayer());
        bench.write(Body::ToolListed(ToolListed {
            tool: ToolId::from_random(1),
            name: "micrometer".to_owned(),
            instrument: "outside-micrometer-tenths".to_owned(),
            mark: None,
        }));
        bench.write(Body::LimitsSet(limits("0.5", "4.5")));
        bench
    }

    fn write(&mut self, body: Body) -> FactId {
        let fact = self.pen.write(body);
        self.journal.take(fact.clone());
        fact.id()
    }

    fn read(&mut self, measure: &Measure, place: Place, typed: &str) -> FactId {
        let Body::Reading(one) = reading(measure.id, place, typed) else {
            panic!()
        };
        let mut one = (*one).clone();
        one.tool = Some(ToolId::from_random(1));
        self.write(Body::Reading(one.into()))
    }

    fn read_all(&mut self, measure: &Measure, typed: &str) -> Vec<FactId> {
        let places = measure.spots.on(At::Main(1)).into_iter();
        places
            .map(|place| self.read(measure, place, typed))
            .collect()
    }

    /// The verdict on the first main, and the places it does without.
    fn first(&self) -> (Option<Verdict>, Vec<LeftOut>) {
        let build = fold(&self.journal);
        let left_out = build.left_out(&MAIN_OIL_CLEARANCE, At::Main(1));
        (build.mains[0].standing.verdict(), left_out)
    }
}

#[test]
fn a_main_with_one_of_four_journal_places_struck_out_says_which_is_left() {
    let mut bench = Bench::new();
    bench.read_all(&MAIN_BEARING_BORE, "2.4504");
    let journal = bench.read_all(&MAIN_JOURNAL_DIAMETER, "2.4480");
    let (verdict, left_out) = bench.first();
    assert_eq!(verdict, Some(Verdict::Good));
    assert_eq!(left_out, []);
    bench.write(Body::Struck(Struck {
        fact: journal[2],
        reason: None,
    }));
    let (verdict, left_out) = bench.first();
    assert_eq!(verdict, Some(Verdict::Good));
    assert_eq!(left_out.len(), 1);
    assert_eq!(
        left_out[0].to_string(),
        "One of the 4 places of the main journal diameter is not measured: main 1, rear of the oil hole, up and down."
    );
    // Read again, it is whole again.
    let place = left_out[0].places[0];
    bench.read(&MAIN_JOURNAL_DIAMETER, place, "2.4480");
    assert_eq!(bench.first().1, []);
}

#[test]
fn what_is_read_by_itself_or_worked_out_says_so_as_well_and_what_is_not_read_does_not() {
    let mut bench = Bench::new();
    let places = MAIN_JOURNAL_DIAMETER.spots.on(At::Main(1));
    bench.read(&MAIN_JOURNAL_DIAMETER, places[0], "2.4480");
    let build = fold(&bench.journal);
    let taper = build.plan.measure("main-journal-taper").unwrap();
    for measure in [&MAIN_JOURNAL_DIAMETER, taper] {
        let left_out = build.left_out(measure, At::Main(1));
        assert_eq!(left_out.len(), 1, "{}", measure.id);
        assert_eq!(left_out[0].places, places[1..]);
        assert_eq!(build.left_out(measure, At::Main(2)), []);
    }
    // A strip is read at once, where it is widest.
    bench.read(&MAIN_OIL_CLEARANCE, Place::main(2), ".0020");
    let build = fold(&bench.journal);
    assert_eq!(build.left_out(&MAIN_OIL_CLEARANCE, At::Main(2)), []);
}
