//! How far off the middle a bearing runs, looked up instead of worked out: one
//! table for each length by diameter, made once.

use crate::oil::film::{COARSE_IS_OFF, ECCENTRICITIES, PROPORTIONS, rough};

/// Films in a table, evenly spread on a scale that makes the curve nearly straight.
const FILMS: usize = 12;

/// Places in the table, evenly spread over the logarithm of Sommerfeld's number, so
/// that looking up needs no search.
const PLACES: usize = 96;

/// Eccentricity and attitude against Sommerfeld's number, for one proportion.
#[derive(Clone, PartialEq, Debug)]
pub struct FilmTable {
    length_over_diameter: f64,
    /// Logarithm of the number of the first place, and from place to place.
    first: f64,
    step: f64,
    places: Vec<Place>,
}

/// Where a journal stands.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Place {
    /// Off the middle, by the clearance.
    pub eccentricity: f64,
    /// Cosine of the angle from the load to the least film, and of three times it.
    pub cosines: (f64, f64),
    /// What the turning journal drags out of the ends of its film, by `R·c·N·L`:
    /// the inflow over the widest place, less what goes round again.
    pub dragged: f64,
}

impl Place {
    /// A journal in the middle.
    pub const CENTRED: Self = Self {
        eccentricity: 0.0,
        cosines: (0.0, 0.0),
        dragged: 0.0,
    };

    /// At an eccentricity and an attitude in radians, dragging nothing out.
    #[must_use]
    pub fn at(eccentricity: f64, attitude: f64) -> Self {
        Self {
            eccentricity,
            cosines: (libm::cos(attitude), libm::cos(3.0 * attitude)),
            dragged: 0.0,
        }
    }

    /// The same with what the journal drags out, by `R·c·N·L`.
    #[must_use]
    pub fn dragging(self, dragged: f64) -> Self {
        Self { dragged, ..self }
    }

    fn towards(&self, other: &Self, part: f64) -> Self {
        let between = |one: f64, other: f64| one + part * (other - one);
        Self {
            eccentricity: between(self.eccentricity, other.eccentricity),
            cosines: (
                between(self.cosines.0, other.cosines.0),
                between(self.cosines.1, other.cosines.1),
            ),
            dragged: between(self.dragged, other.dragged),
        }
    }
}

/// What makes the curve nearly straight, and back.
fn scale(e: f64) -> f64 {
    libm::log(e) - 2.0 * libm::log(1.0 - e)
}

fn from_scale(scale: f64) -> f64 {
    let x = libm::exp(scale);
    2.0 * x / (2.0 * x + 1.0 + (4.0 * x + 1.0).sqrt())
}

impl FilmTable {
    /// The table of one proportion. Proportions that no film is known for give an
    /// empty table, which takes every journal as centred.
    #[must_use]
    pub fn new(length_over_diameter: f64) -> Self {
        let mut table = Self {
            length_over_diameter,
            first: 0.0,
            step: 1.0,
            places: Vec::new(),
        };
        // Not written as "shorter than", so that no number is refused, too.
        if length_over_diameter.is_nan() || length_over_diameter < PROPORTIONS.0 {
            return table;
        }
        let (low, high) = (scale(0.02), scale(ECCENTRICITIES.1));
        // From the thinnest film on, so that the numbers rise.
        let films: Vec<Film> = (0..FILMS)
            .rev()
            .map(|at| {
                let here = low + (high - low) * at as f64 / (FILMS - 1) as f64;
                let e = from_scale(here).min(ECCENTRICITIES.1);
                // The coarsest net, set right by what it is usually off: within a
                // per cent, and the leak hardly feels that.
                let figures = rough(length_over_diameter, e);
                let number = libm::log(figures.sommerfeld) + COARSE_IS_OFF;
                Film {
                    number,
                    here,
                    attitude: figures.attitude,
                    dragged: figures.inflow * figures.side_share,
                }
            })
            .collect();
        if let (Some(first), Some(last)) = (films.first(), films.last()) {
            table.first = first.number;
            table.step = (last.number - first.number) / (PLACES - 1) as f64;
            table.places = (0..PLACES)
                .map(|at| between(&films, table.first + table.step * at as f64))
                .collect();
        }
        table
    }

    /// The proportion it is for.
    #[must_use]
    pub const fn length_over_diameter(&self) -> f64 {
        self.length_over_diameter
    }

    /// Where the journal stands at this Sommerfeld number; the ends hold beyond.
    #[must_use]
    pub fn at(&self, sommerfeld: f64) -> Place {
        self.at_logarithm(libm::log(sommerfeld.max(1e-300)))
    }

    /// The same from the natural logarithm of the number.
    #[must_use]
    pub fn at_logarithm(&self, sommerfeld: f64) -> Place {
        let way = (sommerfeld - self.first) / self.step;
        let way = way.clamp(0.0, (PLACES - 1) as f64);
        // Clamped, so that the whole part is a place.
        let at = way as usize;
        match (self.places.get(at), self.places.get(at + 1)) {
            (Some(one), Some(next)) => one.towards(next, way - at as f64),
            (Some(one), None) => *one,
            _ => Place::CENTRED,
        }
    }
}

/// A film that was worked out for the table.
#[derive(Clone, Copy)]
struct Film {
    /// Logarithm of Sommerfeld's number.
    number: f64,
    /// Its eccentricity on the scale.
    here: f64,
    attitude: f64,
    dragged: f64,
}

/// The place at a number between the films on both sides of it.
fn between(films: &[Film], number: f64) -> Place {
    let after = films.partition_point(|one| one.number < number);
    let low = films.get(after.saturating_sub(1));
    let high = films.get(after).or(low);
    let (Some(low), Some(high)) = (low, high) else {
        return Place::CENTRED;
    };
    let part = if low.number == high.number {
        0.0
    } else {
        (number - low.number) / (high.number - low.number)
    };
    let towards = |low: f64, high: f64| low + part * (high - low);
    Place::at(
        from_scale(towards(low.here, high.here)),
        towards(low.attitude, high.attitude),
    )
    .dragging(towards(low.dragged, high.dragged))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::oil::film::film_at;

    #[test]
    fn the_table_says_what_the_film_says() {
        let table = FilmTable::new(0.35);
        for number in [4.0, 0.8, 0.12, 0.02] {
            let film = film_at(0.35, number).unwrap();
            let got = table.at(number);
            assert!(
                (got.eccentricity - film.eccentricity).abs() < 0.01,
                "{number}"
            );
            assert!(
                (got.cosines.0 - film.figures.attitude.cos()).abs() < 0.03,
                "{number}"
            );
            let dragged = film.figures.inflow * film.figures.side_share;
            assert!(
                // The coarsest net is some seven parts in a hundred off here.
                (got.dragged - dragged).abs() < 0.10 * dragged + 0.02,
                "{number}: {} {dragged}",
                got.dragged
            );
        }
        assert!(table.at(0.0).eccentricity > 0.97);
        assert!(table.at(1e9).eccentricity < 0.03);
        assert_eq!(FilmTable::new(-1.0).at(1.0).eccentricity, 0.0);
    }
}
