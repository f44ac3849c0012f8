//! How the tests of this room compare a computed number with a published one.

/// One published number, where it stands, and how near a computed one must come.
pub(crate) struct Check {
    /// Where the published number was read.
    pub(crate) source: &'static str,
    /// What the number is.
    pub(crate) what: &'static str,
    /// The number computed here.
    pub(crate) computed: f64,
    /// The number printed there.
    pub(crate) published: f64,
    /// The largest difference accepted, in the number's own unit.
    pub(crate) within: f64,
}

/// Fails with every row that is off, not only the first.
pub(crate) fn all(checks: &[Check]) {
    let off: Vec<String> = checks
        .iter()
        .filter(|row| {
            let difference = (row.computed - row.published).abs();
            difference.is_nan() || difference > row.within
        })
        .map(|row| {
            format!(
                "{}: computed {}, published {} ± {} ({})",
                row.what, row.computed, row.published, row.within, row.source
            )
        })
        .collect();
    assert!(!checks.is_empty(), "a table without rows checks nothing");
    assert!(off.is_empty(), "{}", off.join("\n"));
}

/// Equal but for rounding in the last places.
pub(crate) fn same(left: f64, right: f64) -> bool {
    (left - right).abs() <= 1e-9 * left.abs().max(right.abs()).max(1e-300)
}

/// The area under `curve` from `from` to `to` by Simpson's rule over `steps` pairs of slices.
pub(crate) fn integral(from: f64, to: f64, steps: u32, curve: impl Fn(f64) -> f64) -> f64 {
    let slice = (to - from) / f64::from(2 * steps);
    let at = |index: u32| curve(from + slice * f64::from(index));
    let sum: f64 = (0..steps).map(|pair| at(2 * pair) + 4.0 * at(2 * pair + 1) + at(2 * pair + 2)).sum();
    sum * slice / 3.0
}
