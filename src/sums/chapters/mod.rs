//! The sums, one subject a file.

mod bands;
mod bench;
mod bolts;
mod clutches;
mod converter;
mod converter_table;
mod driveshaft;
mod drums;
mod fits;
mod flows;
mod fluids;
mod gears;
mod holds;
mod holes;
mod look_alike;
mod one_way;
mod pipe;
mod readings;
mod shafts;
mod shared;
mod speedometer;
mod speedometer_rules;
mod speeds;
mod stall_curve;
mod strip;
mod threads;
mod washers;
mod yoke;

use super::declaration::Sum;

/// The sums of one subject.
pub struct Chapter {
    /// As people read it.
    pub title: &'static str,
    /// Its sums.
    pub sums: &'static [Sum],
}

/// Every chapter, in the order of the page.
pub const fn chapters() -> &'static [Chapter] {
    const CHAPTERS: &[Chapter] = &[
        Chapter { title: "Tires and road speed", sums: speeds::SUMS },
        Chapter { title: "Speedometer", sums: speedometer::SUMS },
        Chapter { title: "Speedometer rules", sums: speedometer_rules::SUMS },
        Chapter { title: "Gear set", sums: gears::SUMS },
        Chapter { title: "Power flow", sums: flows::SUMS },
        Chapter { title: "Clutch packs", sums: clutches::SUMS },
        Chapter { title: "Drums and loads", sums: drums::SUMS },
        Chapter { title: "Bands", sums: bands::SUMS },
        Chapter { title: "One-way clutches", sums: one_way::SUMS },
        Chapter { title: "What an element holds", sums: holds::SUMS },
        Chapter { title: "Washers and shims", sums: washers::SUMS },
        Chapter { title: "Steels and pins", sums: fits::SUMS },
        Chapter { title: "Chains of sizes and readings", sums: readings::SUMS },
        Chapter { title: "Converter", sums: converter::SUMS },
        Chapter { title: "Converter and engine", sums: stall_curve::SUMS },
        Chapter { title: "Converter table", sums: converter_table::SUMS },
        Chapter { title: "Driveshaft", sums: driveshaft::SUMS },
        Chapter { title: "Slip yoke and tail", sums: yoke::SUMS },
        Chapter { title: "Shafts and splines", sums: shafts::SUMS },
        Chapter { title: "Fluid", sums: fluids::SUMS },
        Chapter { title: "Quarter mile", sums: strip::SUMS },
        Chapter { title: "Small sums of the bench", sums: bench::SUMS },
        Chapter { title: "Screw threads", sums: threads::SUMS },
        Chapter { title: "Threads that pass for another", sums: look_alike::SUMS },
        Chapter { title: "Bolts", sums: bolts::SUMS },
        Chapter { title: "Holes for bolts", sums: holes::SUMS },
        Chapter { title: "Pipe threads and fittings", sums: pipe::SUMS },
    ];
    CHAPTERS
}
