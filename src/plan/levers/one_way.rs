use super::lever_table;
use crate::job::{FreeTurn, LowOneWay, OneWayKind, RaceShape, RaceState};

lever_table! {
    "one-way-16" "Fit a 16-element clutch on the round race" {
        work: "Fit the tilting elements that belong to the round race, and try the direction before the drum goes in.",
        minutes: 45, parts: 6_000, undo: Freely,
        when: |j| is(&j.one_way.race_shape, RaceShape::Round),
        sets: |j, s| {
            s.put(&j.one_way.kind, OneWayKind::Sprag);
            s.put(&j.one_way.elements, 16);
            s.put(&j.one_way.race_shape, RaceShape::Round);
        },
    }
    "one-way-34" "Fit a 34-element clutch on the round race" {
        work: "Fit the stronger set of 34 elements, for which the race must be round, and try the direction before the \
               drum goes in.",
        minutes: 45, parts: 15_000, undo: Freely,
        when: |j| is(&j.one_way.race_shape, RaceShape::Round),
        sets: |j, s| {
            s.put(&j.one_way.kind, OneWayKind::Sprag);
            s.put(&j.one_way.elements, 34);
            s.put(&j.one_way.race_shape, RaceShape::Round);
        },
    }
    "one-way-drum-16" "Fit a round-race drum with 16 elements" {
        work: "Fit a sound drum with a round race and the 16 elements that belong to it; try the direction.",
        minutes: 75, parts: 25_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.one_way.race_shape, RaceShape::Round);
            s.put(&j.one_way.race_state, RaceState::Smooth);
            s.put(&j.one_way.kind, OneWayKind::Sprag);
            s.put(&j.one_way.elements, 16);
        },
    }
    "one-way-drum-34" "Fit a round-race drum with 34 elements" {
        work: "Fit a sound drum with a round race and the stronger set of 34 elements; try the direction.",
        minutes: 75, parts: 34_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.one_way.race_shape, RaceShape::Round);
            s.put(&j.one_way.race_state, RaceState::Smooth);
            s.put(&j.one_way.kind, OneWayKind::Sprag);
            s.put(&j.one_way.elements, 34);
        },
    }
    "one-way-drum-36" "Fit the large-hub drum with 36 elements" {
        work: "Fit the large-hub drum together with its own 36 elements; try the direction.",
        minutes: 90, parts: 65_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.one_way.race_shape, RaceShape::RoundLarge);
            s.put(&j.one_way.race_state, RaceState::Smooth);
            s.put(&j.one_way.kind, OneWayKind::Sprag);
            s.put(&j.one_way.elements, 36);
        },
    }
    "one-way-drum-ramped" "Fit a ramped drum for the rollers" {
        work: "Fit a sound drum with a ramped race and the rollers that belong to it; try the direction.",
        minutes: 75, parts: 18_000, undo: Freely,
        when: |j| is_not(&j.one_way.elements, 36),
        sets: |j, s| {
            s.put(&j.one_way.race_shape, RaceShape::Ramped);
            s.put(&j.one_way.race_state, RaceState::Smooth);
            s.put(&j.one_way.kind, OneWayKind::Roller);
        },
    }
    "one-way-drum-sound" "Fit a sound drum of the same kind" {
        work: "Fit a drum with a smooth race of the same shape.",
        minutes: 60, parts: 16_000, undo: Freely,
        sets: |j, s| {
            s.put(&j.one_way.race_state, RaceState::Smooth);
            s.same(&j.one_way.race_shape, &j.one_way.race_shape);
        },
    }
    "one-way-direction" "Try the one-way clutch, and turn its cage if need be" {
        work: "Try which way the drum turns free; if it is not clockwise only, pull it, turn the cage over and try again.",
        minutes: 45, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.one_way.free, FreeTurn::Clockwise),
    }
    "one-way-low" "Try the rear one-way clutch, and turn it if need be" {
        work: "Try the direction on the centre support; if it is wrong, turn the clutch over and try again.",
        minutes: 45, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.one_way.low, LowOneWay::Correct),
    }
    "one-way-ring" "Seat the retaining ring of the race" {
        work: "Press the race home and see the ring seated all round.",
        minutes: 15, parts: 300, undo: Freely,
        sets: |j, s| s.aim(&j.one_way.ring_seated, true),
    }
}
