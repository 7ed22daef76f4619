//! The oil of the sample: what its gauge said before it was taken apart, and its
//! oil system. Invented, like the rest.

use build_journal::fact::{
    Body, GaugeRead, Groove, OilDoing, OilNoted, OilSystem, PrimeTested, RunningRow, Said,
};

use super::bench::Pen;

fn said(typed: &str, unit: &str) -> Said {
    Said {
        typed: typed.to_owned(),
        unit: unit.to_owned(),
    }
}

/// It ran once more before it came apart: primed by hand, its pressure read cold and
/// hot, its oil drained and the filter cut open.
pub fn as_found(pen: &mut Pen) {
    pen.write(Body::PrimeTested(PrimeTested {
        pressure: Some(said("34", "psi")),
        temperature: Some(said("61", "°F")),
        words: Some("as found: turned by hand with the plugs out until the gauge stood".to_owned()),
    }));
    // The gauge falls with the oil's warmth, and climbs with the speed.
    for (pressure, speed, temperature) in [
        ("52", "1000", "75"),
        ("22", "600", "190"),
        ("43", "1200", "195"),
        ("49", "1800", "200"),
    ] {
        pen.write(Body::GaugeRead(GaugeRead {
            pressure: said(pressure, "psi"),
            speed: Some(said(speed, "rpm")),
            temperature: Some(said(temperature, "°F")),
            gauge: Some("mechanical, at the gallery".to_owned()),
        }));
    }
    for (minutes, pressure, oil, coolant, words) in [
        (1, "50", "80", "85", "knocks, goes when warm"),
        (12, "39", "185", "170", "steady"),
        (25, "36", "200", "178", "a drop at the rear seal"),
    ] {
        pen.write(Body::RunningRow(RunningRow {
            seconds: Some(minutes * 60),
            speed: Some(said("1000", "rpm")),
            pressure: Some(said(pressure, "psi")),
            oil: Some(said(oil, "°F")),
            coolant: Some(said(coolant, "°F")),
            words: Some(words.to_owned()),
        }));
    }
    for (what, amount, kind, words) in [
        (OilDoing::Drained, Some("5"), None, "black, no glitter"),
        (
            OilDoing::FilterCut,
            None,
            Some("spin-on"),
            "a few fine flakes in the pleats",
        ),
    ] {
        pen.write(Body::OilNoted(OilNoted {
            what,
            amount: amount.map(|amount| said(amount, "US qt")),
            meter: Some(said("2140", "h")),
            kind: kind.map(str::to_owned),
            words: Some(words.to_owned()),
        }));
    }
}

/// What is known of its oil system.
pub fn system(pen: &mut Pen) {
    pen.write(Body::OilSystem(Box::new(OilSystem {
        pump_volume: Some(said("4.5", "cc")),
        relief: Some(said("50", "psi")),
        bypass: Some(said("12", "psi")),
        grade: Some("10W-30".to_owned()),
        at_40: Some(said("70", "cSt")),
        at_100: Some(said("10.5", "cSt")),
        stroke: Some(said("3.75", "in")),
        main_shell: Some(said("0.95", "in")),
        rod_shell: Some(said("0.90", "in")),
        groove: Some(Groove::Upper),
        squirters: Some(0),
        bore: Some(said("3.5", "in")),
        rod_length: Some(said("6.5", "in")),
        up_and_down: Some(said("780", "g")),
        round: Some(said("620", "g")),
        compression_ratio: Some(said("7.2", "")),
        ..OilSystem::default()
    })));
}
