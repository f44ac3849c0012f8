//! Holes for coil and solid inserts, and clearance holes.

use crate::check::{Check, Source, Trust};
use endplay::calc::thread::clearance::{Fit, inch, metric};
use endplay::calc::thread::insert::{
    HOLES, METRIC_COILS, SOLID_SET_DOWN, Tap, coil_drill_depth, coil_installed, coil_major, coil_minor,
    coil_pitch_diameter, coil_thread_depth,
};
use endplay::calc::thread::table::{metric_thread, unified};
use endplay::quantity::Quantity;

const COIL: Source = Source("ASME B18.29.1 hole from the basic thread, computed apart", Trust::Computed);
const TAPS: Source = Source("machinists' handbook, 31st ed., p. 1006, table 25 (ASME B94.9)", Trust::Read);
const COIL_DRILL: Source = Source("coil drill of 1/4-20 on a supplier's page", Trust::Quoted);
const COIL_DRILLS: Source = Source("coil drills as shops have them", Trust::Memory);
const DEPTH: Source = Source("page quoting ASME B18.29.2M: depths", Trust::Quoted);
const SOLID: Source = Source("TM 9-2520-215-34, table 1, screw thread inserts (one piece type)", Trust::Read);
const CLEARANCE: Source =
    Source("clearance table of a public fastener data package (ASME B18.2.8, ISO 273)", Trust::Package);
const NORMAL: Source = Source("machinists' handbook, 31st ed., p. 1741, table 1a (ASME B18.2.8)", Trust::Read);
const M12: Source = Source("ISO 273, M12", Trust::Memory);

pub fn checks() -> Vec<Check> {
    [coil_holes(), depths(), solid(), clearance()].concat()
}

fn coil_holes() -> Vec<Check> {
    // Bore, pitch diameter, major; then the standard's taps, smallest: major, pitch diameter.
    let inch_rows = [
        ("1/4-20", 0.2554, 0.2825, 0.3150, 0.3177, 0.2835),
        ("5/16-18", 0.3185, 0.3486, 0.3847, 0.3874, 0.3501),
        ("3/8-16", 0.3818, 0.4156, 0.4562, 0.4592, 0.4171),
        ("7/16-14", 0.4452, 0.4839, 0.5303, 0.5333, 0.4854),
    ];
    let inch_holes = inch_rows.into_iter().flat_map(|(name, bore, pitch, major, tap_major, tap_pitch)| {
        let form = unified(name).unwrap_or_else(|| panic!("{name} is in the table")).form;
        [
            COIL.number(format!("{name} bore"), coil_minor(&form).value(), bore, 1e-4),
            COIL.number(format!("{name} pitch diameter"), coil_pitch_diameter(&form).value(), pitch, 1e-4),
            COIL.number(format!("{name} major"), coil_major(&form).value(), major, 1e-4),
            // A tap cuts a little more than the smallest hole: 3 thousandths on the major, 1.5 on the pitch diameter.
            TAPS.number(format!("{name} tap major"), coil_major(&form).value(), tap_major - 0.0015, 0.0016),
            TAPS.number(
                format!("{name} tap pitch diameter"),
                coil_pitch_diameter(&form).value(),
                tap_pitch - 0.001,
                0.001,
            ),
        ]
    });
    let metric_rows = [("M8x1.25", 8.135, 8.812, 9.624), ("M10x1.5", 10.162, 10.974, 11.949)];
    let metric_holes = metric_rows.into_iter().flat_map(|(name, bore, pitch, major)| {
        let form = metric_thread(name).unwrap_or_else(|| panic!("{name} is in the table")).form;
        [
            COIL.number(format!("{name} bore"), coil_minor(&form).value(), bore, 1e-3),
            COIL.number(format!("{name} pitch diameter"), coil_pitch_diameter(&form).value(), pitch, 1e-3),
            COIL.number(format!("{name} major"), coil_major(&form).value(), major, 1e-3),
        ]
    });
    let drill = |name: &str| HOLES.iter().find(|hole| hole.thread == name).map_or("none", |hole| hole.coil_drill.name);
    let metric_drill =
        |name: &str| METRIC_COILS.iter().find(|coil| coil.thread == name).map_or("none", |coil| coil.drill.name);
    let drills = [
        COIL_DRILL.words("1/4-20 coil drill", drill("1/4-20"), "17/64"),
        COIL_DRILLS.words("5/16-18 coil drill", drill("5/16-18"), "Q"),
        COIL_DRILLS.words("3/8-16 coil drill", drill("3/8-16"), "25/64"),
        COIL_DRILLS.words("7/16-14 coil drill", drill("7/16-14"), "29/64"),
        COIL_DRILLS.words("M6 coil drill", metric_drill("M6x1"), "6.3 mm"),
        COIL_DRILLS.words("M8 coil drill", metric_drill("M8x1.25"), "8.3 mm"),
        COIL_DRILLS.words("M10 coil drill", metric_drill("M10x1.5"), "10.4 mm"),
        COIL_DRILLS.words("M12 coil drill", metric_drill("M12x1.75"), "12.4 mm"),
    ];
    inch_holes.chain(metric_holes).chain(drills).collect()
}

