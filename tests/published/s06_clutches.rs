//! Disc clutches, one-way clutches and bands.

use crate::check::{Check, Source, Trust};
use endplay::calc::band::{Band, Drag, anchor_force, lining_pressure, tension_ratio, torque as band_torque};
use endplay::calc::clutch::{force_new, force_worn, mean_radius_new, mean_radius_worn};
use endplay::calc::one_way::{load_share, second_gear_load};
use endplay::calc::wedge::{self, Race};
use endplay::quantity::{Inch, Millimetre, PoundFoot, Quantity};
use endplay::rules::Limits;

const RATIO: Source = Source("uniform pressure over uniform wear, computed apart", Trust::Computed);
const EXAM: Source = Source("exam question bank with key: 250 and 50 mm", Trust::Quoted);
const EXERCISE: Source = Source("exercise, 12 kW at 1,500 rpm, 50 and 100 mm; answer computed apart", Trust::Computed);
const WET: Source =
    Source("exercise, wet clutch of 90 and 150 mm at 1 MPa, f 0.10; answer computed apart", Trust::Computed);
const DRY: Source = Source("lecturer's problem, single plate 140 and 200 mm; answer computed apart", Trust::Computed);
const PLATES: Source = Source("5.0 by 4.0 in plates, 10 faces, 0.12, 1,000 lbf, computed apart", Trust::Computed);
const BAND_BOOK: Source = Source("machine-elements textbook, 4th ed., example 22-10: 225° with 0.25", Trust::Read);
const BAND_SHEET: Source = Source("university work sheet on capstans and band brakes: half a turn", Trust::Read);
const BAND_EXERCISE: Source =
    Source("exercise, 620 kPa on 350 by 25 mm, 270° with 0.30; answer computed apart", Trust::Computed);
const WEDGE: Source =
    Source("rollers of 4 mm, 10 kN each, 12 mm long, Hertz line contact, computed apart", Trust::Computed);
const BENCH: Source = Source("shop handbook's worked sums, checked by another program", Trust::Computed);

/// Square millimetres in a square inch times pascals in a psi, over a million: lbf of one psi in newtons per MPa mm².
const PSI_IN_MEGAPASCAL: f64 = 145.037_737_73;
const NEWTONS_IN_POUND: f64 = 4.448_221_615_260_5;

fn millimetres(value: f64) -> Quantity<Millimetre> {
    Quantity::new(value)
}

fn inches(value: f64) -> Quantity<Inch> {
    Quantity::new(value)
}

/// Newtons of a plate that presses with so many megapascals at its inner edge, worn in.
fn worn_newtons(megapascals: f64, outer: f64, inner: f64) -> f64 {
    let (outer, inner) = (millimetres(outer).to_inches(), millimetres(inner).to_inches());
    force_worn(Quantity::new(megapascals * PSI_IN_MEGAPASCAL), outer, inner).value() * NEWTONS_IN_POUND
}

pub fn checks() -> Vec<Check> {
    let arms = |outer: f64, inner: f64| {
        (
            mean_radius_new(millimetres(outer), millimetres(inner)),
            mean_radius_worn(millimetres(outer), millimetres(inner)),
        )
    };
    let ratio = |inner: f64| {
        let (new, worn) = arms(100.0, 100.0 * inner);
        new / worn
    };
    let limits = [(0.6, 1.0208), (0.7, 1.0104), (0.8, 1.0041), (0.9, 1.0009)]
        .map(|(inner, published)| RATIO.number(format!("radii {inner}"), ratio(inner), published, 0.000_05));
    let (new, worn) = arms(125.0, 25.0);
    let mean = worn_arm(100.0, 50.0);
    // 12 kW at 1,500 rpm is 76.39 N·m; each pair of faces carries μ F r.
    let torque = 12_000.0 / (1500.0 * std::f64::consts::TAU / 60.0);
    let wet_force = worn_newtons(1.0, 75.0, 45.0);
    let wet_face = 0.10 * wet_force * worn_arm(75.0, 45.0) / 1000.0;
    let dry_force = worn_newtons(1.0, 100.0, 70.0);
    let plate = |arm: Quantity<Inch>| 10.0 * 0.12 * 1000.0 * arm.value() / 12.0;
    let uniform =
        force_new(Quantity::new(0.5 * PSI_IN_MEGAPASCAL), millimetres(40.0).to_inches(), millimetres(20.0).to_inches());
    let load = second_gear_load_of(820.0);
    limits
        .into_iter()
        .chain([
            EXAM.number("force new over force worn for one torque", worn / new, 0.871, 0.0005),
            EXERCISE.number("pairs of faces at 1 kN", torque / (0.35 * 1000.0 * mean / 1000.0), 2.91, 0.005),
            EXERCISE.number("force with 3 pairs, N", torque / (3.0 * 0.35 * mean / 1000.0), 970.0, 1.0),
            WET.number("torque of a face, N·m", wet_face, 50.89, 0.051),
            WET.number("faces", 400.0 / wet_face, 7.86, 0.01),
            WET.number("force with 8 faces, N", 400.0 / (8.0 * 0.10 * worn_arm(75.0, 45.0) / 1000.0), 8333.0, 8.3),
            DRY.number("force, kN", dry_force / 1000.0, 13.19, 0.014),
            DRY.number("torque of two faces, N·m", 2.0 * 0.5 * dry_force * worn_arm(100.0, 70.0) / 1000.0, 1121.5, 1.2),
            PLATES.number("worn, lb-ft", plate(mean_radius_worn(inches(2.5), inches(2.0))), 225.0, 0.05),
            PLATES.number("new, lb-ft", plate(mean_radius_new(inches(2.5), inches(2.0))), 225.9, 0.05),
            // F = π p (ro² − ri²): 0.5 MPa on a ring of 40 by 20 mm radius.
            EXAM_FORCE.number("0.5 MPa on 40 by 20 mm, N", uniform.value() * NEWTONS_IN_POUND, 1884.96, 0.5),
            BENCH.number("intermediate one-way, 820 lb-ft", load.value(), 866.0, 0.5),
            BENCH.number("against 450", load_share(load, Quantity::new(450.0)).value(), 1.92, 0.005),
            BENCH.number("against 1,500", load_share(load, Quantity::new(1500.0)).value(), 0.58, 0.005),
        ])
        .chain(bands())
        .chain(rollers())
        .collect()
}

