//! The table of units, with exact factors.
//!
//! Sources: NIST Special Publication 811 (2008), appendix B, and ISO 80000. All
//! rest on three definitions: the international inch is 25.4 mm, the pound is
//! 0.45359237 kg, standard gravity is 9.80665 m/s². An inch of mercury is the
//! conventional one (mercury of 13,595.1 kg/m³ at standard gravity). Angles use
//! 21053343141/6701487259 for π, which is right to 1 part in 10²².

use super::Kind;
use super::factor::Factor;
use super::unit::{Below, Digits, Unit};

use Below::{Hundred, Ten, Tenth};
use Digits::{Decimals, FinerBelow, Significant};

/// Numerator and denominator of π.
const PI: (u64, u64) = (21_053_343_141, 6_701_487_259);

const fn of(
    kind: Kind,
    symbol: &'static str,
    name: &'static str,
    factor: (u64, u64),
    digits: Digits,
    exact_names: &'static str,
    loose_names: &'static str,
) -> Unit {
    Unit {
        symbol,
        name,
        kind,
        factor: Factor {
            numerator: factor.0,
            denominator: factor.1,
        },
        offset_hundredths: 0,
        exact_names,
        loose_names,
        digits,
    }
}

const fn from_zero_at(offset_hundredths: i64, mut unit: Unit) -> Unit {
    unit.offset_hundredths = offset_hundredths;
    unit
}

const MILLION: u64 = 1_000_000;

