//! What the trade wants the gauge to show. Common practice, no source; modern
//! engines with thin oil run on less.

use std::f64::consts::PI;

/// A pound a square inch in Pa.
pub const PSI: f64 = 6_894.757_293_168_36;

/// Hot pressure for each thousand turns a minute: ten psi.
pub const FOR_A_THOUSAND_TURNS: f64 = 10.0 * PSI;

/// The least at hot idle, from where to where makers' floors lie.
pub const HOT_IDLE: (f64, f64) = (7.0 * PSI, 10.0 * PSI);

/// The line of so much for each thousand turns at a speed in rad/s, Pa.
#[must_use]
pub fn wanted(speed: f64, for_a_thousand: f64) -> f64 {
    for_a_thousand * speed * 30.0 / PI / 1000.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_thousand_turns_want_thirty_psi() {
        let got = wanted(3000.0 * PI / 30.0, FOR_A_THOUSAND_TURNS);
        assert!((got / PSI - 30.0).abs() < 1e-9);
    }
}
