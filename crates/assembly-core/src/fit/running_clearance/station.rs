//! Running clearance from bore and journal readings.

use thiserror::Error;
use uom::si::f64::Length;

use super::findings::findings_of;
use crate::describe::Finding;
use crate::measure::Measured;

/// The readings at one place along a bearing. Give the stations in their order
/// along the shaft, at the same places for bore and journal.
///
/// A shell is thinner toward its joint by design, so only the reading square to
/// the joint says what the clearance is. The others show the eccentricity and
/// are never averaged in. In a plain bushing, which has no joint, every
/// direction counts: put them all into `bores`.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Station {
    /// Bore readings that count: on a shell those square to the joint.
    pub bores: Vec<Measured<Length>>,
    /// Bore readings toward the joint of a shell, some 25° above it.
    pub bores_near_joint: Vec<Measured<Length>>,
    /// Journal readings, any direction.
    pub journals: Vec<Measured<Length>>,
}

/// What there is to know about the clearance of one bearing.
#[derive(Clone, PartialEq, Debug)]
pub struct RunningClearance {
    /// The smallest bore that counts less the largest journal.
    pub least: Measured<Length>,
    /// The largest bore that counts less the smallest journal.
    pub greatest: Measured<Length>,
    /// The mean bore less the mean journal.
    pub mean: Measured<Length>,
    /// How much the clearance differs from end to end of the bearing.
    pub taper: Option<Measured<Length>>,
    /// How much the journal's mean diameter differs between stations.
    pub journal_taper: Option<Measured<Length>>,
    /// The most that the journal's diameters differ at one station.
    pub journal_out_of_round: Option<Measured<Length>>,
    /// How much the bore's mean diameter differs between stations.
    pub bore_taper: Option<Measured<Length>>,
    /// The most that the bore readings that count differ at one station.
    pub bore_out_of_round: Option<Measured<Length>>,
    /// How much wider the bore is toward the joint, where that was measured.
    /// Below zero the bearing is pinched at its joint.
    pub eccentricity: Option<Measured<Length>>,
    /// What the numbers say besides.
    pub findings: Vec<Finding>,
}

/// Why no clearance came out.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Error)]
pub enum ClearanceError {
    /// No bore reading that counts.
    #[error("no bore reading is there: measure the bore square to the joint of the shells")]
    NoBore,
    /// No journal reading.
    #[error("no journal reading is there: measure the journal with a micrometer")]
    NoJournal,
    /// No strip was read.
    #[error("no strip was read: read the widest spot against the printed bands")]
    NoStrip,
    /// A reading is not a finite number.
    #[error("a reading is not a finite number: type it again")]
    NotFinite,
}

