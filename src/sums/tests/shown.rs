//! What each sum shows for its example, held against published or hand-worked numbers.

use super::*;

/// Sum, the line's label, what it must show, where that is printed.
const SHOWN: &[(&str, &str, &str, &str)] = &[
    ("turns-a-mile", "As shops reckon", "707.6 turns/mile", "20,168 / 28.5; shop handbook says 708"),
    ("speed-in-gear", "Road speed", "147.8 mph", "6,500 × 28.5 / (336.13 × 3.73), by hand"),
    ("cruise", "Engine speed", "2,859 rpm", "65 × 3.73 × 336.13 / 28.5, by hand"),
    ("driven-gear", "Driven gear to fit", "21 teeth", "shop handbook: fit 21"),
    ("speedometer-error", "Shown at a true 60 mph", "66.7 mph", "shop handbook"),
    ("speedometer-error", "Turns of the cable in a mile", "1,111 turns/mile", "1,000 × 21.117 / 19, by hand"),
    ("speedometer-rules", "The dial shows", "63.6 mph", "60 × 1.06, by hand"),
    ("speedometer-rules", "Buses and trucks, may show at 50 mph", "45.0 mph to 55.0 mph", "49 CFR 393.82"),
    (
        "speedometer-rules",
        "New vehicles in many countries, may show at 60 mph",
        "60.0 mph to 68.5 mph",
        "66 mph and 4 km/h, by hand",
    ),
    ("speedometer-rules", "Voluntary standard, may show at 60 mph", "59.4 mph to 62.4 mph", "SAE J2976, abstract"),
    ("pulses", "Pulses in a kilometer", "2,485.5", "4,000 / 1.609344"),
    ("pulses", "Pulses", "66.7 Hz", "vehicle makers' manuals: 4,000 a mile"),
    ("ratios-agree", "First gear by the other two", "2.478", "1.48 + 0.48 × 2.08, by hand"),
    ("reactions", "Rear band in reverse", "1,725 lb-ft", "3.08 × 560, by hand"),
    ("third-split", "Direct clutch", "182 lb-ft", "0.324 × 560, by hand"),
    ("brake-split", "Direct clutch", "609 lb-ft", "shop handbook"),
    ("drum-speed", "Drum in first", "-5,460 rpm", "shop handbook"),
    ("power-flow", "In second", "1.480 input turns for one of the output", "the ratio given"),
    ("power-flow", "The intermediate one-way clutch", "holds 240 lb-ft", "0.48 × 500, shop handbook's formula"),
    (
        "power-flow",
        "The low one-way clutch",
        "turns freely, at 1,370 rpm",
        "rear ring at 3,000 / 1.48, ratio 2.083: 2,027 × 2.083 / 3.083",
    ),
    ("planetary-teeth", "Ratio of ring to sun", "2.0667", "62 / 30, by hand"),
    ("planetary-teeth", "With 4 pinions it", "goes together, evenly spaced", "92 / 4 = 23, by hand"),
    ("lining-radius", "Run in", "2.500 in", "(2.75 + 2.25) / 2, by hand"),
    ("lining-force", "Run in", "2,121 lbf", "2π × 300 × 2.25 × 0.5, by hand"),
    ("lining-force", "New", "2,356 lbf", "π × 300 × (2.75² - 2.25²), by hand"),
    ("clutch-capacity", "The pack holds", "577 lb-ft", "shop handbook"),
    ("drum-head", "Force of the turning fluid", "1,024 lbf", "π/2 × 7.77e-5 × 628.3² × (65 / 2 - 2.25 × 5), by hand"),
    ("pack-turning", "The pack holds", "910 lb-ft", "577 of the handbook and 1,024 × 0.325 more"),
    ("spring-force", "They push", "224 lbf", "14 × 20 × 0.4 / 0.5, by hand"),
    ("need-by-range", "The direct clutch", "609 lb-ft", "shop handbook: on the brake"),
    ("need-by-range", "The forward clutch", "1,120 lb-ft", "first from a stalled converter, 560 × 2.0"),
    ("one-way-wedge", "Friction they need to wedge", "0.061", "tan 3.5°, by hand"),
    ("one-way-wedge", "They carry", "326 lb-ft", "16 × 2,000 × 2.0 × 0.06116 / 12, by hand"),
    ("forward-holds", "The pack holds", "577 lb-ft", "the sizes of the shop handbook's pack"),
    ("intermediate-holds", "The pack holds", "577 lb-ft", "the same sizes"),
    ("direct-holds-in-reverse", "The pack holds", "577 lb-ft", "the same sizes"),
    ("front-band-holds", "Holds, drum dragging it away", "482 lb-ft", "3,570 × (1 - e^-0.69115) × 3.25 / 12, by hand"),
    ("rear-band-holds", "Holds, drum dragging it away", "482 lb-ft", "the same sizes, by hand"),
    ("rear-band-holds-in-reverse", "Holds, drum dragging it away", "482 lb-ft", "the same sizes, by hand"),
    ("low-one-way-holds", "They carry", "612 lb-ft", "12 × 4,000 × 2.5 × 0.06116 / 12, by hand"),
    ("band-capacity", "Force on the band's end", "3,570 lbf", "(1,250 - 60) × 3, by hand"),
    (
        "band-capacity",
        "Holds, drum dragging it to its anchor",
        "963 lb-ft",
        "3,570 × (e^0.69115 - 1) × 3.25 / 12, by hand",
    ),
    ("band-capacity", "Holds, drum dragging it away", "482 lb-ft", "963 / e^0.69115, by hand"),
    ("band-capacity", "Margin, drum dragging it away", "0.64", "482 / 750, by hand"),
    ("band-capacity", "Highest pressure on the lining", "1,096 psi", "3,570 × 1.996 / 6.5, by hand"),
    ("direct-need", "Need, margin included", "761 lb-ft", "shop handbook"),
    ("pack-steel", "New steel", "0.1100 in", "shop handbook: +0.020 each"),
    ("one-way-load", "Torque on the outer race", "591 lb-ft", "0.48 × 560 × 1.10 × 2.0, by hand"),
    ("stall-elsewhere", "Stall here", "3,387 rpm", "3,200 × root of (560 / 500), by hand"),
    ("brake-heat", "Power turned to heat", "326 kW", "560 × 4,098 / 7,043, by hand"),
    ("converter-spacer", "Spacer at every pad", "0.064 in", "shop handbook"),
    ("converter-spacer", "Pilot left in the crank", "0.286 in", "shop handbook"),
    ("driveshaft-critical", "Critical speed", "5,468 rpm", "shop handbook"),
    ("driveshaft-longest", "Longest, joint center to joint center", "47.7 in", "60 × root of (5,468 × 0.75 / 6,500)"),
    ("tube-metal", "Constant", "4,767,000", "30π / 4 × root of (30e6 × 386.09 / 0.283)"),
    ("joint-angles", "Front and rear apart", "0.50°", "by hand"),
    ("thread-sizes", "Bore of the nut", "0.3073 in", "ASME B1.1: 3/8-16"),
    ("percent-thread", "Percent of thread", "77.0 %", "drill chart: 5/16 for 3/8-16 leaves 77 %"),
    ("thread-engagement", "Engaged", "1.49 diameters", "0.56 / 0.375, by hand"),
    ("percent-thread", "Counted on the height that touches", "92.4 %", "0.0625 × 16 / 1.082532, by hand"),
    (
        "mistaken-for",
        "Goes in furthest",
        "3/8-16 bolt in a hole of M10x1.5, about 4.3 turns",
        "0.375 / (1.5875 - 1.5), by hand",
    ),
    ("look-alikes", "Out of step after", "4.3 turns", "1.5 / 4 / 0.0875, by hand"),
    ("look-alikes", "Pitch diameters apart", "-0.53 mm", "9.525 - 0.649519 × 1.5875 - 9.026, by hand"),
    ("look-alikes", "Outside diameters apart", "-0.48 mm", "9.525 - 10 = -0.475, by hand"),
    ("coil-insert", "Smallest bore", "0.3818 in", "table of coil-insert holes"),
    ("coil-insert", "Drill for the coil's tap", "25/64 (0.3906 in)", "shop handbook"),
    ("coil-insert", "Any drill from", "0.3818 in to 0.3968 in", "0.375 + 0.108253 / 16, and 0.015 more"),
    ("solid-insert", "Set below the face", "0.010 in to 0.030 in", "TM 9-2520-215-34"),
    ("solid-insert", "Tap", "9/16-12", "TM 9-2520-215-34"),
    ("front-washer", "Washer to fit", "0.0950 in", "shop handbook: take 0.095"),
    ("front-washer", "Play it will leave", "0.0090 in", "shop handbook: result 0.009"),
    ("rear-washer", "Washer to fit", "0.0950 in", "0.073 + 0.031 - 0.010 = 0.094, by hand"),
    ("pack-steels", "Clearance wanted", "0.060 in", "shop handbook: to 0.060"),
    ("needle-kit", "Shims", "0.015 in", "0.120 - 0.104 = 0.016, within 0.002, by hand"),
    ("band-pin", "Pin to fit", "pin 2 of the list, 0.12 in to 0.24 in", "by eye"),
    ("tolerance-chain", "Gap as meant", "0.0190 in", "7.500 - 7.481, by hand"),
    ("tolerance-chain", "Off at its worst, either way", "0.0110 in", "2 + 3 + 3 + 1 + 2 thousandths, by hand"),
    ("tolerance-chain", "Off by chance, either way", "0.0052 in", "root of 27 thousandths squared, by hand"),
    ("repeated-readings", "The measurement", "0.012 in", "mean of 12, 12.5 and 11.5 thousandths"),
    ("offset-dowel", "Offset of the dowels", "0.0070 in", "shop handbook"),
    ("cooler-flow", "A quart takes", "15.0 s/qt", "30 s / 2 qt, by hand"),
    ("label-expiry", "Good until", "2029-11-30", "shop handbook"),
    ("shift-recovery", "From gear 1 to 2", "3,879 rpm, at 59.6 mph", "6,500 × 1.48 / 2.48, by hand"),
    ("gear-pairs", "Best pair", "drive 8, driven 21, error +0.6 %", "8 × 2.6396 = 21.117 / 21, by hand"),
    ("stall-by-curve", "Stall here", "3,123 rpm", "143.1 × root of 476.2, which the curve has there"),
    ("capacity-factor", "Capacity factor K", "143.1", "3,200 / root of 500"),
    ("converter-table", "Best efficiency", "94.2 % at speed ratio 0.94", "0.94 × 1.002, by hand"),
    ("converter-table", "Couples from speed ratio", "0.899", "0.8 + 0.1 × 96 / 97, by hand"),
    ("converter-table", "Takes at stall, at 1,000 rpm", "52.9 lb-ft", "(1,000 / 137.5)², by hand"),
    ("converter-table", "K at 0.7", "154.2", "half way from 145.3 to 163.0"),
    ("converter-table", "Torque ratio at 0.7", "1.253", "half way from 1.409 to 1.096: 1.2525"),
    ("converter-table", "Efficiency at 0.7", "87.7 %", "0.7 × 1.2525, by hand"),
    ("converter-efficiency", "Efficiency", "92.0 %", "0.8 × 1.15"),
    ("brake-time", "Held at most", "2.5 s", "52.8 × 15.52 / 326, by hand"),
    ("slip-yoke", "Least spline engaged", "2.400 in", "3.0 - 0.6, by hand"),
    ("tail-swap", "Build the shaft to", "43.75 in", "48 - 4.25, next to no angle"),
    ("shaft-stress", "Shear stress at the surface", "49,084 psi", "16 × 9,600 / (π × 0.99609)"),
    ("shaft-torque", "Torque at that stress", "978 lb-ft", "60,000 × π × 0.99609 / 192"),
    ("power-of-torque", "Power", "500.0 hp", "torque and power are one number at 5,252 rpm"),
    ("torque-of-power", "Torque", "500.0 lb-ft", "torque and power are one number at 5,252 rpm"),
    ("which-spline", "Nearest standard spline", "32T 24/48", "33 / 24 = 1.375"),
    ("which-spline", "Base circle", "1.1547 in", "1.33333 × cos 30°"),
    ("which-spline", "Root of its hub, flat roots", "1.3896 in", "33.35 / 24"),
    ("which-spline", "Root of its hub, rounded roots", "1.4083 in", "33.8 / 24"),
    ("shaft-stress", "The same on a metric sheet", "338.4 MPa", "49,084 × 0.0068948"),
    ("torque-of-power", "The same on a metric sheet", "677.9 N·m", "500 × 1.3558"),
    (
        "spline-stress",
        "Shear stress in the teeth of 32T 24/48",
        "13,751 psi",
        "4 × 2 × 9,600 / (1.3333 × 32 × 2 × 0.06545)",
    ),
    ("fluid-growth", "Share by the simple rule", "4.67 %", "0.0007 × 66.7"),
    (
        "fluid-growth",
        "Density when hot",
        "814 kg/m³",
        "860 × 0.94611, the factor of table 54D at 87.8 °C computed apart",
    ),
    ("oil-warming", "It warms by", "31 °C", "500 / (7.734 × 2.116), computed apart"),
    ("oil-warming", "Heat it takes for a degree", "2.12 kJ/kg°C", "4.1868 × 0.469 / root of 0.8609, by hand"),
    ("oil-warming", "It weighs", "7.73 kg", "9.4635 × 0.81724, computed apart"),
    ("pan-volume", "The pan holds", "6.03 qt", "(280 + 80 - 12) / 57.75"),
    ("strip-estimate", "Trap speed", "112.82 to 124.70, about 118.76 mph", "225 × cube root of 500 / 3,400"),
    ("strip-power", "Power at the crank", "516 hp", "3,400 × (120 / 225)³"),
    ("strip-slip", "Speed and time", "they belong together", "120 × 11.6 = 1,392"),
    ("bolt-torque", "Torque", "30.9 lb-ft", "0.20 × 0.375 × 0.75 × 0.0775 × 85,000 / 12"),
    ("clamp-load", "Stress in the bolt", "61,943 psi", "4,800 / 0.0774902, computed apart"),
    ("clamp-load", "Clamp load", "4,800 lbf", "30 × 12 / (0.20 × 0.375)"),
    ("torque-factor", "Torque factor K", "0.199", "eq. 8-26, computed apart"),
    ("bolt-or-case", "Torque at which that happens", "58.1 lb-ft", "0.20 × 0.375 × 9,299 / 12, by hand"),
    ("bolt-or-case", "First", "the bolt breaks, and the case stays whole, at 9,299 lbf", "0.0775 × 120,000"),
    ("clearance-hole", "Loose, at most", "0.4380 in", "machinists' handbook, 31st ed., table 1a"),
    ("clearance-hole", "Normal", "13/32 (0.4062 in)", "ASME B18.2.8"),
    ("thread-gauge", "Hole, pitch diameter", "0.3344 in to 0.3401 in", "ASME B1.1: 3/8-16 2B"),
    ("drill-for-percent", "Drill", "0.3182 in", "0.375 - 0.70 × 1.299038 / 16"),
    ("coil-depth", "Drill at least", "1.1250 in", "0.75 + 6 / 16"),
    ("taper-pipe", "In by hand", "0.1615 in", "ASME B1.20.1, table 2"),
    ("taper-pipe", "Pitch diameter where the good thread ends", "0.38000 in", "ASME B1.20.1, table 2"),
    ("taper-pipe", "Runs out over", "0.1285 in", "3.47 / 27"),
    ("taper-pipe", "Taper, angle to the axis", "1.79°", "1° 47.4′"),
    ("straight-pipe", "Fitting, outside diameter", "0.390 in to 0.397 in", "machinists' handbook, 27th ed., table 5"),
    ("straight-pipe", "Port, pitch diameter", "0.3736 in to 0.3783 in", "machinists' handbook, 27th ed., table 5"),
    ("taper-in-straight", "Binds in the tightest port", "0.161 in", "shop handbook: about 0.16 in"),
    ("fitting", "Thread", "9/16-18", "SAE J514"),
];

