//! The crank from front to rear: mains and crankpins in the order they lie.

use super::description::Engine;
use crate::place::Main;

/// One bearing along the crank.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum CrankStop {
    /// A main bearing.
    Main(Main),
    /// A crankpin, counted from the front from 1.
    Crankpin(u8),
}

impl Engine {
    /// Mains and crankpins from front to rear. The crankpins are shared out
    /// between the mains as evenly as they go, those left over to the front.
    #[must_use]
    pub fn crank_line(&self) -> Vec<CrankStop> {
        let pins = self.layout().crankpins(self.cylinders());
        let gaps = self.number_of_mains().saturating_sub(1).max(1);
        let mut line = Vec::with_capacity(usize::from(pins) + usize::from(self.number_of_mains()));
        let mut pin = 0;
        for main in self.mains() {
            line.push(CrankStop::Main(main));
            if main.is_rear() {
                break;
            }
            let here = pins / gaps + u8::from(main.number() <= pins % gaps);
            for _ in 0..here {
                pin += 1;
                line.push(CrankStop::Crankpin(pin));
            }
        }
        line
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Layout;

    fn drawn(cylinders: u32, mains: u32) -> String {
        Engine::new("test bed", cylinders, Layout::Inline, Some(mains))
            .unwrap()
            .crank_line()
            .into_iter()
            .map(|stop| match stop {
                CrankStop::Main(_) => 'M',
                CrankStop::Crankpin(_) => 'o',
            })
            .collect()
    }

    #[test]
    fn crankpins_lie_between_the_mains() {
        assert_eq!(drawn(4, 5), "MoMoMoMoM");
        assert_eq!(drawn(4, 3), "MooMooM");
        assert_eq!(drawn(6, 4), "MooMooMooM");
        assert_eq!(drawn(3, 3), "MooMoM");
        assert_eq!(drawn(4, 2), "MooooM");
        assert_eq!(drawn(1, 2), "MoM");
    }
}
