//! A tool on the bench, how it was set, and its readings.

use std::sync::Arc;

use crate::measure::{ErrorSource, Estimate, Measured, Origin, Sources};
use crate::quantity::{Si, Typed};

use super::instrument::{Instrument, Spread, rounding_deviation};

/// One tool of the builder's own: which kind it is, and what is known of it.
#[derive(Clone, PartialEq, Debug)]
pub struct Tool {
    key: String,
    name: Arc<str>,
    instrument: &'static Instrument,
    repeat: Spread,
    shared_zero: f64,
    setting_transfer: f64,
    degrees_of_freedom: f64,
}

/// A kind of tool with the figures of common practice, for when the builder has
/// not said which one it is.
impl From<&'static Instrument> for Tool {
    fn from(instrument: &'static Instrument) -> Self {
        Self::new(instrument.id, instrument.name, instrument)
    }
}

/// One setting of a tool, from when it was zeroed until it is zeroed again.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Setting<'a> {
    /// Its identity: readings of one tool with the same key share their zero.
    pub key: &'a str,
    /// What it was set or is read on.
    pub on: SetOn<'a>,
}

/// What a tool was set on.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum SetOn<'a> {
    /// A setting standard, or the tool's own zero.
    Standard,
    /// Another tool with that tool's setting: a bore gauge zeroed on a
    /// micrometer, a telescoping gauge read on one. It takes that tool's zero
    /// error along, so the error cancels against that tool's own readings.
    Tool(&'a Tool, &'a Setting<'a>),
}

/// The errors that all readings of one setting of a tool share: its zero, and what
/// came in when it was set.
#[derive(Clone, PartialEq, Debug)]
pub struct Shared(Estimate);

impl Setting<'static> {
    /// A setting on a standard, or a tool's own zero.
    #[must_use]
    pub const fn on_standard(key: &str) -> Setting<'_> {
        Setting {
            key,
            on: SetOn::Standard,
        }
    }
}

impl Tool {
    /// A tool of this kind with the figures of common practice. The key is its
    /// identity, the name is what the builder calls it: "the bore gauge".
    #[must_use]
    pub fn new(
        key: impl Into<String>,
        name: impl AsRef<str>,
        instrument: &'static Instrument,
    ) -> Self {
        Self {
            key: key.into(),
            name: name.as_ref().into(),
            instrument,
            repeat: instrument.repeat,
            shared_zero: instrument.shared_zero,
            setting_transfer: instrument.setting_transfer,
            degrees_of_freedom: f64::INFINITY,
        }
    }

    /// The same with the feel that was found by trying, and how well it is
    /// known: readings tried less one.
    #[must_use]
    pub const fn with_repeat(mut self, deviation: f64, degrees_of_freedom: f64) -> Self {
        self.repeat = Spread::Always(deviation.abs());
        self.degrees_of_freedom = degrees_of_freedom;
        self
    }

    /// The same with a feel that is a part of the reading, and how well it is known.
    #[must_use]
    pub const fn with_repeat_of_reading(mut self, part: f64, degrees_of_freedom: f64) -> Self {
        self.repeat = Spread::OfReading(part.abs());
        self.degrees_of_freedom = degrees_of_freedom;
        self
    }

    /// The same with another doubt of its zero, SI units.
    #[must_use]
    pub const fn with_shared_zero(mut self, deviation: f64) -> Self {
        self.shared_zero = deviation.abs();
        self
    }

    /// The same with another doubt of carrying a size into it, SI units.
    #[must_use]
    pub const fn with_setting_transfer(mut self, deviation: f64) -> Self {
        self.setting_transfer = deviation.abs();
        self
    }

    /// What it is called among other tools: a kind of tool in full, an own tool
    /// by its name.
    #[must_use]
    pub fn label(&self) -> &str {
        if self.key == self.instrument.id {
            self.instrument.label
        } else {
            &self.name
        }
    }

    /// What is fresh in each reading of this value: feel and the last digit.
    #[must_use]
    pub fn fresh_deviation(&self, value: f64) -> f64 {
        self.repeat
            .at(value)
            .hypot(rounding_deviation(self.instrument.graduation))
    }

    /// One standard deviation of a single reading of this value, all of the
    /// tool's own causes together.
    #[must_use]
    pub fn deviation(&self, value: f64) -> f64 {
        self.fresh_deviation(value)
            .hypot(self.shared_zero)
            .hypot(self.setting_transfer)
    }

    /// The doubt of its zero, SI units.
    #[must_use]
    pub const fn shared_zero(&self) -> f64 {
        self.shared_zero
    }

    /// Feel and reading of this value, SI units.
    #[must_use]
    pub const fn repeat_at(&self, value: f64) -> f64 {
        self.repeat.at(value)
    }

    /// How well the feel is known: infinite when it is taken as known.
    #[must_use]
    pub const fn degrees_of_freedom(&self) -> f64 {
        self.degrees_of_freedom
    }