#[test]
fn every_sum_shows_the_published_number_for_its_example() {
    let mut off = Vec::new();
    for (name, label, published, source) in SHOWN {
        let sum = named(name).unwrap_or_else(|| panic!("no sum {name}"));
        let lines = outcome(sum, &[]).lines;
        match lines.iter().find(|line| line.label == *label) {
            Some(line) if line.value == *published => {}
            Some(line) => off.push(format!("{name}: {label} is {}, {published} wanted ({source})", line.value)),
            None => off.push(format!("{name}: no line {label}")),
        }
    }
    let held: BTreeSet<&str> = SHOWN.iter().map(|(name, ..)| *name).collect();
    off.extend(all().filter(|(_, sum)| !held.contains(sum.name)).map(|(_, sum)| format!("{}: not held", sum.name)));
    assert!(off.is_empty(), "{}", off.join("\n"));
}

/// The verdict changes sides where its limit lies.
#[test]
fn a_verdict_turns_at_its_limit() {
    let sides = |name: &str, input: &str, good: &str, bad: &str| {
        let sum = named(name).expect(name);
        let within = |text: &str| outcome(sum, &[(input, text)]).verdicts.iter().all(|verdict| verdict.within);
        assert!(within(good), "{name}: {input} {good}");
        assert!(!within(bad), "{name}: {input} {bad}");
    };
    sides("cruise", "road", "68.4", "69.4");
    sides("speedometer-error", "driven", "21", "20");
    sides("clutch-capacity", "need", "461", "463");
    sides("one-way-load", "elements", "34", "16");
    sides("stall-elsewhere", "torque", "660", "662");
    sides("brake-heat", "seconds", "2.8", "2.9");
    sides("converter-spacer", "pilot", "0.389", "0.388");
    sides("driveshaft-critical", "highest", "4100", "4102");
    sides("joint-angles", "front", "3", "3.1");
    sides("front-washer", "reading", "0.031", "0.09");
    sides("pack-steels", "clearance", "0.140", "0.4");
    sides("needle-kit", "old", "0.121", "0.1215");
    sides("slip-yoke", "droop", "49", "49.1");
    sides("speedometer-rules", "error", "4", "4.1");
    sides("speedometer-rules", "error", "0", "-0.1");
    sides("band-capacity", "need", "385", "386");
    sides("thread-gauge", "over", "0.3642", "0.3641");
    sides("thread-gauge", "bore", "0.3214", "0.3215");
    sides("gear-pairs", "shelf", "18", "16");
    sides("offset-dowel", "runout", "0.010", "0.0101");
    sides("cooler-flow", "time", "40", "40.1");
    sides("thread-engagement", "engaged", "0.5625", "0.5624");
}

