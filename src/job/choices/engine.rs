//! What the engine and the flexplate can be.

use super::choices;

choices! {
    /// How the engine gets its air.
    Induction {
        Natural = "natural", "Natural";
        Boosted = "boosted", "Blower or turbocharger";
        Nitrous = "nitrous", "Nitrous";
        Diesel = "diesel", "Diesel";
    }
}

choices! {
    /// What makes vacuum for the modulator.
    VacuumSource {
        Manifold = "manifold", "Intake manifold";
        Pump = "pump", "Vacuum pump";
        None = "none", "Nothing";
    }
}

choices! {
    /// The bolt pattern on the back of the engine.
    EnginePattern {
        PatternA = "pattern_a", "Pattern A";
        PatternB = "pattern_b", "Pattern B";
        Other = "other", "Another pattern";
    }
}

choices! {
    /// The upper bell hole in the block.
    UpperHole {
        Present = "present", "There";
        Absent = "absent", "Missing";
    }
}

choices! {
    /// How deep the crank flange lies.
    CrankFlange {
        Standard = "standard", "Standard";
        Short0400 = "short_0400", "Short, about 0.400 in further forward";
    }
}

choices! {
    /// Whether weights outside the engine finish its balance.
    Balance {
        Internal = "internal", "Internal";
        External = "external", "External, with offset weights";
    }
}

choices! {
    /// The certification of the flexplate.
    FlexplateSpec {
        None = "none", "None";
        Sfi291 = "sfi_29_1", "SFI 29.1";
    }
}

choices! {
    /// The shield around the flexplate.
    FlexplateShield {
        None = "none", "None";
        Sfi301 = "sfi_30_1", "SFI 30.1";
    }
}
