//! From link to link through the whole app, as a stranger wanders: what every
//! kind of screen has to hold to, and what pictures are taken of.

use std::collections::{BTreeSet, VecDeque};

use serde_json::json;

use super::seeing::{sticking_out, violations};
use crate::engine::{Device, Engine};
use crate::page::Page;
use crate::rig::{Rig, run};

/// Where a screen is one of many that differ by what they are about only: the
/// word that stands before that, and how many parts of the address are about it.
const OF_MANY: [(&str, usize); 7] = [
    ("quick", 1),
    ("step", 2),
    ("change", 1),
    ("measure", 1),
    ("part", 1),
    ("mains", 1),
    ("build", 1),
];

/// What kind of screen an address leads to: the address without what it is about.
fn kind(address: &str) -> String {
    let mut left_out = 0;
    let mut words = Vec::new();
    for word in address.trim_matches('/').split('/') {
        if left_out > 0 && word != "limits" {
            left_out -= 1;
            words.push("*".to_owned());
            continue;
        }
        left_out = 0;
        if let Some((_, about)) = OF_MANY.iter().find(|(before, _)| *before == word) {
            left_out = *about;
        }
        let is_an_id = word.len() > 30;
        let is_a_number = word.starts_with(|letter: char| letter.is_ascii_digit());
        let numbered = word.rsplit_once('-').filter(|(_, number)| {
            !number.is_empty() && number.chars().all(|letter| letter.is_ascii_digit())
        });
        words.push(match numbered {
            _ if is_an_id || is_a_number => "*".to_owned(),
            Some((before, _)) => format!("{before}-*"),
            None => word.to_owned(),
        });
    }
    words.join("/")
}

/// Goes on from the screen that is shown to one of every kind that a link leads
/// to, from those on as well, and does something on each.
pub async fn on_every_kind_of_screen(page: &Page, mut what: impl AsyncFnMut(&str)) -> usize {
    let mut known = BTreeSet::new();
    let mut ahead = VecDeque::from(["/".to_owned()]);
    while let Some(address) = ahead.pop_front() {
        if !known.insert(kind(&address)) {
            continue;
        }
        page.go_to(&format!("#{address}")).await;
        page.open_all_folds().await;
        what(&address).await;
        let links = page
            .script(
                "return [...document.querySelectorAll('a[href^=\"#/\"]')]
                    .map((link) => link.getAttribute('href').slice(1))",
                vec![],
            )
            .await;
        let links: Vec<String> = serde_json::from_value(links).unwrap();
        ahead.extend(
            links
                .into_iter()
                .filter(|link| !known.contains(&kind(link))),
        );
    }
    known.len()
}

/// Kinds of screens that there have to be at least: a walk that loses its way
/// proves nothing.
const KINDS: usize = 45;

fn in_the_gloom(engine: Engine, fact: &str, flow: impl AsyncFnOnce(&mut Rig)) {
    run(engine, fact, async |rig: &mut Rig| {
        rig.device = Device::PHONE.dark();
        flow(rig).await;
    });
}

each_engine!(super::in_the_gloom; whatever_a_link_leads_to_is_for_everyone);
async fn whatever_a_link_leads_to_is_for_everyone(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_for_test("no-builds").await;
    page.bring_in_the_sample().await;
    let mut found = Vec::new();
    let kinds = on_every_kind_of_screen(&page, async |address| {
        for violation in violations(&page).await {
            found.push(format!("{address}: {violation}"));
        }
        let out = sticking_out(&page).await;
        if out != json!([]) {
            found.push(format!("{address} is wider than the screen: {out}"));
        }
    })
    .await;
    assert!(found.is_empty(), "{}", found.join("\n"));
    assert!(kinds >= KINDS, "only {kinds} kinds of screens were found");
    page.assert_no_trouble().await;
}

#[test]
fn screens_that_differ_by_what_they_are_about_are_one_kind() {
    let id = "5a3e91c4-07d2-48b6-b1f0-6ce82d9471a5";
    for (one, other) in [
        ("/quick/rod-bolt-stretch", "/quick/lobe-lift"),
        ("/build/1/step/crank-in", "/build/1/step/first-fire"),
        ("/build/1/map/bores-1", "/build/1/map/bores-2"),
        ("/build/1/measure/bore/3", "/build/1/measure/lobe-lift/1"),
        (
            "/build/1/measure/bore/limits",
            "/build/1/measure/lobe-lift/limits",
        ),
    ] {
        assert_eq!(kind(one), kind(other));
    }
    let group = format!("/build/{id}/tighten/{id}/engine/run");
    assert_eq!(kind(&group), "build/*/tighten/*/engine/run");
    for (one, other) in [
        ("/quick", "/quick/lobe-lift"),
        ("/build/1/measure/bore/3", "/build/1/measure/bore/limits"),
        ("/build/1/mains/1", "/build/1/mains/limits"),
        ("/build/1/step/crank-in", "/build/1/step/trial/main-1"),
        ("/build/1/oil/film", "/build/1/oil/run"),
    ] {
        assert_ne!(kind(one), kind(other));
    }
}