#[test]
fn the_shops_own_notations_give_the_same_answer() {
    let same = |name: &str, input: &str, typed: &[&str]| {
        let sum = named(name).expect(name);
        let shown = |text: &str| outcome(sum, &[(input, text)]).lines[0].value.clone();
        for text in typed {
            assert_eq!(shown(text), shown(typed[0]), "{name}: {input} {text}");
        }
    };
    same("turns-a-mile", "tire", &["28.5", "28-1/2", "28 1/2 in", "28½\"", "723.9 mm"]);
    same("percent-thread", "drill", &["5/16", "0.3125", "312.5 thou", "7.9375 mm"]);
    same("converter-spacer", "gap", &["0.220", "220 thou", "5.588 mm"]);
    same("cruise", "road", &["65", "65 mph", "104.60736 km/h"]);
    same("one-way-load", "use", &["street_strip", "Street and strip", "street and strip"]);
    same("brake-time", "from", &["180 F", "180°F", "180 f", "82.222222222 C"]);
    same("clamp-load", "torque", &["30", "360 in-lb", "40.674538 nm"]);
    same("stall-by-curve", "curve", &["2000 400; 4000 520", "2000 400\n4000 520", "2,000 400 ; 4,000 520"]);
    same("converter-table", "table", &["0 140 2; 0.8 160 1.1", "0 140 2\n0.8 160 1.1"]);
    same("mistaken-for", "thread", &["M8x1.25", "m8X1.25"]);
    same("rear-band-holds", "drag", &["anchor", "Toward its anchor"]);
    same("label-expiry", "month", &["2024-11", "11/2024", " 2024-11 "]);
    same("driven-gear", "shelf", &["20 21 22", " 20; 21 ;22 "]);
}

