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
    let html = policy::put_in(&read_text(&index)?)?;
    write(&index, html.as_bytes())?;
    let template = read_text(&places.root.join("static/sw.js"))?;
    let script = worker::write(&template, page.cache, &files(&page.dist)?)?;
    write(&page.dist.join("sw.js"), script.as_bytes())?;
    // A static host shows this for an address it does not know. The app keeps
    // its own places behind the `#`, so the page itself is the right answer.
    write(&page.dist.join("404.html"), html.as_bytes())
}
