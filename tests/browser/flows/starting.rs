//! A build that cannot start says so, and lets its successor through.

use std::path::{Path, PathBuf};

use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use sha2::{Digest as _, Sha256};

use crate::page::Page;
use crate::places;
use crate::rig::Rig;
use crate::second_build;

/// The compiled app of a build.
fn program(site: &Path) -> PathBuf {
    std::fs::read_dir(site)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .find(|file| file.to_string_lossy().ends_with("_bg.wasm"))
        .expect("the build has a compiled app")
}

async fn wait_until_it_says_that_it_cannot_start(page: &Page) {
    page.wait_for_script(
        "the page to say that it cannot start",
        "const alert = document.querySelector('#before-start-words[role=alert]');
        return alert !== null && alert.innerText.includes('could not start')
            && alert.innerText.includes('Nothing that was written down is lost')",
    )
    .await;
}

each_engine!(a_page_whose_program_is_missing_says_so);
async fn a_page_whose_program_is_missing_says_so(rig: &mut Rig) {
    let site = rig.serve_a_copy();
    std::fs::remove_file(program(&site)).unwrap();
    let page = rig.open_address("").await;
    wait_until_it_says_that_it_cannot_start(&page).await;
}

each_engine!(a_page_whose_program_is_broken_says_so);
async fn a_page_whose_program_is_broken_says_so(rig: &mut Rig) {
    let site = rig.serve_a_copy();
    std::fs::write(program(&site), "no program").unwrap();
    let page = rig.open_address("").await;
    wait_until_it_says_that_it_cannot_start(&page).await;
}

each_engine!(a_mended_build_gets_through_to_one_that_cannot_start);
async fn a_mended_build_gets_through_to_one_that_cannot_start(rig: &mut Rig) {
    let site = rig.serve_a_copy();
    // A build that is whole, so that it is kept, but whose program is broken.
    let program = program(&site);
    let whole = std::fs::read(&program).unwrap();
    std::fs::write(&program, "no program").unwrap();
    let worker = site.join("sw.js");
    let script = std::fs::read_to_string(&worker).unwrap();
    let digest = |bytes: &[u8]| BASE64_STANDARD.encode(Sha256::digest(bytes));
    assert!(script.contains(&digest(&whole)));
    let script = script.replace(&digest(&whole), &digest(b"no program"));
    std::fs::write(&worker, script).unwrap();
    second_build::put(&site, "broken");

    let page = rig.open_address("").await;
    wait_until_it_says_that_it_cannot_start(&page).await;
    // A worker takes the page on once all files are kept. One engine goes on
    // calling it "activating" to a page that asks nothing else of it.
    let script = "return navigator.serviceWorker.controller !== null";
    page.wait_for_script("the broken build to be kept", script)
        .await;

    second_build::copy(&places::dist(), &site);
    page.script(
        // Not waited for: the mended build may take the page's place meanwhile.
        "navigator.serviceWorker.getRegistration()
            .then((registration) => registration.update()).catch(() => {})",
        vec![],
    )
    .await;
    page.wait_until_it_stands().await;
}
