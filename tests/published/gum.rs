//! The end-gauge calibration of the GUM, annex H.1: an end gauge compared with a
//! standard, with the temperature and the expansion of both uncertain.

use assembly_core::measure::{
    ErrorSource, Estimate, Origin, Shape, Sources, deviation_to_second_order,
};
use assembly_core::metrology::coverage::coverage_factor;

use crate::runner::{Row, Subject, Value};

/// The topic and what answers it.
pub const SUBJECTS: &[Subject] = &[Subject::of("fits_metrology", "GUM_H1", answer)];

fn answer(row: &Row) -> Option<Value> {
    if row.quantity == "u_alphaS" {
        let half_width = row.number("half_width")?;
        let shape = match row.text("distribution")? {
            "rectangular" => Shape::Rectangular,
            "triangular" => Shape::Triangular,
            "arcsine" | "u-shaped" => Shape::ArcSine,
            _ => return None,
        };
        return Some(Value::Number(shape.deviation(half_width)));
    }
    Comparison::of(row)?.quantity(&row.quantity)
}

/// The inputs of the comparison; lengths in nanometres, as the tables give them.
struct Comparison {
    standard: Estimate,
    difference: Estimate,
    expansion: Estimate,
    temperature: Estimate,
    expansion_apart: Estimate,
    temperature_apart: Estimate,
    sources: Sources,
}

impl Comparison {
    fn of(row: &Row) -> Option<Self> {
        let mut sources = Sources::new();
        let mut input = |value: &str, deviation: &str, degrees: Option<&str>| {
            let source = sources.add(ErrorSource {
                label: value.into(),
                origin: Origin::Stated,
                degrees_of_freedom: match degrees {
                    Some(key) => row.number(key)?,
                    None => f64::INFINITY,
                },
            });
            Some(Estimate::exact(row.number(value)?).with(source, row.number(deviation)?))
        };
        Some(Self {
            standard: input("lS_nm", "u_lS_nm", Some("dof_lS"))?,
            difference: input("d_nm", "u_d_nm", Some("dof_d"))?,
            expansion: input("alphaS", "u_alphaS", None)?,
            temperature: input("theta", "u_theta", None)?,
            expansion_apart: input("dalpha", "u_dalpha", Some("dof_dalpha"))?,
            temperature_apart: input("dtheta", "u_dtheta", Some("dof_dtheta"))?,
            sources,
        })
    }

    /// l = lS + d − lS (δα θ + αS δθ), equation H.3.
    fn length(&self) -> Estimate {
        let bend =
            &self.expansion_apart * &self.temperature + &self.expansion * &self.temperature_apart;
        &self.standard + &self.difference - &self.standard * bend
    }

    fn quantity(&self, quantity: &str) -> Option<Value> {
        let length = self.length();
        let deviation = length.deviation();
        let degrees = length.degrees_of_freedom(&self.sources);
        // Degrees of freedom are cut to a whole number (G.4.2).
        let factor = || coverage_factor(0.99, degrees.floor()).ok();
        Some(Value::Number(match quantity {
            // Nanometres to millimetres.
            "l" => length.value() * 1e-6,
            "u_c" | "u_c_unrounded" => deviation,
            "u_c_squared" => deviation * deviation,
            "contribution_lS" => self.contribution(&length, &self.standard),
            "contribution_d" => self.contribution(&length, &self.difference),
            "contribution_dalpha" => self.contribution(&length, &self.expansion_apart),
            "contribution_dtheta" => self.contribution(&length, &self.temperature_apart),
            "nu_eff" => degrees.floor(),
            "nu_eff_unrounded" => degrees,
            "k_99" => factor()?,
            "U_99" => factor()? * deviation,
            "u_c_second_order" => self.second_order(),
            _ => return None,
        }))
    }

    /// What one input alone gives the length.
    fn contribution(&self, length: &Estimate, input: &Estimate) -> f64 {
        input
            .parts()
            .iter()
            .filter_map(|(source, _)| length.parts().iter().find(|(id, _)| id == source))
            .map(|(_, part)| part.abs())
            .sum()
    }

    fn second_order(&self) -> f64 {
        let inputs = [
            &self.standard,
            &self.difference,
            &self.expansion,
            &self.temperature,
            &self.expansion_apart,
            &self.temperature_apart,
        ]
        .map(|input| (input.value(), input.deviation()));
        let length = |at: &[f64]| match at {
            [
                standard,
                difference,
                expansion,
                temperature,
                expansion_apart,
                temperature_apart,
            ] => {
                standard + difference
                    - standard * (expansion_apart * temperature + expansion * temperature_apart)
            }
            _ => f64::NAN,
        };
        deviation_to_second_order(length, &inputs)
    }
}