fn bands() -> Vec<Check> {
    let band = |friction: f64, wrap: f64, radius: Quantity<Inch>| Band {
        friction: Quantity::new(friction),
        wrap: Quantity::new(wrap),
        drum_radius: radius,
    };
    let newton_metres = |torque: Quantity<PoundFoot>| torque.to_newton_metres().value();
    // 300 lb at the tight end of 225° with 0.25 on a radius of 6 in, 2 in wide; the printed slack pull is rounded to 112 lb.
    let book = band(0.25, 225.0, inches(6.0));
    let slack = anchor_force(&book, Quantity::new(300.0), Drag::TowardServo);
    let on_book = band_torque(&book, slack, Drag::TowardAnchor).value() * 12.0;
    // 10 N on half a turn with 0.2 on a drum of 0.1 m, dragged toward the end that is pulled.
    let sheet = band(0.2, 180.0, millimetres(50.0).to_inches());
    let ten = Quantity::new(10.0 / NEWTONS_IN_POUND);
    let loosened = anchor_force(&sheet, ten, Drag::TowardServo).value() * NEWTONS_IN_POUND;
    let on_sheet = newton_metres(band_torque(&sheet, ten, Drag::TowardServo));
    let cable = band(0.1, 180.0, millimetres(50.0).to_inches());
    // 620 kPa on 350 mm by 25 mm, three quarters of a turn with 0.30.
    let exercise = band(0.30, 270.0, millimetres(175.0).to_inches());
    let tight = Quantity::new(2712.5 / NEWTONS_IN_POUND);
    let pressure = lining_pressure(tight, exercise.drum_radius, millimetres(25.0).to_inches()).to_megapascals().value();
    let other = anchor_force(&exercise, tight, Drag::TowardServo);
    vec![
        BAND_BOOK.number("pull at the slack end, lb", slack.value(), 112.0, 0.5),
        BAND_BOOK.number("torque, lb-in", on_book, 1128.0, 3.0),
        BAND_BOOK.number(
            "lining pressure, psi",
            lining_pressure(Quantity::new(300.0), inches(6.0), inches(2.0)).value(),
            25.0,
            1e-9,
        ),
        BAND_SHEET.number("pull at the anchor, N", loosened, 5.3349, 0.000_05),
        BAND_SHEET.number("torque, N·m", on_sheet, 0.233_257, 3e-6),
        BAND_SHEET.number("ratio of the pulls, 0.10", tension_ratio(&cable).value(), 1.369, 0.0005),
        BAND_EXERCISE.number("pressure of the tight end, MPa", pressure, 0.620, 0.000_01),
        BAND_EXERCISE.number("slack end, kN", other.value() * NEWTONS_IN_POUND / 1000.0, 0.660, 0.0005),
        BAND_EXERCISE.number(
            "torque, N·m",
            newton_metres(band_torque(&exercise, other, Drag::TowardAnchor)),
            359.0,
            0.5,
        ),
    ]
}

fn rollers() -> Vec<Check> {
    let force = Quantity::new(10_000.0 / NEWTONS_IN_POUND);
    let race = millimetres(30.0);
    let carried = wedge::torque(12, force, race.to_inches(), Quantity::new(6.0));
    let pressed = wedge::contact_pressure(force, millimetres(12.0), millimetres(4.0), race, Race::Inner);
    vec![
        WEDGE.number("torque of 12 rollers at 6°, N·m", carried.to_newton_metres().value(), 188.7, 0.05),
        WEDGE.number("pressure on a race of 30 mm, MPa", pressed.value() / PSI_IN_MEGAPASCAL, 2923.0, 1.5),
    ]
}

const EXAM_FORCE: Source = Source("π p (ro² − ri²), computed apart", Trust::Computed);

fn worn_arm(outer: f64, inner: f64) -> f64 {
    mean_radius_worn(millimetres(outer), millimetres(inner)).value()
}

fn second_gear_load_of(pound_feet: f64) -> Quantity<PoundFoot> {
    second_gear_load(Quantity::new(1.48), Quantity::new(pound_feet), Limits::default().coupling, Quantity::new(2.0))
}
