//! A build with its photos in one file.
//!
//! - [`pack`]: the journal and the photos at hand, in a zip file that any
//!   computer opens. The same bytes on every device that has the same photos.
//! - [`unpack`]: back again. A photo that is missing or altered is said, and
//!   stops nothing.
//! - [`digest`]: by which a photo is named.

mod crc;
mod error;
mod zip;

use std::collections::{BTreeMap, BTreeSet};

use sha2::{Digest, Sha256};

use crate::fact::{Body, Photo};
use crate::file::{Imported, export, import};
use crate::journal::Journal;

pub use error::BundleError;

/// The entry that holds the journal.
pub const JOURNAL: &str = "build.thoubook.json";

/// The folder that holds the photos.
const PHOTOS: &str = "photos/";

/// A bundle that was taken apart.
#[derive(Clone, PartialEq, Debug)]
pub struct Unpacked<'a> {
    /// The journal.
    pub imported: Imported,
    /// The photos, by digest.
    pub photos: BTreeMap<String, &'a [u8]>,
    /// Digests of photos that the journal tells of and that are not in the file.
    pub missing: BTreeSet<String>,
    /// Names of entries that are no photo of this build, or whose bytes are
    /// not what their name says.
    pub strange: Vec<String>,
}

/// The name of a photo: SHA-256 of its bytes (FIPS 180-4), in small
/// hexadecimal digits.
#[must_use]
pub fn digest(bytes: &[u8]) -> String {
    const DIGITS: &[u8; 16] = b"0123456789abcdef";
    let mut name = String::with_capacity(64);
    for byte in Sha256::digest(bytes) {
        for half in [byte >> 4, byte & 15] {
            let digit = DIGITS.get(usize::from(half)).copied();
            name.push(char::from(digit.unwrap_or(b'0')));
        }
    }
    name
}

/// The photos that a journal tells of: digest and what was written down, the
/// first of each digest.
#[must_use]
pub fn photos(journal: &Journal) -> BTreeMap<&str, &Photo> {
    let mut found = BTreeMap::new();
    for fact in journal.facts() {
        if let Body::Photo(photo) = fact.body() {
            found.entry(photo.hash.as_str()).or_insert(photo);
        }
    }
    found
}

/// The journal and its photos in one file. Photos that are not at hand are left
/// out and named; ones that the journal does not tell of are not packed.
///
/// # Errors
/// [`BundleError::TooLarge`].
pub fn pack(
    journal: &Journal,
    at_hand: &BTreeMap<String, Vec<u8>>,
) -> Result<(Vec<u8>, BTreeSet<String>), BundleError> {
    let text = export(journal);
    let wanted = photos(journal);
    let mut missing = BTreeSet::new();
    let mut names: Vec<(String, &[u8])> = Vec::new();
    for (hash, photo) in &wanted {
        match at_hand.get(*hash) {
            Some(bytes) => names.push((name_of(photo), bytes)),
            None => {
                missing.insert((*hash).to_owned());
            }
        }
    }
    let mut entries: Vec<(&str, &[u8])> = vec![(JOURNAL, text.as_bytes())];
    entries.extend(names.iter().map(|(name, bytes)| (name.as_str(), *bytes)));
    Ok((zip::write(&entries)?, missing))
}

/// A bundle taken apart.
///
/// # Errors
/// [`BundleError`] when it is no such file, or its journal cannot be read.
pub fn unpack(file: &[u8]) -> Result<Unpacked<'_>, BundleError> {
    let mut journal = None;
    let mut found: Vec<(String, &[u8])> = Vec::new();
    let mut strange = Vec::new();
    for entry in zip::read(file)? {
        let bytes = file.get(entry.bytes).unwrap_or_default();
        if entry.name.ends_with('/') {
            continue;
        }
        if crc::crc32(bytes) != entry.crc {
            if entry.name == JOURNAL {
                return Err(BundleError::Damaged);
            }
            strange.push(entry.name);
        } else if entry.name == JOURNAL {
            journal = Some(bytes);
        } else {
            found.push((entry.name, bytes));
        }
    }
    let wanted = BundleError::NoJournal { wanted: JOURNAL };
    let imported = import(journal.ok_or(wanted)?)?;
    let told: BTreeSet<&str> = photos(&imported.journal).into_keys().collect();
    let mut photos = BTreeMap::new();
    for (name, bytes) in found {
        let hash = digest(bytes);
        if told.contains(hash.as_str()) {
            photos.insert(hash, bytes);
        } else {
            strange.push(name);
        }
    }
    let missing = told
        .iter()
        .filter(|hash| !photos.contains_key(**hash))
        .map(|hash| (*hash).to_owned())
        .collect();
    Ok(Unpacked {
        missing,
        imported,
        photos,
        strange,
    })
}

/// Whether a file is a bundle and not a bare journal.
#[must_use]
pub fn is_bundle(file: &[u8]) -> bool {
    zip::is_zip(file)
}

/// The name of a photo's entry. What was written down may hold anything, so
/// only its letters and digits go into the name of a file.
fn name_of(photo: &Photo) -> String {
    let plain = |text: &str| -> String {
        let letters = text.chars().filter(char::is_ascii_alphanumeric);
        letters.take(64).collect()
    };
    let ending = match photo.media.as_str() {
        "image/jpeg" => "jpg",
        "image/png" => "png",
        "image/webp" => "webp",
        _ => "bin",
    };
    format!("{PHOTOS}{}.{ending}", plain(&photo.hash))
}

#[cfg(test)]
mod tests;
