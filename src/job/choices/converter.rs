//! What a torque converter can be.

use super::choices;

choices! {
    /// The converter hub where the seal runs.
    Hub {
        Smooth = "smooth", "Smooth";
        Grooved = "grooved", "Grooved";
    }
}

choices! {
    /// Where the converter comes from.
    ConverterOrigin {
        New = "new", "New";
        Rebuilt = "rebuilt", "Rebuilt";
        Reused = "reused", "The old one again";
    }
}
