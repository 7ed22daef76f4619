//! Photos: taken, shown, and said to be missing when they are not here.

use build_journal::fact::{Photo, Spot};
use build_journal::fold::{Build, KeptPhoto};
use build_journal::{Body, bundle};
use build_plan::Place;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlInputElement};

use super::bought;
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::device::files;
use crate::device::photos::{self, Shown};
use crate::device::picture::shrink;
use crate::kit::piece::{El, Piece, button, el, note};
use crate::kit::section::section;
use crate::kit::toast::toast;
use crate::kit::words::{too_long, word_field};

/// As many photos are shown at once.
const AT_ONCE: usize = 12;
const WORDS_AT_MOST: usize = 200;

/// What a strip is about: the step and the part of the engine.
#[derive(Clone, PartialEq, Eq)]
struct About {
    step: Option<String>,
    place: Option<Place>,
}

impl About {
    fn holds(&self, photo: &Photo) -> bool {
        let step = self.step.is_none() || self.step == photo.step;
        let part = self.place.is_none_or(|place| {
            let shown = photo.place.as_ref().and_then(Spot::place);
            shown.is_some_and(|shown| shown.at == place.at)
        });
        step && part
    }
}

/// The photos of a step and a part of the engine, either or both, with the
/// button that takes another one.
#[must_use]
pub fn photo_strip(step: Option<&str>, place: Option<Place>) -> Piece {
    let opened: Opened = expect_context();
    strip(
        opened,
        About {
            step: step.map(str::to_owned),
            place,
        },
    )
    .into()
}

/// All photos of a build.
#[must_use]
pub fn all_photos(opened: Opened) -> Piece {
    let about = About {
        step: None,
        place: None,
    };
    section("Photos").with(strip(opened, about)).into()
}

fn strip(opened: Opened, about: About) -> El {
    let most = RwSignal::new(AT_ONCE);
    let (own, to_take) = (about.clone(), about);
    let found = Memo::new(move |_| {
        opened.build.with(|build| {
            let photos = build.photos.iter().filter(|kept| own.holds(&kept.photo));
            photos.cloned().collect::<Vec<KeptPhoto>>()
        })
    });
    let pictures = Piece::live(move || {
        let most = most.get();
        found.with(|found| {
            untrack(|| {
                let latest = found.iter().rev().take(most);
                let pictures: Vec<Piece> = latest
                    .map(|kept| {
                        let words = opened
                            .build
                            .with_untracked(|build| words(&kept.photo, build));
                        el("li").with(picture(&kept.photo, &words)).into()
                    })
                    .collect();
                (!pictures.is_empty())
                    .then(|| el("ul").class("photos").all(pictures))
                    .into()
            })
        })
    });
    let more = Piece::when(
        move || found.with(Vec::len) > most.get(),
        move || {
            button("quiet", "Earlier photos", "more-photos", move || {
                most.update(|most| *most += AT_ONCE);
            })
            .into()
        },
    );
    el("div")
        .class("photo-strip")
        .with(pictures)
        .with(more)
        .with(take_photo(opened, to_take))
}

fn words(photo: &Photo, build: &Build) -> String {
    bought::of(&Body::Photo(photo.clone()), build).unwrap_or_default()
}

/// The button that takes a photo, from the camera or the pictures of the device.
fn take_photo(opened: Opened, about: About) -> El {
    let toast = toast();
    let busy = RwSignal::new(false);
    let shows = Draft::of(opened.draft("photo-words"));
    let picked = move |event: Event| {
        let input = event
            .target()
            .and_then(|input| input.dyn_into::<HtmlInputElement>().ok());
        let Some(file) = input.as_ref().and_then(files::picked) else {
            return;
        };
        let about = about.clone();
        let words = shows.now().trim().to_owned();
        if too_long(&words, WORDS_AT_MOST).is_some() {
            return;
        }
        let words = Some(words).filter(|words| !words.is_empty());
        busy.set(true);
        spawn_local(async move {
            let said = match shrink(&file).await {
                Ok(bytes) => keep(opened, about, words, bytes).await,
                Err(words) => Err(words),
            };
            // The page may have been left meanwhile.
            let is_left = busy.try_set(false).is_some();
            if said.is_ok() && !is_left {
                shows.clear();
            }
            toast.say(
                said.err()
                    .unwrap_or_else(|| "The photo is kept.".to_owned()),
            );
        });
    };
    let input = el("input")
        .attr("type", "file")
        .class("only-heard")
        .attr("accept", "image/*")
        .test("take-photo")
        .on("change", picked);
    let words = word_field(
        "photo-words",
        "What the next photo shows",
        "",
        shows,
        WORDS_AT_MOST,
        || None,
    );
    let press = el("label")
        .class("button quiet file")
        .live_text(move || {
            let words = if busy.get() {
                "Keeping the photo…"
            } else {
                "Take a photo"
            };
            words.to_owned()
        })
        .with(input);
    el("div").class("photo-strip").with(words).with(press)
}

/// Keeps a photo: first its bytes, then the fact that tells of it.
async fn keep(
    opened: Opened,
    about: About,
    words: Option<String>,
    bytes: Vec<u8>,
) -> Result<(), String> {
    let hash = bundle::digest(&bytes);
    photos::put(&hash, &bytes)
        .await
        .map_err(|error| format!("The photo could not be kept. {error}"))?;
    let photo = Photo {
        hash,
        media: "image/jpeg".to_owned(),
        bytes: u32::try_from(bytes.len()).unwrap_or(u32::MAX),
        step: about.step,
        place: about.place.map(Spot::Known),
        words,
    };
    opened.write_down(Body::Photo(photo));
    Ok(())
}

/// One photo, or word that it is not on this device.
#[must_use]
pub fn picture(photo: &Photo, words: &str) -> El {
    let shown = photos::show(photo);
    let large = RwSignal::new(false);
    let words = words.to_owned();
    let inside = Piece::live(move || {
        match shown.get() {
        Shown::NotYet => note("hint", "Opening the photo…").into(),
        Shown::Missing => note("photo-missing", "This photo is not on this device. It comes with a file that was exported where it was taken.")
            .test("photo-missing")
            .into(),
        Shown::Refused(why) => note("photo-missing", &format!("The photo can't be opened. {why}"))
            .test("photo-missing")
            .into(),
        Shown::At(address) => el("button")
            .attr("type", "button")
            .class("photo-press")
            .test("photo")
            .live_flag("aria-expanded", move || large.get())
            .click(move || large.update(|large| *large = !*large))
            .with(
                el("img")
                    .attr("src", &address)
                    .attr("alt", &words)
                    .attr("decoding", "async"),
            )
            .into(),
    }
    });
    el("figure")
        .class("photo")
        .live_class("large", move || large.get())
        .with(inside)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_strip_shows_the_photos_of_its_step_and_its_part() {
        let about = |step: Option<&str>, place| About {
            step: step.map(str::to_owned),
            place,
        };
        let photo = Photo {
            hash: String::new(),
            media: "image/jpeg".to_owned(),
            bytes: 1,
            step: Some("crank-in".to_owned()),
            place: Some(Spot::Known(
                Place::main(2).station(build_plan::Station::Front),
            )),
            words: None,
        };
        assert!(about(None, None).holds(&photo));
        assert!(about(Some("crank-in"), None).holds(&photo));
        assert!(about(None, Some(Place::main(2))).holds(&photo));
        assert!(!about(Some("cam-in"), None).holds(&photo));
        assert!(!about(Some("crank-in"), Some(Place::main(3))).holds(&photo));
    }
}
