//! From a key to the painted page in a build of ten thousand facts: the round of
//! the main journals, digit by digit, and what follows from each reading.

use std::fmt;

use build_journal::fact::{
    Body, EngineDescribed, LimitsOrigin, LimitsSet, Reading, Spot, ToolListed,
};
use build_journal::{BuildId, DeviceId, Fact, Journal, Stamper, ToolId, export};
use build_plan::{Engine, MEASURES, Place};
use fantoccini::Locator;

use crate::bench::{bring_in, there};
use crate::chromium::{Chromium, Failure};
use crate::clock::{self, BARE, beside};
use crate::figures::{at_percent, spread};
use crate::hosted::Hosted;

/// Facts of the build.
const FACTS: usize = 10_000;
/// An invented time, in milliseconds, and the time between two facts.
const START: u64 = 1_750_000_000_000;
const STEP: u64 = 30_000;
/// What is typed: digits, and Enter.
const TYPED: &str = "2.4483";
const ENTER: &str = "\u{e007}";
/// What the round reads. Everything else has been read, over and over.
const ROUND: &str = "main-journal-diameter";
/// Readings that are timed: four on each of five mains, but for the very last,
/// after which the keypad goes.
const READINGS: usize = 19;

/// A digit is timed from its key to the frame after the field has it, Enter to the
/// frame after what follows from it; that one has to be painted with the reading
/// taken in. Above the page stands a field that goes by nothing.
const CONTROLS: &str = "
    const bare = document.createElement('input');
    bare.id = 'bare';
    document.querySelector('.header-row').append(bare);
    let key;
    const of = (event) => event.target.id === 'bare' ? 'bare' : key.key;
    addEventListener('keydown', (event) => {
        key = event;
        if (event.key !== 'Enter') return;
        window.time('Enter', event);
        requestAnimationFrame(() => {
            if (document.querySelector('[data-test=field-reading]')?.value) window.late = true;
        });
    }, true);
    addEventListener('input', (event) => window.time(of(event), key), true);
    return true;";

const FIELD: &str = "[data-test=field-reading]";
const BARE_FIELD: &str = "#bare";

/// Waits for the page, in milliseconds.
pub struct BigBuild {
    slower: u32,
    digits: Vec<f64>,
    enters: Vec<f64>,
    bare: Vec<f64>,
}

/// Measures on a slowed-down processor.
pub async fn measure(app: &Hosted) -> Result<BigBuild, Failure> {
    const SLOWER: u32 = 6;
    let file = std::env::temp_dir().join(format!("thoubook-big-{}.json", std::process::id()));
    std::fs::write(&file, export(&journal()?))?;
    let browser = Chromium::open().await?;
    let build = bring_in(&browser, app, &file).await?;
    std::fs::remove_file(&file)?;
    browser
        .ask(&format!("location.hash = '{build}/mains/1'; return true;"))
        .await?;
    browser
        .wait_for("the field", &there("field-reading"))
        .await?;
    clock::set_up(&browser).await?;
    browser.ask(CONTROLS).await?;
    browser.slow_down(SLOWER).await?;
    let mut keys = 0;
    for reading in 0..READINGS {
        let bare = TYPED.chars().map(|sign| (BARE_FIELD, sign.to_string()));
        let own = TYPED.chars().map(|sign| (FIELD, sign.to_string()));
        let own = own.chain([(FIELD, ENTER.to_owned())]);
        for (field, key) in bare.chain(own) {
            browser
                .ask(&format!(
                    "document.querySelector('{field}').focus(); return true;"
                ))
                .await?;
            let field = browser.client.find(Locator::Css(field)).await?;
            field.send_keys(&key).await?;
            keys += 1;
            clock::timed(&browser, keys).await?;
        }
        browser
            .wait_for(
                "the reading to be kept",
                &format!(
                    "return Number(document.querySelector('[data-test=acknowledged]').dataset.count) >= {};",
                    reading + 1
                ),
            )
            .await?;
        browser
            .ask("document.querySelector('#bare').value = ''; return true;")
            .await?;
    }
    let waits = clock::read(&browser).await?;
    let late = browser.ask("return window.late === true;").await?;
    browser.close().await?;
    if late != false {
        return Err(Failure::new(
            "a frame went by before its reading was taken in",
        ));
    }
    Ok(BigBuild {
        slower: SLOWER,
        digits: waits.of(|key| key != "Enter" && key != BARE),
        enters: waits.of(|key| key == "Enter"),
        bare: waits.of(|key| key == BARE),
    })
}

