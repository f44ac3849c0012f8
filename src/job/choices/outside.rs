//! Words.

use super::choices;

choices! {
    /// TEXT.
    PortThread {
        Straight = "straight", "straight";
        Taper = "taper", "taper";
    }
}

choices! {
    /// TEXT.
    VentPort {
        FactoryTube = "factory_tube", "factory tube";
        TappedPipe18 = "tapped_pipe_1_8", "tapped pipe 1 8";
    }
}

choices! {
    /// TEXT.
    ThreadSystem {
        Inch = "inch", "inch";
        Metric = "metric", "metric";
    }
}

choices! {
    /// TEXT.
    PanDepth {
        Shallow = "shallow", "shallow";
        Deep = "deep", "deep";
    }
}

choices! {
    /// TEXT.
    StickKind {
        Rigid = "rigid", "rigid";
        Flexible = "flexible", "flexible";
    }
}

choices! {
    /// TEXT.
    Cooler {
        None = "none", "none";
        Radiator = "radiator", "radiator";
        External = "external", "external";
        Both = "both", "both";
    }
}

choices! {
    /// TEXT.
    Hose {
        Rated = "rated", "rated";
        Hardline = "hardline", "hardline";
        Unrated = "unrated", "unrated";
    }
}

choices! {
    /// TEXT.
    ShieldKind {
        None = "none", "none";
        Rigid = "rigid", "rigid";
        Blanket = "blanket", "blanket";
    }
}

choices! {
    /// TEXT.
    CoolerAction {
        None = "none", "none";
        Flushed = "flushed", "flushed";
        Replaced = "replaced", "replaced";
    }
}

choices! {
    /// TEXT.
    VentOutlet {
        Open = "open", "open";
        Hose = "hose", "hose";
        CatchCan = "catch_can", "catch can";
    }
}

choices! {
    /// TEXT.
    VentFitting {
        None = "none", "none";
        Angled = "angled", "angled";
        Straight = "straight", "straight";
    }
}
