//! Cutting the page apart: one file for a first visit, others for what is
//! opened later. The page marks where (`web/src/later.rs`); a tool cuts.
//!
//! Trunk has put the page together with the compiled program in one piece.
//! This takes that piece out of the page again, cuts it, and puts the parts in,
//! under names that carry the hash of them all: they belong together.

use std::path::{Path, PathBuf};

use wasm_encoder::{Module, RawSection};
use wasmparser::Parser;

use crate::dist::{integrity, is_hashed, read, read_text, short_hash, write};
use crate::places::Places;
use crate::problem::{Outcome, Problem, While};
use crate::run::run;
use crate::tools;

/// The name of the compiled program, and of the first part of it.
const PROGRAM: &str = "thoubook-web";
/// The script that fetches the other parts.
const LINK: &str = "__wasm_split.js";
/// How that script reads a part. A host that sends another type than
/// `application/wasm` would stop it.
const STREAMED: &str = "WebAssembly.instantiateStreaming(src, imports)";
/// The same for any host, with word of a part that is not there.
const READ_WHOLE: &str = "src.then((part) => { if (!part.ok) throw new Error(part.status); return part.arrayBuffer(); }).then((part) => WebAssembly.instantiate(part, imports))";

/// A part: what the tool called it, and what is in it.
struct Part {
    name: String,
    bytes: Vec<u8>,
}

/// Cuts the page in this folder apart.
pub fn cut(places: &Places, dist: &Path) -> Outcome<()> {
    let folder = places.target().join("cut");
    // What an earlier cut left must not get into this one.
    let _ = std::fs::remove_dir_all(&folder);
    let whole = places
        .target()
        .join("wasm32-unknown-unknown/apart")
        .join(format!("{PROGRAM}.wasm"));
    run(tools::with_tools(places, tools::WASM_SPLIT.ready(places)?)?
        .arg(&whole)
        .arg(&folder)
        .args(["--out-name", PROGRAM]))?;
    let bound = folder.join("bound");
    run(
        tools::with_tools(places, tools::WASM_BINDGEN.ready(places)?)?
            .args(["--target", "web", "--no-typescript", "--keep-lld-exports"])
            .args(["--remove-name-section", "--remove-producers-section"])
            .arg("--out-dir")
            .arg(&bound)
            .arg(folder.join(format!("{PROGRAM}.wasm"))),
    )?;
    let parts = later_parts(&folder)?;
    let first = read(&bound.join(format!("{PROGRAM}_bg.wasm")))?;
    let script = read_text(&bound.join(format!("{PROGRAM}.js")))?;
    let link = once(&read_text(&folder.join(LINK))?, STREAMED, READ_WHOLE)?;

    let hash = hash(&parts, &first, &[&script, &link]);
    let program = format!("{PROGRAM}-{hash}");
    let fetcher = format!("apart-{hash}.js");
    let script = once(
        &script,
        &format!("from \"./{LINK}\""),
        &format!("from \"./{fetcher}\""),
    )?;
    let script = once(
        &script,
        &format!("'{PROGRAM}_bg.wasm'"),
        &format!("'{program}_bg.wasm'"),
    )?;
    let mut link = once(
        &link,
        &format!("\"./{PROGRAM}.js\""),
        &format!("\"./{program}.js\""),
    )?;
    for part in &parts {
        let name = hashed(&part.name, &hash);
        link = once(
            &link,
            &format!("\"./{}\"", part.name),
            &format!("\"./{name}\""),
        )?;
        write(&dist.join(name), &part.bytes)?;
    }
    write(&dist.join(&fetcher), link.as_bytes())?;
    write(&dist.join(format!("{program}.js")), script.as_bytes())?;
    write(&dist.join(format!("{program}_bg.wasm")), &first)?;

    let index = dist.join("index.html");
    let html = read_text(&index)?;
    let old = old_program(dist, &program)?;
    let html = html.replace(&old, &program);
    let html = with_integrity(&html, &format!("{program}.js"), script.as_bytes())?;
    // The browser need not read the program's script to know of this one.
    let early = format!(
        "<link rel=\"modulepreload\" href=\"./{fetcher}\" crossorigin=\"anonymous\" integrity=\"{}\"></head>",
        integrity(link.as_bytes())
    );
    let html = once(&html, "</head>", &early)?;
    for ending in [".js", "_bg.wasm"] {
        let gone = dist.join(format!("{old}{ending}"));
        std::fs::remove_file(&gone).during(format!("removing {}", gone.display()))?;
    }
    write(&index, html.as_bytes())
}

/// The parts that wait, without what only tools read, by name.
fn later_parts(folder: &Path) -> Outcome<Vec<Part>> {
    let looking = || format!("looking into {}", folder.display());
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder)
        .during(looking())?
        .filter_map(|entry| entry.ok().map(|entry| entry.path()))
        .filter(|file| file.extension().is_some_and(|kind| kind == "wasm"))
        .collect();
    files.sort();
    let mut parts = Vec::new();
    for file in files {
        let name = file
            .file_name()
            .map(|name| name.to_string_lossy().into_owned())
            .unwrap_or_default();
        if name != format!("{PROGRAM}.wasm") {
            let bytes = bare(&read(&file)?)?;
            parts.push(Part { name, bytes });
        }
    }
    if parts.is_empty() {
        return Err(Problem::new(
            "the page came out in one piece: nothing in it is marked to wait",
        ));
    }
    Ok(parts)
}

