//! What a first visit loads, in bytes after brotli.

use std::collections::BTreeMap;
use std::fmt;
use std::path::Path;

use brotli::enc::BrotliEncoderParams;

use crate::chromium::Failure;

/// Bytes of each file, and how often it was asked for.
pub struct Size {
    files: BTreeMap<String, Weight>,
}

struct Weight {
    plain: usize,
    packed: usize,
    times: usize,
}

impl Size {
    /// All that came over the network: a file that was asked for twice counts
    /// twice.
    pub fn total(&self) -> usize {
        self.files
            .values()
            .map(|weight| weight.packed * weight.times)
            .sum()
    }
}

/// The size of what these requests asked for: lines such as `GET /path 200`.
pub fn of(dist: &Path, requests: &[String]) -> Result<Size, Failure> {
    let mut files: BTreeMap<String, Weight> = BTreeMap::new();
    for request in requests {
        let words: Vec<&str> = request.split(' ').collect();
        let ["GET", path, "200"] = words.as_slice() else {
            return Err(Failure::new(format!(
                "the first visit made the request `{request}`"
            )));
        };
        let path = match path.trim_start_matches('/') {
            "" => "index.html",
            path => path,
        };
        if let Some(weight) = files.get_mut(path) {
            weight.times += 1;
            continue;
        }
        let bytes = std::fs::read(dist.join(path))?;
        let packed = packed(&bytes)?;
        files.insert(
            path.to_owned(),
            Weight {
                plain: bytes.len(),
                packed,
                times: 1,
            },
        );
    }
    Ok(Size { files })
}

/// The number of bytes after brotli at quality 11, its best.
fn packed(bytes: &[u8]) -> Result<usize, Failure> {
    let parameters = BrotliEncoderParams {
        quality: 11,
        lgwin: 22,
        ..Default::default()
    };
    let mut out = Vec::new();
    brotli::BrotliCompress(&mut &bytes[..], &mut out, &parameters)?;
    Ok(out.len())
}

impl fmt::Display for Size {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (path, weight) in &self.files {
            let times = match weight.times {
                1 => String::new(),
                times => format!("  asked for {times} times"),
            };
            writeln!(
                f,
                "  {:8}  of {:8}  {path}{times}",
                weight.packed, weight.plain
            )?;
        }
        write!(f, "  {:8}  in all", self.total())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_that_is_asked_for_twice_counts_twice() {
        let folder = std::env::temp_dir().join(format!("thoubook-size-{}", std::process::id()));
        std::fs::create_dir_all(&folder).unwrap();
        std::fs::write(folder.join("index.html"), "a".repeat(1000)).unwrap();
        let once = of(&folder, &["GET / 200".to_owned()]).unwrap().total();
        let twice = ["GET / 200".to_owned(), "GET /index.html 200".to_owned()];
        assert!(once > 0 && once < 100);
        assert_eq!(of(&folder, &twice).unwrap().total(), 2 * once);
        assert!(of(&folder, &["GET /none 404".to_owned()]).is_err());
    }
}
