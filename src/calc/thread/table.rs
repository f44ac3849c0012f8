//! The threads a transmission shop meets, with the drill for each tap.

use super::Form;
use crate::quantity::{Inch, Length, Millimetre, Quantity};

/// A drill: what is stamped on its shank, and its diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drill<U: Length> {
    /// `no. 7`, `F`, `5/16`, `8.5 mm`.
    pub name: &'static str,
    /// Its diameter.
    pub diameter: Quantity<U>,
}

/// A thread with its tap drills.
#[derive(Clone, Copy, Debug)]
pub struct Standard<U: Length> {
    /// As called out: `5/16-18`, `M8x1.25`.
    pub name: &'static str,
    /// Basic form.
    pub form: Form<U>,
    /// Drill for aluminum and mild steel, 65 to 80 per cent of thread.
    pub drill: Drill<U>,
    /// Drill for hard or tough metal, 45 to 60 per cent.
    pub drill_hard: Drill<U>,
}

const fn drill<U: Length>(name: &'static str, diameter: f64) -> Drill<U> {
    Drill { name, diameter: Quantity::new(diameter) }
}

const fn inch(
    name: &'static str,
    major: f64,
    threads_per_inch: f64,
    drill: Drill<Inch>,
    drill_hard: Drill<Inch>,
) -> Standard<Inch> {
    Standard { name, form: Form::unified(major, threads_per_inch), drill, drill_hard }
}

const fn metric(
    name: &'static str,
    major: f64,
    pitch: f64,
    soft: (&'static str, f64),
    hard: (&'static str, f64),
) -> Standard<Millimetre> {
    let (drill, drill_hard) = (drill(soft.0, soft.1), drill(hard.0, hard.1));
    Standard { name, form: Form::metric(major, pitch), drill, drill_hard }
}

/// Unified threads, coarse and fine.
///
/// Sizes: standard (ASME B1.1). Drills: a public fastener data package's tap
/// table, drill diameters from the drill chart (looked up); confirm on the
/// chart in the drawer.
pub const UNIFIED: &[Standard<Inch>] = &[
    inch("10-24", 0.190, 24.0, drill("no. 25", 0.1495), drill("no. 20", 0.161)),
    inch("10-32", 0.190, 32.0, drill("no. 21", 0.159), drill("no. 18", 0.1695)),
    inch("1/4-20", 0.25, 20.0, drill("no. 7", 0.201), drill("7/32", 0.21875)),
    inch("1/4-28", 0.25, 28.0, drill("no. 3", 0.213), drill("no. 1", 0.228)),
    inch("5/16-18", 0.3125, 18.0, drill("F", 0.257), drill("J", 0.277)),
    inch("5/16-24", 0.3125, 24.0, drill("I", 0.272), drill("9/32", 0.28125)),
    inch("3/8-16", 0.375, 16.0, drill("5/16", 0.3125), drill("Q", 0.332)),
    inch("3/8-24", 0.375, 24.0, drill("Q", 0.332), drill("S", 0.348)),
    inch("7/16-14", 0.4375, 14.0, drill("U", 0.368), drill("25/64", 0.390625)),
    inch("7/16-20", 0.4375, 20.0, drill("25/64", 0.390625), drill("13/32", 0.40625)),
    inch("1/2-13", 0.5, 13.0, drill("27/64", 0.421875), drill("29/64", 0.453125)),
    inch("1/2-20", 0.5, 20.0, drill("29/64", 0.453125), drill("15/32", 0.46875)),
    inch("9/16-12", 0.5625, 12.0, drill("31/64", 0.484375), drill("33/64", 0.515625)),
    inch("9/16-18", 0.5625, 18.0, drill("33/64", 0.515625), drill("17/32", 0.53125)),
    inch("5/8-11", 0.625, 11.0, drill("17/32", 0.53125), drill("9/16", 0.5625)),
    inch("5/8-18", 0.625, 18.0, drill("37/64", 0.578125), drill("19/32", 0.59375)),
    inch("3/4-10", 0.75, 10.0, drill("21/32", 0.65625), drill("11/16", 0.6875)),
    inch("3/4-16", 0.75, 16.0, drill("11/16", 0.6875), drill("45/64", 0.703125)),
];

/// Metric threads, coarse and fine.
///
/// Sizes: standard (ISO 261, ISO 724). Drills: as for [`UNIFIED`].
pub const METRIC: &[Standard<Millimetre>] = &[
    metric("M5x0.8", 5.0, 0.8, ("4.2 mm", 4.2), ("4.5 mm", 4.5)),
    metric("M6x1", 6.0, 1.0, ("5.0 mm", 5.0), ("5.4 mm", 5.4)),
    metric("M8x1", 8.0, 1.0, ("7.0 mm", 7.0), ("7.4 mm", 7.4)),
    metric("M8x1.25", 8.0, 1.25, ("6.8 mm", 6.8), ("7.2 mm", 7.2)),
    metric("M10x1.25", 10.0, 1.25, ("8.8 mm", 8.8), ("9.2 mm", 9.2)),
    metric("M10x1.5", 10.0, 1.5, ("8.5 mm", 8.5), ("9.0 mm", 9.0)),
    metric("M12x1.25", 12.0, 1.25, ("10.8 mm", 10.8), ("11.2 mm", 11.2)),
    metric("M12x1.75", 12.0, 1.75, ("10.3 mm", 10.3), ("10.9 mm", 10.9)),
    metric("M14x2", 14.0, 2.0, ("12.1 mm", 12.1), ("12.7 mm", 12.7)),
];

/// The Unified thread called `name` in the table.
pub fn unified(name: &str) -> Option<&'static Standard<Inch>> {
    find(UNIFIED, name)
}

/// The metric thread called `name` in the table; `x` and `×` are one.
pub fn metric_thread(name: &str) -> Option<&'static Standard<Millimetre>> {
    find(METRIC, name)
}

