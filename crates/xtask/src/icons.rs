//! The icons: one drawing, `static/icons/icon.svg`, turned into pictures by
//! Chromium and made small by `pngquant` and `zopflipng`. The pictures are kept
//! beside it, so that a build needs none of these.

use std::path::Path;
use std::process::{Command, Stdio};

use crate::dist::read_text;
use crate::places::Places;
use crate::problem::{Outcome, Problem, While};
use crate::run::{on_path, run, say};

/// What lies around the drawing.
#[derive(Debug, Clone, Copy)]
enum Edge {
    /// Nothing: the drawing's own round corners.
    Own,
    /// Its ground colour, so that a device may cut any shape out of the middle
    /// 80 % (W3C Web Application Manifest, "icon masks and safe zone").
    Ground,
}

/// Each picture: its name, its width and height in pixels, and its edge.
const PICTURES: [(&str, u32, Edge); 5] = [
    ("icon-192.png", 192, Edge::Own),
    ("icon-512.png", 512, Edge::Own),
    ("icon-maskable-192.png", 192, Edge::Ground),
    ("icon-maskable-512.png", 512, Edge::Ground),
    // For home screens that round the corners themselves.
    ("icon-touch-180.png", 180, Edge::Ground),
];

/// The colour the drawing stands on.
const GROUND: &str = "#20292f";

/// Draws all pictures anew.
pub fn draw(places: &Places) -> Outcome<()> {
    for program in ["chromium", "pngquant", "zopflipng"] {
        if on_path(program).is_none() {
            return Err(Problem::new(format!(
                "drawing needs {program}; run: sudo apt-get install chromium pngquant zopfli"
            )));
        }
    }
    let icons = places.root.join("static/icons");
    let drawing = read_text(&icons.join("icon.svg"))?;
    if !drawing.contains(GROUND) {
        return Err(Problem::new(format!(
            "icon.svg does not stand on {GROUND} any more"
        )));
    }
    for (name, size, edge) in PICTURES {
        say(format!("Drawing {name}"));
        let picture = icons.join(name);
        draw_one(&drawing, &picture, size, edge)?;
        make_small(&picture)?;
        let found = size_of(&picture)?;
        if found != (size, size) {
            return Err(Problem::new(format!(
                "{name} came out as {found:?} instead of {size}"
            )));
        }
    }
    Ok(())
}

fn draw_one(drawing: &str, picture: &Path, size: u32, edge: Edge) -> Outcome<()> {
    let (around, ground) = match edge {
        Edge::Own => (0, "transparent"),
        Edge::Ground => (size / 10, GROUND),
    };
    let inside = size - 2 * around;
    let html = format!(
        "<!doctype html><style>html {{ background: {ground} }} body {{ margin: {around}px }} \
         svg {{ display: block; width: {inside}px; height: {inside}px }}</style>{drawing}"
    );
    let page = std::env::temp_dir().join(format!("thoubook-icon-{}.html", std::process::id()));
    std::fs::write(&page, html).during(format!("writing {}", page.display()))?;
    let drawn = run(Command::new("chromium")
        .args([
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--hide-scrollbars",
        ])
        .args([
            "--force-device-scale-factor=1",
            "--default-background-color=00000000",
        ])
        .arg(format!("--window-size={size},{size}"))
        .arg(format!("--screenshot={}", picture.display()))
        .arg(format!("file://{}", page.display()))
        .stderr(Stdio::null()));
    // It lies among the temporary files in any case.
    let _ = std::fs::remove_file(&page);
    drawn
}

/// A first visit loads every picture, so a few colours and the tightest
/// packing it is.
fn make_small(picture: &Path) -> Outcome<()> {
    run(Command::new("pngquant")
        .args(["--force", "--strip", "--nofs", "--speed", "1", "--output"])
        .args([picture, Path::new("32"), picture]))?;
    run(Command::new("zopflipng")
        .args(["-y", "--filters=01234mepb"])
        .args([picture, picture])
        .stdout(Stdio::null()))
}

/// Width and height from the head of a PNG file (ISO/IEC 15948, 11.2.2).
fn size_of(picture: &Path) -> Outcome<(u32, u32)> {
    let bytes = crate::dist::read(picture)?;
    let number = |from: usize| {
        bytes
            .get(from..from + 4)
            .and_then(|four| <[u8; 4]>::try_from(four).ok())
            .map(u32::from_be_bytes)
    };
    match (
        bytes.starts_with(b"\x89PNG\r\n\x1a\n"),
        number(16),
        number(20),
    ) {
        (true, Some(width), Some(height)) => Ok((width, height)),
        _ => Err(Problem::new(format!(
            "{} is no PNG file",
            picture.display()
        ))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_picture_is_kept_in_its_size() {
        let icons = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../static/icons");
        for (picture, size, _) in PICTURES {
            assert_eq!(
                size_of(&icons.join(picture)).unwrap(),
                (size, size),
                "{picture}"
            );
        }
    }
}
