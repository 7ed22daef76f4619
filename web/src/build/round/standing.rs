//! How a measure stands at one part, whichever way it is found.

use assembly_core::fit::running_clearance::{Advice, RunningClearance};
use assembly_core::measure::{Sources, Window};
use assembly_core::quantity::Unit;
use build_journal::fold::{
    Build, FitStanding, LeftOut, Limits, Missing, ResultState, RunningFit, Standing,
};
use build_plan::measure::{MAIN_OIL_CLEARANCE, ROD_OIL_CLEARANCE};
use build_plan::proof::Proof;
use build_plan::{At, Measure};

use crate::build::measure::{result, so_far};
use crate::device::settings::UnitClass;
use crate::kit::judged::Judged;
use crate::kit::verdict::Mark;

/// A measure at a part: what it came to, and what is missing for a verdict.
#[derive(Clone, PartialEq)]
pub struct Stands {
    /// The number with its limits, when there is a number.
    pub judged: Option<Judged>,
    /// What is missing, as sentences; nothing when there is a verdict.
    pub missing: Vec<String>,
    /// What common practice would expect. Never a limit.
    pub common_practice: Option<Window>,
    /// Why it no longer counts, in sentences, when it does not.
    pub stale: Vec<String>,
    /// Why it was let pass, when it was.
    pub let_pass: Option<String>,
    /// The places that it does without.
    pub left_out: Vec<LeftOut>,
}

impl Stands {
    /// The mark: nothing that is stale or lacks something has passed. What is stale
    /// is that before all else, as on the map and on the page of a main.
    #[must_use]
    pub fn mark(&self) -> Mark {
        if !self.stale.is_empty() {
            return Mark::Stale;
        }
        match &self.judged {
            Some(judged) if judged.mark() == Mark::Bad => Mark::Bad,
            Some(judged) if self.missing.is_empty() => judged.mark(),
            _ => Mark::None,
        }
    }

    /// The verdict, or the first thing that is missing for one.
    #[must_use]
    pub fn words(&self) -> String {
        if let Some(reason) = &self.let_pass {
            return format!("let pass: {reason}");
        }
        if !self.stale.is_empty() {
            return "no longer counts: measure it again".to_owned();
        }
        match (&self.judged, self.missing.first()) {
            (Some(judged), _) if judged.mark() == Mark::Bad => judged.verdict_words(),
            (_, Some(missing)) => missing.clone(),
            (Some(judged), None) => so_far(judged, &self.left_out),
            (None, None) => Mark::None.words().to_owned(),
        }
    }
}

impl Stands {
    /// The number and the verdict in one line; the number with what there is to say
    /// in place of a verdict while there is none that counts.
    #[must_use]
    pub fn line(&self) -> String {
        match &self.judged {
            Some(judged) => {
                let words = match self.mark() {
                    Mark::None | Mark::Stale => self.words(),
                    _ => so_far(judged, &self.left_out),
                };
                format!("{} · {words}", judged.value_words())
            }
            None => self.words(),
        }
    }
}

/// How a measure stands at a part.
#[must_use]
pub fn stands(build: &Build, measure: &'static Measure, at: At, units: UnitClass) -> Stands {
    let unit = units.of(measure.kind, measure.units);
    let mut stands = by_readings(build, measure, at, unit);
    stands.left_out = build.left_out(measure, at);
    if let Some(judged) = &mut stands.judged {
        judged.sets = build.sets_for(measure);
    }
    match build.result(Proof::Measure(measure), at) {
        ResultState::Stale(stale) => stands.stale = stale.chain,
        ResultState::LetPass(reason) => stands.let_pass = Some(reason),
        _ => {}
    }
    stands
}

fn by_readings(build: &Build, measure: &'static Measure, at: At, unit: &'static Unit) -> Stands {
    match at {
        At::Main(number) if measure.id == MAIN_OIL_CLEARANCE.id => {
            let found = build.mains.iter().find(|one| one.main.number() == number);
            found.map_or_else(nothing, |bearing| Stands {
                judged: result::judged(bearing, unit),
                missing: missing_of(&bearing.standing),
                common_practice: bearing.common_practice,
                ..nothing()
            })
        }
        At::Rod(cylinder) if measure.id == ROD_OIL_CLEARANCE.id => {
            let found = build.rods.iter().find(|one| one.cylinder == cylinder);
            found.map_or_else(nothing, |bearing| Stands {
                judged: running(&bearing.fit, &bearing.limits, unit),
                missing: missing_of(&bearing.fit.standing),
                common_practice: bearing.fit.common_practice,
                ..nothing()
            })
        }
        _ => of_a_fit(build, measure, at, unit),
    }
}

