//! Physics and shop arithmetic: one subject a file, each formula with its
//! units, its valid range and its source.
//!
//! Everything here is pure and total: a number outside the stated range gives
//! an infinity or a NaN, never a panic; the job file keeps such numbers out.
//! Where two models of one thing are in use, each has its own name.
//!
//! Marks used for sources: *standard*, *looked up*, *common practice*,
//! *memory* (with how sure), *derived* (from the ratios or from physics),
//! *shop setting*.

pub mod band;
pub mod clutch;
pub mod converter;
pub mod cooler;
pub mod dowel;
pub mod driveshaft;
pub mod fit;
pub mod fluid;
pub mod gear_set;
pub mod holding;
pub mod joint;
pub mod label;
pub mod one_way;
pub mod pipe;
pub mod piston;
pub mod power_flow;
pub mod quarter_mile;
pub mod shaft;
pub mod shift;
pub mod slip_yoke;
pub mod speedometer;
pub mod speedometer_rule;
pub mod spline;
pub mod thread;
pub mod tire;
pub mod wedge;

#[cfg(test)]
pub(crate) mod check;
