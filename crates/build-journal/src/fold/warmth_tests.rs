//! Fits of two metals measured in the cold.

use super::written::{Written, book};
use super::*;
use crate::fact::{Body, EngineDescribed, Struck, WarmthAnswer, WarmthSettled};
use crate::id::FactId;
use assembly_core::quantity::Si;
use build_plan::measure::{MAIN_OIL_CLEARANCE, PISTON_TO_WALL, ROD_OIL_CLEARANCE};
use build_plan::{At, Direction, Measure, Place, Station};

const INCH: f64 = 0.0254;

book! {
    /// A four whose block is of this metal.
    Garage
}

impl Garage {
    fn new(block: &str) -> Self {
        let engine = Body::EngineDescribed(EngineDescribed {
            name: "orchard sprayer".to_owned(),
            cylinders: 4,
            layout: "inline".to_owned(),
            bank_angle: None,
            mains: Some(5),
            built: vec![("block", block.to_owned())],
        });
        let tools = [(1, "outside-micrometer-proved"), (2, "bore-gauge-tenths")];
        Self(Written::of(engine, &tools))
    }

    fn read(&mut self, measure: &str, place: Place, typed: &str, at: Option<&str>) {
        let tool = if measure.contains("bore") { 2 } else { 1 };
        self.reads((measure, place), (typed, "in"), (tool, None), at);
    }

    /// Main 1: 2.7 in with 2.5 thou of room.
    fn main(&mut self, at: Option<&str>) {
        let place = Place::main(1)
            .station(Station::Front)
            .direction(Direction::UpAndDown);
        self.read("main-journal-diameter", place, "2.7000", at);
        self.read("main-bearing-bore", place, "2.7025", at);
    }

    /// Cylinder 1: 4 in with 4 thou of room.
    fn cylinder(&mut self, at: Option<&str>) {
        let place = Place::of(At::Cylinder(1));
        let bore = place.station(Station::Middle).direction(Direction::Thrust);
        self.read("bore", bore, "4.0040", at);
        self.read("piston-diameter", place, "4.0000", at);
    }

    fn limits(&mut self, measure: &str, low: &str, high: &str) {
        self.limit(measure, (Some(low), Some(high)), "thou");
    }

    fn settle(&mut self, measure: &str, answer: WarmthAnswer) -> FactId {
        self.write(Body::WarmthSettled(WarmthSettled {
            measure: measure.to_owned(),
            answer,
        }))
    }

    fn warmth(&self, measure: &'static Measure, at: At) -> Option<FitWarmth> {
        self.folding.build().warmth_of(measure, at)
    }

    /// Main 1's clearance, inches.
    fn clearance(&self) -> f64 {
        let clearance = self.folding.build().mains[0].clearance().unwrap();
        clearance.least.value().to_si() / INCH
    }
}

// The trade's own figures at 40 °F (common practice): an aluminium housing over a
// steel crank of 2.7 in reads about 0.0005 in too tight, an alloy piston in an iron
// bore of 4 in 0.0006 to 0.0007 too loose, iron and steel nearly cancel.
#[test]
fn a_cold_garage_is_told_of_where_two_metals_meet_and_the_window_is_narrow() {
    let mut garage = Garage::new("alloy");
    garage.main(Some("40 °F"));
    let main = garage.warmth(&MAIN_OIL_CLEARANCE, At::Main(1)).unwrap();
    let adds = main.correction.value().to_si() / INCH;
    assert!((adds - 0.000_45).abs() < 0.000_06, "{adds}");
    assert!(
        main.warning.is_none() && !main.asks(),
        "there are no limits"
    );
    garage.limits("main-oil-clearance", "1.8", "3.0");
    let main = garage.warmth(&MAIN_OIL_CLEARANCE, At::Main(1)).unwrap();
    assert!(main.asks());
    let words = main.warning.unwrap().text;
    assert!(words.contains("too tight"), "{words}");
    garage.limits("main-oil-clearance", "1.0", "9.0");

    let mut garage = Garage::new("iron");
    garage.cylinder(Some("40 °F"));
    garage.limits("piston-to-wall", "3.0", "5.0");
    let piston = garage.warmth(&PISTON_TO_WALL, At::Cylinder(1)).unwrap();
    let adds = piston.correction.value().to_si() / INCH;
    assert!((-0.000_72..=-0.000_6).contains(&adds), "{adds}");
    assert!(piston.asks());
    garage.main(Some("40 °F"));
    garage.limits("main-oil-clearance", "1.8", "3.0");
    let main = garage.warmth(&MAIN_OIL_CLEARANCE, At::Main(1)).unwrap();
    assert!(main.correction.value().to_si().abs() / INCH < 0.000_05);
    assert!(!main.asks(), "iron and steel grow almost alike");
}

#[test]
fn one_tap_brings_the_fit_to_20_degrees_another_leaves_it_and_a_strike_asks_again() {
    let mut garage = Garage::new("alloy");
    garage.main(Some("40 °F"));
    garage.limits("main-oil-clearance", "1.8", "3.0");
    let as_read = garage.clearance();
    assert!((as_read - 0.0025).abs() < 1e-9);
    let settled = garage.settle("main-oil-clearance", WarmthAnswer::ToReference);
    let there = garage.warmth(&MAIN_OIL_CLEARANCE, At::Main(1)).unwrap();
    assert!(!there.asks() && there.is_corrected());
    let adds = there.correction.value().to_si() / INCH;
    assert!((garage.clearance() - as_read - adds).abs() < 1e-6);
    // What is not known of the metals and the thermometer is now in the verdict.
    let main = &garage.folding.build().mains[0];
    let least = main.clearance().unwrap().least.clone();
    let causes: Vec<String> = least
        .estimate()
        .causes(&main.sources)
        .into_iter()
        .map(|cause| cause.label)
        .collect();
    assert!(causes.contains(&"thermometer".to_owned()), "{causes:?}");

    garage.settle("main-oil-clearance", WarmthAnswer::AsRead);
    assert!((garage.clearance() - as_read).abs() < 1e-12);
    let last = garage.folding.build().last.unwrap();
    for fact in [last, settled] {
        garage.write(Body::Struck(Struck { fact, reason: None }));
    }
    let again = garage.warmth(&MAIN_OIL_CLEARANCE, At::Main(1)).unwrap();
    assert!(again.asks());
}

#[test]
fn nothing_is_said_where_no_temperature_was_written_or_one_metal_meets_itself() {
    let mut garage = Garage::new("alloy");
    garage.main(None);
    garage.limits("main-oil-clearance", "1.8", "3.0");
    assert_eq!(garage.warmth(&MAIN_OIL_CLEARANCE, At::Main(1)), None);
    // A temperature without its unit, or no number, is none.
    garage.main(Some("5"));
    garage.main(Some("cold"));
    assert_eq!(garage.warmth(&MAIN_OIL_CLEARANCE, At::Main(1)), None);
    assert_eq!(garage.warmth(&ROD_OIL_CLEARANCE, At::Rod(1)), None);
    garage.main(Some("20 °C"));
    let warm = garage.warmth(&MAIN_OIL_CLEARANCE, At::Main(1)).unwrap();
    assert!(!warm.asks());
}