/// Nothing known yet.
fn nothing() -> Stands {
    Stands {
        judged: None,
        missing: vec![Missing::AllReadings.to_string()],
        common_practice: None,
        stale: Vec::new(),
        let_pass: None,
        left_out: Vec::new(),
    }
}

fn of_a_fit(build: &Build, measure: &'static Measure, at: At, unit: &'static Unit) -> Stands {
    let Some(fit) = build.fit(measure, at) else {
        return nothing();
    };
    let missing = match &fit.standing {
        FitStanding::Open(missing) => sentences(missing),
        FitStanding::Judged(_) => Vec::new(),
    };
    let judged = fit.extent.as_ref().map(|(least, greatest)| Judged {
        least: least.estimate().clone(),
        greatest: greatest.estimate().clone(),
        sources: Sources::clone(&fit.sources),
        window: window(&fit.limits),
        measure: Some(measure),
        findings: Vec::new(),
        advice: None,
        sets: Vec::new(),
        unit,
    });
    Stands {
        judged,
        missing,
        common_practice: fit.common_practice,
        ..nothing()
    }
}

/// The running clearance of a bearing as something to judge.
fn running(fit: &RunningFit, limits: &[Limits], unit: &'static Unit) -> Option<Judged> {
    let clearance: &RunningClearance = fit.by_size.as_ref().or(fit.at_once.as_ref())?;
    let advice: Option<Box<Advice>> = match &fit.standing {
        Standing::Judged(advice) => Some(advice.clone()),
        Standing::Open(_) => None,
    };
    Some(Judged {
        least: clearance.least.estimate().clone(),
        greatest: clearance.greatest.estimate().clone(),
        sources: Sources::clone(&fit.sources),
        window: window(limits),
        measure: Some(&ROD_OIL_CLEARANCE),
        findings: fit.findings.clone(),
        advice,
        sets: Vec::new(),
        unit,
    })
}

/// The one window that limits make; none while they do not agree.
fn window(limits: &[Limits]) -> Option<Window> {
    match limits {
        [first, others @ ..] if others.iter().all(|one| one.window == first.window) => {
            first.window.as_ref().ok().copied()
        }
        _ => None,
    }
}

fn missing_of(standing: &Standing) -> Vec<String> {
    match standing {
        Standing::Judged(_) => Vec::new(),
        Standing::Open(missing) => sentences(missing),
    }
}

fn sentences(missing: &[Missing]) -> Vec<String> {
    missing.iter().map(ToString::to_string).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use assembly_core::measure::Estimate;
    use assembly_core::quantity::unit;
    use build_journal::{fold, import};
    use build_plan::Place;
    use build_plan::measure::{BORE, MAIN_JOURNAL_DIAMETER};

    fn one(window: (f64, f64)) -> Stands {
        Stands {
            judged: Some(Judged {
                least: Estimate::exact(1.5),
                greatest: Estimate::exact(1.5),
                sources: Sources::default(),
                window: Window::new(Some(window.0), Some(window.1)).ok(),
                measure: None,
                findings: Vec::new(),
                advice: None,
                sets: Vec::new(),
                unit: unit("mm").unwrap(),
            }),
            missing: Vec::new(),
            ..nothing()
        }
    }

    #[test]
    fn what_no_longer_counts_is_that_whatever_it_was() {
        for (window, mark) in [((1.0, 2.0), Mark::Good), ((2.0, 3.0), Mark::Bad)] {
            let counts = one(window);
            assert_eq!(counts.mark(), mark);
            let stale = Stands {
                stale: vec!["“bores honed”.".to_owned()],
                ..counts
            };
            assert_eq!(stale.mark(), Mark::Stale);
            assert!(
                stale.line().contains("no longer counts"),
                "{}",
                stale.line()
            );
        }
    }

    #[test]
    fn the_round_says_the_same_as_the_map_of_what_no_longer_counts() {
        let file = include_bytes!("../../../../static/sample-engine.json");
        let build = fold(&import(file).unwrap().journal);
        // See the tests of the map: the third cylinder was honed.
        let at = At::Cylinder(3);
        let mark = stands(&build, &BORE, at, UnitClass::Inch).mark();
        assert_eq!(mark, Mark::Stale);
    }

    #[test]
    fn good_without_some_of_its_places_is_good_so_far() {
        let mut good = one((1.0, 2.0));
        assert_eq!(good.words(), "good");
        good.left_out = vec![LeftOut {
            measure: &MAIN_JOURNAL_DIAMETER,
            places: vec![Place::main(1)],
            of: 4,
        }];
        assert_eq!(good.words(), "good so far: 1 of 4 places left");
        assert_eq!(good.mark(), Mark::Good);
        // What is bad is bad wherever else one looks.
        let bad = Stands {
            left_out: good.left_out,
            ..one((2.0, 3.0))
        };
        assert!(bad.words().starts_with("bad"), "{}", bad.words());
    }
}
