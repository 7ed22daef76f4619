//! The description of an engine.

use uom::si::f64::Angle;

use assembly_core::quantity::Si;

use super::construction::{Construction, Crankcase};
use super::error::EngineError;
use super::layout::Layout;
use crate::place::Main;

/// The most cylinders an engine may have here.
pub const MOST_CYLINDERS: u8 = 16;
/// The most characters a name may have.
pub const NAME_AT_MOST: usize = 120;
/// The most valves of one kind in a cylinder.
const MOST_VALVES: u8 = 3;
/// A crank needs two supports.
const LEAST_MAINS: u8 = 2;

/// An engine, as far as the plan of its build depends on it.
///
/// ```
/// use build_plan::{Engine, Layout};
///
/// let engine = Engine::new("orchard sprayer", 4, Layout::Inline, None)?;
/// assert_eq!(engine.mains().len(), 5);
/// assert_eq!(engine.mains()[2].label(), "main 3 of 5");
/// # Ok::<(), build_plan::EngineError>(())
/// ```
#[derive(Clone, PartialEq, Debug)]
pub struct Engine {
    name: String,
    cylinders: u8,
    layout: Layout,
    mains: u8,
    construction: Construction,
}

impl Engine {
    /// An engine from what the builder said. Without a number of mains it gets
    /// [the usual one](Layout::usual_mains).
    ///
    /// # Errors
    /// [`EngineError`] names the field, what was read and what would be right.
    pub fn new(
        name: &str,
        cylinders: u32,
        layout: Layout,
        mains: Option<u32>,
    ) -> Result<Self, EngineError> {
        let name = checked_name(name)?;
        let cylinders = checked_cylinders(cylinders, layout)?;
        if let Layout::Vee { bank_angle } = layout {
            check_bank_angle(bank_angle)?;
        }
        let usual = layout.usual_mains(cylinders);
        let mains = match mains {
            None => usual,
            // One beyond a main each side of every cylinder: an outrigger behind the last.
            Some(read) => between(read, LEAST_MAINS, cylinders.saturating_add(2)).ok_or(
                EngineError::Mains {
                    read,
                    least: LEAST_MAINS,
                    most: cylinders.saturating_add(2),
                    usual,
                },
            )?,
        };
        Ok(Self {
            name,
            cylinders,
            layout,
            mains,
            construction: Construction::default(),
        })
    }

    /// The same engine, built like this.
    ///
    /// # Errors
    /// [`EngineError::Valves`] when a cylinder has no or too many valves.
    pub fn built(mut self, construction: Construction) -> Result<Self, EngineError> {
        for (field, read) in [
            ("intake_valves", construction.intake_valves),
            ("exhaust_valves", construction.exhaust_valves),
        ] {
            if !(1..=MOST_VALVES).contains(&read) {
                return Err(EngineError::Valves {
                    field,
                    read,
                    at_most: MOST_VALVES,
                });
            }
        }
        self.construction = construction;
        Ok(self)
    }

    /// How it is built.
    #[must_use]
    pub const fn construction(&self) -> &Construction {
        &self.construction
    }

    /// How its crankcase comes apart: as it was said, else flat engines in
    /// halves and all others with caps.
    #[must_use]
    pub const fn crankcase(&self) -> Crankcase {
        match (self.construction.crankcase, self.layout) {
            (Some(said), _) => said,
            (None, Layout::Flat) => Crankcase::Halves,
            (None, _) => Crankcase::OnePiece,
        }
    }

    /// How many camshafts.
    #[must_use]
    pub const fn camshafts(&self) -> u8 {
        match self.construction.valve_gear.camshafts_a_head() {
            0 => 1,
            a_head => a_head * self.layout.banks(),
        }
    }

    /// How many bearings each camshaft has: as many as the crank when it lies in
    /// the block, else one more than the cylinders of its bank. Common practice.
    #[must_use]
    pub const fn cam_bearings(&self) -> u8 {
        match self.construction.valve_gear.camshafts_a_head() {
            0 => self.mains,
            _ => self.cylinders.div_ceil(self.layout.banks()) + 1,
        }
    }

    /// What the builder calls it.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// How many cylinders.
    #[must_use]
    pub const fn cylinders(&self) -> u8 {
        self.cylinders
    }

    /// How the cylinders lie.
    #[must_use]
    pub const fn layout(&self) -> Layout {
        self.layout
    }

    /// How many main bearings.
    #[must_use]
    pub const fn number_of_mains(&self) -> u8 {
        self.mains
    }

