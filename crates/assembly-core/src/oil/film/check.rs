//! The film of a bearing as a quick check.

use super::balance::Care;
use super::field::Figures;
use super::rules::{least_film_for, trumpler_film};
use super::running::{Bearing, Duty, Feed, RunningFilm, run_bearing};
use super::solution::FilmError;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
    length_text,
};
use crate::measure::Estimate;
use crate::oil::inputs::{
    CLEARANCE, DIAMETER, GROOVE_WIDTH, LENGTH, LOAD, OIL_IN, PRESSURE, ROUGH_JOURNAL, ROUGH_SHELL,
    SMALL_FLOW, SPEED, SUPPLY,
};
use crate::oil::viscosity::Lubricant;
use crate::oil::viscosity::line_check::{AT_40, AT_100, DYNAMIC};
use crate::quantity::Kind;

/// The film of a bearing.
pub static BEARING_FILM: Calculation = Calculation {
    id: "bearing-film",
    title: "Oil film of a bearing",
    purpose: "How thick the film is that keeps journal and shell apart, and how warm it runs.",
    inputs: &[
        DIAMETER,
        LENGTH,
        CLEARANCE,
        GROOVE_WIDTH,
        LOAD,
        SPEED,
        AT_40,
        AT_100,
        OIL_IN,
        SUPPLY,
        ROUGH_JOURNAL,
        ROUGH_SHELL,
    ],
    outputs: &[
        Output::of(
            "least-film",
            "least film",
            (Kind::Length, UsualUnits::of("µin", "µm")),
        ),
        Output::ratio("eccentricity", "eccentricity"),
        Output::of(
            "attitude",
            "angle from load to least film",
            (Kind::Angle, UsualUnits::of("°", "°")),
        ),
        Output::of("mean-pressure", "load by area", PRESSURE),
        Output::of("peak-pressure", "highest pressure in the film", PRESSURE),
        Output::of(
            "friction-torque",
            "friction torque",
            (Kind::Torque, UsualUnits::of("in-lb", "N·m")),
        ),
        Output::of("inflow", "oil drawn in", SMALL_FLOW),
        Output::of("side-flow", "oil out at the edges", SMALL_FLOW),
        Output::of(
            "warming",
            "oil warms by",
            (Kind::TemperatureDifference, UsualUnits::of("°F", "°C")),
        ),
        Output::of("viscosity", "viscosity in the film", DYNAMIC),
        Output::of(
            "film-needed",
            "least film that the roughness asks for",
            (Kind::Length, UsualUnits::of("µin", "µm")),
        ),
    ],
    workings: &[
        "load by area = {load} / (length × {journal}) = {mean-pressure}",
        "Reynolds' equation on a net finer and finer, film ending by Reynolds' condition: eccentricity {eccentricity}, least film {least-film}, {attitude} from the load",
        "friction {friction-torque} warms the oil by {warming}; viscosity in the film {viscosity}",
        "surfaces stay apart from {film-needed} upwards",
    ],
    provenance: Provenance::Handbook(
        "A. A. Raimondi and J. Boyd, Trans. ASLE 1 (1958) 159-209; worked out afresh by finite volumes, converged to 0.5 %",
    ),
    cautions: &[
        "A steady load is assumed. For the instant of a peak the squeezed oil carries more than this says.",
        "The clearance that the engine's maker asks for wins.",
    ],
    run,
};

fn field_of(error: &FilmError) -> &'static Input {
    match error {
        FilmError::NotPositive { .. } | FilmError::Eccentricity { .. } => &CLEARANCE,
        FilmError::Proportion { .. } => &LENGTH,
        FilmError::TooMuchLoad => &LOAD,
    }
}

/// Everything that the film is worked out of, as plain numbers, in this order.
const ORDER: [&Input; 5] = [&CLEARANCE, &LOAD, &SPEED, &OIL_IN, &DIAMETER];

struct Asked {
    land: f64,
    groove: bool,
    supply: f64,
    oil: Lubricant,
}

