//! How work can hurt somebody, said once for all steps that share it.

/// Opening or draining a unit that has run.
pub(super) const HOT_FLUID: &str = "Hot fluid burns. Let the unit cool until you can hold a hand on the pan, and wear \
     gloves and a face shield. Old fluid goes to a licensed collector, never down a drain.";

/// Lifting a bare or dressed unit.
pub(super) const LIFTING: &str = "The unit is heavy and slippery. Lift it with two people or a hoist, strap it to the \
     jack, and never put a hand or a foot beneath it.";

/// Springs held under load.
pub(super) const SPRINGS: &str = "The springs are under load and leave like a shot. Use the press and the compressor \
     made for the drum, follow the unit's manual, and wear eye protection.";

/// Cutting, drilling and grinding.
pub(super) const CUTTING: &str = "Chips fly and tools grab. Clamp the case, wear eye protection, no gloves near a \
     turning tool and no loose sleeves, and follow the tool's own instructions.";

/// Wash, solvent and blowing dry.
pub(super) const WASHING: &str = "Solvent fumes burn and make you dizzy: air the room and keep every flame away. Wear \
     eye protection, blow at low pressure with a chip guard, and never point air at skin. The safety sheet of \
     the product and the rules of your workplace decide.";

/// Regulated air into the feeds.
pub(super) const AIR: &str = "Wear eye protection, use regulated dry air and never point it at skin. Pistons move at \
     once: keep fingers out. The unit's manual and the rules of your workplace decide the pressure.";

/// The engine or the stand is running.
pub(super) const RUNNING: &str = "The vehicle can jump and shafts tear at sleeves. Chock the wheels, set the brake, \
     keep everybody out of the line of wheels and shafts, and have somebody at the key. Follow the \
     vehicle's and the stand's own instructions.";

/// Under a raised vehicle.
pub(super) const UNDER_VEHICLE: &str = "A jack alone holds nobody's life: the vehicle stands on rated stands, and \
                                        those on a level floor that does not give. Strap the unit to its jack. The \
                                        vehicle's manual says where it may be held.";

/// Live wires and solenoids.
pub(super) const ELECTRIC: &str = "A shorted wire burns. Fuse the test lead, let the coil cool between tries and keep \
     fingers away from the plunger. Follow the maker's instructions.";

/// The shields that stand between a failed unit and people.
pub(super) const SHIELDS: &str = "A shield stands between a bursting part and people. Never cut, bend or drill it: \
     change the part that does not fit. Its maker's instructions and the official at the track decide.";

/// A vehicle that may roll or start in gear.
pub(super) const ROLLING: &str = "A vehicle that starts in gear or rolls away can kill. Chock the wheels, let nobody \
     stand in front or behind, and do not hand it over until it has passed. Brake and structural work \
     beyond the unit belongs to licensed practice.";
