//! A result held against its limits: the verdict, how far from the limits, what
//! makes the give-or-take, and what to do.

use assembly_core::describe::{Finding, Gravity};
use assembly_core::fit::running_clearance::{Advice, RunningClearance, advise};
use assembly_core::measure::{
    Assessment, DangerousSide, Estimate, Measured, Sources, Verdict, Window,
};
use assembly_core::moves::{self, Circumstances, Ranked, Who};
use assembly_core::quantity::{Unit, show, show_high_limit, show_low_limit};
use assembly_core::tool::INSTRUMENTS;
use build_plan::Measure;
use leptos::prelude::*;
use uom::si::f64::Length;

use super::aside::a_frame_later;
use super::number;
use super::piece::{El, Piece, drawn, el, note, p};
use super::scale::scale;
use super::section::{fold, fold_later, section, sentences};
use super::verdict::{Mark, live_plate, plate};

/// No more moves than this are offered at once.
const MOVES_SHOWN: usize = 5;

/// A result with everything that is needed to judge it.
#[derive(Clone, PartialEq)]
pub struct Judged {
    /// The least of it.
    pub least: Estimate,
    /// The greatest of it; the same as the least for a single value.
    pub greatest: Estimate,
    /// The causes of error in both.
    pub sources: Sources,
    /// The limits, where there are any.
    pub window: Option<Window>,
    /// What the trade knows of it, where it knows something.
    pub measure: Option<&'static Measure>,
    /// What else the numbers say.
    pub findings: Vec<Finding>,
    /// What the numbers say to do, where that is known.
    pub advice: Option<Box<Advice>>,
    /// The sizes that half-shells are made in, where a sheet lists them.
    pub sets: Vec<Length>,
    /// The unit it is said in.
    pub unit: &'static Unit,
}

/// The advice on a running clearance that was worked out from one reading of
/// each place.
#[must_use]
pub fn advice_on(
    least: &Estimate,
    greatest: &Estimate,
    window: &Window,
    sources: &Sources,
) -> Box<Advice> {
    let length = |one: &Estimate| Measured::<Length>::from_estimate(one.clone());
    let clearance = RunningClearance {
        least: length(least),
        greatest: length(greatest),
        mean: length(least),
        taper: None,
        journal_taper: None,
        journal_out_of_round: None,
        bore_taper: None,
        bore_out_of_round: None,
        eccentricity: None,
        findings: Vec::new(),
    };
    Box::new(advise(&clearance, 1, window, sources, INSTRUMENTS))
}

impl Judged {
    fn dangerous(&self) -> DangerousSide {
        self.measure
            .map_or(DangerousSide::Neither, |measure| measure.dangerous)
    }

    /// What can be said of it; `None` without limits.
    #[must_use]
    pub fn assessment(&self) -> Option<Assessment> {
        if let Some(advice) = &self.advice {
            return Some(advice.assessment);
        }
        let both = (&self.least, &self.greatest);
        let window = self.window.as_ref()?;
        Some(Assessment::judged(
            both,
            window,
            self.dangerous(),
            &self.sources,
        ))
    }

    /// The finding that forbids building it like this, if there is one.
    fn stop(&self) -> Option<&Finding> {
        self.findings
            .iter()
            .find(|one| one.gravity == Gravity::Stop)
    }

    /// The mark: what must not be built is bad, limits or none.
    #[must_use]
    pub fn mark(&self) -> Mark {
        if self.stop().is_some() {
            return Mark::Bad;
        }
        self.assessment()
            .map_or(Mark::None, |said| said.verdict.into())
    }

    /// The result in words: one value, or from the least to the greatest.
    #[must_use]
    pub fn value_words(&self) -> String {
        if self.is_one_value() {
            return number::text(&self.least, self.unit);
        }
        let least = show(self.least.value(), Some(self.least.deviation()), self.unit);
        format!(
            "{} to {}",
            least.number,
            number::text(&self.greatest, self.unit)
        )
    }

    fn is_one_value(&self) -> bool {
        self.least.value() == self.greatest.value()
    }

    /// The verdict in words.
    #[must_use]
    pub fn verdict_words(&self) -> String {
        match (self.mark(), self.window) {
            (Mark::None, _) => "no limits typed".to_owned(),
            (Mark::Bad, Some(window)) => self.miss_words(&window).map_or_else(
                || Mark::Bad.words().to_owned(),
                |miss| format!("bad: {miss}"),
            ),
            (mark, _) => mark.words().to_owned(),
        }
    }

    /// One short line for above the keypad.
    #[must_use]
    pub fn live_words(&self) -> String {
        format!("{} · {}", self.value_words(), self.verdict_words())
    }

