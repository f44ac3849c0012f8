//! Words.

use super::choices;

choices! {
    /// TEXT.
    ShifterKind {
        Column = "column", "column";
        FloorFactory = "floor_factory", "floor factory";
        FloorAftermarket = "floor_aftermarket", "floor aftermarket";
    }
}

choices! {
    /// TEXT.
    ShiftOrder {
        Forward = "forward", "forward";
        Reverse = "reverse", "reverse";
    }
}

choices! {
    /// TEXT.
    Fitted {
        Fitted = "fitted", "fitted";
        Removed = "removed", "removed";
    }
}

choices! {
    /// TEXT.
    GovernorBore {
        Closed = "closed", "closed";
        Open = "open", "open";
    }
}

choices! {
    /// TEXT.
    Modulator {
        Connected = "connected", "connected";
        FittedNoHose = "fitted_no_hose", "fitted no hose";
        RemovedPlugged = "removed_plugged", "removed plugged";
        RemovedOpen = "removed_open", "removed open";
    }
}

choices! {
    /// TEXT.
    Kickdown {
        Electric = "electric", "electric";
        None = "none", "none";
    }
}

choices! {
    /// TEXT.
    ValveBodyKind {
        Auto = "auto", "auto";
        Manual = "manual", "manual";
    }
}

choices! {
    /// TEXT.
    BrakeKind {
        None = "none", "none";
        Internal = "internal", "internal";
        External = "external", "external";
    }
}

choices! {
    /// TEXT.
    Gasket {
        None = "none", "none";
        Stock = "stock", "stock";
        Custom = "custom", "custom";
    }
}

choices! {
    /// TEXT.
    Demand {
        Required = "required", "required";
        Forbidden = "forbidden", "forbidden";
        Either = "either", "either";
    }
}

choices! {
    /// TEXT.
    SealDemand {
        In = "in", "in";
        Out = "out", "out";
        Either = "either", "either";
    }
}

choices! {
    /// TEXT.
    BridgeDemand {
        Required = "required", "required";
        Either = "either", "either";
    }
}
