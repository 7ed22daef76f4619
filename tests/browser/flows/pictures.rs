//! Pictures of every screen, for looking at. Not a test of anything, so it
//! runs only when it is asked for: `cargo xtask screenshots`.

use std::path::PathBuf;
use std::time::Duration;

use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use serde_json::json;

use super::walking::on_every_kind_of_screen;
use crate::builds::{five_mains, what_goes_where};
use crate::engine::{Device, Engine};
use crate::page::Page;
use crate::places;
use crate::rig::{Rig, run};

/// The one on the first screen of the readme: the check that its caption tells.
const FOR_THE_README: &str = "web/pictures/running-clearance.png";
const README_HEIGHT: u32 = 900;
/// The other one: the sample engine on its map.
const MAP_FOR_THE_README: &str = "web/pictures/engine-map.png";
const MAP_HEIGHT: u32 = 1160;

/// Letters twice as large as usual, as a person sets them who sees badly.
const LARGE_LETTERS: &str = "document.documentElement.style.fontSize = '225%'";

#[test]
#[ignore = "writes pictures; run it with: cargo xtask screenshots"]
fn every_screen() {
    for (size, device) in [("phone", Device::PHONE), ("tablet", Device::TABLET)] {
        for (scheme, device) in [("light", device), ("dark", device.dark())] {
            run(Engine::Chromium, "pictures", async |rig: &mut Rig| {
                rig.device = device;
                take_all(rig, &format!("{size}-{scheme}")).await;
            });
        }
    }
    run(Engine::Chromium, "pictures", async |rig: &mut Rig| {
        take_large(rig, "phone-large").await;
    });
    run(Engine::Chromium, "pictures", async |rig: &mut Rig| {
        rig.device = Device {
            height: README_HEIGHT,
            ..Device::TABLET
        };
        take_for_the_readme(rig).await;
    });
    run(Engine::Chromium, "pictures", async |rig: &mut Rig| {
        rig.device = Device {
            height: MAP_HEIGHT,
            ..Device::TABLET
        };
        take_the_map_for_the_readme(rig).await;
    });
}

/// Half-shells to choose from, and what comes of it.
#[test]
#[ignore = "writes pictures; run it with: cargo xtask screenshots"]
fn a_choice() {
    for (size, device) in [("phone", Device::PHONE), ("tablet", Device::TABLET)] {
        for (scheme, device) in [("light", device), ("dark", device.dark())] {
            run(Engine::Chromium, "pictures", async |rig: &mut Rig| {
                rig.device = device;
                take_a_choice(rig, &format!("{size}-{scheme}")).await;
            });
        }
    }
}