    /// The words of the trade for being under and over the window.
    fn side_words(&self) -> (&'static str, &'static str) {
        if self
            .measure
            .is_some_and(|measure| measure.id.ends_with("clearance"))
        {
            ("tight", "loose")
        } else {
            ("too small", "too big")
        }
    }

    /// How far outside: "tight by 0.4 thou".
    fn miss_words(&self, window: &Window) -> Option<String> {
        let (under, over) = self.side_words();
        let short = window
            .low()
            .map(|low| low - self.least.value())
            .filter(|by| *by > 0.0);
        let long = window
            .high()
            .map(|high| self.greatest.value() - high)
            .filter(|by| *by > 0.0);
        let say = |word: &str, by: f64, of: &Estimate| {
            format!("{word} by {}", Shown(by, of.deviation(), self.unit).short())
        };
        match (short, long) {
            (Some(short), Some(long)) => Some(format!(
                "{}, and {}",
                say(under, short, &self.least),
                say(over, long, &self.greatest)
            )),
            (Some(short), None) => Some(say(under, short, &self.least)),
            (None, Some(long)) => Some(say(over, long, &self.greatest)),
            (None, None) => None,
        }
    }

    /// The sentences under the verdict.
    fn details(&self) -> Vec<String> {
        if let Some(stop) = self.stop() {
            return vec![capital(&stop.text)];
        }
        let (Some(window), Some(said)) = (self.window, self.assessment()) else {
            return vec![
                "Type the limits from the maker's sheet, and this says good or bad.".to_owned(),
            ];
        };
        let mut sentences = vec![format!("Against {}.", window_words(&window, self.unit))];
        if let Some(advice) = &self.advice
            && said.verdict != Verdict::Bad
        {
            // How far outside is in the headline already.
            sentences.extend(advice.sentences(self.unit));
        }
        let (under, over) = self.side_words();
        let (word, harm) = if said.below >= said.above {
            (under, self.measure.map_or("", |measure| measure.too_little))
        } else {
            (over, self.measure.map_or("", |measure| measure.too_much))
        };
        match said.verdict {
            _ if harm.is_empty() => {}
            Verdict::Good => {}
            Verdict::TooCloseToCall => sentences.push(format!("If it is {word}: {harm}")),
            Verdict::Bad => sentences.push(harm.to_owned()),
        }
        sentences.retain(|sentence| !sentence.is_empty());
        sentences
    }

    fn moves(&self) -> Vec<Ranked> {
        let (Some(measure), Some(window)) = (self.measure, self.window) else {
            return Vec::new();
        };
        let typed = |one: &Estimate| Measured::<Length>::from_estimate(one.clone());
        moves::for_extent(
            measure.id,
            &typed(&self.least),
            &typed(&self.greatest),
            &window,
            measure.dangerous,
            &Circumstances {
                sets: self.sets.clone(),
                ..Circumstances::default()
            },
        )
    }
}

/// A window in words: "1.5 to 2.5 thou", "at least 1.5 thou".
#[must_use]
pub fn window_words(window: &Window, unit: &'static Unit) -> String {
    let low = window.low().map(|low| show_low_limit(low, unit));
    let high = window.high().map(|high| show_high_limit(high, unit));
    match (low, high) {
        (Some(low), Some(high)) => format!("{} to {high}", low.number),
        (Some(low), None) => format!("at least {low}"),
        (None, Some(high)) => format!("at most {high}"),
        (None, None) => "no limits".to_owned(),
    }
}

/// A distance with the digits that its uncertainty allows, which is not said again.
struct Shown(f64, f64, &'static Unit);

impl Shown {
    fn short(&self) -> String {
        let mut shown = show(self.0, (self.1 > 0.0).then_some(self.1), self.2);
        shown.give_or_take = None;
        shown.to_string()
    }
}

/// The words with a capital at the start.
#[must_use]
pub fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().collect::<String>() + letters.as_str())
        .unwrap_or_default()
}

/// The verdict with its drawing and the sentences to it.
#[must_use]
pub fn verdict(judged: &Judged) -> Piece {
    Piece::all([
        note("reading", &judged.value_words())
            .test("reading")
            .into(),
        rule(judged).into(),
        plate(judged.mark(), &judged.verdict_words(), &judged.details()).into(),
    ])
}

/// The same of a result that changes while one looks at it: number and plate stand
/// and say the new verdict at once, the rule is drawn a painted frame later.
#[must_use]
pub fn live_verdict(judged: Memo<Option<Judged>>) -> Piece {
    let number = move || {
        let words = |judged: &Option<Judged>| judged.as_ref().map(Judged::value_words);
        judged.with(words).unwrap_or_default()
    };
    let said = Memo::new(move |_| {
        let said = |one: &Judged| (one.mark(), one.verdict_words(), one.details());
        let none = || (Mark::None, String::new(), Vec::new());
        judged.with(|judged| judged.as_ref().map_or_else(none, said))
    });
    let later = a_frame_later(judged);
    Piece::all([
        note("reading", "").test("reading").live_text(number).into(),
        Piece::live(move || later.with(|judged| judged.as_ref().and_then(rule).into())),
        live_plate(said).into(),
    ])
}

