//! What is seen around a closed unit: ports, threads, pan, stick, cooler, vent, shield.

use super::choices;

choices! {
    /// How a cooler port or fitting seals.
    PortThread {
        Straight = "straight", "Straight, with a washer";
        Taper = "taper", "Taper pipe";
    }
}

choices! {
    /// The vent in the top of the case.
    VentPort {
        FactoryTube = "factory_tube", "Pressed-in tube as made";
        TappedPipe18 = "tapped_pipe_1_8", "Tapped 1/8-27 taper pipe";
    }
}

choices! {
    /// The system a thread belongs to.
    ThreadSystem {
        Inch = "inch", "Inch";
        Metric = "metric", "Metric";
    }
}

choices! {
    /// The depth of a pan, or the pan a part is made for.
    PanDepth {
        Shallow = "shallow", "Shallow";
        Deep = "deep", "Deep";
    }
}

choices! {
    /// The tube of the dipstick.
    StickKind {
        Rigid = "rigid", "Steel tube";
        Flexible = "flexible", "Braided hose";
    }
}

choices! {
    /// Where the fluid is cooled.
    Cooler {
        None = "none", "No cooler";
        Radiator = "radiator", "In the radiator";
        External = "external", "Outside cooler";
        Both = "both", "Radiator and outside cooler";
    }
}

choices! {
    /// What the cooler lines are made of.
    Hose {
        Rated = "rated", "Hose rated for hot fluid under pressure";
        Hardline = "hardline", "Hard line";
        Unrated = "unrated", "Other hose, such as fuel or heater hose";
    }
}

choices! {
    /// The shield around the case.
    ShieldKind {
        None = "none", "No shield";
        Rigid = "rigid", "Steel shell";
        Blanket = "blanket", "Blanket";
    }
}

choices! {
    /// What was done about the cooler before the unit ran.
    CoolerAction {
        None = "none", "Nothing";
        Flushed = "flushed", "Flushed";
        Replaced = "replaced", "Replaced";
    }
}

choices! {
    /// Where the vent lets go.
    VentOutlet {
        Open = "open", "Open at the case";
        Hose = "hose", "Raised hose";
        CatchCan = "catch_can", "Catch can";
    }
}

choices! {
    /// The fitting in a tapped vent.
    VentFitting {
        None = "none", "No fitting";
        Angled = "angled", "Tapped at an angle";
        Straight = "straight", "Tapped straight in";
    }
}
