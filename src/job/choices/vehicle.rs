//! Words.

use super::choices;

choices! {
    /// TEXT.
    UseKind {
        Street = "street", "street";
        StreetStrip = "street_strip", "street strip";
        Drag = "drag", "drag";
        Tow = "tow", "tow";
        Offroad = "offroad", "offroad";
        Pull = "pull", "pull";
    }
}

choices! {
    /// TEXT.
    DriveLayout {
        TwoWheel = "two_wheel", "two wheel";
        FourWheel = "four_wheel", "four wheel";
    }
}

choices! {
    /// TEXT.
    TireKind {
        Street = "street", "street";
        Slick = "slick", "slick";
    }
}

choices! {
    /// TEXT.
    MountKind {
        Rubber = "rubber", "rubber";
        Poly = "poly", "poly";
        Solid = "solid", "solid";
        None = "none", "none";
    }
}

choices! {
    /// TEXT.
    EngineMount {
        Rubber = "rubber", "rubber";
        Poly = "poly", "poly";
        Solid = "solid", "solid";
    }
}
