//! The order the work was done in.

use super::group;
use crate::job::Bound::NotNegative;
use crate::job::Plain::Number;

group! {
    /// The job log: at which place each step stands in it. 0 means that the step is not part of this job.
    Order "order" {
        final_wash: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(20.0),
            label: "Final wash", note: "place in the job log, 0 when not part of this job",
            how: "Count down the job log from the top to the final wash.",
            why: "Nothing may be drilled, tapped or ground after it.",
        }
        vent_tap: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "Vent drilled and tapped", note: "place in the job log, 0 when not part of this job",
            how: "Find the tapping of the vent in the job log and write its place.",
            why: "Its chips must be washed out, so it comes before the final wash.",
        }
        boss_drill: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "Pump boss drilled", note: "place in the job log, 0 when not part of this job",
            how: "Find the drilling of the pump boss in the job log and write its place.",
            why: "Its chips end in the pump unless it comes before the final wash.",
        }
        insert: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "Thread inserts put in", note: "place in the job log, 0 when not part of this job",
            how: "Count down the job log to the last thread insert that went into case or bell.",
            why: "Chips and broken tangs must be washed out afterward.",
        }
        bridge: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "Bridge lowered", note: "place in the job log, 0 when not part of this job",
            how: "Find the grinding of the bridge in the job log and write its place.",
            why: "Grinding dust gets into every valve bore unless it comes before the final wash.",
        }
        plug: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "Feed plug or passage ball driven", note: "place in the job log, 0 when not part of this job",
            how: "Find the plug or ball in the job log and write the place of the later one.",
            why: "The valve body covers the place, so this comes before it.",
        }
        bushing_hone: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(0.0),
            label: "Tail bushing honed", note: "place in the job log, 0 when not part of this job",
            how: "Find the honing in the job log and write its place.",
            why: "It has to be done with the output shaft out, and washed afterward.",
        }
        output_fit: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(35.0),
            label: "Output shaft in", note: "place in the job log, 0 when not part of this job",
            how: "Find the fitting of the output shaft in the job log and write its place.",
            why: "The bushing can no longer be honed once the shaft is in.",
        }
        one_way_check: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(30.0),
            label: "One-way clutch direction checked", note: "place in the job log, 0 when not part of this job",
            how: "Find the direction check in the job log and write its place.",
            why: "Once the drum is in the case it can no longer be tried.",
        }
        drum_fit: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(40.0),
            label: "Direct drum in the case", note: "place in the job log, 0 when not part of this job",
            how: "Find the direct drum going in, in the job log, and write its place.",
            why: "The direction of its one-way clutch must be proven first.",
        }
        pump_torque: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(50.0),
            label: "Pump torqued", note: "place in the job log, 0 when not part of this job",
            how: "Find the torquing of the pump in the job log and write its place.",
            why: "The front end play means nothing until the pump is tight.",
        }
        front_end_play: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(52.0),
            label: "Front end play read", note: "place in the job log, 0 when not part of this job",
            how: "Find the reading in the job log and write its place.",
            why: "It has to be read after the pump is torqued.",
        }
        air_check: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(55.0),
            label: "Air checks done", note: "place in the job log, 0 when not part of this job",
            how: "Count down the job log to the air checks.",
            why: "They are made while the feeds are still open, before the valve body.",
        }
        valve_body_fit: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(60.0),
            label: "Valve body bolted on", note: "place in the job log, 0 when not part of this job",
            how: "Find the valve body in the job log and write its place.",
            why: "What lies beneath it must be finished by then.",
        }
        cooler_flush: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(70.0),
            label: "Cooler flushed or replaced", note: "place in the job log, 0 when not part of this job",
            how: "Find the cooler in the job log and write its place.",
            why: "It has to be done before the engine starts for the first time.",
        }
        first_start: u32 {
            sheet: Paper, bound: NotNegative, plain: Number(80.0),
            label: "First engine start", note: "place in the job log, 0 when not part of this job",
            how: "Find the first start in the job log and write its place.",
            why: "From then on old debris in the cooler is in the new unit.",
        }
    }
}