impl Asked {
    fn film(&self, at: [f64; 5], care: Care) -> Result<RunningFilm, FilmError> {
        let [clearance, load, speed, oil_in, diameter] = at;
        let feed = if self.groove {
            Feed::Groove(self.supply)
        } else {
            Feed::Hole
        };
        let bearing = Bearing {
            diameter,
            land: self.land,
            clearance,
            feed,
        };
        let duty = Duty {
            load,
            speed,
            oil_in,
        };
        run_bearing(&bearing, &duty, &self.oil, care)
    }
}

fn asked(given: &Given) -> Result<Asked, CalculationError> {
    let length = given.one(&LENGTH)?.value();
    let groove = given.optional(GROOVE_WIDTH.id).map_or(0.0, Estimate::value);
    let land = if groove > 0.0 {
        0.5 * (length - groove)
    } else {
        length
    };
    if land < 0.1 * length {
        return Err(CalculationError::not_possible(
            &GROOVE_WIDTH,
            "hardly any shell is left beside the groove: measure the groove's width, not its depth",
        ));
    }
    let supply = given.optional(SUPPLY.id).map(Estimate::value);
    if groove > 0.0 && supply.is_none() {
        return Err(CalculationError::not_possible(
            &SUPPLY,
            "a groove all round is flushed by the oil pressure: type the pressure at the gallery",
        ));
    }
    let (at_40, at_100) = (given.one(&AT_40)?.value(), given.one(&AT_100)?.value());
    let oil = Lubricant::of_sheet(at_40 * 1e6, at_100 * 1e6)
        .map_err(|error| CalculationError::not_possible(&AT_100, error.to_string()))?;
    Ok(Asked {
        land,
        groove: groove > 0.0,
        supply: supply.unwrap_or(0.0),
        oil,
    })
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let asked = asked(given)?;
    let inputs = [
        given.one(ORDER[0])?,
        given.one(ORDER[1])?,
        given.one(ORDER[2])?,
        given.one(ORDER[3])?,
        given.one(ORDER[4])?,
    ];
    let at = inputs.map(Estimate::value);
    let told =
        |error: FilmError| CalculationError::not_possible(field_of(&error), error.to_string());
    let got = asked.film(at, Care::Fine).map_err(told)?;
    let slopes = slopes(&asked, at, inputs);
    let with_error = |value: f64, of: fn(&RunningFilm) -> f64| {
        let parts: Vec<(&Estimate, f64)> = inputs
            .iter()
            .zip(&slopes)
            .filter_map(|(input, pair)| {
                let (low, high, apart) = pair.as_ref()?;
                Some((*input, (of(high) - of(low)) / apart))
            })
            .collect();
        Estimate::from_slopes(value, &parts)
    };
    let rough = |input: &Input| given.optional(input.id).map(Estimate::value);
    let needed = rough(&ROUGH_JOURNAL)
        .zip(rough(&ROUGH_SHELL))
        .map(|(journal, shell)| least_film_for(journal, shell));
    let Figures { attitude, .. } = got.film.figures;
    let exact = Estimate::exact;
    let answer = Answer::new()
        .with(
            "least-film",
            with_error(got.least_film, |one| one.least_film),
        )
        .with(
            "eccentricity",
            with_error(got.film.eccentricity, |one| one.film.eccentricity),
        )
        .with("attitude", exact(attitude))
        .with("mean-pressure", exact(got.mean_pressure))
        .with(
            "peak-pressure",
            with_error(got.peak_pressure, |one| one.peak_pressure),
        )
        .with(
            "friction-torque",
            with_error(got.friction_torque, |one| one.friction_torque),
        )
        .with("inflow", with_error(got.inflow, |one| one.inflow))
        .with("side-flow", with_error(got.side_flow, |one| one.side_flow))
        .with(
            "warming",
            with_error(got.temperature_rise, |one| one.temperature_rise),
        )
        .with("viscosity", exact(got.viscosity))
        .with_optional("film-needed", needed.map(exact));
    Ok(remarks(answer, &got, at[4], needed))
}

/// The film on both sides of an input that is uncertain, and how far these are apart.
type Pair = Option<(RunningFilm, RunningFilm, f64)>;