/// The result on a rule with the limits; none without limits.
fn rule(judged: &Judged) -> Option<El> {
    let window = judged.window.as_ref()?;
    let words = format!(
        "{} on a rule, against {}: {}",
        judged.value_words(),
        window_words(window, judged.unit),
        judged.verdict_words()
    );
    let both = (&judged.least, &judged.greatest);
    scale(window, both, judged.unit, &words)
}

/// What makes the give-or-take, the most of it in a sentence.
#[must_use]
pub fn dominates(value: &Estimate, sources: &Sources) -> Piece {
    let causes = value.causes(sources);
    let percent = |part: f64| format!("{:.0} %", part * 100.0);
    let Some(first) = causes.first() else {
        return Piece::none();
    };
    let most = format!(
        "Most of the give-or-take is the {} of the {}: {}.",
        first.origin.word(),
        first.label,
        percent(first.of_variance)
    );
    let all = move || {
        let rows = causes.iter().map(|cause| {
            el("li")
                .with(el("span").text(&format!("{}: {}", cause.label, cause.origin.word())))
                .with(
                    el("span")
                        .class("share-number")
                        .text(&percent(cause.of_variance)),
                )
                .with(share_bar(cause.of_variance))
                .into()
        });
        let hint = "Give or take is one standard deviation: two readings in three fall within it. What each tool does is common practice, not a promise.";
        Piece::all([
            note("hint", hint).into(),
            el("ul").class("shares").all(rows).into(),
        ])
    };
    Piece::all([
        p(&most).test("dominates").into(),
        fold_later("All of the give-or-take", all).into(),
    ])
}

/// A part of the whole as a bar.
#[must_use]
pub fn share_bar(part: f64) -> El {
    let width = format!("{:.2}", (part.clamp(0.0, 1.0) * 100.0).max(0.5));
    drawn("svg")
        .class("share-bar")
        .attr("viewBox", "0 0 100 4")
        .attr("preserveAspectRatio", "none")
        .attr("aria-hidden", "true")
        .with(drawn("rect").attr("width", &width).attr("height", "4"))
}

/// What the numbers say besides, without what the verdict has said already.
#[must_use]
pub fn findings(findings: &[Finding]) -> Piece {
    let lines: Vec<String> = findings
        .iter()
        .filter(|one| one.gravity != Gravity::Stop)
        .map(|one| capital(&one.text))
        .collect();
    (!lines.is_empty())
        .then(|| sentences("findings", &lines))
        .into()
}

/// What to do about a result that is not good.
#[must_use]
pub fn what_to_do(judged: &Judged) -> Piece {
    let moves = judged.moves();
    let never: Vec<String> = judged
        .measure
        .filter(|_| judged.mark() != Mark::Good)
        .map(|measure| {
            moves::never(measure.id)
                .map(|one| format!("{}. {}", one.title, one.why))
                .collect()
        })
        .unwrap_or_default();
    let rows = moves
        .iter()
        .take(MOVES_SHOWN)
        .map(|one| move_row(one, judged.unit));
    (!moves.is_empty())
        .then(|| {
            section("What to do")
                .test("what-to-do")
                .with(el("ul").class("moves").all(rows))
                .with((!never.is_empty()).then(|| fold("Never", sentences("", &never))))
        })
        .into()
}

fn move_row(one: &Ranked, unit: &'static Unit) -> Piece {
    let lands = one.landing.map(|landing| {
        let value = show(landing.least, Some(landing.give_or_take), unit);
        let mark = Mark::from(landing.assessment.verdict);
        note(
            "move-lands",
            &format!("then about {value}: {}", mark.words()),
        )
    });
    let size = (!one.words.is_empty()).then(|| el("span").text(&format!(": {}", one.words)));
    let who = match one.what.who {
        Who::Bench => "at your bench",
        Who::MachineShop => "machine shop",
    };
    let what = one.what;
    let how = move || {
        Piece::all([
            p(what.how).into(),
            what.parts
                .map(|parts| p(&format!("To buy: {parts}")))
                .into(),
            sentences("", what.cautions).into(),
        ])
    };
    el("li")
        .class("move")
        .with(
            el("p")
                .class("move-title")
                .with(el("strong").text(one.what.title))
                .with(size)
                .with(el("span").class("move-who").text(who)),
        )
        .with(lands)
        .with(fold_later("How", how))
        .into()
}
