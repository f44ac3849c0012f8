//! What is found inside: races, one-way clutches, gears, seals, the pump, and how checks came out.

use super::choices;

choices! {
    /// The race on the direct drum.
    RaceShape {
        Round = "round", "Round";
        Ramped = "ramped", "Ramped";
        RoundLarge = "round_large", "Round, large hub";
    }
}

choices! {
    /// The surface of a race.
    RaceState {
        Smooth = "smooth", "Smooth";
        Brinelled = "brinelled", "Dented by the elements";
        Spalled = "spalled", "Pitted or flaking";
        Scored = "scored", "Scored";
    }
}

choices! {
    /// What locks a one-way clutch.
    OneWayKind {
        Roller = "roller", "Rollers on ramps";
        Sprag = "sprag", "Tilting elements";
    }
}

choices! {
    /// The way a one-way clutch turns when tried.
    FreeTurn {
        Clockwise = "clockwise", "Clockwise only";
        Counterclockwise = "counterclockwise", "Counterclockwise only";
        Both = "both", "Both ways";
        Neither = "neither", "Neither way";
        Unchecked = "unchecked", "Not tried yet";
    }
}

choices! {
    /// How the one-way clutch on the center support stands.
    LowOneWay {
        Correct = "correct", "Right way round";
        Wrong = "wrong", "Wrong way round";
        Unchecked = "unchecked", "Not tried yet";
    }
}

choices! {
    /// The cut of the gears.
    GearCut {
        Helical = "helical", "Helical";
        Straight = "straight", "Straight";
    }
}

choices! {
    /// What the input shaft is made of.
    InputShaft {
        Stock = "stock", "Stock";
        Alloy = "alloy", "Alloy steel";
    }
}

choices! {
    /// What takes the thrust at the rear.
    RearThrust {
        Washers = "washers", "Selective washers";
        Bearing = "bearing", "Needle-bearing kit";
    }
}

choices! {
    /// The middle lip seal in the direct drum.
    CenterSeal {
        In = "in", "In";
        Out = "out", "Out";
    }
}

choices! {
    /// The state of the pump bushing.
    Bushing {
        Good = "good", "Good";
        Worn = "worn", "Worn";
        Walked = "walked", "Wandered from its place";
    }
}

choices! {
    /// Which way round the pump drive gear lies.
    DriveGear {
        Correct = "correct", "Right way round";
        UpsideDown = "upside_down", "Upside down";
        Unchecked = "unchecked", "Not looked at yet";
    }
}

choices! {
    /// Whether the rear band's apply pin was gauged.
    RearPin {
        Gauged = "gauged", "Gauged";
        NotGauged = "not_gauged", "Not gauged";
    }
}

choices! {
    /// How the air checks came out.
    AirChecks {
        Pass = "pass", "All passed";
        Fail = "fail", "One failed";
        NotDone = "not_done", "Not done yet";
    }
}
