//! The build in a file.

use serde::de::DeserializeSeed;

use super::error::ImportError;
use super::scan::{Scanned, Walk};
use super::{FILE_VERSION, FORMAT_NAME};
use crate::id::BuildId;
use crate::journal::Journal;

/// The largest file that is opened. A build of 20,000 facts takes about 7 MB.
pub const FILE_AT_MOST: usize = 32_000_000;

/// A build that came in by a file.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Imported {
    /// The build, with what could not be read set aside.
    pub journal: Journal,
    /// How many of the file's facts were there twice.
    pub doubles: usize,
}

/// The build in a file. Facts of kinds that this version does not know are
/// kept; a text among the facts that is no fact is set aside.
///
/// ```
/// use build_journal::{BuildId, Journal, export, import};
///
/// let journal = Journal::new(BuildId::from_random(1));
/// let file = export(&journal);
/// assert_eq!(import(file.as_bytes())?.journal, journal);
/// # Ok::<(), build_journal::ImportError>(())
/// ```
///
/// # Errors
/// [`ImportError`] is a sentence for the person who chose the file. A file
/// that stops in the middle hands back what was whole, for the person to decide.
pub fn import(file: &[u8]) -> Result<Imported, ImportError> {
    if file.len() > FILE_AT_MOST {
        return Err(ImportError::TooBig {
            bytes: file.len(),
            at_most: FILE_AT_MOST,
        });
    }
    // Some editors put a mark before the text.
    let file = file.strip_prefix(b"\xef\xbb\xbf").unwrap_or(file);
    match file.iter().find(|byte| !byte.is_ascii_whitespace()) {
        None => return Err(ImportError::Empty),
        // Noise is told from JSON by its first byte, before all of it is read.
        Some(b'{') => {}
        Some(b'[' | b'"') => {
            return Err(ImportError::NotOurs {
                found: "it has no named fields".to_owned(),
            });
        }
        Some(_) if std::str::from_utf8(file).is_err() => return Err(ImportError::NotText),
        Some(_) => {
            return Err(ImportError::NotJson {
                reason: "it does not begin with {".to_owned(),
            });
        }
    }
    let text = whole_text(file)?;
    let mut scanned = Scanned::default();
    let mut reader = serde_json::Deserializer::from_str(text);
    let walked = Walk(&mut scanned)
        .deserialize(&mut reader)
        .and_then(|()| reader.end());
    match walked {
        Ok(()) => whole(&scanned),
        Err(error) if error.is_eof() => Err(ImportError::CutShort {
            line: error.line(),
            column: error.column(),
            rescued: whole(&scanned).ok().map(Box::new),
        }),
        Err(error) if error.is_data() => Err(ImportError::Damaged {
            reason: error.to_string(),
        }),
        Err(error) => Err(ImportError::NotJson {
            reason: error.to_string(),
        }),
    }
}

/// A file cut in the middle of a letter is cut short, not noise.
fn whole_text(file: &[u8]) -> Result<&str, ImportError> {
    match std::str::from_utf8(file) {
        Ok(text) => Ok(text),
        Err(error) if error.error_len().is_none() => file
            .get(..error.valid_up_to())
            .and_then(|whole| std::str::from_utf8(whole).ok())
            .ok_or(ImportError::NotText),
        Err(_) => Err(ImportError::NotText),
    }
}

fn whole(scanned: &Scanned) -> Result<Imported, ImportError> {
    let format = scanned.format.and_then(string);
    if format.as_deref() != Some(FORMAT_NAME) {
        return Err(ImportError::NotOurs {
            found: match format {
                Some(other) => {
                    let start: String = other.chars().take(40).collect();
                    format!("its format is “{start}”")
                }
                None => "it names no format".to_owned(),
            },
        });
    }
    let version: u64 = scanned
        .version
        .and_then(|json| serde_json::from_str(json).ok())
        .ok_or_else(|| damaged("the version is missing or no number"))?;
    if version > u64::from(FILE_VERSION) {
        return Err(ImportError::Newer {
            version,
            known: FILE_VERSION,
        });
    }
    let build = scanned
        .build
        .and_then(string)
        .and_then(|text| BuildId::parse(&text).ok())
        .ok_or_else(|| damaged("it does not say which build it is"))?;
    let Some(facts) = &scanned.facts else {
        return Err(damaged("the list of facts is missing"));
    };
    let mut journal = Journal::new(build);
    let mut doubles = 0;
    for fact in facts {
        if !journal.take_text(fact) {
            doubles += 1;
        }
    }
    for entry in scanned.set_aside.iter().flatten() {
        take_set_aside(&mut journal, entry);
    }
    Ok(Imported { journal, doubles })
}

fn damaged(reason: &str) -> ImportError {
    ImportError::Damaged {
        reason: reason.to_owned(),
    }
}

fn string(json: &str) -> Option<String> {
    serde_json::from_str(json).ok()
}

fn take_set_aside(journal: &mut Journal, entry: &str) {
    let part = |name: &str| -> Option<String> {
        let value: serde_json::Value = serde_json::from_str(entry).ok()?;
        Some(value.get(name)?.as_str()?.to_owned())
    };
    match (part("text"), part("reason")) {
        (Some(text), Some(reason)) => journal.put_aside(&text, &reason),
        // Whatever it is, it was in the file.
        _ => journal.put_aside(
            entry,
            "It stood among the texts set aside, in no known form.",
        ),
    };
}