#[test]
fn a_tire_may_be_typed_by_its_size_and_says_how_far_to_trust_that() {
    let turns = named("turns-a-mile").expect("a sum");
    let nominal = outcome(turns, &[("tire", "275/60R15")]);
    assert!(nominal.remarks[0].contains("27.99 in unloaded") && nominal.remarks[0].contains("measure it"));
    assert!(
        nominal.lines[0].fills.as_ref().is_some_and(|fills| fills.planned && fills.fact == "vehicle.tire_diameter_in")
    );
    assert!(outcome(turns, &[("tire", "7.00-15")]).remarks[0].contains("guess"));
    assert!(outcome(turns, &[]).lines[0].fills.is_none(), "a diameter that was typed is nothing new");
    let letter = with(turns, &[("tire", "F70-14")]);
    assert!(letter.wrong[0].message.contains("letter size"), "{:?}", letter.wrong);
}

#[test]
fn inputs_that_cannot_be_beside_each_other_are_told_at_one_of_them() {
    for (name, input, typed) in [
        ("lining-radius", "inside", "5.5"),
        ("driveshaft-critical", "wall", "1.6"),
        ("pack-steel", "target", "0.3"),
        ("drum-speed", "first", "1.48"),
        ("tail-swap", "tail", "30"),
        ("fluid-growth", "hot", "60 F"),
        ("percent-thread", "drill", "3/8"),
        ("fitting", "dash", "7"),
        ("driven-gear", "shelf", "20.5 21"),
        ("repeated-readings", "readings", "0.012 0.0141"),
        ("band-pin", "pins", "0.2 0.1"),
        ("power-flow", "first", "1.4"),
        ("drum-head", "surface", "6"),
        ("pack-turning", "inner", "6.5"),
        ("spring-force", "tested_at", "1.5"),
        ("need-by-range", "first", "2.9"),
        ("one-way-wedge", "race", "0.5"),
        ("planetary-teeth", "ring", "30"),
        ("shift-recovery", "ratios", "1.48 2.48"),
        ("stall-by-curve", "curve", "3000 470; 2000 400"),
        ("converter-efficiency", "torque_ratio", "1.3"),
        ("shaft-stress", "bore", "1"),
        ("pan-volume", "parts", "14 10 2 8"),
        ("pan-volume", "taken", "400"),
        ("band-capacity", "spring", "1250"),
        ("converter-table", "table", "0.2 140 1.9; 0 140 2.2"),
        ("converter-table", "table", "0 140 2; 0.5 140"),
        ("converter-table", "at", "0.95"),
        ("lining-force", "inside", "5.5"),
        ("bolt-torque", "grade", "8.8"),
        ("clamp-load", "thread", "M10x1.5"),
    ] {
        let sum = named(name).expect(name);
        let other: &[(&str, &str)] = match name {
            "pack-steel" => &[("clearance", "0"), ("target", typed), ("changed", "1")],
            "tail-swap" => &[("before", "29.98"), ("tail", typed), ("front", "2")],
            "one-way-wedge" => &[("race", typed), ("roller", "0.5")],
            _ => &[(input, typed)],
        };
        let answer = with(sum, other);
        let at = match (name, input) {
            ("clamp-load", "thread") => "grade",
            ("one-way-wedge", "race") => "roller",
            _ => input,
        };
        assert_eq!(answer.wrong.iter().map(|wrong| wrong.input).collect::<Vec<_>>(), [at], "{name}");
        assert!(answer.outcome.is_none() && answer.wrong[0].message.contains("cannot be"), "{:?}", answer.wrong);
    }
}

