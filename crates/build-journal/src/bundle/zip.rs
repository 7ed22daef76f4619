//! Zip files with nothing in them compressed.
//!
//! Photos are compressed already, and the journal has to be readable with the
//! plainest of tools. A zip library would add 91 KB to the page; this much of
//! the format is enough. The layout of the records is from memory of the
//! published format note (sections 4.3.7, 4.3.12, 4.3.16), and is held to a
//! file that Python's zipfile wrote.

use std::ops::Range;

use super::crc::crc32;
use super::error::BundleError;

const LOCAL: [u8; 4] = *b"PK\x03\x04";
const CENTRAL: [u8; 4] = *b"PK\x01\x02";
const END: [u8; 4] = *b"PK\x05\x06";
/// The year 1980: every device writes the same bytes.
const NO_DATE: u16 = (1 << 5) | 1;
/// Names are in UTF-8.
const UTF8: u16 = 1 << 11;
/// The end record without a comment.
const END_IS: usize = 22;
/// A comment is at most so long.
const COMMENT_AT_MOST: usize = 65_535;

/// An entry of a zip file.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(super) struct Entry {
    pub(super) name: String,
    /// Where its bytes lie in the file.
    pub(super) bytes: Range<usize>,
    /// What its bytes should sum to.
    pub(super) crc: u32,
}

/// A zip file of these entries, in this order.
pub(super) fn write(entries: &[(&str, &[u8])]) -> Result<Vec<u8>, BundleError> {
    let mut file = Vec::new();
    let mut central = Vec::new();
    let many = u16::try_from(entries.len()).map_err(|_| BundleError::TooLarge)?;
    for (name, bytes) in entries {
        let begins = u32::try_from(file.len()).map_err(|_| BundleError::TooLarge)?;
        let size = u32::try_from(bytes.len()).map_err(|_| BundleError::TooLarge)?;
        let name_is = u16::try_from(name.len()).map_err(|_| BundleError::TooLarge)?;
        let mut common = Vec::new();
        for number in [20, UTF8, 0, 0, NO_DATE] {
            put16(&mut common, number);
        }
        for number in [crc32(bytes), size, size] {
            put32(&mut common, number);
        }
        put16(&mut common, name_is);
        put16(&mut common, 0);

        file.extend_from_slice(&LOCAL);
        file.extend_from_slice(&common);
        file.extend_from_slice(name.as_bytes());
        file.extend_from_slice(bytes);

        central.extend_from_slice(&CENTRAL);
        put16(&mut central, 20);
        central.extend_from_slice(&common);
        for _ in 0..3 {
            put16(&mut central, 0);
        }
        put32(&mut central, 0);
        put32(&mut central, begins);
        central.extend_from_slice(name.as_bytes());
    }
    let begins = u32::try_from(file.len()).map_err(|_| BundleError::TooLarge)?;
    let size = u32::try_from(central.len()).map_err(|_| BundleError::TooLarge)?;
    file.extend_from_slice(&central);
    file.extend_from_slice(&END);
    put16(&mut file, 0);
    put16(&mut file, 0);
    put16(&mut file, many);
    put16(&mut file, many);
    put32(&mut file, size);
    put32(&mut file, begins);
    put16(&mut file, 0);
    Ok(file)
}

fn put16(out: &mut Vec<u8>, number: u16) {
    out.extend_from_slice(&number.to_le_bytes());
}

fn put32(out: &mut Vec<u8>, number: u32) {
    out.extend_from_slice(&number.to_le_bytes());
}

/// Whether a file looks like a zip file.
pub(super) fn is_zip(file: &[u8]) -> bool {
    file.starts_with(&LOCAL) || file.starts_with(&END)
}

/// The entries of a zip file, by its list at the end.
pub(super) fn read(file: &[u8]) -> Result<Vec<Entry>, BundleError> {
    let end = find_end(file).ok_or(BundleError::CutShort)?;
    let many = take16(file, end + 10)?;
    let mut at = size(take32(file, end + 16)?)?;
    let mut entries = Vec::new();
    for _ in 0..many {
        if part(file, at, 4)? != CENTRAL {
            return Err(BundleError::Damaged);
        }
        let packed = take16(file, at + 10)?;
        let crc = take32(file, at + 16)?;
        let stored = size(take32(file, at + 20)?)?;
        let name_is = usize::from(take16(file, at + 28)?);
        let more = usize::from(take16(file, at + 30)?) + usize::from(take16(file, at + 32)?);
        let local = size(take32(file, at + 42)?)?;
        let name = String::from_utf8_lossy(part(file, at + 46, name_is)?).into_owned();
        at = at + 46 + name_is + more;
        if packed != 0 {
            return Err(BundleError::Compressed { name });
        }
        if part(file, local, 4)? != LOCAL {
            return Err(BundleError::Damaged);
        }
        let begins = (local + 30)
            .saturating_add(usize::from(take16(file, local + 26)?))
            .saturating_add(usize::from(take16(file, local + 28)?));
        part(file, begins, stored)?;
        entries.push(Entry {
            name,
            bytes: begins..begins + stored,
            crc,
        });
    }
    Ok(entries)
}

/// The record at the end, before a comment that may follow it.
fn find_end(file: &[u8]) -> Option<usize> {
    let last = file.len().checked_sub(END_IS)?;
    let first = last.saturating_sub(COMMENT_AT_MOST);
    (first..=last).rev().find(|at| {
        let comment = take16(file, at + 20).map(usize::from);
        file.get(*at..*at + 4) == Some(&END[..]) && comment.ok() == Some(last - at)
    })
}

fn size(number: u32) -> Result<usize, BundleError> {
    usize::try_from(number).map_err(|_| BundleError::TooLarge)
}

pub(super) fn part(file: &[u8], at: usize, len: usize) -> Result<&[u8], BundleError> {
    let end = at.checked_add(len).ok_or(BundleError::Damaged)?;
    file.get(at..end).ok_or(BundleError::CutShort)
}

fn take16(file: &[u8], at: usize) -> Result<u16, BundleError> {
    let bytes = part(file, at, 2)?.try_into();
    bytes
        .map(u16::from_le_bytes)
        .map_err(|_| BundleError::Damaged)
}

fn take32(file: &[u8], at: usize) -> Result<u32, BundleError> {
    let bytes = part(file, at, 4)?.try_into();
    bytes
        .map(u32::from_le_bytes)
        .map_err(|_| BundleError::Damaged)
}
