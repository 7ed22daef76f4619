//! What arrives when it is first needed.
//!
//! With the feature `apart` a first visit fetches the frame, the bench and the
//! quick check. What belongs to a build stands in files of its own, which the
//! service worker has kept by the time somebody opens them. `cargo xtask build`
//! cuts the page at the functions [`builds`], [`checks`] and [`advice`]; any
//! other build leaves it whole, and all of this is here at once.
//!
//! A part is a handful of functions. To put one more screen apart, name the
//! function that makes it in its part, and show it through [`Part::show`]. What
//! is reached only through a part goes into its file; what the first page needs
//! too stays with the first page.

use std::cell::Cell;
use std::future::Future;
use std::pin::Pin;
use std::thread::LocalKey;

use build_journal::{BuildId, Journal};
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_split_helpers::SplitLoaderError;
#[cfg(feature = "apart")]
use wasm_split_helpers::wasm_split;

use crate::bench::{self, Came};
use crate::build;
use crate::device::dress;
use crate::device::keeping::Keeping;
use crate::kit::judged::{self, Judged};
use crate::kit::piece::{Piece, button, note, p};
use crate::quick;
use crate::route::Page;

/// What there is to say when a part can't be fetched.
const NOT_HERE: &str = "This part of Thoubook is not on this device yet and can't be fetched now. Nothing that was written down is lost. Try again with a signal.";

/// Something that is on its way.
pub type Coming<T> = Pin<Box<dyn Future<Output = T>>>;

/// All that belongs to a build: the journal, the plan, the pages.
#[derive(Clone, Copy)]
pub struct Builds {
    pages: fn(&str, Memo<Page>) -> Piece,
    cards: fn(Vec<(BuildId, RwSignal<Journal>)>) -> Piece,
    new_build: fn() -> Piece,
    take: fn(Keeping, Vec<u8>) -> Coming<Came>,
    bring_in: fn(Keeping, Box<Journal>) -> Coming<usize>,
    read: fn(Keeping) -> Coming<()>,
    another_tab: fn(Keeping, Option<&str>, Option<&str>),
    keep: fn(&str, RwSignal<bool>) -> Piece,
    sample: fn(Keeping) -> Coming<Result<(), String>>,
    photos_words: fn(Keeping) -> Coming<Option<String>>,
}

/// Every quick check there is, besides the first few.
#[derive(Clone, Copy)]
pub struct Checks {
    all: fn() -> Piece,
    one: fn(&str) -> Piece,
    trade_words: fn() -> Piece,
}

/// All that can be done about a fit.
#[derive(Clone, Copy)]
pub struct Advice {
    what_to_do: fn(&Judged) -> Piece,
}

#[cfg_attr(feature = "apart", wasm_split(builds, fallible))]
#[cfg_attr(not(feature = "apart"), expect(clippy::unnecessary_wraps))]
fn builds() -> Result<Builds, SplitLoaderError> {
    let part = Builds {
        pages: build::build_pages,
        cards: bench::cards,
        new_build: bench::new_build,
        take: |keeping, bytes| Box::pin(bench::take(keeping, bytes)),
        bring_in: |keeping, journal| Box::pin(async move { keeping.bring_in(&journal).await }),
        read: |keeping| Box::pin(keeping.look()),
        another_tab: Keeping::another_tab,
        keep: bench::keep,
        sample: |keeping| Box::pin(bench::bring_in_sample(keeping)),
        photos_words: |keeping| Box::pin(bench::photos_words(keeping)),
    };
    Ok(part)
}

#[cfg_attr(feature = "apart", wasm_split(checks, fallible))]
#[cfg_attr(not(feature = "apart"), expect(clippy::unnecessary_wraps))]
fn checks() -> Result<Checks, SplitLoaderError> {
    let part = Checks {
        all: quick::all_checks,
        one: quick::rarer_check,
        trade_words: quick::trade_words,
    };
    Ok(part)
}

#[cfg_attr(feature = "apart", wasm_split(advice, fallible))]
#[cfg_attr(not(feature = "apart"), expect(clippy::unnecessary_wraps))]
fn advice() -> Result<Advice, SplitLoaderError> {
    let part = Advice {
        what_to_do: judged::what_to_do,
    };
    Ok(part)
}

/// What the function of a part gives, once it has been fetched.
macro_rules! fetched {
    ($from:ident) => {{
        #[cfg(feature = "apart")]
        let part = $from().await;
        #[cfg(not(feature = "apart"))]
        let part = $from();
        part.ok()
    }};
}

/// The pages of a build come with the style sheet they are dressed in: nothing
/// of them is shown before both are here.
async fn dressed_builds() -> Option<Builds> {
    let dressed = dress::later();
    let part = fetched!(builds);
    if dressed.await { part } else { None }
}

/// A part, by the future that fetches it and the cell that holds it.
macro_rules! part {
    ($name:ident: $what:ty, $here:ident, $fetch:expr) => {
        thread_local! {
            static $here: Cell<Option<$what>> = const { Cell::new(None) };
        }
        static $name: Part<$what> = Part {
            fetch: || Box::pin($fetch),
            here: &$here,
        };
    };
}

