//! The rule: a graduated line with the window on it, and a pointer where the
//! result lies, as wide as its give-or-take. It shows at a glance how far from
//! the limits a result is, and on which side.

use assembly_core::measure::{Estimate, Window};
use assembly_core::quantity::{Unit, show_high_limit, show_low_limit};

use super::piece::{El, Piece, drawn};

/// Two standard deviations each side hold nearly every case.
const WIDE: f64 = 2.0;
const WIDTH: f64 = 320.0;
const MARGIN: f64 = 14.0;
const MOST_TICKS: f64 = 48.0;

/// Where values lie on the drawing.
#[derive(Clone, Copy, PartialEq, Debug)]
struct Stretch {
    from: f64,
    to: f64,
}

impl Stretch {
    /// Wide enough for the window and the result, with some air around.
    fn of(window: &Window, least: &Estimate, greatest: &Estimate) -> Option<Self> {
        let marks = [
            window.low(),
            window.high(),
            Some(least.value() - WIDE * least.deviation()),
            Some(greatest.value() + WIDE * greatest.deviation()),
        ];
        let known = || {
            marks
                .iter()
                .flatten()
                .copied()
                .filter(|mark| mark.is_finite())
        };
        let from = known().reduce(f64::min)?;
        let to = known().reduce(f64::max)?;
        let air = (to - from) * 0.12;
        (air > 0.0).then_some(Self {
            from: from - air,
            to: to + air,
        })
    }

    fn x(self, value: f64) -> f64 {
        let part = ((value - self.from) / (self.to - self.from)).clamp(0.0, 1.0);
        MARGIN + part * (WIDTH - 2.0 * MARGIN)
    }

    /// Ticks at whole steps of the unit's decimals: each step, and whether it is a long one.
    fn ticks(self, unit: &Unit) -> Vec<(f64, bool)> {
        let (from, to) = (unit.from_si(self.from), unit.from_si(self.to));
        let span = to - from;
        let mut step = 10_f64.powf((span / MOST_TICKS).log10().ceil());
        if span / step < MOST_TICKS / 5.0 {
            step /= 2.0;
        }
        if !(step > 0.0 && step.is_finite()) {
            return Vec::new();
        }
        let first = (from / step).ceil();
        let count = (((to / step).floor() - first).max(0.0) as usize).min(200);
        (0..=count)
            .map(|at| first + at as f64)
            .map(|steps| (unit.to_si(steps * step), steps.rem_euclid(5.0) == 0.0))
            .collect()
    }
}

/// The rule with window and result, and what it shows for those who cannot see
/// it. A window without width around nothing is not drawn.
#[must_use]
pub fn scale(
    window: &Window,
    (least, greatest): (&Estimate, &Estimate),
    unit: &'static Unit,
    words: &str,
) -> Option<El> {
    let stretch = Stretch::of(window, least, greatest)?;
    let low = stretch.x(window.low().unwrap_or(stretch.from));
    let high = stretch.x(window.high().unwrap_or(stretch.to));
    let body = (stretch.x(least.value()), stretch.x(greatest.value()));
    let spread = (
        stretch.x(least.value() - WIDE * least.deviation()),
        stretch.x(greatest.value() + WIDE * greatest.deviation()),
    );
    // All in one line: it is drawn anew with every number that is typed.
    let ticks = stretch.ticks(unit).into_iter().map(|(value, long)| {
        let down = if long { 16 } else { 10 };
        format!("M{} 46v{down}", number(stretch.x(value)))
    });
    let ticks: String = ticks.collect();
    let limit = |value: f64, shown: &str| {
        let x = stretch.x(value);
        let word = drawn("text")
            .class("limit-word")
            .attr("x", &number(x))
            .attr("y", "82")
            .attr("text-anchor", "middle")
            .text(shown);
        Piece::all([upright("limit", x, (22.0, 66.0)).into(), word.into()])
    };
    let pointer = format!("M{} 22l-8-15h16z", number(f64::midpoint(body.0, body.1)));
    let drawing = drawn("svg")
        .class("scale")
        .attr("viewBox", "0 0 320 88")
        .attr("role", "img")
        .attr("aria-label", words)
        .with(bar("window", (low, high), (22.0, 24.0)))
        .with(bar("baseline", (0.0, WIDTH), (45.5, 1.0)))
        .with(drawn("path").class("tick").attr("d", &ticks))
        .with(
            window
                .low()
                .map(|low| limit(low, &show_low_limit(low, unit).number)),
        )
        .with(
            window
                .high()
                .map(|high| limit(high, &show_high_limit(high, unit).number)),
        )
        .with(bar("spread", spread, (30.0, 8.0)))
        .with(bar("body", (body.0 - 1.5, body.1 + 1.5), (24.0, 20.0)))
        .with(drawn("path").class("pointer").attr("d", &pointer));
    Some(drawing)
}

fn number(value: f64) -> String {
    format!("{value:.1}")
}

fn upright(class: &str, x: f64, (top, foot): (f64, f64)) -> El {
    drawn("line")
        .class(class)
        .attr("x1", &number(x))
        .attr("x2", &number(x))
        .attr("y1", &number(top))
        .attr("y2", &number(foot))
}

fn bar(class: &str, (left, right): (f64, f64), (top, height): (f64, f64)) -> El {
    drawn("rect")
        .class(class)
        .attr("x", &number(left))
        .attr("width", &number((right - left).max(1.0)))
        .attr("y", &number(top))
        .attr("height", &number(height))
}

#[cfg(test)]
mod tests {
    use super::*;
    use assembly_core::quantity::unit;

    fn thou(value: f64) -> f64 {
        value * 0.0254e-3
    }

    #[test]
    fn a_result_far_outside_still_fits_on_the_rule() {
        let window = Window::new(Some(thou(1.5)), Some(thou(2.5))).unwrap();
        let far = Estimate::exact(thou(40.0));
        let stretch = Stretch::of(&window, &far, &far).unwrap();
        assert!(stretch.x(thou(1.5)) > MARGIN && stretch.x(thou(40.0)) < WIDTH - MARGIN);
        assert!(stretch.x(thou(1.5)) < stretch.x(thou(40.0)));
    }

    #[test]
    fn ticks_stand_on_whole_steps_and_are_not_too_many() {
        let stretch = Stretch {
            from: thou(1.38),
            to: thou(2.62),
        };
        let ticks = stretch.ticks(unit("thou").unwrap());
        assert!((10..=60).contains(&ticks.len()), "{}", ticks.len());
        assert!(
            ticks
                .iter()
                .any(|(at, long)| *long && (at - thou(2.0)).abs() < 1e-12)
        );
    }

    #[test]
    fn nothing_is_drawn_of_nothing() {
        let window = Window::new(Some(0.0), None).unwrap();
        let exact = Estimate::exact(0.0);
        assert_eq!(Stretch::of(&window, &exact, &exact), None);
    }
}
