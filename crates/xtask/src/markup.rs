//! Reading the few things of a page that its packing has to know.

use html5gum::Tokenizer;
use html5gum::emitters::default::{DefaultEmitter, StartTag, Token};

/// What a page is made of, as far as its policy is concerned.
#[derive(Debug, Default)]
pub struct Markup {
    /// The text of each script that stands in the page itself.
    pub inline_scripts: Vec<String>,
    /// Every URL the page names.
    pub urls: Vec<String>,
    /// What no policy of ours would let through.
    pub faults: Vec<String>,
}

/// Attributes that hold a URL.
const URL_ATTRIBUTES: [&str; 6] = ["src", "href", "action", "poster", "data", "formaction"];

/// Elements that have no business in the page.
const FORBIDDEN: [&str; 6] = ["style", "base", "iframe", "frame", "object", "embed"];

impl Markup {
    /// Reads a page.
    pub fn read(html: &str) -> Self {
        let mut markup = Self::default();
        let mut script: Option<String> = None;
        let mut emitter = DefaultEmitter::<()>::default();
        // So that the text of a script is read as a browser reads it.
        emitter.naively_switch_states(true);
        for Ok(token) in Tokenizer::new_with_emitter(html, emitter) {
            match token {
                Token::StartTag(tag) => {
                    markup.read_tag(&tag);
                    if is(&tag, "script") && attribute(&tag, "src").is_none() {
                        script = Some(String::new());
                    }
                }
                Token::String(text) => {
                    if let Some(script) = &mut script {
                        script.push_str(&String::from_utf8_lossy(&text));
                    }
                }
                Token::EndTag(_) => markup.inline_scripts.extend(script.take()),
                _ => {}
            }
        }
        markup
    }

    fn read_tag(&mut self, tag: &StartTag<()>) {
        let element = String::from_utf8_lossy(&tag.name).into_owned();
        if FORBIDDEN.contains(&element.as_str()) {
            self.faults
                .push(format!("<{element}> has no place in the page"));
        }
        for (name, value) in &tag.attributes {
            let name = String::from_utf8_lossy(name);
            let value = String::from_utf8_lossy(value);
            if name == "style" || name.starts_with("on") {
                self.faults.push(format!(
                    "<{element} {name}=\"{value}\"> stands in the page itself"
                ));
            }
            if URL_ATTRIBUTES.contains(&&*name) {
                self.urls.push(value.into_owned());
            }
        }
    }
}

fn is(tag: &StartTag<()>, name: &str) -> bool {
    *tag.name == *name.as_bytes()
}

fn attribute(tag: &StartTag<()>, name: &str) -> Option<String> {
    tag.attributes
        .get(name.as_bytes())
        .map(|value| String::from_utf8_lossy(value).into_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_inline_script_is_read_as_a_browser_reads_it() {
        let script = "\nif (1 < 2 && '<b>') { go(\"&amp;\"); }\n";
        let markup = Markup::read(&format!("<script type=module>{script}</script><p>text"));
        assert_eq!(markup.inline_scripts, [script]);
    }

    #[test]
    fn a_script_with_a_source_is_not_inline() {
        let markup = Markup::read("<script src=\"./a.js\" defer></script>");
        assert!(markup.inline_scripts.is_empty());
        assert_eq!(markup.urls, ["./a.js"]);
    }
}
