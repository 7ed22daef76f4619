//! Which causes make a value's give-or-take, in the words of the bench.

use super::estimate::Estimate;
use super::source::{Origin, Sources};

/// What part of a value's give-or-take comes from one thing in one way: the
/// bore gauge's feel, the micrometer's zero.
#[derive(Clone, PartialEq, Debug)]
pub struct Cause {
    /// What it comes from: "bore gauge".
    pub label: String,
    /// In which way.
    pub origin: Origin,
    /// One standard deviation that it gives the value, SI units.
    pub deviation: f64,
    /// Its part of the total variance, 0 to 1.
    pub of_variance: f64,
}

/// What part of a value's give-or-take comes from one thing in all ways.
#[derive(Clone, PartialEq, Debug)]
pub struct Blame {
    /// What it comes from: "bore gauge".
    pub label: String,
    /// Its part of the total variance, 0 to 1.
    pub of_variance: f64,
}

impl Estimate {
    /// The causes by thing and way, largest first: the feel of ten readings of
    /// one gauge is one cause.
    #[must_use]
    pub fn causes(&self, sources: &Sources) -> Vec<Cause> {
        let mut causes: Vec<Cause> = Vec::new();
        for share in self.shares() {
            let Some(source) = sources.get(share.source) else {
                continue;
            };
            match causes
                .iter_mut()
                .find(|one| *one.label == *source.label && one.origin == source.origin)
            {
                Some(cause) => {
                    cause.deviation = cause.deviation.hypot(share.deviation);
                    cause.of_variance += share.of_variance;
                }
                None => causes.push(Cause {
                    label: source.label.to_string(),
                    origin: source.origin,
                    deviation: share.deviation,
                    of_variance: share.of_variance,
                }),
            }
        }
        causes.sort_by(|a, b| b.of_variance.total_cmp(&a.of_variance));
        causes
    }

    /// Which thing is to blame for how much, largest first.
    #[must_use]
    pub fn blame(&self, sources: &Sources) -> Vec<Blame> {
        let mut blame: Vec<Blame> = Vec::new();
        for cause in self.causes(sources) {
            match blame.iter_mut().find(|one| one.label == cause.label) {
                Some(one) => one.of_variance += cause.of_variance,
                None => blame.push(Blame {
                    label: cause.label,
                    of_variance: cause.of_variance,
                }),
            }
        }
        blame.sort_by(|a, b| b.of_variance.total_cmp(&a.of_variance));
        blame
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn readings_of_one_tool_are_one_cause_and_its_causes_one_blame() {
        let mut sources = Sources::new();
        let feels = [0, 1].map(|_| sources.fresh("bore gauge", Origin::Repeat));
        let zero = sources.fresh("bore gauge", Origin::SharedZero);
        let other = sources.fresh("micrometer", Origin::Repeat);
        let value = Estimate::exact(1.0)
            .with(feels[0], 3.0)
            .with(feels[1], -4.0)
            .with(zero, 5.0)
            .with(other, 5.0_f64.sqrt() * 5.0);
        let causes = value.causes(&sources);
        assert_eq!(causes.len(), 3);
        assert_eq!(causes[0].label, "micrometer");
        let feel = causes
            .iter()
            .find(|one| one.origin == Origin::Repeat && one.label == "bore gauge");
        assert!((feel.unwrap().deviation - 5.0).abs() < 1e-12);
        let blame = value.blame(&sources);
        assert_eq!(blame.len(), 2);
        assert!((blame[0].of_variance - 125.0 / 175.0).abs() < 1e-12);
        assert!((blame.iter().map(|one| one.of_variance).sum::<f64>() - 1.0).abs() < 1e-12);
    }
}
