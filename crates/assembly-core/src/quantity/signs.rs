//! The many signs that keyboards, books and word processors give, as the one meant.

/// Writes the many signs people's keyboards give as the one meant.
pub(super) fn usual_signs(text: &str) -> String {
    let mut usual = String::with_capacity(text.len() + 8);
    for sign in text.chars() {
        match sign {
            '−' | '–' | '—' | '‐' | '‑' | '﹣' | '－' => usual.push('-'),
            '＋' => usual.push('+'),
            '⁄' | '∕' | '÷' => usual.push('/'),
            '′' | '’' | '‘' => usual.push('\''),
            '″' | '”' | '“' | '„' => usual.push('"'),
            '⋅' | '•' | '∙' | '‧' => usual.push('·'),
            'μ' => usual.push('µ'),
            'º' | '˚' => usual.push('°'),
            '℃' => usual.push_str("°C"),
            '℉' => usual.push_str("°F"),
            _ if sign.is_whitespace() => usual.push(' '),
            _ => match fraction_sign(sign) {
                // Blanks keep its digits apart from the neighbours'.
                Some(fraction) => {
                    usual.push(' ');
                    usual.push_str(fraction);
                    usual.push(' ');
                }
                None => usual.push(sign),
            },
        }
    }
    usual
}

const fn fraction_sign(sign: char) -> Option<&'static str> {
    Some(match sign {
        '½' => "1/2",
        '⅓' => "1/3",
        '⅔' => "2/3",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅕' => "1/5",
        '⅖' => "2/5",
        '⅗' => "3/5",
        '⅘' => "4/5",
        '⅙' => "1/6",
        '⅚' => "5/6",
        '⅐' => "1/7",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        '⅑' => "1/9",
        '⅒' => "1/10",
        _ => return None,
    })
}

/// A digit, also a raised one.
pub(super) fn raised_digit(sign: char) -> Option<i32> {
    let raised = match sign {
        '⁰' => 0,
        '¹' => 1,
        '²' => 2,
        '³' => 3,
        '⁴' => 4,
        '⁵' => 5,
        '⁶' => 6,
        '⁷' => 7,
        '⁸' => 8,
        '⁹' => 9,
        _ => return sign.to_digit(10)?.try_into().ok(),
    };
    Some(raised)
}
