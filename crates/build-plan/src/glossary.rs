//! The words of the trade that the app uses, each in a line or two. Common
//! knowledge of the trade, no source; worded here.

/// A word of the trade.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Term {
    /// The word, as it stands in labels.
    pub word: &'static str,
    /// Other forms of it that labels use.
    pub forms: &'static [&'static str],
    /// What it means, in a line or two.
    pub means: &'static str,
}

const fn term(word: &'static str, forms: &'static [&'static str], means: &'static str) -> Term {
    Term { word, forms, means }
}

/// All words, in the order of the alphabet. A line each, so that the list reads
/// as one.
#[rustfmt::skip]
pub static GLOSSARY: &[Term] = &[
    term("backlash", &[], "The play between the teeth of two gears: how far one turns before the other follows."),
    term("balance", &[], "Weights that make the turning parts run without shaking."),
    term("bank", &[], "One row of cylinders of a vee or flat engine."),
    term("baseline", &[], "A first number that later ones are held against."),
    term("bearing", &["bearings"], "Where a turning part is carried. In most engines of this kind a pair of thin shells with oil between."),
    term("bell", &["bellhousing"], "The housing between engine and gearbox, around the clutch or converter."),
    term("bleed", &["bled", "blind"], "To let out air; a blind hole has a bottom, and oil or air caught in it can crack the casting."),
    term("blow-by", &["blow"], "Gas that gets past the rings into the crankcase."),
    term("bore", &["bores", "bored"], "A round hole that something runs in: of a cylinder, of a bearing with its shells in and its cap torqued."),
    term("bow", &["bend"], "How far a shaft or rod is bent along its length."),
    term("brush", &[], "A gallery brush: long and thin, for the oil passages of a block."),
    term("bucket", &["buckets"], "A follower shaped like a cup, between a cam and a valve in the head."),
    term("bush", &["bushed"], "A plain sleeve pressed into a hole for a pin or shaft to run in."),
    term("cam", &["camshaft", "camshafts"], "The shaft with the lobes that open the valves; it turns half as fast as the crank."),
    term("cap", &["caps"], "The half of a bearing's housing that is bolted on. Each belongs to one place and one direction."),
    term("chamber", &["chambers"], "The hollow in the head above the piston."),
    term("chase", &["chased"], "To clean a thread with a tool that cuts nothing away."),
    term("clearance", &[], "The room between two parts, from wall to wall."),
    term("clutch", &[], "What takes the engine's turning off the gearbox and on again."),
    term("coil", &["coils"], "One turn of a spring. A spring is bound when its coils touch."),
    term("compression", &[], "How far the mixture is squeezed; also the pressure that a gauge shows in place of a plug."),
    term("converter", &[], "The oil coupling between the engine and an automatic gearbox."),
    term("core", &[], "A worn part that is handed in for a renewed one."),
    term("crank", &["crankcase"], "The shaft with the throws that turns the pistons' way up and down into turning."),
    term("crankpin", &["crankpins"], "The round part of the crank that a rod runs on; also called the rod journal."),
    term("crown", &[], "The top of a piston."),
    term("crush", &[], "How much a pair of shells is longer than its housing's half rounds: torquing the cap presses them tight."),
    term("damper", &[], "The heavy ring on the front of the crank that calms its twisting."),
    term("deburr", &["deburring"], "To break the sharp edges that cutting leaves."),
    term("deck", &["decks", "decked"], "The flat face of the block that the head sits on."),
    term("deflection", &[], "How far a belt gives way when it is pressed in the middle."),
    term("degree", &["degrees"], "One part in 360 of a turn; to degree a cam is to measure where in the turn it opens its valves."),
    term("distributor", &[], "What hands the spark to each cylinder in turn."),
    term("dowel", &["dowels"], "A pin that holds two parts in their place to each other."),
    term("drive", &[], "What turns something: a chain, belt, gear or shaft."),
    term("end play", &["float", "play"], "How far a shaft can be moved along itself."),
    term("feeler", &[], "A blade of known thickness for gaps."),
    term("fit", &["fitted"], "How two parts go together: with room, or pressed."),
    term("flatness", &[], "How far a face is from a plane."),
    term("flexplate", &[], "The thin wheel between the crank and a converter."),
    term("flywheel", &[], "The heavy wheel on the rear of the crank."),
    term("follower", &["followers"], "What runs on a cam's lobe and passes its lift on."),
    term("gallery", &["galleries"], "An oil passage inside the block or head."),
    term("gasket", &["gaskets"], "What seals between two faces that are bolted together."),
    term("grind", &["grinding", "reground"], "To bring a journal, cam or face to size with a stone."),
    term("groove", &["grooves"], "The slot around a piston that a ring sits in."),
    term("guide", &["guides"], "The sleeve that a valve's stem slides in."),
    term("halves", &["half", "split"], "A crankcase or case in two pieces that are bolted along a joint."),
    term("head", &["heads"], "The casting that closes the cylinders, with the valves in it."),
    term("hone", &["honed"], "To finish a bore with stones: size, roundness, and the scratches that hold oil."),
    term("housing", &[], "What a bearing or bush sits in."),
    term("hub", &[], "The middle of a wheel, that sits on the shaft."),
    term("installed height", &["installed"], "How long a valve spring is with the valve shut."),
    term("intake", &[], "The side where the mixture goes in; the manifold that brings it."),
    term("interference", &[], "How much larger a part is than the hole it is pressed into."),
    term("journal", &["journals"], "The round, ground part of a shaft that runs in a bearing."),
    term("lap", &["lapped", "ground"], "To rub two faces to each other with paste until they seal."),
    term("lash", &[], "The small play in a valve's drive with the valve shut."),
    term("lateness", &["retarded", "retard"], "By how many degrees a cam comes later than it should."),
    term("leak-down", &[], "A test: air goes into the shut cylinder, and a gauge says how much gets out."),
    term("lift", &[], "How far a lobe moves what runs on it, or how far a valve opens."),
    term("lifter", &["lifters"], "What runs on the cam's lobe and lifts the pushrod."),
    term("line-bore", &["line-bored", "line-hone", "line-honed"], "To bring all the main bearings' housings into one line and to size in one cut."),
    term("liner", &["liners"], "A sleeve in the block that the piston runs in; a wet one has the coolant around it."),
    term("lobe", &["lobes"], "The egg-shaped part of a cam."),
    term("main", &["mains"], "A bearing that the crank turns in, counted from the front."),
    term("manifold", &["manifolds"], "The casting with the passages to or from all the cylinders of a head."),
    term("mill", &["milled", "milling"], "To cut a face flat."),
    term("mock-up", &["mock"], "Putting together for trial, to measure."),
    term("needle", &[], "The pointer of a dial. What it shows is how far something is from the zero that was set."),
    term("out of round", &["round"], "How far a bore or journal differs across and along at one height."),
    term("overlap", &[], "The time when both valves of a cylinder are open."),
    term("oversize", &[], "A size larger than the first one, after boring, with larger pistons or shells to match."),
    term("pan", &[], "The tray below the engine that holds the oil; also called the sump."),
    term("pickup", &[], "The tube with a screen that the pump draws its oil through."),
    term("pilot", &[], "The small bearing in the end of the crank that the gearbox's shaft runs in."),
    term("pin", &["pins"], "The short shaft between piston and rod."),
    term("piston", &["pistons"], "What goes up and down in the cylinder."),
    term("plastic strip", &["strip"], "A soft thread that is squeezed in a bearing: the wider it gets, the tighter the bearing is."),
    term("plug", &["plugs"], "What closes a hole: of an oil passage, of a core, or the one with the spark."),
    term("plunger", &[], "The piston that slides: in the relief valve, or in a lifter."),
    term("preload", &[], "How far something is pressed when nothing works on it yet: a lifter's plunger, a bolt."),
    term("prime", &["primed"], "To fill the oil passages before the first turn."),
    term("pushrod", &["pushrods"], "The rod between lifter and rocker."),
    term("quench", &[], "The narrow room between the piston's flat and the head at the top of the stroke."),
    term("ratio", &[], "One size divided by another: compression, or how much a rocker makes of the lift."),
    term("relief", &[], "The valve that lets oil by when the pressure is high enough."),
    term("resize", &["resized"], "To make a rod's big end round and to size again."),
    term("retainer", &["retainers", "locks", "lock"], "The dish that holds a valve spring, and the wedges that hold it to the stem."),
    term("retorque", &["torqued", "torque"], "Torque is how hard a bolt is turned; to retorque is to do it again when things have settled."),
    term("ridge", &[], "The unworn rim at the top of a bore."),
    term("ring", &["rings"], "The springy ring in a piston's groove that seals or wipes oil. Its end gap is measured in the bore."),
    term("rocker", &["rockers"], "The lever that opens a valve."),
    term("rod", &["rods"], "What joins piston and crank. Its big end runs on the crankpin."),
    term("rope", &[], "A rear seal of packed rope, trimmed to fit."),
    term("rotary", &["rotor", "rotors"], "A pump whose inner wheel turns in an outer one."),
    term("run-out", &[], "How far a turning part wobbles, as a needle shows it in one turn."),
    term("seal", &["seals"], "What keeps oil in around a turning shaft or a stem."),
    term("sealant", &["sealer"], "Paste that seals a joint or a thread."),
    term("seat", &["seats"], "The ring in the head that a valve shuts on."),
    term("shell", &["shells"], "Half of a bearing, thin, with a tag or a dowel that says where it sits."),
    term("shim", &["shims", "shimmed"], "A thin piece that takes up a known thickness."),
    term("side clearance", &["side"], "The room beside a part: rods on their pin, a ring in its groove."),
    term("skirt", &[], "The lower part of a piston, where its size is measured."),
    term("slack", &[], "How loose a chain or belt hangs."),
    term("spun", &[], "Of a shell: turned in its housing, which it must never do. Of a pump: turned by a drill."),
    term("stand-out", &[], "How far a liner stands above the deck."),
    term("stem", &[], "The long thin part of a valve."),
    term("stretch", &[], "How much longer a tight bolt is than a free one: what really holds."),
    term("stud", &["studs"], "A bolt without a head, that stays in the block."),
    term("sweep", &[], "How far a rocker's tip wipes across the stem's end."),
    term("taper", &[], "How far a bore or journal differs from one end to the other."),
    term("tensioner", &[], "What keeps a chain or belt tight."),
    term("tenth", &["tenths"], "A ten-thousandth of an inch, a tenth of a thou: 0.0025 mm."),
    term("thermostat", &[], "The valve that keeps the coolant in the block until it is warm."),
    term("thou", &[], "A thousandth of an inch: 0.0254 mm."),
    term("throw", &["throws"], "The cranked part between two mains, with a crankpin on it."),
    term("thrust", &[], "The push along a shaft, and the bearing that takes it; on a piston, the side that is pressed to the wall."),
    term("timing", &[], "When in the turn something happens: a spark, a valve that opens."),
    term("tip", &["tips"], "The end: of a rotor's lobe, of a valve's stem."),
    term("top dead centre", &["centre"], "The highest place of a piston."),
    term("twist", &[], "How far the two ends of a rod are turned against each other."),
    term("undersize", &[], "A size smaller than the first one, after grinding a journal, with thicker shells to match."),
    term("valley", &[], "The room between the banks of a vee engine."),
    term("valve", &["valves"], "What opens and shuts the way in or out of a cylinder."),
    term("window", &[], "From the low limit to the high one: inside it, a number is good."),
];

/// The term that explains a word, in whichever form.
#[must_use]
pub fn find(word: &str) -> Option<&'static Term> {
    let is = |known: &str| known.split(' ').any(|part| part.eq_ignore_ascii_case(word));
    GLOSSARY
        .iter()
        .find(|term| is(term.word) || term.forms.iter().any(|form| is(form)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::check::CHECKS;
    use crate::event::EVENTS;
    use crate::measure::MEASURES;
    use crate::step::STEPS;

    /// Words that need no explaining to anybody who holds a wrench.
    const EVERYDAY: &str = "
        a about advanced after again against aligned all an and another anything apart
        are around arrow as at back bag bagged be before below belt between big bind
        block body bolt bolt's bolted bolts book box by came card case catches centred
        chain changed checked clamped clean close coasts coating cold cool coolant
        counted cover covers cracks cruise cut cylinder cylinders decide decided depth
        detergent device diameter differently direction disturbed do down drain draw
        dried drilling dry each effort ends engine even every everything exhaust export
        exported face faces fastener fasteners filed filled filter final find finish
        first flat for found free from front full gap gaps gauge gear gears go goal hand
        have heated heights holds hole holes home hot identify idle if in inches inside
        install into is it its joint keep kept key kind laid last lay leaks length
        lengths line list load loads long look loosened loosening lubricant machine
        machine-work made maker maker's map mark marks measure middle miles more moved
        moves nail near neighbouring new next no noises not nothing number numbered
        numbers off oil oiled old on once one ones open opened or order ordered other
        others over own part parts pickup's place plate plays pointer polish polished
        ports press pressure print pulled pulls pump put quarter rags read real rear
        renewed replaced right rocker's room roughly run run-in running same says sensor
        sensors set sheet should six size sizes small so speed spring springs square
        stages stand standing start state step steps still straighten straightened
        swapped tag tagged take taken than that the their then they thickness this
        thread threads throttle through tight tightening time to tool tools touches tray
        trial true try turn turned turning turns two under up upper vacuum varied volume
        wall want warm was wash washed water way wear week weeks weighed were wet what
        when where width will wiped with within work write writing
        ";

    fn words(label: &str) -> impl Iterator<Item = String> {
        let parts = label.split(|sign: char| !(sign.is_ascii_alphabetic() || sign == '-'));
        parts
            .map(|word| word.trim_matches('-').to_lowercase())
            .filter(|word| word.len() > 1)
    }

    #[test]
    fn every_unusual_word_of_a_label_is_explained() {
        let labels = MEASURES.iter().map(|one| one.label);
        let labels = labels.chain(CHECKS.iter().map(|one| one.label));
        let labels = labels.chain(STEPS.iter().map(|one| one.label));
        let labels = labels.chain(EVENTS.iter().map(|one| one.label));
        let everyday: Vec<&str> = EVERYDAY.split_whitespace().collect();
        let lost: Vec<String> = labels
            .flat_map(words)
            .filter(|word| !everyday.contains(&word.as_str()) && find(word).is_none())
            .collect();
        assert!(
            lost.is_empty(),
            "explain {lost:?}, or call them everyday words"
        );
    }

    #[test]
    fn the_words_stand_in_order_once_and_are_explained_briefly() {
        for pair in GLOSSARY.windows(2) {
            assert!(
                pair[0].word < pair[1].word,
                "{} before {}",
                pair[0].word,
                pair[1].word
            );
        }
        for term in GLOSSARY {
            assert!(
                term.means.len() <= 140,
                "{}: {}",
                term.word,
                term.means.len()
            );
            assert!(term.means.ends_with('.'), "{}", term.word);
        }
        assert_eq!(find("Journals").unwrap().word, "journal");
        assert_eq!(find("flux"), None);
    }
}
