//! How an engine is built, as far as the plan of its build depends on it.

use crate::named::named;

named! {
    /// What opens the valves.
    ValveGear {
        /// Camshaft in the block, flat lifters, clearance set by a screw.
        PushrodFlatSolid = "pushrod-flat-solid", "pushrods, solid flat lifters";
        /// Camshaft in the block, flat lifters filled with oil.
        PushrodFlatHydraulic = "pushrod-flat-hydraulic", "pushrods, hydraulic flat lifters";
        /// Camshaft in the block, lifters with rollers, clearance set by a screw.
        PushrodRollerSolid = "pushrod-roller-solid", "pushrods, solid roller lifters";
        /// Camshaft in the block, lifters with rollers, filled with oil.
        PushrodRollerHydraulic = "pushrod-roller-hydraulic", "pushrods, hydraulic roller lifters";
        /// One camshaft on each head, with rockers or finger followers.
        OverheadFinger = "overhead-finger", "one overhead camshaft, rockers or fingers";
        /// One camshaft on each head, right above buckets.
        OverheadBucket = "overhead-bucket", "one overhead camshaft, buckets";
        /// Two camshafts on each head, with rockers or finger followers.
        TwinOverheadFinger = "twin-overhead-finger", "two overhead camshafts, fingers";
        /// Two camshafts on each head, right above buckets.
        TwinOverheadBucket = "twin-overhead-bucket", "two overhead camshafts, buckets";
    }
}

named! {
    /// What turns the camshaft.
    CamDrive {
        /// A chain.
        Chain = "chain", "chain";
        /// Two chains, one behind the other: marks meet only every so many turns.
        TwoStageChain = "two-stage-chain", "chain in two stages";
        /// Gears.
        Gear = "gear", "gears";
        /// A toothed belt.
        Belt = "belt", "toothed belt";
    }
}

named! {
    /// What a casting is made of.
    Casting {
        /// Grey iron.
        Iron = "iron", "iron";
        /// Aluminium alloy. It grows twice as much with heat, and its threads are softer.
        Alloy = "alloy", "alloy";
    }
}

named! {
    /// What the pistons run in.
    Liners {
        /// Bored in the block itself.
        ParentBore = "parent-bore", "bored in the block";
        /// A sleeve pressed into a bore, with no coolant behind it.
        Dry = "dry", "dry liners";
        /// A sleeve in the coolant, held by a flange at its top.
        WetTopFlange = "wet-top-flange", "wet liners, flange at the top";
        /// A sleeve in the coolant, standing on a seat at its bottom.
        WetBottomSeat = "wet-bottom-seat", "wet liners, seat at the bottom";
        /// Cast in or plated alloy, not honed the ordinary way.
        CastInAlloy = "cast-in-alloy", "cast-in or plated alloy";
    }
}

named! {
    /// What keeps the oil in at the flywheel.
    RearSeal {
        /// A rope laid into grooves of block and cap.
        Rope = "rope", "rope";
        /// A lip seal in two halves.
        TwoPieceLip = "two-piece-lip", "lip in two halves";
        /// A whole ring in a retainer that is bolted on.
        OnePieceRetainer = "one-piece-retainer", "one piece, in a retainer";
        /// A whole ring in a bore half in the block and half in the cap.
        OnePieceCap = "one-piece-cap", "one piece, in block and cap";
    }
}

named! {
    /// How the main bearing caps are held.
    MainCaps {
        /// Two bolts each.
        TwoBolt = "two-bolt", "two bolts a cap";
        /// Four bolts each.
        FourBolt = "four-bolt", "four bolts a cap";
        /// Bolts from below and from the sides.
        CrossBolted = "cross-bolted", "cross-bolted";
        /// All caps in one casting. One bad bore makes all of it scrap.
        Girdle = "girdle", "girdle or ladder";
    }
}