    /// The main bearings, front to rear.
    #[must_use]
    pub fn mains(&self) -> Vec<Main> {
        (1..=self.mains)
            .filter_map(|number| Main::new(number, self.mains))
            .collect()
    }

    /// The main bearing with this number, counted from the front from 1;
    /// `None` when the engine has no such main.
    #[must_use]
    pub fn main(&self, number: u8) -> Option<Main> {
        Main::new(number, self.mains)
    }
}

fn checked_name(name: &str) -> Result<String, EngineError> {
    let name = name.trim();
    let read = name.chars().count();
    if read == 0 {
        Err(EngineError::NameMissing)
    } else if read > NAME_AT_MOST {
        Err(EngineError::NameTooLong {
            read,
            at_most: NAME_AT_MOST,
        })
    } else {
        Ok(name.to_owned())
    }
}

fn checked_cylinders(read: u32, layout: Layout) -> Result<u8, EngineError> {
    let cylinders = between(read, 1, MOST_CYLINDERS).ok_or(EngineError::Cylinders {
        read,
        at_most: MOST_CYLINDERS,
    })?;
    match layout {
        Layout::Vee { .. } if cylinders < 2 => Err(EngineError::TooFewForVee { read: cylinders }),
        Layout::Flat if !cylinders.is_multiple_of(2) => {
            Err(EngineError::OddFlat { read: cylinders })
        }
        _ => Ok(cylinders),
    }
}

fn check_bank_angle(angle: Angle) -> Result<(), EngineError> {
    let radians = angle.to_si();
    if radians > 0.0 && radians <= std::f64::consts::PI {
        Ok(())
    } else {
        Err(EngineError::BankAngle {
            degrees: (radians.to_degrees() * 1e6).round() / 1e6,
        })
    }
}

fn between(read: u32, least: u8, most: u8) -> Option<u8> {
    u8::try_from(read)
        .ok()
        .filter(|number| (least..=most).contains(number))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn vee(degrees: f64) -> Layout {
        Layout::Vee {
            bank_angle: Angle::from_si(degrees.to_radians()),
        }
    }

    #[test]
    fn the_usual_number_of_mains_follows_the_layout() {
        let mains = |cylinders, layout| {
            Engine::new("test bed", cylinders, layout, None)
                .unwrap()
                .number_of_mains()
        };
        assert_eq!(mains(1, Layout::Inline), 2);
        assert_eq!(mains(4, Layout::Inline), 5);
        assert_eq!(mains(8, vee(90.0)), 5);
        assert_eq!(mains(5, vee(15.0)), 4);
        assert_eq!(mains(4, Layout::Flat), 3);
        assert_eq!(mains(16, Layout::Inline), 17);
    }

    #[test]
    fn the_count_on_the_bench_wins_over_the_usual_one() {
        let engine = Engine::new("test bed", 4, Layout::Inline, Some(3)).unwrap();
        assert_eq!(engine.mains().len(), 3);
        assert!(engine.main(3).is_some_and(Main::is_rear));
        assert_eq!(engine.main(4), None);
        assert_eq!(engine.main(0), None);
    }

    #[test]
    fn every_wrong_field_is_named_with_what_was_read() {
        let error = |name: &str, cylinders, layout, mains| {
            Engine::new(name, cylinders, layout, mains).unwrap_err()
        };
        let flat = Layout::Flat;
        let inline = Layout::Inline;
        for (error, field, words) in [
            (error("  ", 4, inline, None), "name", "no name"),
            (error(&"n".repeat(121), 4, inline, None), "name", "121"),
            (error("a", 0, inline, None), "cylinders", "0 cylinders"),
            (error("a", 17, inline, None), "cylinders", "17 cylinders"),
            (error("a", 1, vee(90.0), None), "cylinders", "at least 2"),
            (error("a", 5, flat, None), "cylinders", "5 was read"),
            (error("a", 8, vee(0.0), None), "bank_angle", "0°"),
            (error("a", 8, vee(181.0), None), "bank_angle", "181°"),
            (error("a", 8, vee(f64::NAN), None), "bank_angle", "NaN°"),
            (error("a", 4, inline, Some(1)), "mains", "1 main bearings"),
            (error("a", 4, inline, Some(7)), "mains", "2 to 6"),
            (error("a", 4, inline, Some(u32::MAX)), "mains", "usually 5"),
        ] {
            assert_eq!(error.field(), field);
            assert!(error.to_string().contains(words), "{error}");
        }
    }
}
