//! TEXT.

use super::group;
use crate::job::Bound::NotNegative;
use crate::job::Plain::Number;

group! {
    /// TEXT.
    Order "order" {
        final_wash: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(20.0),
            label: "final wash", note: "",
            how: "",
            why: "",
        }
        vent_tap: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "vent tap", note: "",
            how: "",
            why: "",
        }
        boss_drill: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "boss drill", note: "",
            how: "",
            why: "",
        }
        insert: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "insert", note: "",
            how: "",
            why: "",
        }
        bridge: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "bridge", note: "",
            how: "",
            why: "",
        }
        plug: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "plug", note: "",
            how: "",
            why: "",
        }
        bushing_hone: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "bushing hone", note: "",
            how: "",
            why: "",
        }
        output_fit: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(35.0),
            label: "output fit", note: "",
            how: "",
            why: "",
        }
        one_way_check: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(30.0),
            label: "one way check", note: "",
            how: "",
            why: "",
        }
        drum_fit: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(40.0),
            label: "drum fit", note: "",
            how: "",
            why: "",
        }
        pump_torque: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(50.0),
            label: "pump torque", note: "",
            how: "",
            why: "",
        }
        front_end_play: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(52.0),
            label: "front end play", note: "",
            how: "",
            why: "",
        }
        air_check: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(55.0),
            label: "air check", note: "",
            how: "",
            why: "",
        }
        valve_body_fit: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(60.0),
            label: "valve body fit", note: "",
            how: "",
            why: "",
        }
        cooler_flush: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(70.0),
            label: "cooler flush", note: "",
            how: "",
            why: "",
        }
        first_start: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(80.0),
            label: "first start", note: "",
            how: "",
            why: "",
        }
    }
}