fn reading(measure: &str, place: Place, typed: String) -> Body {
    Body::Reading(
        Reading {
            measure: measure.to_owned(),
            place: Spot::Known(place),
            typed,
            unit: "in".to_owned(),
            tool: Some(ToolId::from_random(1)),
            setting: None,
            temperature: None,
            condition: None,
            keyed: None,
        }
        .into(),
    )
}

/// A vee eight, every length of it but those of the round read over and over.
fn journal() -> Result<Journal, Failure> {
    let described = EngineDescribed {
        name: "vee eight".to_owned(),
        cylinders: 8,
        layout: "vee".to_owned(),
        bank_angle: Some("90°".to_owned()),
        mains: None,
        built: Vec::new(),
    };
    let engine: Engine = described.engine()?;
    let micrometer = ToolId::from_random(1);
    let places: Vec<(&str, Place)> = MEASURES
        .iter()
        .filter(|one| one.can_be_read() && one.units.inch == "in" && one.id != ROUND)
        .flat_map(|one| {
            let places = one.places(&engine).into_iter();
            places.map(|place| (one.id, place))
        })
        .collect();
    let first = [
        Body::EngineDescribed(described),
        Body::ToolListed(ToolListed {
            tool: micrometer,
            name: "micrometer".to_owned(),
            instrument: "outside-micrometer-tenths".to_owned(),
            mark: None,
        }),
        Body::LimitsSet(LimitsSet {
            measure: "main-oil-clearance".to_owned(),
            place: None,
            low: Some("1.5".to_owned()),
            high: Some("2.5".to_owned()),
            unit: "thou".to_owned(),
            origin: LimitsOrigin::Sheet,
            origin_note: "page 41".to_owned(),
            replaces: Vec::new(),
        }),
    ];
    let readings = places
        .iter()
        .cycle()
        .zip(0..)
        .map(|((measure, place), number)| {
            let size = if measure.contains("bore") {
                24_505
            } else {
                24_480
            };
            reading(measure, *place, format!("2.{}", size + number % 4 - 20_000))
        });
    let mut stamper = Stamper::new();
    let mut journal = Journal::new(BuildId::from_random(1));
    for (body, number) in first.into_iter().chain(readings).zip(1..).take(FACTS) {
        let wall = START + number * STEP;
        let id = stamper.stamp(wall, wall);
        let clock = i64::try_from(wall)?;
        journal.take(Fact::new(id, DeviceId::from_random(1), clock, body));
    }
    Ok(journal)
}

impl fmt::Display for BigBuild {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let all: Vec<f64> = [&self.digits[..], &self.enters].concat();
        write!(
            f,
            "From a key to the painted page in a build of {FACTS} facts, at {} times slower\
             \n  a field that goes by nothing  {}\
             \n  a digit                       {}\
             \n  Enter, and verdicts           {}\
             \n  95 in 100 keys within {:.1} ms, 95 in 100 Enters within {:.1} ms",
            self.slower,
            spread(&self.bare),
            beside(&self.digits, &self.bare),
            beside(&self.enters, &self.bare),
            at_percent(&all, 95),
            at_percent(&self.enters, 95)
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fold::{Standing, fold};
    use build_plan::measure::MAIN_JOURNAL_DIAMETER;

    #[test]
    fn the_round_is_all_that_the_big_build_lacks_for_its_verdicts() {
        assert_eq!(ROUND, MAIN_JOURNAL_DIAMETER.id);
        let mut journal = journal().unwrap();
        assert_eq!(journal.len(), FACTS);
        let build = fold(&journal);
        let open = |standing: &Standing| matches!(standing, Standing::Open(_));
        assert!(build.mains.iter().all(|main| open(&main.standing)));
        let engine = build.engine.unwrap().engine;
        let places = MAIN_JOURNAL_DIAMETER.places(&engine);
        assert_eq!(places.len(), READINGS + 1);
        let mut stamper = Stamper::new();
        for (place, number) in places.into_iter().zip(FACTS as u64 + 1..) {
            let wall = START + number * STEP;
            let body = reading(ROUND, place, TYPED.to_owned());
            let clock = i64::try_from(wall).unwrap();
            let id = stamper.stamp(wall, wall);
            journal.take(Fact::new(id, DeviceId::from_random(1), clock, body));
        }
        let build = fold(&journal);
        assert_eq!(build.mains.len(), 5);
        assert!(build.mains.iter().all(|main| !open(&main.standing)));
    }
}