    /// What kind of tool it is.
    #[must_use]
    pub const fn instrument(&self) -> &'static Instrument {
        self.instrument
    }

    /// What the builder calls it.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// A reading of a size, with its causes of error by name: feel and the digits
    /// that were not typed are fresh; the zero and the setting are shared by all
    /// readings of this setting. Value and resolution in SI units; the resolution
    /// is one step of the last digit typed.
    ///
    /// ```
    /// use assembly_core::measure::Sources;
    /// use assembly_core::quantity::Si;
    /// use assembly_core::tool::{SetOn, Setting, Tool, instrument};
    /// use uom::si::f64::Length;
    ///
    /// let micrometer = Tool::new("m", "micrometer", instrument("outside-micrometer-tenths").unwrap());
    /// let gauge = Tool::new("g", "bore gauge", instrument("bore-gauge-tenths").unwrap());
    /// let today = Setting::on_standard("today");
    /// let zeroed = Setting { key: "zeroed", on: SetOn::Tool(&micrometer, &today) };
    ///
    /// let mut sources = Sources::new();
    /// let bore = gauge.reading::<Length>(&mut sources, &zeroed, 0.062_253, 1e-6);
    /// let journal = micrometer.reading::<Length>(&mut sources, &today, 0.062_200, 1e-6);
    /// // The micrometer's zero is in both, so their difference is the surer for it.
    /// let clearance = bore.clone() - &journal;
    /// let apart = bore.give_or_take().to_si().hypot(journal.give_or_take().to_si());
    /// assert!(clearance.give_or_take().to_si() < 0.8 * apart);
    /// ```
    #[must_use]
    pub fn reading<Q: Si>(
        &self,
        sources: &mut Sources,
        setting: &Setting<'_>,
        value: f64,
        resolution: f64,
    ) -> Measured<Q> {
        let shared = self.shared(sources, setting);
        self.reading_sharing(sources, &shared, value, resolution)
    }

    /// The errors that all readings of a setting share.
    #[must_use]
    pub fn shared(&self, sources: &mut Sources, setting: &Setting<'_>) -> Shared {
        Shared(self.set(sources, setting, Estimate::exact(0.0), Zero::Counts))
    }

    /// A reading as by [`Self::reading`], where it is known already what it shares
    /// with the others of its setting.
    #[must_use]
    pub fn reading_sharing<Q: Si>(
        &self,
        sources: &mut Sources,
        shared: &Shared,
        value: f64,
        resolution: f64,
    ) -> Measured<Q> {
        let reading = self.fresh(sources, shared.0.at(value), resolution);
        Measured::from_estimate(reading)
    }

    /// A reading as it was typed.
    #[must_use]
    pub fn reading_typed<Q: Si>(
        &self,
        sources: &mut Sources,
        setting: &Setting<'_>,
        typed: &Typed,
    ) -> Measured<Q> {
        self.reading(sources, setting, typed.si(), typed.resolution())
    }

    /// How far a comparing tool's needle stands from its zero. What it was
    /// zeroed on is not in it: that comes in with the size it was zeroed at.
    #[must_use]
    pub fn needle<Q: Si>(
        &self,
        sources: &mut Sources,
        setting: &Setting<'_>,
        value: f64,
        resolution: f64,
    ) -> Measured<Q> {
        let shared = self.set(sources, setting, Estimate::exact(value), Zero::StaysOut);
        Measured::from_estimate(self.fresh(sources, shared, resolution))
    }

    /// The size that this tool stands at, as something that another tool is
    /// zeroed on: its zero and its last digit are in it, a feel is not. A
    /// micrometer that is still locked at a journal is better taken from that
    /// journal's reading, by [`Self::still_locked_at`].
    #[must_use]
    pub fn standing_at<Q: Si>(
        &self,
        sources: &mut Sources,
        setting: &Setting<'_>,
        value: f64,
        resolution: f64,
    ) -> Measured<Q> {
        let rounding = sources.fresh(Arc::clone(&self.name), Origin::Rounding);
        let size = Estimate::exact(value).with(rounding, rounding_deviation(resolution));
        Measured::from_estimate(self.set(sources, setting, size, Zero::Counts))
    }

    /// The size that a tool still locked at a reading stands at: the reading's
    /// zero and last digit are in it, so they cancel against that reading; its
    /// feel is not, because nothing is felt again.
    #[must_use]
    pub fn still_locked_at<Q: Si>(reading: &Measured<Q>, sources: &Sources) -> Measured<Q> {
        let estimate = reading.estimate();
        let kept = estimate
            .parts()
            .iter()
            .filter(|(id, _)| {
                sources
                    .get(*id)
                    .is_none_or(|source| source.origin != Origin::Repeat)
            })
            .fold(Estimate::exact(estimate.value()), |kept, (id, part)| {
                kept.with(*id, *part)
            });
        Measured::from_estimate(kept)
    }

    /// Adds what is fresh in each reading.
    fn fresh(&self, sources: &mut Sources, reading: Estimate, resolution: f64) -> Estimate {
        let value = reading.value();
        let feel = sources.add(ErrorSource {
            label: Arc::clone(&self.name),
            origin: Origin::Repeat,
            degrees_of_freedom: self.degrees_of_freedom,
        });
        let rounding = sources.fresh(Arc::clone(&self.name), Origin::Rounding);
        reading
            .with(feel, self.repeat.at(value))
            .with(rounding, rounding_deviation(resolution))
    }

    /// Adds what all readings of the setting share.
    fn set(
        &self,
        sources: &mut Sources,
        setting: &Setting<'_>,
        mut value: Estimate,
        zero: Zero,
    ) -> Estimate {
        if self.setting_transfer > 0.0 {
            let of = (self.key.as_str(), setting.key);
            let transfer = sources.of_setting(of, &self.name, Origin::SettingTransfer);
            value = value.with(transfer, self.setting_transfer);
        }
        match (zero, setting.on) {
            (Zero::StaysOut, _) => value,
            (Zero::Counts, SetOn::Tool(other, theirs)) => {
                other.set(sources, theirs, value, Zero::Counts)
            }
            (Zero::Counts, SetOn::Standard) if self.shared_zero > 0.0 => {
                let of = (self.key.as_str(), setting.key);
                let zero = sources.of_setting(of, &self.name, Origin::SharedZero);
                value.with(zero, self.shared_zero)
            }
            (Zero::Counts, SetOn::Standard) => value,
        }
    }
}

/// Whether what a tool was set on counts for a reading.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Zero {
    Counts,
    StaysOut,
}

#[cfg(test)]
mod tests;