fn depths() -> Vec<Check> {
    // M10 × 1.5, a coil of 1.5 diameters: 15 mm, and pitches of 1.5 mm counted out by hand.
    let form = metric_thread("M10x1.5").expect("M10x1.5 is in the table").form;
    let nominal = Quantity::new(15.0);
    let (shortest, longest) = coil_installed(&form, nominal);
    vec![
        DEPTH.number("full thread, L + 1 P", coil_thread_depth(&form, nominal).value(), 16.5, 1e-9),
        DEPTH.number("plug tap, L + 4 P + 1 P + 1 P", coil_drill_depth(&form, nominal, Tap::Plug).value(), 24.0, 1e-9),
        DEPTH.number(
            "bottoming tap, L + 2 P + 1 P + 1 P",
            coil_drill_depth(&form, nominal, Tap::Bottoming).value(),
            21.0,
            1e-9,
        ),
        DEPTH.number("installed, L − 0.75 P", shortest.value(), 13.875, 1e-9),
        DEPTH.number("installed, L − 0.5 P", longest.value(), 14.25, 1e-9),
    ]
}

fn solid() -> Vec<Check> {
    let rows = [
        ("1/4-20", "7/16-14", "X", 0.397),
        ("5/16-18", "1/2-13", "29/64", 29.0 / 64.0),
        ("3/8-16", "9/16-12", "33/64", 33.0 / 64.0),
        ("7/16-14", "5/8-11", "37/64", 37.0 / 64.0),
    ];
    let holes = rows.into_iter().flat_map(|(name, tap, drill, diameter)| {
        let hole = HOLES.iter().find(|hole| hole.thread == name).unwrap_or_else(|| panic!("{name} is in the table"));
        [
            SOLID.words(format!("{name} tap"), hole.solid_tap, tap),
            SOLID.words(format!("{name} drill"), hole.solid_drill.name, drill),
            SOLID.number(format!("{name} drill diameter"), hole.solid_drill.diameter.value(), diameter, 1e-9),
        ]
    });
    let set_down = [
        SOLID.number("least set-down", SOLID_SET_DOWN.0.value(), 0.010, 1e-12),
        SOLID.number("most set-down", SOLID_SET_DOWN.1.value(), 0.030, 1e-12),
    ];
    holes.chain(set_down).collect()
}

fn clearance() -> Vec<Check> {
    // Close, normal, loose; limits of the loose hole, least and most.
    let rows = [
        ("1/4", ["17/64", "9/32", "19/64"], Some([0.297, 0.311])),
        ("5/16", ["21/64", "11/32", "23/64"], Some([0.359, 0.373])),
        ("3/8", ["25/64", "13/32", "27/64"], Some([0.422, 0.438])),
        ("7/16", ["29/64", "15/32", "31/64"], Some([0.484, 0.500])),
        ("1/2", ["17/32", "9/16", "39/64"], Some([0.609, 0.625])),
    ];
    let mut checks = Vec::new();
    for (size, drills, loose) in rows {
        let row = inch(size).unwrap_or_else(|| panic!("{size} is in the table"));
        for (fit, drill) in Fit::ALL.into_iter().zip(drills) {
            checks.push(CLEARANCE.words(format!("{size} {fit:?}"), row.drill(fit).name, drill));
        }
        if let Some([least, most]) = loose {
            let found = row.drill(Fit::Loose).diameter.value();
            checks.push(NORMAL.number(format!("{size} loose, least"), found, least, 6e-4));
            let found = row.loosest.map_or(f64::NAN, Quantity::value);
            checks.push(NORMAL.number(format!("{size} loose, most"), found, most, 1e-9));
        }
    }
    for (size, drills) in [("M6", [6.4, 6.6, 7.0]), ("M8", [8.4, 9.0, 10.0]), ("M10", [10.5, 11.0, 12.0])] {
        let row = metric(size).unwrap_or_else(|| panic!("{size} is in the table"));
        for (fit, drill) in Fit::ALL.into_iter().zip(drills) {
            checks.push(CLEARANCE.number(format!("{size} {fit:?}"), row.drill(fit).diameter.value(), drill, 1e-9));
        }
    }
    let twelve = metric("M12").expect("M12 is in the table");
    for (fit, drill) in Fit::ALL.into_iter().zip([13.0, 13.5, 14.5]) {
        checks.push(M12.number(format!("M12 {fit:?}"), twelve.drill(fit).diameter.value(), drill, 1e-9));
    }
    for (fit, class) in Fit::ALL.into_iter().zip(["H12", "H13", "H14"]) {
        checks.push(NORMAL.words(format!("tolerance class, {fit:?}"), fit.tolerance_class(), class));
    }
    checks
}
