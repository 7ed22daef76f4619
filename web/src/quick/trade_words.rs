//! The words of the trade, each in a line or two.

use build_plan::glossary::{GLOSSARY, Term};

use crate::device::drafts::Draft;
use crate::kit::piece::{Piece, el, note, title};
use crate::kit::words::word_field;

/// Words to find a word by: more is no word of the trade.
const WORDS_AT_MOST: usize = 60;

/// All words of the trade that the app uses, with a field to find one.
#[must_use]
pub fn trade_words() -> Piece {
    let typed = Draft::of("find-word");
    let field = word_field(
        "find-word",
        "Find a word",
        "Such as crush, lash or quench.",
        typed,
        WORDS_AT_MOST,
        || None,
    );
    let list = Piece::live(move || {
        let found = found(&typed.get());
        if found.is_empty() {
            return note("lead", "No such word here.").into();
        }
        let words = found.into_iter().flat_map(|term| {
            let forms = match term.forms {
                [] => String::new(),
                forms => format!(" (also: {})", forms.join(", ")),
            };
            [
                el("dt")
                    .test("trade-word")
                    .with(el("strong").text(term.word))
                    .text(&forms)
                    .into(),
                el("dd").text(term.means).into(),
            ]
        });
        el("dl").class("trade-words").all(words).into()
    });
    Piece::all([title("Words of the trade").into(), field.into(), list])
}

/// The words that have this in them, in whichever form; all when nothing is
/// typed.
fn found(typed: &str) -> Vec<&'static Term> {
    let wanted = typed.trim().to_lowercase();
    let has = |term: &&Term| {
        let mut words = std::iter::once(&term.word).chain(term.forms);
        words.any(|word| word.contains(&wanted))
    };
    GLOSSARY.iter().filter(has).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_is_found_in_any_form_and_nothing_typed_shows_all() {
        assert_eq!(found(" ").len(), GLOSSARY.len());
        assert!(found("Journals").iter().any(|term| term.word == "journal"));
        assert!(found("flux capacitor").is_empty());
    }
}
