//! Pictures of every screen, for looking at. Not a test of anything, so it
//! runs only when it is asked for: `cargo xtask screenshots`.

use std::path::PathBuf;

use crate::builds::five_mains;
use crate::engine::{Device, Engine, Scheme};
use crate::page::Page;
use crate::places;
use crate::rig::{Rig, run};

/// The one on the first screen of the readme.
const FOR_THE_README: &str = "web/pictures/running-clearance.png";

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
    for bearing in [1, 2, 3] {
        page.open_bearing(bearing).await;
        take(&page, kind, &format!("main-{bearing}")).await;
        page.turn_to("Mains").await;
    }
    page.open_bearing(2).await;
    page.press_test("place-main-bearing-bore-front-up-and-down")
        .await;
    page.touch("reading").await;
    take_as_it_stands(&page, kind, "main-2-keypad").await;
    page.put_keypad_away().await;
    for name in ["Limits", "Tools", "Book"] {
        page.turn_to(name).await;
        take(&page, kind, &name.to_lowercase()).await;
    }

    page.go_to("#/quick").await;
    take(&page, kind, "quick").await;
    page.go_to("#/quick/running-clearance").await;
    take(&page, kind, "running-clearance-empty").await;
    page.enter("bore-1", "2.4503").await;
    page.enter("journal-1", "2.4483").await;
    page.pick("set-on-same").await;
    page.enter("limit-low", "1 thou").await;
    page.enter("limit-high", "3 thou").await;
    take_as_it_stands(&page, kind, "running-clearance-keypad").await;
    page.put_keypad_away().await;
    let picture = take(&page, kind, "running-clearance").await;
    if rig.device.width == Device::TABLET.width && rig.device.scheme == Scheme::Light {
        let readme = places::root().join(FOR_THE_README);
        std::fs::create_dir_all(readme.parent().unwrap()).unwrap();
        std::fs::copy(picture, readme).unwrap();
    }
    page.paste("bore-1", "2.44.8").await;
    page.leave_the_field().await;
    page.put_keypad_away().await;
    take(&page, kind, "running-clearance-wrong").await;
    page.go_to("#/no-such-place").await;
    take(&page, kind, "nowhere").await;
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
