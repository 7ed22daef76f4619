//! Small sums over runs.

/// The middle of an odd number of runs, the lower middle of an even one.
pub fn median(runs: &[f64]) -> f64 {
    let mut sorted = runs.to_vec();
    sorted.sort_by(f64::total_cmp);
    sorted
        .get(sorted.len().saturating_sub(1) / 2)
        .copied()
        .unwrap_or(f64::NAN)
}

/// What so many in a hundred runs are not above.
pub fn at_percent(runs: &[f64], percent: usize) -> f64 {
    let mut sorted = runs.to_vec();
    sorted.sort_by(f64::total_cmp);
    let rank = (sorted.len() * percent).div_ceil(100);
    sorted
        .get(rank.saturating_sub(1))
        .copied()
        .unwrap_or(f64::NAN)
}

/// One figure for a line of the report: the median and how far the runs went.
pub fn spread(runs: &[f64]) -> String {
    let least = runs.iter().copied().fold(f64::INFINITY, f64::min);
    let most = runs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    format!(
        "{:7.1} ms  ({least:.1} to {most:.1}, {} runs)",
        median(runs),
        runs.len()
    )
}

/// How much of a budget is used.
pub fn percent(used: usize, budget: usize) -> f64 {
    // Sizes of pages are far below what a double holds exactly.
    #[allow(clippy::cast_precision_loss)]
    let share = used as f64 / budget as f64;
    share * 100.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_median_is_the_middle_run_in_any_order() {
        assert_eq!(median(&[3.0, 1.0, 2.0]), 2.0);
        assert_eq!(median(&[4.0, 3.0, 1.0, 2.0]), 2.0);
        assert!(median(&[]).is_nan());
    }

    #[test]
    fn so_many_runs_in_a_hundred_are_not_above() {
        let runs: Vec<f64> = (1..=20).rev().map(f64::from).collect();
        assert_eq!(at_percent(&runs, 95), 19.0);
        assert_eq!(at_percent(&runs, 100), 20.0);
        assert!(at_percent(&[], 95).is_nan());
    }
}
