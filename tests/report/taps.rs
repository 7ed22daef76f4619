//! From a tap to the painted screen in a run over thirty-four bolts in four
//! laps, beside what any tap costs this browser.

use std::fmt;

use build_journal::fact::{
    Body, BoltLayout, EngineDescribed, FastenerGroup, FastenerSheet, Origin, Wrench,
};
use build_journal::{BuildId, DeviceId, Fact, Journal, OwnId, Stamper, export};
use fantoccini::Locator;

use crate::bench::{bring_in, there};
use crate::chromium::{Chromium, Failure};
use crate::clock::{self, BARE, beside};
use crate::figures::spread;
use crate::hosted::Hosted;

/// Two rows of bolts, and the laps.
const ROWS: [u32; 2] = [17, 17];
const STAGES: [&str; 4] = ["25 ft-lb", "50 ft-lb", "75 ft-lb", "90 ft-lb"];
/// An invented time, in milliseconds.
const WALL: u64 = 1_750_000_000_000;
/// After the last tap the screen is another one: that tap is not timed.
const TAPS: usize = 34 * 4 - 1;

/// Beside the run stands a button that changes its own letter. A pull has to be
/// painted with the bolt that is next then.
const CONTROLS: &str = "
    const bare = document.createElement('button');
    bare.id = 'bare';
    bare.textContent = '·';
    bare.addEventListener('click', () =>
        bare.textContent = bare.textContent === '·' ? '*' : '·');
    document.querySelector('.run-top').append(bare);
    const next = () => document.querySelector('[data-test=run-tap]').dataset.bolt;
    addEventListener('click', (event) => {
        const is_bare = event.target.id === 'bare';
        window.time(is_bare ? 'bare' : 'tap', event);
        const before = next();
        requestAnimationFrame(() => {
            if (!is_bare && next() === before) window.late = true;
        });
    }, true);
    return true;";

/// Waits for the page, in milliseconds.
pub struct Taps {
    slower: u32,
    taps: Vec<f64>,
    bare: Vec<f64>,
}

/// Measures on a slowed-down processor.
pub async fn measure(app: &Hosted) -> Result<Taps, Failure> {
    const SLOWER: u32 = 6;
    let own = OwnId::from_random(1);
    let file = std::env::temp_dir().join(format!("thoubook-taps-{}.json", std::process::id()));
    std::fs::write(&file, export(&journal(own)))?;
    let browser = Chromium::open().await?;
    let build = bring_in(&browser, app, &file).await?;
    std::fs::remove_file(&file)?;
    browser
        .ask(&format!(
            "location.hash = '{build}/tighten/{own}/engine'; return true;"
        ))
        .await?;
    browser.wait_for("the group", &there("run-begin")).await?;
    browser
        .ask("document.querySelector('[data-test=run-begin]').click(); return true;")
        .await?;
    browser.wait_for("the run", &there("run-tap")).await?;
    clock::set_up(&browser).await?;
    browser.ask(CONTROLS).await?;
    browser.slow_down(SLOWER).await?;
    let mut taps = 0;
    for _ in 0..TAPS {
        for kind in ["#bare", "[data-test=run-tap]"] {
            let button = browser.client.find(Locator::Css(kind)).await?;
            button.click().await?;
            taps += 1;
            clock::timed(&browser, taps).await?;
        }
        // Two taps closer than half a second are one of a shaking hand.
        browser
            .wait_for(
                "the pull to be kept, and the guard",
                "window.calm ??= performance.now();
                const on = document.querySelector('[data-test=acknowledged]').dataset.onTheWay;
                if (on !== '0' || performance.now() - window.calm < 500) return false;
                window.calm = undefined;
                return true;",
            )
            .await?;
    }
    let done = browser
        .ask("return document.querySelector('[data-test=run-done]').textContent;")
        .await?;
    let waits = clock::read(&browser).await?;
    let late = browser.ask("return window.late === true;").await?;
    browser.close().await?;
    if late != false {
        return Err(Failure::new("a frame went by before its pull was shown"));
    }
    if done != "33 of 34 done" {
        return Err(Failure::new(format!(
            "after {TAPS} taps the run says {done}"
        )));
    }
    Ok(Taps {
        slower: SLOWER,
        taps: waits.of(|kind| kind != BARE),
        bare: waits.of(|kind| kind == BARE),
    })
}

/// An invented four with one group of bolts.
fn journal(own: OwnId) -> Journal {
    let bolts = ROWS.iter().sum();
    let described = Body::EngineDescribed(EngineDescribed {
        name: "four".to_owned(),
        cylinders: 4,
        layout: "inline".to_owned(),
        bank_angle: None,
        mains: None,
        built: Vec::new(),
    });
    let group = Body::FastenerGroup(FastenerGroup {
        own,
        label: "head".to_owned(),
        per: None,
        bolts,
        size: None,
        lubricant: Some("engine oil".to_owned()),
        stages: STAGES.map(str::to_owned).to_vec(),
        source: None,
        stale_with: Vec::new(),
        sheet: Box::new(FastenerSheet {
            holds: Some("head".to_owned()),
            fastener: Some("plain".to_owned()),
            under_head: Some("engine oil".to_owned()),
            wrench: Some(Wrench {
                name: None,
                low: "20".to_owned(),
                high: "150".to_owned(),
                unit: "ft-lb".to_owned(),
                step: None,
                grip: None,
            }),
            layout: Some(BoltLayout::Rows(ROWS.to_vec())),
            order: (1..=bolts).collect(),
            order_from: Some(Origin::Printed),
            ..FastenerSheet::default()
        }),
    });
    let mut stamper = Stamper::new();
    let mut journal = Journal::new(BuildId::from_random(2));
    for (body, clock) in [described, group].into_iter().zip(0..) {
        let id = stamper.stamp(WALL, WALL);
        journal.take(Fact::new(id, DeviceId::from_random(1), clock, body));
    }
    journal
}

impl fmt::Display for Taps {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "From a tap of a run over 34 bolts to the painted screen, at {} times slower\
             \n  a button that changes a letter  {}\
             \n  a pull                          {}",
            self.slower,
            spread(&self.bare),
            beside(&self.taps, &self.bare),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fold::tightening::tightenings;

    #[test]
    fn the_group_can_be_tightened_and_has_as_many_pulls_as_are_tapped() {
        let all = tightenings(&journal(OwnId::from_random(1)));
        let group = &all.groups[0];
        assert!(group.sheet.wrong.is_empty(), "{:?}", group.sheet.wrong);
        assert_eq!(group.sheet.plan().unwrap().ticks(), TAPS + 1);
    }
}