/// Running clearance from readings at one or more stations.
///
/// Least = smallest bore that counts − largest journal; greatest = largest bore
/// that counts − smallest journal; mean = mean bore − mean journal. Taper is the
/// difference of the means of two stations (of more, of the two that differ
/// most); out-of-round is the largest less the smallest reading at one station.
///
/// ```
/// use assembly_core::fit::running_clearance::{from_stations, Station};
/// use assembly_core::measure::Measured;
/// use assembly_core::quantity::Si;
/// use uom::si::f64::Length;
///
/// let millimetres = |mm: f64| Measured::exact(Length::from_si(mm * 1e-3));
/// let clearance = from_stations(&[Station {
///     bores: vec![millimetres(62.256)],
///     bores_near_joint: vec![millimetres(62.270)],
///     journals: vec![millimetres(62.200), millimetres(62.203)],
/// }])
/// .unwrap();
/// // The wider reading toward the joint is not averaged in.
/// assert!((clearance.least.value().to_si() - 53e-6).abs() < 1e-12);
/// assert!((clearance.greatest.value().to_si() - 56e-6).abs() < 1e-12);
/// assert!((clearance.eccentricity.unwrap().value().to_si() - 14e-6).abs() < 1e-12);
/// ```
///
/// # Errors
/// [`ClearanceError`] when bore or journal is missing or a reading is no number.
pub fn from_stations(stations: &[Station]) -> Result<RunningClearance, ClearanceError> {
    let bores = gathered(stations, |station| &station.bores);
    let journals = gathered(stations, |station| &station.journals);
    let near_joint = gathered(stations, |station| &station.bores_near_joint);
    if [&bores, &journals, &near_joint]
        .into_iter()
        .flatten()
        .any(|reading| not_finite(reading))
    {
        return Err(ClearanceError::NotFinite);
    }
    let (Some(smallest_bore), Some(largest_bore), Some(mean_bore)) = extremes(&bores) else {
        return Err(ClearanceError::NoBore);
    };
    let (Some(smallest_journal), Some(largest_journal), Some(mean_journal)) = extremes(&journals)
    else {
        return Err(ClearanceError::NoJournal);
    };
    let means: Vec<StationMeans> = stations.iter().map(StationMeans::of).collect();
    let clearances: Vec<Measured<Length>> = means
        .iter()
        .filter_map(|means| Some(means.bore.as_ref()? - means.journal.as_ref()?))
        .collect();
    let mut clearance = RunningClearance {
        least: smallest_bore - largest_journal,
        greatest: largest_bore - smallest_journal,
        mean: mean_bore - mean_journal,
        taper: spread(&clearances),
        journal_taper: spread(means.iter().filter_map(|means| means.journal.as_ref())),
        journal_out_of_round: out_of_round(stations, |station| &station.journals),
        bore_taper: spread(means.iter().filter_map(|means| means.bore.as_ref())),
        bore_out_of_round: out_of_round(stations, |station| &station.bores),
        eccentricity: eccentricity(&means),
        findings: Vec::new(),
    };
    clearance.findings = findings_of(&clearance, Some(largest_journal));
    Ok(clearance)
}

fn not_finite(reading: &Measured<Length>) -> bool {
    !reading.estimate().value().is_finite() || !reading.estimate().deviation().is_finite()
}

fn gathered(
    stations: &[Station],
    which: fn(&Station) -> &Vec<Measured<Length>>,
) -> Vec<&Measured<Length>> {
    stations.iter().flat_map(which).collect()
}

/// The means at one station.
struct StationMeans {
    bore: Option<Measured<Length>>,
    near_joint: Option<Measured<Length>>,
    journal: Option<Measured<Length>>,
}

impl StationMeans {
    fn of(station: &Station) -> Self {
        Self {
            bore: Measured::mean(&station.bores),
            near_joint: Measured::mean(&station.bores_near_joint),
            journal: Measured::mean(&station.journals),
        }
    }
}

type Extremes<'a> = (
    Option<&'a Measured<Length>>,
    Option<&'a Measured<Length>>,
    Option<Measured<Length>>,
);

fn extremes<'a>(readings: &[&'a Measured<Length>]) -> Extremes<'a> {
    (
        Measured::least(readings.iter().copied()),
        Measured::greatest(readings.iter().copied()),
        Measured::mean(readings.iter().copied()),
    )
}

/// The largest less the smallest of two or more.
pub(super) fn spread<'a>(
    readings: impl IntoIterator<Item = &'a Measured<Length>>,
) -> Option<Measured<Length>> {
    let readings: Vec<&Measured<Length>> = readings.into_iter().collect();
    if readings.len() < 2 {
        return None;
    }
    let greatest = Measured::greatest(readings.iter().copied())?;
    Some(greatest - Measured::least(readings)?)
}

/// The largest spread at any one station.
fn out_of_round(
    stations: &[Station],
    which: fn(&Station) -> &Vec<Measured<Length>>,
) -> Option<Measured<Length>> {
    let spreads: Vec<Measured<Length>> = stations
        .iter()
        .filter_map(|station| spread(which(station)))
        .collect();
    Measured::greatest(&spreads).cloned()
}

/// The mean of the readings near the joint less the mean of those square to it,
/// at the station where it is least: pinching is what must not hide.
fn eccentricity(means: &[StationMeans]) -> Option<Measured<Length>> {
    let differences: Vec<Measured<Length>> = means
        .iter()
        .filter_map(|means| Some(means.near_joint.as_ref()? - means.bore.as_ref()?))
        .collect();
    Measured::least(&differences).cloned()
}