named! {
    /// How the rod caps are held.
    Rods {
        /// A bolt pressed into the rod, and a nut.
        BoltAndNut = "bolt-and-nut", "bolts and nuts";
        /// A screw from below into the rod.
        CapScrew = "cap-screw", "cap screws";
        /// Cracked apart at the joint, so that cap and rod fit in one way only
        /// and neither can be cut.
        FractureSplit = "fracture-split", "fracture-split";
    }
}

named! {
    /// How the piston pin is held.
    Pins {
        /// It turns in piston and rod, kept in by locks.
        Floating = "floating", "floating, with locks";
        /// It is pressed into the rod.
        Pressed = "pressed", "pressed into the rod";
    }
}

named! {
    /// What turns the oil pump.
    PumpDrive {
        /// The camshaft, by a gear and often a rod.
        Camshaft = "camshaft", "camshaft or distributor gear";
        /// The crank itself.
        Crank = "crank", "crank nose";
        /// A chain or gear of its own.
        OwnChainOrGear = "own-chain-or-gear", "chain or gear of its own";
    }
}

named! {
    /// What sets the spark off.
    Ignition {
        /// A distributor that is driven by the engine.
        Distributor = "distributor", "distributor";
        /// A sensor on crank or cam.
        Sensor = "sensor", "crank or cam sensor";
        /// A magneto.
        Magneto = "magneto", "magneto";
        /// None: a diesel.
        None = "none", "none: diesel";
    }
}

named! {
    /// How the crankcase comes apart.
    Crankcase {
        /// Block with caps: the crank goes in from below.
        OnePiece = "one-piece", "block with main caps";
        /// Two halves that close around the crank.
        Halves = "halves", "two halves";
    }
}

named! {
    /// How the builder numbers the cylinders of two banks. It decides which rods
    /// share a crankpin.
    Numbering {
        /// From side to side: 1, 3, 5 in one bank and 2, 4, 6 in the other.
        SideToSide = "side-to-side", "1, 3, 5 and 2, 4, 6";
        /// One bank after the other: 1, 2, 3 and 4, 5, 6.
        BankByBank = "bank-by-bank", "1, 2, 3 and 4, 5, 6";
    }
}

/// How an engine is built. Where nothing was said, the first or usual kind is
/// taken; the builder sees it and puts it right.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct Construction {
    /// What opens the valves.
    pub valve_gear: ValveGear,
    /// What turns the camshaft.
    pub cam_drive: CamDrive,
    /// What the block is made of.
    pub block: Casting,
    /// What the heads are made of.
    pub heads: Casting,
    /// What the pistons run in.
    pub liners: Liners,
    /// What keeps the oil in at the flywheel.
    pub rear_seal: RearSeal,
    /// How the main bearing caps are held.
    pub main_caps: MainCaps,
    /// How the rod caps are held.
    pub rods: Rods,
    /// How the piston pins are held.
    pub pins: Pins,
    /// What turns the oil pump.
    pub pump_drive: PumpDrive,
    /// What sets the spark off.
    pub ignition: Ignition,
    /// How the crankcase comes apart; the usual way of the layout when not said.
    pub crankcase: Option<Crankcase>,
    /// How the cylinders of two banks are numbered.
    pub numbering: Numbering,
    /// Intake valves of a cylinder.
    pub intake_valves: u8,
    /// Exhaust valves of a cylinder.
    pub exhaust_valves: u8,
}

impl Default for Construction {
    fn default() -> Self {
        Self {
            valve_gear: ValveGear::PushrodFlatSolid,
            cam_drive: CamDrive::Chain,
            block: Casting::Iron,
            heads: Casting::Iron,
            liners: Liners::ParentBore,
            rear_seal: RearSeal::OnePieceRetainer,
            main_caps: MainCaps::TwoBolt,
            rods: Rods::BoltAndNut,
            pins: Pins::Floating,
            pump_drive: PumpDrive::Camshaft,
            ignition: Ignition::Distributor,
            crankcase: None,
            numbering: Numbering::SideToSide,
            intake_valves: 1,
            exhaust_valves: 1,
        }
    }
}
