//! Valve spring: installed height, loads, room before the coils bind, and the
//! room between retainer and seal.

use num_dual::Dual64;

use super::answering::INCH;
use super::formula::{Formula, Number, Smooth, Stack, Term};
use crate::describe::{Input, Output, UsualUnits};
use crate::quantity::Kind;

/// The least room before the coils bind. Common practice.
pub const LEAST_BIND_MARGIN: f64 = 0.060 * INCH;
/// The least room between retainer and seal at full lift. Common practice.
pub const LEAST_SEAL_ROOM: f64 = 0.060 * INCH;
/// The most of flat shims under one spring. Common practice.
pub const MOST_SHIMS: f64 = 0.060 * INCH;

const FORCE: (Kind, UsualUnits) = (Kind::Force, UsualUnits::FORCE);

/// Installed height as measured.
pub static INSTALLED_HEIGHT: Input = Input::size(
    "installed-height",
    "installed height without the shim",
    (0.01, 0.15),
    "Valve held shut, from the spring's seat to the underside of the retainer, with cup and seal in place.",
);
/// Shims under the spring.
pub static SHIM: Input = Input::gap(
    "shim",
    "shims under the spring",
    (0.0, 0.006),
    "All shims together, measured and not read off the packet.",
)
.optional();
/// Lift of the lobe.
pub static LOBE_LIFT: Input = Input::size(
    "lobe-lift",
    "lobe lift",
    (0.0, 0.03),
    "Highest less lowest reading at the lifter; with the cam on the valve, the valve's lift and a ratio of 1.",
);
/// Rocker ratio.
pub static ROCKER_RATIO: Input = Input::ratio(
    "rocker-ratio",
    "rocker ratio",
    (0.5, 3.0),
    "Valve movement for each unit of lifter movement, measured rather than read off the rocker; 1 for a cam on the valve.",
);
/// Lash.
pub static LASH: Input = Input::gap(
    "lash",
    "lash at the valve",
    (0.0, 0.002),
    "For solid lifters, as it is set; nothing for hydraulic ones.",
)
.optional();
/// Height at which the coils touch.
pub static SOLID_HEIGHT: Input = Input::size(
    "solid-height",
    "height with the coils touching",
    (0.005, 0.12),
    "From the spring's sheet, or the spring squeezed shut in a vice between soft jaws.",
);
/// Rate.
pub static SPRING_RATE: Input = Input::of(
    "spring-rate",
    "spring rate",
    (Kind::Stiffness, UsualUnits::of("lbf/in", "N/mm")),
    (1_000.0, 400_000.0),
    "From the sheet, or the difference of two loads over the difference of their heights.",
)
.optional();
/// A load that is known.
pub static KNOWN_LOAD: Input = Input::of(
    "known-load",
    "load at a known height",
    FORCE,
    (5.0, 5_000.0),
    "From the spring tester or the sheet.",
)
.optional();
/// The height of that load.
pub static KNOWN_HEIGHT: Input = Input::size(
    "known-height",
    "the height of that load",
    (0.01, 0.15),
    "The height at which the load was read.",
)
.optional();
/// Room between retainer and seal, valve shut.
pub static SEAL_GAP: Input = Input::size(
    "seal-gap",
    "retainer to seal, valve shut",
    (0.0, 0.05),
    "From the underside of the retainer to the top of the seal, valve shut. A shim does not change it.",
)
.optional();
pub(super) static HEIGHT: Output = Output::size("height", "installed height with the shim");
pub(super) static OPEN: Output = Output::size("open-height", "height at full lift");
pub(super) static NET: Output = Output::size("net-lift", "valve lift");
pub(super) static MARGIN: Output = Output::size("bind-margin", "room before the coils bind");
pub(super) static SEAT: Output = Output::of("seat-load", "load on the seat", FORCE);
pub(super) static OVER: Output = Output::of("open-load", "load at full lift", FORCE);
pub(super) static SEAL: Output = Output::size("seal-room", "retainer to seal at full lift");

/// Installed height with shims.
pub static SPRING_HEIGHT: Stack = Stack {
    id: "spring-height",
    title: "Installed height",
    terms: &[Term::needed(&INSTALLED_HEIGHT), Term::if_fitted(&SHIM)],
    result: &HEIGHT,
    formula: Formula::Sum(&[1.0, -1.0]),
    proof: "A height micrometer in place of the spring, every valve.",
};

