//! Packing a page that trunk has put together: its policy, its service
//! worker, and the page a host shows for a wrong address.

use crate::dist::{files, read_text, write};
use crate::page::Page;
use crate::places::Places;
use crate::policy;
use crate::problem::Outcome;
use crate::worker;

/// Finishes the page in its folder.
pub fn pack(places: &Places, page: &Page) -> Outcome<()> {
    let index = page.dist.join("index.html");
    let html = policy::put_in(&without_idle_digests(&read_text(&index)?))?;
    write(&index, html.as_bytes())?;
    let template = read_text(&places.root.join("static/sw.js"))?;
    let script = worker::write(&template, page.cache, &files(&page.dist)?)?;
    write(&page.dist.join("sw.js"), script.as_bytes())?;
    // A static host shows this for an address it does not know. The app keeps
    // its own places behind the `#`, so the page itself is the right answer.
    write(&page.dist.join("404.html"), html.as_bytes())
}

/// The page without the digest of what is fetched early for a script. The
/// script itself asks for no digest, so it guards nothing, and a phone would
/// work it out at every start. The worker checks every file when it keeps it.
fn without_idle_digests(html: &str) -> String {
    let tags = html.split_inclusive('>').map(|tag| {
        let digest = tag.contains("as=\"fetch\"").then(|| {
            let (before, after) = tag.split_once(" integrity=\"")?;
            let (_, after) = after.split_once('"')?;
            Some(format!("{before}{after}"))
        });
        digest.flatten().unwrap_or_else(|| tag.to_owned())
    });
    tags.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_digest_that_guards_nothing_is_left_out() {
        let script = r#"<link rel="modulepreload" href="./a.js" integrity="sha384-a">"#;
        let program =
            r#"<link rel="preload" href="./a.wasm" integrity="sha384-b" as="fetch" type="t">"#;
        let html = format!("<head>{script}{program}</head>");
        let left = r#"<link rel="preload" href="./a.wasm" as="fetch" type="t">"#;
        assert_eq!(
            without_idle_digests(&html),
            format!("<head>{script}{left}</head>")
        );
    }
}
