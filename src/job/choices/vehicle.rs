//! What a vehicle is used for and how it stands on its wheels and mounts.

use super::choices;

choices! {
    /// What the vehicle does most.
    UseKind {
        Street = "street", "Street";
        StreetStrip = "street_strip", "Street and strip";
        Drag = "drag", "Drag racing";
        Tow = "tow", "Towing and work";
        Offroad = "offroad", "Off-road";
        Pull = "pull", "Sled or truck pulling";
    }
}

choices! {
    /// Driven wheels, or the wheels a shaft is made for.
    DriveLayout {
        TwoWheel = "two_wheel", "Two-wheel drive";
        FourWheel = "four_wheel", "Four-wheel drive";
    }
}

choices! {
    /// The driven tires.
    TireKind {
        Street = "street", "Street tires";
        Slick = "slick", "Slicks";
    }
}

choices! {
    /// What the transmission mount is made of.
    MountKind {
        Rubber = "rubber", "Rubber";
        Poly = "poly", "Firm plastic";
        Solid = "solid", "Solid";
        None = "none", "No mount";
    }
}

choices! {
    /// What the engine mounts are made of.
    EngineMount {
        Rubber = "rubber", "Rubber";
        Poly = "poly", "Firm plastic";
        Solid = "solid", "Solid";
    }
}