/// Lift of the valve itself.
pub static VALVE_LIFT: Stack = Stack {
    id: "valve-lift",
    title: "Valve lift",
    terms: &LIFT,
    result: &NET,
    formula: Formula::Smooth(Smooth {
        value: lift::<f64>,
        with_slope: lift::<Dual64>,
    }),
    proof: "An indicator on the retainer, over one turn of the camshaft.",
};

/// Room before the coils bind.
pub static BIND_MARGIN: Stack = Stack {
    id: "coil-bind-margin",
    title: "Room before the coils bind",
    terms: &[
        Term::needed(&LOBE_LIFT),
        Term::needed(&ROCKER_RATIO),
        Term::if_fitted(&LASH),
        Term::needed(&INSTALLED_HEIGHT),
        Term::if_fitted(&SHIM),
        Term::needed(&SOLID_HEIGHT),
    ],
    result: &MARGIN,
    formula: Formula::Smooth(Smooth {
        value: margin::<f64>,
        with_slope: margin::<Dual64>,
    }),
    proof: "A wire of 0.060 in (1.5 mm) rolled between the coils at full lift, all around.",
};

/// Load on the seat.
pub static SEAT_LOAD: Stack = Stack {
    id: "spring-seat-load",
    title: "Spring load on the seat",
    terms: &[
        Term::needed(&INSTALLED_HEIGHT),
        Term::if_fitted(&SHIM),
        Term::needed(&KNOWN_LOAD),
        Term::needed(&KNOWN_HEIGHT),
        Term::needed(&SPRING_RATE),
    ],
    result: &SEAT,
    formula: Formula::Smooth(Smooth {
        value: seat_load::<f64>,
        with_slope: seat_load::<Dual64>,
    }),
    proof: "A spring tester at the installed height.",
};

/// Load at full lift.
pub static OPEN_LOAD: Stack = Stack {
    id: "spring-open-load",
    title: "Spring load at full lift",
    terms: &[
        Term::needed(&LOBE_LIFT),
        Term::needed(&ROCKER_RATIO),
        Term::if_fitted(&LASH),
        Term::needed(&INSTALLED_HEIGHT),
        Term::if_fitted(&SHIM),
        Term::needed(&KNOWN_LOAD),
        Term::needed(&KNOWN_HEIGHT),
        Term::needed(&SPRING_RATE),
    ],
    result: &OVER,
    formula: Formula::Smooth(Smooth {
        value: open_load::<f64>,
        with_slope: open_load::<Dual64>,
    }),
    proof: "A spring tester at the installed height less the lift.",
};

/// Room between retainer and seal.
pub static RETAINER_TO_SEAL: Stack = Stack {
    id: "retainer-to-seal",
    title: "Retainer to seal at full lift",
    terms: &[
        Term::needed(&LOBE_LIFT),
        Term::needed(&ROCKER_RATIO),
        Term::if_fitted(&LASH),
        Term::needed(&SEAL_GAP),
    ],
    result: &SEAL,
    formula: Formula::Smooth(Smooth {
        value: seal_room::<f64>,
        with_slope: seal_room::<Dual64>,
    }),
    proof: "Full lift with a light spring, and a blade between retainer and seal.",
};

const LIFT: [Term; 3] = [
    Term::needed(&LOBE_LIFT),
    Term::needed(&ROCKER_RATIO),
    Term::if_fitted(&LASH),
];

fn lift<N: Number>(terms: &[N]) -> N {
    let &[lobe, ratio, lash, ..] = terms else {
        return N::from(f64::NAN);
    };
    lobe * ratio - lash
}

fn margin<N: Number>(terms: &[N]) -> N {
    let &[_, _, _, height, shim, solid] = terms else {
        return N::from(f64::NAN);
    };
    height - shim - lift(terms) - solid
}

fn seat_load<N: Number>(terms: &[N]) -> N {
    let &[height, shim, load, at, rate] = terms else {
        return N::from(f64::NAN);
    };
    load + rate * (at - (height - shim))
}

fn open_load<N: Number>(terms: &[N]) -> N {
    let &[_, _, _, height, shim, load, at, rate] = terms else {
        return N::from(f64::NAN);
    };
    load + rate * (at - (height - shim - lift(terms)))
}

fn seal_room<N: Number>(terms: &[N]) -> N {
    let &[_, _, _, gap] = terms else {
        return N::from(f64::NAN);
    };
    gap - lift(terms)
}
