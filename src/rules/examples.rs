//! Jobs that the examples of several rules start from. All of it is invented.

use crate::job::{FlexplateShield, FlexplateSpec, Job, ShieldKind, Year};
use crate::quantity::Quantity;
use jiff::civil::date;

/// A car quick enough for everything an invented class asks for, with all of it fitted and in date.
pub fn raced_with_gear(j: &mut Job) {
    class_a(j);
    j.event.quarter_mile_s.set(Quantity::new(9.8));
    j.event.trap_mph.set(Quantity::new(138.0));
    j.vehicle.weight_lb.set(Quantity::new(3000.0));
    j.shield.kind.set(ShieldKind::Rigid);
    j.shield.expires.set(date(2029, 1, 1));
    j.shield.bolts_needed.set(4);
    j.shield.bolts_available.set(4);
    j.flexplate.spec.set(FlexplateSpec::Sfi291);
    j.flexplate.expires.set(date(2028, 6, 1));
    j.flexplate.shield.set(FlexplateShield::Sfi301);
    j.flexplate.shield_expires.set(date(2029, 1, 1));
    j.driveshaft.loop_fitted.set(true);
    j.driveshaft.loop_distance_in.set(Quantity::new(4.0));
    j.stick.locks.set(true);
}

/// The car with all its gear, too slow for its class to ask for a shield.
pub fn slower_with_gear(j: &mut Job) {
    raced_with_gear(j);
    j.event.quarter_mile_s.set(Quantity::new(12.5));
    j.event.trap_mph.set(Quantity::new(108.0));
}

/// A class that asks for nothing but a shield, and a car that has no gear at all.
pub fn raced_without_gear(j: &mut Job) {
    class_a(j);
    j.class_table.stick_s.set(Quantity::new(9.0));
    j.class_table.flexplate_s.set(Quantity::new(9.0));
    j.class_table.flexplate_mph.set(Quantity::new(150.0));
    j.class_table.loop_slick_s.set(Quantity::new(9.0));
    j.class_table.loop_street_s.set(Quantity::new(9.0));
}

/// The invented class, raced on the first of May 2027.
fn class_a(j: &mut Job) {
    j.usage.raced.set(true);
    j.event.date.set(date(2027, 5, 1));
    j.class_table.year.set(Year(2027));
    j.class_table.shield_always.set(false);
    j.class_table.shield_s.set(Quantity::new(10.99));
    j.class_table.shield_mph.set(Quantity::new(135.0));
    j.class_table.shield_with_brake.set(false);
    j.class_table.stick_s.set(Quantity::new(10.99));
    j.class_table.flexplate_s.set(Quantity::new(9.99));
    j.class_table.flexplate_mph.set(Quantity::new(135.0));
    j.class_table.loop_slick_s.set(Quantity::new(13.99));
    j.class_table.loop_street_s.set(Quantity::new(11.49));
    j.class_table.brake_allowed.set(true);
}
