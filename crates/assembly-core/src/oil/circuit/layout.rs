//! Every leak of an engine, measured or estimated from how it is laid out.

use super::eccentricity::FilmTable;
use super::leak::{Entry, LeakingBearing, ring_gap};
use crate::measure::{Estimate, Origin, Sources};

/// Whether a leak rests on a measurement.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Known {
    /// Its clearance was measured.
    Measured,
    /// Taken from the layout; must be shown as such.
    Estimated,
}

/// What kind of leak.
#[derive(Clone, PartialEq, Debug)]
pub enum LeakKind {
    /// A main bearing.
    Main(LeakingBearing),
    /// A rod bearing, fed through the crank: from the main journal's radius to the
    /// radius of the hole in the pin, m.
    Rod(LeakingBearing, (f64, f64)),
    /// Gaps round slow shafts: cam bearings, lifters, rockers; conductance, m³.
    Gap(f64),
    /// A nozzle of this diameter that opens at this pressure: squirters under pistons.
    Nozzle(f64, f64),
}

/// One leak.
#[derive(Clone, PartialEq, Debug)]
pub struct Leak {
    /// Where: "main 3", "rod 5", "lifters".
    pub name: String,
    /// What it is.
    pub kind: LeakKind,
    /// Clearance on the diameter with its error; `None` for a nozzle.
    pub clearance: Option<Estimate>,
    /// Measured or not.
    pub known: Known,
}

/// Sizes of a row of equal bearings, metres, and the readings there are.
#[derive(Clone, PartialEq, Debug)]
pub struct BearingRow {
    /// Journal diameter.
    pub diameter: f64,
    /// Length of a shell.
    pub length: f64,
    /// How oil gets in.
    pub entry: Entry,
    /// Clearance at each place; `None` where it was not measured.
    pub clearances: Vec<Option<Estimate>>,
}

/// How an engine is laid out, as far as its oil goes. Metres.
#[derive(Clone, PartialEq, Debug)]
pub struct Layout {
    /// Mains.
    pub mains: BearingRow,
    /// Rods.
    pub rods: BearingRow,
    /// Stroke.
    pub stroke: f64,
    /// Cam bearings; their clearances are seldom measured.
    pub cam_bearings: usize,
    /// Lifters that are fed with oil.
    pub lifters: usize,
    /// Rockers fed with oil, by pushrod or shaft.
    pub rockers: usize,
    /// Nozzles under pistons and their bore.
    pub squirters: (usize, f64),
}

/// Estimates for what was not measured, on the diameter, metres: common practice,
/// from memory. Each with a third of itself as its doubt.
mod usual {
    use super::{Entry, LeakingBearing, ring_gap};
    use crate::oil::circuit::leak::eccentric_gain;

    /// Of a bearing, by its journal.
    pub const BEARING: f64 = 0.001;
    /// Of a cam bearing.
    pub const CAM: f64 = 75e-6;
    /// Of a lifter in its bore.
    pub const LIFTER: f64 = 38e-6;
    /// Of a rocker on its shaft or ball, with its restrictor counted in.
    pub const ROCKER: f64 = 30e-6;
    /// Pressure at which a squirter opens, Pa.
    pub const SQUIRTER_OPENS: f64 = 1.5e5;
    /// Doubt as a part.
    pub const DOUBT: f64 = 0.33;

    /// Conductance of a cam bearing, fed by a hole, its journal pressed aside.
    pub fn cam_bearing() -> f64 {
        let bearing = LeakingBearing {
            diameter: 0.048,
            length: 0.018,
            clearance: CAM,
            entry: Entry::Hole(0.006),
        };
        bearing.centred() * eccentric_gain(0.7)
    }

    /// Conductance of a lifter: the gap below its feed groove.
    pub fn lifter() -> f64 {
        ring_gap(0.0214, 0.5 * LIFTER, 0.018)
    }

    /// Conductance of a rocker: both ends of its bore.
    pub fn rocker() -> f64 {
        2.0 * ring_gap(0.020, 0.5 * ROCKER, 0.0125)
    }
}

