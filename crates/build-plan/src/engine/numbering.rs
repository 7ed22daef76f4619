//! Which cylinder is where.

use super::construction::Numbering;
use super::description::Engine;
use super::layout::Layout;
use crate::place::ValveSide;

impl Engine {
    /// The bank a cylinder stands in, from 1.
    #[must_use]
    pub fn bank_of(&self, cylinder: u8) -> u8 {
        match (self.layout().banks(), self.construction().numbering) {
            (1, _) => 1,
            (_, Numbering::SideToSide) => {
                if cylinder.is_multiple_of(2) {
                    2
                } else {
                    1
                }
            }
            (_, Numbering::BankByBank) => {
                // An odd one out stands in the first bank.
                if cylinder <= self.cylinders().div_ceil(2) {
                    1
                } else {
                    2
                }
            }
        }
    }

    /// The crankpin that a cylinder's rod is on, from the front from 1. On a
    /// vee the rods of two opposite cylinders share one; on a flat engine each
    /// has its own, the first bank's in front.
    #[must_use]
    pub fn crankpin_of(&self, cylinder: u8) -> u8 {
        let along = match (self.layout().banks(), self.construction().numbering) {
            (1, _) => return cylinder,
            (_, Numbering::SideToSide) => cylinder.div_ceil(2),
            (_, Numbering::BankByBank) => {
                let bank = self.cylinders().div_ceil(2);
                if cylinder <= bank {
                    cylinder
                } else {
                    cylinder.saturating_sub(bank)
                }
            }
        };
        match self.layout() {
            Layout::Flat => along
                .saturating_mul(2)
                .saturating_sub(u8::from(self.bank_of(cylinder) == 1)),
            _ => along,
        }
    }

    /// The cylinders whose rods are on a crankpin.
    #[must_use]
    pub fn on_crankpin(&self, crankpin: u8) -> Vec<u8> {
        (1..=self.cylinders())
            .filter(|cylinder| self.crankpin_of(*cylinder) == crankpin)
            .collect()
    }

    /// How many valves of a side each cylinder has.
    #[must_use]
    pub const fn valves(&self, side: ValveSide) -> u8 {
        match side {
            ValveSide::Intake => self.construction().intake_valves,
            ValveSide::Exhaust => self.construction().exhaust_valves,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Construction;
    use assembly_core::quantity::Si;
    use uom::si::f64::Angle;

    fn engine(cylinders: u32, layout: Layout, numbering: Numbering) -> Engine {
        let built = Construction {
            numbering,
            ..Construction::default()
        };
        Engine::new("test bed", cylinders, layout, None)
            .and_then(|engine| engine.built(built))
            .unwrap()
    }

    fn pins(engine: &Engine) -> Vec<u8> {
        (1..=engine.cylinders())
            .map(|cylinder| engine.crankpin_of(cylinder))
            .collect()
    }

    #[test]
    fn the_rods_of_opposite_cylinders_of_a_vee_share_a_crankpin() {
        let vee = Layout::Vee {
            bank_angle: Angle::from_si(1.5),
        };
        let side_to_side = engine(8, vee, Numbering::SideToSide);
        assert_eq!(pins(&side_to_side), [1, 1, 2, 2, 3, 3, 4, 4]);
        assert_eq!(side_to_side.on_crankpin(2), [3, 4]);
        let bank_by_bank = engine(8, vee, Numbering::BankByBank);
        assert_eq!(pins(&bank_by_bank), [1, 2, 3, 4, 1, 2, 3, 4]);
        assert_eq!(bank_by_bank.bank_of(5), 2);
        assert_eq!(
            pins(&engine(5, vee, Numbering::BankByBank)),
            [1, 2, 3, 1, 2]
        );
    }

    #[test]
    fn each_rod_of_an_inline_or_flat_engine_has_its_own() {
        let inline = engine(4, Layout::Inline, Numbering::BankByBank);
        assert_eq!(pins(&inline), [1, 2, 3, 4]);
        let flat = engine(4, Layout::Flat, Numbering::SideToSide);
        assert_eq!(pins(&flat), [1, 2, 3, 4]);
        let flat = engine(4, Layout::Flat, Numbering::BankByBank);
        assert_eq!(pins(&flat), [1, 3, 2, 4]);
    }
}
