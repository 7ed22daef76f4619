//! The sizes that parts are made in, as a sheet lists them; in JSON, reading and
//! writing side by side.

use super::body::{Body, LimitsOrigin};
use super::fields::Fields;
use super::kinds::{A_UNIT, read_origin};
use super::unreadable::Unreadable;
use super::words::words;
use super::write::Line;

words! {
    /// Parts that are made in more sizes than the standard one.
    SizedPart {
        /// Main journals, ground under.
        MainJournals = "main-journals";
        /// Rod journals, ground under.
        RodJournals = "rod-journals";
        /// Bores and their pistons, over.
        Bores = "bores";
        /// Sets of main half-shells, by how far they close the clearance.
        MainShells = "main-shells";
        /// Sets of rod half-shells.
        RodShells = "rod-shells";
    }
}

/// The sizes beside the standard one that a sheet lists. Listed again, the latest
/// list counts.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct SizesListed {
    /// Of which parts.
    pub of: SizedPart,
    /// How far each size is from standard, as typed: undersizes of journals and
    /// oversizes of bores without a sign; of half-shells less than nothing is extra
    /// clearance.
    pub sizes: Vec<String>,
    /// The symbol of the unit that a lone number is in.
    pub unit: String,
    /// Where they come from.
    pub origin: LimitsOrigin,
    /// Which sheet and page, or why.
    pub origin_note: String,
}

impl SizesListed {
    /// A list as it is typed in one field, with semicolons, new lines or commas with
    /// a blank behind them between the sizes: a comma alone may be a decimal one.
    ///
    /// ```
    /// use build_journal::fact::SizesListed;
    /// let split = SizesListed::split;
    /// assert_eq!(split("0.010; 0.020;"), ["0.010", "0.020"]);
    /// assert_eq!(split("0,25, 0,50 mm"), ["0,25", "0,50 mm"]);
    /// assert!(split(" ; ").is_empty());
    /// ```
    #[must_use]
    pub fn split(text: &str) -> Vec<String> {
        let ends = text.replace(", ", ";");
        ends.split([';', '\n'])
            .map(|size| size.trim().trim_end_matches(',').to_owned())
            .filter(|size| !size.is_empty())
            .collect()
    }
}

/// The body of this kind; `None` when it is another.
pub(super) fn read(kind: &str, fields: &Fields) -> Option<Result<Body, Unreadable>> {
    (kind == "sizes-listed").then(|| read_sizes(fields).map(Body::SizesListed))
}

fn read_sizes(fields: &Fields) -> Result<SizesListed, Unreadable> {
    const SIZES: &str = "a list of sizes as typed, such as [\"0.010\",\"0.020\"]";
    if fields.json("sizes").is_none() {
        return Err(Unreadable::Missing {
            field: "sizes",
            wanted: SIZES,
        });
    }
    Ok(SizesListed {
        of: fields.word("of", SizedPart::NAMES, SizedPart::from_id)?,
        sizes: fields.texts("sizes", SIZES)?,
        unit: fields.text("unit", A_UNIT)?,
        origin: read_origin(fields)?,
        origin_note: fields.text("origin_note", "which sheet, as text")?,
    })
}

pub(super) fn write(line: Line, listed: &SizesListed) -> Line {
    let line = line.text("kind", "sizes-listed").text("of", listed.of.id());
    let line = if listed.sizes.is_empty() {
        line.json("sizes", "[]")
    } else {
        line.texts("sizes", &listed.sizes)
    };
    line.text("unit", &listed.unit)
        .text("origin", listed.origin.id())
        .text("origin_note", &listed.origin_note)
}
