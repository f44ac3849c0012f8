//! Words.

use super::choices;

choices! {
    /// TEXT.
    Length {
        Short = "short", "short";
        Long = "long", "long";
    }
}

choices! {
    /// TEXT.
    OutputEnd {
        Plain = "plain", "plain";
        TappedBoltOn = "tapped_bolt_on", "tapped bolt on";
    }
}

choices! {
    /// TEXT.
    Tail {
        Slip = "slip", "slip";
        TruckFixed = "truck_fixed", "truck fixed";
        FourWheelAdapter = "four_wheel_adapter", "four wheel adapter";
        HeavyBearing = "heavy_bearing", "heavy bearing";
    }
}

choices! {
    /// TEXT.
    YokeKind {
        Slip = "slip", "slip";
        SlipRecessed = "slip_recessed", "slip recessed";
        BoltOn = "bolt_on", "bolt on";
        None = "none", "none";
    }
}

choices! {
    /// TEXT.
    ShaftKind {
        Fixed = "fixed", "fixed";
        SlipJoint = "slip_joint", "slip joint";
    }
}

choices! {
    /// TEXT.
    ParkDrum {
        None = "none", "none";
        Kept = "kept", "kept";
        Removed = "removed", "removed";
    }
}

choices! {
    /// TEXT.
    SpeedometerKind {
        Cable = "cable", "cable";
        Electronic = "electronic", "electronic";
        Gps = "gps", "gps";
        None = "none", "none";
    }
}

choices! {
    /// TEXT.
    SpeedometerDrive {
        Plastic = "plastic", "plastic";
        Steel = "steel", "steel";
        ToneRing = "tone_ring", "tone ring";
        None = "none", "none";
    }
}

choices! {
    /// TEXT.
    SpeedometerHole {
        Gear = "gear", "gear";
        Plugged = "plugged", "plugged";
        Open = "open", "open";
    }
}

choices! {
    /// TEXT.
    TubeMaterial {
        Steel = "steel", "steel";
        Aluminum = "aluminum", "aluminum";
    }
}
