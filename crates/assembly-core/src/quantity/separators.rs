//! Points and commas in a run of digits: decimals, thousands, or a slip.

/// What points and commas in a run of digits mean.
pub(super) enum Separated {
    /// Digits with at most one decimal point.
    Clear(String),
    /// One comma, one to three digits before it, exactly three behind.
    Either(String, String),
    OpenPoint,
    TwoPoints,
    Misplaced {
        unfinished: bool,
    },
}

/// Tells decimal points from what parts thousands.
pub(super) fn separators(run: &str) -> Separated {
    let points = run.matches('.').count();
    let commas = run.matches(',').count();
    let open = run.ends_with(['.', ',']);
    match (points, commas) {
        (0, 0) => Separated::Clear(run.to_owned()),
        (1, 0) if open => Separated::OpenPoint,
        (1, 0) => Separated::Clear(run.to_owned()),
        (0, 1) => one_comma(run),
        (0, _) => grouped(run, ','),
        (_, 0) => Separated::TwoPoints,
        (1, _) if run.rfind('.') > run.rfind(',') => with_groups(run, ',', '.'),
        (_, 1) if run.rfind(',') > run.rfind('.') => with_groups(run, '.', ','),
        (1, _) => Separated::Misplaced { unfinished: false },
        _ => Separated::TwoPoints,
    }
}

fn one_comma(run: &str) -> Separated {
    let (whole, part) = run.split_once(',').unwrap_or((run, ""));
    if part.is_empty() {
        return Separated::OpenPoint;
    }
    let decimal = format!("{whole}.{part}");
    if part.len() == 3 && (1..=3).contains(&whole.len()) && !whole.starts_with('0') {
        Separated::Either(decimal, format!("{whole}{part}"))
    } else {
        Separated::Clear(decimal)
    }
}

/// A whole number whose digits stand in groups.
fn grouped(run: &str, between: char) -> Separated {
    if fits_groups(run, between) {
        return Separated::Clear(run.replace(between, ""));
    }
    let (front, last) = run.rsplit_once(between).unwrap_or((run, ""));
    Separated::Misplaced {
        unfinished: last.len() < 3 && fits_groups(front, between),
    }
}

fn with_groups(run: &str, between: char, point: char) -> Separated {
    let (whole, part) = run.rsplit_once(point).unwrap_or((run, ""));
    if !fits_groups(whole, between) {
        Separated::Misplaced { unfinished: false }
    } else if part.is_empty() {
        Separated::OpenPoint
    } else {
        Separated::Clear(format!("{}.{part}", whole.replace(between, "")))
    }
}

/// One to three digits, the first no zero, then groups of three.
fn fits_groups(run: &str, between: char) -> bool {
    let mut groups = run.split(between);
    let first = groups.next().unwrap_or("");
    (1..=3).contains(&first.len())
        && !first.starts_with('0')
        && groups.all(|group| group.len() == 3)
}
