//! What can be wrong with what is said of an oil.

use thiserror::Error;

/// Why an oil cannot be worked with.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum OilError {
    /// A viscosity that no liquid oil has.
    #[error(
        "a viscosity of {read} mm²/s is none of an oil: it should lie between 0.3 and 2 000 000"
    )]
    Viscosity {
        /// What was read, mm²/s.
        read: f64,
    },
    /// The two temperatures are so close that no line goes through them safely.
    #[error(
        "the two temperatures are less than 5 °C apart: take 40 and 100 °C from the oil's sheet"
    )]
    TemperaturesTooClose,
    /// An oil that does not thin as it warms.
    #[error(
        "the viscosity at the warmer temperature must be the smaller one: look whether the two were swapped"
    )]
    ThickerWhenWarm,
    /// A temperature beyond what an oil is used at.
    #[error("{celsius} °C is beyond what an oil line holds for: between -60 and 350 °C")]
    Temperature {
        /// What was read, °C.
        celsius: f64,
    },
    /// Too thin for the index to be defined.
    #[error("the viscosity index is defined from 2 mm²/s at 100 °C upwards, and {read} was read")]
    TooThinForIndex {
        /// What was read at 100 °C, mm²/s.
        read: f64,
    },
    /// A density that no lubricating oil has.
    #[error("a density of {read} kg/m³ is none of an oil: between 700 and 1100 at 15 °C")]
    Density {
        /// What was read, kg/m³.
        read: f64,
    },
    /// No such grade.
    #[error("{read:?} is no engine oil grade: write 10W-30, 5W-40 or a single grade such as 30")]
    NoSuchGrade {
        /// What was read.
        read: String,
    },
    /// Thinner hot than its grade allows.
    #[error(
        "{read} mm²/s at 100 °C is thinner than grade {grade} allows, which is {least} at least: wrong grade, or an oil cut by fuel"
    )]
    ThinnerThanItsGrade {
        /// What was read, mm²/s.
        read: f64,
        /// The grade's name.
        grade: String,
        /// The least the grade allows, mm²/s.
        least: f64,
    },
    /// Thicker hot than its grade allows.
    #[error(
        "{read} mm²/s at 100 °C is thicker than grade {grade} allows, which is less than {most}"
    )]
    ThickerThanItsGrade {
        /// What was read, mm²/s.
        read: f64,
        /// The grade's name.
        grade: String,
        /// The grade must stay below this, mm²/s.
        most: f64,
    },
}
