//! The rules, one file a chapter. Declaring a chapter here is what puts its rules into the book.

use super::book::{Chapter, Retired};
use super::rule::rules;

/// Declares the chapters in the book's order: what it is about, family, file.
macro_rules! chapters {
    ($(#[doc = $title:literal] $family:literal $file:ident;)+) => {
        $(#[doc = $title] mod $file;)+

        pub(super) static CHAPTERS: &[Chapter] = &[$(Chapter {
            family: $family,
            title: $title.trim_ascii(),
            file: stringify!($file),
            rules: $file::RULES,
        }),+];
    };
}

chapters! {
    /// Threads that look alike and are not
    "THR" threads;
    /// Case, bell and what they bolt to
    "CSE" case;
    /// The front pump
    "PMP" pump;
    /// One-way clutches: kind, direction, load
    "OWC" one_way;
    /// Clutches: feed, seals, clearance
    "CLT" clutch_packs;
    /// Clutches: checks and strength
    "CLT" clutch_strength;
    /// Valve body: what it asks of the case
    "VLV" valve_body;
    /// The trans brake's solenoid: its wire and its place
    "VLV" brake_solenoid;
    /// Governor, modulator and kickdown
    "VLV" shift_control;
    /// Shifting by hand, and the trans brake in use
    "VLV" hand_shifting;
    /// Valve body: sheet, face, check balls and bands
    "VLV" valve_body_fit;
    /// Output shaft, rear housing and yoke
    "OUT" output;
    /// How yoke and driveshaft run
    "OUT" driveshaft;
    /// Speedometer
    "SPD" speedometer;
    /// Cooling
    "COL" cooling;
    /// The vent, its hose and the catch can
    "VNT" vent;
    /// Pan, filter and dipstick
    "PAN" pan;
    /// Mounts, and the ground strap
    "MNT" mount;
    /// Gears, input shaft and the speeds they make
    "GER" gears;
    /// Converter: how it sits
    "CNV" converter_fit;
    /// Converter: stall speed and cover
    "CNV" stall;
    /// Converter: clean, sound, seated, filled
    "CNV" converter_state;
    /// What the converter works with
    "CNV" converter_mates;
    /// Shield and flexplate: label, date and fit
    "SFT" class_gear;
    /// What else keeps people from harm: brake, shifter, loop, park
    "SFT" track_gear;
    /// What is measured before it is closed and on the stand
    "MEA" bench;
    /// Fluid
    "FLD" fluid;
    /// The order of the work
    "SEQ" order;
    /// Papers, prices and signatures
    "COM" papers;
}

/// Codes that were taken out of the book. A code is never used twice.
pub(super) static RETIRED: &[Retired] = &[];
