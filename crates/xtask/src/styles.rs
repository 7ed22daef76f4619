//! Two style sheets for the page instead of one for each folder of screens: what
//! a first visit shows, and what waits with the part that shows a build.
//!
//! They are written apart because people look for them apart. A phone asks for
//! each, and packs each by itself: together they are one request and fewer bytes.

use std::path::Path;

use crate::dist::{integrity, read_text, short_hash, write};
use crate::problem::{Outcome, Problem, While};

/// What the start of a link to a style sheet looks like in trunk's pages.
const LINK: &str = "<link rel=\"stylesheet\" href=\"./";
/// What marks one that waits, in `web/index.html`.
const WAITS: &str = " data-later";

/// When a page needs the sheets that are marked to wait.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Marked {
    /// With the part of the page that they belong to: the page asks for them.
    Wait,
    /// At once, like all the others.
    AtOnce,
}

/// Puts the style sheets of the page in this folder into one, in their order,
/// and those that wait into another. The link to that one is not followed by a
/// browser: `web/src/device/dress.rs` turns it into one that is.
pub fn join(dist: &Path, marked: Marked) -> Outcome<()> {
    let index = dist.join("index.html");
    let (html, sheets) = without_sheets(&read_text(&index)?)?;
    let (waiting, first): (Vec<_>, Vec<_>) = sheets
        .into_iter()
        .partition(|sheet| sheet.waits && marked == Marked::Wait);
    let mut links = joined(dist, "style", first, "rel=\"stylesheet\"")?;
    links += &joined(dist, "later", waiting, "id=\"later-style\" rel=\"later\"")?;
    write(&index, html.replacen(PLACE, &links, 1).as_bytes())
}

/// One sheet of several, with the link to it; nothing of none.
fn joined(dist: &Path, name: &str, sheets: Vec<Sheet>, kind: &str) -> Outcome<String> {
    if sheets.is_empty() {
        return Ok(String::new());
    }
    let mut all = String::new();
    for sheet in sheets {
        let file = dist.join(&sheet.name);
        all.push_str(&bare(&read_text(&file)?)?);
        std::fs::remove_file(&file).during(format!("removing {}", file.display()))?;
    }
    let name = format!("{name}-{}.css", short_hash(&[all.as_bytes()]));
    write(&dist.join(&name), all.as_bytes())?;
    Ok(format!(
        "<link {kind} href=\"./{name}\" integrity=\"{}\"/>",
        integrity(all.as_bytes())
    ))
}

/// A style sheet without what is there for people: comments, and blanks at the
/// ends of its lines.
fn bare(sheet: &str) -> Outcome<String> {
    let mut rest = sheet;
    let mut without = String::with_capacity(sheet.len());
    while let Some((before, after)) = rest.split_once("/*") {
        let ends = || Problem::new("a comment of a style sheet has no end");
        without.push_str(before);
        rest = after.split_once("*/").ok_or_else(ends)?.1;
    }
    without.push_str(rest);
    let lines = without.lines().map(str::trim);
    let lines: Vec<&str> = lines.filter(|line| !line.is_empty()).collect();
    Ok(lines.join("\n") + "\n")
}

/// Where the first of the sheets stood.
const PLACE: &str = "<!--style-->";

/// A style sheet that the page links to.
struct Sheet {
    name: String,
    waits: bool,
}

/// The page without its style sheets, and these. A place is left where the first
/// one stood.
fn without_sheets(html: &str) -> Outcome<(String, Vec<Sheet>)> {
    let mut rest = html;
    let mut left = String::with_capacity(html.len());
    let mut sheets: Vec<Sheet> = Vec::new();
    while let Some((before, after)) = rest.split_once(LINK) {
        let ends = || Problem::new("a link to a style sheet in index.html has no end");
        let (name, after) = after.split_once('"').ok_or_else(ends)?;
        let (more, after) = after.split_once('>').ok_or_else(ends)?;
        if sheets.is_empty() {
            left.push_str(before);
            left.push_str(PLACE);
        } else {
            left.push_str(before.trim_end());
        }
        sheets.push(Sheet {
            name: name.to_owned(),
            waits: more.contains(WAITS),
        });
        rest = after;
    }
    left.push_str(rest);
    Ok((left, sheets))
}

