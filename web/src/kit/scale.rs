//! The rule: a graduated line with the window on it, and a pointer where the
//! result lies, as wide as its give-or-take. It shows at a glance how far from
//! the limits a result is, and on which side.

use assembly_core::measure::{Estimate, Window};
use assembly_core::quantity::{Unit, show_high_limit, show_low_limit};
use leptos::prelude::*;

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

/// The rule with window and result.
#[component]
pub fn Scale(
    /// The limits.
    window: Window,
    /// The least of the result.
    least: Estimate,
    /// The greatest; the same as the least for a single value.
    greatest: Estimate,
    /// The unit of the ticks and limits.
    unit: &'static Unit,
    /// What it shows, for those who cannot see it.
    #[prop(into)]
    words: String,
) -> impl IntoView {
    drawn(window, least, greatest, unit, words)
}

fn drawn(
    window: Window,
    least: Estimate,
    greatest: Estimate,
    unit: &'static Unit,
    words: String,
) -> Option<AnyView> {
    let stretch = Stretch::of(&window, &least, &greatest)?;
    let x = move |value: f64| format!("{:.1}", stretch.x(value));
    let ticks: Vec<_> = stretch
        .ticks(unit)
        .into_iter()
        .map(|(value, long)| {
            let y = if long { "62" } else { "56" };
            view! { <line class="tick" x1=x(value) x2=x(value) y1="46" y2=y /> }
        })
        .collect();
    let left = stretch.x(window.low().unwrap_or(stretch.from));
    let right = stretch.x(window.high().unwrap_or(stretch.to));
    let spread = (
        stretch.x(least.value() - WIDE * least.deviation()),
        stretch.x(greatest.value() + WIDE * greatest.deviation()),
    );
    let body = (stretch.x(least.value()), stretch.x(greatest.value()));
    let middle = f64::midpoint(body.0, body.1);
    let low = window.low().map(|low| {
        view! {
            <line class="limit" x1=x(low) x2=x(low) y1="22" y2="66" />
            <text class="limit-word" x=x(low) y="82" text-anchor="middle">
                {show_low_limit(low, unit).number}
            </text>
        }
    });
    let high = window.high().map(|high| {
        view! {
            <line class="limit" x1=x(high) x2=x(high) y1="22" y2="66" />
            <text class="limit-word" x=x(high) y="82" text-anchor="middle">
                {show_high_limit(high, unit).number}
            </text>
        }
    });
    Some(
        view! {
            <svg class="scale" viewBox="0 0 320 88" role="img" aria-label=words>
                <rect
                    class="window"
                    x=format!("{left:.1}")
                    width=format!("{:.1}", (right - left).max(0.0))
                    y="22"
                    height="24"
                />
                <line class="baseline" x1="0" x2="320" y1="46" y2="46" />
                {ticks}
                {low}
                {high}
                <rect
                    class="spread"
                    x=format!("{:.1}", spread.0)
                    width=format!("{:.1}", (spread.1 - spread.0).max(1.0))
                    y="30"
                    height="8"
                />
                <rect
                    class="body"
                    x=format!("{:.1}", body.0 - 1.5)
                    width=format!("{:.1}", (body.1 - body.0) + 3.0)
                    y="24"
                    height="20"
                />
                <path class="pointer" d=format!("M{middle:.1} 22l-8-15h16z") />
            </svg>
        }
        .into_any(),
    )
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
