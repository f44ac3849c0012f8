//! What a case and its bell can be.

use super::choices;

choices! {
    /// How the bell is joined to the case.
    BellKind {
        Integral = "integral", "Cast in one with the case";
        BoltOn = "bolt_on", "Separate, bolted on";
    }
}

choices! {
    /// The engine patterns a bell has holes for.
    BellPattern {
        PatternA = "pattern_a", "Pattern A";
        PatternB = "pattern_b", "Pattern B";
        Both = "both", "Drilled for both";
    }
}

choices! {
    /// What a look for cracks came to.
    Crack {
        None = "none", "None found";
        Suspected = "suspected", "Suspected";
        Found = "found", "Found";
    }
}

choices! {
    /// What an earlier builder did to the case.
    CaseHistory {
        Original = "original", "As it was made";
        OtherValveBody = "other_vb", "Changed for another valve body";
        Unknown = "unknown", "Nobody knows";
    }
}

choices! {
    /// The electrical connector in the side of the case.
    Connector {
        None = "none", "No hole for one";
        OneWire = "one_wire", "One terminal";
        TwoWire = "two_wire", "Two terminals";
        Blanked = "blanked", "Hole closed with a blank";
    }
}

choices! {
    /// What the park pawl does.
    ParkPawl {
        Works = "works", "Holds";
        Removed = "removed", "Taken out";
        Fails = "fails", "Does not hold";
    }
}

choices! {
    /// Which of two related units the case belongs to.
    CaseVariant {
        Heavy = "heavy", "Heavy-duty";
        LightDuty = "light_duty", "Light-duty relative";
    }
}
