//! Words.

use super::choices;

choices! {
    /// TEXT.
    BellKind {
        Integral = "integral", "integral";
        BoltOn = "bolt_on", "bolt on";
    }
}

choices! {
    /// TEXT.
    BellPattern {
        PatternA = "pattern_a", "pattern a";
        PatternB = "pattern_b", "pattern b";
        Both = "both", "both";
    }
}

choices! {
    /// TEXT.
    Crack {
        None = "none", "none";
        Suspected = "suspected", "suspected";
        Found = "found", "found";
    }
}

choices! {
    /// TEXT.
    CaseHistory {
        Original = "original", "original";
        OtherValveBody = "other_vb", "other vb";
        Unknown = "unknown", "unknown";
    }
}

choices! {
    /// TEXT.
    Connector {
        None = "none", "none";
        OneWire = "one_wire", "one wire";
        TwoWire = "two_wire", "two wire";
        Blanked = "blanked", "blanked";
    }
}

choices! {
    /// TEXT.
    ParkPawl {
        Works = "works", "works";
        Removed = "removed", "removed";
        Fails = "fails", "fails";
    }
}

choices! {
    /// TEXT.
    CaseVariant {
        Heavy = "heavy", "heavy";
        LightDuty = "light_duty", "light duty";
    }
}