/// All leaks with the tables that their films are looked up in.
#[derive(Clone, PartialEq, Debug)]
pub struct Leaks {
    /// Each of them.
    pub leaks: Vec<Leak>,
    /// Of the mains and of the rods.
    pub tables: (FilmTable, FilmTable),
}

impl Leaks {
    /// The leaks of a layout. What is not measured is estimated, with a fresh cause
    /// of error for each kind.
    #[must_use]
    pub fn of(layout: &Layout, sources: &mut Sources) -> Self {
        let mut leaks = Vec::new();
        let (mains, rods) = (&layout.mains, &layout.rods);
        let throw = 0.5 * layout.stroke;
        row(&mut leaks, "main", mains, sources, |bearing| {
            LeakKind::Main(bearing)
        });
        let way = (0.5 * mains.diameter, throw + 0.5 * rods.diameter);
        row(&mut leaks, "rod", rods, sources, |bearing| {
            LeakKind::Rod(bearing, way)
        });
        for (name, count, clearance, one) in [
            (
                "cam bearings",
                layout.cam_bearings,
                usual::CAM,
                usual::cam_bearing(),
            ),
            ("lifters", layout.lifters, usual::LIFTER, usual::lifter()),
            ("rockers", layout.rockers, usual::ROCKER, usual::rocker()),
        ] {
            if count > 0 {
                leaks.push(Leak {
                    name: name.to_owned(),
                    kind: LeakKind::Gap(one * count as f64),
                    clearance: Some(guessed(name, clearance, sources)),
                    known: Known::Estimated,
                });
            }
        }
        let (squirters, bore) = layout.squirters;
        for at in 1..=squirters {
            leaks.push(Leak {
                name: format!("squirter {at}"),
                kind: LeakKind::Nozzle(bore, usual::SQUIRTER_OPENS),
                clearance: None,
                known: Known::Estimated,
            });
        }
        Self {
            leaks,
            tables: (
                FilmTable::new(land_of(mains) / mains.diameter),
                FilmTable::new(land_of(rods) / rods.diameter),
            ),
        }
    }

    /// The same with one clearance changed by so many metres: "what if main 3 were
    /// a thou looser?". A name that is not there changes nothing.
    #[must_use]
    pub fn with_looser(mut self, name: &str, by: f64) -> Self {
        for leak in self.leaks.iter_mut().filter(|leak| leak.name == name) {
            let Some(clearance) = &leak.clearance else {
                continue;
            };
            let before = clearance.value();
            let now = (before + by).max(0.0);
            if let LeakKind::Main(bearing) | LeakKind::Rod(bearing, _) = &mut leak.kind {
                bearing.clearance = now;
            }
            if let LeakKind::Gap(conductance) = &mut leak.kind {
                *conductance *= (now / before).powi(3);
            }
            leak.clearance = Some(clearance + Estimate::exact(now - before));
        }
        self
    }
}

fn land_of(row: &BearingRow) -> f64 {
    match row.entry {
        Entry::FullGroove(width) => 0.5 * (row.length - width),
        Entry::HalfGroove(_) | Entry::Hole(_) => row.length,
    }
}

fn guessed(name: &str, clearance: f64, sources: &mut Sources) -> Estimate {
    let cause = sources.shared(
        &format!("estimated {name}"),
        format!("clearance of the {name}, estimated"),
        Origin::Handbook,
    );
    Estimate::exact(clearance).with(cause, usual::DOUBT * clearance)
}

fn row(
    leaks: &mut Vec<Leak>,
    what: &str,
    row: &BearingRow,
    sources: &mut Sources,
    kind: impl Fn(LeakingBearing) -> LeakKind,
) {
    for (at, reading) in row.clearances.iter().enumerate() {
        let known = if reading.is_some() {
            Known::Measured
        } else {
            Known::Estimated
        };
        let clearance = reading.clone().unwrap_or_else(|| {
            guessed(
                &format!("{what} bearings"),
                usual::BEARING * row.diameter,
                sources,
            )
        });
        leaks.push(Leak {
            name: format!("{what} {}", at + 1),
            kind: kind(LeakingBearing {
                diameter: row.diameter,
                length: row.length,
                clearance: clearance.value(),
                entry: row.entry,
            }),
            clearance: Some(clearance),
            known,
        });
    }
}
