//! Rules about films that the handbooks print.

use super::field::Figures;

/// Raimondi and Boyd's interpolation between their four proportions (Budynas and
/// Nisbett, Shigley's Mechanical Engineering Design, 10th ed., eq. 12-16):
/// `figures` at L/D endless, 1, 1/2 and 1/4.
#[must_use]
pub fn between_proportions(proportion: f64, figures: [f64; 4]) -> f64 {
    let [endless, one, half, quarter] = figures;
    let (a, b, c) = (
        1.0 - proportion,
        1.0 - 2.0 * proportion,
        1.0 - 4.0 * proportion,
    );
    (-a * b * c * endless / 8.0 + b * c * one / 3.0 - a * c * half / 4.0 + a * b * quarter / 24.0)
        / proportion.powi(3)
}

/// Temperature rise of a plain bearing as a plain number, `ρ·c·ΔT/(4π·P)`; with
/// the handbook's oil that is 9.70·ΔT/P in °F and psi (the same, eq. 12-15).
#[must_use]
pub fn temperature_rise_number(figures: &Figures) -> f64 {
    figures.friction / ((1.0 - 0.5 * figures.side_share) * figures.inflow)
}

/// Inflow `Q/(R·c·N·L)` of a journal in the middle: half the surface's speed over
/// the whole clearance, `U·c·L/2`.
pub const CENTRED_INFLOW: f64 = std::f64::consts::PI;

/// The 6/4 of the heat balance of a grooved bearing (the same, eq. 12-24).
pub const GROOVED_RISE: f64 = 1.5;

/// Least film that P. R. Trumpler, Design of Film Bearings, Macmillan 1966, asks
/// for a ground journal: 0.005 mm and 0.00004 of the diameter. Metres.
#[must_use]
pub fn trumpler_film(diameter: f64) -> f64 {
    0.005e-3 + 0.00004 * diameter
}

/// The hottest oil by the same, kelvin (250 °F).
pub const TRUMPLER_HOTTEST: f64 = 121.0 + 273.15;

/// The highest mean pressure to start under by the same, Pa (300 psi).
pub const TRUMPLER_STARTING_PRESSURE: f64 = 2.07e6;

/// By how much more than the load the film has to carry, by the same.
pub const TRUMPLER_LOAD_FACTOR: f64 = 2.0;

/// Least film by the roughness of both surfaces together: a film of three times
/// the root of the sum of their squares keeps them apart; common practice.
pub const FILM_BY_ROUGHNESS: f64 = 3.0;

/// The least film that keeps two surfaces of these roughnesses (Rq, m) apart.
#[must_use]
pub fn least_film_for(journal: f64, bearing: f64) -> f64 {
    FILM_BY_ROUGHNESS * journal.hypot(bearing)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_printed_proportions_come_back() {
        let printed = [0.1, 0.2, 0.3, 0.4];
        for (proportion, wanted) in [(1.0, 0.2), (0.5, 0.3), (0.25, 0.4)] {
            assert!((between_proportions(proportion, printed) - wanted).abs() < 1e-12);
        }
    }

    #[test]
    fn films_near_the_middle_draw_in_what_a_centred_one_does() {
        use crate::oil::film::{Boundary, ECCENTRICITIES, film};
        let near = |e: f64| film(1.0, e, Boundary::FedAtWidest).unwrap().figures.inflow;
        let carried_on = 2.0 * near(ECCENTRICITIES.0) - near(2.0 * ECCENTRICITIES.0);
        assert!((carried_on / CENTRED_INFLOW - 1.0).abs() < 1e-4);
    }

    // Trumpler: 0.0002 in and 0.00004 of the diameter.
    #[test]
    fn least_films() {
        assert!((trumpler_film(0.0508) - 7.032e-6).abs() < 1e-12);
        assert!((least_film_for(0.3e-6, 0.4e-6) - 1.5e-6).abs() < 1e-15);
    }
}