fn slopes(asked: &Asked, at: [f64; 5], inputs: [&Estimate; 5]) -> Vec<Pair> {
    (0..at.len())
        .zip(inputs)
        .map(|(which, input)| {
            if input.deviation() == 0.0 {
                return None;
            }
            // Wide steps: where the film breaks jumps from mesh to mesh.
            let step = 0.02 * input.value();
            let moved = |by: f64| {
                let mut moved = at;
                if let Some(one) = moved.get_mut(which) {
                    *one += by;
                }
                asked.film(moved, Care::Rough).ok()
            };
            Some((moved(-step)?, moved(step)?, 2.0 * step))
        })
        .collect()
}

fn remarks(mut answer: Answer, got: &RunningFilm, diameter: f64, needed: Option<f64>) -> Answer {
    if !got.film.has_converged() {
        answer = answer.finding(
            Gravity::Caution,
            format!(
                "The net could follow this film to {:.1} % only, not to half a per cent.",
                got.film.convergence * 100.0
            ),
        );
    }
    if let Some(needed) = needed.filter(|needed| got.least_film < *needed) {
        answer = answer.finding(
            Gravity::Caution,
            format!(
                "The film is thinner than the {} that these surfaces need to stay apart: smoother, slower, lighter, or a thicker oil.",
                length_text(needed)
            ),
        );
    }
    if got.least_film < trumpler_film(diameter) {
        answer = answer.finding(
            Gravity::Note,
            format!(
                "Machines that run for years are given {} at least; engines live with less for moments.",
                length_text(trumpler_film(diameter))
            ),
        );
    }
    if got.mean_temperature + 0.5 * got.temperature_rise > super::rules::TRUMPLER_HOTTEST + 29.0 {
        answer = answer.finding(
            Gravity::Caution,
            "The oil leaves hotter than 150 °C: it burns there, and the shell's lining softens.",
        );
    }
    answer
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{refused, says, worked};
    use crate::measure::{Origin, Sources};

    const INCH: f64 = 0.0254;

    fn rod() -> Given {
        Given::new()
            .with("journal", Estimate::exact(2.1 * INCH))
            .with("length", Estimate::exact(0.8 * INCH))
            .with("load", Estimate::exact(6000.0))
            .with("speed", Estimate::exact(314.0))
            .with("at-40", Estimate::exact(95e-6))
            .with("at-100", Estimate::exact(11e-6))
            .with("oil-in", Estimate::exact(363.15))
    }

    #[test]
    fn a_rod_bearing_with_its_clearance_in_doubt() {
        let mut sources = Sources::new();
        let gauge = sources.fresh("gauge", Origin::Repeat);
        let clearance = Estimate::exact(0.0022 * INCH).with(gauge, 0.0002 * INCH);
        let given = rod()
            .with("clearance", clearance)
            .with("journal-roughness", Estimate::exact(0.2e-6))
            .with("shell-roughness", Estimate::exact(3e-6));
        let answer = worked(&BEARING_FILM, &given);
        let film = answer.get("least-film").unwrap();
        assert!((1e-6..12e-6).contains(&film.value()), "{film:?}");
        assert!(film.deviation() > 1e-9);
        assert!(says(&answer, "stay apart"));
    }

    #[test]
    fn what_cannot_be_is_told_at_its_field() {
        let crushed_load = {
            let mut given = Given::new();
            for (id, value) in [
                ("journal", 0.02),
                ("length", 0.004),
                ("load", 4e5),
                ("speed", 6.0),
                ("at-40", 30e-6),
                ("at-100", 5e-6),
                ("oil-in", 420.0),
                ("clearance", 5e-4),
            ] {
                given.push(id, Estimate::exact(value));
            }
            given
        };
        assert_eq!(refused(&BEARING_FILM, &crushed_load), Some("load"));
        let zero = rod().with("clearance", Estimate::exact(0.0));
        assert_eq!(refused(&BEARING_FILM, &zero), Some("clearance"));
        let groove = rod()
            .with("clearance", Estimate::exact(5e-5))
            .with("groove", Estimate::exact(0.004));
        assert_eq!(refused(&BEARING_FILM, &groove), Some("supply"));
    }
}