/// Every unit; within a kind the usual ones first.
#[rustfmt::skip]
pub(super) static UNITS: &[Unit] = &[
    of(Kind::Length, "in", "inches", (254, 10_000), FinerBelow(4, Tenth), "", "in inch inches \" ''"),
    of(Kind::Length, "mm", "millimetres", (1, 1000), Decimals(3), "", "mm millimetre millimeter"),
    of(Kind::Length, "thou", "thousandths of an inch", (254, 10 * MILLION), Decimals(1), "", "thou thousandth thousandths thousandsofaninch thousandthsofaninch"),
    of(Kind::Length, "tenths", "ten-thousandths of an inch", (254, 100 * MILLION), Decimals(0), "", "tenth tenths tenthofathou tenthsofathou tenthousandth tenthousandths"),
    of(Kind::Length, "µm", "micrometres", (1, MILLION), Decimals(0), "", "um u micron micrometre micrometer"),
    of(Kind::Length, "hundredths", "hundredths of a millimetre", (1, 100_000), Decimals(1), "", "hundredth hundredths hundredthofamm hundredthsofamm"),
    of(Kind::Length, "cm", "centimetres", (1, 100), Decimals(2), "", "cm centimetre centimeter"),
    of(Kind::Length, "m", "metres", (1, 1), Significant(5), "m", "metre meter"),
    of(Kind::Length, "ft", "feet", (3048, 10_000), Decimals(3), "", "ft foot feet '"),
    of(Kind::Length, "µin", "millionths of an inch", (254, 10_000 * MILLION), Decimals(0), "", "uin microinch microinches millionth millionths"),

    of(Kind::Area, "in²", "square inches", (16_129, 25 * MILLION), Decimals(3), "", "in2 sqin squareinch squareinches sqinch sqinches"),
    of(Kind::Area, "mm²", "square millimetres", (1, MILLION), Decimals(1), "", "mm2 sqmm squaremillimetre squaremillimeter"),
    of(Kind::Area, "cm²", "square centimetres", (1, 10_000), Decimals(2), "", "cm2 sqcm squarecentimetre squarecentimeter"),
    of(Kind::Area, "m²", "square metres", (1, 1), Significant(5), "m2", "sqm squaremetre squaremeter"),

    of(Kind::Volume, "cc", "cubic centimetres", (1, MILLION), Decimals(1), "", "cc ccm cm3 cucm cubiccentimetre cubiccentimeter"),
    of(Kind::Volume, "mL", "millilitres", (1, MILLION), Decimals(1), "", "ml millilitre milliliter"),
    of(Kind::Volume, "L", "litres", (1, 1000), Decimals(3), "", "l litre liter ltr dm3"),
    of(Kind::Volume, "in³", "cubic inches", (2_048_383, 125_000 * MILLION), Decimals(2), "", "in3 cuin ci cid cubicinch cubicinches cuinch cuinches"),
    of(Kind::Volume, "mm³", "cubic millimetres", (1, 1000 * MILLION), Decimals(0), "", "mm3 cumm cubicmillimetre cubicmillimeter"),
    of(Kind::Volume, "US qt", "US quarts", (473_176_473, 500_000 * MILLION), Decimals(2), "", "usqt usquart qt qts quart"),
    of(Kind::Volume, "US fl oz", "US fluid ounces", (473_176_473, 16_000_000 * MILLION), Decimals(1), "", "usfloz floz fluidounce"),
    of(Kind::Volume, "m³", "cubic metres", (1, 1), Significant(5), "m3", "cum cubicmetre cubicmeter"),

    of(Kind::Mass, "g", "grams", (1, 1000), Decimals(1), "", "g gram gramme gm"),
    of(Kind::Mass, "kg", "kilograms", (1, 1), Decimals(3), "", "kg kilogram kilogramme kilo kilos"),
    of(Kind::Mass, "lb", "pounds", (45_359_237, 100 * MILLION), Decimals(2), "", "lb lbs lbm pound"),
    of(Kind::Mass, "oz", "ounces", (45_359_237, 1600 * MILLION), Decimals(2), "", "oz ounce"),

    from_zero_at(27_315, of(Kind::Temperature, "°C", "degrees Celsius", (1, 1), Decimals(1), "", "°c c degc degreec degreesc celsius degreescelsius centigrade")),
    from_zero_at(45_967, of(Kind::Temperature, "°F", "degrees Fahrenheit", (5, 9), Decimals(0), "", "°f f degf degreef degreesf fahrenheit degreesfahrenheit")),
    of(Kind::Temperature, "K", "kelvin", (1, 1), Decimals(1), "K", "kelvin degk"),

    of(Kind::TemperatureDifference, "K", "kelvin", (1, 1), Decimals(1), "K", "kelvin degk"),
    of(Kind::TemperatureDifference, "°C", "Celsius degrees", (1, 1), Decimals(1), "", "°c c degc degreec degreesc celsius degreescelsius centigrade"),
    of(Kind::TemperatureDifference, "°F", "Fahrenheit degrees", (5, 9), Decimals(0), "", "°f f degf degreef degreesf fahrenheit degreesfahrenheit"),

    of(Kind::Torque, "ft-lb", "foot-pounds", (3_389_544_870_828_501, 2_500_000_000 * MILLION), Decimals(1), "", "ftlb ftlbs lbft lbsft lbfft ftlbf ft/lb ft/lbs lb/ft lbs/ft footpound poundfoot poundfeet poundsfeet"),
    of(Kind::Torque, "N·m", "newton metres", (1, 1), Decimals(1), "", "nm newtonmetre newtonmeter"),
    of(Kind::Torque, "in-lb", "inch-pounds", (1_129_848_290_276_167, 10_000_000_000 * MILLION), Decimals(0), "", "inlb inlbs lbin lbsin lbfin inlbf in/lb in/lbs inchpound poundinch"),
    of(Kind::Torque, "kgf·m", "kilogram-force metres", (980_665, 100_000), Decimals(2), "", "kgfm kgm mkg mkgf mkp kpm"),
    of(Kind::Torque, "kgf·cm", "kilogram-force centimetres", (980_665, 10 * MILLION), Decimals(1), "", "kgfcm kgcm cmkg cmkgf cmkp kpcm"),
    of(Kind::Torque, "daN·m", "decanewton metres", (10, 1), Decimals(2), "", "danm mdan"),

    of(Kind::Pressure, "psi", "pounds a square inch", (8_896_443_230_521, 1290 * MILLION + 320_000), FinerBelow(0, Hundred), "", "psi psig lb/in2 lbs/in2 lbf/in2 lb/sqin lbs/sqin lbf/sqin"),
    of(Kind::Pressure, "bar", "bar", (100_000, 1), Decimals(2), "", "bar"),
    of(Kind::Pressure, "kPa", "kilopascals", (1000, 1), Decimals(0), "", "kpa kilopascal"),
    of(Kind::Pressure, "MPa", "megapascals", (MILLION, 1), Decimals(1), "MPa MPA Mpa mpa", "n/mm2 megapascal"),
    of(Kind::Pressure, "kgf/cm²", "kilogram-force a square centimetre", (980_665, 10), Decimals(2), "", "kgf/cm2 kg/cm2 kp/cm2"),
    of(Kind::Pressure, "inHg", "inches of mercury", (3_386_388_640_341, 1000 * MILLION), Decimals(1), "", "inhg \"hg inchofmercury inchesofmercury"),
    of(Kind::Pressure, "mmHg", "millimetres of mercury", (26_664_477_483, 200 * MILLION), Decimals(0), "", "mmhg"),
    of(Kind::Pressure, "ksi", "thousand pounds a square inch", (8_896_443_230_521, 1_290_320), Decimals(1), "", "ksi kpsi"),
    of(Kind::Pressure, "GPa", "gigapascals", (1000 * MILLION, 1), Decimals(1), "", "gpa gigapascal"),
    of(Kind::Pressure, "Pa", "pascals", (1, 1), Significant(5), "", "pa pascal"),

    of(Kind::Force, "lbf", "pounds-force", (8_896_443_230_521, 2_000_000 * MILLION), FinerBelow(0, Hundred), "", "lbf lb lbs pound poundforce"),
    of(Kind::Force, "N", "newtons", (1, 1), Decimals(0), "", "n newton"),
    of(Kind::Force, "kN", "kilonewtons", (1000, 1), Decimals(2), "", "kn kilonewton"),
    of(Kind::Force, "kgf", "kilograms-force", (980_665, 100_000), Decimals(1), "", "kgf kg kp kilogram kilo kilos kilogramforce"),
    of(Kind::Force, "daN", "decanewtons", (10, 1), Decimals(1), "", "dan decanewton"),

    of(Kind::Angle, "°", "degrees", (PI.0, 180 * PI.1), Decimals(1), "", "° deg degree"),
    of(Kind::Angle, "rad", "radians", (1, 1), Decimals(4), "", "rad radian"),
    of(Kind::Angle, "turns", "turns", (2 * PI.0, PI.1), Decimals(3), "", "turn turns rev revs revolution"),
    of(Kind::Angle, "′", "minutes of arc", (PI.0, 10_800 * PI.1), Decimals(0), "", "' ′ arcmin arcminute minuteofarc minutesofarc"),

    of(Kind::RotationalSpeed, "rpm", "turns a minute", (PI.0, 30 * PI.1), Decimals(0), "", "rpm r/min rev/min revs/min turn/min turns/min 1/min min1 /min"),
    of(Kind::RotationalSpeed, "rad/s", "radians a second", (1, 1), Decimals(2), "", "rad/s rad/sec 1/s"),

    of(Kind::Stiffness, "lbf/in", "pounds-force an inch", (8_896_443_230_521, 50_800 * MILLION), FinerBelow(0, Ten), "", "lbf/in lb/in lbs/in lbf/inch lb/inch lbs/inch lb/\" lbs/\""),
    of(Kind::Stiffness, "N/mm", "newtons a millimetre", (1000, 1), FinerBelow(1, Ten), "", "n/mm"),
    of(Kind::Stiffness, "kgf/mm", "kilograms-force a millimetre", (980_665, 100), Decimals(2), "", "kgf/mm kg/mm kp/mm"),
    of(Kind::Stiffness, "kN/mm", "kilonewtons a millimetre", (MILLION, 1), Decimals(1), "", "kn/mm"),
    of(Kind::Stiffness, "N/m", "newtons a metre", (1, 1), Significant(5), "N/m n/m", ""),

    of(Kind::DynamicViscosity, "mPa·s", "millipascal seconds", (1, 1000), FinerBelow(1, Ten), "mPas mpas", ""),
    of(Kind::DynamicViscosity, "cP", "centipoise", (1, 1000), FinerBelow(1, Ten), "", "cp centipoise"),
    of(Kind::DynamicViscosity, "Pa·s", "pascal seconds", (1, 1), Significant(4), "Pas pas", ""),

    of(Kind::KinematicViscosity, "cSt", "centistokes", (1, MILLION), FinerBelow(1, Ten), "", "cst centistoke centistokes"),
    of(Kind::KinematicViscosity, "mm²/s", "square millimetres a second", (1, MILLION), FinerBelow(1, Ten), "", "mm2/s mm2/sec"),
    of(Kind::KinematicViscosity, "m²/s", "square metres a second", (1, 1), Significant(4), "m2/s", ""),

    of(Kind::Density, "kg/m³", "kilograms a cubic metre", (1, 1), Decimals(0), "kg/m3", "kg/cum"),
    of(Kind::Density, "g/cm³", "grams a cubic centimetre", (1000, 1), Decimals(3), "", "g/cm3 g/cc g/ml"),
    of(Kind::Density, "kg/L", "kilograms a litre", (1000, 1), Decimals(3), "", "kg/l kg/dm3"),
    of(Kind::Density, "lb/in³", "pounds a cubic inch", (56_699_046_250, 2_048_383), Decimals(4), "", "lb/in3 lbs/in3 lb/cuin lbs/cuin"),

    of(Kind::Flow, "L/min", "litres a minute", (1, 60_000), Decimals(1), "", "l/min lpm litre/minute liter/minute litres/minute liters/minute"),
    of(Kind::Flow, "US gal/min", "US gallons a minute", (157_725_491, 2_500_000 * MILLION), Decimals(2), "", "usgal/min usgpm gal/min gpm"),
    of(Kind::Flow, "mL/min", "millilitres a minute", (1, 60 * MILLION), Decimals(0), "", "ml/min cc/min cm3/min"),
    of(Kind::Flow, "ft³/min", "cubic feet a minute", (18_435_447, 39_062 * MILLION + 500_000), Decimals(1), "", "ft3/min cuft/min cfm"),
    of(Kind::Flow, "m³/s", "cubic metres a second", (1, 1), Significant(4), "m3/s", ""),

    of(Kind::Expansion, "ppm/K", "millionths a kelvin", (1, MILLION), Decimals(1), "ppm/K", "ppm/k ppm/°c ppm/c um/m/k um/mk um/m/°c um/m°c"),
    of(Kind::Expansion, "ppm/°F", "millionths a Fahrenheit degree", (9, 5 * MILLION), Decimals(1), "", "ppm/°f ppm/f uin/in/°f uin/in°f uin/in/f"),
    of(Kind::Expansion, "1/K", "a kelvin", (1, 1), Significant(3), "1/K", "/k 1/k k1 /°c 1/°c"),
    of(Kind::Expansion, "1/°F", "a Fahrenheit degree", (9, 5), Significant(3), "", "/°f 1/°f /f 1/f"),

    of(Kind::Ratio, "", "a plain number", (1, 1), Significant(4), "", ":1"),
    of(Kind::Ratio, "%", "per cent", (1, 100), Decimals(1), "", "% percent pct"),
    of(Kind::Ratio, "in/in", "inches an inch", (1, 1), Significant(3), "", "in/in inch/inch \"/\""),
    of(Kind::Ratio, "mm/mm", "millimetres a millimetre", (1, 1), Significant(3), "", "mm/mm m/m"),
    of(Kind::Ratio, "thou/in", "thousandths an inch", (1, 1000), Decimals(2), "", "thou/in thou/inch"),

    of(Kind::Count, "", "pieces", (1, 1), Decimals(0), "", "pcs pieces off"),
];
