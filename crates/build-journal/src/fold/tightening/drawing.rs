//! Where the bolts of a group sit: in rows, around a circle, or where they were
//! dragged to.

use assembly_core::tightening::layout::Layout;

use crate::fact::{BoltLayout, FastenerGroup};

/// More bolts than this in one group are a slip or a forged file.
pub const MOST_BOLTS: u32 = 200;

/// From bolt to bolt, in the hundredths that places are kept in.
pub const PITCH: i32 = 100;

/// Bolts nearer than this part of the way from one to the next cannot be pressed
/// apart on a drawing.
pub const NEAREST: f64 = 0.7;

/// Farther from the middle than this many bolts is a slip or a forged file.
const FARTHEST: i32 = 100;

/// The bolts as they are drawn.
///
/// # Errors
/// A sentence: what is wrong with their number or places.
pub(super) fn layout(group: &FastenerGroup) -> Result<Layout, String> {
    let start = started_from(group)?;
    let places = &group.sheet.places;
    if places.is_empty() {
        return Ok(start);
    }
    if places.len() != start.count() {
        return Err(format!(
            "{} bolts are placed on the drawing and the group has {}: put them back in rows.",
            places.len(),
            start.count()
        ));
    }
    placed(places)
}

/// Bolts where they were dragged to.
///
/// # Errors
/// A sentence: which bolt is too far off, or which two lie on each other.
pub fn placed(places: &[[i32; 2]]) -> Result<Layout, String> {
    let far = FARTHEST * PITCH;
    let is_far = |place: &[i32; 2]| place.iter().any(|one| !(-far..=far).contains(one));
    if let Some(bolt) = places.iter().position(is_far) {
        return Err(format!(
            "Bolt {} lies far off the drawing: move it back.",
            bolt + 1
        ));
    }
    let part = |one: i32| f64::from(one) / f64::from(PITCH);
    let places: Vec<(f64, f64)> = places.iter().map(|[x, y]| (part(*x), part(*y))).collect();
    let layout = Layout::at(&places);
    match too_near(&layout) {
        None => Ok(layout),
        Some((one, other)) => Err(format!(
            "Bolts {} and {} lie on each other on the drawing: move one of them.",
            one + 1,
            other + 1
        )),
    }
}

/// Two bolts that nobody could press apart.
fn too_near(layout: &Layout) -> Option<(usize, usize)> {
    let count = layout.count();
    let mut pairs = (0..count).flat_map(|one| (one + 1..count).map(move |other| (one, other)));
    // A place is kept in hundredths: what is typed as the limit is not too near.
    pairs.find(|(one, other)| layout.apart(*one, *other) < NEAREST - 1e-9)
}

/// The rows or the circle that a drawing starts from.
fn started_from(group: &FastenerGroup) -> Result<Layout, String> {
    if group.bolts == 0 {
        return Err("The group has no bolts: say how many there are.".to_owned());
    }
    if group.bolts > MOST_BOLTS {
        return Err(format!(
            "{} bolts in one group: at most {MOST_BOLTS} can be drawn. Make two groups of it.",
            group.bolts
        ));
    }
    let one_row = |count: u32| u8::try_from(count).map(|count| Layout::rows(&[count]));
    let drawn = match &group.sheet.layout {
        None | Some(BoltLayout::Unknown(_)) => one_row(group.bolts).unwrap_or_default(),
        Some(BoltLayout::Circle(count)) => {
            u8::try_from(*count).map(Layout::circle).unwrap_or_default()
        }
        Some(BoltLayout::Rows(rows)) => {
            let sound =
                rows.iter().map(|row| u64::from(*row)).sum::<u64>() <= u64::from(MOST_BOLTS);
            let rows: Vec<u8> = rows
                .iter()
                .filter_map(|row| u8::try_from(*row).ok())
                .collect();
            if sound {
                Layout::rows(&rows)
            } else {
                Layout::default()
            }
        }
    };
    if usize::try_from(group.bolts).is_ok_and(|bolts| bolts == drawn.count()) {
        Ok(drawn)
    } else {
        Err(format!(
            "The drawing has {} bolts and the group {}: make them alike.",
            drawn.count(),
            group.bolts
        ))
    }
}
