//! Facts of the oil and the first hour, drawn at random.

use proptest::prelude::*;

use super::samples::{fact_id, spot, text, typed};
use super::*;

fn said() -> BoxedStrategy<Said> {
    let unit = prop::sample::select(vec!["psi", "bar", "rpm", "°F", "°C", "in", "mm", "cc", "x"]);
    (typed(), unit)
        .prop_map(|(typed, unit)| Said {
            typed,
            unit: unit.to_owned(),
        })
        .boxed()
}

fn maybe() -> BoxedStrategy<Option<Said>> {
    prop::option::of(said()).boxed()
}

fn words() -> BoxedStrategy<Option<String>> {
    prop::option::weighted(0.3, text()).boxed()
}

fn system() -> BoxedStrategy<OilSystem> {
    let pump = (maybe(), maybe(), maybe(), maybe());
    let oil = (
        prop::option::of(prop_oneof![Just("10W-30".to_owned()), text()]),
        maybe(),
        maybe(),
    );
    let sizes = (
        (maybe(), maybe(), maybe(), maybe(), maybe()),
        prop::option::of(prop::sample::select(Groove::ALL)),
    );
    let counts = (
        prop::option::of(any::<u32>()),
        prop::option::of(0_u32..20),
        prop::option::of(0_u32..9),
        maybe(),
    );
    let film = (
        (maybe(), maybe(), maybe()),
        (maybe(), maybe(), maybe(), maybe(), maybe(), maybe()),
    );
    (pump, oil, sizes, counts, film)
        .prop_map(
            |(pump, oil, (sizes, groove), counts, (film, gas))| OilSystem {
                pump_volume: pump.0,
                pump_ratio: pump.1,
                relief: pump.2,
                bypass: pump.3,
                grade: oil.0,
                at_40: oil.1,
                at_100: oil.2,
                stroke: sizes.0,
                main_journal: sizes.1,
                main_shell: sizes.2,
                rod_journal: sizes.3,
                rod_shell: sizes.4,
                groove,
                lifters: counts.0,
                rockers: counts.1,
                squirters: counts.2,
                squirter_bore: counts.3,
                load: film.0,
                bore: gas.0,
                rod_length: gas.1,
                up_and_down: gas.2,
                round: gas.3,
                compression_ratio: gas.4,
                peak_gas: gas.5,
                journal_roughness: film.1,
                shell_roughness: film.2,
            },
        )
        .boxed()
}

fn running() -> BoxedStrategy<Body> {
    let row = (
        prop::option::of(any::<u32>()),
        (maybe(), maybe(), maybe(), maybe()),
        words(),
    );
    prop_oneof![
        1 => prop::sample::select(SpeedBand::ALL)
            .prop_map(|band| Body::RunningBegun(RunningBegun { band })),
        1 => (fact_id(), any::<u32>())
            .prop_map(|(begun, seconds)| Body::RunningEnded(RunningEnded { begun, seconds })),
        2 => row.prop_map(|(seconds, (speed, pressure, oil, coolant), words)| {
            Body::RunningRow(RunningRow { seconds, speed, pressure, oil, coolant, words })
        }),
    ]
    .boxed()
}

fn afterwards() -> BoxedStrategy<Body> {
    let noted = (
        prop::sample::select(OilDoing::ALL),
        maybe(),
        maybe(),
        words(),
        words(),
    );
    prop_oneof![
        noted.prop_map(
            |(what, amount, meter, kind, words)| Body::OilNoted(OilNoted {
                what,
                amount,
                meter,
                kind,
                words
            })
        ),
        (spot(), said(), prop::sample::select(BoreState::ALL)).prop_map(
            |(place, pressure, state)| Body::CompressionRead(CompressionRead {
                place,
                pressure,
                state
            })
        ),
        (spot(), said(), said(), maybe(), words()).prop_map(
            |(place, supply, held, orifice, heard)| {
                Body::LeakDownRead(LeakDownRead {
                    place,
                    supply,
                    held,
                    orifice,
                    heard,
                })
            }
        ),
        (
            prop_oneof![Just("gallery-front".to_owned()), text()],
            prop::option::of(0_u32..9),
            prop::option::of(any::<u32>()),
            words()
        )
            .prop_map(
                |(plugs, out, back, words)| Body::PlugsCounted(PlugsCounted {
                    plugs,
                    out,
                    back,
                    words
                })
            ),
    ]
    .boxed()
}

/// Any body of these kinds.
pub(crate) fn oil() -> BoxedStrategy<Body> {
    prop_oneof![
        1 => system().prop_map(|system| Body::OilSystem(Box::new(system))),
        2 => (said(), maybe(), maybe(), words()).prop_map(|(pressure, speed, temperature, gauge)| {
            Body::GaugeRead(GaugeRead { pressure, speed, temperature, gauge })
        }),
        1 => (maybe(), maybe(), words()).prop_map(|(pressure, temperature, words)| {
            Body::PrimeTested(PrimeTested { pressure, temperature, words })
        }),
        2 => running(),
        2 => afterwards(),
    ]
    .boxed()
}
