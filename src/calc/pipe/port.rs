//! Tube fittings by dash size: which seat has which thread, and where two are mistaken.
//!
//! A dash size counts sixteenths of an inch of tube. Threads of different
//! seats often agree, so a fitting goes in and does not seal: the seat decides.

use super::{TAPER_SIZES, Taper};
use crate::calc::thread::Form;
use crate::calc::thread::table::unified;
use crate::quantity::{Inch, Quantity};

/// How a joint seals.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seat {
    /// Straight thread with an O-ring under the hexagon (standard: SAE J1926-1, ISO 11926-1).
    ORing,
    /// 37° flare (standard: SAE J514).
    Flare37,
    /// 45° flare (standard: SAE J512).
    Flare45,
    /// Inverted flare, the nut inside (standard: SAE J512).
    InvertedFlare,
}

/// One fitting: seat, tube and thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fitting {
    /// How it seals.
    pub seat: Seat,
    /// Outside diameter of the tube in sixteenths of an inch.
    pub dash: u8,
    /// Thread callout.
    pub thread: &'static str,
    /// Where the row was read.
    pub source: &'static str,
}

impl Fitting {
    /// Outside diameter of the tube.
    pub fn tube(&self) -> Quantity<Inch> {
        Quantity::new(f64::from(self.dash) / 16.0)
    }

    /// Basic form of the thread.
    pub fn form(&self) -> Option<Form<Inch>> {
        // The one thread of the inverted flare that belongs to neither the coarse nor the fine series.
        if self.thread == "7/16-24" {
            Some(Form::unified(0.4375, 24.0))
        } else {
            unified(self.thread).map(|row| row.form)
        }
    }

    /// The taper pipe size this straight thread passes for.
    pub fn taper_look_alike(&self) -> Option<&'static Taper> {
        let form = self.form()?;
        TAPER_SIZES.iter().find(|taper| taper.looks_like(&form))
    }
}

const PAGES: &str = "looked up: two secondary pages that agree";
const DRAWING: &str = "looked up: standard drawing of the 37° series, revision 13";
const CHART: &str = "looked up: training chart; tube size memory, high";
const MEMORY: &str = "memory, high";

/// Fittings met on cooler lines and gauges.
pub const FITTINGS: &[Fitting] = &[
    fitting(Seat::ORing, 4, "7/16-20", PAGES),
    fitting(Seat::ORing, 5, "1/2-20", PAGES),
    fitting(Seat::ORing, 6, "9/16-18", PAGES),
    fitting(Seat::ORing, 8, "3/4-16", PAGES),
    fitting(Seat::Flare37, 4, "7/16-20", DRAWING),
    fitting(Seat::Flare37, 5, "1/2-20", DRAWING),
    fitting(Seat::Flare37, 6, "9/16-18", DRAWING),
    fitting(Seat::Flare37, 8, "3/4-16", DRAWING),
    fitting(Seat::Flare45, 4, "7/16-20", CHART),
    fitting(Seat::Flare45, 5, "1/2-20", CHART),
    fitting(Seat::Flare45, 6, "5/8-18", CHART),
    fitting(Seat::InvertedFlare, 3, "3/8-24", MEMORY),
    fitting(Seat::InvertedFlare, 4, "7/16-24", CHART),
    fitting(Seat::InvertedFlare, 5, "1/2-20", CHART),
    fitting(Seat::InvertedFlare, 6, "5/8-18", CHART),
];

const fn fitting(seat: Seat, dash: u8, thread: &'static str, source: &'static str) -> Fitting {
    Fitting { seat, dash, thread, source }
}

/// The fitting of a seat and a tube size.
pub fn find(seat: Seat, dash: u8) -> Option<&'static Fitting> {
    FITTINGS.iter().find(|fitting| fitting.seat == seat && fitting.dash == dash)
}

/// Two fittings one is taken for the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trap {
    /// It screws in, and the seats do not meet: it leaks.
    SameThreadOtherSeat,
    /// The tube is right, and the nut does not fit or crosses its thread.
    SameTubeOtherThread,
}

/// How two fittings can be mistaken; `None` when nothing about them agrees, or all does.
pub fn trap(one: &Fitting, other: &Fitting) -> Option<Trap> {
    if one.seat == other.seat {
        None
    } else if one.thread == other.thread {
        Some(Trap::SameThreadOtherSeat)
    } else if one.dash == other.dash {
        Some(Trap::SameTubeOtherThread)
    } else {
        None
    }
}

/// Everything a fitting can be mistaken for.
pub fn traps(of: &Fitting) -> impl Iterator<Item = (Trap, &'static Fitting)> {
    FITTINGS.iter().filter_map(move |other| trap(of, other).map(|kind| (kind, other)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn thread(seat: Seat, dash: u8) -> &'static str {
        find(seat, dash).map_or("none", |fitting| fitting.thread)
    }

    #[test]
    fn callouts_are_the_published_ones() {
        for (source, seat, dash, published) in [
            ("SAE J1926-1 by two secondary pages", Seat::ORing, 6, "9/16-18"),
            ("SAE J1926-1 by two secondary pages", Seat::ORing, 8, "3/4-16"),
            ("37° standard drawing", Seat::Flare37, 4, "7/16-20"),
            ("37° standard drawing", Seat::Flare37, 5, "1/2-20"),
            ("37° standard drawing, and the shop handbook", Seat::Flare37, 6, "9/16-18"),
            ("45° training chart", Seat::Flare45, 6, "5/8-18"),
            ("inverted flare training chart", Seat::InvertedFlare, 4, "7/16-24"),
            ("inverted flare training chart", Seat::InvertedFlare, 5, "1/2-20"),
            ("inverted flare training chart", Seat::InvertedFlare, 6, "5/8-18"),
        ] {
            assert_eq!(thread(seat, dash), published, "{source}");
        }
        assert_eq!(find(Seat::Flare45, 3), None, "what was not read is not guessed");
    }

    #[test]
    fn a_five_sixteenths_line_screws_into_four_seats() {
        let inverted = find(Seat::InvertedFlare, 5).expect("in the table");
        let same: Vec<Seat> = traps(inverted)
            .filter(|(kind, _)| *kind == Trap::SameThreadOtherSeat)
            .map(|(_, other)| other.seat)
            .collect();
        assert_eq!(same, [Seat::ORing, Seat::Flare37, Seat::Flare45]);
    }

    #[test]
    fn inverted_and_45_agree_for_two_tubes_and_differ_for_the_quarter() {
        let kind = |dash| {
            let inverted = find(Seat::InvertedFlare, dash).expect("in the table");
            trap(inverted, find(Seat::Flare45, dash).expect("in the table"))
        };
        assert_eq!(kind(4), Some(Trap::SameTubeOtherThread));
        assert_eq!(kind(5), Some(Trap::SameThreadOtherSeat));
        assert_eq!(kind(6), Some(Trap::SameThreadOtherSeat));
    }

    #[test]
    fn only_the_dash_6_thread_passes_for_taper_pipe() {
        for fitting in FITTINGS {
            let taper = fitting.taper_look_alike().map(|taper| taper.name);
            assert_eq!(taper, (fitting.thread == "9/16-18").then_some("1/4-18"), "{fitting:?}");
        }
    }

    #[test]
    fn traps_go_both_ways_and_no_fitting_is_its_own() {
        for one in FITTINGS {
            assert!(one.form().is_some(), "{one:?}");
            assert_eq!(trap(one, one), None);
            assert_eq!(one.tube().value() * 16.0, f64::from(one.dash));
            for other in FITTINGS {
                assert_eq!(trap(one, other), trap(other, one));
            }
        }
    }
}
