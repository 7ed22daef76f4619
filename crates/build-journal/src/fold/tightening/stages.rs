//! A stage as it is typed, read.

use assembly_core::fastener::adapter::Adapter;
use assembly_core::fastener::stages::Stage;
use assembly_core::quantity::{Kind, Typed, Unit, read, show, unit_of, unit_or_usual};

/// A stage of a sheet.
#[derive(Clone, PartialEq, Debug)]
pub struct SheetStage {
    /// What was typed.
    pub typed: String,
    /// What it says, or why it cannot be read.
    pub read: Result<(Stage, Typed), String>,
}

/// The torque unit with this symbol; foot-pounds when there is none.
#[must_use]
pub fn torque_unit(symbol: &str) -> &'static Unit {
    unit_of(Kind::Torque, symbol).unwrap_or_else(|| unit_or_usual(Kind::Torque, "ft-lb"))
}

/// Reads a stage: a torque, an angle or a stretch. A lone number is a torque in
/// the wrench's unit.
///
/// # Errors
/// A sentence: what is wrong with it as a torque, unless it is clearly of
/// another kind.
pub fn read_stage(text: &str, wrench: &'static Unit) -> Result<(Stage, Typed), String> {
    let torque = match read(text, Kind::Torque, wrench) {
        Ok(typed) => return Ok((Stage::Torque(typed.si()), typed)),
        Err(error) => error,
    };
    let degrees = unit_or_usual(Kind::Angle, "°");
    let inch = unit_or_usual(Kind::Length, "in");
    let other = |kind, lone| read(text, kind, lone).ok().filter(Typed::unit_was_typed);
    if let Some(angle) = other(Kind::Angle, degrees) {
        return Ok((Stage::Angle(angle.si()), angle));
    }
    if let Some(stretch) = other(Kind::Length, inch) {
        return Ok((Stage::Stretch(stretch.si()), stretch));
    }
    Err(torque.to_string())
}

impl SheetStage {
    /// A stage as it was typed.
    #[must_use]
    pub fn of(typed: &str, wrench: &'static Unit) -> Self {
        Self {
            typed: typed.to_owned(),
            read: read_stage(typed, wrench),
        }
    }

    /// Its torque, newton metres; none when it is another sort of stage.
    #[must_use]
    pub const fn torque(&self) -> Option<f64> {
        match &self.read {
            Ok((Stage::Torque(torque), _)) => Some(*torque),
            _ => None,
        }
    }

    /// The number and its unit as they stand on the wrench: a torque in the
    /// wrench's own unit, the rest as typed. `None` when it cannot be read.
    #[must_use]
    pub fn on_the_wrench(&self, wrench: &'static Unit) -> Option<(String, &'static str)> {
        let (stage, typed) = self.read.as_ref().ok()?;
        let own = typed.unit();
        if matches!(stage, Stage::Torque(_)) && own != wrench {
            let shown = show(typed.si(), None, wrench);
            return Some((shown.number, wrench.symbol));
        }
        Some((typed.number(), own.symbol))
    }

    /// What to set the wrench to when an adapter moves the bolt away from its
    /// drive, and the wrench's unit. `None` for an angle or a stretch: an adapter
    /// changes neither.
    #[must_use]
    pub fn with_an_adapter(
        &self,
        wrench: &'static Unit,
        adapter: Adapter,
    ) -> Option<(String, &'static str)> {
        let (Stage::Torque(torque), _) = self.read.as_ref().ok()? else {
            return None;
        };
        let shown = show(adapter.set_for(*torque), None, wrench);
        Some((shown.number, wrench.symbol))
    }
}
