//! A watch that sees nothing would make every other test worthless, so it is
//! shown one trouble of each kind first.

use crate::engine::Engine;
use crate::places::fixture;
use crate::rig::{Rig, run_with};
use crate::wait::until;

fn on_the_page_of_trouble(engine: Engine, fact: &str, flow: impl AsyncFnOnce(&mut Rig)) {
    run_with(engine, fact, &fixture("trouble"), "/", flow);
}

each_engine!(super::on_the_page_of_trouble; the_watch_sees_every_kind_of_trouble);
async fn the_watch_sees_every_kind_of_trouble(rig: &mut Rig) {
    let page = rig.open_address("").await;
    page.assert_no_trouble().await;
    let size = page
        .script("return [innerWidth, innerHeight].join()", vec![])
        .await;
    assert_eq!(size, "360,800");
    page.press("Press").await;
    for kind in ["error: ", "rejection: ", "console: ", "policy: "] {
        until(kind, async || {
            let seen = page.trouble_or_none().await;
            seen.iter().any(|line| line.starts_with(kind)).then_some(())
        })
        .await;
    }
}
