//! All parts of a measure on one strip: each result with its give-or-take, over
//! the window they share.

use assembly_core::measure::Window;
use build_plan::At;

use super::standing::Stands;
use crate::kit::piece::{El, Piece, drawn, el};
use crate::kit::verdict::shape;

const WIDTH: f64 = 200.0;
const HEIGHT: f64 = 16.0;
/// Two standard deviations each side hold nearly every case.
const WIDE: f64 = 2.0;

/// The stretch of values that all bars share.
#[derive(Clone, Copy, PartialEq, Debug)]
struct Stretch {
    from: f64,
    to: f64,
}

impl Stretch {
    /// Wide enough for every result and the window, with air around; nothing
    /// when there is no result, or all of them are one and the same number.
    fn over(all: &[(At, Stands)]) -> Option<Self> {
        let judged = || all.iter().filter_map(|(_, stands)| stands.judged.as_ref());
        judged().next()?;
        let ends = judged().flat_map(|one| {
            let window = one.window;
            [
                Some(one.least.value() - WIDE * one.least.deviation()),
                Some(one.greatest.value() + WIDE * one.greatest.deviation()),
                window.and_then(|window| window.low()),
                window.and_then(|window| window.high()),
            ]
        });
        let known: Vec<f64> = ends.flatten().filter(|end| end.is_finite()).collect();
        let from = known.iter().copied().reduce(f64::min)?;
        let to = known.iter().copied().reduce(f64::max)?;
        let air = (to - from) * 0.06;
        (air > 0.0).then_some(Self {
            from: from - air,
            to: to + air,
        })
    }

    fn x(self, value: f64) -> f64 {
        ((value - self.from) / (self.to - self.from)).clamp(0.0, 1.0) * WIDTH
    }
}

/// Every part with its mark, its number and its bar; each is a link.
#[must_use]
pub fn strip(all: &[(At, Stands)], here: Option<At>, to: impl Fn(usize) -> String) -> El {
    let stretch = Stretch::over(all);
    let rows = all.iter().enumerate().map(|(place, (at, stands))| {
        let mark = stands.mark();
        let value = stands.judged.as_ref().map(|judged| {
            let class = if stands.stale.is_empty() {
                "strip-value"
            } else {
                "strip-value gone"
            };
            el("span").class(class).text(&judged.value_words())
        });
        let bar = stretch.and_then(|stretch| bar(stands, stretch));
        let mut link = el("a")
            .class("strip-row")
            .attr("href", &to(place + 1))
            .test(&format!("part-{}", place + 1))
            .attr("data-verdict", mark.name());
        if here == Some(*at) {
            link = link.attr("aria-current", "true");
        }
        let words = el("span")
            .class("strip-words")
            .with(el("strong").text(&at.to_string()))
            .with(value)
            .with(el("span").class("strip-says").text(&stands.words()));
        el("li")
            .with(link.with(shape(mark)).with(words).with(bar))
            .into()
    });
    el("ol").class("strip").all(rows)
}

fn bar(stands: &Stands, stretch: Stretch) -> Option<El> {
    let judged = stands.judged.as_ref()?;
    let rect = |class: &str, (left, right): (f64, f64), (top, height): (f64, f64)| {
        drawn("rect")
            .class(class)
            .attr("x", &format!("{left:.1}"))
            .attr("width", &format!("{:.1}", (right - left).max(1.0)))
            .attr("y", &format!("{top:.1}"))
            .attr("height", &format!("{height:.1}"))
    };
    let window = judged.window.map(|window: Window| {
        let low = window.low().map_or(0.0, |low| stretch.x(low));
        let high = window.high().map_or(WIDTH, |high| stretch.x(high));
        rect("strip-window", (low, high), (0.0, HEIGHT))
    });
    let (least, greatest) = (&judged.least, &judged.greatest);
    let spread = (
        stretch.x(least.value() - WIDE * least.deviation()),
        stretch.x(greatest.value() + WIDE * greatest.deviation()),
    );
    let body = (stretch.x(least.value()), stretch.x(greatest.value()));
    let drawing = drawn("svg")
        .class("strip-bar")
        .attr("viewBox", &format!("0 0 {WIDTH} {HEIGHT}"))
        .attr("preserveAspectRatio", "none")
        .attr("aria-hidden", "true")
        .with(window.map_or_else(Piece::none, Into::into))
        .with(rect("strip-spread", spread, (6.0, 4.0)))
        .with(rect(
            "strip-body",
            (body.0 - 1.0, body.1 + 1.0),
            (2.0, 12.0),
        ));
    Some(drawing)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kit::judged::Judged;
    use assembly_core::measure::{Estimate, Sources};
    use assembly_core::quantity::unit;

    fn stands(value: Option<f64>) -> (At, Stands) {
        let judged = value.map(|value| Judged {
            least: Estimate::exact(value),
            greatest: Estimate::exact(value),
            sources: Sources::default(),
            window: Window::new(Some(1.0), Some(2.0)).ok(),
            measure: None,
            findings: Vec::new(),
            advice: None,
            sets: Vec::new(),
            unit: unit("mm").unwrap(),
        });
        let stands = Stands {
            judged,
            missing: Vec::new(),
            common_practice: None,
            stale: Vec::new(),
            let_pass: None,
            left_out: Vec::new(),
        };
        (At::Engine, stands)
    }

    #[test]
    fn every_result_and_the_window_lie_on_the_strip() {
        let all = [stands(Some(0.5)), stands(None), stands(Some(1.5))];
        let stretch = Stretch::over(&all).unwrap();
        for value in [0.5, 1.0, 1.5, 2.0] {
            let x = stretch.x(value);
            assert!(0.0 < x && x < WIDTH, "{value} at {x}");
        }
    }

    #[test]
    fn nothing_measured_draws_nothing() {
        assert_eq!(Stretch::over(&[stands(None)]), None);
        assert_eq!(Stretch::over(&[]), None);
    }
}
