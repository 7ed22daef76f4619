//! What the person prefers on this device: inches or millimetres, light or dark.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::{Kind, Unit, unit_or_usual};
use leptos::prelude::*;

use super::local;

const UNITS: &str = "thoubook-setting/units";
const THEME: &str = "thoubook-setting/theme";

/// The class of units that lone numbers are in and results are said in.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum UnitClass {
    /// Inches, thou, foot-pounds.
    Inch,
    /// Millimetres, micrometres, newton metres.
    Metric,
}

impl UnitClass {
    /// The unit of this class for something of a kind.
    #[must_use]
    pub fn of(self, kind: Kind, usual: UsualUnits) -> &'static Unit {
        let symbol = match self {
            Self::Inch => usual.inch,
            Self::Metric => usual.metric,
        };
        unit_or_usual(kind, symbol)
    }

    /// The other class.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Inch => Self::Metric,
            Self::Metric => Self::Inch,
        }
    }

    /// The unit of this class for clearances: thou or micrometres.
    #[must_use]
    pub fn clearance(self) -> &'static Unit {
        self.of(Kind::Length, UsualUnits::GAP)
    }
}

/// Light, dark, or as the device says.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Theme {
    /// As the device says.
    Device,
    /// For the sun.
    Light,
    /// For the gloom.
    Dark,
}

impl Theme {
    const fn name(self) -> &'static str {
        match self {
            Self::Device => "device",
            Self::Light => "light",
            Self::Dark => "dark",
        }
    }
}

/// The settings of this device, kept in its local storage.
#[derive(Clone, Copy)]
pub struct Settings {
    units: RwSignal<UnitClass>,
    theme: RwSignal<Theme>,
}

impl Settings {
    /// The settings as they were left.
    #[must_use]
    pub fn load() -> Self {
        let units = match local::get(UNITS).as_deref() {
            Some("metric") => UnitClass::Metric,
            _ => UnitClass::Inch,
        };
        let theme = match local::get(THEME).as_deref() {
            Some("light") => Theme::Light,
            Some("dark") => Theme::Dark,
            _ => Theme::Device,
        };
        show_theme(theme);
        Self {
            units: RwSignal::new(units),
            theme: RwSignal::new(theme),
        }
    }

    /// The class of units, followed.
    #[must_use]
    pub fn units(self) -> UnitClass {
        self.units.get()
    }

    /// Chooses the class of units.
    pub fn choose_units(self, units: UnitClass) {
        let name = match units {
            UnitClass::Inch => "inch",
            UnitClass::Metric => "metric",
        };
        // Not kept means asked again next time, and no more.
        let _ = local::put(UNITS, name);
        self.units.set(units);
    }

    /// The theme, followed.
    #[must_use]
    pub fn theme(self) -> Theme {
        self.theme.get()
    }

    /// Chooses the theme.
    pub fn choose_theme(self, theme: Theme) {
        let _ = local::put(THEME, theme.name());
        show_theme(theme);
        self.theme.set(theme);
    }
}

fn show_theme(theme: Theme) {
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("data-theme", theme.name());
    }
}

/// The settings of this device.
#[must_use]
pub fn settings() -> Settings {
    expect_context()
}
