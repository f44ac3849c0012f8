//! Taper and straight pipe threads, ports and flares.

use crate::check::{Check, Source, Trust};
use endplay::calc::pipe::port::{Seat, find};
use endplay::calc::pipe::{COUPLING, STRAIGHT_SIZES, half_angle, taper_size};

const TAPER: Source = Source("ASME B1.20.1, table 2, as read in the text of the standard's page", Trust::Read);
const GEOMETRY: Source = Source("atan(1/32): 3/4 in of taper to the foot, computed apart", Trust::Computed);
const VANISH: Source = Source("ASME B1.20.1, V = 3.47 / n, computed apart", Trust::Computed);
const DRILLS: Source = Source("pipe-tap drill table, no reamer", Trust::Quoted);
const STRAIGHT: Source = Source("machinists' handbook, 27th ed., p. 1865, table 5 (NPSM)", Trust::Read);
const COUPLINGS: Source = Source("machinists' handbook, 27th ed., p. 1864, table 4 (NPSC)", Trust::Read);
const O_RING: Source = Source("two secondary pages on SAE J1926-1 that agree", Trust::Quoted);
const DRAWING: Source = Source("standard drawing AN924, revision 13 (37° flare)", Trust::Read);
const CHART: Source = Source("training chart, 45° and inverted flare (SAE J512)", Trust::Quoted);
const MAP: Source = Source("tube-to-thread map of the inverted flare", Trust::Memory);

pub fn checks() -> Vec<Check> {
    [taper(), straight(), ports()].concat()
}

fn taper() -> Vec<Check> {
    // E0, L1, threads in L1, E1, L2, threads in L2, E2.
    let rows = [
        ("1/8-27", 0.405, 0.36351, 0.1615, 4.36, 0.37360, 0.2639, 7.12, 0.38000, 0.128_52),
        ("1/4-18", 0.540, 0.47739, 0.2278, 4.10, 0.49163, 0.4018, 7.23, 0.50250, 0.192_78),
        ("3/8-18", 0.675, 0.61201, 0.240, 4.32, 0.62701, 0.4078, 7.34, 0.63750, 0.192_78),
        ("1/2-14", 0.840, 0.75843, 0.320, 4.48, 0.77843, 0.5337, 7.47, 0.79179, 0.247_86),
    ];
    let sizes = rows.into_iter().flat_map(|(name, outside, e0, l1, l1_threads, e1, l2, l2_threads, e2, vanish)| {
        let size = taper_size(name).unwrap_or_else(|| panic!("{name} is in the table"));
        let threads = |length: f64| length * size.threads_per_inch;
        [
            TAPER.number(format!("{name} D"), size.outside.value(), outside, 1e-9),
            TAPER.number(format!("{name} E0"), size.pitch_diameter_at_end().value(), e0, 2e-5),
            TAPER.number(format!("{name} L1"), size.hand_tight.value(), l1, 1e-9),
            TAPER.number(format!("{name} L1 in threads"), threads(size.hand_tight.value()), l1_threads, 0.005),
            TAPER.number(format!("{name} E1"), size.pitch_diameter_hand_tight().value(), e1, 2e-5),
            TAPER.number(format!("{name} L2"), size.effective_length().value(), l2, 1e-4),
            TAPER.number(format!("{name} L2 in threads"), threads(size.effective_length().value()), l2_threads, 0.006),
            TAPER.number(format!("{name} E2"), size.pitch_diameter_effective().value(), e2, 2e-5),
            VANISH.number(format!("{name} V"), size.vanish().value(), vanish, 1e-5),
        ]
    });
    let drill = |name: &str| taper_size(name).map_or("none", |size| size.drill.name);
    let drills = [("1/8-27", "R"), ("1/4-18", "7/16"), ("3/8-18", "37/64")]
        .map(|(name, published)| DRILLS.words(format!("{name} drill"), drill(name), published));
    sizes.chain(drills).chain([GEOMETRY.number("half angle", half_angle().value(), 1.7899, 5e-5)]).collect()
}

fn straight() -> Vec<Check> {
    let rows = [
        ("1/8-27", [0.390, 0.397], [0.3689, 0.3725], [0.358, 0.364], [0.3736, 0.3783]),
        ("1/4-18", [0.517, 0.526], [0.4859, 0.4903], [0.468, 0.481], [0.4916, 0.4974]),
        ("3/8-18", [0.653, 0.662], [0.6211, 0.6256], [0.603, 0.612], [0.6270, 0.6329]),
    ];
    let sizes = rows.into_iter().flat_map(|(name, male_major, male_pitch, bore, pitch)| {
        let size = STRAIGHT_SIZES.iter().find(|size| size.name == name);
        let size = size.unwrap_or_else(|| panic!("{name} is in the table"));
        let limits = [
            ("male major", size.male_major, male_major),
            ("male pitch diameter", size.male_pitch, male_pitch),
            ("bore", size.female_minor, bore),
            ("female pitch diameter", size.female_pitch, pitch),
        ];
        let own = limits.into_iter().flat_map(move |(what, found, [least, most])| {
            [
                STRAIGHT.number(format!("{name} {what}, least"), found.least.value(), least, 1e-9),
                STRAIGHT.number(format!("{name} {what}, most"), found.most.value(), most, 1e-9),
            ]
        });
        // The smallest female pitch diameter is the taper's E1, which is computed and not tabulated here.
        let taper = taper_size(name).unwrap_or_else(|| panic!("{name} is in the table"));
        let agrees = taper.pitch_diameter_hand_tight().value();
        own.chain([STRAIGHT.number(
            format!("{name} taper E1 is the least female pitch diameter"),
            agrees,
            pitch[0],
            1e-4,
        )])
    });
    let coupling = [
        COUPLINGS.number("1/4-18 coupling, bore", COUPLING.least_bore.value(), 0.442, 1e-9),
        COUPLINGS.number("1/4-18 coupling, least pitch diameter", COUPLING.pitch.least.value(), 0.4864, 1e-9),
        COUPLINGS.number("1/4-18 coupling, most pitch diameter", COUPLING.pitch.most.value(), 0.4968, 1e-9),
    ];
    sizes.chain(coupling).collect()
}

fn ports() -> Vec<Check> {
    [
        (O_RING, Seat::ORing, 4, "7/16-20"),
        (O_RING, Seat::ORing, 5, "1/2-20"),
        (O_RING, Seat::ORing, 6, "9/16-18"),
        (O_RING, Seat::ORing, 8, "3/4-16"),
        (DRAWING, Seat::Flare37, 4, "7/16-20"),
        (DRAWING, Seat::Flare37, 5, "1/2-20"),
        (DRAWING, Seat::Flare37, 6, "9/16-18"),
        (DRAWING, Seat::Flare37, 8, "3/4-16"),
        (CHART, Seat::Flare45, 4, "7/16-20"),
        (CHART, Seat::Flare45, 5, "1/2-20"),
        (CHART, Seat::Flare45, 6, "5/8-18"),
        (MAP, Seat::InvertedFlare, 3, "3/8-24"),
        (CHART, Seat::InvertedFlare, 4, "7/16-24"),
        (CHART, Seat::InvertedFlare, 5, "1/2-20"),
        (CHART, Seat::InvertedFlare, 6, "5/8-18"),
    ]
    .into_iter()
    .map(|(source, seat, dash, thread)| {
        let found = find(seat, dash).map_or("none", |fitting| fitting.thread);
        source.words(format!("{seat:?}, dash {dash}"), found, thread)
    })
    .collect()
}