fn find<U: Length>(table: &'static [Standard<U>], name: &str) -> Option<&'static Standard<U>> {
    let wanted = name.trim().replace(['×', 'X'], "x").replace('m', "M");
    table.iter().find(|row| row.name == wanted)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_drill_is_a_tap_drill_and_the_hard_one_is_larger() {
        fn sound<U: Length>(table: &[Standard<U>]) {
            for row in table {
                let percent = row.form.percent_thread(row.drill.diameter).value();
                let hard = row.form.percent_thread(row.drill_hard.diameter).value();
                assert!((0.64..0.84).contains(&percent), "{}: {percent}", row.name);
                assert!((0.40..0.65).contains(&hard) && hard < percent, "{}: {hard}", row.name);
            }
        }
        sound(UNIFIED);
        sound(METRIC);
    }

    #[test]
    fn a_name_carries_the_size_it_names() {
        for row in UNIFIED {
            let (size, threads) = row.name.split_once('-').expect(row.name);
            let major = match size {
                "10" => 0.060 + 0.013 * 10.0,
                fraction => Quantity::<Inch>::from_typed(fraction).expect(row.name).value(),
            };
            assert!((row.form.major.value() - major).abs() < 1e-12, "{}", row.name);
            assert!(
                (row.form.threads_per_inch() - threads.parse::<f64>().expect(row.name)).abs() < 1e-9,
                "{}",
                row.name
            );
        }
        for row in METRIC {
            let (major, pitch) = row.name.trim_start_matches('M').split_once('x').expect(row.name);
            assert_eq!(major.parse(), Ok(row.form.major.value()), "{}", row.name);
            assert_eq!(pitch.parse(), Ok(row.form.pitch.value()), "{}", row.name);
            let shank = Quantity::<Millimetre>::from_typed(row.drill.name).expect(row.name);
            assert_eq!(shank, row.drill.diameter, "{}", row.name);
        }
        // Fractional drills are worth what is stamped on them.
        for drill in UNIFIED.iter().flat_map(|row| [row.drill, row.drill_hard]).filter(|drill| drill.name.contains('/'))
        {
            assert_eq!(Quantity::from_typed(drill.name), Ok(drill.diameter));
        }
        assert_eq!(metric_thread("m8×1.25").map(|row| row.name), Some("M8x1.25"));
        assert!(metric_thread("M8x1.5").is_none() && unified("5/16-20").is_none());
    }
}