#[test]
fn a_temperature_without_its_unit_could_be_either_scale_and_is_refused() {
    let hold = named("brake-time").expect("a sum");
    assert!(with(hold, &[("from", "180")]).wrong[0].message.contains("with its unit, such as 180 F or 82 C"));
    assert!(with(hold, &[("from", "300 F")]).outcome.is_some());
    assert!(with(hold, &[("from", "303 F")]).wrong[0].message.contains("from -20 to 150 °C"));
}

#[test]
fn rollers_that_would_slip_hold_nothing_and_are_told_to() {
    let wedge = named("one-way-wedge").expect("a sum");
    let remark = |angle: &str| outcome(wedge, &[("angle", angle)]).remarks.join(" ");
    assert!(outcome(wedge, &[("angle", "11.4")]).holds.is_some() && !remark("11.4").contains("do not wedge"));
    assert!(outcome(wedge, &[("angle", "11.5")]).holds.is_none() && remark("11.5").contains("do not wedge"));
}

#[test]
fn no_hold_is_told_as_longer_than_a_stall_test_may_be_without_saying_so() {
    let hold = named("brake-time").expect("a sum");
    let told = |limit: &str| outcome(hold, &[("torque", "200"), ("held", "2000"), ("limit", limit)]);
    let (warm, hot) = (told("200 F"), told("300 F"));
    assert!(hot.remarks.iter().any(|remark| remark.contains("Let go after 5")), "{:?}", hot.remarks);
    assert!(!warm.remarks.iter().any(|remark| remark.contains("Let go after")), "{:?}", warm.remarks);
    assert!(warm.verdicts.iter().all(|verdict| verdict.within));
    assert!(hot.verdicts.iter().any(|verdict| !verdict.within), "the shop's own limit of warming in one hold");
}
