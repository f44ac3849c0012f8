use super::lever_table;
use crate::job::{BellKind, BellPattern, CaseHistory, CaseVariant, Connector, Crack, EnginePattern, Job, ParkPawl};

/// The bell pattern that fits this engine, if it is one of the two.
fn pattern(job: &Job) -> Option<BellPattern> {
    match job.engine.pattern.value()? {
        EnginePattern::PatternA => Some(BellPattern::PatternA),
        EnginePattern::PatternB => Some(BellPattern::PatternB),
        EnginePattern::Other => None,
    }
}

/// A sound case nobody has changed, in place of the one that came.
fn another_case(j: &Job, s: &mut super::Settings) {
    s.put(&j.case.crack, Crack::None);
    s.put(&j.case.history, CaseHistory::Original);
    s.renew(&j.case.threads_bad, 0);
    s.renew(&j.case.passages_mapped, true);
    s.renew(&j.case.feed_plugged, false);
    s.renew(&j.case.passage_ball, false);
    s.renew(&j.case.bridge_lowered, false);
    if j.case.face_flat_in.value().is_some() {
        s.measure(&j.case.face_flat_in, 0.001);
    }
    s.renew(&j.vent.port, crate::job::VentPort::FactoryTube);
}

lever_table! {
    "case-other" "Build on another case for this engine" {
        work: "Take a sound, unchanged case with the bell of this engine and move everything over.",
        minutes: 480, parts: 60_000, undo: Freely,
        when: |j| is(&j.bell.kind, BellKind::Integral) && pattern(j).is_some(),
        sets: |j, s| {
            another_case(j, s);
            s.put(&j.bell.kind, BellKind::Integral);
            if let Some(pattern) = pattern(j) {
                s.put(&j.bell.pattern, pattern);
            }
        },
    }
    "case-eight-boss" "Build on an eight-boss case, pump drilled to match" {
        work: "Take a sound, unchanged case with eight pump bosses, drill and tap all eight with the bell ring as the \
               template, drill the pump flange and move everything over.",
        minutes: 600, parts: 90_000, undo: Never,
        when: |j| is(&j.bell.kind, BellKind::BoltOn),
        sets: |j, s| {
            another_case(j, s);
            s.put(&j.case.pump_bosses, 8);
            s.put(&j.case.pump_tapped, 8);
            s.put(&j.pump.holes, 8);
        },
    }
    "case-inside-heavy" "Fit heavy-duty drums, clutches and gears" {
        work: "Fit the heavy-duty inside parts in place of the light ones.",
        minutes: 360, parts: 85_000, undo: Freely,
        sets: |j, s| s.put(&j.case.variant, CaseVariant::Heavy),
    }
    "case-map" "Map the case before it is built" {
        work: "Look for every plug, ball and altered passage, draw the map and photograph it.",
        minutes: 60, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.case.passages_mapped, true),
    }
    "bell-adapter" "Fit an adapter plate between bell and engine" {
        work: "Fit an adapter plate made for the two patterns, with its dowels, and sweep the bore.",
        minutes: 90, parts: 25_000, undo: Freely,
        when: |j| pattern(j).is_some() && is_not(&j.bell.pattern, BellPattern::Both),
        sets: |j, s| {
            if let Some(pattern) = pattern(j) {
                s.put(&j.bell.pattern, pattern);
            }
        },
    }
    "bell-bolt-on" "Cut off the cast bell and hang a bolt-on one" {
        work: "Count the bosses first, saw the bell off, drill and tap the spare bosses and the pump flange with the new \
               ring as the template, and bolt the new bell on.",
        minutes: 300, parts: 55_000, undo: Never,
        when: |j| is(&j.bell.kind, BellKind::Integral)
            && pattern(j).is_some()
            && j.case.pump_bosses.value().is_some_and(|bosses| *bosses > 6),
        sets: |j, s| {
            s.put(&j.bell.kind, BellKind::BoltOn);
            s.put(&j.bell.ring_holes, 8);
            s.put(&j.bell.cut_planned, true);
            s.same(&j.case.pump_tapped, &j.case.pump_bosses);
            s.same(&j.pump.holes, &j.case.pump_bosses);
            if let Some(pattern) = pattern(j) {
                s.put(&j.bell.pattern, pattern);
            }
        },
    }
    "bell-keep" "Keep the cast bell" {
        work: "Drop the plan to cut the bell and build with it as it is.",
        minutes: 0, parts: 0, undo: Freely,
        when: |j| is(&j.bell.kind, BellKind::Integral),
        sets: |j, s| {
            s.put(&j.bell.cut_planned, false);
            s.put(&j.bell.kind, BellKind::Integral);
        },
    }
    "boss-drill" "Drill the pump flange and tap every boss" {
        work: "With the bell ring as the template, drill the pump flange and drill and tap every boss the casting has, \
               then deburr and wash.",
        minutes: 120, parts: 1_500, undo: Never,
        when: |j| is(&j.bell.kind, BellKind::BoltOn)
            && match (j.pump.holes.value(), j.case.pump_bosses.value()) {
                (Some(holes), Some(bosses)) => holes < bosses,
                _ => false,
            },
        sets: |j, s| {
            s.same(&j.pump.holes, &j.case.pump_bosses);
            s.same(&j.case.pump_tapped, &j.case.pump_bosses);
        },
    }
    "boss-tap" "Drill and tap the bosses that are still blank" {
        work: "Drill and tap every boss the casting has, with the bell ring as the template, and wash.",
        minutes: 75, parts: 800, undo: Never,
        when: |j| match (j.case.pump_tapped.value(), j.case.pump_bosses.value()) {
            (Some(tapped), Some(bosses)) => tapped < bosses,
            _ => false,
        },
        sets: |j, s| s.same(&j.case.pump_tapped, &j.case.pump_bosses),
    }
    "bell-insert" "Put an insert in the upper bell hole" {
        work: "Drill and tap the upper hole of the bell, wind in an insert below the face and break its tang.",
        minutes: 60, parts: 1_500, undo: WithTrouble,
        sets: |j, s| {
            s.put(&j.bell.insert_fitted, true);
            s.measure(&j.bell.insert_proud_in, -0.01);
            s.measure(&j.bell.insert_bolt_proud_in, -0.05);
            if j.shield.bolts_needed.value() > j.shield.bolts_available.value() {
                s.same(&j.shield.bolts_available, &j.shield.bolts_needed);
            }
        },
    }
    "bell-insert-deeper" "Wind the bell insert below the face" {
        work: "Wind the insert deeper or put in another, then lay a straightedge over the face.",
        minutes: 20, parts: 500, undo: Freely,
        when: |j| is(&j.bell.insert_fitted, true),
        sets: |j, s| s.measure(&j.bell.insert_proud_in, -0.01),
    }
    "bell-bolt-shorter" "Fit a shorter bolt in the upper bell hole" {
        work: "Fit a bolt that ends below the face of the bell, and check it with a straightedge.",
        minutes: 10, parts: 500, undo: Freely,
        when: |j| is(&j.bell.insert_fitted, true),
        sets: |j, s| s.measure(&j.bell.insert_bolt_proud_in, -0.05),
    }
    "engine-dowels" "Fit both dowels" {
        work: "Fit two sound dowels to the block.",
        minutes: 30, parts: 1_200, undo: Freely,
        sets: |j, s| s.put(&j.engine.dowels, 2),
    }
    "bell-offset-dowels" "Centre the bell with offset dowels" {
        work: "Fit offset dowels, sweep the bore again and stay with the smaller half of what is allowed.",
        minutes: 90, parts: 3_500, undo: Freely,
        sets: |j, s| s.measure(&j.bell.runout_in, 0.003),
    }
    "case-connector" "Fit a connector in the case" {
        work: "Fit an electrical connector with its seal in the case.",
        minutes: 45, parts: 3_500, undo: Freely,
        sets: |j, s| s.put(&j.case.connector, Connector::OneWire),
    }
    "case-park-pawl" "Repair the park pawl" {
        work: "Renew pawl, spring and rod, and try with the wheels chocked that park holds both ways.",
        minutes: 180, parts: 8_000, undo: Freely,
        sets: |j, s| s.put(&j.case.park_pawl, ParkPawl::Works),
    }
    "case-face" "Dress the valve-body face" {
        work: "Stone or machine the face until the feeler no longer enters, and wash.",
        minutes: 60, parts: 0, undo: WithTrouble,
        sets: |j, s| s.measure(&j.case.face_flat_in, 0.001),
    }
    "case-feed-plug" "Plug the reverse feed in the case" {
        work: "While the face of the case is bare, drive the cup plug into the feed, and write it on the case map.",
        minutes: 30, parts: 500, undo: WithTrouble,
        sets: |j, s| {
            s.put(&j.case.feed_plugged, true);
            s.put(&j.paper.permanent_mods, true);
        },
    }
    "case-feed-unplug" "Take the feed plug out of the case" {
        work: "Pull the cup plug, dress the bore, wash, and strike it from the case map.",
        minutes: 120, parts: 0, undo: WithTrouble,
        sets: |j, s| s.put(&j.case.feed_plugged, false),
    }
    "case-passage-ball" "Drive the passage ball" {
        work: "Wash, drive the ball to its depth and write it on the case map.",
        minutes: 45, parts: 500, undo: Never,
        sets: |j, s| s.put(&j.case.passage_ball, true),
    }
    "case-bridge" "Grind the cast bridge of the case down" {
        work: "Grind the bridge down as the valve-body sheet shows, and wash the case.",
        minutes: 60, parts: 0, undo: Never,
        sets: |j, s| s.put(&j.case.bridge_lowered, true),
    }
    "case-coolant-out" "Renew everything the coolant reached" {
        work: "Strip and wash everything, renew seals, frictions and bands, have the cooler tested, and look again.",
        minutes: 240, parts: 45_000, undo: Freely,
        sets: |j, s| s.aim(&j.case.coolant_found, false),
    }
}
