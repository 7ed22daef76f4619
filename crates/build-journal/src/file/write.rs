//! The file of a build.

use super::error::ImportError;
use super::read::import;
use super::{FILE_VERSION, FORMAT_NAME};
use crate::fact::Line;
use crate::journal::Journal;

/// The whole build as one JSON file. Copies with the same facts give the same
/// bytes.
#[must_use]
pub fn export(journal: &Journal) -> String {
    let head = Line::new()
        .text("format", FORMAT_NAME)
        .whole("version", i64::from(FILE_VERSION))
        .id("build", journal.build())
        .end();
    // The object stays open for the lists.
    let mut out = head.trim_end_matches('}').to_owned();
    push_list(
        &mut out,
        "facts",
        journal.facts().map(|fact| fact.text().to_owned()),
    );
    let aside = journal
        .set_aside()
        .map(|(text, reason)| Line::new().text("text", text).text("reason", reason).end());
    push_list(&mut out, "set_aside", aside);
    out.push_str("}\n");
    out
}

fn push_list(out: &mut String, name: &str, items: impl Iterator<Item = String>) {
    out.push_str(",\n\"");
    out.push_str(name);
    out.push_str("\":[");
    let mut parted = "\n";
    for item in items {
        out.push_str(parted);
        out.push_str(&item);
        parted = ",\n";
    }
    if parted == ",\n" {
        out.push('\n');
    }
    out.push(']');
}

/// The file that may take the place of another copy of it, as in a folder that
/// several devices share: everything in the old file is taken in first.
///
/// # Errors
/// [`ImportError`] when the old file must not be overwritten: it is newer than
/// this version, of another build, or no file of a build at all.
pub fn export_over(old: &[u8], journal: &Journal) -> Result<String, ImportError> {
    let there = import(old)?.journal;
    let both = there.union(journal)?;
    Ok(export(&both))
}
