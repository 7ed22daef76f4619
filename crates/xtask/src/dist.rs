//! The files of a finished page.

use std::path::{Path, PathBuf};

use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use sha2::{Digest as _, Sha256, Sha384};

use crate::problem::{Outcome, While};

/// A file of the page.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct File {
    /// Its path from the page's folder, with forward slashes.
    pub path: String,
    /// Its digest, as `sha256-…`.
    pub digest: String,
}

/// Every file under a folder, sorted by path.
pub fn files(folder: &Path) -> Outcome<Vec<File>> {
    let mut found = Vec::new();
    collect(folder, "", &mut found)?;
    found.sort();
    Ok(found)
}

fn collect(folder: &Path, prefix: &str, found: &mut Vec<File>) -> Outcome<()> {
    let looking = || format!("looking into {}", folder.display());
    for entry in std::fs::read_dir(folder).during(looking())? {
        let entry = entry.during(looking())?;
        let name = entry
            .file_name()
            .into_string()
            .map_err(|name| format!("{name:?} is not a name a URL can carry"))
            .during(looking())?;
        let path = format!("{prefix}{name}");
        if entry.path().is_dir() {
            collect(&entry.path(), &format!("{path}/"), found)?;
        } else {
            let digest = digest(&read(&entry.path())?);
            found.push(File { path, digest });
        }
    }
    Ok(())
}

/// The bytes of a file.
pub fn read(file: &Path) -> Outcome<Vec<u8>> {
    std::fs::read(file).during(format!("reading {}", file.display()))
}

/// The text of a file.
pub fn read_text(file: &Path) -> Outcome<String> {
    std::fs::read_to_string(file).during(format!("reading {}", file.display()))
}

/// Puts a file there whole or not at all.
pub fn write(file: &Path, bytes: &[u8]) -> Outcome<()> {
    let mut new = file.as_os_str().to_owned();
    new.push(".new");
    let new = PathBuf::from(new);
    std::fs::write(&new, bytes).during(format!("writing {}", new.display()))?;
    std::fs::rename(&new, file).during(format!("writing {}", file.display()))
}

/// A digest as pages write it: in a policy, in `integrity`, in the worker.
pub fn digest(bytes: &[u8]) -> String {
    format!("sha256-{}", BASE64_STANDARD.encode(Sha256::digest(bytes)))
}

/// A digest as a link of the page gives it, so that other bytes are refused.
pub fn integrity(bytes: &[u8]) -> String {
    format!("sha384-{}", BASE64_STANDARD.encode(Sha384::digest(bytes)))
}

/// A hash for the name of what all these make up together.
pub fn short_hash(all: &[&[u8]]) -> String {
    let mut digest = Sha256::new();
    for bytes in all {
        digest.update(bytes);
    }
    let digest = digest.finalize();
    let digits = digest.iter().take(8).map(|byte| format!("{byte:02x}"));
    digits.collect()
}

/// Whether a file's name carries the hash of its content: `app-0123456789abcdef.js`
/// or `app-0123456789abcdef_bg.wasm`, as trunk names them. Such a file never
/// changes, so a browser may keep it for good.
pub fn is_hashed(path: &str) -> bool {
    let name = path.rsplit('/').next().unwrap_or(path);
    let Some((stem, _)) = name.split_once('.') else {
        return false;
    };
    let stem = stem.strip_suffix("_bg").unwrap_or(stem);
    stem.rsplit_once('-').is_some_and(|(_, hash)| {
        hash.len() >= 15 && hash.chars().all(|digit| digit.is_ascii_hexdigit())
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_digest_is_the_one_everybody_computes() {
        // FIPS 180-4 example "abc", in base64.
        assert_eq!(
            digest(b"abc"),
            "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0="
        );
    }

    #[test]
    fn a_hashed_name_is_told_from_a_plain_one() {
        assert!(is_hashed("thoubook-web-0123456789abcdef.js"));
        assert!(is_hashed("thoubook-web-0123456789abcdef_bg.wasm"));
        assert!(is_hashed("style/start-0123456789abcdef.css"));
        assert!(!is_hashed("index.html"));
        assert!(!is_hashed("icons/icon-192.png"));
        assert!(!is_hashed("icons/icon-maskable-512.png"));
        assert!(!is_hashed("manifest.webmanifest"));
    }
}
