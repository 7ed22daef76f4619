//! JSON text without the blanks between its parts.

use std::borrow::Cow;

/// The same JSON on one line: blanks between the parts are left away, nothing
/// inside a string is touched. The text must be JSON. What has no such blanks
/// is handed back as it is.
pub(crate) fn compact(json: &str) -> Cow<'_, str> {
    let mut kept: Option<String> = None;
    let mut from = 0;
    let (mut in_string, mut escaped) = (false, false);
    for (at, byte) in json.bytes().enumerate() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if in_string => escaped = true,
            b'"' => in_string = !in_string,
            b' ' | b'\n' | b'\r' | b'\t' if !in_string => {
                let kept = kept.get_or_insert_with(|| String::with_capacity(json.len()));
                kept.push_str(json.get(from..at).unwrap_or_default());
                from = at + 1;
            }
            _ => {}
        }
    }
    match kept {
        None => Cow::Borrowed(json),
        Some(mut kept) => {
            kept.push_str(json.get(from..).unwrap_or_default());
            Cow::Owned(kept)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Cow, compact};

    #[test]
    fn blanks_go_outside_strings_only() {
        let spread = "{ \"a b\" :\t[ 1 ,\r\n \"x \\\" y \\\\\" , 2.50e+3 ] }";
        assert_eq!(compact(spread), "{\"a b\":[1,\"x \\\" y \\\\\",2.50e+3]}");
        let tight = compact(spread);
        assert!(matches!(compact(&tight), Cow::Borrowed(text) if text == tight));
    }
}
