//! Running clearance and its give-or-take, through two chains of tools.

use assembly_core::fit::running_clearance::{NeedleSense, Station, from_stations};
use assembly_core::measure::{Measured, Origin, SourceId, Sources};
use assembly_core::quantity::Si;
use uom::si::f64::Length;

use crate::runner::{Row, Value};

pub fn answer(row: &Row) -> Option<Value> {
    let clearance = from_stations(&stations_of(row)?).ok()?;
    let (name, what) = row.quantity.rsplit_once('_')?;
    let result = match name {
        "least" => clearance.least,
        "greatest" => clearance.greatest,
        "mean" => clearance.mean,
        "journal_taper" => clearance.journal_taper?,
        "journal_out_of_round" => clearance.journal_out_of_round?,
        _ => return None,
    };
    match what {
        "value" => row.value_of(result.value().to_si()),
        "deviation" => row.value_of(result.give_or_take().to_si()),
        _ => None,
    }
}

fn stations_of(row: &Row) -> Option<Vec<Station>> {
    let mut sources = Sources::new();
    let journal_zero = sources.shared("journal micrometer", "micrometer", Origin::SharedZero);
    let journal_zero = (journal_zero, row.si("journal_zero")?);
    let bore_zero = sources.shared("bore micrometer", "micrometer", Origin::SharedZero);
    let bore_zero = (bore_zero, row.si("bore_zero")?);
    let (bore_feel, journal_feel) = (row.si("bore_feel")?, row.si("journal_feel")?);
    let mut felt = |si: f64, feel: f64| {
        let source = sources.fresh("feel", Origin::Repeat);
        length(si).with(source, Length::from_si(feel))
    };
    let with_zero = |reading: Measured<Length>, (zero, deviation): (SourceId, f64)| {
        reading.with(zero, Length::from_si(deviation))
    };
    let mut stations = Vec::new();
    while let (Some(bores), Some(journals)) = (
        row.si_list(&format!("bores_{}", stations.len())),
        row.si_list(&format!("journals_{}", stations.len())),
    ) {
        let bores = bores.into_iter().map(|si| match row.text("chain") {
            Some("same micrometer") => {
                // The gauge was zeroed near by; clockwise is smaller.
                let set_at = with_zero(length(0.0622), journal_zero);
                let needle = felt(0.0622 - si, bore_feel);
                NeedleSense::ClockwiseIsSmaller.bore(&set_at, &needle)
            }
            _ => with_zero(felt(si, bore_feel), bore_zero),
        });
        let bores = bores.collect();
        let journals = journals
            .into_iter()
            .map(|si| with_zero(felt(si, journal_feel), journal_zero))
            .collect();
        stations.push(Station {
            bores,
            journals,
            ..Station::default()
        });
    }
    (!stations.is_empty()).then_some(stations)
}

fn length(si: f64) -> Measured<Length> {
    Measured::exact(Length::from_si(si))
}