part!(BUILDS: Builds, BUILDS_HERE, dressed_builds());
part!(CHECKS: Checks, CHECKS_HERE, async { fetched!(checks) });
part!(ADVICE: Advice, ADVICE_HERE, async { fetched!(advice) });

/// A part of the page: how it is fetched, and where it is held once it is here.
struct Part<T: 'static> {
    fetch: fn() -> Coming<Option<T>>,
    here: &'static LocalKey<Cell<Option<T>>>,
}

impl<T: Copy> Part<T> {
    /// The part, fetched if it is not here; `None` when it can't be.
    async fn get(&self) -> Option<T> {
        if let Some(part) = self.here.get() {
            return Some(part);
        }
        let part = (self.fetch)().await?;
        self.here.set(Some(part));
        Some(part)
    }

    /// What the part makes, at once when it is here, else as soon as it is.
    fn show(&'static self, make: impl Fn(T) -> Piece + 'static) -> Piece {
        if let Some(part) = self.here.get() {
            return make(part);
        }
        let tried = RwSignal::new(None::<bool>);
        let fetch = move || {
            spawn_local(async move {
                let here = self.get().await.is_some();
                // The page may show something else by now.
                let _ = tried.try_set(Some(here));
            });
        };
        fetch();
        Piece::live(move || match (tried.get(), self.here.get()) {
            (_, Some(part)) => untrack(|| make(part)),
            (None, None) => note("lead", "Opening…").into(),
            (Some(_), None) => not_here(fetch),
        })
    }
}

/// The pages of a build.
#[must_use]
pub fn build_pages_later(id: String, page: Memo<Page>) -> Piece {
    BUILDS.show(move |part| (part.pages)(&id, page))
}

/// The cards of these builds.
#[must_use]
pub fn cards_later(builds: Vec<(BuildId, RwSignal<Journal>)>) -> Piece {
    BUILDS.show(move |part| (part.cards)(builds.clone()))
}

/// The form that begins a build.
#[must_use]
pub fn new_build_later() -> Piece {
    BUILDS.show(|part| (part.new_build)())
}

/// All quick checks by what a person is holding.
#[must_use]
pub fn all_checks_later() -> Piece {
    CHECKS.show(|part| (part.all)())
}

/// The words of the trade.
#[must_use]
pub fn trade_words_later() -> Piece {
    CHECKS.show(|part| (part.trade_words)())
}

/// One of all the quick checks.
#[must_use]
pub fn rarer_check_later(id: String) -> Piece {
    CHECKS.show(move |part| (part.one)(&id))
}

/// The builds that a text can be kept in.
#[must_use]
pub fn keep_later(text: String, open: RwSignal<bool>) -> Piece {
    BUILDS.show(move |part| (part.keep)(&text, open))
}

/// What to do about a result.
#[must_use]
pub fn what_to_do_later(judged: Judged) -> Piece {
    ADVICE.show(move |part| (part.what_to_do)(&judged))
}

/// Takes in what stands in a file.
pub async fn take_later(keeping: Keeping, bytes: Vec<u8>) -> Came {
    match BUILDS.get().await {
        Some(part) => (part.take)(keeping, bytes).await,
        None => Came::Said(NOT_HERE.to_owned()),
    }
}

/// Keeps a build that a file gave.
///
/// # Errors
/// A sentence, when the part that can do it is not here.
pub async fn bring_in_later(keeping: Keeping, journal: Box<Journal>) -> Result<usize, String> {
    match BUILDS.get().await {
        Some(part) => Ok((part.bring_in)(keeping, journal).await),
        None => Err(NOT_HERE.to_owned()),
    }
}

/// Brings the sample engine in.
///
/// # Errors
/// A sentence, when it can't be fetched.
pub async fn sample_later(keeping: Keeping) -> Result<(), String> {
    match BUILDS.get().await {
        Some(part) => (part.sample)(keeping).await,
        None => Err(NOT_HERE.to_owned()),
    }
}

/// How many photos are on this device, in words; nothing while there are none.
pub async fn photos_words_later(keeping: Keeping) -> Option<String> {
    (BUILDS.get().await?.photos_words)(keeping).await
}

/// Reads what is kept on this device. Gives whether it was read: not, for want
/// of the part that reads it.
pub async fn read_book_later(keeping: Keeping) -> bool {
    match BUILDS.get().await {
        Some(part) => {
            (part.read)(keeping).await;
            true
        }
        None => false,
    }
}

/// Takes in what another tab has done.
pub async fn another_tab_later(keeping: Keeping, key: Option<String>, text: Option<String>) {
    // A tab that can't fetch the part shows no builds either.
    if let Some(part) = BUILDS.get().await {
        (part.another_tab)(keeping, key.as_deref(), text.as_deref());
    }
}

/// Word that a part is missing, with a way to try again.
#[must_use]
pub fn not_here(again: impl FnMut() + 'static) -> Piece {
    Piece::all([
        p(NOT_HERE).attr("role", "alert").test("not-here").into(),
        button("", "Try again", "fetch-again", again).into(),
    ])
}
