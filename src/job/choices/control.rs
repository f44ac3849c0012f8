//! What shifts the unit: lever, governor, modulator, valve body, brake.

use super::choices;

choices! {
    /// The driver's lever.
    ShifterKind {
        Column = "column", "On the column";
        FloorFactory = "floor_factory", "On the floor, as made";
        FloorAftermarket = "floor_aftermarket", "On the floor, aftermarket";
    }
}

choices! {
    /// Which gear stands next to neutral.
    ShiftOrder {
        Forward = "forward", "Forward: third next to neutral";
        Reverse = "reverse", "Reverse: first next to neutral";
    }
}

choices! {
    /// Whether a part is in the unit.
    Fitted {
        Fitted = "fitted", "Fitted";
        Removed = "removed", "Taken out";
    }
}

choices! {
    /// The bore behind the governor cover.
    GovernorBore {
        Closed = "closed", "Closed";
        Open = "open", "Open";
    }
}

choices! {
    /// The vacuum modulator and its bore.
    Modulator {
        Connected = "connected", "Fitted, hose on";
        FittedNoHose = "fitted_no_hose", "Fitted, no hose";
        RemovedPlugged = "removed_plugged", "Taken out, bore plugged";
        RemovedOpen = "removed_open", "Taken out, bore open";
    }
}

choices! {
    /// What drops a gear at full throttle.
    Kickdown {
        Electric = "electric", "Electric";
        None = "none", "None";
    }
}

choices! {
    /// Who does the shifting.
    ValveBodyKind {
        Auto = "auto", "Automatic shifts";
        Manual = "manual", "Shifted by hand";
    }
}

choices! {
    /// Where the trans brake's solenoid sits.
    BrakeKind {
        None = "none", "No trans brake";
        Internal = "internal", "Inside the pan";
        External = "external", "Outside the case";
    }
}

choices! {
    /// The gaskets of the valve body.
    Gasket {
        None = "none", "None, metal on metal";
        Stock = "stock", "The stock pair";
        Custom = "custom", "Special ones with the valve body";
    }
}

choices! {
    /// What a valve body asks of a plug or ball in the case.
    Demand {
        Required = "required", "Must be in";
        Forbidden = "forbidden", "Must not be in";
        Either = "either", "Either way";
    }
}

choices! {
    /// What a valve body asks of the center seal.
    SealDemand {
        In = "in", "Must be in";
        Out = "out", "Must be out";
        Either = "either", "Either way";
    }
}

choices! {
    /// What a valve body asks of the small bridge.
    BridgeDemand {
        Required = "required", "Must be lowered";
        Either = "either", "Either way";
    }
}
