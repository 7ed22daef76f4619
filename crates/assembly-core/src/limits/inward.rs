//! Limits in another unit.

use crate::measure::{Window, WindowError};

/// A window rounded to whole steps of a display, the low limit up and the high
/// one down, so that what is shown never allows more than what was meant. A
/// limit that is a whole number of steps stays.
///
/// ```
/// use assembly_core::limits::inward;
/// use assembly_core::measure::Window;
///
/// // 0.025 to 0.076 mm in tenths of a thou: 0.0010 to 0.0029 in.
/// let meant = Window::new(Some(0.025e-3), Some(0.076e-3)).unwrap();
/// let tenth = 0.0001 * 0.0254;
/// let shown = inward(&meant, tenth).unwrap();
/// assert!((shown.low().unwrap() / tenth - 10.0).abs() < 1e-9);
/// assert!((shown.high().unwrap() / tenth - 29.0).abs() < 1e-9);
/// ```
///
/// # Errors
/// [`WindowError`] when no whole step lies inside the window: the display is
/// too coarse for it.
pub fn inward(window: &Window, step: f64) -> Result<Window, WindowError> {
    if !(step > 0.0 && step.is_finite()) {
        return Err(WindowError::NotFinite);
    }
    // A millionth of a step is rounding of the conversion, not a limit.
    let up = |low: f64| (low / step - 1e-6).ceil() * step;
    let down = |high: f64| (high / step + 1e-6).floor() * step;
    Window::new(window.low().map(up), window.high().map(down))
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCH: f64 = 0.0254;

    // The trap: 0.025 mm is not quite a thou, and 0.25 mm not ten.
    #[test]
    fn a_metric_limit_never_widens_in_inches() {
        let thou = 0.001 * INCH;
        for (low, high, shown) in [
            (0.025, 0.25, (1.0, 9.0)),
            (0.0254, 0.254, (1.0, 10.0)),
            (0.026, 0.255, (2.0, 10.0)),
        ] {
            let window = Window::new(Some(low * 1e-3), Some(high * 1e-3)).unwrap();
            let window = inward(&window, thou).unwrap();
            let steps = |limit: Option<f64>| (limit.unwrap() / thou).round();
            assert_eq!((steps(window.low()), steps(window.high())), shown);
        }
    }

    #[test]
    fn a_display_too_coarse_for_a_window_is_told() {
        let window = Window::new(Some(0.0101), Some(0.0109)).unwrap();
        assert_eq!(inward(&window, 0.001), Err(WindowError::UpsideDown));
        assert!(inward(&window, 0.0).is_err());
        assert!(inward(&window, f64::NAN).is_err());
    }

    #[test]
    fn an_open_side_stays_open() {
        let window = inward(&Window::new(None, Some(0.0019)).unwrap(), 0.001).unwrap();
        assert_eq!(window.low(), None);
        assert!((window.high().unwrap() - 0.001).abs() < 1e-12);
    }
}