/// A WebAssembly module without its custom sections: names, and notes for tools.
fn bare(module: &[u8]) -> Outcome<Vec<u8>> {
    let mut kept = Module::new();
    for payload in Parser::new(0).parse_all(module) {
        let payload = payload.during("reading a part of the page")?;
        if let Some((id, range)) = payload.as_section()
            && id != 0
        {
            let at = |place| usize::try_from(place).ok();
            let data = at(range.start)
                .zip(at(range.end))
                .and_then(|(start, end)| module.get(start..end))
                .ok_or_else(|| Problem::new("a part of the page ends in the middle"))?;
            kept.section(&RawSection { id, data });
        }
    }
    Ok(kept.finish())
}

/// One hash for all that belongs together.
fn hash(parts: &[Part], first: &[u8], scripts: &[&str]) -> String {
    let mut all: Vec<&[u8]> = Vec::new();
    for part in parts {
        all.extend([part.name.as_bytes(), &part.bytes]);
    }
    all.push(first);
    all.extend(scripts.iter().map(|script| script.as_bytes()));
    short_hash(&all)
}

/// The name of a part in the page: `split_builds.wasm` becomes `builds-….wasm`.
fn hashed(name: &str, hash: &str) -> String {
    let stem = name.trim_end_matches(".wasm");
    let stem = stem.strip_prefix("split_").unwrap_or(stem);
    format!("{}-{hash}.wasm", stem.replace('_', "-"))
}

/// The stem under which trunk has put the program in one piece.
fn old_program(dist: &Path, new: &str) -> Outcome<String> {
    let looking = || format!("looking into {}", dist.display());
    std::fs::read_dir(dist)
        .during(looking())?
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| is_hashed(name))
        .find_map(|name| {
            let stem = name.strip_suffix("_bg.wasm")?;
            (stem.starts_with(PROGRAM) && stem != new).then(|| stem.to_owned())
        })
        .ok_or_else(|| Problem::new(format!("{} holds no page by trunk", dist.display())))
}

/// The page with the right digest where it names this file.
fn with_integrity(html: &str, name: &str, bytes: &[u8]) -> Outcome<String> {
    let wrong = || Problem::new(format!("index.html gives no digest of {name}"));
    let named = format!("href=\"./{name}\"");
    let (before, after) = html.split_once(&named).ok_or_else(wrong)?;
    let (between, after) = after.split_once("integrity=\"").ok_or_else(wrong)?;
    let (_, after) = after.split_once('"').ok_or_else(wrong)?;
    let digest = integrity(bytes);
    Ok(format!(
        "{before}{named}{between}integrity=\"{digest}\"{after}"
    ))
}

/// The text with every `old` replaced, of which there has to be one.
fn once(text: &str, old: &str, new: &str) -> Outcome<String> {
    if text.contains(old) {
        return Ok(text.replace(old, new));
    }
    Err(Problem::new(format!(
        "the tools write the page in another way than expected: `{old}` is nowhere"
    )))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An empty module with a custom section `x` of one byte, by the binary
    /// format of the WebAssembly specification: magic, version, section.
    const WITH_NOTE: &[u8] = b"\0asm\x01\0\0\0\x00\x03\x01x!";
    const BARE: &[u8] = b"\0asm\x01\0\0\0";

    #[test]
    fn notes_for_tools_are_dropped_and_nothing_else() {
        assert_eq!(bare(WITH_NOTE).unwrap(), BARE);
        // A type section with one function type of nothing.
        let types = b"\0asm\x01\0\0\0\x01\x04\x01\x60\0\0";
        assert_eq!(bare(types).unwrap(), types);
        assert!(bare(b"\0asm\x01\0\0\0\x01\x09\x01").is_err());
    }

    #[test]
    fn a_part_is_named_by_what_is_in_it() {
        assert_eq!(hashed("split_builds.wasm", "ab"), "builds-ab.wasm");
        assert_eq!(hashed("chunk_3.wasm", "ab"), "chunk-3-ab.wasm");
    }

    #[test]
    fn the_hash_tells_each_part_from_another() {
        let part = |bytes: &[u8]| Part {
            name: "split_builds.wasm".to_owned(),
            bytes: bytes.to_vec(),
        };
        let one = hash(&[part(b"1")], b"first", &["script"]);
        assert_eq!(one.len(), 16);
        assert_ne!(one, hash(&[part(b"2")], b"first", &["script"]));
        assert_ne!(one, hash(&[part(b"1")], b"other", &["script"]));
        assert_ne!(one, hash(&[part(b"1")], b"first", &["other"]));
    }

    #[test]
    fn the_page_gets_the_digest_of_what_it_loads() {
        let html = r#"<link href="./a.js" integrity="sha384-old"><link href="./b.js" integrity="sha384-other">"#;
        let new = with_integrity(html, "a.js", b"abc").unwrap();
        // SHA-384 of "abc", FIPS 180-4, in base64.
        let abc = "sha384-ywB1P0WjXou1oD1pmsZQBycsMqsO3tFjGotgWkP/W+2AhgcroefMI1i67KE0yCWn";
        assert!(new.contains(abc) && new.contains("sha384-other"), "{new}");
        assert!(with_integrity(html, "c.js", b"abc").is_err());
    }
}
