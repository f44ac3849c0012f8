//! The sums, one subject a file.

mod bench;
mod clutches;
mod converter;
mod driveshaft;
mod fits;
mod gears;
mod one_way;
mod pipe;
mod shared;
mod speedometer;
mod speeds;
mod threads;

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
        Chapter { title: "Gear set", sums: gears::SUMS },
        Chapter { title: "Clutch packs", sums: clutches::SUMS },
        Chapter { title: "One-way clutches", sums: one_way::SUMS },
        Chapter { title: "Selective fits and readings", sums: fits::SUMS },
        Chapter { title: "Converter", sums: converter::SUMS },
        Chapter { title: "Driveshaft", sums: driveshaft::SUMS },
        Chapter { title: "Small sums of the bench", sums: bench::SUMS },
        Chapter { title: "Screw threads", sums: threads::SUMS },
        Chapter { title: "Pipe threads and fittings", sums: pipe::SUMS },
    ];
    CHAPTERS
}
