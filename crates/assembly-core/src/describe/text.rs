//! Numbers inside sentences.

use crate::quantity::{Kind, show, unit_of};

/// A length in both units of the trade: `0.0012 in (0.030 mm)`.
#[must_use]
pub fn length_text(si: f64) -> String {
    let shown = |symbol: &str| unit_of(Kind::Length, symbol).map(|unit| show(si, None, unit));
    match (shown("in"), shown("mm")) {
        (Some(mut inch), Some(metric)) => {
            drop_zero_after_tenths(&mut inch.number);
            format!("{inch} ({metric})")
        }
        _ => format!("{si} m"),
    }
}

/// A whole number of tenths is said without a digit after them.
fn drop_zero_after_tenths(number: &mut String) {
    let decimals = number.split_once('.').map_or(0, |(_, after)| after.len());
    if decimals > 4 && number.ends_with('0') {
        number.pop();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_length_is_said_in_inches_and_millimetres() {
        assert_eq!(length_text(0.0012 * 0.0254), "0.0012 in (0.030 mm)");
        assert_eq!(length_text(0.00125 * 0.0254), "0.00125 in (0.032 mm)");
        assert_eq!(length_text(2.45 * 0.0254), "2.4500 in (62.230 mm)");
    }
}
