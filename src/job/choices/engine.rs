//! Words.

use super::choices;

choices! {
    /// TEXT.
    Induction {
        Natural = "natural", "natural";
        Boosted = "boosted", "boosted";
        Nitrous = "nitrous", "nitrous";
        Diesel = "diesel", "diesel";
    }
}

choices! {
    /// TEXT.
    VacuumSource {
        Manifold = "manifold", "manifold";
        Pump = "pump", "pump";
        None = "none", "none";
    }
}

choices! {
    /// TEXT.
    EnginePattern {
        PatternA = "pattern_a", "pattern a";
        PatternB = "pattern_b", "pattern b";
        Other = "other", "other";
    }
}

choices! {
    /// TEXT.
    UpperHole {
        Present = "present", "present";
        Absent = "absent", "absent";
    }
}

choices! {
    /// TEXT.
    CrankFlange {
        Standard = "standard", "standard";
        Short0400 = "short_0400", "short 0400";
    }
}

choices! {
    /// TEXT.
    Balance {
        Internal = "internal", "internal";
        External = "external", "external";
    }
}

choices! {
    /// TEXT.
    FlexplateSpec {
        None = "none", "none";
        Sfi291 = "sfi_29_1", "sfi 29 1";
    }
}

choices! {
    /// TEXT.
    FlexplateShield {
        None = "none", "none";
        Sfi301 = "sfi_30_1", "sfi 30 1";
    }
}