async fn take_a_choice(rig: &mut Rig, kind: &str) {
    let page = rig.open().await;
    page.bring_in(&what_goes_where()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.plan_page("measure/choose/main-shells").await;
    page.wait_for_test("choose").await;
    take_whole(rig, &page, kind, "choice").await;
    page.press_test("choose").await;
    page.wait_for_test("accept").await;
    // It comes into view by itself.
    tokio::time::sleep(Duration::from_millis(500)).await;
    take_as_it_stands(&page, kind, "choice-result").await;
    take_whole(rig, &page, kind, "choice-result-top").await;
}

/// A bore gauge that was zeroed on the journal in its micrometer, against limits.
async fn take_for_the_readme(rig: &mut Rig) {
    let page = rig
        .open_address("#/quick/running-clearance-same-micrometer")
        .await;
    page.wait_until_it_stands().await;
    for (field, text) in [
        ("set-at-1", "2.4483"),
        ("needle-1", "-2.0 thou"),
        ("journal-1", "2.4483"),
        ("limit-low", "1.5"),
        ("limit-high", "2.5"),
    ] {
        page.paste(field, text).await;
    }
    page.leave_the_field().await;
    page.put_keypad_away().await;
    page.wait_for_test("answer").await;
    assert_eq!(page.verdict().await.as_deref(), Some("close"));
    let picture = take(&page, "readme", "running-clearance").await;
    let readme = places::root().join(FOR_THE_README);
    std::fs::create_dir_all(readme.parent().unwrap()).unwrap();
    std::fs::copy(picture, readme).unwrap();
}

/// The sample engine on its map.
async fn take_the_map_for_the_readme(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_for_test("no-builds").await;
    page.bring_in_the_sample().await;
    let picture = take(&page, "readme", "engine-map").await;
    std::fs::copy(picture, places::root().join(MAP_FOR_THE_README)).unwrap();
}

async fn take_large(rig: &mut Rig, kind: &str) {
    let page = rig.open().await;
    page.bring_in(&five_mains()).await;
    page.close_the_file().await;
    page.script(LARGE_LETTERS, vec![]).await;
    take(&page, kind, "bench").await;
    page.open_the_build().await;
    take(&page, kind, "mains").await;
    page.open_bearing(2).await;
    take_whole(rig, &page, kind, "main-2").await;
    page.press_test("place-main-bearing-bore-front-up-and-down")
        .await;
    page.touch("reading").await;
    take_as_it_stands(&page, kind, "main-2-keypad").await;
    page.put_keypad_away().await;
    for name in ["Limits", "Tools", "Parts", "Book"] {
        page.turn_to(name).await;
        take(&page, kind, &name.to_lowercase()).await;
    }
}

async fn take_all(rig: &mut Rig, kind: &str) {
    let page = rig.open().await;
    page.wait_for_test("no-builds").await;
    take(&page, kind, "bench-empty").await;
    page.go_to("#/new").await;
    take(&page, kind, "describe").await;
    page.to_the_bench().await;
    page.bring_in(&five_mains()).await;
    take(&page, kind, "file-taken-in").await;
    page.close_the_file().await;
    take(&page, kind, "bench").await;
    page.press_test("wipe").await;
    take(&page, kind, "wipe").await;
    page.press_test("wipe-keep").await;

    page.open_the_build().await;
    take(&page, kind, "mains").await;
    page.turn_to("Tonight").await;
    take_whole(rig, &page, kind, "tonight").await;
    page.press_test("next-step").await;
    page.wait_for_test("doing").await;
    take_whole(rig, &page, kind, "step").await;
    page.turn_to("Mains").await;
    for bearing in [1, 2, 3] {
        page.open_bearing(bearing).await;
        take_whole(rig, &page, kind, &format!("main-{bearing}")).await;
        page.turn_to("Mains").await;
    }
    page.open_bearing(2).await;
    page.press_test("place-main-bearing-bore-front-up-and-down")
        .await;
    page.touch("reading").await;
    take_as_it_stands(&page, kind, "main-2-keypad").await;
    page.put_keypad_away().await;
    for name in ["Limits", "Tools", "Parts", "Book"] {
        page.turn_to(name).await;
        take_whole(rig, &page, kind, &name.to_lowercase()).await;
    }

    page.go_to("#/quick").await;
    take(&page, kind, "quick").await;
    page.go_to("#/quick/running-clearance").await;
    take(&page, kind, "running-clearance-empty").await;
    page.enter("bore-1", "2.4503").await;
    page.enter("journal-1", "2.4483").await;
    page.enter("limit-low", "1 thou").await;
    page.enter("limit-high", "3 thou").await;
    take_as_it_stands(&page, kind, "running-clearance-keypad").await;
    page.put_keypad_away().await;
    take(&page, kind, "running-clearance").await;
    page.paste("bore-1", "2.44.8").await;
    page.leave_the_field().await;
    page.put_keypad_away().await;
    take(&page, kind, "running-clearance-wrong").await;
    page.go_to("#/no-such-place").await;
    take(&page, kind, "nowhere").await;
    take_the_sample(rig, &page, kind).await;
}

/// The sample engine on its map.
async fn take_the_sample(rig: &Rig, page: &Page, kind: &str) {
    page.to_the_bench().await;
    page.bring_in_the_sample().await;
    take_whole(rig, page, kind, "map").await;
    let address = page.client.current_url().await.unwrap();
    let map = address.fragment().unwrap().to_owned();
    for place in ["crank", "bores-1", "head-1", "cam", "pump", "part/main-4"] {
        page.go_to(&format!("#{map}/{place}")).await;
        let name = format!("map-{}", place.replace('/', "-"));
        take_whole(rig, page, kind, &name).await;
    }
    // And whatever else links lead to: no new screen has to be named here.
    let build = map.trim_end_matches("/map").to_owned();
    on_every_kind_of_screen(page, async |address| {
        let name = address.replace(&build, "sample").replace('/', "-");
        let name = format!("walk{name}");
        take_whole(rig, page, kind, &name).await;
    })
    .await;
}

/// The whole page, however long.
async fn take_whole(rig: &Rig, page: &Page, kind: &str, name: &str) {
    take(page, kind, name).await;
    let whole = json!({"format": "png", "captureBeyondViewport": true});
    let picture = rig
        .browser()
        .devtools("Page.captureScreenshot", whole)
        .await
        .unwrap();
    let picture = BASE64_STANDARD
        .decode(picture["data"].as_str().unwrap())
        .unwrap();
    let file = places::pictures()
        .join(kind)
        .join(format!("{name}-whole.png"));
    std::fs::write(file, picture).unwrap();
}

/// The screen from its top.
async fn take(page: &Page, kind: &str, name: &str) -> PathBuf {
    page.script("scrollTo(0, 0)", vec![]).await;
    take_as_it_stands(page, kind, name).await
}

async fn take_as_it_stands(page: &Page, kind: &str, name: &str) -> PathBuf {
    // Two frames later everything that was asked for has been drawn.
    page.script(
        "return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))",
        vec![],
    )
    .await;
    let folder = places::pictures().join(kind);
    std::fs::create_dir_all(&folder).unwrap();
    let file = folder.join(format!("{name}.png"));
    std::fs::write(&file, page.client.screenshot().await.unwrap()).unwrap();
    file
}
