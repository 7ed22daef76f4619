//! What technical manuals of the United States Army print, which are in the
//! public domain. Each holds for its own engine, most of them diesels.

use super::Source::ArmyManual;
use super::entry::Entry;

/// A line of a manual, by its number.
const fn tm(id: &'static str, what: &'static str, number: &'static str) -> Entry {
    Entry::of(id, what).case(number).by(ArmyManual(number))
}

const MAIN: (&str, &str) = ("main-oil-clearance", "main oil clearance");
const ROD: (&str, &str) = ("rod-oil-clearance", "rod oil clearance");
const END_PLAY: (&str, &str) = ("crank-end-play", "crank end play");

const fn of(measure: (&'static str, &'static str), number: &'static str) -> Entry {
    tm(measure.0, measure.1, number)
}

const TM_5_1940_277: &str = "TM 5-1940-277-34";
const TM_5_3805_258: &str = "TM 5-3805-258-24-2";
const TM_5_3805_262: &str = "TM 5-3805-262-34";
const TM_5_3805_281: &str = "TM 5-3805-281-24-2";
const TM_5_3825_226: &str = "TM 5-3825-226-24";
const TM_5_3895_346: &str = "TM 5-3895-346-14";
const TM_5_3895_347: &str = "TM 5-3895-347-14&P";
const TM_5_3895_369: &str = "TM 5-3895-369-14";
const TM_5_6115_400: &str = "TM 5-6115-400-35";
const TM_5_6115_593: &str = "TM 5-6115-593-34";
const TM_9_2320_289: &str = "TM 9-2320-289-34";
const TM_9_2815_202: &str = "TM 9-2815-202-34";
const TM_9_2815_213: &str = "TM 9-2815-213-34";
const TM_9_2815_226: &str = "TM 9-2815-226-34-1";
const TM_9_2815_254: &str = "TM 9-2815-254-24";
const TM_9_2815_256: &str = "TM 9-2815-256-24";
const TM_9_2815_260: &str = "TM 9-2815-260-24";
const TM_9_4310_397: &str = "TM 9-4310-397-14";
const TM_9_6115_604: &str = "TM 9-6115-604-34";
const TM_10_3930_243: &str = "TM 10-3930-243-34";
const TM_10_3930_653: &str = "TM 10-3930-653-14&P";
const TM_10_4320_307: &str = "TM 10-4320-307-24";
const TM_55_1905_223: &str = "TM 55-1905-223-24-1";
const TM_55_1930_208: &str = "TM 55-1930-208-24";

