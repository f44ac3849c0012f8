//! Words.

use super::choices;

choices! {
    /// TEXT.
    Hub {
        Smooth = "smooth", "smooth";
        Grooved = "grooved", "grooved";
    }
}

choices! {
    /// TEXT.
    ConverterOrigin {
        New = "new", "new";
        Rebuilt = "rebuilt", "rebuilt";
        Reused = "reused", "reused";
    }
}
