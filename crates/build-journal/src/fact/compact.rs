//! JSON text without the blanks between its parts.

/// The same JSON on one line: blanks between the parts are left away, nothing
/// inside a string is touched. The text must be JSON.
pub(crate) fn compact(json: &str) -> Box<str> {
    let mut in_string = false;
    let mut escaped = false;
    let kept = json.chars().filter(|letter| {
        if in_string {
            match (escaped, *letter) {
                (true, _) => escaped = false,
                (false, '\\') => escaped = true,
                (false, '"') => in_string = false,
                _ => {}
            }
            true
        } else {
            in_string = *letter == '"';
            !matches!(letter, ' ' | '\n' | '\r' | '\t')
        }
    });
    let mut text = String::with_capacity(json.len());
    text.extend(kept);
    text.into_boxed_str()
}

#[cfg(test)]
mod tests {
    use super::compact;

    #[test]
    fn blanks_go_outside_strings_only() {
        let spread = "{ \"a b\" :\t[ 1 ,\r\n \"x \\\" y \\\\\" , 2.50e+3 ] }";
        assert_eq!(&*compact(spread), "{\"a b\":[1,\"x \\\" y \\\\\",2.50e+3]}");
        assert_eq!(compact(&compact(spread)), compact(spread));
    }
}
