//! What the card has to say about a value.

use super::{CardUnit, Entry, Source};
use crate::describe::{Answer, Finding, Gravity, length_text};
use crate::measure::Estimate;

impl Entry {
    /// What the card says about a value: a caution when it lies outside of what
    /// is common, else a note of what is common. Nothing when the line needs a
    /// diameter and gets none.
    #[must_use]
    pub fn remark(&self, value: &Estimate, diameter: Option<f64>) -> Option<Finding> {
        let scale = match self.unit {
            CardUnit::Inch => 0.0254,
            CardUnit::InchPerInch => diameter?,
        };
        let (low, high) = (
            self.low.map(|one| one * scale),
            self.high.or(self.worn).map(|one| one * scale),
        );
        let read = value.value();
        let (beyond, limit, harm) = match (low, high) {
            (Some(low), _) if read < low => ("under", low, self.too_little),
            (_, Some(high)) if read > high => ("over", high, self.too_much),
            _ => {
                return Some(Finding {
                    gravity: Gravity::Note,
                    text: format!(
                        "{}: {}{}.",
                        self.standing(),
                        self.range(low, high, scale),
                        self.whose()
                    ),
                });
            }
        };
        let harm = if harm.is_empty() {
            String::new()
        } else {
            format!(": {harm}")
        };
        Some(Finding {
            gravity: Gravity::Caution,
            text: format!(
                "{} reads {}, {beyond} the {} of {}{harm}. The maker's sheet decides{}.",
                self.what,
                length_text(read),
                length_text(limit),
                self.standing().to_lowercase(),
                self.whose(),
            ),
        })
    }

    fn standing(&self) -> String {
        match self.source {
            Source::CommonPractice => "Common practice".to_owned(),
            Source::Disputed => "Common practice that is disputed".to_owned(),
            Source::ArmyManual(number) => format!("Army manual {number}"),
            Source::Printed(source) => format!("Printed in {source}"),
        }
    }

    fn range(&self, low: Option<f64>, high: Option<f64>, scale: f64) -> String {
        let said = match (low, high) {
            (Some(low), Some(high)) => format!("{} to {}", length_text(low), length_text(high)),
            (Some(low), None) => format!("at least {}", length_text(low)),
            (None, Some(high)) => format!("at most {}", length_text(high)),
            (None, None) => match self.wanted {
                Some(wanted) => format!("about {}", length_text(wanted * scale)),
                None => String::new(),
            },
        };
        format!("{} {said}", self.what)
    }

    fn whose(&self) -> String {
        if self.case.is_empty() {
            String::new()
        } else {
            format!(" ({})", self.case)
        }
    }
}

impl Answer {
    /// The same with what the card says about one of its values.
    #[must_use]
    pub fn remarked(self, value: &Estimate, entry: Option<&Entry>) -> Self {
        self.remarked_at(value, entry, None)
    }

    /// The same with what the card says about one of its values, at a diameter.
    #[must_use]
    pub fn remarked_at(
        self,
        value: &Estimate,
        entry: Option<&Entry>,
        diameter: Option<f64>,
    ) -> Self {
        match entry.and_then(|entry| entry.remark(value, diameter)) {
            Some(finding) => self.finding(finding.gravity, finding.text),
            None => self,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::limits::about;

    fn remark(inches: f64) -> Finding {
        let entry = about("crank-end-play", "").unwrap();
        entry
            .remark(&Estimate::exact(inches * 0.0254), None)
            .unwrap()
    }

    #[test]
    fn a_value_outside_is_told_with_what_comes_of_it() {
        let little = remark(0.002);
        assert_eq!(little.gravity, Gravity::Caution);
        assert!(
            little.text.contains("under the 0.0040 in"),
            "{}",
            little.text
        );
        assert!(little.text.contains("burns in minutes"));
        assert!(little.text.contains("maker's sheet"));
        assert!(remark(0.012).text.contains("over the 0.0100 in"));
        assert_eq!(remark(0.006).gravity, Gravity::Note);
        let one_figure = about("seat-width-exhaust", "").unwrap();
        let said = one_figure.remark(&Estimate::exact(0.002), None).unwrap();
        assert!(said.text.contains("about 0.0800 in"), "{}", said.text);
    }

    #[test]
    fn a_line_for_each_inch_says_nothing_without_its_diameter() {
        let entry = about("top-ring-gap", "street").unwrap();
        let gap = Estimate::exact(0.010 * 0.0254);
        assert!(entry.remark(&gap, None).is_none());
        let said = entry.remark(&gap, Some(4.0 * 0.0254)).unwrap();
        assert!(said.text.contains("0.0160 in"), "{}", said.text);
        assert!(said.text.contains("disputed"));
    }
}
