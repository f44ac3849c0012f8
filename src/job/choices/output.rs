//! What stands between the unit and the axle, and what drives the speedometer.

use super::choices;

choices! {
    /// One of two lengths a part is made in.
    Length {
        Short = "short", "Short";
        Long = "long", "Long";
    }
}

choices! {
    /// The end of the output shaft.
    OutputEnd {
        Plain = "plain", "Plain";
        TappedBoltOn = "tapped_bolt_on", "Tapped, for a bolt-on yoke";
    }
}

choices! {
    /// The rear housing.
    Tail {
        Slip = "slip", "Bushing and lip seal, for a slip yoke";
        TruckFixed = "truck_fixed", "Short truck housing, bolted yoke";
        FourWheelAdapter = "four_wheel_adapter", "Adapter for a transfer case";
        HeavyBearing = "heavy_bearing", "Heavy housing with a ball bearing";
    }
}

choices! {
    /// The driveshaft's yoke at the unit.
    YokeKind {
        Slip = "slip", "Slip yoke";
        SlipRecessed = "slip_recessed", "Slip yoke with a recess";
        BoltOn = "bolt_on", "Bolt-on yoke";
        None = "none", "No yoke";
    }
}

choices! {
    /// Whether the driveshaft itself can slide.
    ShaftKind {
        Fixed = "fixed", "One piece";
        SlipJoint = "slip_joint", "With a slip joint";
    }
}

choices! {
    /// The brake drum at the back of the unit.
    ParkDrum {
        None = "none", "Never had one";
        Kept = "kept", "Has one";
        Removed = "removed", "Had one, taken off";
    }
}

choices! {
    /// What drives the speedometer.
    SpeedometerKind {
        Cable = "cable", "Cable";
        Electronic = "electronic", "Electronic sensor";
        Gps = "gps", "Satellite";
        None = "none", "No speedometer";
    }
}

choices! {
    /// What the output shaft carries for the speedometer.
    SpeedometerDrive {
        Plastic = "plastic", "Plastic worm";
        Steel = "steel", "Steel worm";
        ToneRing = "tone_ring", "Toothed ring";
        None = "none", "Nothing";
    }
}

choices! {
    /// What closes the speedometer hole.
    SpeedometerHole {
        Gear = "gear", "Gear in its holder";
        Plugged = "plugged", "Plug";
        Open = "open", "Nothing, it is open";
    }
}

choices! {
    /// What the driveshaft's tube is made of.
    TubeMaterial {
        Steel = "steel", "Steel";
        Aluminum = "aluminum", "Aluminum";
    }
}
