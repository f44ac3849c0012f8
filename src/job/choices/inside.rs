//! Words.

use super::choices;

choices! {
    /// TEXT.
    RaceShape {
        Round = "round", "round";
        Ramped = "ramped", "ramped";
        RoundLarge = "round_large", "round large";
    }
}

choices! {
    /// TEXT.
    RaceState {
        Smooth = "smooth", "smooth";
        Brinelled = "brinelled", "brinelled";
        Spalled = "spalled", "spalled";
        Scored = "scored", "scored";
    }
}

choices! {
    /// TEXT.
    OneWayKind {
        Roller = "roller", "roller";
        Sprag = "sprag", "sprag";
    }
}

choices! {
    /// TEXT.
    FreeTurn {
        Clockwise = "clockwise", "clockwise";
        Counterclockwise = "counterclockwise", "counterclockwise";
        Both = "both", "both";
        Neither = "neither", "neither";
        Unchecked = "unchecked", "unchecked";
    }
}

choices! {
    /// TEXT.
    LowOneWay {
        Correct = "correct", "correct";
        Wrong = "wrong", "wrong";
        Unchecked = "unchecked", "unchecked";
    }
}

choices! {
    /// TEXT.
    GearCut {
        Helical = "helical", "helical";
        Straight = "straight", "straight";
    }
}

choices! {
    /// TEXT.
    InputShaft {
        Stock = "stock", "stock";
        Alloy = "alloy", "alloy";
    }
}

choices! {
    /// TEXT.
    RearThrust {
        Washers = "washers", "washers";
        Bearing = "bearing", "bearing";
    }
}

choices! {
    /// TEXT.
    CenterSeal {
        In = "in", "in";
        Out = "out", "out";
    }
}

choices! {
    /// TEXT.
    Bushing {
        Good = "good", "good";
        Worn = "worn", "worn";
        Walked = "walked", "walked";
    }
}

choices! {
    /// TEXT.
    DriveGear {
        Correct = "correct", "correct";
        UpsideDown = "upside_down", "upside down";
        Unchecked = "unchecked", "unchecked";
    }
}

choices! {
    /// TEXT.
    RearPin {
        Gauged = "gauged", "gauged";
        NotGauged = "not_gauged", "not gauged";
    }
}

choices! {
    /// TEXT.
    AirChecks {
        Pass = "pass", "pass";
        Fail = "fail", "fail";
        NotDone = "not_done", "not done";
    }
}
