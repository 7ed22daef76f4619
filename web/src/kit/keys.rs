//! What pressing a key of the keypad does to a text. No browser in here.

/// A key of the keypad that changes the text.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Key {
    /// A digit, the decimal point, the fraction bar or the blank before a fraction.
    Sign(char),
    /// Minus, or no minus again.
    Minus,
    /// Takes away what stands before the caret.
    Back,
    /// Gives the number this unit, in place of the one it had.
    Unit(&'static str),
}

/// A browser sends the press that a touch ends in right behind the lift of the
/// finger, in milliseconds by the clock of its events.
const BEHIND_LIFT_MS: f64 = 400.0;

/// Whether a press belongs to the touch that was lifted then. Both times are
/// milliseconds on the same clock.
#[must_use]
pub fn ends_touch(lifted: f64, pressed: f64) -> bool {
    pressed - lifted < BEHIND_LIFT_MS
}

/// A text with a selected stretch, both ends counted in UTF-16 units as the browser does.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Edited {
    /// The text.
    pub text: String,
    /// Start of the selection.
    pub start: usize,
    /// End of the selection; the caret when it equals the start.
    pub end: usize,
}

impl Edited {
    /// A text with the caret at its end.
    #[must_use]
    pub fn at_end(text: impl Into<String>) -> Self {
        let text = text.into();
        let end = text.encode_utf16().count();
        Self {
            text,
            start: end,
            end,
        }
    }

    /// The text after a key was pressed.
    #[must_use]
    pub fn after(self, key: Key) -> Self {
        match key {
            Key::Sign(sign) => self.insert(sign),
            Key::Back => self.take_back(),
            Key::Minus => self.turn_sign(),
            Key::Unit(unit) => Self::at_end(with_unit(&self.text, unit)),
        }
    }

    /// What stands before, inside and behind the selection.
    fn split(&self) -> (String, String, String) {
        let units: Vec<u16> = self.text.encode_utf16().collect();
        let end = self.end.min(units.len());
        let start = self.start.min(end);
        let part = |range: std::ops::Range<usize>| {
            String::from_utf16_lossy(units.get(range).unwrap_or_default())
        };
        (part(0..start), part(start..end), part(end..units.len()))
    }

    fn insert(self, sign: char) -> Self {
        let (mut before, _, behind) = self.split();
        before.push(sign);
        let caret = before.encode_utf16().count();
        Self {
            text: before + &behind,
            start: caret,
            end: caret,
        }
    }

    fn take_back(self) -> Self {
        let (mut before, selected, behind) = self.split();
        if selected.is_empty() {
            // A unit goes in one piece: nobody wants to take "tenths" back by the letter.
            let number = without_unit(&before);
            if behind.is_empty() && number.len() < before.trim_end().len() {
                before.truncate(number.len());
            } else {
                before.pop();
            }
        }
        let caret = before.encode_utf16().count();
        Self {
            text: before + &behind,
            start: caret,
            end: caret,
        }
    }

    fn turn_sign(self) -> Self {
        let trimmed = self.text.trim_start();
        let plain = trimmed.strip_prefix(['-', '−']);
        match plain {
            Some(plain) => Self {
                start: self.start.saturating_sub(1),
                end: self.end.saturating_sub(1),
                text: plain.trim_start().to_owned(),
            },
            None => Self {
                start: self.start + 1,
                end: self.end + 1,
                text: format!("-{trimmed}"),
            },
        }
    }
}

/// The text up to the end of its number.
fn without_unit(text: &str) -> &str {
    let ends_number = |sign: char| sign.is_numeric() || matches!(sign, '.' | ',' | '/' | '-' | '−');
    // Raised digits belong to units such as cm².
    let ends_number = |sign: char| ends_number(sign) && !matches!(sign, '²' | '³' | '¹');
    match text.rfind(ends_number) {
        Some(at) => {
            let width = text
                .get(at..)
                .and_then(|rest| rest.chars().next())
                .map_or(0, char::len_utf8);
            text.get(..at + width).unwrap_or(text)
        }
        None => "",
    }
}

fn with_unit(text: &str, unit: &str) -> String {
    let number = without_unit(text);
    if number.trim().is_empty() {
        return text.to_owned();
    }
    format!("{number} {unit}")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn typed(keys: &[Key]) -> String {
        keys.iter()
            .fold(Edited::at_end(""), |edited, key| edited.after(*key))
            .text
    }

    #[test]
    fn a_mixed_number_is_typed_with_blank_and_bar() {
        use Key::{Sign, Unit};
        let keys = [
            Sign('2'),
            Sign(' '),
            Sign('7'),
            Sign('/'),
            Sign('1'),
            Sign('6'),
            Unit("in"),
        ];
        assert_eq!(typed(&keys), "2 7/16 in");
    }

    #[test]
    fn a_second_unit_replaces_the_first() {
        let text = Edited::at_end("2.1")
            .after(Key::Unit("thou"))
            .after(Key::Unit("mm"));
        assert_eq!(text.text, "2.1 mm");
        assert_eq!(
            Edited::at_end("2-7/16\"").after(Key::Unit("mm")).text,
            "2-7/16 mm"
        );
        assert_eq!(Edited::at_end("2½").after(Key::Unit("in")).text, "2½ in");
    }

    #[test]
    fn a_unit_without_a_number_does_nothing() {
        assert_eq!(typed(&[Key::Unit("thou")]), "");
    }

    #[test]
    fn back_takes_a_whole_unit_and_then_digit_by_digit() {
        let unit = Edited::at_end("-3 tenths").after(Key::Back);
        assert_eq!(unit.text, "-3");
        assert_eq!(
            unit.after(Key::Back).after(Key::Back).after(Key::Back).text,
            ""
        );
    }

    #[test]
    fn the_minus_comes_and_goes_wherever_the_caret_stands() {
        let once = Edited::at_end("3 tenths").after(Key::Minus);
        assert_eq!(once.text, "-3 tenths");
        assert_eq!(once.after(Key::Minus).text, "3 tenths");
        assert_eq!(typed(&[Key::Minus, Key::Sign('3')]), "-3");
    }

    #[test]
    fn typing_and_taking_back_happen_at_the_caret() {
        let middle = Edited {
            text: "2.483".to_owned(),
            start: 3,
            end: 3,
        };
        let mended = middle.after(Key::Sign('4'));
        assert_eq!((mended.text.as_str(), mended.start), ("2.4483", 4));
        assert_eq!(mended.after(Key::Back).text, "2.483");
        let all = Edited {
            text: "62.20".to_owned(),
            start: 0,
            end: 5,
        };
        assert_eq!(all.after(Key::Sign('7')).text, "7");
    }

    #[test]
    fn a_press_long_after_the_finger_was_lifted_is_one_of_its_own() {
        assert!(ends_touch(1000.0, 1001.0));
        assert!(!ends_touch(1000.0, 3000.0));
        assert!(!ends_touch(f64::NEG_INFINITY, 5.0));
    }

    #[test]
    fn foreign_text_is_edited_without_a_panic() {
        let odd = Edited {
            text: "µ𝟚x".to_owned(),
            start: 2,
            end: 99,
        };
        assert_eq!(odd.clone().after(Key::Back).text.chars().next(), Some('µ'));
        let _ = odd
            .after(Key::Sign('1'))
            .after(Key::Minus)
            .after(Key::Unit("mm"));
    }
}
