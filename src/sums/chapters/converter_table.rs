//! A converter's whole table: capacity factor, torque ratio and efficiency over speed ratio.

use super::shared::ratio;
use crate::calc::converter::table::{Row, Table as Measured};
use crate::calc::converter::{CapacityFactor, brake_power};
use crate::job::Word;
use crate::quantity::{One, PoundFoot, Quantity, Rpm};
use crate::sums::declaration::{Amiss, Input, Measure, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, Table, plain};

const ROW: &[Measure] =
    &[Measure::of::<One>(0.0, 0.999), Measure::of::<One>(1.0, 2000.0), Measure::of::<One>(0.0, 6.0)];

const DEFINED: &str = "definitions: SAE J643 (looked up in a summary)";
const STRAIGHT: &str = "definitions: SAE J643 (looked up in a summary); straight lines between the rows";

pub(super) const SUMS: &[Sum] = &[Sum {
    name: "converter-table",
    title: "Converter table: K, torque ratio, efficiency",
    what: "A converter's measured table row by row with its efficiency, where it is best and from where on it only couples; \
           behind a torque given, the speeds and the heat of each row.",
    inputs: &[
        Input::rows(
            "table",
            "Converter table",
            ROW,
            (2, 40),
            "0 137.5 2.232; 0.2 135.9 1.975; 0.4 137.6 1.720; 0.6 145.3 1.409; 0.8 163.0 1.096; 0.9 197.7 0.999; 0.94 244.5 \
             1.002",
        )
        .hint("Speed ratio, K and torque ratio of each row, speed ratios rising, rows with a semicolon or a line between them."),
        Input::choice("sheet", "How that sheet counts K", sheet_words, "inch"),
        Input::number::<PoundFoot>("torque", "Engine torque", (1.0, 5000.0), "300")
            .hint("One torque for every row; blank to leave speeds and heat out.")
            .optional(),
        Input::ratio("at", "Speed ratio to look at", (0.0, 0.999), "0.7").hint("Blank for none.").optional(),
    ],
    work: table,
    care: "",
}];

fn sheet_words() -> Vec<Word> {
    vec![Word { code: "inch", label: "In rpm / √lb-ft" }, Word { code: "metric", label: "In rpm / √N·m" }]
}

fn table(given: &Given<'_>) -> Worked {
    let metric = given.word("sheet")? == "metric";
    let factor = |k: f64| if metric { CapacityFactor::from_metric(k) } else { CapacityFactor(k) };
    let row = |[speed_ratio, k, torque_ratio]: [Quantity<One>; 3]| Row {
        speed_ratio,
        factor: factor(k.value()),
        torque_ratio,
    };
    let measured = match Measured::new(given.triples("table")?.into_iter().map(row).collect()) {
        Ok(measured) => measured,
        Err(none) => return Amiss::clash("table", format!("Converter table cannot be that: {none}.")),
    };
    let torque = given.maybe::<PoundFoot>("torque");
    let looked = match given.maybe::<One>("at") {
        Some(at) => match measured.at(at) {
            Some(row) => Some(row),
            None => {
                let message =
                    format!("Speed ratio to look at cannot be {}: the table does not reach there.", ratio(at));
                return Amiss::clash("at", message);
            }
        },
        None => None,
    };
    let best = measured.best().map(|row| {
        Line::new(
            "Best efficiency",
            format!("{} at speed ratio {}", row.efficiency().to_percent(1), ratio(row.speed_ratio)),
            "speed ratio × torque ratio, the largest of all rows",
            format!("{} × {}", ratio(row.speed_ratio), ratio(row.torque_ratio)),
            DEFINED,
        )
    });
    let couples = match measured.coupling_point() {
        Some(row) => Line::new(
            "Couples from speed ratio",
            row.speed_ratio.to_places(3),
            "where the torque ratio comes down to 1",
            "speed ratio where the torque ratio is 1",
            STRAIGHT,
        ),
        None => Line::new(
            "Couples from speed ratio",
            "not within the table",
            "where the torque ratio comes down to 1",
            "no row comes down to 1",
            STRAIGHT,
        ),
    };
    let stall = measured.at_stall().map(|row| {
        Line::new(
            "Takes at stall, at 1,000 rpm",
            row.factor.torque_at(Quantity::new(1000.0)).to_places(1),
            "(1,000 / K)²; it grows with the square of the speed",
            format!("(1,000 / {:.1})²", row.factor.0),
            "EU regulation 2017/2400, annex VI: reference torque",
        )
    });
    let unmeasured = measured.at_stall().is_none().then(|| {
        "The table begins above standstill: what it does at stall was not measured, and is not guessed.".to_owned()
    });
    Ok(Outcome::default()
        .lines(best)
        .line(couples)
        .lines(stall)
        .lines(looked.iter().flat_map(at_lines))
        .table(listed(&measured, torque))
        .remarks(unmeasured)
        .remark("K may fall before it rises, and the torque ratio may dip a little under 1: real converters do."))
}

fn at_lines(row: &Row) -> [Line; 3] {
    let at = ratio(row.speed_ratio);
    let straight = format!("straight line at {at}");
    [
        Line::new(
            format!("K at {at}"),
            format!("{:.1}", row.factor.0),
            "on the straight line between the rows on either side, rpm / √lb-ft",
            &straight,
            STRAIGHT,
        ),
        Line::new(
            format!("Torque ratio at {at}"),
            row.torque_ratio.to_places(3),
            "on the straight line between the rows on either side",
            &straight,
            STRAIGHT,
        ),
        Line::new(
            format!("Efficiency at {at}"),
            row.efficiency().to_percent(1),
            "speed ratio × torque ratio",
            format!("{at} × {}", row.torque_ratio.to_places(3)),
            DEFINED,
        ),
    ]
}

fn listed(measured: &Measured, torque: Option<Quantity<PoundFoot>>) -> Table {
    let mut heads = vec!["Speed ratio", "K", "Torque ratio", "Efficiency"];
    if torque.is_some() {
        heads.extend(["Engine rpm", "Turbine rpm", "Heat kW"]);
    }
    let row = |row: &Row| {
        let mut cells = vec![
            ratio(row.speed_ratio),
            format!("{:.1}", row.factor.0),
            row.torque_ratio.to_places(3),
            row.efficiency().to_percent(1),
        ];
        if let Some(torque) = torque {
            let engine: Quantity<Rpm> = row.factor.speed_at(torque);
            let power = brake_power(torque, engine);
            cells.extend([
                plain(engine.value().round()),
                plain(row.turbine_speed(engine).value().round()),
                format!("{:.1}", row.heat(power).value()),
            ]);
        }
        cells
    };
    Table {
        title: torque.map_or("The converter row by row", |_| "The converter row by row, behind that torque"),
        rows: measured.rows().iter().map(row).collect(),
        formula: match torque {
            Some(_) => {
                "K in rpm / √lb-ft; efficiency = speed ratio × torque ratio; engine speed = K × √torque; turbine = engine × speed ratio; heat = \
                 torque × rpm / 7,043 × (1 - efficiency)"
            }
            None => "K in rpm / √lb-ft; efficiency = speed ratio × torque ratio",
        },
        source: DEFINED,
        heads,
    }
}
