//! One style sheet for the page instead of one for each folder of screens.
//!
//! They are written apart because people look for them apart. A phone asks for
//! each, and packs each by itself: together they are one request and fewer bytes.

use std::path::Path;

use crate::dist::{integrity, read_text, short_hash, write};
use crate::problem::{Outcome, Problem, While};

/// Puts all style sheets of the page in this folder into one, in their order.
pub fn join(dist: &Path) -> Outcome<()> {
    let index = dist.join("index.html");
    let (html, names) = without_sheets(&read_text(&index)?)?;
    if names.len() < 2 {
        return Ok(());
    }
    let mut all = String::new();
    for name in &names {
        let file = dist.join(name);
        all.push_str(&read_text(&file)?);
        all.push('\n');
        std::fs::remove_file(&file).during(format!("removing {}", file.display()))?;
    }
    let name = format!("style-{}.css", short_hash(&[all.as_bytes()]));
    write(&dist.join(&name), all.as_bytes())?;
    let link = format!(
        "<link rel=\"stylesheet\" href=\"./{name}\" integrity=\"{}\"/>",
        integrity(all.as_bytes())
    );
    write(&index, html.replacen(PLACE, &link, 1).as_bytes())
}

/// Where the first of the sheets stood.
const PLACE: &str = "<!--style-->";

/// The page without its style sheets, and their names. A place is left where
/// the first one stood.
fn without_sheets(html: &str) -> Outcome<(String, Vec<String>)> {
    const LINK: &str = "<link rel=\"stylesheet\" href=\"./";
    let mut rest = html;
    let mut left = String::with_capacity(html.len());
    let mut names = Vec::new();
    while let Some((before, after)) = rest.split_once(LINK) {
        let ends = || Problem::new("a link to a style sheet in index.html has no end");
        let (name, after) = after.split_once('"').ok_or_else(ends)?;
        let (_, after) = after.split_once('>').ok_or_else(ends)?;
        if names.is_empty() {
            left.push_str(before);
            left.push_str(PLACE);
        } else {
            left.push_str(before.trim_end());
        }
        names.push(name.to_owned());
        rest = after;
    }
    left.push_str(rest);
    Ok((left, names))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sheets_of_a_page_become_one_in_their_order() {
        let dist = std::env::temp_dir().join(format!("thoubook-styles-{}", std::process::id()));
        std::fs::create_dir_all(&dist).unwrap();
        let html = "<head>\n  <link rel=\"stylesheet\" href=\"./b-1.css\" integrity=\"sha384-x\"/>\n  <link rel=\"stylesheet\" href=\"./a-2.css\" integrity=\"sha384-y\"/>\n  <script></script></head>";
        std::fs::write(dist.join("index.html"), html).unwrap();
        std::fs::write(dist.join("b-1.css"), "b{}").unwrap();
        std::fs::write(dist.join("a-2.css"), "a{}").unwrap();
        join(&dist).unwrap();
        let page = read_text(&dist.join("index.html")).unwrap();
        assert_eq!(page.matches("stylesheet").count(), 1, "{page}");
        assert!(page.contains("<script></script></head>"), "{page}");
        let (_, names) = without_sheets(&page).unwrap();
        let sheet = read_text(&dist.join(&names[0])).unwrap();
        assert_eq!(sheet, "b{}\na{}\n");
        assert!(page.contains(&integrity(sheet.as_bytes())), "{page}");
        assert!(!dist.join("a-2.css").exists());
        // One sheet by itself stays as it is.
        join(&dist).unwrap();
        assert_eq!(read_text(&dist.join("index.html")).unwrap(), page);
        std::fs::remove_dir_all(&dist).unwrap();
    }
}