pub(super) static ENTRIES: &[Entry] = &[
    of(MAIN, TM_5_3805_258).from(0.0030, 0.0065).worn_to(0.010),
    of(MAIN, TM_5_3825_226).from(0.002, 0.005).worn_to(0.006),
    of(MAIN, TM_5_3895_369).worn_to(0.004_75),
    of(MAIN, TM_9_2320_289).aim_at(0.0018).worn_to(0.005),
    of(MAIN, TM_9_2815_202).at_most(0.0055),
    of(MAIN, TM_9_2815_254).from(0.0007, 0.0025).worn_to(0.0047),
    of(MAIN, TM_9_2815_256).worn_to(0.006),
    of(MAIN, TM_9_2815_260).from(0.0016, 0.0043),
    of(MAIN, TM_9_6115_604).from(0.0036, 0.0075).worn_to(0.0095),
    of(MAIN, TM_10_3930_243).from(0.0025, 0.0057).worn_to(0.007),
    of(MAIN, TM_10_3930_653)
        .from(0.0008, 0.0024)
        .worn_to(0.0039),
    // The page gives 0.05 mm in brackets, which is 0.002 in: its units conflict.
    tm(
        "main-clearance-step",
        "main oil clearance, difference of neighbours",
        TM_5_6115_593,
    )
    .at_most(0.001),
    of(ROD, TM_5_3895_346).from(0.0015, 0.0045).worn_to(0.006),
    of(ROD, TM_9_2815_202).at_most(0.0045),
    of(ROD, TM_9_6115_604).from(0.0025, 0.0065).worn_to(0.009),
    of(ROD, TM_10_3930_243).from(0.0016, 0.0046).worn_to(0.006),
    of(ROD, TM_10_3930_653).from(0.0004, 0.0026),
    of(END_PLAY, TM_5_3805_258)
        .from(0.0025, 0.0145)
        .worn_to(0.025),
    // Another page of the same manual allows 0.014 in.
    of(END_PLAY, TM_5_3825_226)
        .from(0.003, 0.009)
        .worn_to(0.012),
    of(END_PLAY, TM_5_3895_346)
        .from(0.004, 0.011)
        .worn_to(0.018),
    of(END_PLAY, TM_5_6115_593)
        .from(0.006, 0.013)
        .worn_to(0.026),
    of(END_PLAY, TM_9_2815_213)
        .from(0.005, 0.015)
        .worn_to(0.022),
    of(END_PLAY, TM_9_2815_256)
        .from(0.002, 0.008)
        .worn_to(0.015),
    of(END_PLAY, TM_10_3930_243)
        .from(0.004, 0.011)
        .worn_to(0.018),
    of(END_PLAY, TM_10_4320_307)
        .from(0.007, 0.017)
        .worn_to(0.022),
    tm("rod-side-clearance", "rod side clearance", TM_10_3930_243).from(0.008, 0.016),
    tm("rod-side-clearance", "rod side clearance", TM_10_3930_653)
        .from(0.0067, 0.0118)
        .worn_to(0.0157),
    tm(
        "rod-pair-side-clearance",
        "rod side clearance of a pair",
        TM_55_1905_223,
    )
    .from(0.012, 0.020),
    tm("rod-bolt-stretch", "rod bolt stretch", TM_55_1905_223).from(0.0135, 0.0185),
    tm("journal-taper", "journal taper", TM_5_3805_262).worn_to(0.0005),
    tm("journal-taper", "journal taper", TM_9_2815_202).worn_to(0.0006),
    tm(
        "journal-taper",
        "journal taper for each inch of its length",
        TM_5_3805_281,
    )
    .per_inch()
    .worn_to(0.0001),
    tm(
        "journal-out-of-round",
        "journal out of round",
        TM_5_3805_262,
    )
    .worn_to(0.0005),
    tm(
        "journal-out-of-round",
        "journal out of round",
        TM_5_3805_281,
    )
    .worn_to(0.001),
    tm(
        "journal-out-of-round",
        "journal out of round",
        TM_9_2815_202,
    )
    .worn_to(0.0005),
    tm(
        "compression-ring-gap",
        "compression ring gap",
        TM_10_3930_243,
    )
    .from(0.020, 0.046),
    tm("top-ring-gap-printed", "top ring gap", TM_5_1940_277).from(0.016, 0.031),
    tm(
        "second-ring-gap-printed",
        "intermediate ring gap",
        TM_5_1940_277,
    )
    .from(0.012, 0.029),
    tm("lower-ring-gap-printed", "lower ring gap", TM_5_1940_277).from(0.012, 0.029),
    tm("oil-ring-gap-printed", "oil ring gap", TM_5_1940_277).from(0.012, 0.029),
    tm("top-ring-side", "top ring in its groove", TM_5_1940_277).from(0.0025, 0.0040),
    tm(
        "second-ring-side",
        "intermediate ring in its groove",
        TM_5_1940_277,
    )
    .from(0.0027, 0.0042),
    tm("oil-ring-side", "oil ring in its groove", TM_5_1940_277).from(0.0025, 0.0040),
    tm("top-ring-side", "top ring in its groove", TM_10_3930_653).from(0.0016, 0.0029),
    tm(
        "second-ring-side",
        "second ring in its groove",
        TM_10_3930_653,
    )
    .from(0.0012, 0.0025),
    tm(
        "top-ring-side",
        "ring in its groove, the piston is scrap",
        TM_9_2815_226,
    )
    .worn_to(0.006),
    tm("piston-to-wall-printed", "piston to wall", TM_10_3930_653).from(0.0010, 0.0018),
    tm(
        "cam-bearing-clearance",
        "cam bearing clearance",
        TM_9_2815_254,
    )
    .aim_at(0.002)
    .worn_to(0.005),
    tm(
        "cam-bearing-clearance",
        "cam bearing clearance, two-stroke diesel",
        TM_5_3895_347,
    )
    .from(0.0045, 0.006),
    tm("cam-end-float", "cam end float, plate type", TM_9_4310_397)
        .from(0.003, 0.009)
        .worn_to(0.015),
    tm("cam-end-float", "cam end float", TM_5_3895_346)
        .from(0.005, 0.015)
        .worn_to(0.019),
    tm(
        "deck-flatness-across",
        "deck flatness, across",
        TM_55_1930_208,
    )
    .at_most(0.003),
    tm(
        "deck-flatness-along",
        "deck flatness, along",
        TM_55_1930_208,
    )
    .at_most(0.007),
    tm("liner-stand-out", "wet liner stand-out", TM_5_6115_400).from(0.002, 0.005),
    tm("liner-stand-out", "wet liner stand-out", TM_10_4320_307).from(0.003, 0.006),
];
