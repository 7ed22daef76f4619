//! What has to hold for any file at all, for fuzzing and for tests.

use crate::bundle::unpack;
use crate::file::{Imported, export, import};
use crate::fold::tightening::tightenings;
use crate::fold::{conflicts, fold};

/// Imports a file, as a bundle and as it stands, and holds the result to what
/// was promised. Too much work is left out: folding a large file many times.
///
/// # Panics
/// When a promise is broken.
pub fn hold_import(file: &[u8]) {
    if let Ok(unpacked) = unpack(file) {
        for (hash, bytes) in &unpacked.photos {
            assert_eq!(
                &crate::bundle::digest(bytes),
                hash,
                "a photo under a wrong name"
            );
        }
        hold(&unpacked.imported);
    }
    match import(file) {
        Ok(imported) => hold(&imported),
        Err(error) => assert!(!error.to_string().is_empty(), "an error without a word"),
    }
}

fn hold(imported: &Imported) {
    let journal = &imported.journal;
    // Out and in again nothing changes any more, and nothing is lost.
    let text = export(journal);
    match import(text.as_bytes()) {
        Ok(again) => {
            assert_eq!(&again.journal, journal, "not the same after a round trip");
            assert_eq!(export(&again.journal), text, "not the same bytes");
        }
        Err(error) => assert!(text.is_empty(), "what was exported cannot be read: {error}"),
    }
    let build = fold(journal);
    assert_eq!(build, fold(journal), "two states from the same facts");
    let stale = build.stale();
    let _ = build.way_back(&stale);
    let outlook = build.outlook(1_760_000_000_000);
    let _ = outlook.critical_path(&build, 1_760_000_000_000, 60);
    let _ = outlook.promised(&build);
    let _ = build.clocks();
    for work in &build.bought.work {
        let _ = build.side_by_side(work);
    }
    let _ = conflicts(journal);
    let tight = tightenings(journal);
    for part in tight.groups.iter().flat_map(|group| group.parts.values()) {
        let _ = (part.state(), part.on());
    }
}

#[cfg(test)]
mod tests {
    use super::hold_import;

    const FILES: [&[u8]; 10] = [
        include_bytes!("../fixtures/sizes-listed-1.json"),
        include_bytes!("../fixtures/two-devices-1.json"),
        include_bytes!("../fixtures/two-placings-1.json"),
        include_bytes!("../fixtures/timing-cover-1.json"),
        include_bytes!("../fixtures/rod-caps-1.json"),
        include_bytes!("../fixtures/tools-tried-1.json"),
        include_bytes!("../fixtures/oddities-1.json"),
        include_bytes!("../fixtures/shed-evening-1.json"),
        include_bytes!("../fixtures/bundle-by-python-1.zip"),
        b"",
    ];

    /// Draws without a generator.
    struct Dice(u64);

    impl Dice {
        fn below(&mut self, bound: usize) -> usize {
            self.0 = self
                .0
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1);
            usize::try_from(self.0 >> 33).unwrap() % bound.max(1)
        }
    }

    #[test]
    fn files_that_were_tampered_with_end_in_a_journal_or_a_sentence() {
        let mut dice = Dice(20_260_101);
        for round in 0..600 {
            let mut file = FILES[round % FILES.len()].to_vec();
            for _ in 0..=dice.below(6) {
                let at = dice.below(file.len());
                let end = at + dice.below(file.len().saturating_sub(at).min(300));
                match dice.below(5) {
                    0 if at < file.len() => file[at] ^= 1 << dice.below(8),
                    1 => file.truncate(at),
                    2 => drop(file.drain(at..end)),
                    3 => {
                        let piece = file[at..end].to_vec();
                        let to = dice.below(file.len());
                        file.splice(to..to, piece);
                    }
                    _ => {
                        let other = FILES[dice.below(FILES.len())];
                        let from = dice.below(other.len());
                        let to = (from + dice.below(200)).min(other.len());
                        file.splice(at..at, other[from..to].iter().copied());
                    }
                }
            }
            hold_import(&file);
        }
    }
}
