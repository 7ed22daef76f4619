//! Without a signal: the server's process is gone and the port refuses.

use std::collections::BTreeSet;
use std::path::Path;

use serde_json::json;

use crate::engine::Engine;
use crate::places;
use crate::rig::{Rig, run_with};
use crate::wait::until;

each_engine!(the_page_opens_with_the_server_stopped);
async fn the_page_opens_with_the_server_stopped(rig: &mut Rig) {
    opens_offline(rig).await;
}

fn under_a_sub_path(engine: Engine, fact: &str, flow: impl AsyncFnOnce(&mut Rig)) {
    run_with(engine, fact, &places::dist(), "/shop/book/", flow);
}

each_engine!(super::under_a_sub_path; the_page_opens_from_a_sub_path_with_the_server_stopped);
async fn the_page_opens_from_a_sub_path_with_the_server_stopped(rig: &mut Rig) {
    opens_offline(rig).await;
}

async fn opens_offline(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    rig.server.stop();
    page.reload().await;
    page.wait_until_it_stands().await;
    page.assert_no_trouble().await;
    // Once more from a cold start, with nothing left in memory.
    rig.kill_browser();
    let page = rig.open().await;
    page.assert_no_trouble().await;
}

each_engine!(exactly_the_files_of_the_build_are_kept);
async fn exactly_the_files_of_the_build_are_kept(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    let kept = page
        .script(
            "return caches.keys().then(async (names) => {
                const lists = await Promise.all(names.map(async (name) =>
                    (await (await caches.open(name)).keys()).map((request) => request.url)));
                return { caches: names.length, urls: lists.flat() };
            })",
            vec![],
        )
        .await;
    assert_eq!(kept["caches"], json!(1), "{kept}");
    let address = rig.server.address();
    let urls: BTreeSet<String> = kept["urls"]
        .as_array()
        .unwrap()
        .iter()
        .map(|url| url.as_str().unwrap().replacen(&address, "", 1))
        .collect();
    let mut build = BTreeSet::new();
    files(&places::dist(), "", &mut build);
    // The worker can't keep itself; the page for wrong addresses is the page.
    build.remove("sw.js");
    build.remove("404.html");
    build.remove("index.html");
    build.insert(String::new());
    assert_eq!(urls, build);
}

fn files(folder: &Path, below: &str, found: &mut BTreeSet<String>) {
    for entry in std::fs::read_dir(folder).unwrap().flatten() {
        let name = format!("{below}{}", entry.file_name().to_string_lossy());
        if entry.path().is_dir() {
            files(&entry.path(), &format!("{name}/"), found);
        } else {
            found.insert(name);
        }
    }
}

each_engine!(nothing_is_asked_of_anybody_else);
async fn nothing_is_asked_of_anybody_else(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    for screen in ["#/quick", "#/quick/running-clearance", "#/new", "#/"] {
        page.go(&format!("{}{screen}", rig.server.address())).await;
    }
    let asked = page
        .script(
            "return performance.getEntries().filter((entry) => /^(http|ws|data)/.test(entry.name))
                .map((entry) => entry.name)",
            vec![],
        )
        .await;
    let asked: Vec<String> = serde_json::from_value(asked).unwrap();
    assert!(asked.len() >= 3, "page, script and program: {asked:?}");
    let address = rig.server.address();
    let elsewhere: Vec<_> = asked
        .iter()
        .filter(|url| !url.starts_with(&address))
        .collect();
    assert!(elsewhere.is_empty(), "{elsewhere:?}");
    // And of its own server nothing that is not there, by any method but GET.
    for request in rig.server.requests() {
        assert!(
            request.starts_with("GET ") && request.ends_with(" 200"),
            "{request}"
        );
    }
    page.assert_no_trouble().await;
}

each_engine!(the_page_may_run_and_reach_nothing_but_its_own_files);
async fn the_page_may_run_and_reach_nothing_but_its_own_files(rig: &mut Rig) {
    let page = rig.open().await;
    let policy = page
        .script(
            "return document.querySelector('meta[http-equiv=Content-Security-Policy]').content",
            vec![],
        )
        .await;
    let policy = policy.as_str().unwrap();
    assert!(!policy.contains("'unsafe-inline'"), "{policy}");
    assert!(!policy.contains("'unsafe-eval'"), "{policy}");
    // What a foreign text in the page would try. The script is written into
    // the page itself, where the policy holds.
    page.script(
        "window.ran = [];
        const own = document.createElement('script');
        own.textContent = 'window.ran.push(\"a script in the page\")';
        document.body.append(own);
        const button = document.createElement('button');
        button.setAttribute('onclick', 'window.ran.push(\"an attribute\")');
        document.body.append(button);
        button.click();
        fetch('http://127.0.0.1:9/').catch(() => {});
        new Image().src = 'http://127.0.0.1:9/picture.png';",
        vec![],
    )
    .await;
    for broken in ["script-src", "connect-src", "img-src"] {
        until(&format!("the policy to stop it by {broken}"), async || {
            let seen = page.trouble_or_none().await;
            let stopped = seen
                .iter()
                .any(|line| line.starts_with(&format!("policy: {broken}")));
            stopped.then_some(())
        })
        .await;
    }
    assert_eq!(page.script("return window.ran", vec![]).await, json!([]));
}