#[cfg(test)]
mod tests {
    use std::path::PathBuf;

    use super::*;

    const HTML: &str = "<head>\n  <link rel=\"stylesheet\" href=\"./b-1.css\" integrity=\"sha384-x\"/>\n  <link rel=\"stylesheet\" href=\"./c-3.css\" data-later integrity=\"sha384-z\"/>\n  <link rel=\"stylesheet\" href=\"./a-2.css\" integrity=\"sha384-y\"/>\n  <script></script></head>";

    /// A page of three sheets, one of which is marked to wait.
    fn page(name: &str) -> PathBuf {
        let dist = format!("thoubook-styles-{name}-{}", std::process::id());
        let dist = std::env::temp_dir().join(dist);
        std::fs::create_dir_all(&dist).unwrap();
        std::fs::write(dist.join("index.html"), HTML).unwrap();
        std::fs::write(dist.join("a-2.css"), "a{}").unwrap();
        std::fs::write(dist.join("b-1.css"), "/* all */\nb {\n  top: 0;\n}\n").unwrap();
        std::fs::write(dist.join("c-3.css"), "c{}").unwrap();
        dist
    }

    /// The sheets that are there, by what is in them.
    fn sheets(dist: &Path) -> Vec<(String, String)> {
        let files = std::fs::read_dir(dist).unwrap();
        let names = files.map(|file| file.unwrap().file_name().into_string().unwrap());
        let sheets = names.filter(|name| name.ends_with(".css"));
        let mut sheets: Vec<_> = sheets
            .map(|name| (read_text(&dist.join(&name)).unwrap(), name))
            .collect();
        sheets.sort();
        sheets
    }

    #[test]
    fn the_sheets_of_a_page_become_one_and_those_that_wait_another() {
        let dist = page("wait");
        join(&dist, Marked::Wait).unwrap();
        let html = read_text(&dist.join("index.html")).unwrap();
        assert_eq!(html.matches("rel=\"stylesheet\"").count(), 1, "{html}");
        assert!(html.contains("<script></script></head>"), "{html}");
        let sheets = sheets(&dist);
        let texts: Vec<&str> = sheets.iter().map(|(text, _)| text.as_str()).collect();
        assert_eq!(texts, ["b {\ntop: 0;\n}\na{}\n", "c{}\n"]);
        for (text, name) in &sheets {
            let link = format!(
                "href=\"./{name}\" integrity=\"{}\"/>",
                integrity(text.as_bytes())
            );
            assert!(html.contains(&link), "{link} is not in {html}");
        }
        assert!(html.contains(&format!("rel=\"later\" href=\"./{}\"", sheets[1].1)));
        // The first comes first, so that what comes later rules.
        assert!(html.find("style-") < html.find("later-style"));
        std::fs::remove_dir_all(&dist).unwrap();
    }

    #[test]
    fn a_page_that_is_not_cut_apart_has_one_sheet() {
        let dist = page("once");
        join(&dist, Marked::AtOnce).unwrap();
        let html = read_text(&dist.join("index.html")).unwrap();
        assert_eq!(html.matches("<link").count(), 1, "{html}");
        let all = sheets(&dist);
        assert_eq!(all.len(), 1);
        assert_eq!(all[0].0, "b {\ntop: 0;\n}\nc{}\na{}\n");
        // One sheet by itself stays as it is.
        join(&dist, Marked::AtOnce).unwrap();
        assert_eq!(read_text(&dist.join("index.html")).unwrap(), html);
        std::fs::remove_dir_all(&dist).unwrap();
    }

    #[test]
    fn what_is_there_for_people_is_left_out_and_nothing_else() {
        let sheet =
            "/* Why. */\na::before {\n  content: \" ✕ \"; /* seen */\n}\n\n.b { top: 0; }\n";
        let left = "a::before {\ncontent: \" ✕ \";\n}\n.b { top: 0; }\n";
        assert_eq!(bare(sheet).unwrap(), left);
        assert!(bare("a { /* no end }").is_err());
    }
}
