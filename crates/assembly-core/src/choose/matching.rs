//! Whether each place can have a part of its own when only some are allowed.

use super::costs::Costs;

/// The allowed parts of each place as the bits of a word.
pub(super) fn allowed(costs: &Costs, holds: impl Fn(i64) -> bool) -> Vec<u64> {
    costs
        .rows()
        .map(|row| {
            row.iter()
                .zip(0_u32..)
                .filter(|(cell, _)| holds(**cell))
                .fold(0, |bits, (_, part)| bits | 1 << part)
        })
        .collect()
}

/// Whether every place can have a part of its own out of the allowed ones.
pub(super) fn can_place_all(allowed: &[u64]) -> bool {
    Dealing::new(allowed).deal_all()
}

/// Parts being dealt out by augmenting paths, with sets of parts as words.
struct Dealing<'places> {
    allowed: &'places [u64],
    /// The place that holds each part.
    holder: [u8; 64],
}

/// Held by none.
const FREE: u8 = u8::MAX;

impl<'places> Dealing<'places> {
    const fn new(allowed: &'places [u64]) -> Self {
        Self {
            allowed,
            holder: [FREE; 64],
        }
    }

    fn deal_all(&mut self) -> bool {
        let places = self.allowed.len();
        // There are at most 64 parts, so more places cannot all have one.
        places <= 64 && (0..places as u8).all(|place| self.deal(place, &mut 0))
    }

    fn deal(&mut self, place: u8, tried: &mut u64) -> bool {
        let Some(mine) = self.allowed.get(usize::from(place)).copied() else {
            return false;
        };
        loop {
            let open = mine & !*tried;
            if open == 0 {
                return false;
            }
            let part = open.trailing_zeros() as usize;
            *tried |= 1 << part;
            let other = self.holder.get(part).copied().unwrap_or(FREE);
            if (other == FREE || self.deal(other, tried))
                && let Some(slot) = self.holder.get_mut(part)
            {
                *slot = place;
                return true;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_give_way_to_each_other() {
        assert!(can_place_all(&[0b011, 0b001, 0b110]));
        assert!(!can_place_all(&[0b01, 0b01]));
        assert!(!can_place_all(&[0b01, 0b00]));
        assert!(can_place_all(&[1 << 63]));
        // Three that share two parts, seen only when all three are there.
        assert!(can_place_all(&[0b011, 0b011]));
        assert!(!can_place_all(&[0b011, 0b011, 0b011]));
        assert!(!can_place_all(&[u64::MAX; 65]));
        assert!(can_place_all(&[u64::MAX; 64]));
    }
}
